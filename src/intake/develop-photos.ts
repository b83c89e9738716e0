/**
 * Originals become pictures that may be shown: upright, small, without metadata, covered where `hide` says.
 *
 * One decode serves every size. Results lie in a cache keyed by the original's bytes, the recipe and the
 * program's versions; it can be deleted at any time.
 */
import { createHash, randomUUID } from 'node:crypto';
import { mkdir, readFile, rename, rm, writeFile } from 'node:fs/promises';
import { availableParallelism } from 'node:os';
import path from 'node:path';
import sharp, { type Sharp } from 'sharp';
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import { diskTrouble } from '../diagnostics/disk-trouble.js';
import { notAPicture, type PhotoFile, PIXEL_LIMIT } from './photo-files.js';

/** Bytes of AVIF and JPEG depend on libvips' own threads; one each keeps them the same on every machine. */
sharp.concurrency(1);
sharp.cache(false);

const PAGE_WIDTHS = [480, 960, 1600] as const;
const PAGE_QUALITY = 78;
const PRINT_EDGE = 1600;
const PRINT_QUALITY = 80;
const RECIPE = JSON.stringify([
  1,
  PAGE_WIDTHS,
  PAGE_QUALITY,
  PRINT_EDGE,
  PRINT_QUALITY,
  sharp.versions.vips,
  sharp.versions.sharp,
]);

export type Rectangle = readonly [left: number, top: number, width: number, height: number];

export interface PhotoOrder {
  readonly file: PhotoFile;
  /** Parts of the upright picture to cover. */
  readonly hide: readonly Rectangle[];
}

export interface DevelopedPhoto {
  readonly id: string;
  readonly width: number;
  readonly height: number;
  readonly sizes: readonly {
    readonly width: number;
    readonly height: number;
    readonly name: string;
    readonly file: string;
  }[];
  readonly print: { readonly width: number; readonly height: number; readonly file: string };
}

interface Manifest {
  readonly width: number;
  readonly height: number;
  readonly sizes: readonly { readonly width: number; readonly height: number; readonly name: string }[];
  readonly print: { readonly width: number; readonly height: number; readonly name: string };
}

export async function developPhotos(
  orders: readonly PhotoOrder[],
  cache: string,
  /** The cache as the writer would type it. */
  shownCache: string,
  onPhoto: (done: number, all: number) => void = () => {},
): Promise<{ pictures: ReadonlyMap<string, DevelopedPhoto>; diagnostics: readonly Diagnostic[] }> {
  const pictures = new Map<string, DevelopedPhoto>();
  const diagnostics: Diagnostic[] = [];
  let refused: Diagnostic | undefined;
  const queue = [...orders];
  let done = 0;
  const worker = async (): Promise<void> => {
    for (let order = queue.shift(); order !== undefined && refused === undefined; order = queue.shift()) {
      const { file } = order;
      try {
        pictures.set(file.id, await develop(order, cache));
      } catch (thrown) {
        if (isRefusal(thrown)) refused ??= diskTrouble(thrown, shownCache);
        else diagnostics.push({ ...notAPicture(path.basename(file.original)), path: ['photos', file.id] });
      }
      done += 1;
      onPhoto(done, orders.length);
    }
  };
  await Promise.all(Array.from({ length: Math.min(availableParallelism(), orders.length) }, worker));
  return { pictures, diagnostics: refused === undefined ? diagnostics : [...diagnostics, refused] };
}

/** The system refused; a picture that can't be decoded carries no system call. */
const isRefusal = (thrown: unknown): boolean =>
  thrown instanceof Error && (thrown as NodeJS.ErrnoException).syscall !== undefined;

async function develop(order: PhotoOrder, cache: string): Promise<DevelopedPhoto> {
  const bytes = await readFile(order.file.original);
  const key = createHash('sha256')
    .update(RECIPE)
    .update(JSON.stringify(order.hide))
    .update(bytes)
    .digest('hex')
    .slice(0, 40);
  const folder = path.join(cache, key);
  const kept = await readManifest(folder);
  if (kept !== undefined) return withFiles(order.file.id, kept, folder);
  const staging = path.join(cache, `.making-${key}-${randomUUID()}`);
  await mkdir(staging, { recursive: true });
  try {
    const manifest = await make(bytes, order.hide, staging);
    await writeFile(path.join(staging, 'manifest.json'), JSON.stringify(manifest));
    await rename(staging, folder).catch(async (thrown: NodeJS.ErrnoException) => {
      // Another build made the same picture first; its bytes are the same.
      if (
        !['ENOTEMPTY', 'EEXIST', 'EPERM'].includes(thrown.code ?? '') ||
        (await readManifest(folder)) === undefined
      )
        throw thrown;
    });
    return withFiles(order.file.id, manifest, folder);
  } finally {
    await rm(staging, { recursive: true, force: true });
  }
}

async function readManifest(folder: string): Promise<Manifest | undefined> {
  try {
    return JSON.parse(await readFile(path.join(folder, 'manifest.json'), 'utf8')) as Manifest;
  } catch {
    return undefined;
  }
}

function withFiles(id: string, manifest: Manifest, folder: string): DevelopedPhoto {
  const at = <T extends { name: string }>(entry: T) => ({ ...entry, file: path.join(folder, entry.name) });
  return {
    id,
    width: manifest.width,
    height: manifest.height,
    sizes: manifest.sizes.map(at),
    print: at(manifest.print),
  };
}

async function make(bytes: Buffer, hide: readonly Rectangle[], folder: string): Promise<Manifest> {
  const upright = await openUpright(bytes, hide);
  // The colour profile is kept through the shrinking and applied to the small picture: a quarter of the work.
  const shrunk = await upright
    .keepIccProfile()
    .resize(PRINT_EDGE, PRINT_EDGE, { fit: 'inside', withoutEnlargement: true })
    .tiff({ compression: 'none' })
    .toBuffer();
  const { data, info } = await sharp(shrunk)
    .flatten({ background: '#ffffff' })
    .toColourspace('srgb')
    .removeAlpha()
    .raw()
    .toBuffer({ resolveWithObject: true });
  const raw = { raw: { width: info.width, height: info.height, channels: info.channels } };
  const save = async (picture: Buffer, size: { width: number; height: number }) => {
    const name = `${createHash('sha256').update(picture).digest('hex').slice(0, 20)}.jpg`;
    await writeFile(path.join(folder, name), picture);
    return { width: size.width, height: size.height, name };
  };
  const sizes = [];
  for (const edge of PAGE_WIDTHS) {
    if (sizes.length > 0 && edge > info.width && (sizes.at(-1)?.width ?? 0) >= info.width) continue;
    const made = await sharp(data, raw)
      .resize(edge, undefined, { withoutEnlargement: true })
      .jpeg({ quality: PAGE_QUALITY })
      .toBuffer({ resolveWithObject: true });
    sizes.push(await save(made.data, made.info));
  }
  const paper = await sharp(data, raw)
    .jpeg({ quality: PRINT_QUALITY, mozjpeg: true })
    .toBuffer({ resolveWithObject: true });
  return { width: info.width, height: info.height, sizes, print: await save(paper.data, paper.info) };
}

/** The picture upright, with what is to be hidden already painted over at full size. */
async function openUpright(bytes: Buffer, hide: readonly Rectangle[]): Promise<Sharp> {
  const opened = sharp(bytes, { failOn: 'error', limitInputPixels: PIXEL_LIMIT }).autoOrient();
  if (hide.length === 0) return opened;
  const { data, info } = await opened
    .keepIccProfile()
    .tiff({ compression: 'none' })
    .toBuffer({ resolveWithObject: true });
  const covers = hide.map(([left, top, width, height]) => {
    const x = Math.floor(left * info.width);
    const y = Math.floor(top * info.height);
    return {
      left: Math.min(x, info.width - 1),
      top: Math.min(y, info.height - 1),
      input: {
        create: {
          width: Math.max(1, Math.min(Math.ceil((left + width) * info.width) - x, info.width - x)),
          height: Math.max(1, Math.min(Math.ceil((top + height) * info.height) - y, info.height - y)),
          channels: 3 as const,
          background: '#8a9296',
        },
      },
    };
  });
  return sharp(await sharp(data).composite(covers).keepIccProfile().tiff({ compression: 'none' }).toBuffer());
}
