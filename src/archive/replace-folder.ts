/**
 * New output takes the place of the old in one step, or the old stays.
 *
 * A folder is made beside its target under a name that begins with a dot, then two renames put it in place.
 * If the program is killed between the two, the old output lies whole under `.old-…` and the next run puts it
 * back (`recover`). There is no moment at which a half-written folder bears the target's name.
 */
import { mkdir, readdir, rename, rm, stat } from 'node:fs/promises';
import path from 'node:path';
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import { diskTrouble } from '../diagnostics/disk-trouble.js';
import { type FileToWrite, writeTree } from './write-tree.js';

const MAKING = /^\.making-(\d+)-/;
const OLD = /^\.old-(.+)$/;

/** Writes `files` as `parent/name`. Returns what went wrong with the disk; then the earlier folder is as it was. */
export async function replaceFolder(
  parent: string,
  name: string,
  files: readonly FileToWrite[],
  shown: string,
): Promise<Diagnostic | undefined> {
  const staging = path.join(parent, `.making-${process.pid}-${name}`);
  const target = path.join(parent, name);
  const old = path.join(parent, `.old-${name}`);
  try {
    await mkdir(parent, { recursive: true });
    await rm(staging, { recursive: true, force: true });
    await writeTree(staging, files);
    await rm(old, { recursive: true, force: true });
    const had = await exists(target);
    if (had) await rename(target, old);
    try {
      await rename(staging, target);
    } catch (thrown) {
      if (had) await rename(old, target);
      throw thrown;
    }
    await rm(old, { recursive: true, force: true });
    return undefined;
  } catch (thrown) {
    await rm(staging, { recursive: true, force: true }).catch(() => undefined);
    return diskTrouble(thrown, shown);
  }
}

/** Puts back what a killed run left under `.old-…` and clears what it was making. */
export async function recover(parent: string): Promise<void> {
  let entries: string[];
  try {
    entries = await readdir(parent);
  } catch {
    return;
  }
  for (const entry of entries) {
    const name = OLD.exec(entry)?.[1];
    const maker = MAKING.exec(entry)?.[1];
    if (name !== undefined) {
      if (await exists(path.join(parent, name)))
        await rm(path.join(parent, entry), { recursive: true, force: true });
      else await rename(path.join(parent, entry), path.join(parent, name));
    } else if (maker !== undefined && !isRunning(Number(maker))) {
      await rm(path.join(parent, entry), { recursive: true, force: true });
    }
  }
}

function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (thrown) {
    // EPERM: it runs, as somebody else.
    return (thrown as NodeJS.ErrnoException).code === 'EPERM';
  }
}

async function exists(file: string): Promise<boolean> {
  try {
    await stat(file);
    return true;
  } catch {
    return false;
  }
}
