/** Keyboard signs become a typesetter's: common practice, no source. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Section } from '../../src/packet/packet.js';
import { sectionsWithProperSigns, withProperSigns } from '../../src/packet/proper-signs.js';

const set = (text: string): string => withProperSigns(text).text;

describe('what was typed', () => {
  it.each([
    [`it's 3 1/2" wide`, 'it’s 3½″ wide'],
    [`the owner's word, the neighbours' fence`, 'the owner’s word, the neighbours’ fence'],
    [`sold as "Oat 12" paint`, 'sold as “Oat 12” paint'],
    [`they said: "not before May".`, 'they said: “not before May”.'],
    [`a 30'6" wall, 7" x 48" planks`, 'a 30′6″ wall, 7″ × 48″ planks'],
    [`12' deep`, '12′ deep'],
    [`2x4 studs, 5/4 boards`, '2×4 studs, 5/4 boards'],
    ['1/4 in gap, 7/8 inch, 1/2 acre', '¼ in gap, ⅞ inch, ½ acre'],
    ['lot 1/2, on 3/4 and 1/2', 'lot 1/2, on 3/4 and 1/2'],
    ['10-15 years - perhaps', '10–15 years – perhaps'],
    ['code OH-EL-14, 2026-06-20, B-08', 'code OH-EL-14, 2026-06-20, B-08'],
    [`the '70s kitchen`, 'the ’70s kitchen'],
    [`called 'the den' by them`, 'called ‘the den’ by them'],
    ['wait...', 'wait…'],
    ['already “set” – it’s ½″', 'already “set” – it’s ½″'],
    ['0x12, AX2x4, 1920x1080-2, 12x40--A', '0x12, AX2x4, 1920x1080-2, 12x40--A'],
    ['a 3x5 rug (2x4), A12--4', 'a 3×5 rug (2×4), A12--4'],
  ])('%s', (typed, proper) => {
    expect(set(typed)).toBe(proper);
  });

  it('loses no letter, whatever was typed', () => {
    const letters = (text: string): string => text.replace(/[^ab]/gu, '');
    fc.assert(
      fc.property(fc.string({ unit: fc.constantFrom(...`ab 12'"-./x(),in`), maxLength: 30 }), (text) => {
        expect(letters(set(text))).toBe(letters(text));
        expect(set(text)).not.toMatch(/["]/u);
      }),
      { numRuns: 2000, seed: 7 },
    );
  });
});

describe('a section', () => {
  const made = (text: string): Section => ({
    id: `it's`,
    title: 'Size',
    blocks: [
      {
        kind: 'paragraph',
        id: `a"b`,
        size: 'body',
        text: [{ text: `"${text}`, to: `x'y` }, { text: `" it's` }],
      },
      { kind: 'notice', id: 'law', title: `The seller's`, paragraphs: [[{ text: `the seller's "word"` }]] },
    ],
  });

  it('has them in its words, over several runs, and never in ids', () => {
    const [section] = sectionsWithProperSigns([made('Oat')]);
    expect(section?.blocks[0]).toEqual({
      kind: 'paragraph',
      id: `a"b`,
      size: 'body',
      text: [{ text: '“Oat', to: `x'y` }, { text: '” it’s' }],
    });
    expect(section?.id).toBe(`it's`);
  });

  it('has them in lists, rows and drawings', () => {
    const mark = {
      standing: 'owner',
      word: `Owner's statement`,
      detail: [{ text: `the seller's` }],
    } as const;
    const [section] = sectionsWithProperSigns([
      {
        id: 'all',
        title: 'All',
        blocks: [
          { kind: 'list', id: 'list', items: [{ id: `i'm`, text: [{ text: `it's` }], mark }] },
          {
            kind: 'table',
            id: 'table',
            caption: `Owner's`,
            columns: [{ title: `It's`, align: 'left', weight: 1 }],
            rows: [{ id: 'row', cells: [[{ text: `it's` }]] }],
          },
          {
            kind: 'drawing',
            id: 'plan',
            alt: `Owner's plan`,
            caption: [],
            drawing: {
              width: 9,
              height: 9,
              shapes: [
                { kind: 'text', at: [1, 1], text: `it's`, style: 'body', ink: 'ink', anchor: 'start' },
              ],
            },
          },
        ],
      },
    ]);
    const text = JSON.stringify(section);
    expect(text.match(/’/gu)).toHaveLength(7);
    expect(text.match(/'/gu)).toHaveLength(2);
  });

  it('leaves what is typed off letter for letter, and the code of an address whole', () => {
    const address = `https://xn--mnchen-3ya.example/it's/2x4/...`;
    const before: Section = {
      id: 'code',
      title: 'Code',
      blocks: [
        {
          kind: 'paragraph',
          id: 'p',
          size: 'body',
          text: [{ text: `it's ` }, { text: address, verbatim: true }],
        },
        {
          kind: 'drawing',
          role: 'code',
          id: 'c',
          alt: `It leads to ${address}`,
          caption: [{ text: address, verbatim: true }],
          drawing: { width: 1, height: 1, shapes: [] },
        },
      ],
    };
    const after = sectionsWithProperSigns([before])[0]?.blocks;
    expect(JSON.stringify(after?.[0])).toContain(address);
    expect(JSON.stringify(after?.[0])).toContain('it’s ');
    expect(after?.[1]).toEqual(before.blocks[1]);
  });

  it('leaves notices as a law fixed them', () => {
    const before = made('Oat');
    expect(sectionsWithProperSigns([before])[0]?.blocks[1]).toEqual(before.blocks[1]);
  });
});
