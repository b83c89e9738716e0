/** A passphrase as it is typed: keys that are no letters, and what comes behind Enter. */
import { PassThrough } from 'node:stream';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { askPassphrase, TypedLine } from '../../src/ask-passphrase.js';

/** What a line holds after chunks of keys; undefined: broken off. */
function typed(...chunks: readonly string[]): string | undefined {
  const line = new TypedLine();
  for (const chunk of chunks) {
    const ended = line.take(chunk);
    if (ended !== undefined) return ended.answer;
  }
  throw new Error('the line did not end');
}

describe('what is typed', () => {
  // What the keys send: xterm and the Linux console, from memory.
  it.each([
    ['arrows', ['ab\u001b[D\u001b[1;5Cc\r']],
    ['an arrow in two chunks', ['ab\u001b[', 'Dc\r']],
    ['one with its numbers in two chunks', ['ab\u001b[1;', '5Dc\r']],
    ['Home, Delete and F1', ['a\u001bOH\u001b[3~b\u001bOPc\r']],
    ['F1 of a console', ['a\u001b[[Abc\r']],
    ['F1 of a console in two chunks', ['a\u001b[[', 'Abc\r']],
    ['Escape alone', ['ab\u001b', 'c\r']],
    ['Alt and a letter', ['a\u001bxbc\r']],
    ['Alt and an arrow', ['a\u001b\u001b[Dbc\r']],
    ['a frame around a paste', ['\u001b[200~abc\u001b[201~\r']],
    ['Tab, Ctrl+A, Ctrl+W', ['a\t\u0001b\u0017c\r']],
    ['Ctrl+U', ['wrong\u0015abc\n']],
    ['Backspace', ['abd\u007fc\r']],
  ])('%s: no letter of it is taken', (_what, chunks) => {
    expect(typed(...chunks)).toBe('abc');
  });

  it('keeps letters of every script whole', () => {
    expect(typed('Größe 🏠x\b\bé\r')).toBe('Größe é');
  });

  it.each(['abc\u0003', 'abc\u0004', '\u001b[\u0003'])('%j breaks it off', (text) => {
    expect(typed(text)).toBeUndefined();
  });

  it('tells of a key that no passphrase holds', () => {
    const line = new TypedLine();
    line.take('\u001b[A');
    expect(line.refused).toBe(true);
    line.take('a');
    expect(line.refused).toBe(false);
  });
});

describe('at a terminal', () => {
  afterEach(() => vi.restoreAllMocks());

  it.each([
    ['\r', ['one\rother\r']],
    ['\r\n', ['one\r\nother\r\n']],
    ['\r, cut within the second', ['one\roth', 'er\r']],
  ])('two answers pasted at once, with %j, are two answers', async (_end, chunks) => {
    const stdin = Object.assign(new PassThrough(), { isTTY: true, setRawMode: () => undefined });
    vi.spyOn(process, 'stdin', 'get').mockReturnValue(stdin as never);
    let shown = '';
    vi.spyOn(process.stderr, 'write').mockImplementation((text) => {
      shown += text;
      return true;
    });
    const first = askPassphrase('Passphrase: ');
    for (const chunk of chunks) stdin.write(chunk);
    expect(await first).toBe('one');
    expect(await askPassphrase('The same again: ')).toBe('other');
    expect(shown).toBe('Passphrase: \nThe same again: \n');
  });
});
