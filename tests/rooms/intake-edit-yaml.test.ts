/** Words are written into a YAML text, and nothing else of it changes. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Addition, editYaml, lineToType } from '../../src/intake/edit-yaml.js';
import { readYaml } from '../../src/intake/yaml.js';

const pair = (item: number, value: Record<string, string>): Addition => ({
  into: ['work', item],
  word: 'photos',
  value,
  behind: ['id', 'what', 'did', 'done', 'by', 'permit'],
});
const entry = (word: string, value: Record<string, string>, remark?: string): Addition => ({
  into: ['photos'],
  word,
  value,
  form: 'lines',
  remark,
});

function edited(text: string, ...additions: Addition[]): string {
  const made = editYaml(text, additions);
  if (!made.ok) throw new Error(made.why);
  return made.text;
}

describe('a pair is added to a piece of work', () => {
  it('behind who did it, and before what comes after; comments and blank lines stay', () => {
    const text = `# our house
work:
  # ------------------ cellar
  - id: rail     # the short one
    what: handrail
    did: new
    by: owner   # and a cousin
    # measured twice

    evidence: [receipt-1]
  - { id: floor, what: floor, did: new }
`;
    expect(edited(text, pair(0, { before: 'IMG_1', after: 'IMG_2' }))).toBe(`# our house
work:
  # ------------------ cellar
  - id: rail     # the short one
    what: handrail
    did: new
    by: owner   # and a cousin
    photos: { before: IMG_1, after: IMG_2 }
    # measured twice

    evidence: [receipt-1]
  - { id: floor, what: floor, did: new }
`);
    expect(edited(text, pair(1, { after: 'IMG_2' }))).toContain(
      '  - { id: floor, what: floor, did: new, photos: { after: IMG_2 } }\n',
    );
  });

  it.each([
    ['work:\n- id: a\n  what: w', 'work:\n- id: a\n  what: w\n  photos: { before: X }'],
    ['work:\n  -\n    id: a\n', 'work:\n  -\n    id: a\n    photos: { before: X }\n'],
    ['work: [{ id: a }]\n', 'work: [{ id: a, photos: { before: X } }]\n'],
    ['work:\n  - {id: a,}\n', 'work:\n  - {id: a, photos: { before: X }}\n'],
    [
      'work:\n  - {\n      id: a, # one\n      did: new # two\n    }\n',
      'work:\n  - {\n      id: a, # one\n      did: new, # two\n      photos: { before: X }\n    }\n',
    ],
    [
      'work:\n  - id: a\n    did: new\n    note: |\n      two\n      lines\n\n  - id: b\n',
      'work:\n  - id: a\n    did: new\n    photos: { before: X }\n    note: |\n      two\n      lines\n\n  - id: b\n',
    ],
    [
      'work:\n  - note: >-\n      long\n      text\n\nrooms: []\n',
      'work:\n  - note: >-\n      long\n      text\n    photos: { before: X }\n\nrooms: []\n',
    ],
    [
      'work:\r\n  - id: a\r\nrooms: []\r\n',
      'work:\r\n  - id: a\r\n    photos: { before: X }\r\nrooms: []\r\n',
    ],
    ['\uFEFFwork:\n  - id: a\n', '\uFEFFwork:\n  - id: a\n    photos: { before: X }\n'],
    ['work:\n  - id: a\n    photos:  # soon\n', 'work:\n  - id: a\n    photos: { before: X }  # soon\n'],
  ])('%j', (text, expected) => {
    const empty = /photos:/.test(text);
    const addition: Addition = empty
      ? { into: ['work', 0, 'photos'], word: 'before', value: 'X' }
      : pair(0, { before: 'X' });
    expect(edited(text, addition)).toBe(expected);
  });

  it('beside the half that is there, before first', () => {
    const before: Addition = { into: ['work', 0, 'photos'], word: 'before', value: 'X', first: true };
    const after: Addition = { into: ['work', 0, 'photos'], word: 'after', value: 'X' };
    expect(edited('work:\n  - { id: a, photos: { after: Y } }\n', before)).toBe(
      'work:\n  - { id: a, photos: { before: X, after: Y } }\n',
    );
    expect(edited('work:\n  - id: a\n    photos:\n      after: Y # late\n', before)).toBe(
      'work:\n  - id: a\n    photos:\n      before: X\n      after: Y # late\n',
    );
    expect(edited('work:\n  - id: a\n    photos:\n      before: Y # late\n    by: owner\n', after)).toBe(
      'work:\n  - id: a\n    photos:\n      before: Y # late\n      after: X\n    by: owner\n',
    );
  });
});

describe('a comment above the word that is there', () => {
  const before: Addition = { into: ['work', 0, 'photos'], word: 'before', value: 'X', first: true };

  it.each([
    [
      'work:\n  - id: a\n    photos:\n      # the good one, from the door\n      after: Y\n    by: owner\n',
      'work:\n  - id: a\n    photos:\n      # the good one, from the door\n      after: Y\n      before: X\n    by: owner\n',
    ],
    [
      'work:\n  - id: a\n    photos:\n      # the good one\n      after: Y # late\n      during: [Z]\n',
      'work:\n  - id: a\n    photos:\n      # the good one\n      after: Y # late\n      before: X\n      during: [Z]\n',
    ],
    [
      'work:\r\n  - id: a\r\n    photos:\r\n      # the good one\r\n      after: Y\r\n',
      'work:\r\n  - id: a\r\n    photos:\r\n      # the good one\r\n      after: Y\r\n      before: X\r\n',
    ],
    [
      'work:\n  - id: a\n    photos: {\n      # the good one\n      after: Y\n      }\n',
      'work:\n  - id: a\n    photos: {\n      # the good one\n      after: Y,\n      before: X\n      }\n',
    ],
    // Not about the word: beside the word above it, or apart.
    [
      'work:\n  - id: a\n    photos: # two\n      after: Y\n',
      'work:\n  - id: a\n    photos: # two\n      before: X\n      after: Y\n',
    ],
    [
      'work:\n  - id: a\n    photos:\n      # two\n\n      after: Y\n',
      'work:\n  - id: a\n    photos:\n      # two\n\n      before: X\n      after: Y\n',
    ],
    [
      'work:\n  - id: a\n    # two\n    photos: { after: Y }\n',
      'work:\n  - id: a\n    # two\n    photos: { before: X, after: Y }\n',
    ],
  ])('stays with it: %j', (text, expected) => {
    expect(edited(text, before)).toBe(expected);
  });
});

describe('many at once', () => {
  const many = (count: number) => {
    const items = Array.from(
      { length: count },
      (_, n) =>
        `  - id: w${n} # one of many\n    what: handrail, cellar stair ${n}\n    did: new\n    done: 2026-05-12\n    by: owner\n    note: |\n      ${'a long note about it '.repeat(12)}\n`,
    );
    const additions = Array.from({ length: count }, (_, n) => [
      entry(`A${n}`, { shows: 'x: y', when: 'before' }, 'alt: "A."'),
      entry(`B${n}`, { shows: 'x, y', when: 'after' }, 'alt: "B."'),
      pair(n, { before: `A${n}`, after: `B${n}` }),
    ]).flat();
    return { text: `work:\n${items.join('\n')}`, additions };
  };
  const photosWord: Addition = { into: [], word: 'photos', value: null };

  it('a hundred pairs are written in seconds', () => {
    const { text, additions } = many(100);
    expect(text.length).toBeGreaterThan(30_000);
    const began = process.cpuUsage().user;
    const made = edited(text, photosWord, ...additions);
    const seconds = (process.cpuUsage().user - began) / 1e6;
    expect(seconds).toBeLessThan(4);
    expect(made.match(/photos: \{ before: A\d+, after: B\d+ \}/g)).toHaveLength(100);
    expect(made).toContain('    # alt: "A."\n  B0:\n');
  });

  it.each([
    ['no photos yet', ''],
    ['an empty word', '\nphotos:\n'],
    ['empty brackets', '\nphotos: {}\n'],
    ['brackets', '\nphotos: { O: { shows: o } }\n'],
    ['brackets and a last comma', '\nphotos: { O: { shows: o }, }\n'],
    ['brackets on lines', '\nphotos: {\n  O: { shows: o }, # one\n  }\n'],
    ['lines', '\nphotos:\n  O: { shows: o }\n\nrooms: []\n'],
  ])('give what one after the other gives: %s', (_name, photosThere) => {
    const { text, additions } = many(6);
    const all = [...(photosThere === '' ? [photosWord] : []), ...additions];
    const together = edited(text + photosThere, ...all);
    expect(together).toBe(all.reduce((now, one) => edited(now, one), text + photosThere));
  });

  it('of which one has no place in its best spot: that one goes elsewhere', () => {
    // Behind a text that keeps its blank lines, the new word would take them away.
    const text = 'work:\n  - id: a\n    did: new\n    by: |+\n      x\n\n\n  - id: b\n    by: owner\n';
    expect(edited(text, pair(0, { before: 'X' }), pair(1, { before: 'Y' }))).toBe(
      'work:\n  - id: a\n    did: new\n    photos: { before: X }\n    by: |+\n      x\n\n\n  - id: b\n    by: owner\n    photos: { before: Y }\n',
    );
    const nowhere = 'work:\n  - by: |+\n      x\n\n\n  - id: b\n    by: owner\n';
    expect(editYaml(nowhere, [pair(0, { before: 'X' }), pair(1, { before: 'Y' })])).toEqual({
      ok: false,
      why: 'is written in a way that this can’t write into',
    });
  });

  it('of which one can’t be written: none is', () => {
    const { text, additions } = many(3);
    const made = editYaml(text, [...additions.slice(2, 3), pair(0, { before: 'X' })]);
    expect(made).toEqual({
      ok: false,
      why: 'has “photos” in that place already, and nothing is written over',
    });
  });
});

describe('photos are entered', () => {
  const words = { shows: 'handrail, cellar stair', when: 'before' };

  it('below the last one, with its comments, in the step that is used there', () => {
    expect(
      edited(
        'photos:\n    A:\n       shows: a\n       # alt: "…"\n    # the end\n\nrooms: []\n',
        entry('IMG_1', words, 'alt: A stair.'),
      ),
    ).toBe(
      'photos:\n    A:\n       shows: a\n       # alt: "…"\n    IMG_1:\n       shows: handrail, cellar stair\n       when: before\n       # alt: A stair.\n    # the end\n\nrooms: []\n',
    );
  });

  it.each([
    [
      'photos:\n',
      'photos:\n  IMG_1:\n    shows: handrail, cellar stair\n    when: before\n    # alt: A stair.\n',
    ],
    [
      'photos: # none yet\n\nrooms: []',
      'photos: # none yet\n  IMG_1:\n    shows: handrail, cellar stair\n    when: before\n    # alt: A stair.\n\nrooms: []',
    ],
    [
      'photos: { A: { shows: a } }\n',
      'photos: { A: { shows: a }, IMG_1: { shows: "handrail, cellar stair", when: before } }\n',
    ],
  ])('where there were none or few: %j', (text, expected) => {
    expect(edited(text, entry('IMG_1', words, 'alt: A stair.'))).toBe(expected);
  });

  const LINES = '  IMG_1:\n    shows: handrail, cellar stair\n    when: before\n    # alt: A stair.';

  it.each([
    ['photos: {}\n', `photos: \n${LINES}\n`],
    ['photos: {}', `photos: \n${LINES}`],
    ['photos:   { } # none yet\nrooms: []\n', `photos:     # none yet\n${LINES}\nrooms: []\n`],
    ['photos: {}\n# IMG_9: { shows: a }\n', `photos: \n${LINES}\n# IMG_9: { shows: a }\n`],
    ['photos: {}\n  # deep\n', `photos: \n  # deep\n${LINES}\n`],
    ['photos: { # one\n  # two }\n  }\n', `photos:  # one\n  # two }\n  \n${LINES}\n`],
    ['photos:\n  {}\nrooms: []\n', `photos:\n  \n${LINES}\nrooms: []\n`],
    ['photos: {}\r\n', `photos: \r\n${LINES.replaceAll('\n', '\r\n')}\r\n`],
  ])('on lines in place of two braces that hold nothing: %j', (text, expected) => {
    const made = editYaml(text, [entry('IMG_1', words, 'alt: A stair.')]);
    expect(made).toEqual({ ok: true, text: expected, put: [expect.objectContaining({ remarked: true })] });
    expect(readYaml(expected, '').data).toMatchObject({ photos: { IMG_1: words } });
  });

  it('in brackets that stand among brackets, and in those that hold something', () => {
    const add: Addition = { into: ['work', 0, 'photos'], word: 'before', value: 'X', form: 'lines' };
    expect(edited('work:\n  - { id: a, photos: {} }\n', add)).toBe(
      'work:\n  - { id: a, photos: { before: X } }\n',
    );
    expect(edited('work:\n  - id: a\n    photos: {} # soon\n    by: owner\n', add)).toBe(
      'work:\n  - id: a\n    photos:  # soon\n      before: X\n    by: owner\n',
    );
  });

  it('and it is told how each stands in the file', () => {
    const put = (text: string) => {
      const made = editYaml(text, [entry('IMG_1', words, 'alt: A stair.'), entry('IMG_2', { shows: 'b' })]);
      return made.ok ? made.put : made.why;
    };
    const second = { lines: ['IMG_2:', '  shows: b'], remarked: false };
    for (const text of ['photos: {}\n', 'photos:\n', 'photos:\n  A:\n    shows: a\n'])
      expect(put(text), text).toEqual([
        {
          lines: ['IMG_1:', '  shows: handrail, cellar stair', '  when: before', '  # alt: A stair.'],
          remarked: true,
        },
        second,
      ]);
    expect(put('photos: { A: { shows: a } }\n')).toEqual([
      { lines: ['IMG_1: { shows: "handrail, cellar stair", when: before }'], remarked: false },
      { lines: ['IMG_2: { shows: b }'], remarked: false },
    ]);
  });

  it('at the end of the file where the word is in none', () => {
    const top: Addition = { into: [], word: 'photos', value: { IMG_1: 'x' }, form: 'lines' };
    expect(edited('work: []\n', top)).toBe('work: []\n\nphotos:\n  IMG_1: x\n');
    expect(edited('work: []', top)).toBe('work: []\n\nphotos:\n  IMG_1: x');
    expect(edited('work: []\n', { into: [], word: 'photos', value: null }, entry('A', { shows: 'a' }))).toBe(
      'work: []\n\nphotos:\n  A:\n    shows: a\n',
    );
    expect(edited('work: []\r\n', top)).toBe('work: []\r\n\r\nphotos:\r\n  IMG_1: x\r\n');
  });

  it('with quotes where a name needs them', () => {
    const made = edited('photos:\n', entry('0412', { shows: 'a: b', file: 'Küche "vorher" 😀.jpg' }));
    expect(readYaml(made, '').data).toEqual({
      photos: { '0412': { shows: 'a: b', file: 'Küche "vorher" 😀.jpg' } },
    });
  });
});

describe('what is refused', () => {
  it.each([
    ['a word that is there', 'work:\n  - { id: a, photos: { before: Y } }\n', 'already'],
    ['a word that is there twice', 'work:\n  - { id: a, id: b }\n', 'mistake'],
    ['no YAML', 'work: [\n', 'mistake'],
    ['an item that is not there', 'work: []\n', 'already'],
    ['tabs', 'work:\n  -\tid: a\n', 'mistake'],
  ])('%s', (_name, text, why) => {
    const made = editYaml(text, [pair(0, { before: 'X' })]);
    expect(made.ok ? made.text : made.why).toContain(why);
  });

  it('and then there is a line to type by hand', () => {
    expect(lineToType(pair(0, { before: 'A', after: 'B' }))).toBe('photos: { before: A, after: B }');
    expect(lineToType(entry('0412', { shows: 'x, y' }, 'alt: X.'))).toBe('"0412": { shows: "x, y" }');
  });
});

// ------------------------------------------------------------------ any layout

const comment = fc.constantFrom('', '', ' # why', '   # “quoted”: {x} - [y]');
const between = fc.constantFrom('', '', '\n', '# a note\n', '      # deep note\n', '\n# - id: old\n\n');
const plain = fc.constantFrom(
  'w',
  'handrail, cellar stair',
  '"q: \\" {"',
  "'it''s # no'",
  '2026-05-12',
  '[a, b]',
  '{ x: 1 }',
);

/** One word of an item in lines. */
const blockWord = (indent: string) =>
  fc.oneof(
    fc.tuple(plain, comment).map(([value, note]) => ` ${value}${note}\n`),
    fc.constantFrom(
      ` |\n${indent}  two\n${indent}  lines: [\n`,
      ` >-\n${indent}   folded # no comment\n\n${indent}   text\n`,
      `\n${indent}- one\n${indent}- { two: 2 }\n`,
      `\n${indent}  x: 1 # deep\n${indent}  y:\n`,
      '\n',
      ` long plain\n${indent}  text on two lines # end\n`,
    ),
  );

const WORDS = ['id', 'what', 'did', 'by', 'permit', 'note'] as const;

interface Shape {
  readonly text: string;
  readonly has: 'nothing' | 'empty' | 'half';
}

const blockItem = (dash: string): fc.Arbitrary<Shape> => {
  const indent = `${dash}  `;
  return fc
    .tuple(
      fc.subarray([...WORDS], { minLength: 1 }),
      fc.array(fc.tuple(blockWord(indent), between), { minLength: 6, maxLength: 6 }),
      fc.constantFrom('nothing', 'nothing', 'empty', 'braces', 'half', 'half-lines'),
      fc.nat({ max: 5 }),
    )
    .map(([words, values, photos, spot]) => {
      const lines = words.map((word, n) => `${word}:${values[n]?.[0]}${values[n]?.[1]}`);
      const own = {
        nothing: [],
        empty: ['photos: # soon\n'],
        braces: ['photos: {} # soon\n'],
        half: ['photos: { after: OLD } # x\n'],
        'half-lines': [`photos:\n${indent}    # which\n${indent}    after: OLD\n`],
      }[photos];
      lines.splice(spot % (lines.length + 1), 0, ...own);
      return {
        text: `${dash}- ${lines.map((line, n) => (n === 0 ? line : indent + line)).join('')}`,
        has: photos === 'half-lines' ? 'half' : photos === 'braces' ? 'empty' : (photos as Shape['has']),
      };
    });
};

const flowItem = (dash: string): fc.Arbitrary<Shape> =>
  fc
    .tuple(
      fc.subarray(['id: a', 'what: "x, y"', 'did:', 'by: [a, { b: c }]'], { minLength: 1 }),
      fc.constantFrom(', ', ',', `,\n${dash}    `, ` , # note\n${dash}    `),
      fc.constantFrom(
        ['{ ', ' }'],
        ['{', '}'],
        [`{\n${dash}    `, `\n${dash}  }`],
        ['{ ', ', }'],
        ['{ ', ` # n\n${dash}  }`],
      ),
      fc.constantFrom('', '', 'photos:', 'photos: {}', 'photos: { after: OLD }', 'photos: {after: OLD}'),
      comment,
    )
    .map(([words, comma, [open, close], photos, note]) => ({
      text: `${dash}- ${open}${[...words, ...(photos === '' ? [] : [photos])].join(comma)}${close}${note}\n`,
      has: photos === '' ? 'nothing' : photos.includes('OLD') ? 'half' : 'empty',
    }));

const work = fc.constantFrom('', '  ', '    ').chain((dash) =>
  fc
    .array(fc.tuple(fc.oneof(blockItem(dash), flowItem(dash)), between), { minLength: 1, maxLength: 3 })
    .map((items) => ({
      text: `work:${items.length > 1 ? ' # all of it' : ''}\n${items.map(([item, gap]) => item.text + gap).join('')}`,
      items: items.map(([item]) => item),
    })),
);

const photos = fc.constantFrom(
  undefined,
  'photos:\n',
  'photos: # none\n# yet\n',
  'photos: {}\n',
  'photos: { } # none\n',
  'photos: { OLD: { shows: a } } # one\n',
  'photos: {\n  OLD: { shows: a }, # one\n  X: {}\n  }\n',
  'photos:\n  OLD: { shows: a } # one\n',
  'photos:\n  OLD: { shows: a }\n  # B: { shows: b }\n\n',
  'photos:\n  OLD:\n    shows: a\n    # alt: "…"\n',
  'photos:\n    "OLD":\n      hide: [[0, 0, 1, 1]]\n      alt: >\n        long\n        text\n\n\n',
);

describe('whatever the layout', () => {
  it('the old text is there character for character, and the data is the old with the additions', () => {
    let done = 0;
    fc.assert(
      fc.property(
        work,
        photos,
        fc.boolean(),
        fc.constantFrom('\n', '\r\n'),
        fc.constantFrom('', '\uFEFF'),
        fc.boolean(),
        fc.nat({ max: 2 }),
        fc.constantFrom({}, { form: 'lines' } as const),
        (made, entries, workFirst, nl, mark, ended, pick, form) => {
          const parts = ['# top\nhouse: { name: x }\n\n', made.text, entries ?? '', 'rooms: []\n'];
          if (!workFirst) parts.reverse();
          const plainText = parts.join('');
          const text = mark + (ended ? plainText : plainText.trimEnd()).replaceAll('\n', nl);
          const old = readYaml(text, '');
          // A few layouts make no YAML (a value ends where the next line stands); they are not what this is about.
          fc.pre(old.diagnostics.length === 0);
          const item = pick % made.items.length;
          const shape = made.items[item];
          if (shape === undefined) throw new Error('no item');
          const additions: Addition[] =
            shape.has === 'nothing'
              ? [pair(item, { before: 'IMG_1', after: '0412' })]
              : [
                  { into: ['work', item, 'photos'], word: 'before', value: 'IMG_1', first: true, ...form },
                  ...(shape.has === 'half'
                    ? []
                    : [{ into: ['work', item, 'photos'], word: 'after', value: '0412', ...form }]),
                ];
          additions.push(
            ...(entries === undefined
              ? [{ into: [], word: 'photos', value: { A: 'x' }, form: 'lines' } as const]
              : []),
            entry('IMG_1', { shows: 'x: y', when: 'before' }, 'alt: "A."'),
            entry('0412', { shows: 'z, w', file: 'Küche 😀.jpg' }),
          );
          const result = editYaml(text, additions);
          if (!result.ok) throw new Error(`${result.why}\n${text}`);
          const expected = structuredClone(old.data) as {
            work: { photos?: object | null }[];
            photos?: object | null;
          };
          const target = expected.work[item];
          if (target === undefined) throw new Error('no item');
          target.photos = {
            ...(shape.has === 'half' ? target.photos : { after: '0412' }),
            before: 'IMG_1',
          };
          expected.photos = {
            ...(entries === undefined ? { A: 'x' } : expected.photos),
            IMG_1: { shows: 'x: y', when: 'before' },
            '0412': { shows: 'z, w', file: 'Küche 😀.jpg' },
          };
          expect(readYaml(result.text, '').data).toEqual(expected);
          // The braces of an empty group may have gone, and nothing else.
          expect(isWithin(text.replace(/(photos: )\{( ?)\}/g, '$1$2'), result.text), result.text).toBe(true);
          for (const { lines } of result.put) for (const line of lines) expect(result.text).toContain(line);
          expect(result.put).toHaveLength(additions.length);
          // Line ends are of the one kind, and the last one is as it was.
          expect(result.text.replaceAll('\r\n', '').includes(nl === '\n' ? '\r' : '\n')).toBe(false);
          expect(result.text.endsWith('\n')).toBe(text.endsWith('\n'));
          // Lines that nothing was put into are there as they were, in their order.
          const lines = result.text.split(nl);
          const kept = text.split(nl).filter((line) => lines.includes(line));
          expect(text.split(nl).length - kept.length).toBeLessThanOrEqual(4);
          // A second time there is nothing to add, and nothing is written over.
          expect(editYaml(result.text, additions).ok).toBe(false);
          done += 1;
        },
      ),
      { numRuns: 1500, seed: 11 },
    );
    expect(done).toBe(1500);
  });
});

/** All characters of `a` stand in `b` in their order. */
function isWithin(a: string, b: string): boolean {
  let at = 0;
  for (const sign of a) {
    at = b.indexOf(sign, at);
    if (at < 0) return false;
    at += sign.length;
  }
  return true;
}
