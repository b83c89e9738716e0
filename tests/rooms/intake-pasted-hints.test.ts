/** What a message says to type can be typed. */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { typedInYaml } from '../../src/facts/typed-in-yaml.js';
import { marksBefore } from '../../src/intake/open-marks.js';
import { readYaml } from '../../src/intake/yaml.js';

const line = fc
  .oneof(
    fc.string({ unit: 'grapheme', minLength: 1, maxLength: 30 }),
    fc.stringMatching(/^[a-z0-9"':,#&*!|>[\]{}%@` .\\-]{1,20}$/),
    fc.constantFrom(
      'true',
      'no',
      '02139',
      '1e3',
      '0x1F',
      '1.10',
      '.5',
      '~',
      'null',
      '2026-04-11',
      '12:30',
      '-',
      '?',
      'a: b',
      'a #b',
      '1_000',
      '+1',
      '0o7',
      '.inf',
    ),
  )
  .filter((text) => text.trim() === text && text !== '');

describe('a text as it can be typed', () => {
  it('is read back behind a colon as it was', () => {
    fc.assert(
      fc.property(line, (text) => {
        expect(readYaml(`a: ${typedInYaml(text)}\n`, 'x').data).toEqual({ a: text });
      }),
      { numRuns: 2000, seed: 7 },
    );
  });

  it('is read back between brackets as it was', () => {
    fc.assert(
      fc.property(line, (text) => {
        const typed = typedInYaml(text, true);
        expect(readYaml(`a: { b: ${typed}, c: [${typed}] }\n`, 'x').data).toEqual({
          a: { b: text, c: [text] },
        });
      }),
      { numRuns: 2000, seed: 7 },
    );
  });

  it('has no quotes where none are needed', () => {
    expect(typedInYaml(`11'6" x 12'`)).toBe(`11'6" x 12'`);
    expect(typedInYaml('handrail, cellar stair')).toBe('handrail, cellar stair');
    expect(typedInYaml('handrail, cellar stair', true)).toBe('"handrail, cellar stair"');
  });
});

describe('the hints of the gallery', () => {
  const folder = 'tests/diagnostics/intake.yaml';
  const pasted = readdirSync(folder).flatMap((name) => {
    const source = readFileSync(path.join(folder, name, 'input/house.yaml'), 'utf8');
    const [first] = readYaml(source, 'house.yaml').diagnostics;
    const typed = / {2}([A-Za-z][\w-]*): (\S.*)$/.exec(first?.hints[0] ?? '');
    return first?.place === undefined || typed === null
      ? []
      : [{ name, source, line: first.place.line, word: typed[1] ?? '', typed: `${typed[1]}: ${typed[2]}` }];
  });

  it('are there to be pasted', () => expect(pasted.length).toBeGreaterThan(10));

  it.each(pasted)('$name', ({ source, line: wrong, word, typed }) => {
    const lines = source.split('\n');
    const shown = lines[wrong - 1] ?? '';
    // From the word to the end of its value; between braces the rest of the line stays.
    const closing = /^ *- \{/.test(shown) ? ' }' : '';
    lines[wrong - 1] = `${shown.slice(0, shown.indexOf(word))}${typed}${closing}`;
    const left = readYaml(lines.join('\n'), 'house.yaml').diagnostics;
    expect(left.filter(({ place }) => place?.line === wrong)).toEqual([]);
  });
});

describe('marks that are open', () => {
  const openAt = (text: string): string | undefined => {
    const { open } = marksBefore(text, text.length);
    return open === undefined ? undefined : `${open.kind} ${open.start}`;
  };
  it.each([
    ['a: [b, c', 'bracket 3'],
    ['a: [b, {c: d', 'bracket 7'],
    ['a: [b, {c: d}', 'bracket 3'],
    ['a: [b]', undefined],
    ['a: "b', 'quote 3'],
    [`a: 'it''s`, 'quote 3'],
    [`a: 'it''s'`, undefined],
    ['a: "b\\"', 'quote 3'],
    [`a: 11'6" x 12'`, undefined],
    [`a: [11'6", 12'`, 'bracket 3'],
    ['a: b # "c [', undefined],
    ['a: b#"c', undefined],
    ['a: x [b', undefined],
    ['- "b', 'quote 2'],
    ['a: |\n  "text [\nb: c', undefined],
    ['a:\n  - b\n  - "c', 'quote 13'],
  ])('%j: %s', (text, expected) => expect(openAt(text)).toBe(expected));
});
