/** The hand-labelled remarks: how many false claims are caught, and how many true ones accused, in each half. */
import { describe, expect, it } from 'vitest';
import { readHouse } from '../../src/intake/read-house.js';
import { checkRemarks } from '../../src/tally/remarks/check-remarks.js';
import { deriveTally } from '../../src/tally/tally.js';
import { FLOORS, HALVES, type Half, LABELLED_AS_OF, labelledHouses } from '../remarks/corpus.js';
import { type Figures, figuresOf, type Scored, scoreRemark } from '../remarks/score.js';

const root = new URL('../../', import.meta.url);

async function scored(half: Half): Promise<Scored[]> {
  const all: Scored[] = [];
  for (const { name, folder, remarks } of labelledHouses(root, half)) {
    const { found } = await readHouse(folder, name, { everyPhoto: false });
    if (found === undefined) throw new Error(`${half}/${name} can’t be read`);
    const { tally } = deriveTally(found.house, LABELLED_AS_OF);
    for (const remark of remarks)
      all.push(...scoreRemark(remark, checkRemarks(remark.text, found.house, tally)));
  }
  return all;
}

describe.each(HALVES)('the half %s', (half) => {
  it('has enough labels of each kind to say anything', async () => {
    const figures = figuresOf(await scored(half));
    expect(figures.labels).toBeGreaterThan(250);
    expect(figures.contradicted).toBeGreaterThan(75);
    expect(figures.backed).toBeGreaterThan(100);
  });

  it('is caught and not accused as far as it has to be', async () => {
    const { caught, contradicted, accused, backed } = figuresOf(await scored(half));
    expect(caught / contradicted).toBeGreaterThanOrEqual(FLOORS[half].caught);
    expect(accused / backed).toBeLessThanOrEqual(FLOORS[half].accused);
  });

  it('has ids that stand once, and labels that stand in their text', () => {
    const remarks = labelledHouses(root, half).flatMap((house) => house.remarks);
    expect(new Set(remarks.map(({ id }) => id)).size).toBe(remarks.length);
    // Finding each label's place throws where it does not stand there.
    for (const remark of remarks) expect(scoreRemark(remark, [])).toHaveLength(remark.claims.length);
  });
});

it('has at least 150 remarks in all, and none in two halves', () => {
  const remarks = HALVES.flatMap((half) => labelledHouses(root, half).flatMap((house) => house.remarks));
  expect(remarks.length).toBeGreaterThanOrEqual(150);
  expect(new Set(remarks.map(({ text }) => text.trim())).size).toBe(remarks.length);
});

describe('the score', () => {
  const remark = {
    id: 'x-1',
    text: 'Two baths, a new roof, a new roof.',
    claims: [
      { says: 'Two baths', is: 'contradicted' },
      { says: 'new roof', at: 2, is: 'backed' },
    ],
  } as const;
  const score = (
    found: readonly { from: number; to: number; verdict: 'contradicted' | 'backed' }[],
  ): Figures =>
    figuresOf(
      scoreRemark(
        remark,
        found.map((one) => ({ ...one, says: '', rule: '' })),
      ),
    );

  it('counts a claim as caught where a finding lies on it', () => {
    expect(score([{ from: 0, to: 9, verdict: 'contradicted' }])).toMatchObject({ caught: 1, accused: 0 });
    expect(score([{ from: 13, to: 21, verdict: 'contradicted' }])).toMatchObject({ caught: 0, accused: 0 });
  });

  it('counts a true claim as accused at its own place alone', () => {
    expect(score([{ from: 25, to: 33, verdict: 'contradicted' }])).toMatchObject({ caught: 0, accused: 1 });
    expect(score([{ from: 25, to: 33, verdict: 'backed' }])).toMatchObject({ accused: 0, right: 1 });
  });

  it('refuses a label that is not in its text', () => {
    expect(() => scoreRemark({ ...remark, claims: [{ says: 'pool', is: 'backed' }] }, [])).toThrow('pool');
  });
});
