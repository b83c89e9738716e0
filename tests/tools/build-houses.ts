/**
 * Builds the demo houses and the golden ones once for all tests that only look at what came out, with the
 * compiled program, as an owner would: all editions, two houses at a time.
 */
import { execFile } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readdirSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import type { TestProject } from 'vitest/node';

const root = fileURLToPath(new URL('../../', import.meta.url));
const cli = path.join(root, 'dist', 'cli.js');

/** After every date in the demo houses. */
export const BUILT_AS_OF = '2026-11-20';

declare module 'vitest' {
  interface ProvidedContext {
    /** Folder with `content/` (the houses) and `out/` (what was built of them). */
    built: string;
  }
}

export default async function setup(project: TestProject): Promise<() => void> {
  demandFreshProgram();
  const built = mkdtempSync(path.join(tmpdir(), 'built-'));
  const content = path.join(built, 'content');
  mkdirSync(content);
  for (const house of foldersIn(path.join(root, 'content')))
    cpSync(path.join(root, 'content', house), path.join(content, house), { recursive: true });
  for (const house of foldersIn(path.join(root, 'tests', 'houses')))
    cpSync(path.join(root, 'tests', 'houses', house, 'input'), path.join(content, house), {
      recursive: true,
    });
  const waiting = foldersIn(content);
  const worker = async (): Promise<void> => {
    for (let house = waiting.shift(); house !== undefined; house = waiting.shift()) await build(built, house);
  };
  // Both to their end, so that no house is still being written where the folder is taken away.
  const ended = await Promise.allSettled([worker(), worker()]);
  const failed = ended.find((one) => one.status === 'rejected');
  if (failed !== undefined) {
    rmSync(built, { recursive: true, force: true });
    throw failed.reason;
  }
  project.provide('built', built);
  return () => rmSync(built, { recursive: true, force: true });
}

async function build(built: string, house: string): Promise<void> {
  const words = ['build', house, '--content', 'content', '--out', 'out', '--as-of', BUILT_AS_OF];
  const editions = ['--edition', 'agent,visit,buyer,care,file'];
  const run = promisify(execFile)(process.execPath, [cli, ...words, ...editions], {
    cwd: built,
    maxBuffer: 2 ** 26,
  });
  await run.catch((thrown: { stdout?: string; stderr?: string }) => {
    throw new Error(`${house} could not be built:\n${thrown.stdout ?? ''}${thrown.stderr ?? ''}`);
  });
}

const foldersIn = (folder: string): string[] =>
  readdirSync(folder, { withFileTypes: true })
    .filter((one) => one.isDirectory())
    .map((one) => one.name)
    .sort();

/** Tests of an old program would prove nothing. */
function demandFreshProgram(): void {
  const compiled = statSync(cli, { throwIfNoEntry: false })?.mtimeMs ?? 0;
  const sources = readdirSync(path.join(root, 'src'), { recursive: true, withFileTypes: true }).filter(
    (one) => one.isFile(),
  );
  const newest = Math.max(...sources.map((one) => statSync(path.join(one.parentPath, one.name)).mtimeMs));
  if (compiled < newest)
    throw new Error('dist/ is older than src/: run  npm run compile  first (npm test does)');
}
