/** Money beside work: what a row calls big work, what the folder may call the same, and what answers a row. */
import { describe, expect, it } from 'vitest';
import { clashesOf, placesOf } from './clashes-as-text.js';
import type { PartialSpec } from './house-from.js';
import type { CostWords } from './tally-money-case.js';

type Work = NonNullable<PartialSpec['work']>[number];

const LEVELS = [
  { id: 'main', name: 'Main level', grade: 'above' },
  { id: 'upper', name: 'Upper level', grade: 'above' },
] as const;
const SPEC = {
  house: { bought: '2026-02-17' },
  levels: [...LEVELS],
  structures: [{ id: 'shed', is: 'shed', attached: false }],
  rooms: [
    { id: 'hall', level: 'main', use: 'hall' },
    { id: 'loft', level: 'upper', use: 'living' },
  ],
} satisfies PartialSpec;

const row = (what: string, more: Partial<CostWords> = {}): CostWords => ({
  what,
  bucket: 'improvement',
  cents: 100_000,
  payee: 'Firm',
  ...more,
});
const work = (what: string, more: Partial<Work> = {}): Work => ({ id: 'job', what, did: 'new', ...more });
const beside = (spec: PartialSpec, ...costs: readonly CostWords[]): string[] =>
  placesOf({ spec: { ...SPEC, ...spec }, costs });
const WHAT = ['costs[2].what'];

describe('big work', () => {
  it.each<readonly [paid: readonly string[], told: readonly string[]]>([
    [
      ['rewiring', 'Rewire', 'rewired', 're-wiring', 'new wiring'],
      [
        ...['wiring', 'wire', 'wired', 'wires', 'rewire-job', 're-wirings', 'rewirings', 'circuits'],
        ...['electrics', 'service panel', 'sub-panel', 'subpanel', 'breaker'],
      ],
    ],
    [
      ['repiping', 're-piping', 'repipe', 'repiped', 'new pipes', 'new supply pipes', 'new water piping'],
      ['pipe', 'pipes', 'piping', 'piped', 'plumbing', 'drain', 'water line'],
    ],
    [
      ['reroof', 're-roofing', 'reroofed', 'new roof', 'new shingles', 'roof replaced', 'roof replacement'],
      ['roof', 'shingles', 'underlayment'],
    ],
    [
      ['new windows', 'replacement windows', 'windows replaced'],
      ['window', 'glazing', 'glass'],
    ],
    [
      ['new siding', 'residing', 're-siding'],
      ['siding', 'clapboard', 'stucco'],
    ],
    [
      [
        ...['new furnace', 'replacement boiler', 'new gas furnace', 'new oil boiler', 'new electric furnace'],
        ...['new heat pump', 'new air conditioner', 'new air conditioning'],
      ],
      [
        'furnace',
        'boiler',
        'heat',
        'heating',
        'heat pump',
        'air conditioner',
        'air handler',
        'cooling',
        'HVAC',
      ],
    ],
    [['new water heater', 'replacement gas water heater', 'new electric water heater'], ['water heater']],
    [
      ['underpinning', 'new foundation', 'new footing', 'new footings', 'foundation repair'],
      ['foundation', 'footing', 'underpinned', 'wall'],
    ],
    [
      ['new sewer', 'new septic', 'sewer line replaced'],
      ['sewer', 'septic', 'drain'],
    ],
    [
      ['new driveway', 'new deck', 'new patio', 'new fence'],
      ['drive', 'deck', 'patio', 'fence', 'concrete', 'paving'],
    ],
  ])('%s is told as %s', (paid, told) => {
    for (const what of paid) {
      expect(beside({}, row(what)), what).toEqual(WHAT);
      expect(beside({ work: [work('shelf')] }, row(what)), what).toEqual(WHAT);
      for (const words of told) expect(beside({ work: [work(words)] }, row(what)), words).toEqual([]);
    }
  });
  it.each([
    'unrewired',
    'wiring',
    'old roof',
    'windows',
    'new window sill',
    'new air',
    'fence',
    'new footing-board',
  ])('“%s” is none, or is called so by its own words', (what) => {
    expect(beside({}, row(what))).toEqual(what === 'new footing-board' ? WHAT : []);
  });
  it('is neither a refund, nor nothing, nor upkeep', () => {
    for (const cents of [0, -1]) expect(beside({}, row('new roof', { cents }))).toEqual([]);
    expect(beside({}, row('new roof', { cents: 1 }))).toEqual(WHAT);
    for (const bucket of ['repair', 'upkeep'] as const)
      expect(beside({}, row('new roof', { bucket }))).toEqual([]);
  });
  it.each<readonly [string, PartialSpec, boolean]>([
    ['how the work was done', { work: [work('attic', { how: 'with new wiring' })] }, true],
    ['work before the purchase', { work: [work('wiring', { done: '2019' })] }, false],
    [
      'a system of the work',
      { systems: [{ id: 's', is: 'wiring' }], work: [work('attic', { systems: ['s'] })] },
      true,
    ],
    ['a system that was put in', { systems: [{ id: 's', is: 'wiring', did: 'new' }] }, true],
    ['a system by its name', { systems: [{ id: 's', is: 'copper', name: 'Wiring', did: 'new' }] }, true],
    ['another system', { systems: [{ id: 's', is: 'wall', did: 'new' }] }, false],
    ['a system that was found', { systems: [{ id: 's', is: 'wiring' }] }, false],
    [
      'a finish',
      {
        rooms: [
          {
            id: 'hall',
            level: 'main',
            use: 'hall',
            finishes: [{ on: 'lights', what: 'wired lamps', did: 'new' }],
          },
        ],
      },
      true,
    ],
  ])('may be told as %s: %s', (_, spec, told) => {
    expect(beside(spec, row('rewiring'))).toEqual(told ? [] : WHAT);
  });
  it('may be told by its surface', () => {
    const rooms: PartialSpec['rooms'] = [
      { id: 'hall', level: 'main', use: 'hall', finishes: [{ on: 'windows', what: 'sashes', did: 'new' }] },
    ];
    expect(beside({ rooms }, row('new windows'))).toEqual([]);
  });
  it.each<readonly [what: string, place: string | undefined, where: readonly string[], told: boolean]>([
    ['rewiring', undefined, ['hall'], true],
    ['rewiring', 'main', ['loft'], true],
    ['rewiring', 'upper', ['hall'], false],
    ['rewiring', 'upper', ['loft'], true],
    ['rewiring', 'loft', ['upper'], true],
    ['rewiring', 'loft', ['hall'], false],
    ['rewiring', 'loft', ['hall', 'loft'], true],
    ['rewiring', 'loft', [], true],
    ['rewiring of the loft', undefined, ['hall'], false],
    ['rewiring of the Upper Level', undefined, ['hall'], false],
    ['rewiring, main and upper', undefined, ['shed'], false],
    ['rewiring, main and upper', undefined, ['hall'], true],
    ['rewiring of the shed', undefined, ['hall'], false],
    ['rewiring of the lofty shedding', undefined, ['hall'], true],
  ])('“%s” in %s is told of work in %j: %s', (what, place, where, told) => {
    const spec: PartialSpec = { work: [work('wiring', { where: [...where] })] };
    expect(beside(spec, row(what, { place })).filter((path) => path.endsWith('.what'))).toEqual(
      told ? [] : WHAT,
    );
  });
  it('is answered by the work or the system that its row names', () => {
    expect(beside({ work: [work('shelf')] }, row('new roof', { place: 'job' }))).toEqual([]);
    const systems = [{ id: 's', is: 'shelf', did: 'new' }] as const;
    expect(beside({ systems: [...systems] }, row('new roof', { place: 's' }))).toEqual([]);
  });
  it.each([
    ['"new roof" #2', 'new-roof-2', 'new roof 2'],
    [' New roof of the shed, [west]', 'new-roof-shed', 'New roof of the shed west'],
    ['– new roof (all) –', 'new-roof-all', '– new roof (all) –'],
    ['a new roof on an in for 2 sheds', 'new-roof-2', 'a new roof on an in for 2 sheds'],
  ])('%s is suggested as %s', (what, id, words) => {
    const [clash] = clashesOf({ spec: SPEC, costs: [row(what)] });
    expect(clash?.hints[0]).toContain(`- { id: ${id}, what: ${words}, did: replaced`);
  });
});

describe('hired work', () => {
  const PEOPLE = [
    { id: 'joiner', name: 'Hollow Joinery' },
    { id: 'plumber', name: 'Ridge Street Plumbing' },
  ];
  const other = row('anything', { bucket: 'upkeep' });
  const hired = (
    more: Partial<Work>,
    house: PartialSpec['house'] = SPEC.house,
    ...rows: CostWords[]
  ): string[] =>
    beside(
      {
        house,
        people: PEOPLE,
        systems: [{ id: 'f', is: 'stair' }],
        work: [work('rail', { by: 'joiner', done: '2026-05-02', ...more })],
      },
      other,
      ...rows,
    );
  it.each<readonly [string, string[], boolean]>([
    ['without a row', hired({}), true],
    ['without a day', hired({ done: undefined }), false],
    ['of a house whose purchase has no day', hired({}, {}), false],
    ['of a house that was bought some day before', hired({}, { bought: '../2026-02-17' }), false],
    ['on the day of the purchase', hired({ done: '2026-02-17' }), true],
    ['of a month that began before it', hired({ done: '2026-02', from: 'seller' }), false],
    ['on some day before another', hired({ done: '../2026-05-02' }), false],
    ...[
      'free',
      'no charge',
      'without charge',
      'nothing paid',
      'nothing was paid',
      'unpaid',
      'under warranty',
    ].map((note) => [`with the remark “${note}”`, hired({ note }), false] as const),
    ['that somebody else paid, by its source', hired({ from: 'seller paid' }), false],
    [
      'with a row to them',
      hired({}, SPEC.house, row('x', { payee: 'Hollow Joinery', bucket: 'upkeep' })),
      false,
    ],
    ['with a row for it', hired({}, SPEC.house, row('x', { place: 'job', bucket: 'upkeep' })), false],
    [
      'with a row for its system',
      hired({ systems: ['f'] }, SPEC.house, row('x', { place: 'f', bucket: 'upkeep' })),
      false,
    ],
  ] as readonly (readonly [string, string[], boolean])[])('%s: %s', (_, places, told) => {
    expect(places).toEqual(told ? ['work[0].by'] : []);
  });

  const pay = row('rail', { payee: 'Hollow Joinery', bucket: 'repair' });
  const doneBy = (spec: PartialSpec): string[] => beside({ people: PEOPLE, ...spec }, pay);
  it('may be told in any place that names them', () => {
    const finishes = [{ on: 'trim', what: 'oak', by: 'joiner' }] as const;
    expect(doneBy({})).toEqual(['costs[2].payee']);
    for (const spec of [
      { work: [work('rail', { by: 'joiner' })] },
      { systems: [{ id: 's', is: 'stair', by: 'joiner' }] },
      { rooms: [{ id: 'hall', level: 'main', use: 'hall', finishes: [...finishes] }] },
      { structures: [{ id: 'shed', is: 'shed', finishes: [...finishes] }] },
      { lead: { known: 'not known', firm: 'joiner' } },
      { measured: { by: 'joiner', method: 'plans' } },
    ] satisfies PartialSpec[])
      expect(doneBy(spec)).toEqual([]);
    const payees = [{ name: 'Hollow Joinery', person: 'joiner', sells: 'goods' }] as const;
    expect(doneBy({ money: { role: 'dealer', payees: [...payees] } })).toEqual([]);
    expect(beside({ people: PEOPLE }, { ...pay, cents: 0 })).toEqual([]);
    expect(beside({ people: PEOPLE }, { ...pay, bucket: 'selling' })).toEqual([]);
  });
});

describe('a row for a place', () => {
  const place = (at: string, spec: PartialSpec): string[] => beside(spec, row('shelf', { place: at }));
  const system = (more: object): PartialSpec => ({
    systems: [{ id: 's', is: 'stair', where: 'loft', ...more }],
  });
  it.each<readonly [string, string, PartialSpec, boolean]>([
    ['where nothing was done', 'loft', {}, true],
    ['where work was done', 'loft', { work: [work('x', { where: ['loft'] })] }, false],
    ['on whose level work was done', 'loft', { work: [work('x', { where: ['upper'] })] }, false],
    ['in whose rooms work was done', 'upper', { work: [work('x', { where: ['loft'] })] }, false],
    ['on another level than the work', 'upper', { work: [work('x', { where: ['hall'] })] }, true],
    ['that is work itself', 'job', { work: [work('x')] }, false],
    ['that is a system with nothing done', 's', system({}), true],
    ['that is a system of work', 's', { ...system({}), work: [work('x', { systems: ['s'] })] }, false],
    ['that is a system with a deed', 's', system({ did: 'cleaned' }), false],
    ['that is a kept system with a deed', 's', system({ did: 'cleaned', kept: true }), false],
    ['that is a system serviced since', 's', system({ serviced: '2026-05' }), false],
    ['that is a system serviced before', 's', system({ serviced: '2026-01' }), true],
    ['that is a system put in since', 's', system({ installed: '2026-05' }), false],
    ['that is a system put in before', 's', system({ installed: '2025' }), true],
    ['in which a system was serviced', 'loft', system({ serviced: '2026-05' }), false],
    ['in which a system stands', 'loft', system({}), true],
    ['without where', 'loft', { systems: [{ id: 's', is: 'stair', serviced: '2026-05' }] }, true],
    [
      'with an alarm put up since',
      'loft',
      { alarms: [{ is: 'smoke', where: 'loft', installed: '2026-05' }] },
      false,
    ],
    ['with an alarm', 'loft', { alarms: [{ is: 'smoke', where: 'loft' }] }, true],
  ])('%s (%s)', (_, at, spec, told) => {
    expect(place(at, spec)).toEqual(told ? ['costs[2].place'] : []);
  });
  it('counts for nothing where nothing was paid', () => {
    expect(beside({}, row('shelf', { place: 'loft', cents: 0 }))).toEqual([]);
    expect(beside({}, row('shelf', { place: 'loft', bucket: 'utilities' }))).toEqual([]);
  });
});
