import { describe, expect, it } from 'vitest';
import { FOOT, INCH } from '../../src/facts/length.js';
import { printSize, readSize } from '../../src/facts/size.js';

describe('readSize', () => {
  it.each([`11'6" x 12'`, `11'6"x12'`, `11'6" × 12'`, `11'6" X 12'`, `11'6" by 12'`, '11 ft 6 in x 12 ft'])(
    'reads width and depth of %s',
    (text) => {
      const read = readSize(text);
      expect(read.ok && [read.value.width.units, read.value.depth.units, read.value.written]).toEqual([
        11 * FOOT + 6 * INCH,
        12 * FOOT,
        text,
      ]);
      expect(read.ok && printSize(read.value)).toBe('11′ 6″ × 12′ 0″');
    },
  );

  it('prints each side as it was read', () => {
    const read = readSize(`11.5' x 3.5 m`);
    expect(read.ok && printSize(read.value)).toBe('11.5 ft × 3.50 m');
  });

  it.each([
    [`11'6"`, 'a size has two lengths, and here is one'],
    [`11' x 12' x 8'`, 'a size has two lengths, and here are 3'],
    [`11 x 12'`, 'the width: a length needs its unit'],
    [`11' x 12`, 'the depth: a length needs its unit'],
    [`x 12'`, 'the width: there is no length'],
    [`11' x 100,001'`, 'the depth: a length over 100,000 ft is no part of a house'],
    ['', 'there is no size'],
  ])('refuses %s', (text, problem) => {
    expect(readSize(text)).toMatchObject({ ok: false, problem });
  });
});
