/** A checked draft in the terminal: as wide as it is, with what nobody sees, and with our own cautions called so. */
import { describe, expect, it } from 'vitest';
import { remarksCommand } from '../../src/command-remarks.js';
import { columnsOf } from '../../src/diagnostics/columns.js';
import { hiddenWords } from '../../src/hidden-signs.js';
import { markedText } from '../../src/marked-text.js';
import { lineWidth } from '../../src/wrapped-lines.js';
import { quietProgress } from '../tools/quiet-progress.js';

async function reported(text: string, columns: number | undefined): Promise<string[]> {
  let out = '';
  await remarksCommand(
    ['-', 'content/quarry-road'],
    { content: 'content', asOf: '2026-11-20', format: 'text' },
    {
      out: (said) => {
        out += said;
      },
      error: (said) => {
        out += said;
      },
      colour: false,
      columns,
      progress: quietProgress,
    },
    async () => Buffer.from(text),
  );
  return out.split('\n');
}

const DRAFT =
  'Adults only, please, in this family friendly house with all new plumbing throughout and a 2016 roof over it.';

describe('the report', () => {
  it.each([40, 52, 80, 200, undefined])('keeps to %s columns', async (columns) => {
    const lines = await reported(DRAFT, columns);
    const most = lineWidth(columns);
    // A command is never broken.
    const wide = lines.filter((line) => columnsOf(line) > most && !line.startsWith('  sillplate'));
    expect(wide).toEqual([]);
    expect(lines.some((line) => columnsOf(line) > most * 0.7)).toBe(true);
  });

  it('is never narrower than its labels need, nor wider than can be read', () => {
    expect([10, 40, 96, 300, undefined].map(lineWidth)).toEqual([40, 40, 96, 96, 96]);
  });

  it('calls a caution of its own so, and quotes the rule that it is for', async () => {
    const out = (await reported(DRAFT, undefined)).join(' ').replace(/\s+/g, ' ');
    expect(out).toMatch(
      /“family friendly” do .*?rule this program’s own caution, for the sake of F01 “any notice/,
    );
    expect(out).not.toContain('restricted, exclusive, private');
  });

  it('counts one more fact as one', async () => {
    const out = (await reported('Dry cellar.', undefined)).join('\n');
    expect(out).toContain('and 1 more fact\n');
    expect(out).toContain('do     leave it out\n');
    expect(out).not.toContain('Has water ever come');
  });
});

describe('signs that nobody sees', () => {
  it('are told with their line and the words before them', () => {
    expect(hiddenWords('Nice.\nA new\u200b roof')).toBe(
      '1 hidden character in line 2 behind “A new”: take it out',
    );
    expect(hiddenWords('A\u202e new\u202c roof')).toBe(
      '2 hidden characters (some turn the direction of the words), the first in line 1 behind “A”: take them out',
    );
  });

  it('are no part of a picture made of several', () => {
    expect(hiddenWords('Home \u{1f468}\u200d\u{1f469}\u200d\u{1f467} ❤\ufe0f')).toBeUndefined();
  });
});

describe('marks behind pictures', () => {
  it.each([
    ['✨ new roof', 3],
    ['❤\ufe0f new roof', 3],
    ['⭐⭐ new roof', 5],
    ['x new roof', 2],
  ])('stand below their words: %s', (text, column) => {
    const from = text.indexOf('new');
    const [, signs] = markedText(text, [{ from, to: text.length, sign: '^', number: 1 }], 60);
    expect(signs?.text).toBe(`${' '.repeat(column)}${'^'.repeat('new roof'.length)}`);
  });
});
