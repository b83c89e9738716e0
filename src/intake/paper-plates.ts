/**
 * Papers become pictures: a receipt that is a PDF is drawn page by page, without the white around it, so that it can be
 * shown beside what it proves. A paper that is a photo is one already.
 */
import { mkdir, readFile, rename, stat, writeFile } from 'node:fs/promises';
import path from 'node:path';
import sharp, { type Sharp } from 'sharp';
import type { PaperFile } from '../facts/ledger.js';
import { isPicture, lookAtPhoto, type PhotoFile } from './look-at-photo.js';

/** One page of a paper, ready for the photo pipeline. */
export interface Plate {
  readonly file: PhotoFile;
  readonly paper: PaperFile;
}

/** More pages than these are read in the file itself. */
const MOST_PAGES = 4;
/** Dots an inch: small print of a receipt stays readable at the width of a sheet. */
const DPI = 150;
/** White that stays around what is printed, in dots. */
const RIM = 24;
/** Changes whenever plates of the same file would look different. */
const RECIPE = 'plates-1';

export interface PlateOrder {
  /** By the document's id. */
  readonly papers: ReadonlyMap<string, PaperFile>;
  /** Folder that plates are kept in. */
  readonly cache: string;
}

/** Pages of each paper by the document's id. A paper that can't be drawn has none: its file is still there. */
export async function paperPlates({ papers, cache }: PlateOrder): Promise<Map<string, readonly Plate[]>> {
  const plates = new Map<string, readonly Plate[]>();
  const drawer = new PageDrawer();
  try {
    for (const [id, paper] of papers) plates.set(id, await platesOf(id, paper, cache, drawer));
  } finally {
    drawer.close();
  }
  return plates;
}

async function platesOf(id: string, paper: PaperFile, cache: string, drawer: PageDrawer): Promise<Plate[]> {
  if (isPicture(paper.file)) return lookedAt(plateId(id, 1), paper, paper.path);
  if (!/\.pdf$/i.test(paper.file)) return [];
  const kept = await pagesOf(paper, cache, drawer);
  return (await Promise.all(kept.map((file, page) => lookedAt(plateId(id, page + 1), paper, file)))).flat();
}

/** No id under `photos:` has a colon in it. */
const plateId = (document: string, page: number): string => `paper:${document}:${page}`;

async function lookedAt(id: string, paper: PaperFile, original: string): Promise<Plate[]> {
  const looked = await lookAtPhoto({ id, name: paper.file, original, huge: false });
  return 'file' in looked ? [{ file: looked.file, paper }] : [];
}

/** Pictures of a PDF's pages, from the cache if they were drawn before. */
async function pagesOf(paper: PaperFile, cache: string, drawer: PageDrawer): Promise<string[]> {
  const folder = path.join(cache, `${RECIPE}-${paper.sha256.slice(0, 40)}`);
  const at = (page: number): string => path.join(folder, `${page}.png`);
  const known = await readFile(path.join(folder, 'pages'), 'utf8').catch(() => undefined);
  if (known !== undefined && /^[0-4]$/.test(known)) {
    const pages = Array.from({ length: Number(known) }, (_, index) => at(index + 1));
    if ((await Promise.all(pages.map(isFile))).every(Boolean)) return pages;
  }
  const drawn = await drawer.draw(await readFile(paper.path));
  await mkdir(folder, { recursive: true });
  for (const [index, bytes] of drawn.entries()) await putFile(at(index + 1), bytes);
  // Last, so that a run that was killed in between draws again.
  await putFile(path.join(folder, 'pages'), String(drawn.length));
  return drawn.map((_, index) => at(index + 1));
}

const isFile = (file: string): Promise<boolean> =>
  stat(file).then(
    (found) => found.isFile(),
    () => false,
  );

/** Whole or not at all. */
async function putFile(file: string, content: Uint8Array | string): Promise<void> {
  const half = `${file}.half`;
  await writeFile(half, content);
  await rename(half, file);
}

type Library = Awaited<ReturnType<typeof import('@hyzyla/pdfium')['PDFiumLibrary']['init']>>;

/** Draws pages of PDF files. The library is loaded with the first file that is not in the cache. */
class PageDrawer {
  #library: Library | undefined;

  /** PNG pictures; none of a file that is no PDF, is locked or is damaged. */
  async draw(bytes: Uint8Array): Promise<Buffer[]> {
    const { PDFiumLibrary } = await import('@hyzyla/pdfium');
    this.#library ??= await PDFiumLibrary.init();
    let document: Awaited<ReturnType<Library['loadDocument']>>;
    try {
      document = await this.#library.loadDocument(bytes);
    } catch {
      return [];
    }
    try {
      const pages: Buffer[] = [];
      for (const page of document.pages()) {
        if (pages.length === MOST_PAGES) break;
        pages.push(await drawPage(page));
      }
      return pages;
    } catch {
      // A page that can't be drawn: the file itself lies beside the pages.
      return [];
    } finally {
      document.destroy();
    }
  }

  close(): void {
    this.#library?.destroy();
    this.#library = undefined;
  }
}

type Page = ReturnType<Awaited<ReturnType<Library['loadDocument']>>['getPage']>;

async function drawPage(page: Page): Promise<Buffer> {
  const { data } = await page.render({
    scale: DPI / 72,
    render: async ({ data: pixels, width, height }) =>
      trimmed(sharp(pixels, { raw: { width, height, channels: 4 } }).flatten({ background: '#fff' })),
  });
  return Buffer.from(data);
}

/** Without the white around it, but for a rim. A blank page stays as it is. */
async function trimmed(picture: Sharp): Promise<Uint8Array> {
  const whole = await picture.removeAlpha().png().toBuffer();
  try {
    return await sharp(whole)
      .trim({ background: '#fff', threshold: 8 })
      .extend({ top: RIM, bottom: RIM, left: RIM, right: RIM, background: '#fff' })
      .png()
      .toBuffer();
  } catch {
    return whole;
  }
}
