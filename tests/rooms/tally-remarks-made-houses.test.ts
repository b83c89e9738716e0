/** What a draft is held against where a folder tells little, or tells it in its own way: houses of a few words. */
import { describe, expect, it } from 'vitest';
import type { PartialSpec } from './house-from.js';
import { checkOfSpec, linesFound } from './remarks-of.js';

type Room = NonNullable<PartialSpec['rooms']>[number];

const MAIN = { id: 'main', name: 'Main level', grade: 'above' } as const;
const bath = (more: Partial<Room>): Room => ({
  id: 'bath',
  level: 'main',
  use: 'bath',
  bath: 'full',
  ...more,
});

type Case = readonly [sentence: string, spec: PartialSpec, draft: string, found: readonly string[]];

/** All that is found in a draft: verdict, rule, the characters underlined. */
const CASES: readonly Case[] = [
  [
    'left, though it was put in after the house was bought',
    {
      house: { bought: '2026-02-01' },
      systems: [{ id: 'w', is: 'water heater', installed: '2026-05-02', kept: true }],
    },
    'New water heater',
    ['contradicted newness.new: New water heater'],
  ],
  [
    'a ceiling that slopes',
    {
      levels: [{ ...MAIN, ceiling: "8'" }],
      rooms: [
        { id: 'b', level: 'main', use: 'family', ceiling: { 'at-7-ft': "9' x 12'", 'at-5-ft': "12' x 12'" } },
      ],
    },
    'Vaulted ceiling in the family room',
    ['no-fact not-told: Vaulted ceiling'],
  ],
  [
    'a note that denies a cover',
    { structures: [{ id: 'patio', is: 'patio', note: 'not covered' }] },
    'A covered patio',
    ['contradicted kind.covered: covered patio'],
  ],
  [
    'an answer that denies smoke alarms',
    { answers: [{ ask: 'Is it safe?', answer: 'There is no smoke alarm in the cellar.' }] },
    'Smoke alarms in each room',
    ['contradicted other-kind: Smoke alarms'],
  ],
  [
    'an upper level that the folder lacks: all its bedrooms are counted',
    {
      house: { storeys: 'two' },
      levels: [MAIN],
      rooms: [1, 2].map((n) => ({ id: `b${n}`, level: 'main', use: 'bedroom' })),
    },
    'Upstairs are three bedrooms',
    ['contradicted count.bedrooms: three bedrooms'],
  ],
  [
    'made shortly before it was bought, and left',
    {
      house: { bought: '2026-05-01' },
      systems: [{ id: 'w', is: 'water heater', made: '2026-03', kept: true }],
    },
    'New water heater',
    ['contradicted newness.new: New water heater'],
  ],
  [
    'put in in 2024 or after: that may be long ago',
    { systems: [{ id: 'w', is: 'water heater', installed: '2024/..' }] },
    'New water heater',
    ['no-fact newness.new: New water heater'],
  ],
  [
    'put in by a day, and left',
    {
      house: { bought: '2026-05-01' },
      systems: [{ id: 'w', is: 'water heater', installed: '../2026-04', kept: true }],
    },
    'New water heater',
    ['contradicted newness.new: New water heater'],
  ],
  [
    'work of which nobody knows when',
    {
      levels: [MAIN],
      rooms: [{ id: 'k', level: 'main', use: 'kitchen' }],
      people: [{ id: 'o', name: 'A Smith' }],
      work: [{ id: 'w', what: 'kitchen', did: 'replaced', where: ['k'], by: 'o' }],
    },
    'Updated kitchen',
    ['backed newness.updated: Updated kitchen'],
  ],
  [
    'cabinets that were left',
    {
      levels: [MAIN],
      rooms: [
        { id: 'k', level: 'main', use: 'kitchen', finishes: [{ on: 'cabinets', what: 'oak', kept: true }] },
      ],
    },
    'Refaced kitchen cabinets',
    ['contradicted newness.refaced: Refaced kitchen cabinets'],
  ],
  [
    'a sink of which nothing else is told',
    {
      levels: [MAIN],
      rooms: [{ id: 'k', level: 'main', use: 'kitchen', finishes: [{ on: 'sink', what: 'steel' }] }],
    },
    'The old kitchen sink was thrown out',
    ['no-fact newness.old: old kitchen sink', 'no-fact newness.discarded: thrown out'],
  ],
  [
    'work on the vanity of one bath, where the old ones stand in both',
    {
      levels: [MAIN],
      rooms: [1, 2].map((n) =>
        bath({ id: `bath-${n}`, finishes: [{ on: 'vanity', what: 'oak', kept: true }] }),
      ),
      work: [{ id: 'w', what: 'vanity', did: 'replaced', where: ['bath-1'], done: '2026-01-10' }],
    },
    'New vanities in both baths',
    ['contradicted newness.new: New vanities'],
  ],
  [
    'a house of two storeys of which only one is told',
    { house: { storeys: 'two' }, levels: [MAIN], rooms: [{ id: 'b', level: 'main', use: 'bedroom' }] },
    'Upstairs windows',
    [],
  ],
  ['floors of which nothing is told', {}, 'Tile throughout', []],
  [
    'a system that only its name tells',
    { systems: [{ id: 'w', is: 'gadget', name: 'Water heater', made: '2020' }] },
    'New water heater',
    ['contradicted newness.new: New water heater'],
  ],
  [
    'a level below ground with a door to the yard',
    {
      levels: [MAIN, { id: 'low', name: 'Lower level', grade: 'below', note: 'sliding door to the yard' }],
      rooms: [{ id: 'b', level: 'low', use: 'family' }],
    },
    'A walk-out basement',
    ['backed there: walk-out basement'],
  ],
  [
    'an inlet is no generator',
    { systems: [{ id: 'g', is: 'generator', name: 'Generator inlet' }] },
    'Standby generator',
    ['no-fact kind.generator-kind: Standby generator', 'contradicted not-there: generator'],
  ],
  [
    'a floor that was left, with its date',
    {
      levels: [MAIN],
      rooms: [
        {
          id: 'k',
          level: 'main',
          use: 'kitchen',
          finishes: [{ on: 'floor', what: 'oak', done: '2010', kept: true }],
        },
      ],
    },
    'New kitchen floor',
    ['contradicted newness.new: New kitchen floor'],
  ],
  [
    'a shed with walls and a floor',
    { structures: [{ id: 'shed', is: 'shed', finished: true }] },
    'A finished shed',
    ['backed there: shed'],
  ],
  [
    'a system that was taken out',
    { systems: [{ id: 'w', is: 'water heater', did: 'removed' }] },
    'New water heater',
    ['no-fact not-told: New water heater'],
  ],
  [
    'a room without sides',
    { levels: [MAIN], rooms: [{ id: 'den', level: 'main', use: 'family' }] },
    'A family room of 300 sq ft',
    ['no-fact size.room: 300 sq ft'],
  ],
  [
    'a room whose outline does not close',
    {
      levels: [MAIN],
      rooms: [{ id: 'den', level: 'main', use: 'family', outline: ["N 10'", "E 10'", "S 10'"] }],
    },
    'A family room of 300 sq ft',
    ['no-fact size.room: 300 sq ft'],
  ],
  [
    'the guests’ bath where the only other one is a half bath',
    {
      levels: [MAIN],
      rooms: [
        { id: 'primary-bath', level: 'main', use: 'bath', bath: 'full' },
        {
          id: 'powder',
          name: 'Powder room',
          level: 'main',
          use: 'bath',
          bath: 'half',
          finishes: [{ on: 'floor', what: 'slate', kept: true }],
        },
      ],
    },
    'The guest bath has a new floor',
    ['backed place: bath', 'contradicted newness.new: new floor'],
  ],
  [
    'a part that was added beside what is there',
    {
      systems: [{ id: 'p', is: 'electrical panel', name: 'Panel' }],
      work: [{ id: 'w', what: 'sub panel', did: 'added', done: '2020' }],
    },
    'New sub panel',
    ['contradicted newness.new: New sub panel'],
  ],
  [
    'the permit of what a sentence is about',
    {
      permits: [{ id: 'd', number: '1', what: 'deck', state: 'final', final: '2020-01-01' }],
      structures: [{ id: 'deck', is: 'deck' }],
      work: [{ id: 'w', what: 'deck', did: 'new', where: ['deck'], permit: 'd', done: '2020' }],
    },
    'The deck gained a permitted sauna and was enlarged',
    ['backed there: deck', 'backed permit: permitted'],
  ],
  [
    'a ban on smoking denies no alarm',
    { answers: [{ ask: 'May one smoke?', answer: 'No smoking.' }] },
    'Smoke alarms in each room',
    [],
  ],
  [
    'a pedestal where the folder has a vanity',
    { levels: [MAIN], rooms: [bath({ finishes: [{ on: 'vanity', what: '32 in, one basin' }] })] },
    'A pedestal sink in the bath',
    ['contradicted kind.sink-mount: pedestal sink'],
  ],
  [
    'a pedestal that the folder has',
    { levels: [MAIN], rooms: [bath({ finishes: [{ on: 'vanity', what: 'pedestal basin' }] })] },
    'A pedestal sink in the bath',
    [],
  ],
  [
    'a pedestal in one of two baths, one of which tells of no basin',
    {
      levels: [MAIN],
      rooms: [bath({ finishes: [{ on: 'vanity', what: '32 in, one basin' }] }), bath({ id: 'b2' })],
    },
    'Pedestal sinks',
    [],
  ],
  [
    'ducts where all that heats and cools has none',
    {
      systems: [
        { id: 's', is: 'mini-split' },
        { id: 't', is: 'thermostat' },
      ],
    },
    'New ducts',
    ['contradicted other-kind: New ducts'],
  ],
  [
    'a ceiling of one flat height',
    { levels: [{ ...MAIN, ceiling: "8'" }], rooms: [{ id: 'b', level: 'main', use: 'family' }] },
    'Vaulted ceiling in the family room',
    ['contradicted kind.ceiling-shape: ceiling'],
  ],
];

describe('a draft about a house of a few words', () => {
  it.each(CASES)('%s', (_, spec, draft, found) => {
    expect(linesFound(checkOfSpec(spec)(draft))).toEqual(found);
  });
});
