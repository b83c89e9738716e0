/** What the folder says twice: of the sale, of lead, of water and sewer, of the garage, of finishes and of money. */
import { describe, expect, it } from 'vitest';
import { printFactPath } from '../../src/diagnostics/fact-path.js';
import { askedQuestions, isAskedBy, whatToType } from '../../src/tally/tables/questions.js';
import { deriveTally } from '../../src/tally/tally.js';
import { houseFrom, type PartialSpec } from './house-from.js';
import { costs, ledgerFrom } from './ledger-from.js';

const AS_OF = '2026-11-20';
const LEVEL = { id: 'main', name: 'Main level', grade: 'above', size: `40' x 26'`, ceiling: `8'` } as const;
const UPPER = { id: 'upper', name: 'Half storey', grade: 'above', size: `30' x 16'`, ceiling: `8'` } as const;

const told = (spec: PartialSpec, code = 'tally.clash'): string[] =>
  deriveTally(houseFrom(spec), AS_OF)
    .diagnostics.filter((one) => one.code === code && !/to escape by/.test(one.message))
    .map(
      ({ severity, path, beside }) =>
        `${severity} ${printFactPath(path ?? [])}${beside === undefined ? '' : ` × ${printFactPath(beside)}`}`,
    );

describe('a dwelling said to have no bedroom', () => {
  const spec: PartialSpec = {
    house: { built: 1948 },
    levels: [LEVEL],
    rooms: [{ id: 'bed', level: 'main', use: 'bedroom', size: `10' x 11'` }],
    duties: { studio: 'yes' },
  };

  it('clashes with a bedroom, and the lead rules go on reaching it', () => {
    expect(told(spec)).toEqual(['error duties.studio × rooms[0].use']);
    const { tally } = deriveTally(houseFrom(spec), AS_OF);
    expect(tally.lead.target).toBe('yes');
    const lead = tally.duties.duties.filter(({ rule }) =>
      /^us-lead-(known|pamphlet|attachment)/.test(rule.id),
    );
    expect(lead.map(({ result }) => result)).toEqual(['applies', 'applies', 'applies']);
  });

  it('is outside the lead rules where no bedroom is recorded', () => {
    const none: PartialSpec = { ...spec, rooms: [{ id: 'main-room', level: 'main', use: 'living' }] };
    expect(told(none)).toEqual([]);
    expect(deriveTally(houseFrom(none), AS_OF).tally.lead.target).toBe('no');
  });
});

describe('“none known” of lead', () => {
  const lead = (known: string, rest: PartialSpec): string[] => told({ ...rest, lead: { known } });
  const windows = (note: string): PartialSpec => ({ conditions: [{ what: 'cellar windows flake', note }] });

  it('clashes with a test that found it, wherever that is told', () => {
    const found = windows('tested positive for lead; left alone');
    expect(lead('None known.', found)).toEqual(['error lead.known × conditions[0].note']);
    expect(lead('no known lead paint', found)).toEqual(['error lead.known × conditions[0].note']);
    expect(lead('none known', windows('lead paint was found here'))).toHaveLength(1);
    expect(
      lead('none known', {
        work: [
          { id: 'a', what: 'casings', did: 'repaired', how: 'wet; the casings tested positive for lead' },
        ],
      }),
    ).toEqual(['error lead.known × work[0].how']);
    expect(
      lead('none known', { answers: [{ ask: 'Is there lead paint?', answer: 'Yes, at the front steps.' }] }),
    ).toEqual(['error lead.known × answers[0].answer']);
  });

  it('clashes with nothing that leaves it open or speaks of something else', () => {
    for (const note of [
      'no place tested positive for lead',
      'not tested positive for lead',
      'if it tests positive for lead, leave it alone',
      'the tap water tested positive for lead',
      'lead flashing was found sound',
      'may have lead paint',
    ])
      expect(lead('None known.', windows(note)), note).toEqual([]);
    const found = windows('tested positive for lead');
    for (const known of [
      'None known but the cellar windows.',
      'Lead paint at the cellar windows.',
      'not known',
    ])
      expect(lead(known, found), known).toEqual([]);
    expect(
      lead('none known', {
        answers: [{ ask: 'Was the house tested for lead?', answer: 'Yes, in 2025; none was found.' }],
      }),
    ).toEqual([]);
  });
});

describe('an answer about sewer, water or dues', () => {
  const answer = (ask: string, words: string, house: PartialSpec['house']): string[] =>
    told({ house, answers: [{ ask, answer: words }] });

  it.each([
    ['Is it on a sewer or a septic tank?', 'Septic tank.', { sewer: 'public' }, 'sewer'],
    [
      'Is it on a sewer or a septic tank?',
      'It is on the public sewer.',
      { sewer: 'septic tank and leach field' },
      'sewer',
    ],
    ['Sewer or septic?', 'City sewer', { sewer: 'septic' }, 'sewer'],
    ['Is there a well or town water?', 'A drilled well.', { water: 'public' }, 'water'],
    ['Where does the water come from?', 'Our own well, 120 ft deep.', { water: 'town water' }, 'water'],
    ['Is the water public?', 'Public.', { water: 'private well' }, 'water'],
  ] as const)('%s %s', (ask, words, house, word) => {
    expect(answer(ask, words, house)).toEqual([`error answers[0].answer × house.${word}`]);
  });

  it.each([
    ['Is it on a sewer or a septic tank?', 'Public sewer.', { sewer: 'public' }],
    [
      'Is it on a sewer or a septic tank?',
      'Septic tank until 1998, public sewer since.',
      { sewer: 'public' },
    ],
    ['Was the sewer line looked into?', 'Sewer line was not looked into.', { sewer: 'septic' }],
    ['Is it on a sewer or a septic tank?', 'Septic tank.', {}],
    ['Has water ever come into the cellar?', 'Well below the window.', { water: 'public' }],
    ['Is there enough hot water?', 'Well enough for two baths.', { water: 'public' }],
    ['Is there a well or town water?', 'Town water; the old well is filled.', { water: 'public' }],
  ] as const)('%s %s is left alone', (ask, words, house) => {
    expect(answer(ask, words, house)).toEqual([]);
  });

  it('that there are no dues can be said, and how is told', () => {
    const question = askedQuestions().find(({ id }) => id === 'dues');
    if (question === undefined) throw new Error('there is no question about dues');
    expect(whatToType(question)).toContain(
      'answers:  - { ask: "Are there association dues?", answer: none }',
    );
    expect(isAskedBy(question, 'Are there association dues?')).toBe(true);
  });

  it('none, beside dues', () => {
    const dues: PartialSpec['dues'] = [{ to: 'Heron Lane Owners', amount: '64.00', per: 'month' }];
    expect(told({ dues, answers: [{ ask: 'Are there association dues?', answer: 'none' }] })).toEqual([
      'error answers[0].answer × dues[0].to',
    ]);
    expect(told({ answers: [{ ask: 'Are there association dues?', answer: 'none' }] })).toEqual([]);
  });
});

describe('words on parking', () => {
  const parking = (words: string, attached: boolean, name = 'Garage'): string[] =>
    told({ house: { parking: words }, structures: [{ id: 'garage', is: 'garage', name, attached }] });

  it('clash with a garage of another kind', () => {
    expect(parking('attached garage, two cars', false)).toEqual([
      'error house.parking × structures[0].attached',
    ]);
    expect(parking('detached garage', true)).toEqual(['error house.parking × structures[0].attached']);
    expect(parking('garage, two cars', false, 'One-car garage')).toEqual([
      'error house.parking × structures[0]',
    ]);
    expect(
      told({
        house: { parking: 'detached garage' },
        levels: [LEVEL],
        rooms: [{ id: 'garage', level: 'main', use: 'garage' }],
      }),
    ).toEqual(['error house.parking × rooms[0].use']);
  });

  it('are left alone where they may be of it', () => {
    expect(parking('detached garage, one car, and a gravel drive', false)).toEqual([]);
    expect(parking('garage, two cars', false)).toEqual([]);
    expect(parking('attached carport, detached garage', true)).toEqual([]);
    expect(
      told({
        house: { parking: 'attached garage, one car' },
        structures: [
          { id: 'a', is: 'garage', attached: true },
          { id: 'b', is: 'garage', attached: false },
        ],
      }),
    ).toEqual([]);
  });
});

describe('a finish', () => {
  const finish = (done: string, by: string | undefined, work: string | undefined, kept = false): string[] =>
    told({
      house: { bought: '2026-02-17' },
      levels: [LEVEL],
      rooms: [
        {
          id: 'hall',
          level: 'main',
          use: 'hall',
          finishes: [
            {
              on: 'walls',
              what: 'paint',
              done,
              ...(by && { by }),
              ...(work && { work }),
              ...(kept && { kept }),
            },
          ],
        },
      ],
      work: [{ id: 'paint', what: 'walls painted', did: 'painted', done: '2026-05', by: 'owner' }],
    });
  const bought = 'warning rooms[0].finishes[0].done × house.bought';

  it('of the owner’s is not older than the purchase', () => {
    expect(finish('2025-11', 'owner', undefined)).toEqual([bought]);
    expect(finish('2025-11', 'family', 'paint')).toEqual([bought]);
    // The work says who did it.
    expect(finish('2025-11', undefined, 'paint')).toEqual([bought]);
  });

  it('is of about the day of its work', () => {
    expect(finish('2026-09-12', 'owner', 'paint')).toEqual([
      'warning rooms[0].finishes[0].done × work[0].done',
    ]);
    // The work ended by 31 May; 92 days later is 31 August.
    expect(finish('2026-08-31', 'owner', 'paint')).toEqual([]);
    expect(finish('2026-09-01', 'owner', 'paint')).toHaveLength(1);
    expect(finish('2026-09-12?', 'owner', 'paint')).toEqual([]);
    expect(finish('2026-04', 'owner', 'paint')).toEqual([]);
    expect(finish('2026-09-12', 'owner', undefined)).toEqual([]);
  });
});

describe('words of the sale', () => {
  it('on a pool fit what the folder describes', () => {
    expect(told({ duties: { pool: 'yes' } })).toEqual(['warning duties.pool']);
    expect(told({ duties: { pool: 'yes' }, pool: {} })).toEqual([]);
    expect(told({ duties: { pool: 'yes' }, structures: [{ id: 'pool-patio', is: 'patio' }] })).toEqual([]);
    expect(told({ duties: { pool: 'no' }, pool: {} })).toEqual(['error duties.pool × pool']);
    expect(told({ duties: { pool: 'no' } })).toEqual([]);
  });

  it('on an association fit the dues', () => {
    const dues = (to: string, note?: string): string[] =>
      told({
        duties: { association: 'no' },
        dues: [{ to, amount: '64.00', per: 'month', ...(note === undefined ? {} : { note }) }],
      });
    expect(dues('Heron Lane Owners’ Association')).toEqual(['warning duties.association × dues[0].to']);
    expect(dues('Heron Lane Owners’ Association', 'voluntary')).toEqual([]);
    expect(dues('lighting district')).toEqual([]);
  });

  it('have no contract that is still to come', () => {
    const future = (contract: string): string[] => told({ duties: { contract } }, 'tally.future');
    expect(future('2026-11-21')).toEqual(['error duties.contract']);
    expect(future('2026-11-20')).toEqual([]);
  });
});

describe('money and work', () => {
  const spec: PartialSpec = {
    house: { bought: '2026-02-17' },
    people: [{ id: 'mill-race', name: 'Mill Race Renovation', trade: 'carpentry' }],
    money: { role: 'dealer', payees: [{ name: 'Alder Hardware', sells: 'goods' }] },
    levels: [LEVEL, UPPER],
    rooms: [
      { id: 'kitchen', level: 'main', use: 'kitchen' },
      { id: 'landing', level: 'upper', use: 'hall' },
    ],
    work: [
      {
        id: 'fronts',
        what: 'kitchen fronts',
        did: 'new',
        where: ['kitchen'],
        done: '2026-04-10',
        by: 'mill-race',
      },
      {
        id: 'circuits',
        what: 'kitchen circuits',
        did: 'new',
        where: ['kitchen'],
        done: '2026-04-12',
        by: 'owner',
      },
      {
        id: 'carpet',
        what: 'carpet of the landing',
        did: 'new',
        where: ['landing'],
        done: '2026-05-12',
        by: 'owner',
      },
    ],
  };
  const PAID = '2026-04-12,Mill Race Renovation,fronts,900.00,improvement,fronts,,,,,';
  const found = async (more: PartialSpec, ...rows: readonly string[]): Promise<string[]> => {
    const house = houseFrom({ ...spec, ...more });
    const { ledger } = await ledgerFrom(costs(...rows), house);
    return deriveTally(house, AS_OF, new Map(), ledger)
      .diagnostics.filter(({ code }) => code === 'tally.clash')
      .map(({ severity, path }) => `${severity} ${printFactPath(path ?? [])}`);
  };

  it('big work that a row calls by its name stands among the work', async () => {
    const wiring = (place: string): string =>
      `2026-05-02,Switch Electric,rewiring of the upper floor,2400.00,improvement,${place},,,,,`;
    expect(await found({}, PAID, wiring(''))).toEqual(['note costs[3].what']);
    expect(await found({}, PAID, wiring('upper'))).toEqual(['note costs[3].what']);
    // The same without a place is answered by the kitchen's circuits, and by wiring upstairs.
    expect(await found({}, PAID, '2026-05-02,Switch Electric,rewiring,2400.00,improvement,,,,,,')).toEqual(
      [],
    );
    const upstairs: NonNullable<PartialSpec['work']>[number] = {
      id: 'wires',
      what: 'wiring',
      did: 'replaced',
      where: ['landing'],
      done: '2026-05-01',
      by: 'owner',
    };
    expect(await found({ work: [...(spec.work ?? []), upstairs] }, PAID, wiring(''))).toEqual([]);
    // Wiring that was there when the house was bought is no work.
    const asFound = { id: 'old', is: 'wiring, copper', kept: true, where: 'upper' } as const;
    expect(await found({ systems: [asFound] }, PAID, wiring(''))).toEqual(['note costs[3].what']);
  });

  it('a shop’s row pays nobody’s work', async () => {
    const knobs = '2026-05-09,Alder Hardware,knobs,99.33,improvement,fronts,,,,,';
    expect(await found({}, knobs)).toEqual(['note work[0].by']);
    expect(await found({}, knobs, PAID)).toEqual([]);
    expect(await found({}, knobs, '2026-05-12,Mill Race Renovation,rest,300.00,improvement,,,,,,')).toEqual(
      [],
    );
  });
});
