/** The photos that the facts name, and what the camera wrote into them. */
import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import path from 'node:path';
import ExifReader from 'exifreader';
import sharp from 'sharp';
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import type { FactPath } from '../diagnostics/fact-path.js';
import type { House } from '../facts/house.js';
import { nearestWord } from '../facts/nearest-word.js';
import { absentFile, listing } from './documents.js';
import { safePath } from './safe-path.js';

export interface PhotoFile {
  readonly id: string;
  /** Where the original lies. Never copied anywhere. */
  readonly original: string;
  /** Of the upright picture, in pixels. */
  readonly width: number;
  readonly height: number;
  /** Day the camera says it was taken, YYYY-MM-DD, as its clock had it. */
  readonly takenOn: string | undefined;
  /** SHA-256 of the original's bytes, in hexadecimal digits. */
  readonly content: string;
}

export const PIXEL_LIMIT = 200_000_000;
const READABLE = ['.jpg', '.jpeg', '.png', '.webp', '.avif', '.tif', '.tiff'];
const LATER = ['.heic', '.heif'];

export async function findPhotos(
  folder: string,
  shown: string,
  house: House,
): Promise<{ files: ReadonlyMap<string, PhotoFile>; diagnostics: readonly Diagnostic[] }> {
  const inFolder = await listing(path.join(folder, 'photos'));
  const diagnostics: Diagnostic[] = [];
  const files = new Map<string, PhotoFile>();
  const used = new Set<string>();
  for (const [id, photo] of Object.entries(house.photos)) {
    const named = photo.file === undefined ? picturesNamed(id, inFolder) : [];
    const name = photo.file ?? named[0];
    const where = photo.file === undefined ? ['photos', id] : ['photos', id, 'file'];
    if (name === undefined) {
      diagnostics.push(noPhoto(where, id, inFolder));
      continue;
    }
    for (const file of [name, ...named]) used.add(file);
    if (named.filter(isReadable).length > 1)
      diagnostics.push(severalPhotos(where, id, named.filter(isReadable)));
    const safe = await safePath(path.join(folder, 'photos'), name);
    if (!safe.ok) {
      diagnostics.push(absentFile(where, 'photos', name, safe.why, inFolder));
      continue;
    }
    const looked = await lookAt(id, name, safe.absolute);
    if ('file' in looked) files.set(id, looked.file);
    else diagnostics.push({ ...looked.diagnostic, path: where });
  }
  const unused = inFolder.filter((file) => isPicture(file) && !used.has(file));
  if (unused.length > 0) diagnostics.push(notNamed(unused, path.posix.join(shown, 'photos')));
  return { files, diagnostics };
}

/** The pictures of that name; a phone's HEIC original comes after its copy that can be read. */
function picturesNamed(id: string, inFolder: readonly string[]): string[] {
  const named = inFolder.filter((file) => path.parse(file).name === id && isPicture(file));
  return [...named.filter(isReadable), ...named.filter((file) => !isReadable(file))];
}

function severalPhotos(where: FactPath, id: string, readable: readonly string[]): Diagnostic {
  return {
    code: 'intake.photo',
    severity: 'warning',
    path: where,
    onWord: true,
    message: `${readable.length} pictures in photos/ are named ${id} (${readable.join(', ')}); ${readable[0]} is shown`,
    hints: readable.map((file) => `say which one it is:  file: ${file}`),
  };
}

/** An entry without `file:` may be any kind of picture, so only its name is asked for. */
function noPhoto(where: FactPath, id: string, inFolder: readonly string[]): Diagnostic {
  const near = nearestWord(
    id,
    inFolder.filter(isPicture).map((file) => path.parse(file).name),
  );
  return {
    code: 'intake.no-file',
    severity: 'error',
    path: where,
    onWord: true,
    message: `there is no picture named ${id} in photos/ (${id}.jpg, ${id}.png, …)`,
    hints: [
      ...(near === undefined ? [] : [`perhaps  ${near}:`]),
      'put it into photos/, or check the spelling (capital and small letters count)',
    ],
  };
}

const hasEnding = (file: string, endings: readonly string[]): boolean =>
  endings.includes(path.extname(file).toLowerCase());
const isReadable = (file: string): boolean => hasEnding(file, READABLE);
const isPicture = (file: string): boolean => isReadable(file) || hasEnding(file, LATER);

async function lookAt(
  id: string,
  name: string,
  original: string,
): Promise<{ file: PhotoFile } | { diagnostic: Omit<Diagnostic, 'path'> }> {
  if (hasEnding(name, LATER)) {
    return {
      diagnostic: badPhoto(
        `photos/${name} is a HEIC picture, which this version can’t read`,
        'save it as JPEG on the phone (Settings, Camera, most compatible) or in a picture program',
      ),
    };
  }
  const bytes = await readFile(original).catch((thrown: NodeJS.ErrnoException) => thrown);
  if (bytes instanceof Error)
    return {
      diagnostic: badPhoto(
        `photos/${name} can’t be read (${bytes.code ?? 'unknown reason'})`,
        'check who may read it',
      ),
    };
  try {
    const metadata = await sharp(bytes, { limitInputPixels: PIXEL_LIMIT }).metadata();
    const { width, height } = metadata.autoOrient;
    return {
      file: {
        id,
        original,
        width,
        height,
        takenOn: takenOn(bytes),
        content: createHash('sha256').update(bytes).digest('hex'),
      },
    };
  } catch {
    return { diagnostic: notAPicture(name) };
  }
}

export function notAPicture(name: string): Omit<Diagnostic, 'path'> {
  return badPhoto(
    `photos/${name} is not a whole picture: it is cut short, or no picture at all`,
    'copy it from the phone again',
  );
}

function badPhoto(message: string, hint: string): Omit<Diagnostic, 'path'> {
  return { code: 'intake.photo', severity: 'error', message, hints: [hint] };
}

function takenOn(bytes: Buffer): string | undefined {
  try {
    const tags = ExifReader.load(bytes, { expanded: false });
    const written = tags.DateTimeOriginal?.description ?? tags.DateTime?.description;
    // EXIF writes 2026:02:21 09:14:02. Kept as the camera's own day; never turned into an instant.
    const match = /^(\d{4}):(\d{2}):(\d{2})/.exec(written ?? '');
    return match === null ? undefined : `${match[1]}-${match[2]}-${match[3]}`;
  } catch {
    // A picture without readable tags is still a picture.
    return undefined;
  }
}

function notNamed(files: readonly string[], folder: string): Diagnostic {
  const first = path.parse(files[0] ?? '').name;
  const shown = files.slice(0, 5).join(', ') + (files.length > 5 ? ` and ${files.length - 5} more` : '');
  return {
    code: 'intake.unused-photo',
    severity: 'note',
    file: folder,
    message:
      files.length === 1
        ? `one photo is named by no fact: ${shown}`
        : `${files.length} photos are named by no fact: ${shown}`,
    hints: [`to show one, add it under photos:, for example  ${first}: { shows: kitchen, alt: … }`],
  };
}
