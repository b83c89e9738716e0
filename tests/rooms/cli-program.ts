/** The compiled program as a child process, for what only a process shows: pipes, signals, prompts. */
import { type ChildProcessWithoutNullStreams, spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';

/** Made by `npm run compile`. */
const PROGRAM = path.resolve(process.env.SILLPLATE_CLI ?? 'dist/cli.js');

export const SMALL_HOUSE = `house:
  name: Test Lane
  address: { city: Fallow Mills, state: OH }
  kind: detached
  built: 2001
`;

export function start(
  words: readonly string[],
  options: { readonly cwd?: string; readonly env?: NodeJS.ProcessEnv } = {},
): ChildProcessWithoutNullStreams {
  if (!existsSync(PROGRAM)) throw new Error('dist/cli.js is not there: npm run compile');
  return spawn(process.execPath, [PROGRAM, ...words], {
    cwd: options.cwd,
    env: { ...process.env, ...options.env },
  });
}

export interface Ended {
  readonly status: number | null;
  readonly out: string;
  readonly error: string;
}

/** Runs to the end. `typed` is sent to its input, which then closes. */
export function runProgram(
  words: readonly string[],
  options: Parameters<typeof start>[1] & { readonly typed?: string } = {},
): Promise<Ended> {
  const child = start(words, options);
  let out = '';
  let error = '';
  child.stdout.setEncoding('utf8').on('data', (text: string) => (out += text));
  child.stderr.setEncoding('utf8').on('data', (text: string) => (error += text));
  child.stdin.on('error', () => undefined).end(options.typed ?? '');
  return new Promise((resolve) => child.on('close', (status) => resolve({ status, out, error })));
}

export const scratchFolder = (): string => mkdtempSync(path.join(tmpdir(), 'sillplate-cli-'));

/** Writes a house folder and answers with its path. */
export function writeHouse(folder: string, name: string, yaml = SMALL_HOUSE): string {
  const home = path.join(folder, name);
  mkdirSync(home, { recursive: true });
  writeFileSync(path.join(home, 'house.yaml'), yaml);
  return home;
}

/** One line a file: its path and digest. Undefined if there is no such folder. */
export function fingerprint(folder: string): string | undefined {
  if (!existsSync(folder)) return undefined;
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => {
      const file = path.join(entry.parentPath, entry.name);
      return `${path.relative(folder, file)} ${createHash('sha256').update(readFileSync(file)).digest('hex')}`;
    })
    .sort()
    .join('\n');
}
