/**
 * All that is told of made houses whose days, deeds and costs contradict each other, line by line, as text; what they say in words
 * is in `tally-clashes-whole-words.test.ts`. After a change that is meant: `ACCEPT=1 npx vitest run
 * tests/rooms/tally-clashes-whole`, and look at the difference.
 */
import { it } from 'vitest';
import { type ClashingHouse, expectWhole } from './clashes-as-text.js';

const LEVEL = { id: 'main', name: 'Main level', grade: 'above' } as const;
const HALL = { id: 'hall', level: 'main', use: 'hall' } as const;

/** Built in 2001; things in it are older. The garage and what hangs in it may be. */
const OLDER: ClashingHouse = {
  spec: {
    house: { built: 2001 },
    levels: [LEVEL],
    structures: [
      {
        id: 'garage',
        is: 'garage',
        attached: false,
        finishes: [{ on: 'floor', what: 'slab', done: 1960 }],
      },
      {
        id: 'porch',
        is: 'porch',
        attached: true,
        finishes: [{ on: 'floor', what: 'boards', done: 1998 }],
      },
    ],
    rooms: [{ ...HALL, finishes: [{ on: 'walls', what: 'paint', done: '1999-05' }] }],
    systems: [
      { id: 'roof', is: 'roof, slate', name: 'Roof', installed: '1998' },
      { id: 'old-roof', is: 'roof, metal', where: 'garage', installed: '1955' },
      { id: 'furnace', is: 'furnace, gas', made: '1990', where: 'hall' },
      { id: 'boiler', is: 'boiler', label: { serial: '9412X', reads: 'YYWW at 1' } },
      { id: 'window', is: 'window, wood', made: '1950' },
    ],
    alarms: [
      { is: 'both', where: 'hall', installed: '1999-01' },
      { is: 'carbon-monoxide', where: 'hall', installed: '2000-02' },
      { is: 'smoke', where: 'hall', installed: '1999' },
      { is: 'smoke', where: 'hall' },
    ],
    work: [
      { id: 'rail', what: 'rail', did: 'new', done: '1997-03-02', where: ['hall'] },
      { id: 'slab', what: 'slab', did: 'new', done: '1960', where: ['garage'] },
    ],
  },
};

/** Bought in February 2026, offered in June, sold in August. */
const OWNED: ClashingHouse = {
  spec: {
    house: { bought: '2026-02-17', listed: '2026-06-20' },
    people: [{ id: 'roofer', name: 'Alder Roofing' }],
    money: { role: 'dealer', sale: { closed: '2026-08-14', price: '1.00' } },
    levels: [LEVEL],
    rooms: [
      {
        ...HALL,
        finishes: [
          { on: 'floor', what: 'oak', by: 'owner', done: '2025-12' },
          { on: 'walls', what: 'paint', by: 'family', done: '2026-07-03' },
          { on: 'trim', what: 'varnish', by: 'owner', done: '2026-01-10', work: 'floor' },
          { on: 'ceiling', what: 'plaster', by: 'family', done: '2026-01-10', work: 'floor' },
          { on: 'stairs', what: 'treads', done: '2026-10-01', work: 'floor', by: 'not-known' },
        ],
      },
    ],
    structures: [
      {
        id: 'porch',
        is: 'porch',
        finishes: [{ on: 'floor', what: 'deck boards', done: '2025-11-02', by: 'roofer', work: 'floor' }],
      },
    ],
    work: [
      { id: 'floor', what: 'floor of the hall', did: 'refinished', done: '2026-04-02', by: 'owner' },
      { id: 'rail', what: 'rail', did: 'new', done: '2024', by: 'owner' },
      { id: 'gate', what: 'gate', did: 'new', done: '2026-01', by: 'family' },
      { id: 'roof', what: 'roof', did: 'repaired', done: '2025-06-01', by: 'roofer' },
      { id: 'step', what: 'step', did: 'repaired', done: '2026-08-01', by: 'owner' },
      { id: 'drain', what: 'drain', did: 'serviced', done: '2026-08-02', by: 'owner' },
      { id: 'lock', what: 'lock', did: 'replaced', done: '2026-09-01', by: 'roofer' },
    ],
    systems: [
      { id: 'range', is: 'range, electric', installed: '2026-01-02', by: 'owner' },
      { id: 'hood', is: 'range hood', installed: '2026-01-03', by: 'roofer' },
    ],
  },
};

/** The same, not sold yet. */
const OFFERED: ClashingHouse = {
  spec: {
    house: { listed: '2026-06-20' },
    work: [{ id: 'step', what: 'step', did: 'repaired', done: '2026-08', by: 'owner' }],
  },
};

const PERMITS: ClashingHouse = {
  spec: {
    permits: [
      { id: 'a', what: 'rail', state: 'open', final: '2026-05' },
      { id: 'b', what: 'porch', state: 'none-found', issued: '2026-03', number: 'B-1' },
      { id: 'c', what: 'fence', state: 'none-found', number: 'B-2' },
      { id: 'd', what: 'three kitchen circuits', state: 'final', issued: '2026-03-01', final: '2026-04-01' },
      { id: 'e', what: 'roof', state: 'expired', issued: '2026-05-11', note: 'as shown' },
    ],
    levels: [LEVEL],
    rooms: [{ ...HALL, finishes: [{ on: 'lights', what: 'lamps', done: '2026-04-03', permit: 'd' }] }],
    systems: [
      { id: 'roof', is: 'roof, slate', installed: '2026-05-02', permit: 'e' },
      { id: 'old', is: 'wiring', installed: '2019', kept: true, permit: 'd' },
      { id: 'heater', is: 'water heater' },
    ],
    work: [
      { id: 'f', what: 'circuits', did: 'new', done: '2026-02', permit: 'd' },
      { id: 'g', what: 'roof shingles', did: 'replaced', permit: 'd' },
      { id: 'h', what: 'what heats the bath', did: 'replaced', systems: ['heater'], permit: 'd' },
    ],
  },
};

const EVIDENCE: ClashingHouse = {
  spec: {
    record: { area: '1,410 sq ft', date: '2026-05', evidence: ['card'] },
    permits: [{ id: 'p', what: 'rail', state: 'open', issued: '2026-05-19', evidence: ['copy', 'letter'] }],
    documents: [
      { id: 'card', what: 'county card', kind: 'record', date: '2026-01-05' },
      { id: 'copy', what: 'copy of the permit', kind: 'permit', date: '2026-05-18' },
      { id: 'letter', what: 'letter of the office', kind: 'letter', date: '2026-03' },
      { id: 'undated', what: 'letter of the neighbor', kind: 'letter' },
      { id: 'report', what: 'report of the fitter', kind: 'report', date: '2025-12-01' },
      { id: 'receipt', what: 'receipt', kind: 'receipt', date: '2025-12-01' },
    ],
    systems: [
      {
        id: 'furnace',
        is: 'furnace, gas',
        installed: { is: '2026-04-09', evidence: ['letter', 'undated', 'receipt'] },
        made: { is: '2026-02', evidence: ['report'] },
      },
      { id: 'hood', is: 'range hood', installed: '2026-05-13', evidence: ['BY_ENTRY', 'BY_CAMERA', 'LABEL'] },
    ],
    work: [
      {
        id: 'rail',
        what: 'rail',
        did: 'new',
        done: '2026-05-20',
        evidence: ['EARLY', 'BEFORE', 'DURING', 'AFTER', 'NO_DAY'],
        photos: { before: 'BEFORE', during: ['DURING'], after: 'AFTER' },
      },
    ],
    photos: {
      BY_ENTRY: { shows: 'hood', taken: '2026-03-02' },
      BY_CAMERA: { shows: 'hood', when: 'after' },
      LABEL: { shows: 'label of the hood', when: 'label', taken: '2026-03-02' },
      EARLY: { shows: 'rail', taken: '2026-04' },
      BEFORE: { shows: 'stair', taken: '2026-04' },
      DURING: { shows: 'stair', taken: '2026-04' },
      AFTER: { shows: 'rail', taken: '2026-06' },
      NO_DAY: { shows: 'rail' },
    },
  },
  cameras: new Map([['BY_CAMERA', { takenAt: '2026-03-02T10:00:00', spot: undefined }]]),
};

/** Money that was paid for what is not told, and work that nobody was paid for. */
const PAID: ClashingHouse = {
  spec: {
    house: { bought: '2026-02-17' },
    people: [
      { id: 'plumber', name: 'Ridge Street Plumbing' },
      { id: 'joiner', name: 'Hollow Joinery' },
      { id: 'mason', name: 'Weir Masons' },
    ],
    money: { role: 'dealer', payees: [{ name: 'Alder Hardware', sells: 'goods' }] },
    levels: [LEVEL, { id: 'upper', name: 'Upper level', grade: 'above' }],
    structures: [{ id: 'shed', is: 'shed', name: 'Garden shed', attached: false }],
    rooms: [HALL, { id: 'loft', level: 'upper', use: 'living' }],
    systems: [{ id: 'furnace', is: 'furnace, gas', name: 'Furnace' }],
    work: [
      { id: 'rail', what: 'rail', did: 'new', done: '2026-05-02', where: ['loft'], by: 'joiner' },
      { id: 'gate', what: 'gate', did: 'new', done: '2026-05-03', by: 'joiner' },
    ],
  },
  costs: [
    { bucket: 'improvement', cents: 1_200, payee: 'Alder Hardware', what: 'knobs', place: 'gate' },
    { bucket: 'repair', cents: 9_000, payee: 'Ridge Street Plumbing', what: 'drain', place: 'shed' },
    { bucket: 'repair', cents: 9_000, payee: 'Ridge Street Plumbing', what: 'trap' },
    { bucket: 'restoration', cents: 9_000, payee: 'Weir Masons', what: 'chimney' },
    {
      bucket: 'improvement',
      cents: 500,
      payee: 'Shop',
      what: 'shelf #2, {oak: "long"} [new]',
      place: 'hall',
    },
    { bucket: 'improvement', cents: 500, payee: 'Shop', what: 'bracket', place: 'hall' },
    { bucket: 'repair', cents: 500, payee: 'Shop', what: 'hinge', place: 'shed' },
    { bucket: 'repair', cents: 700, payee: 'Shop', what: 'filter', place: 'furnace' },
    {
      bucket: 'improvement',
      cents: 1_000,
      payee: 'Switch Electric',
      what: 'Re-wiring of the #1 upper level, (all)',
    },
    { bucket: 'improvement', cents: 1_000, payee: 'Firm', what: 'the new driveway', date: '2026-07-02' },
    { bucket: 'improvement', cents: 1_000, payee: 'Firm', what: 'new windows', place: 'loft' },
    { bucket: 'improvement', cents: -1_000, payee: 'Firm', what: 'new siding' },
    { bucket: 'upkeep', cents: 1_000, payee: 'Firm', what: 'new roof', place: 'hall' },
  ],
};

it('days, deeds and costs that contradict each other are told as they were', () => {
  expectWhole('days-and-costs', {
    'older than the house': OLDER,
    'owned and sold': OWNED,
    offered: OFFERED,
    permits: PERMITS,
    evidence: EVIDENCE,
    paid: PAID,
  });
});
