/**
 * Originals become pictures that may be shown, several at once, each from the cache if it was made before.
 *
 * Start reading at `developPhotos`; `make-picture.ts` says what is made of one, `photo-cache.ts` where it is kept.
 */
import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { availableParallelism } from 'node:os';
import path from 'node:path';
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import { diskTrouble } from '../diagnostics/disk-trouble.js';
import type { Rectangle } from './cover.js';
import { HeicDecoder } from './decode-heic.js';
import { notAPicture, type PhotoFile, type PhotoRemark } from './look-at-photo.js';
import { makePicture, type PictureUse, RECIPE } from './make-picture.js';
import { type KeptPicture, keptOrMade, sweep } from './photo-cache.js';
import { PixelBudget } from './pixel-budget.js';

export interface PhotoOrder {
  readonly file: PhotoFile;
  /** Parts of the upright picture to cover. */
  readonly hide: readonly Rectangle[];
  readonly use: PictureUse;
}

interface StoredFile {
  readonly name: string;
  readonly file: string;
}

export interface DevelopedPhoto {
  readonly id: string;
  readonly width: number;
  readonly height: number;
  readonly sizes: readonly {
    readonly width: number;
    readonly height: number;
    readonly jpeg: StoredFile;
    readonly avif: StoredFile;
  }[];
  /** A few pixels as a `data:` address. */
  readonly tiny: string;
  readonly print: { readonly width: number; readonly height: number; readonly file: string };
}

export interface Development {
  readonly pictures: ReadonlyMap<string, DevelopedPhoto>;
  /** Photos that can't be shown, by id. */
  readonly failed: ReadonlyMap<string, PhotoRemark>;
  /** The cache could not be written. */
  readonly diagnostics: readonly Diagnostic[];
}

export interface DevelopOptions {
  readonly cache: string;
  /** The cache as the writer would type it. */
  readonly shownCache: string;
  /** The program's version: another one makes its pictures anew. */
  readonly program: string;
  /** Called before the first and after every photo. */
  readonly onPhoto?: (name: string, done: number, all: number) => void;
}

/** Four of a phone's largest, or two and the copies that covering them makes. */
const PIXELS_AT_ONCE = 100_000_000;

export async function developPhotos(
  orders: readonly PhotoOrder[],
  options: DevelopOptions,
): Promise<Development> {
  const pictures = new Map<string, DevelopedPhoto>();
  const failed = new Map<string, PhotoRemark>();
  let refused: Diagnostic | undefined;
  const hands = Math.min(availableParallelism(), orders.length);
  const heic = new HeicDecoder(hands);
  const budget = new PixelBudget(PIXELS_AT_ONCE);
  const queue = [...orders];
  await sweep(options.cache);
  let done = 0;
  const work = async (): Promise<void> => {
    for (let order = queue.shift(); order !== undefined && refused === undefined; order = queue.shift()) {
      const { file } = order;
      options.onPhoto?.(file.name, done, orders.length);
      try {
        pictures.set(file.id, await develop(order, options, heic, budget));
      } catch (thrown) {
        if (isRefusal(thrown)) refused ??= diskTrouble(thrown, options.shownCache);
        else failed.set(file.id, remarkOn(file, thrown));
      }
      done += 1;
      options.onPhoto?.(file.name, done, orders.length);
    }
  };
  try {
    await Promise.all(Array.from({ length: hands }, work));
  } finally {
    await heic.close();
  }
  return { pictures, failed, diagnostics: refused === undefined ? [] : [refused] };
}

/** The system refused; a picture that can't be decoded carries no system call. */
const isRefusal = (thrown: unknown): boolean =>
  thrown instanceof Error && (thrown as NodeJS.ErrnoException).syscall !== undefined;

/** The original is not what it was when it was looked at. */
class Changed extends Error {}

function remarkOn({ name, coding }: PhotoFile, thrown: unknown): PhotoRemark {
  if (thrown instanceof Changed)
    return { message: `photos/${name} was changed while it was read`, hints: ['build again'] };
  if (coding === 'heic')
    return {
      message: `photos/${name} is a HEIC picture that can’t be read here: it is cut short, or coded in a way its reader does not know`,
      hints: ['copy it from the phone again', 'or save it as JPEG on the phone or in a picture program'],
    };
  return notAPicture(name);
}

async function develop(
  { file, hide, use }: PhotoOrder,
  { cache, program }: DevelopOptions,
  heic: HeicDecoder,
  budget: PixelBudget,
): Promise<DevelopedPhoto> {
  const key = createHash('sha256')
    .update(JSON.stringify([program, RECIPE, use, hide, file.content]))
    .digest('hex')
    .slice(0, 40);
  const { picture, folder } = await keptOrMade(cache, key, (keep) =>
    budget.within(file.width * file.height, async () => {
      const bytes = await readFile(file.original).catch(() => {
        throw new Changed();
      });
      if (createHash('sha256').update(bytes).digest('hex') !== file.content) throw new Changed();
      const decode = (coded: Uint8Array) => heic.decode(coded);
      return makePicture({ bytes, ...(file.coding === 'heic' ? { decode } : {}) }, hide, use, keep);
    }),
  );
  return developed(file.id, picture, folder);
}

function developed(id: string, kept: KeptPicture, folder: string): DevelopedPhoto {
  const at = (name: string): StoredFile => ({ name, file: path.join(folder, name) });
  return {
    id,
    width: kept.width,
    height: kept.height,
    sizes: kept.sizes.map((size) => ({ ...size, jpeg: at(size.jpeg), avif: at(size.avif) })),
    tiny: kept.tiny,
    print: { width: kept.print.width, height: kept.print.height, file: at(kept.print.name).file },
  };
}
