/**
 * One program at a time puts a house's output in place.
 *
 * The lock is a file beside the output that holds the process number of its maker. A lock whose maker no longer
 * runs was left by a killed program and is taken over. Files and process numbers, so that it holds between
 * programs; on one machine only.
 */
import { open, readFile, rename, rm } from 'node:fs/promises';
import path from 'node:path';
import { isRunning } from '../diagnostics/is-running.js';

const LOOK_AGAIN_MS = 15;
/** A minute: putting a folder in place takes far less, and longer than this is another kind of trouble. */
const MOST_LOOKS = 4_000;
/** A lock is made empty and filled at once; one that stays empty so long was left by a killed program. */
const EMPTY_LOOKS = 130;

/** Runs `work` alone for `name` in `parent`. Throws `ETIMEDOUT` if another program keeps the lock. */
export async function alone<T>(parent: string, name: string, work: () => Promise<T>): Promise<T> {
  const file = path.join(parent, `.sillplate-lock-${name}`);
  await take(file);
  try {
    return await work();
  } finally {
    await rm(file, { force: true });
  }
}

async function take(file: string): Promise<void> {
  let empty = 0;
  for (let looks = 0; looks < MOST_LOOKS; looks++) {
    if (await make(file)) return;
    const holder = await readFile(file, 'utf8').catch(() => undefined);
    empty = holder === '' ? empty + 1 : 0;
    const isLeft = holder === '' ? empty > EMPTY_LOOKS : holder !== undefined && !isRunning(Number(holder));
    if (isLeft) await clear(file);
    else await new Promise((resolve) => setTimeout(resolve, LOOK_AGAIN_MS));
  }
  throw Object.assign(new Error('another build of this house does not end'), {
    code: 'ETIMEDOUT',
    syscall: 'lock',
  });
}

async function make(file: string): Promise<boolean> {
  try {
    const handle = await open(file, 'wx');
    await handle.writeFile(String(process.pid));
    await handle.close();
    return true;
  } catch (thrown) {
    if ((thrown as NodeJS.ErrnoException).code === 'EEXIST') return false;
    throw thrown;
  }
}

/** Of several that find the same dead lock, only the one whose rename succeeds removes it. */
async function clear(file: string): Promise<void> {
  const aside = `${file}-${process.pid}`;
  try {
    await rename(file, aside);
    // Between looking and renaming, somebody else may have cleared it and taken it: theirs goes back.
    const holder = await readFile(aside, 'utf8');
    if (holder !== '' && isRunning(Number(holder))) await rename(aside, file);
    else await rm(aside, { force: true });
  } catch {
    // Somebody else was first.
  }
}
