import { describe, expect, test } from 'vitest';
import { deriveLead } from '../../src/tally/lead-notes.js';
import { houseFrom, type PartialSpec } from './house-from.js';

type WorkSpec = NonNullable<PartialSpec['work']>[number];

const BASE: PartialSpec = {
  levels: [{ id: 'main', name: 'Main level', grade: 'above' }],
  rooms: [
    { id: 'bed', level: 'main', use: 'bedroom', name: 'Back bedroom' },
    { id: 'hall', level: 'main', use: 'hall' },
  ],
  structures: [
    { id: 'porch', is: 'porch' },
    { id: 'deck', is: 'deck' },
    { id: 'garage', is: 'garage' },
  ],
  stairs: [{ id: 'porch-steps', risers: 3, handrail: 'yes' }],
  people: [{ id: 'ridge', name: 'Ridge Street Painting' }],
};
const lead = (spec: PartialSpec) => deriveLead(houseFrom({ ...BASE, ...spec }));
const work = (id: string, extra: Partial<WorkSpec>): WorkSpec => ({
  id,
  what: 'trim',
  did: 'painted',
  where: ['bed'],
  ...extra,
});
/** `[sq ft and pieces, verdict]` of the jobs that these pieces of work make. */
const jobs = (...pieces: Partial<WorkSpec>[]) =>
  lead({ work: pieces.map((piece, at) => work(`w${at}`, piece)) }).jobs;
const sums = (...pieces: Partial<WorkSpec>[]) => jobs(...pieces).map((job) => [job.areaWords, job.verdict]);
const area = (squareFeet: number, done?: string): Partial<WorkSpec> => ({
  'paint-disturbed': `${squareFeet} sq ft`,
  ...(done === undefined ? {} : { done }),
});

describe('whether the lead rules reach the house', () => {
  test.each([
    ['1977-12-31', 'yes'],
    ['1978-01-01', 'no'],
    ['../1977', 'yes'],
    ['../1980', 'not known'],
    ['1978~', 'not known'],
    ['1979~', 'no'],
    ['1975/1985', 'not known'],
    ['197X', 'not known'],
    ['1960/..', 'not known'],
    ['1980/..', 'no'],
  ])('built %s: %s', (built, target) => {
    const notes = lead({ house: { built } });
    expect(notes.target).toBe(target);
    expect(notes.treatAsTarget).toBe(target !== 'no');
    expect(/treated as built before/.test(notes.because)).toBe(target === 'not known');
  });

  test('a later house has no jobs or warnings', () => {
    const notes = lead({ house: { built: 1985 }, work: [work('a', area(40, '2026-04-01'))] });
    expect(notes).toMatchObject({ jobs: [], unrecorded: [], diagnostics: [] });
    expect(notes.ask).toBeUndefined();
  });

  test('a house of unknown year has them all', () => {
    const notes = lead({ house: { built: 'not known' }, work: [work('a', area(40, '2026-04-01'))] });
    expect(notes.jobs).toHaveLength(1);
    expect(notes.diagnostics).toHaveLength(1);
  });
});

describe('thirty days', () => {
  test('are one job up to 30 days apart and two beyond', () => {
    expect(sums(area(4, '2026-04-01'), area(4, '2026-05-01'))).toEqual([
      ['8 sq ft in 2 pieces of work', 'more than minor'],
    ]);
    expect(sums(area(4, '2026-04-01'), area(4, '2026-05-02'))).toEqual([
      ['4 sq ft', 'minor'],
      ['4 sq ft', 'minor'],
    ]);
  });

  test('one stretch isn’t chained to the next', () => {
    expect(sums(area(3, '2026-04-01'), area(2, '2026-04-26'), area(3, '2026-05-21'))).toEqual([
      ['5 sq ft in 2 pieces of work', 'minor'],
      ['5 sq ft in 2 pieces of work', 'minor'],
    ]);
  });

  test('a month or a missing date counts as within them if it may be, and that is said', () => {
    const [sure] = jobs(area(4, '2026-04'), area(4, '2026-04'));
    expect(sure?.verdict).toBe('more than minor');
    expect(sure?.verdictWords).not.toMatch(/dates don’t show/);
    const [may] = jobs(area(4, '2026-04'), area(4, '2026-05'));
    expect(may?.areaWords).toBe('8 sq ft in 2 pieces of work');
    expect(may?.verdictWords).toMatch(/dates don’t show whether all of it fell within 30 days/);
    expect(sums(area(4, '2026-03'), area(4, '2026-05'))).toHaveLength(2);
    expect(sums(area(4), area(4, '2026-05-02'))).toEqual([
      ['8 sq ft in 2 pieces of work', 'more than minor'],
    ]);
    expect(sums(area(4), area(4))).toEqual([['8 sq ft in 2 pieces of work', 'more than minor']]);
  });

  test('long work reaches over its days', () => {
    const long = { ...area(4, '2026-06-30'), started: '2026-04-01' };
    expect(sums(long, area(4, '2026-04-10'))).toHaveLength(1);
  });

  test('a beginning written after the end loses no work', () => {
    expect(sums({ ...area(8, '2026-04-10'), started: '2026-06' })).toEqual([['8 sq ft', 'more than minor']]);
  });

  test('the order of writing changes nothing but the order of the pieces', () => {
    const pieces = [area(3, '2026-04-01'), area(2, '2026-04-26'), area(3, '2026-05-21'), area(1)];
    const keys = (list: Partial<WorkSpec>[]) => jobs(...list).map((job) => [job.area, job.verdict]);
    expect(keys([...pieces].reverse())).toEqual(keys(pieces));
  });
});

describe('where the paint was', () => {
  test('rooms are counted apart, and work in two rooms counts in each', () => {
    const found = jobs(
      { ...area(4, '2026-04-01'), where: ['bed', 'hall'] },
      { ...area(3, '2026-04-01'), where: ['hall'] },
    );
    expect(found.map((job) => [job.where, job.areaWords, job.verdict])).toEqual([
      ['Back bedroom', '4 sq ft', 'minor'],
      ['Hall', '7 sq ft in 2 pieces of work', 'more than minor'],
    ]);
  });

  test('outside, on a porch, the limit is 20; a garage has a room’s', () => {
    const at = (place: string, squareFeet: number) =>
      jobs({ ...area(squareFeet, '2026-04-01'), where: [place] })[0]?.verdict;
    expect([at('porch', 20), at('porch', 21)]).toEqual(['minor', 'more than minor']);
    expect([at('garage', 6), at('garage', 7)]).toEqual(['minor', 'more than minor']);
  });

  test('all that is outside is one place, with the stair of a porch in it', () => {
    const found = jobs(
      { ...area(15, '2026-04-01'), where: ['porch', 'porch-steps'] },
      { ...area(6, '2026-04-02'), where: ['deck'] },
      { ...area(2, '2026-04-02'), where: ['porch-steps'] },
    );
    expect(found.map((job) => [job.where, job.at, job.areaWords, job.verdict])).toEqual([
      ['Outside: Porch, Porch steps, Deck', undefined, '21 sq ft in 2 pieces of work', 'more than minor'],
      // Alone, a stair may be indoors: it keeps a room's limit.
      ['Porch steps', 'porch-steps', '2 sq ft', 'minor'],
    ]);
  });

  test('no place is its own place', () => {
    expect(jobs({ ...area(4, '2026-04-01'), where: [] })[0]).toMatchObject({
      where: 'Place not recorded',
      at: undefined,
    });
  });

  test('a part of the structure taken out stays open, however small', () => {
    const [job] = jobs({ ...area(2, '2026-04-01'), did: 'removed', structural: true });
    expect(job?.verdict).toBe('open');
    expect(job?.verdictWords).toMatch(/if that demolished painted surface/);
  });

  test('windows without a figure are told without one', () => {
    expect(sums({ did: 'replaced', 'windows-replaced': true })).toEqual([
      ['area not recorded', 'more than minor'],
    ]);
    expect(sums({ 'windows-replaced': true, done: '2026-04-01' }, area(2, '2026-04-02'))).toEqual([
      ['2 sq ft in 2 pieces of work, 1 of them without a figure', 'more than minor'],
    ]);
  });
});

describe('who did it', () => {
  const by = (who: string | undefined, extra: PartialSpec = {}) =>
    lead({
      work: [work('a', { ...area(40, '2026-04-01'), ...(who === undefined ? {} : { by: who }) })],
      ...extra,
    });

  test('own hands beyond minor repair: the agency’s answer to resellers, as something to ask about', () => {
    for (const who of ['owner', 'family', 'not-known', undefined]) {
      expect(by(who).ask, who).toMatch(/^Something to ask about: .*certified firm.*Ask the agency/s);
    }
    expect(by('ridge').ask).toBeUndefined();
    expect(lead({ work: [work('a', { ...area(6, '2026-04-01'), by: 'owner' })] }).ask).toBeUndefined();
  });

  test('is named as recorded, and a firm only as certified where the folder says so', () => {
    expect(by('owner').jobs[0]?.whoWords).toBe('the owner');
    expect(by(undefined).jobs[0]?.whoWords).toBe('not known');
    expect(by('ridge').jobs[0]?.whoWords).toBe('Ridge Street Painting (certification not recorded)');
    expect(by('ridge', { lead: { known: 'not known', firm: 'ridge' } }).jobs[0]?.whoWords).toBe(
      'Ridge Street Painting (recorded as the certified firm, as stated)',
    );
    const [both] = jobs({ ...area(4, '2026-04-01'), by: 'owner' }, { ...area(4, '2026-04-02'), by: 'ridge' });
    expect(both?.whoWords).toBe('the owner; Ridge Street Painting (certification not recorded)');
  });
});

describe('warnings', () => {
  test('one a job beyond minor repair, at the fact, with what to do', () => {
    const { diagnostics } = lead({
      work: [
        work('a', area(2, '2026-04-01')),
        work('b', { where: ['hall'], ...area(7, '2026-04-01') }),
        work('c', { where: ['garage'], did: 'replaced', 'windows-replaced': true }),
      ],
    });
    expect(diagnostics).toMatchObject([
      { code: 'tally.lead', severity: 'warning', path: ['work', 1, 'paint-disturbed'] },
      { code: 'tally.lead', severity: 'warning', path: ['work', 2, 'windows-replaced'] },
    ]);
    expect(diagnostics.map((one) => one.message)).toEqual([
      'lead rules may reach this work: Hall, 7 sq ft of paint disturbed (minor repair ends at 6)',
      'lead rules may reach this work: Garage, painted windows replaced',
    ]);
    for (const { message, hints } of diagnostics) {
      expect(message.length).toBeLessThan(110);
      expect(hints).toHaveLength(2);
    }
  });

  test('one a place, however many stretches of thirty days are over the limit', () => {
    const { diagnostics } = lead({
      work: [
        work('a', { where: ['hall'], ...area(7, '2026-04-01') }),
        work('b', { where: ['hall'], ...area(9, '2026-08-01') }),
        work('c', { where: ['hall'], ...area(2, '2027-08-01'), did: 'removed', structural: true }),
      ],
    });
    expect(diagnostics.map((one) => one.message)).toEqual([
      'lead rules may reach this work: Hall, 7 and 9 sq ft of paint disturbed (minor repair ends at 6); 2 sq ft of paint disturbed with a part of the structure',
    ]);
    expect(diagnostics[0]?.path).toEqual(['work', 0, 'paint-disturbed']);
  });

  test('the first hint is what is missing: who, the certified firm, the papers', () => {
    const hint = (item: Partial<WorkSpec>, extra: PartialSpec = {}) =>
      lead({
        documents: [{ id: 'record', what: 'lead-safe work record', kind: 'record' }],
        work: [work('a', { ...area(7, '2026-04-01'), ...item })],
        ...extra,
      }).diagnostics[0]?.hints[0];
    const firm = { lead: { known: 'not known', firm: 'ridge' } } as const;
    expect(hint({})).toBe('say who did it:  by: owner  or the id of a person');
    expect(hint({ by: 'ridge' })).toBe(
      'if they are a certified firm, add  lead: { known: not known, firm: ridge }',
    );
    expect(hint({ by: 'ridge' }, { lead: { known: 'not known' } })).toBe(
      'if they are a certified firm, add under lead:  firm: ridge',
    );
    expect(hint({ by: 'owner' })).toMatch(/^name the firm’s records or a lead test: {2}evidence:/);
    expect(hint({ by: 'ridge' }, firm)).toMatch(/evidence:/);
    // All of it by the certified firm, with its papers: nothing is left to ask the writer.
    expect(hint({ by: 'ridge', evidence: ['record'] }, firm)).toBeUndefined();
    expect(hint({ by: 'owner', evidence: ['record'] }, firm)).toMatch(/evidence:/);
  });

  test('minor repair keeps no records here, and work without a figure is listed', () => {
    expect(jobs(area(6, '2026-04-01'))[0]?.keepRecordsThrough).toBeUndefined();
    const { unrecorded } = lead({
      work: [
        work('a', { done: '2026-04-01' }),
        work('b', { what: 'furnace', did: 'serviced' }),
        work('c', area(1, '2026-04-01')),
        work('d', { what: 'window sash', did: 'repaired' }),
      ],
    });
    expect(unrecorded.map((one) => one.path)).toEqual([
      ['work', 0],
      ['work', 3],
    ]);
  });
});

describe('old materials that may hold asbestos', () => {
  type FinishSpec = NonNullable<NonNullable<PartialSpec['rooms']>[number]['finishes']>[number];
  const cautions = (spec: PartialSpec) =>
    lead(spec).asbestos.map((one) => [one.material, one.state] as const);
  const finish = (spec: FinishSpec, built: string | number = 1965) =>
    cautions({
      house: { built },
      rooms: [{ id: 'den', level: 'main', use: 'living', finishes: [spec] }],
    });

  test('removed without a test: sheet vinyl and a textured ceiling in a house of 1965', () => {
    // Constructed, to the federal homeowners’ booklet as quoted on two pages.
    const { asbestos } = lead({
      house: { built: 1965 },
      work: [
        work('a', { what: 'sheet vinyl', did: 'removed', where: ['hall'] }),
        work('b', { what: 'popcorn ceiling', did: 'removed' }),
      ],
    });
    expect(asbestos.map((one) => one.words)).toEqual([
      'Sheet vinyl removed: no test on file',
      'Textured ceiling or wall removed: no test on file',
    ]);
    expect(asbestos[0]).toMatchObject({ where: 'Hall', path: ['work', 0], state: 'removed' });
    expect(asbestos[0]?.caution).toMatch(/laboratory/);
    expect(asbestos[0]?.source).toMatch(/Asbestos in Your Home; 29 CFR 1926\.1101 \(from memory\)/);
  });

  test('a report on file is told, and named among its evidence only', () => {
    const { asbestos } = lead({
      documents: [{ id: 'lab', what: 'asbestos test, hall floor', kind: 'report' }],
      work: [work('a', { what: 'sheet vinyl', did: 'removed' })],
    });
    expect(asbestos[0]?.words).toBe('Sheet vinyl removed: a test report is on file');
    expect(asbestos[0]?.evidence).toEqual(['lab']);
  });

  test.each<[FinishSpec, string]>([
    [{ on: 'floor', what: 'vinyl tile', kept: true }, 'vinyl or asphalt floor tile'],
    [{ on: 'floor', what: 'Sheet vinyl' }, 'sheet vinyl'],
    [{ on: 'ceiling', what: 'textured, white' }, 'textured ceiling or wall'],
    [{ on: 'siding', what: 'cement shingles', kept: true }, 'cement siding or roofing'],
    [{ on: 'other', what: 'pipe wrap' }, 'pipe or furnace wrap'],
    [{ on: 'floor', what: 'oak over black adhesive', kept: true }, 'flooring adhesive'],
  ])('left in place: %o', (spec, material) => {
    expect(finish(spec)).toEqual([[material, 'left in place']]);
  });

  test('what lies below a new floor is as old as the house', () => {
    expect(finish({ on: 'floor', what: 'vinyl plank', over: 'vinyl tile', done: '2026-04' })).toEqual([
      ['vinyl or asphalt floor tile', 'left in place'],
    ]);
  });

  test('new material is not old, and 1980 is the last year that is', () => {
    expect(finish({ on: 'floor', what: 'sheet vinyl', done: '2026-04' })).toEqual([]);
    expect(finish({ on: 'floor', what: 'sheet vinyl', kept: true, done: 1980 })).toHaveLength(1);
    expect(finish({ on: 'floor', what: 'sheet vinyl', kept: true, done: 1981 })).toEqual([]);
    expect(finish({ on: 'floor', what: 'sheet vinyl', kept: true }, 1980)).toHaveLength(1);
    expect(finish({ on: 'floor', what: 'sheet vinyl', kept: true }, 1981)).toEqual([]);
    expect(finish({ on: 'floor', what: 'sheet vinyl', kept: true }, 'not known')).toHaveLength(1);
    // The day it was taken out isn’t the day it was put in.
    expect(finish({ on: 'floor', what: 'sheet vinyl', did: 'removed', done: '2026-04' })).toEqual([
      ['sheet vinyl', 'removed'],
    ]);
  });

  test('other floors, and systems and siding that name such a material', () => {
    for (const what of ['oak', 'vinyl plank', 'ceramic tile', 'carpet'])
      expect(finish({ on: 'floor', what, kept: true }), what).toEqual([]);
    expect(cautions({ systems: [{ id: 'i', is: 'attic insulation', material: 'vermiculite' }] })).toEqual([
      ['vermiculite', 'left in place'],
    ]);
    expect(cautions({ house: { exterior: 'cement siding' } })).toEqual([
      ['cement siding or roofing', 'left in place'],
    ]);
  });

  test('a house after 1978 can still have them', () => {
    const notes = lead({
      house: { built: 1979 },
      work: [work('a', { what: 'sheet vinyl', did: 'removed' })],
    });
    expect(notes.target).toBe('no');
    expect(notes.asbestos).toHaveLength(1);
  });
});

test('no note calls the house free of lead or safe', () => {
  const notes = lead({
    house: { built: 1948 },
    work: [work('a', { ...area(40, '2026-04-01'), by: 'owner' })],
  });
  const words = JSON.stringify(notes, (_, value) => (typeof value === 'bigint' ? String(value) : value));
  expect(words).not.toMatch(/lead[- ]free|lead[- ]safe house|asbestos[- ]free|\bviolat|illegal/i);
});
