/** What the front door says about each case of the gallery: the whole report, then the exit status. */
import { mkdtempSync, readdirSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { run } from '../../src/cli.js';
import type { Terminal } from '../../src/terminal.js';
import { MADE_CASES, type MadeCase } from './made-cases.js';
import { quietProgress } from './quiet-progress.js';

const GALLERY = 'tests/diagnostics';
const AS_OF = '2026-11-20';

/** `code/name` of every case that lies in the gallery as a folder with `input/`. */
export function writtenCases(): string[] {
  const folders = (at: string): string[] =>
    readdirSync(at)
      .filter((name) => statSync(path.join(at, name)).isDirectory() && name !== 'expected-changed')
      .sort();
  return folders(GALLERY).flatMap((code) =>
    folders(path.join(GALLERY, code))
      .filter((name) => !MADE_CASES.some((made) => made.code === code && made.name === name))
      .map((name) => `${code}/${name}`),
  );
}

export const expectedFile = (name: string): string => path.join(GALLERY, name, 'expected.txt');
export const changedFile = (name: string): string =>
  path.join(GALLERY, name, 'expected-changed', 'expected.txt');

/** Runs one command line in this process and answers with everything it said. */
export async function typed(words: readonly string[]): Promise<{ said: string; status: number }> {
  let said = '';
  const write = (text: string): void => {
    said += text;
  };
  const quiet: Terminal = {
    out: write,
    error: write,
    colour: false,
    progress: quietProgress,
  };
  const status = await run(words, quiet);
  return { said, status };
}

/** The list of what is still missing has cases of its own; elsewhere a new gap should change nothing. */
const withoutGaps = (said: string): string =>
  said
    .replace(/^Still missing, .*\n(?: *\d+\. .*\n {5}do: .*\n)+/gm, 'Still missing: …\n')
    .replace(/^(\S+: .*?)\b\d+ notes?$/gm, '$1… notes');

async function told(code: string, words: readonly string[], scratch: string): Promise<string> {
  const [command = '', ...rest] = words;
  const packets = ['check', 'build'].includes(command);
  const { said, status } = await typed([
    command,
    ...(packets && !words.includes('--as-of') ? ['--as-of', AS_OF] : []),
    ...(packets && !words.includes('--out') ? ['--out', path.join(scratch, 'out')] : []),
    ...rest,
  ]);
  // Digests and the number of sheets change with every wording of a packet; they have tests of their own.
  const stable = said
    .replaceAll(`${scratch}/`, '')
    .replaceAll(scratch, '.')
    .replace(/\(\d+ sheets?, digest [0-9a-f ]+\)/g, '(…)');
  const shortened = code === 'tally.gap' ? stable : withoutGaps(stable);
  return `${shortened.trimEnd()}\n\nexit status ${status}\n`;
}

async function inScratch<T>(work: (scratch: string) => Promise<T>): Promise<T> {
  const scratch = mkdtempSync(path.join(tmpdir(), 'sillplate-gallery-'));
  try {
    return await work(scratch);
  } finally {
    rmSync(scratch, { recursive: true, force: true });
  }
}

export const tellWritten = (name: string): Promise<string> =>
  inScratch((scratch) => told(name.split('/')[0] ?? '', ['check', `${GALLERY}/${name}/input`], scratch));

/** Undefined where this machine can't make the case. */
export const tellMade = (made: MadeCase): Promise<string | undefined> =>
  inScratch(async (scratch) => {
    try {
      const words = await made.make(scratch);
      return words === undefined ? undefined : await told(made.code, words, scratch);
    } finally {
      made.clear?.(scratch);
    }
  });
