import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readDate } from '../../src/facts/date.js';
import { readFloorArea } from '../../src/facts/floor-area.js';
import { readLength } from '../../src/facts/length.js';
import { readMoney } from '../../src/facts/money.js';
import { readQuantity } from '../../src/facts/quantity.js';
import type { Read } from '../../src/facts/read.js';
import { readSize } from '../../src/facts/size.js';
import { readStep } from '../../src/facts/step.js';

const READERS: Readonly<Record<string, (text: string) => Read<unknown>>> = {
  readDate,
  readFloorArea,
  readLength,
  readMoney,
  readQuantity: (text) => readQuantity(text, ['gallons', '°F']),
  readSize,
  readStep,
};

/** Texts that look like facts more often than chance would make them. */
const factLike = fc
  .array(
    fc.oneof(
      fc.integer({ min: 0, max: 2300 }).map(String),
      fc.constantFrom(
        ...[
          '.',
          ',',
          '/',
          '-',
          '−',
          ' ',
          '\u00a0',
          "'",
          '"',
          '′',
          '″',
          '’',
          '”',
          "''",
          '½',
          '⅓',
          '⁄',
          '~',
          '?',
          '%',
        ],
        ...[
          'X',
          'x',
          '×',
          'by',
          '..',
          'ft',
          'in',
          'm',
          'cm',
          'sq ft',
          'acre',
          'm²',
          '$',
          '(',
          ')',
          '€',
          '°F',
          'gal',
        ],
        ...[
          'north',
          'east',
          's',
          'w',
          'April',
          'about',
          'before',
          'spring',
          '2026-04-11',
          '199X',
          '1e9',
          'İ',
          '😀',
          '\n',
        ],
      ),
    ),
    { maxLength: 9 },
  )
  .map((parts) => parts.join(''));

const anyText = fc.oneof(
  factLike,
  fc.string({ unit: 'binary', maxLength: 60 }),
  fc.string({ unit: 'grapheme', maxLength: 300 }),
);

describe.each(Object.entries(READERS))('%s', (_name, reader) => {
  it('answers every text without throwing, and says what is so and what to write', () => {
    fc.assert(
      fc.property(anyText, (text) => {
        const read = reader(text);
        if (read.ok) {
          expect(read.value).toBeDefined();
        } else {
          expect(read.problem).toMatch(/\S/);
          expect(read.hint).toMatch(/\S/);
        }
      }),
      { seed: 14, numRuns: 1500 },
    );
  });

  it.each(['11', '2', '½', ''])('does not take the bare text “%s” for a measurement or a date', (text) => {
    if (reader === readMoney && /\d/.test(text)) expect(reader(text).ok).toBe(true);
    else expect(reader(text).ok).toBe(false);
  });

  it('answers a very long text quickly', () => {
    for (const text of ['9', '1,', "1' ", '1/', '2019-', 'n ', 'x', ' ']) {
      expect(reader(text.repeat(100_000)).ok).toBe(false);
    }
  }, 1000);
});
