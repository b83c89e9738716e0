/**
 * All that is worked out of three houses on safety, age, dates and what is lacking, line by line, as text. The figures
 * are held against their sources elsewhere; here nothing may change unseen. After a change that is meant:
 * `ACCEPT=1 npx vitest run tests/rooms/tally-whole.test.ts`, and look at the difference.
 */

import { expect, it } from 'vitest';
import { heldText } from './held-text.js';
import type { PartialSpec } from './house-from.js';
import { tallyAsText } from './tally-as-text.js';

/** Old, with bedrooms on two storeys, much that burns, and much that was measured. */
const OLD: PartialSpec = {
  house: { built: 1926, bought: '2024-03-01', exterior: 'cement shingle' },
  levels: [
    { id: 'cellar', name: 'Cellar', grade: 'below', finish: 'unfinished', size: "30' x 24'" },
    {
      id: 'main',
      name: 'Main level',
      grade: 'above',
      size: "30' x 24'",
      openings: [
        { what: 'stair down', size: "3' x 10'" },
        { what: 'laundry chute', size: "1' x 1'" },
      ],
    },
    { id: 'upper', name: 'Upper level', grade: 'above', size: "30' x 24'" },
    { id: 'top', name: 'Attic', grade: 'above', finish: 'unfinished', size: "20' x 10'" },
  ],
  rooms: [
    { id: 'kitchen', name: 'Kitchen', level: 'main', use: 'kitchen' },
    { id: 'hall', name: 'Hall', level: 'upper', use: 'hall' },
    {
      id: 'bed',
      name: 'Front bedroom',
      level: 'upper',
      use: 'bedroom',
      windows: [
        {
          name: 'East window',
          'clear-width': '30"',
          'clear-height': '20"',
          sill: '30"',
          evidence: ['before-bed', 'deed'],
        },
      ],
      finishes: [
        { on: 'ceiling', what: 'sprayed texture', kept: true },
        { on: 'floor', what: 'oak strip', over: 'vinyl tile', did: 'new', done: '2025-02' },
      ],
    },
    {
      id: 'back',
      name: 'Back bedroom',
      level: 'upper',
      use: 'bedroom',
      windows: [
        { name: 'West', 'clear-width': '34"', 'clear-height': '24"', sill: '44"', 'at-grade': false },
      ],
      finishes: [{ on: 'floor', what: 'sheet vinyl', did: 'removed', done: '2025-02', by: 'owner' }],
    },
  ],
  structures: [
    { id: 'porch', name: 'Porch', is: 'porch' },
    { id: 'garage', name: 'Garage', is: 'garage', attached: true, 'opens-into-house': true },
  ],
  stairs: [
    {
      id: 'front',
      name: 'Front stair',
      risers: 13,
      handrail: 'yes',
      'rail-height': '36"',
      'highest-riser': '7 1/2"',
      'lowest-riser': '7 1/4"',
      tread: '10"',
      width: '36"',
      headroom: '6\'8"',
    },
    { id: 'porch-steps', risers: 1, handrail: 'no' },
  ],
  guards: [{ what: 'porch, east side', drop: '34"', guard: 'yes', height: '36"', gap: '4"' }],
  systems: [
    { id: 'furnace', is: 'furnace, gas', made: '2004', fuel: 'gas', where: 'cellar' },
    {
      id: 'tank',
      is: 'water heater, tank, gas',
      installed: '2012',
      'set-to': '140 F',
      'mixing-valve': 'no',
      'relief-pipe': { diameter: '3/4"', 'ends-above-floor': '7"', threaded: 'yes', valve: 'no' },
    },
    { id: 'stove', is: 'gas stove', name: 'Kitchen stove', 'anti-tip': 'no' },
    { id: 'log', is: 'wood stove', where: 'bed', made: '../1990' },
    { id: 'wrap', is: 'pipe wrap', did: 'removed', installed: '../1960' },
    {
      id: 'roof',
      is: 'roof, architectural shingle',
      installed: '2019~',
      serviced: '2018',
      warranty: { of: 'shingles', years: 30, 'moves-to-buyer': 'not known' },
    },
  ],
  people: [
    { id: 'firm', name: 'Linden Painting', trade: 'painter' },
    { id: 'wires', name: 'Rook Electric', trade: 'electrician' },
  ],
  lead: { known: 'not known', firm: 'firm' },
  work: [
    {
      id: 'sash',
      what: 'windows',
      did: 'replaced',
      done: '2025-04-10',
      by: 'owner',
      where: ['bed'],
      'windows-replaced': true,
      'paint-disturbed': '2 sq ft',
    },
    {
      id: 'scrape',
      what: 'paint scraped',
      did: 'repaired',
      done: '2025-04-20',
      by: 'firm',
      where: ['kitchen'],
      'paint-disturbed': '6 sq ft',
    },
    {
      id: 'scrape-2',
      what: 'paint scraped, west wall',
      did: 'repaired',
      done: '2025-05-01',
      by: 'owner',
      where: ['kitchen'],
      'paint-disturbed': '0.5 sq ft',
    },
    {
      id: 'porch-paint',
      what: 'porch paint scraped',
      did: 'repaired',
      done: '2025-06',
      by: 'family',
      where: ['porch', 'porch-steps'],
      'paint-disturbed': '20 sq ft',
    },
    { id: 'mastic', what: 'mastic below the kitchen floor', did: 'removed', where: ['kitchen', 'hall'] },
    {
      id: 'wiring',
      what: 'wiring of the kitchen',
      did: 'replaced',
      started: '2025-08',
      done: '2025-07',
      by: 'wires',
      where: ['kitchen'],
    },
  ],
  alarms: [
    { is: 'smoke', where: 'hall', made: '2014-05' },
    { is: 'carbon-monoxide', where: 'hall', 'replace-by': '../2024' },
    { is: 'both', where: 'kitchen', made: '2025-01', 'replace-by': '2032-01', installed: '2024-06' },
    { is: 'smoke', where: 'front', made: '../2018' },
  ],
  pool: {
    barriers: [
      { what: 'fence', height: '48"', 'gap-below': '4"', 'widest-gap': '3 1/2"', gate: 'no' },
      {
        what: 'gate side',
        height: '60"',
        'closes-itself': 'no',
        'opens-outward': 'yes',
        'latch-height': '54"',
      },
      { what: 'house wall' },
    ],
  },
  permits: [
    { id: 'p-1', number: 'EL-1', what: 'wiring', state: 'open', issued: '2025-06-01' },
    { id: 'p-2', what: 'roof', state: 'expired' },
    { id: 'p-3', what: 'furnace', state: 'final', issued: '2025-06-01', final: '2025-05-01' },
  ],
  documents: [
    { id: 'deed', what: 'deed', kind: 'other' },
    { id: 'lab', what: 'Asbestos sample, back bedroom', kind: 'report' },
    { id: 'bill', what: 'bill of the asbestos firm', kind: 'receipt' },
  ],
  photos: { 'before-bed': { shows: 'front bedroom', taken: '2024-04-01' } },
};

/** New, all electric, with nothing to warn of and little said. */
const NEW: PartialSpec = {
  house: { built: '2019', kind: 'apartment-style' },
  levels: [{ id: 'main', name: 'Main level', grade: 'above', size: "40' x 26'" }],
  rooms: [
    {
      id: 'bed',
      level: 'main',
      use: 'bedroom',
      windows: [
        { name: 'Garden door', 'clear-width': '30"', 'clear-height': '24"', sill: '20"', 'at-grade': true },
      ],
      finishes: [
        { on: 'walls', what: 'paint', did: 'painted', done: '2026-02', colour: 'oat' },
        { on: 'floor', what: 'vinyl plank', done: '2026-02' },
        { on: 'trim', what: 'oak', did: 'new' },
      ],
    },
    { id: 'closet', level: 'main', use: 'closet' },
    { id: 'living', name: 'Living room', level: 'main', use: 'living' },
  ],
  systems: [
    {
      id: 'hp',
      is: 'heat pump, air source',
      made: '2019-03',
      fuel: 'electric',
      warranty: { until: '2024', 'moves-to-buyer': 'not known' },
    },
    { id: 'wh', is: 'water heater, tankless, electric', installed: '2019', 'set-to': '120 F' },
    { id: 'range', is: 'range, electric', kept: true },
    { id: 'lift', is: 'dumbwaiter hoist', installed: 'not known' },
  ],
  alarms: [{ is: 'both', where: 'living', made: '2019-02' }],
  work: [{ id: 'shelf', what: 'shelves', did: 'new', photos: { before: 'a' } }],
  photos: { a: { shows: 'living room', when: 'before' } },
  care: [{ what: 'filter', every: '3 months' }],
  conveys: [{ what: 'refrigerator', stays: 'yes' }],
};

/** Nothing is known of when it was built; dates run past the day and against each other. */
const DATES: PartialSpec = {
  house: { built: 'not known', bought: '2025-05-02', listed: '2025-04' },
  money: { role: 'dealer', sale: { closed: '2025-03', price: '100,000.00' } },
  duties: { contract: '2025-03-20', given: [] },
  levels: [{ id: 'cellar', name: 'Cellar', grade: 'below' }],
  rooms: [
    { id: 'plant', name: 'Plant room', level: 'cellar', use: 'mechanical' },
    {
      id: 'den',
      level: 'cellar',
      use: 'recreation',
      finishes: [{ on: 'fireplace', what: 'brick', done: '2027' }],
    },
  ],
  alarms: [{ is: 'smoke', where: 'den', made: '2027-01', installed: '2026-02', 'replace-by': '2026-01' }],
  systems: [
    { id: 'ac', is: 'air conditioner, window', made: '2026', serviced: '2025-06', installed: '2025-02' },
    { id: 'boiler', is: 'boiler', label: { serial: '2814X', reads: 'YYWW at 1' } },
    {
      id: 'gone',
      is: 'furnace, oil',
      did: 'removed',
      warranty: { until: '2030', 'moves-to-buyer': 'not known' },
    },
  ],
  work: [
    {
      id: 'beam',
      what: 'beam',
      did: 'removed',
      structural: true,
      'paint-disturbed': '3 sq ft',
      done: '2025-06-10',
      warranty: { until: '2024' },
    },
  ],
};

it.each([
  ['old', OLD],
  ['new', NEW],
  ['dates', DATES],
] as const)('what is told of the house “%s” is as it was', (name, spec) => {
  const text = tallyAsText(spec, '2026-11-20');
  expect(text).toBe(heldText(`tally-whole/${name}.txt`, text));
});
