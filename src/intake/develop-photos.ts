/**
 * Originals become pictures that may be shown, several at once, each from the cache if it was made before.
 *
 * Start reading at `developPhotos`; `make-picture.ts` says what is made of one, `photo-cache.ts` where it is kept.
 */
import { createHash } from 'node:crypto';
import { availableParallelism } from 'node:os';
import path from 'node:path';
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import { diskTrouble } from '../diagnostics/disk-trouble.js';
import type { Rectangle } from './cover.js';
import { HeicDecoder } from './decode-heic.js';
import { contentOf, notAPicture, type PhotoFile, type PhotoRemark } from './look-at-photo.js';
import type { makePicture, PictureUse } from './make-picture.js';
import { type KeptPicture, keptOrMade, type Making, sweep } from './photo-cache.js';
import { pictureLibrary } from './picture-library.js';
import { PixelBudget } from './pixel-budget.js';
import { readPlainFile } from './read-plain-file.js';

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

/** Four of a phone's largest at once, or two of those that are held whole. */
const PIXELS_AT_ONCE = 100_000_000;

export async function developPhotos(
  orders: readonly PhotoOrder[],
  options: DevelopOptions,
): Promise<Development> {
  if (orders.length === 0) return { pictures: new Map(), failed: new Map(), diagnostics: [] };
  await pictureLibrary();
  const { makePicture, RECIPE } = await import('./make-picture.js');
  const made = new Map<string, DevelopedPhoto | PhotoRemark>();
  let refused: Diagnostic | undefined;
  const hands = Math.min(availableParallelism(), orders.length);
  const desk: Desk = {
    ...options,
    make: makePicture,
    recipe: digest([options.program, RECIPE]),
    heic: new HeicDecoder(hands),
    budget: new PixelBudget(PIXELS_AT_ONCE),
    underway: new Map(),
  };
  const queue = [...orders];
  let done = 0;
  const work = async (): Promise<void> => {
    for (let order = queue.shift(); order !== undefined && refused === undefined; order = queue.shift()) {
      const { file } = order;
      options.onPhoto?.(file.name, done, orders.length);
      try {
        made.set(file.id, await develop(order, desk));
      } catch (thrown) {
        if (isRefusal(thrown)) refused ??= diskTrouble(thrown, options.shownCache);
        else made.set(file.id, remarkOn(file, thrown));
      }
      done += 1;
      options.onPhoto?.(file.name, done, orders.length);
    }
  };
  try {
    await sweep(
      options.cache,
      desk.recipe,
      orders.map((order) => makingOf(order, desk)),
    );
    await Promise.all(Array.from({ length: hands }, work));
  } finally {
    await desk.heic.close();
  }
  const pictures = new Map<string, DevelopedPhoto>();
  const failed = new Map<string, PhotoRemark>();
  // In the order of asking, whoever was finished first.
  for (const { file } of orders) {
    const result = made.get(file.id);
    if (result === undefined) continue;
    if ('message' in result) failed.set(file.id, result);
    else pictures.set(file.id, result);
  }
  return { pictures, failed, diagnostics: refused === undefined ? [] : [refused] };
}

/** What all photos of a run share. */
interface Desk extends DevelopOptions {
  readonly make: typeof makePicture;
  readonly recipe: string;
  readonly heic: HeicDecoder;
  readonly budget: PixelBudget;
  /** By key: one picture under two names is made once. */
  readonly underway: Map<string, ReturnType<typeof keptOrMade>>;
}

/** The system refused; a picture that can't be decoded carries no system call. */
const isRefusal = (thrown: unknown): boolean =>
  thrown instanceof Error && (thrown as NodeJS.ErrnoException).syscall !== undefined;

/** The original can't be read as it was when it was looked at. */
class Gone extends Error {}

/** Passes on what is no photo's fault: a mistake of ours, or a part of the program that is not there. */
function remarkOn({ name, coding }: PhotoFile, thrown: unknown): PhotoRemark {
  if (thrown instanceof Gone) return { message: `photos/${name} ${thrown.message}`, hints: ['build again'] };
  const isOurs =
    thrown instanceof TypeError ||
    thrown instanceof ReferenceError ||
    /^ERR_/.test((thrown as NodeJS.ErrnoException).code ?? '');
  if (isOurs) throw thrown;
  if (coding === 'heic')
    return {
      message: `photos/${name} is a HEIC picture that can’t be read here: it is cut short, or coded in a way its reader does not know`,
      hints: ['copy it from the phone again', 'or save it as JPEG on the phone or in a picture program'],
    };
  return notAPicture(name);
}

const makingOf = ({ file, hide }: PhotoOrder, { recipe }: Desk): Making => ({
  recipe,
  content: file.content,
  hide,
});

async function develop(order: PhotoOrder, desk: Desk): Promise<DevelopedPhoto> {
  const { file, hide, use } = order;
  const making = makingOf(order, desk);
  const key = digest([making, use]).slice(0, 40);
  // A covered photo and a HEIC are held whole, more than once; another is made smaller as it is read.
  const weight = file.width * file.height * (hide.length > 0 || file.coding === 'heic' ? 2 : 1);
  const asked =
    desk.underway.get(key) ??
    keptOrMade(desk.cache, key, making, (keep) =>
      desk.budget.within(weight, async () => {
        const bytes = await readAgain(file);
        const decode = (coded: Uint8Array) => desk.heic.decode(coded);
        return desk.make({ bytes, ...(file.coding === 'heic' ? { decode } : {}) }, hide, use, keep);
      }),
    );
  desk.underway.set(key, asked);
  const { picture, folder } = await asked;
  return developed(file.id, picture, folder);
}

async function readAgain({ original, content }: PhotoFile): Promise<Buffer> {
  const bytes = await readPlainFile(original).catch((thrown: NodeJS.ErrnoException) => {
    throw new Gone(`can’t be read any more (${thrown.code ?? 'unknown reason'})`);
  });
  if (contentOf(bytes) !== content) throw new Gone('was changed while it was read');
  return bytes;
}

const digest = (value: unknown): string => createHash('sha256').update(JSON.stringify(value)).digest('hex');

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
