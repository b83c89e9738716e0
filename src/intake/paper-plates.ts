/**
 * Papers become pictures: a receipt that is a PDF is drawn page by page, without the white around it, so that it can be
 * shown beside what it proves. A paper that is a photo is one already.
 */
import { mkdir, mkdtemp, readFile, rename, rm, stat, writeFile } from 'node:fs/promises';
import path from 'node:path';
import type { Sharp, default as sharp } from 'sharp';
import type { PaperFile } from '../facts/ledger.js';
import { PageDrawer, type PagePixels } from './draw-pages.js';
import { isPicture, lookAtPhoto, type PhotoFile } from './look-at-photo.js';
import { pictureLibrary } from './picture-library.js';
import { readPlainFile } from './read-plain-file.js';

/** More pages than these are read in the file itself. */
const MOST_PAGES = 4;
/** A larger file is copied and not drawn. */
const MOST_BYTES = 100_000_000;
/** A page as large as a wall is drawn smaller: these are three letter pages at the usual scale. */
const MOST_PIXELS = 6_300_000;
/** Dots an inch: small print of a receipt stays readable at the width of a sheet. */
const DPI = 150;
/** White that stays around what is printed, in dots. */
const RIM = 24;
/** Changes whenever plates of the same file would look different. */
const RECIPE = 'plates-2';

export interface PlateOrder {
  /** By the document's id. */
  readonly papers: ReadonlyMap<string, PaperFile>;
  /** Folder that plates are kept in. */
  readonly cache: string;
}

/** A paper as pictures: the pages that are shown, and how many it has. */
export interface Plates {
  readonly pages: readonly PhotoFile[];
  readonly of: number;
  /** Nothing could be drawn, whatever the paper is: `pictureLibrary` has none. */
  readonly noLibrary?: true;
}

/** By the document's id. A paper that can't be drawn has no pages: its file is copied all the same. */
export async function paperPlates({ papers, cache }: PlateOrder): Promise<Map<string, Plates>> {
  const plates = new Map<string, Plates>();
  const pictures = await pictureLibrary();
  // Nothing is kept of it either: the cache would say for good that the papers have no pages.
  if (pictures === undefined)
    return new Map([...papers.keys()].map((id) => [id, { pages: [], of: 0, noLibrary: true }]));
  const drawer = new PageDrawer();
  try {
    for (const [id, paper] of papers) plates.set(id, await platesOf(id, paper, cache, drawer, pictures));
  } finally {
    await drawer.close();
  }
  return plates;
}

async function platesOf(
  id: string,
  paper: PaperFile,
  cache: string,
  drawer: PageDrawer,
  pictures: typeof sharp,
): Promise<Plates> {
  if (isPicture(paper.file)) {
    const pages = await lookedAt(plateId(id, 1), paper, paper.path);
    return { pages, of: pages.length };
  }
  if (!/\.pdf$/i.test(paper.file) || paper.bytes > MOST_BYTES) return { pages: [], of: 0 };
  const { files, of } = await pagesOf(paper, cache, drawer, pictures);
  const looked = files.map((file, page) => lookedAt(plateId(id, page + 1), paper, file));
  return { pages: (await Promise.all(looked)).flat(), of };
}

/** No id under `photos:` has a colon in it. */
const plateId = (document: string, page: number): string => `paper:${document}:${page}`;

async function lookedAt(id: string, paper: PaperFile, original: string): Promise<PhotoFile[]> {
  const looked = await lookAtPhoto({ id, name: paper.file, original, huge: false });
  return 'file' in looked ? [looked.file] : [];
}

/** Pictures of a PDF's pages, from the cache if they were drawn before. */
async function pagesOf(
  paper: PaperFile,
  cache: string,
  drawer: PageDrawer,
  pictures: typeof sharp,
): Promise<Kept> {
  const folder = path.join(cache, `${RECIPE}-${paper.sha256.slice(0, 40)}`);
  const kept = await keptPages(folder);
  if (kept !== undefined) return kept;
  const bytes = await readPlainFile(paper.path);
  const drawn = await drawer.draw({ bytes, mostPages: MOST_PAGES, mostPixels: MOST_PIXELS, dpi: DPI });
  if ('why' in drawn && drawn.why === 'too-long') return { files: [], of: 0 };
  const { pages, of } = 'why' in drawn ? { pages: [], of: 0 } : drawn;
  await mkdir(cache, { recursive: true });
  // Made under a name of its own and moved there in one step: two builds may draw one paper at once.
  const half = await mkdtemp(path.join(cache, '.making-'));
  try {
    for (const [index, page] of pages.entries())
      await writeFile(path.join(half, pageName(index)), await pictureOf(page, pictures));
    await writeFile(path.join(half, LIST), `${pages.length} of ${of}`);
    await putInPlace(half, folder);
  } finally {
    await rm(half, { recursive: true, force: true });
  }
  return { files: pages.map((_, index) => path.join(folder, pageName(index))), of };
}

interface Kept {
  readonly files: readonly string[];
  readonly of: number;
}

/** How many pages were drawn, of how many; it is written last. */
const LIST = 'pages';
const pageName = (index: number): string => `${index + 1}.png`;

/** Undefined where there is no whole set. */
async function keptPages(folder: string): Promise<Kept | undefined> {
  const list = await readFile(path.join(folder, LIST), 'utf8').catch(() => '');
  const [, drawn, of] = /^(\d) of (\d+)$/.exec(list) ?? [];
  if (drawn === undefined) return undefined;
  const files = Array.from({ length: Number(drawn) }, (_, index) => path.join(folder, pageName(index)));
  return (await Promise.all(files.map(isFile))).every(Boolean) ? { files, of: Number(of) } : undefined;
}

async function putInPlace(half: string, folder: string): Promise<void> {
  try {
    await rename(half, folder);
  } catch (thrown) {
    if (!['ENOTEMPTY', 'EEXIST', 'EPERM'].includes((thrown as NodeJS.ErrnoException).code ?? ''))
      throw thrown;
    // Another build drew the same; or somebody took a page out, and it is drawn anew.
    if ((await keptPages(folder)) !== undefined) return;
    await rm(folder, { recursive: true, force: true });
    await rename(half, folder);
  }
}

const isFile = (file: string): Promise<boolean> =>
  stat(file).then(
    (found) => found.isFile(),
    () => false,
  );

/** As a PNG. */
const pictureOf = ({ width, height, pixels }: PagePixels, pictures: typeof sharp): Promise<Uint8Array> =>
  trimmed(
    pictures(pixels, { raw: { width, height, channels: 4 } }).flatten({ background: '#fff' }),
    pictures,
  );

/** Without the white around it, but for a rim. A blank page stays as it is. */
async function trimmed(picture: Sharp, pictures: typeof sharp): Promise<Uint8Array> {
  const whole = await picture.removeAlpha().png().toBuffer();
  try {
    return await pictures(whole)
      .trim({ background: '#fff', threshold: 8 })
      .extend({ top: RIM, bottom: RIM, left: RIM, right: RIM, background: '#fff' })
      .png()
      .toBuffer();
  } catch {
    return whole;
  }
}
