/**
 * The gallery: for every message the smallest house that earns it, and the report as a writer reads it.
 *
 * A mismatch leaves `expected-changed/expected.txt` beside the case. Whether the new text is better is for a
 * person to say: `node tests/tools/accept-diagnostics.mjs` takes it over, this test never does.
 */
import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { run } from '../src/cli.js';
import { CODES } from '../src/diagnostics/codes.js';
import { changedFile, expectedFile, tellMade, tellWritten, writtenCases } from './tools/gallery.js';
import { MADE_CASES } from './tools/made-cases.js';
import { quietProgress } from './tools/quiet-progress.js';

const WRITTEN = writtenCases();
const codesSeen = new Set<string>();

function compare(name: string, told: string): void {
  for (const match of told.matchAll(/^(?:error|warning|note) ([a-z]+\.[a-z-]+)/gm))
    codesSeen.add(match[1] ?? '');
  const expected = existsSync(expectedFile(name)) ? readFileSync(expectedFile(name), 'utf8') : '';
  const changed = changedFile(name);
  if (told === expected) rmSync(path.dirname(changed), { recursive: true, force: true });
  else {
    mkdirSync(path.dirname(changed), { recursive: true });
    writeFileSync(changed, told);
  }
  expect(told, `see ${changed}; to accept it: node tests/tools/accept-diagnostics.mjs`).toBe(expected);
}

describe('the gallery', () => {
  it('has cases', () => expect(WRITTEN.length).toBeGreaterThan(80));

  it.each(WRITTEN)('%s', async (name) => {
    const told = await tellWritten(name);
    compare(name, told);
    expect(told, 'a case shows its own message').toContain(signOf(homeOf(name)));
    expect(told).not.toContain('    at ');
  });

  it.each(MADE_CASES.map((made) => [`${made.code}/${made.name}`, made] as const))(
    '%s',
    async (name, made) => {
      const told = await tellMade(made);
      if (told === undefined) {
        expect(made.code, 'only the full disk needs what a machine may refuse').toBe('archive.disk');
        return;
      }
      compare(name, told);
      expect(told).toContain(signOf(made.code));
      expect(told).not.toContain('    at ');
    },
  );

  it('calls a mistake of its own by its name, with what to report', async () => {
    let said = '';
    const status = await run(['check'], {
      out: () => {
        throw new Error('made to fail');
      },
      error: (text) => {
        said += text;
      },
      colour: false,
      progress: quietProgress,
    });
    expect(status).toBe(3);
    expect(said).toMatch(
      /^error bug\.internal {2}this is a mistake of sillplate, not of your house: made to fail\n/,
    );
    expect(said).toContain('do: please report it');
    codesSeen.add('bug.internal');
  });

  it('gives every code a home, and shows no code that is not listed', () => {
    const homes = new Set([...WRITTEN, ...MADE_CASES.map(({ code, name }) => `${code}/${name}`)].map(homeOf));
    expect(Object.keys(CODES).filter((code) => !homes.has(code) && code !== 'bug.internal')).toEqual([]);
    expect([...homes].filter((home) => !(home in CODES))).toEqual([]);
  });

  afterAll(() => {
    // Guards the guard: what was printed, not only how folders are named.
    const unlisted = [...codesSeen].filter((code) => !(code in CODES));
    if (unlisted.length > 0)
      throw new Error(`codes that are not listed were printed: ${unlisted.join(', ')}`);
  });
});

/** What shows that a message was given: gaps are listed without their code. */
const signOf = (code: string): string => (code === 'tally.gap' ? 'Still missing, ' : code);

const homeOf = (name: string): string => name.split('/')[0] ?? '';
