/** “All new …” beside what was kept, and money beside work: which words mean which thing, and what is counted. */
import { describe, expect, it } from 'vitest';
import type { Diagnostic } from '../../src/diagnostics/diagnostic.js';
import { printFactPath } from '../../src/diagnostics/fact-path.js';
import { deriveTally } from '../../src/tally/tally.js';
import { houseFrom, type PartialSpec } from './house-from.js';
import { costs, ledgerFrom } from './ledger-from.js';

const AS_OF = '2026-11-20';
const LEVEL = { id: 'main', name: 'Main level', grade: 'above', size: `40' x 26'`, ceiling: `8'` } as const;

const clashes = (diagnostics: readonly Diagnostic[]): string[] =>
  diagnostics
    .filter(({ code }) => code === 'tally.clash')
    .map(({ path = [], message }) => `${printFactPath(path)}: ${message}`);

describe('“all new …” beside one thing that was kept', () => {
  type System = NonNullable<PartialSpec['systems']>[number];
  type Finish = NonNullable<NonNullable<PartialSpec['rooms']>[number]['finishes']>[number];
  const kept = (is: string): System => ({ id: 'old', is, kept: true });
  const told = (answer: string, systems: readonly System[], finishes: readonly Finish[] = []): string[] =>
    clashes(
      deriveTally(
        houseFrom({
          levels: [LEVEL],
          rooms: [{ id: 'room', level: 'main', use: 'kitchen', finishes: [...finishes] }],
          systems: [...systems],
          answers: [{ ask: 'What is new?', answer }],
        }),
        AS_OF,
      ).diagnostics,
    );

  it.each([
    ['windows', 'window, wood'],
    ['wiring', 'wiring, copper'],
    ['plumbing', 'supply pipes, copper'],
    ['piping', 'drain pipes, cast iron'],
    ['roofs', 'roof, slate'],
    ['appliances', 'dishwasher'],
    ['toilets', 'toilet'],
    ['faucets', 'faucet, kitchen'],
    ['lights', 'light, porch'],
  ])('all new %s clashes with a kept %s, and with nothing else that is kept', (words, is) => {
    const said = `answers[0].answer: “All new ${words}” is said here, and`;
    expect(told(`All new ${words}.`, [kept(is)])).toEqual([`${said} “${is}” is kept as found`]);
    const others = [kept('chimney'), { ...kept('garage door opener'), id: 'opener' }];
    expect(told(`All new ${words}.`, others, [{ on: 'hardware', what: 'old knobs', kept: true }])).toEqual(
      [],
    );
  });

  it.each([
    ['windows', 'windows'],
    ['flooring', 'floor'],
    ['doors', 'doors'],
    ['cabinets', 'cabinets'],
    ['countertops', 'counter'],
    ['paint', 'walls'],
    ['trim', 'trim'],
    ['toilets', 'toilet'],
    ['faucets', 'faucet'],
    ['lighting', 'lights'],
  ] as const)('all new %s clashes with a finish on: %s', (words, on) => {
    expect(told(`All new ${words}.`, [], [{ on, what: 'old', kept: true }])).toEqual([
      `answers[0].answer: “All new ${words}” is said here, and “old” (${on}, Room) is kept as found`,
    ]);
    expect(told(`All new ${words}.`, [], [{ on: 'hardware', what: 'old', kept: true }])).toEqual([]);
  });

  it('counts the others, and tells what was only refinished', () => {
    const floor = (did: 'refinished' | 'repaired' | 'new'): Finish => ({
      on: 'floor',
      what: `${did} oak`,
      did,
    });
    expect(told('All new flooring.', [], [floor('new'), floor('refinished'), floor('repaired')])).toEqual([
      'answers[0].answer: “All new flooring” is said here, and “refinished oak” (floor, Room) is refinished (and 1 more)',
    ]);
  });
});

describe('costs beside work', () => {
  const SPEC = {
    house: { bought: '2026-02-17' },
    people: [
      { id: 'plumber', name: 'Ridge Street Plumbing' },
      { id: 'joiner', name: 'Hollow Joinery' },
    ],
    levels: [LEVEL],
    rooms: [
      { id: 'kitchen', level: 'main', use: 'kitchen' },
      { id: 'hall', level: 'main', use: 'hall' },
    ],
  } as const satisfies PartialSpec;
  const told = async (spec: PartialSpec, ...rows: readonly string[]): Promise<string[]> => {
    const house = houseFrom({ ...SPEC, ...spec });
    const { ledger } = await ledgerFrom(costs(...rows), house);
    return clashes(deriveTally(house, AS_OF, new Map(), ledger).diagnostics);
  };
  const shelf = (what: string): string => `2026-05-01,Alder Hardware,${what},12.00,improvement,hall,,,,,`;

  it('one message for a place or a payee, which counts their other rows', async () => {
    expect(await told({}, shelf('shelf'), shelf('bracket'), shelf('screws'))).toEqual([
      'costs[2].place: “shelf” (and 2 more) was paid for “Hall”, and the folder tells of no work there',
    ]);
    expect(await told({}, shelf('shelf'))).toEqual([
      'costs[2].place: “shelf” was paid for “Hall”, and the folder tells of no work there',
    ]);
    const rows = ['drain', 'trap'].map(
      (what) => `2026-05-01,Ridge Street Plumbing,${what},90.00,repair,,,,,,`,
    );
    expect(await told({}, ...rows)).toEqual([
      'costs[2].payee: Ridge Street Plumbing was paid for “drain” (and 1 more), and no work in the folder was done by them',
    ]);
    expect(
      await told({ systems: [{ id: 'f', is: 'furnace' }] }, rows[0]?.replace('repair,', 'repair,f') ?? ''),
    ).toEqual([
      'costs[2].payee: Ridge Street Plumbing was paid for “drain”, and no work in the folder was done by them',
    ]);
  });

  it('a hired person without a row is asked for, unless the work cost nothing', async () => {
    const work = (note?: string): PartialSpec => ({
      work: [
        {
          id: 'rail',
          what: 'rail',
          did: 'new',
          done: '2026-05-02',
          where: ['hall'],
          by: 'joiner',
          ...(note ? { note } : {}),
        },
      ],
    });
    expect(await told(work(), shelf('shelf'))).toEqual([
      'work[0].by: “rail” was done by Hollow Joinery, and costs.csv has no row to them and none for it',
    ]);
    expect(await told(work('under warranty'), shelf('shelf'))).toEqual([]);
    // A sheet with its headings alone was only just begun.
    expect(await told(work())).toEqual([]);
  });

  it('big work is looked for in the place of its row, with the level that the place is on', async () => {
    const paid = (what: string, place = ''): string =>
      `2026-05-09,Switch Electric,${what},2400.00,improvement,${place},,,,,`;
    const levels = [LEVEL, { ...LEVEL, id: 'upper', name: 'Half storey' }];
    const upstairs = (where: string): PartialSpec => ({
      levels,
      rooms: [...SPEC.rooms, { id: 'loft', level: 'upper', use: 'bedroom', windows: [{ name: 'west' }] }],
      work: [{ id: 'power', what: 'circuits', did: 'new', where: [where], done: '2026-05-12', by: 'owner' }],
    });
    const none =
      'costs[2].what: “rewiring” was paid to Switch Electric as an improvement, and the folder tells of no such work';
    expect(
      await told({ work: [{ id: 'a', what: 'rail', did: 'new', by: 'owner' }] }, paid('rewiring')),
    ).toEqual([none]);
    expect(await told(upstairs('hall'), paid('rewiring'))).toEqual([]);
    expect(await told(upstairs('hall'), paid('rewiring of the loft'))).toEqual([
      `${none.replace('rewiring', 'rewiring of the loft')} there`,
    ]);
    expect(await told(upstairs('upper'), paid('rewiring of the loft'))).toEqual([]);
    expect(await told(upstairs('loft'), paid('rewiring of the half storey'))).toEqual([]);
  });
});
