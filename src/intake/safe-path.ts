import { lstat, realpath } from 'node:fs/promises';
import path from 'node:path';

export type SafePath =
  | { readonly ok: true; readonly absolute: string }
  | {
      readonly ok: false /** closed: the system does not let it be looked at. */;
      readonly why: 'outside' | 'absent' | 'no-file' | 'closed';
    };

/**
 * A file named in the facts, held inside its folder: neither `..`, an absolute path nor a link may lead out,
 * and only plain files are taken (no devices, pipes or folders).
 */
export async function safePath(folder: string, name: string): Promise<SafePath> {
  if (name.includes('\0') || path.isAbsolute(name) || /^[A-Za-z]:/.test(name))
    return { ok: false, why: 'outside' };
  const joined = path.resolve(folder, name);
  if (!isInside(path.resolve(folder), joined)) return { ok: false, why: 'outside' };
  try {
    const real = await realpath(joined);
    // The folder itself may be a link, `photos` for example; it must not lead out of the one that it lies in.
    const home = await realpath(folder);
    const around = await realpath(path.dirname(path.resolve(folder)));
    if (!isInside(home, real) || !isInside(around, home)) return { ok: false, why: 'outside' };
    return (await lstat(real)).isFile() ? { ok: true, absolute: real } : { ok: false, why: 'no-file' };
  } catch (thrown) {
    const { code = '' } = thrown as NodeJS.ErrnoException;
    return { ok: false, why: ['EACCES', 'EPERM'].includes(code) ? 'closed' : 'absent' };
  }
}

function isInside(folder: string, file: string): boolean {
  const relative = path.relative(folder, file);
  return (
    relative !== '' &&
    !relative.startsWith(`..${path.sep}`) &&
    relative !== '..' &&
    !path.isAbsolute(relative)
  );
}
