/**
 * A house folder is begun in one step, or not at all.
 *
 * Where no folder lies yet, it is made beside its place under a name that begins with a dot, and then named. An empty
 * folder that somebody made, and may stand in, stays the one it is: `house.yaml` goes into it last and whole.
 */
import { mkdir, readdir, rename, rm, rmdir } from 'node:fs/promises';
import path from 'node:path';
import { isRunning } from '../diagnostics/is-running.js';
import { makeFolders } from './bag-make-folders.js';
import { settleFolder } from './settle-folder.js';
import { dropHalfMade, writeNew } from './write-whole.js';

const FOLDERS = ['photos', 'documents'];
const FACTS = 'house.yaml';

const makingOf = (folder: string, maker: number | string): string =>
  path.join(path.dirname(folder), `.sillplate-making-${path.basename(folder)}-${maker}`);

/** Whether nothing lies there but what a killed run left. Throws what the system says of a folder that can't be read. */
export async function mayBeginIn(folder: string): Promise<boolean> {
  const entries = await entriesOf(folder);
  for (const { name, isFolder } of entries ?? []) {
    const isLeft = /^\.sillplate-writing-house\.yaml-\d{1,10}$/.test(name);
    if (
      isLeft ||
      (isFolder && FOLDERS.includes(name) && (await readdir(path.join(folder, name))).length === 0)
    )
      continue;
    return false;
  }
  return true;
}

/** False: something lies there. Throws the system's error, and nothing is left then. */
export async function beginFolder(folder: string, facts: string): Promise<boolean> {
  const target = path.resolve(folder);
  if (!(await mayBeginIn(target))) return false;
  return (await entriesOf(target)) === undefined ? makeBeside(target, facts) : fill(target, facts);
}

async function makeBeside(target: string, facts: string): Promise<boolean> {
  const parent = path.dirname(target);
  const lacking = await firstLacking(parent);
  const making = makingOf(target, process.pid);
  let done = false;
  try {
    await makeFolders(parent);
    await dropMaking(target);
    await rm(making, { recursive: true, force: true });
    await mkdir(making);
    await fill(making, facts);
    // Of a folder that somebody made meanwhile, an empty one alone gives way.
    await rename(making, target);
    done = true;
    await settleFolder(parent);
    return true;
  } catch (thrown) {
    const { code = '' } = thrown as NodeJS.ErrnoException;
    if (['ENOTEMPTY', 'EEXIST'].includes(code) && (await entriesOf(target)) !== undefined) return false;
    throw thrown;
  } finally {
    await rm(making, { recursive: true, force: true }).catch(() => undefined);
    if (!done) await dropEmpty(parent, lacking);
  }
}

async function fill(folder: string, facts: string): Promise<boolean> {
  const made: string[] = [];
  try {
    await dropHalfMade(folder);
    for (const inner of FOLDERS) {
      const one = path.join(folder, inner);
      if (await makeFolder(one)) made.push(one);
    }
    return await writeNew(path.join(folder, FACTS), new TextEncoder().encode(facts));
  } catch (thrown) {
    for (const one of made) await rmdir(one).catch(() => undefined);
    throw thrown;
  }
}

/** False: it was there. */
async function makeFolder(folder: string): Promise<boolean> {
  try {
    await mkdir(folder);
    return true;
  } catch (thrown) {
    if ((thrown as NodeJS.ErrnoException).code === 'EEXIST' && (await entriesOf(folder)) !== undefined)
      return false;
    throw thrown;
  }
}

/** Undefined: there is no such folder. */
async function entriesOf(folder: string): Promise<{ name: string; isFolder: boolean }[] | undefined> {
  try {
    const entries = await readdir(folder, { withFileTypes: true });
    return entries.map((one) => ({ name: one.name, isFolder: one.isDirectory() }));
  } catch (thrown) {
    if ((thrown as NodeJS.ErrnoException).code === 'ENOENT') return undefined;
    throw thrown;
  }
}

/** The outermost of a folder and those it lies in that is not there. */
async function firstLacking(folder: string): Promise<string | undefined> {
  if ((await entriesOf(folder).catch(() => [])) !== undefined) return undefined;
  const parent = path.dirname(folder);
  return (parent === folder ? undefined : await firstLacking(parent)) ?? folder;
}

/** Folders that were made for a house which then could not be begun; one that holds something stays. */
async function dropEmpty(inner: string, outermost: string | undefined): Promise<void> {
  if (outermost === undefined) return;
  for (let at = inner; at.startsWith(outermost); at = path.dirname(at))
    if (
      !(await rmdir(at).then(
        () => true,
        () => false,
      ))
    )
      return;
}

/** What killed runs were making of this house. */
async function dropMaking(target: string): Promise<void> {
  const prefix = path.basename(makingOf(target, ''));
  for (const name of await readdir(path.dirname(target))) {
    const maker = name.startsWith(prefix) ? name.slice(prefix.length) : '';
    if (/^\d{1,10}$/.test(maker) && !isRunning(Number(maker)))
      await rm(path.join(path.dirname(target), name), { recursive: true, force: true });
  }
}
