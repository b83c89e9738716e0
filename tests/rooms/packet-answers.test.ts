/** Questions that buyers ask, answered from facts: each question, silence, the owner's word, and what an edition may tell. */
import { beforeAll, describe, expect, it } from 'vitest';
import { ANSWERS, type AnsweredQuestion, answersOf } from '../../src/packet/answers/answered.js';
import { unansweredOf } from '../../src/packet/answers/unanswered.js';
import { composePacket, contextOf } from '../../src/packet/compose.js';
import type { EditionName } from '../../src/packet/packet.js';
import { questions } from '../../src/packet/sections/questions.js';
import { anchorsOf, wordsOf } from '../../src/packet/words-of.js';
import { answerGaps } from '../../src/tally/gaps-in-answers.js';
import { askedQuestions, isAskedBy, questionGroups } from '../../src/tally/tables/questions.js';
import { deriveTally } from '../../src/tally/tally.js';
import { demoOrder } from './ask-house.js';
import { houseFrom, type PartialSpec } from './house-from.js';
import { markWords, packetOf, plain } from './packet-of.js';

function answersFor(spec: PartialSpec, edition: EditionName = 'buyer') {
  const house = houseFrom(spec);
  const { tally } = deriveTally(house, '2026-06-30');
  return answersOf(contextOf({ folder: 'test-house', house, tally, edition, photos: new Map() }));
}

/** "How it is answered · how it is known"; "open" where nobody has. Fails if it is not asked at all. */
function answerTo(spec: PartialSpec, id: string, edition: EditionName = 'buyer'): string {
  const { answered, open } = answersFor(spec, edition);
  const one = [...answered, ...open].find(({ question }) => question?.id === id);
  if (one === undefined) return 'not asked';
  return open.includes(one) ? 'open' : `${plain(one.answer)} · ${markWords(one.mark)}`;
}

const system = (is: string, more: object = {}) => ({ id: 'thing', is, ...more });

describe('the table of questions', () => {
  it('has an answer for each question, and no answer to another', () => {
    expect(Object.keys(ANSWERS).sort()).toEqual(
      askedQuestions()
        .filter(({ refused }) => refused === undefined)
        .map(({ id }) => id)
        .sort(),
    );
    expect(new Set(askedQuestions().map(({ ask }) => ask)).size).toBe(askedQuestions().length);
    expect(askedQuestions().length).toBeGreaterThanOrEqual(45);
  });

  it('has a heading for each, and patterns that know its own words', () => {
    for (const question of askedQuestions()) {
      expect(Object.keys(questionGroups()), question.id).toContain(question.group);
      for (const pattern of question.owner)
        expect(() => new RegExp(pattern, 'iu'), question.id).not.toThrow();
      expect(question.whom, question.id).toMatch(/\.$/);
      expect(question.type ?? 'a  b', question.id).toMatch(/ {2}/);
      // In its own words it is itself, and before any other that it may be.
      expect(isAskedBy(question, question.ask), question.id).toBe(true);
      expect(askedQuestions().find((one) => isAskedBy(one, question.ask))?.id).toBe(question.id);
    }
  });

  it.each<readonly [string, readonly string[]]>([
    ['Has water ever come into the cellar?', ['water-in']],
    ['Has the basement flooded?', ['water-in']],
    ['How old is the roof?', ['roof-age']],
    ['How old are the furnace and the water heater?', ['heating-age', 'water-heater-age']],
    ['How old is the heat pump?', ['heating-age', 'cooling-age']],
    ['Is there knob-and-tube or aluminum wiring?', ['wiring']],
    ['Is there a buried oil tank?', ['oil-tank']],
    ['Was the sewer line looked into?', ['sewer-line']],
    ['What do heat and power cost?', ['bills']],
    ['What does cooling cost in summer?', ['bills']],
    ['Have there been insurance claims?', ['claims']],
    ['Are there pets or smoke to know of?', ['pets-smoke']],
    ['Where are the lot’s corners?', ['lot-corners']],
    ['Who lived here before?', ['who-lived']],
    ['Was the family room built with a permit?', []],
    ['Is the house under a home warranty?', ['home-warranty']],
    ['Has there been termite treatment?', ['pests']],
    ['Has the slab moved?', ['movement']],
    ['Does the pool hold water?', []],
    ['Are there special assessments planned?', ['assessments']],
    ['May the house be let by the night?', ['letting']],
    ['Is it in a flood zone?', ['flood-zone']],
    ['Do smoke detectors work?', ['alarms']],
    // A part of a matter, or another matter in some of its words.
    ['Is the service panel in the garage?', []],
    ['When was the sewer line to the house replaced?', []],
    ['Did the roof leak when you bought it?', []],
    ['When did the roof last leak?', []],
    ['How big is the garage?', []],
    ['Was radon measured?', ['radon']],
    ['Why are you selling?', ['why-selling']],
    ['When have you moved out?', []],
    ['What year was the roof replaced?', ['roof-age']],
    ['What was replaced in the panel?', []],
    ['What kind of water heater is there in the house?', []],
    ['What did the water heater cost?', []],
    ['Are there problems with the association?', []],
    ['Is there a burglar alarm?', []],
    ['How old is the heat pump dryer?', ['laundry-age']],
    ['How old is the wood stove?', []],
    ['How old is the hot water tank?', ['water-heater-age']],
    ['When was the house built?', ['built']],
  ])('knows what “%s” is', (ask, ids) => {
    const found = askedQuestions().filter((question) => isAskedBy(question, ask));
    expect(found.map(({ id }) => id).sort()).toEqual([...ids].sort());
  });
});

describe('what a record says nothing of', () => {
  it('is not known, and never “no”', () => {
    const { answered, open } = answersFor({ house: { built: 'not known' } });
    expect(answered).toEqual([]);
    expect(open.length).toBeGreaterThan(55);
    for (const one of open) expect(plain(one.answer), one.ask).toMatch(/^Not known[.:]/);
  });

  it('does not arise where the thing itself is not recorded', () => {
    for (const id of [
      'pool',
      'dishwasher-age',
      'range-age',
      'refrigerator-age',
      'laundry-age',
      'appliance-ages',
    ])
      expect(answerTo({}, id)).toBe('not asked');
  });

  it('says what was noted of why', () => {
    const spec = {
      systems: [
        system('water heater, tank, gas', { made: { is: 'not known', note: 'the label has faded' } }),
      ],
    } as PartialSpec;
    expect(answerTo(spec, 'water-heater-age')).toBe('open');
    const row = packetOf(spec)
      .sections.flatMap(({ blocks }) => blocks)
      .find(({ id }) => id === 'questions-open');
    expect(row === undefined ? '' : wordsOf(row).join('\n')).toContain('The label has faded. Ask a plumber');
  });

  it('is listed for the owner, most asked first, with what to type', () => {
    const house = houseFrom({ answers: [{ ask: 'What does heating cost?', answer: 'not known' }] });
    const { tally } = deriveTally(house, '2026-06-30');
    const list = unansweredOf(
      contextOf({ folder: 'test-house', house, tally, edition: 'file', photos: new Map() }),
    );
    const rank = (ask: string): number => list.findIndex((one) => one.ask === ask);
    expect(rank('How old is the roof?')).toBe(0);
    expect(rank('Is it noisy?')).toBeGreaterThan(rank('Is it in a flood zone?'));
    expect(list[0]?.type).toContain('under systems');
    expect(list[rank('Is it noisy?')]?.type).toBe('under answers:  - { ask: "Is it noisy?", answer: "…" }');
    expect(list[rank('What does heating cost?')]?.type).toBe('under answers, at this question:  answer: "…"');
    for (const { type } of list) expect(type).toMatch(/ {2}\S/);
  });

  it('stands in the house file, and in no other edition', () => {
    const ids = (edition: EditionName): Set<string> => anchorsOf(packetOf({}, edition));
    expect(ids('file').has('owner-unanswered')).toBe(true);
    for (const edition of ['agent', 'visit', 'buyer', 'care'] as const)
      expect(ids(edition).has('owner-unanswered'), edition).toBe(false);
  });

  it('is a gap for the three that are always asked, once each', () => {
    const lacking = (spec: PartialSpec): string[] => {
      const house = houseFrom(spec);
      return answerGaps({ house, asOf: '2026-06-30' } as Parameters<typeof answerGaps>[0])
        .map(({ lacks }) => lacks)
        .filter((lacks) => lacks.startsWith('the question'));
    };
    expect(lacking({})).toEqual([
      'the question “Has water ever come in?” has no answer yet',
      'the question “Were there insurance claims?” has no answer yet',
      'the question “Were there termites or other pests?” has no answer yet',
    ]);
    expect(lacking({ answers: [{ ask: 'Any termites?', answer: 'None seen by us.' }] })).toHaveLength(2);
    expect(lacking({ answers: [{ ask: 'Does the pool hold water?', answer: 'Yes.' }] })).toHaveLength(3);
  });
});

describe('the owner’s own answer', () => {
  const roof = [system('roof, slate', { installed: '2019-06' })];

  it('wins over what the facts say, and stands once', () => {
    const spec = {
      systems: roof,
      answers: [{ ask: 'How old is the roof?', answer: 'Seven years, by the permit.' }],
    } as PartialSpec;
    expect(answerTo({ systems: roof } as PartialSpec, 'roof-age')).toContain('installed June 2019 (7 years');
    expect(answerTo(spec, 'roof-age')).toBe('Seven years, by the permit. · Owner’s statement');
    const words = packetOf(spec).sections.flatMap(({ blocks }) => blocks.flatMap(wordsOf));
    expect(words.filter((word) => word === 'How old is the roof?')).toHaveLength(1);
  });

  it('stands for one question: what the facts say of others that it touches is told, too', () => {
    const spec = {
      systems: [
        { id: 'furnace', is: 'furnace, gas', made: '2009' },
        { id: 'wh', is: 'water heater, tank', made: '2021' },
      ],
      answers: [{ ask: 'How old are the furnace and the water heater?', answer: 'The furnace is of 2009.' }],
    } as PartialSpec;
    expect(answerTo(spec, 'heating-age')).toBe('The furnace is of 2009. · Owner’s statement');
    expect(answerTo(spec, 'water-heater-age')).toContain('made 2021');
    // Nothing else is known of it, and the owner has been asked.
    expect(answerTo({ answers: spec.answers } as PartialSpec, 'water-heater-age')).toBe('not asked');
  });

  it('about one part leaves what the facts say of the whole', () => {
    const spec = {
      house: { built: 1948 },
      systems: [
        { id: 'roof', is: 'roof, slate', installed: '2019-06' },
        { id: 'furnace', is: 'furnace', serviced: '2026-05-02' },
      ],
      conditions: [{ what: 'stain under the sink' }],
      answers: [
        { ask: 'When was the sewer line to the house replaced?', answer: 'In 2004.' },
        { ask: 'Did the roof leak when you bought it?', answer: 'It did not.' },
        { ask: 'Is the service panel in the garage?', answer: 'It is.' },
      ],
    } as PartialSpec;
    expect(answerTo(spec, 'built')).toContain('1948');
    expect(answerTo(spec, 'roof-age')).toContain('June 2019');
    expect(answerTo(spec, 'leaks')).toContain('Stain under the sink');
    expect(answerTo(spec, 'serviced')).toContain('2 May 2026');
  });

  it('that says “not known” keeps its reason, and without one is an open question', () => {
    const claims = (answer: object | string) =>
      answerTo({ answers: [{ ask: 'Any claims?', answer }] } as PartialSpec, 'claims');
    expect(claims({ is: 'not known', note: 'asked twice' })).toBe(
      'Not known. Asked twice. Ask the seller for the claims report that insurers keep. · Not known',
    );
    expect(claims('not known')).toBe('open');
  });

  it('comes before all others, in the owner’s order', () => {
    const { answered } = answersFor({
      systems: roof,
      answers: [
        { ask: 'Is the mirror original?', answer: 'Yes.' },
        { ask: 'Any claims?', answer: 'None by us.' },
      ],
    } as PartialSpec);
    expect(answered.slice(0, 2).map(({ ask }) => ask)).toEqual(['Is the mirror original?', 'Any claims?']);
    expect(answered.slice(2).every(({ by }) => by === 'facts')).toBe(true);
  });
});

describe('what no packet says', () => {
  it('is refused in plain words with whom to ask, in a table of its own, and asked of no owner', () => {
    const { answered, open, refused } = answersFor({});
    expect(refused.map(({ id }) => id)).toEqual(
      expect.arrayContaining(['fit-to-live-in', 'code', 'neighbourhood', 'schools', 'price', 'drinkable']),
    );
    const asked = new Set([...answered, ...open].map(({ question }) => question));
    expect(refused.filter((one) => asked.has(one))).toEqual([]);
    const table = packetOf({})
      .sections.flatMap(({ blocks }) => blocks)
      .find(({ id }) => id === 'questions-refused');
    const words = table === undefined ? '' : wordsOf(table).join('\n');
    expect(words).toContain('Only a test of the water can say. Have it tested by a certified laboratory.');
    for (const { ask, refused: why = '', whom } of refused) {
      expect(words, ask).toContain(`${why} ${whom}`);
      expect(`${why} ${whom}`, ask).not.toMatch(/\b(is|are) (un)?safe\b|complian|violat/i);
    }
  });

  it('may still be answered by the owner', () => {
    const spec: PartialSpec = { answers: [{ ask: 'Why are you selling?', answer: 'A job elsewhere.' }] };
    expect(answerTo(spec, 'why-selling')).toBe('A job elsewhere. · Owner’s statement');
    expect(answersFor(spec).refused.map(({ id }) => id)).not.toContain('why-selling');
  });
});

it('counts a paint whose colour nobody knows among those that were used', () => {
  const room = (id: string, finish: object) => ({
    id,
    level: 'main',
    use: 'bedroom',
    finishes: [{ on: 'walls', what: 'paint', ...finish }],
  });
  const spec = {
    levels: [{ id: 'main', name: 'Main level', grade: 'above' }],
    rooms: [
      room('east', { colour: 'Rain Blue 45', done: '2026-05', by: 'owner' }),
      room('west', { kept: true, note: 'colour not known' }),
    ],
  } as unknown as PartialSpec;
  expect(answerTo(spec, 'paint-left')).toMatch(
    /Colours used: Rain Blue 45;.*Colour not known: west \(walls\)\./,
  );
});

/** What no demo house records, each in the smallest house that does. */
const SMALL: readonly (readonly [id: string, spec: PartialSpec, says: RegExp])[] = [
  [
    'structural',
    {
      work: [{ id: 'beam', what: 'wall of the kitchen', did: 'removed', structural: true, done: '2025-03' }],
    },
    /Wall of the kitchen: removed, March 2025/,
  ],
  [
    'home-warranty',
    { documents: [{ id: 'plan', what: 'home warranty plan', kind: 'warranty' }] },
    /On file: home warranty plan/,
  ],
  [
    'radon',
    { documents: [{ id: 'radon', what: 'radon test, cellar', kind: 'report', date: '2025-02' }] },
    /radon test, cellar: February 2025/,
  ],
  ['mould', { conditions: [{ what: 'mold behind the tub' }] }, /Mold behind the tub/],
  [
    'oil-tank',
    { documents: [{ id: 'tank', what: 'oil tank, closed and filled', kind: 'report' }] },
    /oil tank/,
  ],
  [
    'flood-zone',
    { documents: [{ id: 'flood', what: 'flood zone certificate', kind: 'record' }] },
    /flood zone certificate/,
  ],
  [
    'insulation',
    { conditions: [{ what: 'no insulation above the porch' }] },
    /No insulation above the porch/,
  ],
  [
    'sewer-line',
    { documents: [{ id: 'camera', what: 'sewer camera report', kind: 'report' }] },
    /sewer camera report/,
  ],
  [
    'pests',
    { conditions: [{ what: 'old termite tunnels in one joist' }] },
    /termite tunnels.*licensed pest inspector/,
  ],
  ['water-in', { conditions: [{ what: 'standing water in the crawl space' }] }, /Standing water.*inspector/],
  ['sewer', { house: { sewer: 'septic tank' } }, /^Waste water: septic tank/],
  ['dues', { dues: [{ to: 'Owners’ Association', amount: '145.00', per: 'month' }] }, /\$145\.00 a month/],
];

describe('answers from facts', () => {
  it.each(SMALL)('%s', (id, spec, says) => {
    expect(answerTo(spec, id)).toMatch(says);
    expect(answerTo({}, id)).toBe('open');
  });

  it('call nothing new that was put in before this owner, or at a time nobody knows', () => {
    const work = (done?: string) => [
      { id: 'bath', what: 'half bath', did: 'added', ...(done === undefined ? {} : { done }) },
    ];
    const spec = (done?: string) => ({ house: { bought: '2026-02-17' }, work: work(done) }) as PartialSpec;
    expect(answerTo(spec('2004~'), 'whats-new')).toBe('open');
    expect(answerTo(spec(), 'whats-new')).toBe('open');
    expect(answerTo(spec('2026-03'), 'whats-new')).toMatch(
      /2026: half bath\. What is not named here is not called new\./,
    );
  });

  it('say how old a thing is that was put in second-hand', () => {
    const spec = {
      house: { bought: '2026-02-17' },
      systems: [system('range, electric', { made: '2021~', installed: '2026-05-15' })],
    } as PartialSpec;
    expect(answerTo(spec, 'whats-new')).toContain('range, electric (made about 2021)');
  });

  it('take no dryer for heat or cooling, and no vent for a roof', () => {
    for (const is of [
      'clothes dryer, heat pump',
      'heat pump dryer',
      'water heater, heat pump',
      'heat pump water heater',
    ])
      for (const id of ['heating-age', 'cooling-age', 'heat-fuel', 'cooling'])
        expect(answerTo({ systems: [system(is, { made: '2021' })] } as PartialSpec, id), `${is}, ${id}`).toBe(
          'open',
        );
    for (const is of ['roof vent, aluminum', 'roof hatch', 'roof-mounted fan'])
      for (const id of ['roof-age', 'roof-material'])
        expect(answerTo({ systems: [system(is, { installed: '2021' })] } as PartialSpec, id), is).toBe(
          'open',
        );
    expect(
      answerTo({ systems: [system('radiators', { installed: '1948' })] } as PartialSpec, 'heating-age'),
    ).toContain('1948');
  });

  it('take silence about gas, walls and permits for no finding', () => {
    const spec = {
      systems: [system('furnace, electric', { fuel: 'electric' })],
      work: [{ id: 'floor', what: 'floor', did: 'new' }],
    } as PartialSpec;
    for (const id of ['gas', 'structural', 'open-permits', 'no-permit'])
      expect(answerTo(spec, id)).toBe('open');
  });

  it('name nobody and no paper that the edition may not name', () => {
    const spec: PartialSpec = {
      people: [{ id: 'ridge', name: 'Ridge Street Plumbing', trade: 'plumber', licence: 'OH-PL-00000' }],
      work: [{ id: 'pipes', what: 'pipes', did: 'replaced', by: 'ridge', done: '2025-03' }],
      documents: [{ id: 'secret', what: 'radon test at the Zweigs', kind: 'report', private: true }],
    };
    const told = (edition: EditionName): string => JSON.stringify(answersFor(spec, edition));
    expect(told('buyer')).toContain('Ridge Street Plumbing');
    expect(told('agent')).not.toContain('Ridge Street');
    expect(told('agent')).not.toContain('OH-PL');
    expect(told('buyer')).not.toContain('Zweig');
    expect(told('file')).toContain('Zweig');
  });
});

describe.each(['quarry-road', 'larkspur-court'])('the record of %s', (house) => {
  let all: readonly AnsweredQuestion[] = [];
  let answered: readonly AnsweredQuestion[] = [];

  beforeAll(async () => {
    const found = answersOf(contextOf(await demoOrder(house)));
    answered = found.answered;
    all = [...answered, ...found.open];
  });

  it('answers twenty questions and more, each with how it is known', () => {
    const standing = answered.filter(({ mark }) => mark.standing !== 'not-known');
    expect(standing.length).toBeGreaterThanOrEqual(20);
    expect(standing.filter(({ mark }) => mark.standing === 'documented').length).toBeGreaterThanOrEqual(10);
    // As many of them are put together from facts alone.
    expect(standing.filter(({ by }) => by === 'facts').length).toBeGreaterThanOrEqual(20);
  });

  it('has each question once', () => {
    expect(new Set(all.map(({ id }) => id)).size).toBe(all.length);
    expect(new Set(all.map(({ ask }) => ask)).size).toBe(all.length);
  });

  it('tells ages in years or months, and the day they are counted to above them all', async () => {
    const ages = answered.filter(({ group, by }) => group === 'ages' && by === 'facts');
    expect(ages.length).toBeGreaterThan(8);
    for (const { ask, answer } of ages) expect(plain(answer), ask).toMatch(/\d (years|months)|not known/);
    const [note] = questions(contextOf(await demoOrder(house))).blocks;
    expect(note?.kind === 'paragraph' && plain(note.text)).toContain('counted to 20 November 2026');
  });

  it('defers where somebody can be hurt, and promises nothing', () => {
    for (const { ask, answer, question } of answered) {
      if (question?.defers === true) expect(plain(answer), ask).toContain(question.whom);
      expect(plain(answer), ask).not.toMatch(/\b(safe|unsafe|up to code|guaranteed|compliant)\b/i);
    }
  });

  it('leads from an answer to where the fact stands', async () => {
    const packet = composePacket(await demoOrder(house));
    const anchors = anchorsOf(packet);
    const questions = packet.sections.find(({ id }) => id === 'questions');
    const links = (questions?.blocks ?? []).flatMap((block) =>
      block.kind === 'question' ? block.answer.flatMap(({ to }) => to ?? []) : [],
    );
    expect(links.length).toBeGreaterThan(60);
    for (const to of links) expect(anchors.has(to), to).toBe(true);
  });
});

it('has a case for every question, in a demo house or a small one', async () => {
  const demos = await Promise.all(
    ['quarry-road', 'larkspur-court'].map(async (house) => answersOf(contextOf(await demoOrder(house)))),
  );
  const seen = new Set(
    demos.flatMap(({ answered }) => answered.flatMap(({ question }) => question?.id ?? [])),
  );
  for (const [id] of SMALL) seen.add(id);
  for (const { refused } of demos) for (const { id } of refused) seen.add(id);
  const own = [
    'assessments',
    'bills',
    'taxes',
    'noise',
    'internet',
    'letting',
    'who-lived',
    'pets-smoke',
    'claims',
    'title-liens',
    'easements',
    'boundary-disputes',
    'violations',
  ];
  for (const id of own) {
    const question = askedQuestions().find((one) => one.id === id);
    expect(answerTo({ answers: [{ ask: question?.ask ?? '', answer: 'As we were told.' }] }, id), id).toBe(
      'As we were told. · Owner’s statement',
    );
    seen.add(id);
  }
  expect(
    askedQuestions()
      .map(({ id }) => id)
      .filter((id) => !seen.has(id)),
  ).toEqual([]);
});
