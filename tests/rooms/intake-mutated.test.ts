/**
 * Whatever is done to a house's files, the program answers with diagnostics: in time, and without a stack trace.
 */
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import fc from 'fast-check';
import { afterAll, describe, expect, it } from 'vitest';
import { CODES } from '../../src/diagnostics/codes.js';
import { locate, printReport } from '../../src/diagnostics/report.js';
import { readHouse } from '../../src/intake/read-house.js';
import { readYaml } from '../../src/intake/yaml.js';
import { deriveTally } from '../../src/tally/tally.js';

const scratch = mkdtempSync(path.join(tmpdir(), 'sillplate-mutated-'));
afterAll(() => rmSync(scratch, { recursive: true, force: true }));

const SOURCES: readonly string[] = readdirSync('content', { withFileTypes: true })
  .filter((entry) => entry.isDirectory())
  .flatMap(({ name }) =>
    readdirSync(path.join('content', name))
      .filter((file) => file.endsWith('.yaml'))
      .map((file) => path.join('content', name, file)),
  );

const { HOLE, OBEYED } = (await import(new URL('../attack/holes.mjs', import.meta.url).href)) as {
  readonly HOLE: RegExp;
  readonly OBEYED: RegExp;
};
const { PIECES } = (await import(new URL('../attack/hostile-pieces.mjs', import.meta.url).href)) as {
  PIECES: readonly string[];
};

const change = fc.record({
  at: fc.double({ min: 0, max: 1, noNaN: true }),
  take: fc.integer({ min: 0, max: 40 }),
  put: fc.oneof(
    fc.constantFrom(...PIECES).map((piece) => Buffer.from(piece)),
    fc.uint8Array({ maxLength: 4 }).map((bytes) => Buffer.from(bytes)),
    fc.constant(Buffer.alloc(0)),
  ),
});

function mutated(source: Buffer, changes: readonly { at: number; take: number; put: Buffer }[]): Buffer {
  return changes.reduce((bytes, { at, take, put }) => {
    const from = Math.floor(at * bytes.length);
    return Buffer.concat([bytes.subarray(0, from), put, bytes.subarray(from + take)]);
  }, source);
}

describe('a house with changed bytes', () => {
  it('has files to change', () => expect(SOURCES.length).toBeGreaterThan(3));

  it('earns diagnostics, never an exception', { timeout: 240_000 }, async () => {
    const folder = path.join(scratch, 'house');
    mkdirSync(folder);
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom(...SOURCES),
        fc.array(change, { minLength: 1, maxLength: 6 }),
        async (source, changes) => {
          writeFileSync(path.join(folder, 'house.yaml'), mutated(readFileSync(source), changes));
          const started = performance.now();
          const read = await readHouse(folder, 'house');
          const derived =
            read.found === undefined ? [] : deriveTally(read.found.house, '2026-11-20').diagnostics;
          const located = locate([...read.diagnostics, ...derived], read.places);
          expect(performance.now() - started).toBeLessThan(5000);
          for (const { diagnostic, place } of located) {
            expect(diagnostic.code in CODES).toBe(true);
            if (place === undefined) continue;
            expect(place.column).toBeLessThanOrEqual(place.source.length + 1);
            expect(place.column - 1 + place.length).toBeLessThanOrEqual(
              Math.max(place.source.length, place.column),
            );
          }
          const text = printReport(located, 'text', false);
          expect(text).not.toMatch(HOLE);
          expect(text).not.toMatch(OBEYED);
          expect(JSON.parse(printReport(located, 'json', false))).toHaveLength(located.length);
        },
      ),
      { numRuns: 300, seed: 20261120, interruptAfterTimeLimit: 180_000, markInterruptAsFailure: false },
    );
  });
});

describe('a file made to take long', () => {
  const within = (text: string): number => {
    const started = performance.now();
    const read = readYaml(text, 'house.yaml');
    expect(read.diagnostics.length).toBeGreaterThan(0);
    return performance.now() - started;
  };

  it.each([
    [
      'many top-level words and one mistake',
      `${Array.from({ length: 60_000 }, (_, n) => `word${n}: x\n`).join('')}a: b: c\n`,
    ],
    ['many open brackets', `work: ${'['.repeat(1_000_000)}\n`],
    ['many open quotes', `${'- "a\n'.repeat(200_000)}`],
    ['many closed quotes, then a mistake', `a: [${'"a", '.repeat(200_000)}"b" c]\n`],
    ['one line of a million characters', `house: "${'x'.repeat(1_000_000)}" y\n`],
    ['many anchors and aliases', `work:\n${'- &a [*a, *a, *a]\n'.repeat(50_000)}`],
    ['blank lines without end', `house:\n${'\n'.repeat(1_000_000)}\tname: x\n`],
  ])('%s', (_name, text) => {
    expect(within(text)).toBeLessThan(5000);
  });
});
