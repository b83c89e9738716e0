import { realpath } from 'node:fs/promises';
import path from 'node:path';

/** Whether a place, there or not there yet, is a folder or lies below it, links followed. */
export async function isInside(inner: string, outer: string): Promise<boolean> {
  const [from, home] = await Promise.all([realOf(inner), realOf(outer)]);
  return from === home || from.startsWith(home.endsWith(path.sep) ? home : home + path.sep);
}

/** The real path, also of what is not there yet: its nearest folder that is, and the rest. */
async function realOf(file: string): Promise<string> {
  const absolute = path.resolve(file);
  try {
    return await realpath(absolute);
  } catch {
    const parent = path.dirname(absolute);
    return parent === absolute ? absolute : path.join(await realOf(parent), path.basename(absolute));
  }
}
