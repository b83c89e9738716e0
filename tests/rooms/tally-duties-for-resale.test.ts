/** Whether a house was renovated to be sold, by the work between purchase and listing. */
import { describe, expect, it } from 'vitest';
import type { DutyFact } from '../../src/tally/duties/duty-fact.js';
import { readDutyFacts } from '../../src/tally/duties/duty-facts.js';
import { houseFrom, type PartialSpec } from './house-from.js';

const forResale = (spec: PartialSpec): DutyFact => readDutyFacts(houseFrom(spec), '2026-11-20')['for-resale'];

describe('renovated to be sold, where nobody says', () => {
  const done = (...days: readonly string[]): PartialSpec => ({
    house: { bought: '2026-01-10', listed: '2026-06-20' },
    work: days.map((day, at) => ({ id: `w${at}`, what: 'floor', did: 'new', by: 'owner', done: day })),
  });
  const yes = (at: number) => ({
    is: 'yes',
    path: ['work', at],
    words: 'renovated to be sold, as work was done after the purchase and it was listed 20 June 2026',
    asks: 'whether it was renovated to be sold',
    hint: 'duties: { for-resale: no }',
  });
  it.each<readonly [string, PartialSpec, number | undefined]>([
    ['work after the purchase, and a listing', done('2026-04'), 0],
    ['work on the day of the purchase', done('2026-01-10'), 0],
    ['older work before it', done('2019', '2026-04'), 1],
    ['older work alone', done('2019', '2026-01-09'), undefined],
    ['work that may be older', done('2026-01'), undefined],
    ['no work', done(), undefined],
    ['no listing', { ...done('2026-04'), house: { bought: '2026-01-10' } }, undefined],
    ['no purchase', { ...done('2026-04'), house: { listed: '2026-06-20' } }, undefined],
    ['a main home', { ...done('2026-04'), money: { role: 'main-home' } }, undefined],
    ['a dealer', { ...done('2026-04'), money: { role: 'dealer' } }, 0],
  ])('%s', (_, spec, at) => {
    const found = forResale(spec);
    if (at === undefined) expect(found).toMatchObject({ is: undefined, path: ['duties', 'for-resale'] });
    else expect(found).toEqual(yes(at));
  });

  it('that it isn’t known is left so, whatever was done', () => {
    expect(forResale({ ...done('2026-04'), duties: { 'for-resale': 'not known' } })).toEqual({
      is: undefined,
      path: ['duties', 'for-resale'],
      words: 'whether it was renovated to be sold is not known',
      asks: 'whether it was renovated to be sold',
      hint: 'for-resale: no',
    });
  });
});
