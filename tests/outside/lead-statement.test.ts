/**
 * The federal words and worked sums about lead paint.
 *
 * Statement: EPA Form 9600-040 (OMB 2070-0151), 42 USC 4852d(a)(3). Limits and jobs: 40 CFR 745.83 and the agency’s
 * answers to questions about it. Retention: 40 CFR 745.113(c) and 745.86.
 */
import { describe, expect, test } from 'vitest';
import { deriveLead, disclosureKeptThrough } from '../../src/tally/lead-notes.js';
import { leadAsbestosRules } from '../../src/tally/tables/lead-asbestos.js';
import { houseFrom, type PartialSpec } from '../rooms/house-from.js';

describe('the Lead Warning Statement', () => {
  const normal = leadAsbestosRules()
    .leadWarning.figures.statement.replace(/’/g, "'")
    .replace(/\s+/g, ' ')
    .trim();

  test('has 130 words and 877 characters, and the form’s beginning and end', () => {
    expect(normal.split(' ')).toHaveLength(130);
    expect(normal).toHaveLength(877);
    expect(normal).toMatch(/^Every purchaser of any interest .* recommended prior to purchase\.$/);
  });

  test('is the statement for sales, word for word, not the one for leases', () => {
    // A second copy of the form’s text, sentence by sentence, so that a slip in the table shows.
    const sentences = [
      'Every purchaser of any interest in residential real property on which a residential dwelling was built prior to 1978 is notified that such property may present exposure to lead from lead-based paint that may place young children at risk of developing lead poisoning.',
      'Lead poisoning in young children may produce permanent neurological damage, including learning disabilities, reduced intelligence quotient, behavioral problems, and impaired memory.',
      'Lead poisoning also poses a particular risk to pregnant women.',
      "The seller of any interest in residential real property is required to provide the buyer with any information on lead-based paint hazards from risk assessments or inspections in the seller's possession and notify the buyer of any known lead-based paint hazards.",
      'A risk assessment or inspection for possible lead-based paint hazards is recommended prior to purchase.',
    ];
    expect(normal).toBe(sentences.join(' '));
  });
});

describe('the year 1978 (42 USC 4851b; the unknown year is this project’s choice)', () => {
  test.each([
    [1977, 'yes', true],
    [1978, 'no', false],
    ['not known', 'not known', true],
  ])('built %s: %s', (built, target, treatAsTarget) => {
    expect(deriveLead(houseFrom({ house: { built } }))).toMatchObject({ target, treatAsTarget });
  });
});

/** Rooms named for their ids, and work that disturbed paint in them. */
function jobs(work: NonNullable<PartialSpec['work']>, built: string | number = 1948) {
  const rooms = ['bed', 'hall', 'bath'].map((id) => ({ id, level: 'main', use: 'other' as const }));
  const levels = [{ id: 'main', name: 'Main level', grade: 'above' as const }];
  return deriveLead(houseFrom({ house: { built }, levels, rooms, work })).jobs;
}

describe('minor repair (40 CFR 745.83 and the agency’s answers)', () => {
  const painted = (id: string, where: string, area: string, day: number, extra: object = {}) => ({
    id,
    what: 'trim',
    did: 'painted' as const,
    where: [where],
    'paint-disturbed': area,
    done: `2026-04-${String(day).padStart(2, '0')}`,
    ...extra,
  });

  test('4 and 3 sq ft in one room within 30 days are one job of 7; 6 exactly is minor; a window never is', () => {
    const found = jobs([
      painted('a', 'bed', '4 sq ft', 1),
      painted('b', 'bed', '3 sq ft', 20),
      painted('c', 'hall', '6 sq ft', 5),
      painted('d', 'bath', '2 sq ft', 2, { 'windows-replaced': true }),
    ]);
    expect(found.map((job) => [job.at, job.areaWords, job.verdict])).toEqual([
      ['bed', '7 sq ft in 2 pieces of work', 'more than minor'],
      ['hall', '6 sq ft', 'minor'],
      ['bath', '2 sq ft', 'more than minor'],
    ]);
    expect(found[1]?.verdictWords).toMatch(/^exactly the minor-repair limit of 6 sq ft/);
    expect(found[2]?.verdictWords).toMatch(/windows replaced/);
  });

  test('a 1 in strip off a 36 in door is 36 sq in, a quarter of a square foot', () => {
    // The agency’s own sum, in its answer 23002-14294.
    const [job] = jobs([painted('a', 'hall', '36 sq in', 5)]);
    expect(job).toMatchObject({ areaWords: '0.25 sq ft', verdict: 'minor' });
  });

  test('a square inch beyond six square feet is beyond, and never prints as six', () => {
    const [job] = jobs([painted('a', 'hall', '865 sq in', 5)]);
    expect(job).toMatchObject({ areaWords: '6.01 sq ft', verdict: 'more than minor' });
  });
});

describe('keeping', () => {
  test('the signed attachment: three years from the completed sale', () => {
    expect(disclosureKeptThrough('2025-03-14')).toBe('2028-03-14');
    expect(disclosureKeptThrough('2024-02-29')).toBe('2027-03-01');
  });

  test('the records of a renovation: three years from its completion, a leap day rolled forward', () => {
    // The roll is a choice on the safe side.
    const done = (day: string) =>
      jobs([
        { id: 'a', what: 'trim', did: 'painted', where: ['bed'], 'paint-disturbed': '40 sq ft', done: day },
      ])[0]?.keepRecordsThrough;
    expect(done('2024-02-29')).toBe('2027-03-01');
    expect(done('2026-04-11')).toBe('2029-04-11');
    expect(done('2026-04')).toBe('2029-04-30');
  });
});
