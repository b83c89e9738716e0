/** What of two packets differs, where rows were put in, taken out or moved: one row more is one difference. */
import { describe, expect, it } from 'vitest';
import { compareFacts } from '../../src/packet/compare-facts.js';
import type { FactsFile, SaidFact } from '../../src/packet/facts-file.js';

const file = (facts: readonly SaidFact[], digest = '7f3a 91c2 0d4e'): FactsFile => ({
  form: 'sillplate-facts-1',
  program: 'sillplate 0.0.1',
  house: { folder: 'test-lane', name: 'Test Lane', place: 'Fallow Mills, OH' },
  edition: 'buyer',
  title: 'Buyer packet',
  asOf: '2026-06-12',
  digest,
  facts: [...facts],
});

/** Rows of one table, numbered in their order. */
const rows = (family: string, ...texts: readonly (readonly [about: string, cell: string])[]): SaidFact[] =>
  texts.map(([about, cell], n) => ({
    id: `${family}-${n + 1}`,
    section: 'Left as found',
    about,
    says: [{ column: 'What is known of it', cell }],
  }));
const photos = (...shown: readonly (readonly [says: string, picture: string])[]): SaidFact[] =>
  shown.map(([says, picture], n) => ({ id: `photo-${n + 1}`, section: 'Photos by room', says, picture }));

const told = (was: readonly SaidFact[], is: readonly SaidFact[], digest?: string) =>
  compareFacts(file(was), file(is, digest)).map((one) => [one.about ?? one.section, one.was, one.is]);

const CIRCUITS = ['No list of circuits', 'as bought'] as const;
const WINDOWS = ['Painted cellar windows flake', 'left alone'] as const;
const FENCE = ['Fence post leans', 'found in July'] as const;
const ROOF = ['Roof, date of installation', 'June 2017'] as const;
const LEAD = ['Lead paint, what is known', 'at the cellar windows'] as const;

describe('one row more', () => {
  it('is told alone, wherever it is put in, and as not said the other way round', () => {
    for (const is of [
      rows('condition', FENCE, CIRCUITS, WINDOWS),
      rows('condition', CIRCUITS, FENCE, WINDOWS),
      rows('condition', CIRCUITS, WINDOWS, FENCE),
    ]) {
      const was = rows('condition', CIRCUITS, WINDOWS);
      const words = 'What is known of it: found in July';
      expect(told(was, is)).toEqual([['Fence post leans', undefined, words]]);
      expect(told(is, was)).toEqual([['Fence post leans', words, undefined]]);
    }
  });

  it('leaves a correction that was listed before it as said', () => {
    const changes = told(rows('correction', LEAD), rows('correction', ROOF, LEAD));
    expect(changes.map(([about]) => about)).toEqual(['Roof, date of installation']);
  });

  it('shifts a row that changed as well, and that is told with its own old words', () => {
    const changed = [WINDOWS[0], 'taken out in July'] as const;
    expect(
      told(rows('condition', CIRCUITS, WINDOWS), rows('condition', FENCE, CIRCUITS, changed)),
    ).toContainEqual([
      'Painted cellar windows flake',
      'What is known of it: left alone',
      'What is known of it: taken out in July',
    ]);
  });

  it('is one photo more, and no other photo of the room is another one', () => {
    const [hall, bath, stair] = [
      ['Hall', 'aa'],
      ['Bath', 'bb'],
      ['Stair', 'cc'],
    ] as const;
    expect(told(photos(hall, bath), photos(stair, hall, bath))).toEqual([
      ['Photos by room', undefined, 'Stair'],
    ]);
  });
});

describe('what it tells of earlier deliveries', () => {
  const of = (id: string, says: string): SaidFact => ({
    id,
    section: 'Changes since earlier deliveries',
    says,
  });
  const changes = [
    of('changes-1', 'Roof: June 2019, now June 2017'),
    of('changes-given-1', 'R. Lowe'),
    of('changes-given-note', 'They lie there.'),
  ];
  const was = rows('condition', CIRCUITS);

  it('is not told beside the facts that differ', () => {
    const is = [...changes, ...rows('condition', CIRCUITS, WINDOWS)];
    expect(told(was, is).map(([about]) => about)).toEqual(['Painted cellar windows flake']);
    expect(told(is, was).map(([about]) => about)).toEqual(['Painted cellar windows flake']);
  });

  it('is counted where nothing else differs: it is never taken for the same', () => {
    const is = [...was, ...changes];
    const section = 'Changes since earlier deliveries';
    expect(told(was, is)).toEqual([[section, undefined, 'three statements']]);
    expect(told(is, was)).toEqual([[section, 'three statements', undefined]]);
    const forged = is.map((one) => (one.says === 'R. Lowe' ? { ...one, says: 'nobody' } : one));
    expect(told(forged, is)).toEqual([[section, 'three statements', 'three other statements']]);
    expect(told(is, is)).toEqual([]);
  });
});

describe('the order', () => {
  it('is told where nothing else differs, also under a digest that is the same', () => {
    const is = rows('condition', WINDOWS, CIRCUITS);
    const changes = told(rows('condition', CIRCUITS, WINDOWS), is);
    expect(changes).toEqual([
      [
        'Order in which it is told',
        'No list of circuits: What is known of it: as bought',
        'Painted cellar windows flake: What is known of it: left alone',
      ],
    ]);
  });

  it('is told by the ids where only a number is another', () => {
    const [one] = rows('condition', CIRCUITS);
    if (one === undefined) throw new Error('no row');
    const [change, ...more] = told([one], [{ ...one, id: 'condition-7' }]);
    expect(more).toEqual([]);
    expect(change?.[1]).toContain('(as condition-1)');
    expect(change?.[2]).toContain('(as condition-7)');
  });
});
