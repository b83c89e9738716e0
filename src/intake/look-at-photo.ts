/** One file under photos/: whether it is a picture that can be shown, how large, and what its camera says. */
import { createHash } from 'node:crypto';
import { stat } from 'node:fs/promises';
import path from 'node:path';
import type { Metadata } from 'sharp';
import type { CameraFacts } from '../facts/camera.js';
import { groupThousands } from '../facts/written-number.js';
import { readCamera } from './camera.js';
import { canReadHeic, HEIC_PACKAGE } from './decode-heic.js';
import { NO_LIBRARY, pictureLibrary } from './picture-library.js';
import { readPlainFile } from './read-plain-file.js';

export interface PhotoFile {
  /** Of the entry under `photos:`; of a photo that no fact names, its name behind a star and a stroke. */
  readonly id: string;
  /** Its path below photos/, as it is spelt there, with forward slashes. */
  readonly name: string;
  /** Where the original lies. Copied into the house file alone. */
  readonly original: string;
  /** Of the upright picture, in pixels. */
  readonly width: number;
  readonly height: number;
  /** `heic`: coded in a way that only the decoder of its own can read. */
  readonly coding: 'heic' | 'other';
  readonly camera: CameraFacts;
  /** SHA-256 of the original's bytes, in hexadecimal digits. */
  readonly content: string;
}

/** What is wrong with a photo, or worth knowing, and what to do; its place is added by who names it. */
export interface PhotoRemark {
  readonly message: string;
  readonly hints: readonly string[];
}

export type Looked =
  | { readonly file: PhotoFile; readonly notes: readonly PhotoRemark[] }
  | { readonly trouble: PhotoRemark };

/** Larger ones are refused unless the writer says `huge`: a small file can unfold into gigabytes. */
const PIXEL_LIMIT = 100_000_000;
/** The most that can be said `huge` of. */
export const HUGE_LIMIT = 500_000_000;
/** Longest side in pixels: that of a JPEG. A strip of one pixel's height takes gigabytes to be made smaller. */
const SIDE_LIMIT = 65_500;
/** A photo of 500 million pixels without any loss stays below this. */
const MOST_BYTES = 1_000_000_000;

export interface PhotoToLookAt {
  readonly id: string;
  readonly name: string;
  readonly original: string;
  readonly huge: boolean;
}

export async function lookAtPhoto({ id, name, original, huge }: PhotoToLookAt): Promise<Looked> {
  const shown = `photos/${name}`;
  const bytes = await readPhoto(original).catch((thrown: NodeJS.ErrnoException) => thrown);
  if (bytes === undefined)
    return trouble(
      `${shown} has more than ${MOST_BYTES / 1e6} million bytes, and no photo has as many`,
      'check that it is the right file, or save it smaller in a picture program',
    );
  if (bytes instanceof Error)
    return trouble(`${shown} can’t be read (${bytes.code ?? 'unknown reason'})`, 'check who may read it');
  if (bytes.length === 0)
    return trouble(`${shown} is empty: it has no bytes at all`, 'copy it from the phone again');
  const sharp = await pictureLibrary();
  if (sharp === undefined) return trouble(`${shown} can’t be read: ${NO_LIBRARY.why}`, NO_LIBRARY.hint);
  let metadata: Metadata;
  try {
    // Only the head is read here, so that the size of the picture is no danger yet.
    metadata = await sharp(bytes, { limitInputPixels: false }).metadata();
  } catch {
    return { trouble: notAPicture(name) };
  }
  const kind = KINDS[metadata.format ?? ''];
  if (kind === undefined)
    return trouble(
      `${shown} is no photo but ${metadata.format === 'svg' ? 'a drawing (SVG)' : `a file of another kind (${metadata.format})`}`,
      'save it as JPEG or PNG',
    );
  const heic = metadata.format === 'heif' && metadata.compression === 'hevc';
  if (heic && !canReadHeic())
    return trouble(
      `${shown} is a HEIC picture, and the part that reads those is not installed`,
      `type  npm install ${HEIC_PACKAGE}  and build again`,
      'or save it as JPEG on the phone or in a picture program',
    );
  const { width, height } = metadata.autoOrient;
  const tooLarge = sizeTrouble(shown, width, height, huge) ?? heldTrouble(shown, metadata, huge);
  if (tooLarge !== undefined) return { trouble: tooLarge };
  const camera = readCamera(bytes);
  return {
    file: {
      id,
      name,
      original,
      width,
      height,
      coding: heic ? 'heic' : 'other',
      camera,
      content: contentOf(bytes),
    },
    notes: notesOn(shown, metadata, kind, heic),
  };
}

/** Undefined if it is larger than a photo can be. */
async function readPhoto(file: string): Promise<Buffer | undefined> {
  const { size } = await stat(file);
  return size > MOST_BYTES ? undefined : await readPlainFile(file);
}

/** SHA-256 of an original, in hexadecimal digits. */
export const contentOf = (bytes: Buffer): string => createHash('sha256').update(bytes).digest('hex');

interface Kind {
  readonly words: string;
  readonly endings: readonly string[];
}

/** What a phone, a scanner or a picture program writes. Drawings and documents are no photos. */
const KINDS: Readonly<Record<string, Kind>> = {
  jpeg: { words: 'a JPEG picture', endings: ['.jpg', '.jpeg', '.jpe', '.jfif'] },
  png: { words: 'a PNG picture', endings: ['.png'] },
  webp: { words: 'a WebP picture', endings: ['.webp'] },
  gif: { words: 'a GIF picture', endings: ['.gif'] },
  tiff: { words: 'a TIFF picture', endings: ['.tif', '.tiff'] },
  heif: { words: 'a HEIC or AVIF picture', endings: ['.heic', '.heif', '.hif', '.avif'] },
};

export const isPicture = (file: string): boolean =>
  Object.values(KINDS).some((kind) => hasEnding(file, kind));
/** A phone’s HEIC original; its JPEG copy of the same name is quicker to read. */
export const isHeicName = (file: string): boolean => /\.(heic|heif|hif)$/i.test(file);

const hasEnding = (file: string, kind: Kind): boolean =>
  kind.endings.includes(path.extname(file).toLowerCase());

function sizeTrouble(shown: string, width: number, height: number, huge: boolean): PhotoRemark | undefined {
  if (Math.max(width, height) > SIDE_LIMIT)
    return {
      message: `${shown} is ${width} × ${height} pixels, and no side may have more than ${groupThousands(SIDE_LIMIT)}`,
      hints: ['save it smaller in a picture program'],
    };
  const pixels = width * height;
  if (pixels <= (huge ? HUGE_LIMIT : PIXEL_LIMIT)) return undefined;
  const millions = Math.ceil(pixels / 1e6);
  const message = `${shown} has ${millions} million pixels (${width} × ${height}); the most is ${(huge ? HUGE_LIMIT : PIXEL_LIMIT) / 1e6} million`;
  return pixels <= HUGE_LIMIT
    ? {
        message,
        hints: ['if it is a photo of yours, allow it:  huge: yes', 'or save it smaller in a picture program'],
      }
    : { message, hints: ['save it smaller in a picture program'] };
}

/** Bytes of a picture that has to be held whole, since its lines come in several passes. */
const MOST_HELD = 350_000_000;

function heldTrouble(shown: string, metadata: Metadata, huge: boolean): PhotoRemark | undefined {
  if (huge || metadata.isProgressive !== true) return undefined;
  // A JPEG's coefficients have two bytes as well.
  const deep = metadata.depth === 'ushort' || metadata.format === 'jpeg' ? 2 : 1;
  if (metadata.width * metadata.height * metadata.channels * deep <= MOST_HELD) return undefined;
  return {
    message: `${shown} is a large picture that is stored in several passes (progressive or interlaced), so that all of it must be held at once`,
    hints: [
      'save it again without “progressive” or “interlaced” in a picture program',
      'or, if it is a photo of yours, allow it:  huge: yes',
    ],
  };
}

function notesOn(shown: string, metadata: Metadata, kind: Kind, heic: boolean): PhotoRemark[] {
  const notes: PhotoRemark[] = [];
  if (!hasEnding(shown, kind))
    notes.push({
      message: `${shown} is ${heic ? 'a HEIC picture' : kind.words} by its content, whatever its ending says; it is read as that`,
      hints: [`to be tidy, call it ${path.basename(shown, path.extname(shown))}${kind.endings[0]}`],
    });
  const pages = metadata.pages ?? 1;
  if (pages > 1)
    notes.push({
      message:
        metadata.format === 'heif'
          ? `${shown} holds ${pages} pictures; the one the phone chose as its main one is shown`
          : `${shown} ${metadata.format === 'tiff' ? 'has several pages' : 'moves'} (${pages} pictures); the first one is shown`,
      hints: ['to show another one, save that one by itself'],
    });
  return notes;
}

export const notAPicture = (name: string): PhotoRemark => ({
  message: `photos/${name} is not a whole picture: it is cut short, or no picture at all`,
  hints: ['copy it from the phone again'],
});

const trouble = (message: string, ...hints: string[]): { trouble: PhotoRemark } => ({
  trouble: { message, hints },
});
