/** Colours that nothing else in a packet has, and every picture that can be got out of what is given away. */
import { mkdtempSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import sharp from 'sharp';
import { filesBelow } from './built-houses.js';
import type { Pixels } from './develop-file.js';
import { unpacked } from './every-byte.js';
import { run } from './outside-programs.js';
import { isPicture } from './picture-tags.js';

export type Colour = readonly [red: number, green: number, blue: number];

/** Twelve full hues round the circle, 127 levels from one to the next; the thirteenth is what a photo may be beside them. */
export const hue = (twelfth: number): Colour => {
  const channel = (shift: number): number => {
    const away = Math.abs(((twelfth + shift + 12) % 12) - 6);
    return Math.round(255 * Math.min(1, Math.max(0, (away - 2) / 2)));
  };
  return [channel(0), channel(8), channel(4)];
};
export const GREY: Colour = [128, 132, 136];

/** So far from a colour a coded picture may come to lie, in levels; half the way to the next one would be 63. */
const NEAR = 48;
/** Edges of a photo are blurred; fewer dots than these are no part of a picture. */
const FEWEST = 3;

/** Which of the colours, by name, a picture has anywhere. */
export function coloursIn(
  { data, channels }: Pixels,
  colours: Readonly<Record<string, Colour>>,
): Set<string> {
  // A picture of shades of grey has none of them.
  if (channels < 3) return new Set();
  const wanted = Object.entries(colours).map(([name, colour]) => ({ name, colour, dots: 0 }));
  for (let at = 0; at + 2 < data.length; at += channels) {
    const [red, green, blue] = [data[at] ?? 0, data[at + 1] ?? 0, data[at + 2] ?? 0];
    for (const one of wanted) {
      const [r, g, b] = [red - one.colour[0], green - one.colour[1], blue - one.colour[2]];
      if (r * r + g * g + b * b < NEAR * NEAR) one.dots += 1;
    }
  }
  return new Set(wanted.filter(({ dots }) => dots >= FEWEST).map(({ name }) => name));
}

/** Every dot of a picture, those that are transparent and those of its further pages included. */
export async function everyDot(file: string | Buffer): Promise<Pixels> {
  const opened = sharp(file, { pages: -1 }).toColourspace('srgb').removeAlpha().raw();
  const { data, info } = await opened.toBuffer({ resolveWithObject: true });
  return { data, width: info.width, height: info.height, channels: info.channels };
}

export interface FoundPicture {
  /** Where it was found. */
  readonly where: string;
  readonly kind: 'picture file' | 'written into a text' | 'drawn in a PDF' | 'lying in other bytes';
  readonly pixels: Pixels;
}

/** Every picture of a folder: its picture files, those in texts, those of PDFs by pdfimages, and whatever else begins as one. */
export async function picturesIn(
  folder: string,
  scratch: string,
  isLookedAt = (_name: string): boolean => true,
): Promise<FoundPicture[]> {
  const all: FoundPicture[] = [];
  const add = async (where: string, kind: FoundPicture['kind'], file: string | Buffer): Promise<void> => {
    all.push({ where, kind, pixels: await everyDot(file) });
  };
  for (const name of filesBelow(folder).filter(isLookedAt)) {
    const file = path.join(folder, name);
    const bytes = readFileSync(file);
    if (isPicture(name)) await add(name, 'picture file', file);
    if (/\.(html|css|js|json|svg|ics|txt)$/u.test(name))
      for (const picture of inTexts(bytes)) await add(name, 'written into a text', picture);
    if (name.endsWith('.pdf')) {
      const taken = mkdtempSync(path.join(scratch, 'taken-'));
      run('pdfimages', '-png', file, path.join(taken, 'p'));
      for (const one of readdirSync(taken).sort())
        await add(`${name}: ${one}`, 'drawn in a PDF', path.join(taken, one));
    }
    if (!name.endsWith('.woff2'))
      for (const picture of beginning(bytes, isPicture(name) ? 1 : 0)) {
        // Chance may begin like a picture; what no reader opens shows nothing.
        const pixels = await everyDot(picture).catch(() => undefined);
        if (pixels !== undefined) all.push({ where: name, kind: 'lying in other bytes', pixels });
      }
  }
  return all;
}

/** `data:` addresses of RFC 2397. */
function inTexts(bytes: Buffer): Buffer[] {
  const found = bytes
    .toString('latin1')
    .matchAll(/data:image\/(?:png|jpeg|avif|webp|gif);base64,([A-Za-z0-9+/=]+)/gu);
  return [...found].map(([, text = '']) => Buffer.from(text, 'base64'));
}

/** SOI and another marker of a JPEG, the signature of a PNG, the first box of AVIF and HEIC. */
const SIGNS = [Buffer.from([0xff, 0xd8, 0xff]), Buffer.from('\x89PNG\r\n', 'latin1')];
const BOX = Buffer.from('ftypavif');

/** From each place, packed parts included, where a picture may begin. */
function beginning(bytes: Buffer, from: number): Buffer[] {
  return unpacked(bytes).flatMap((part, nth) => {
    const at = [
      ...SIGNS.flatMap((sign) => placesOf(part, sign)),
      ...placesOf(part, BOX).map((box) => box - 4),
    ];
    // A picture file begins with itself.
    return at.filter((place) => nth > 0 || place >= from).map((place) => part.subarray(place));
  });
}

function placesOf(bytes: Buffer, sign: Buffer): number[] {
  const places: number[] = [];
  for (let at = bytes.indexOf(sign); at >= 0; at = bytes.indexOf(sign, at + 1)) places.push(at);
  return places;
}
