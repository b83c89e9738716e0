/**
 * One program at a time puts a house's output in place.
 *
 * The lock is a file beside the output that holds the process number of its maker, and on Linux the moment at which
 * that process began: a number alone may be somebody else's after the machine was started again. It is written under
 * another name and linked to its own, so that nobody finds it empty. A lock whose maker no longer runs was left by a
 * killed program and is taken over. There is no clock in it, so that one which jumps does no harm. It holds between
 * programs; on one machine only.
 */
import { readFileSync } from 'node:fs';
import { link, open, readdir, rename, rm } from 'node:fs/promises';
import path from 'node:path';
import { isRunning } from '../diagnostics/is-running.js';
import { bytesOf, ChangedWhileRead } from './file-digest.js';

const LOOK_AGAIN_MS = 15;
/** A minute: putting a folder in place takes far less, and longer than this is another kind of trouble. */
const MOST_LOOKS = 4_000;
/** Where the disk has no links, a lock is made empty and filled at once; one that stays empty was left by a killed program. */
const EMPTY_LOOKS = 130;

/** Within one process they take turns in the order of asking. */
const turns = new Map<string, Promise<unknown>>();

/** Name of the lock beside the output. */
export const lockOf = (name: string): string => `.sillplate-lock-${name}`;

/** Runs `work` alone for `name` in `parent`. Throws `ETIMEDOUT` if another program keeps the lock. */
export async function alone<T>(parent: string, name: string, work: () => Promise<T>): Promise<T> {
  const file = path.resolve(parent, lockOf(name));
  const before = turns.get(file) ?? Promise.resolve();
  const mine = before.then(() => between(file, work));
  const ended = mine.catch(() => undefined);
  turns.set(file, ended);
  try {
    return await mine;
  } finally {
    if (turns.get(file) === ended) turns.delete(file);
  }
}

/**
 * Takes away what a killed program left of its lock, for a run that has nothing to write and needs none. Nothing is waited
 * for, and what can't be taken away stays.
 */
export async function dropLeft(parent: string, name: string): Promise<void> {
  const file = path.resolve(parent, lockOf(name));
  try {
    await dropDead(file);
    const holder = await holderOf(file);
    if (holder !== undefined && holder !== '' && holder !== NO_FILE && !isHeld(holder))
      await clear(file, holder);
  } catch (thrown) {
    if ((thrown as NodeJS.ErrnoException).code === undefined) throw thrown;
  }
}

async function between<T>(file: string, work: () => Promise<T>): Promise<T> {
  await take(file);
  try {
    await dropDead(file);
    return await work();
  } finally {
    await rm(file, { force: true });
  }
}

async function take(file: string): Promise<void> {
  let empty = 0;
  for (let looks = 0; looks < MOST_LOOKS; looks++) {
    if (await make(file)) return;
    const holder = await holderOf(file);
    if (holder === NO_FILE) break;
    empty = holder === '' ? empty + 1 : 0;
    const isLeft = holder === '' ? empty > EMPTY_LOOKS : holder !== undefined && !isHeld(holder);
    if (isLeft) await clear(file, holder);
    else await new Promise((resolve) => setTimeout(resolve, LOOK_AGAIN_MS));
  }
  throw Object.assign(new Error('another build of this house does not end'), {
    code: 'ETIMEDOUT',
    syscall: 'lock',
  });
}

/** Stands for a pipe or a folder in a lock's place: it names nobody, and it is not ours to take away. */
const NO_FILE = 'no file';

/** Whom a lock names; undefined where it is gone or can't be read. */
async function holderOf(file: string): Promise<string | undefined> {
  try {
    return (await bytesOf(file)).toString('utf8');
  } catch (thrown) {
    return thrown instanceof ChangedWhileRead ? NO_FILE : undefined;
  }
}

const holderText = (): string => [process.pid, beganAt(process.pid) ?? ''].join(' ').trim();

/**
 * When a process began, in ticks since the machine was started; a clock that is set does not move it. Undefined where the
 * system does not tell (all but Linux).
 */
function beganAt(pid: number): string | undefined {
  try {
    const text = readFileSync(`/proc/${pid}/stat`, 'utf8');
    // The name of the program stands in brackets and may hold anything.
    return text.slice(text.lastIndexOf(')') + 2).split(' ')[19];
  } catch {
    return undefined;
  }
}

/** Whether the process that a lock names runs, and is the one that made it. */
function isHeld(holder: string): boolean {
  const [pid = '', began] = holder.trim().split(' ');
  if (!/^\d{1,10}$/.test(pid) || !isRunning(Number(pid))) return false;
  // Where the system tells when a process began, every lock of this program says so; a number alone is none of its locks,
  // or one that came with a folder from another machine.
  const now = beganAt(Number(pid));
  return now === undefined || began === now;
}

/** What systems say of a disk that has no links. */
const NO_LINKS = ['EPERM', 'ENOTSUP', 'EOPNOTSUPP', 'ENOSYS', 'EMLINK', 'EINVAL'];

/** Names of ours end in a dot and a number or a word: no house has a dot in its name. */
const besideOf = (file: string): string => `${file}.${process.pid}`;

async function make(file: string): Promise<boolean> {
  const beside = besideOf(file);
  try {
    await write(beside);
    await link(beside, file);
    return true;
  } catch (thrown) {
    const { code = '', syscall } = thrown as NodeJS.ErrnoException;
    if (syscall === 'link' && code === 'EEXIST') return false;
    if (syscall === 'link' && NO_LINKS.includes(code)) return await makeInPlace(file);
    throw thrown;
  } finally {
    await rm(beside, { force: true });
  }
}

/** What is left under this name by a process that had our number is nobody's. */
async function write(file: string): Promise<void> {
  const handle = await open(file, 'w');
  try {
    await handle.writeFile(holderText());
  } finally {
    await handle.close();
  }
}

async function makeInPlace(file: string): Promise<boolean> {
  try {
    const handle = await open(file, 'wx');
    try {
      await handle.writeFile(holderText());
    } catch (thrown) {
      // A full disk must not leave a lock that nobody holds.
      await rm(file, { force: true });
      throw thrown;
    } finally {
      await handle.close();
    }
    return true;
  } catch (thrown) {
    if ((thrown as NodeJS.ErrnoException).code === 'EEXIST') return false;
    throw thrown;
  }
}

/**
 * Takes a dead lock away. Several may find it at once, and the first may hold the next lock by the time that the second
 * comes to it; so they take turns, and look once more.
 */
async function clear(file: string, dead: string | undefined): Promise<void> {
  const turn = `${file}.clearing`;
  if (!(await make(turn))) {
    const holder = await holderOf(turn);
    if (holder !== undefined && !isHeld(holder)) await rename(turn, besideOf(turn)).catch(() => undefined);
    await rm(besideOf(turn), { force: true });
    await new Promise((resolve) => setTimeout(resolve, LOOK_AGAIN_MS));
    return;
  }
  try {
    const holder = await holderOf(file);
    if (holder !== undefined && holder === dead && !isHeld(holder)) await rm(file, { force: true });
  } finally {
    await rm(turn, { force: true });
  }
}

/** What killed programs left while they took this lock. */
async function dropDead(file: string): Promise<void> {
  const parent = path.dirname(file);
  const prefix = `${path.basename(file)}.`;
  for (const name of await readdir(parent).catch((): string[] => [])) {
    if (!name.startsWith(prefix)) continue;
    const maker = /^\d{1,10}$/.exec(name.slice(prefix.length))?.[0];
    const left = path.join(parent, name);
    // One that is being made is named by its maker alone, and may be empty yet.
    const holder = maker === undefined ? await holderOf(left) : undefined;
    const isUsed = maker === undefined ? holder === undefined || isHeld(holder) : isRunning(Number(maker));
    if (isUsed) continue;
    await rm(left, { force: true }).catch(() => undefined);
  }
}
