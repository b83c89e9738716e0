/**
 * sharp, which reads and makes every picture. It is loaded when the first one comes: most commands need none.
 *
 * Its compiled half is a package of its own for each kind of machine, which npm takes for optional: where those were left
 * out (`--omit=optional`) or the machine is of another kind, the rest of the program does its work without.
 */
import type sharp from 'sharp';

/** For messages: why nothing could be read or drawn, and what to do. */
export const NO_LIBRARY = {
  why: 'the part that reads and draws pictures is not installed for this machine',
  hint: 'install sillplate again, with what npm calls optional:  npm install --include=optional',
} as const;

let library: Promise<typeof sharp | undefined> | undefined;

/** Undefined where it can't be loaded. */
export function pictureLibrary(): Promise<typeof sharp | undefined> {
  library ??= load();
  return library;
}

async function load(): Promise<typeof sharp | undefined> {
  try {
    const { default: loaded } = await import('sharp');
    // Bytes of AVIF and JPEG depend on libvips' own threads; one each keeps them the same on every machine.
    loaded.concurrency(1);
    loaded.cache(false);
    return loaded;
  } catch {
    return undefined;
  }
}
