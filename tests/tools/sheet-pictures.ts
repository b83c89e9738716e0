/**
 * Small grey pictures of sheets of paper, and how far apart two of them are.
 *
 * Sheets are painted large, reduced to 50 dots an inch and blurred by a dot, and compared cell by cell as mean difference.
 * So it matters little how one version of poppler or FreeType smooths an edge, which moves ink by a part of a dot, while a
 * line that moved or went away changes whole cells. Counting unlike dots (as pixelmatch does) told the two apart worse.
 */
import { readFileSync } from 'node:fs';
import sharp from 'sharp';
import { run } from './outside-programs.js';

/** Of the pictures; letter paper is 425 by 550 dots. */
const DOTS_PER_INCH = 50;
/** Painted larger by this, so that the reduction does the smoothing and not the rasteriser. */
const LARGER = 3;
/** Grey levels of a stored picture. */
const LEVELS = 16;
/** Dots a cell is wide and high, and from one cell to the next. */
const CELL = 6;
const STEP = 3;

/**
 * Mean difference of a cell, of 255, above which two sheets are not the same. Measured on these sheets: the same one by
 * cairo instead of poppler's own rasteriser stays under 28 (words and drawings under 20), one that lies 3 points lower is
 * above 55 wherever it is, and one that lacks a mark's shape or a short line of small type is above 33.
 */
export const UNLIKE = 30;

export interface SheetPicture {
  readonly width: number;
  readonly height: number;
  /** One byte a dot, 0 black. */
  readonly dots: Buffer;
}

/** In points from the sheet's top left corner. */
export interface Area {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Ways in which a test changes what was painted, before it is reduced. */
export interface Change {
  /** Made white. */
  readonly blank?: readonly Area[];
  /** Moved down by so many points. */
  readonly lowerPt?: number;
}

/** Bytes of a page as a rasteriser painted it, before a test changes anything. */
interface Raster {
  readonly data: Buffer;
  readonly width: number;
  readonly height: number;
}

type Painter = 'pdftoppm' | 'pdftocairo';
const rasters = new Map<string, Promise<Raster>>();

/** A rasteriser makes one picture of one page of one file, so it is asked once, and each change is made to a copy. */
function rasterOf(pdf: string, page: number, painter: Painter): Promise<Raster> {
  const name = `${painter} ${page} ${pdf}`;
  const known = rasters.get(name) ?? rasterise(pdf, page, painter);
  rasters.set(name, known);
  return known;
}

async function rasterise(pdf: string, page: number, painter: Painter): Promise<Raster> {
  const dpi = String(DOTS_PER_INCH * LARGER);
  const where = ['-r', dpi, '-f', String(page), '-l', String(page), '-singlefile', '-gray', '-png'];
  // Without a second name pdftoppm writes to its output; pdftocairo asks for a hyphen.
  const png = run(painter, ...where, pdf, ...(painter === 'pdftocairo' ? ['-'] : []));
  const { data, info } = await sharp(png)
    .greyscale()
    .toColourspace('b-w')
    .raw()
    .toBuffer({ resolveWithObject: true });
  return { data, width: info.width, height: info.height };
}

/** One page of a PDF, painted by poppler's `pdftoppm` or `pdftocairo`. */
export async function paintSheet(
  pdf: string,
  page: number,
  { blank = [], lowerPt = 0 }: Change = {},
  painter: Painter = 'pdftoppm',
): Promise<SheetPicture> {
  const dpi = DOTS_PER_INCH * LARGER;
  const info = await rasterOf(pdf, page, painter);
  const data = Buffer.from(info.data);
  const dots = (points: number): number => Math.round((points * dpi) / 72);
  for (const area of blank)
    for (let y = dots(area.y); y < dots(area.y + area.height); y += 1)
      data.fill(255, y * info.width + dots(area.x), y * info.width + dots(area.x + area.width));
  const moved = dots(lowerPt) * info.width;
  const painted = Buffer.alloc(data.length, 255);
  data.copy(painted, moved, 0, data.length - moved);
  const width = Math.round(info.width / LARGER);
  const height = Math.round(info.height / LARGER);
  const small = await sharp(painted, { raw: { width: info.width, height: info.height, channels: 1 } })
    .resize(width, height, { fit: 'fill' })
    .toColourspace('b-w')
    .raw()
    .toBuffer();
  return { width, height, dots: small };
}

/** As a file to be kept. */
export async function toPng(sheet: SheetPicture): Promise<Buffer> {
  const step = 255 / (LEVELS - 1);
  const levels = Buffer.from(sheet.dots.map((dot) => Math.round(Math.round(dot / step) * step)));
  return asSharp({ ...sheet, dots: levels })
    .png({ palette: true, colours: LEVELS, dither: 0, effort: 10 })
    .toBuffer();
}

export async function fromPng(file: string): Promise<SheetPicture> {
  const { data, info } = await sharp(readFileSync(file))
    .greyscale()
    .toColourspace('b-w')
    .raw()
    .toBuffer({ resolveWithObject: true });
  return { width: info.width, height: info.height, dots: data };
}

const asSharp = ({ width, height, dots }: SheetPicture) =>
  sharp(dots, { raw: { width, height, channels: 1 } });

const blurred = (sheet: SheetPicture): Promise<Buffer> =>
  asSharp(sheet).blur(1).toColourspace('b-w').raw().toBuffer();

export interface Likeness {
  /** Mean difference of the cell that differs most, of 255. */
  readonly most: number;
  /** Left and top of the cells that are above `UNLIKE`, in dots. */
  readonly cells: readonly (readonly [x: number, y: number])[];
}

export async function likenessOf(a: SheetPicture, b: SheetPicture): Promise<Likeness> {
  if (a.width !== b.width || a.height !== b.height) return { most: 255, cells: [[0, 0]] };
  const [of, to] = [await blurred(a), await blurred(b)];
  const cells: [number, number][] = [];
  let most = 0;
  for (let y = 0; y + CELL <= a.height; y += STEP)
    for (let x = 0; x + CELL <= a.width; x += STEP) {
      let sum = 0;
      for (let row = y; row < y + CELL; row += 1)
        for (let at = row * a.width + x; at < row * a.width + x + CELL; at += 1)
          sum += Math.abs((of[at] ?? 0) - (to[at] ?? 0));
      const mean = sum / (CELL * CELL);
      if (mean > UNLIKE) cells.push([x, y]);
      most = Math.max(most, mean);
    }
  return { most, cells };
}

/** The new sheet with the unlike cells in red. */
export async function differencePng(sheet: SheetPicture, { cells }: Likeness): Promise<Buffer> {
  const { width, height, dots } = sheet;
  const colours = Buffer.alloc(dots.length * 3);
  dots.forEach((dot, at) => {
    colours.fill(dot, at * 3, at * 3 + 3);
  });
  for (const [left, top] of cells)
    for (let y = top; y < Math.min(height, top + CELL); y += 1)
      for (let x = left; x < Math.min(width, left + CELL); x += 1) colours[(y * width + x) * 3] = 255;
  return sharp(colours, { raw: { width, height, channels: 3 } })
    .png()
    .toBuffer();
}
