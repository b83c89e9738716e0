/**
 * A JPEG as phones and scanners leave it, with words in every place that holds any and other pictures beside the one that is
 * seen: a small copy of itself, a second picture behind it, a film behind that. Made, not taken.
 *
 * Places: Exif 2.32 (CIPA DC-008), its IFD1 for the small copy; XMP (ISO 16684-1); IPTC-IIM 4.2; ICC.1:2010; a comment
 * (ITU-T T.81, B.2.4.5); Multi-Picture Format (CIPA DC-007) for the second picture; a box of MPEG-4 after the end, as "motion
 * photos" have it. The words are written by ExifTool.
 */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import sharp from 'sharp';
import { run } from './outside-programs.js';
import type { Colour } from './rare-colours.js';
import { profileOf, SRGB } from './rgb-profile.js';

/** What stands in a place, by its name. */
export type WordFor = (where: string) => string;

export interface Painting {
  /** Of the left half, and of the right one. */
  readonly left: Colour;
  readonly right: Colour;
}

export interface Beside {
  /** Of the small copy in the metadata. */
  readonly small: Colour;
  /** Of the second picture behind the first. */
  readonly second: Colour;
}

const [WIDTH, HEIGHT] = [480, 360];

export async function talkingJpeg(painting: Painting, beside: Beside, wordFor: WordFor): Promise<Buffer> {
  const folder = mkdtempSync(path.join(tmpdir(), 'talking-'));
  try {
    const [photo, small, icc] = ['photo.jpg', 'small.jpg', 'colours.icc'].map((name) =>
      path.join(folder, name),
    ) as [string, string, string];
    writeFileSync(icc, profileOf({ ...SRGB, name: `${wordFor('ICC description')} colours` }));
    await painted(painting).withIccProfile(icc).jpeg({ quality: 92 }).toFile(photo);
    await flat(beside.small, 160, 120).jpeg().toFile(small);
    run(
      'exiftool',
      ...['-q', '-q', '-m', '-n', '-overwrite_original', `-ThumbnailImage<=${small}`],
      ...tagsWith(wordFor),
      `-IPTC:By-line=${wordFor('IPTC by-line')}`,
      `-IPTC:Caption-Abstract=${wordFor('IPTC caption')}`,
      `-File:Comment=${wordFor('JPEG comment')}`,
      `-ExifIFD:UserComment=${wordFor('maker’s note')} note`,
      photo,
    );
    const second = await flat(beside.second, WIDTH, HEIGHT).jpeg({ quality: 92 }).toBuffer();
    const film = Buffer.from(`\0\0\0\x18ftypmp42${wordFor('film behind the end')}\0\0\0\x08mdat`, 'latin1');
    return Buffer.concat([withSecond(withMakersNote(readFileSync(photo)), second), second, film]);
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** Words for ExifTool to write into a picture of any format. */
export const tagsWith = (wordFor: WordFor): string[] => [
  ...['Make', 'Artist', 'Copyright', 'Software', 'ImageDescription', 'XPComment'].map(
    (tag) => `-IFD0:${tag}=${wordFor(`EXIF ${tag}`)}`,
  ),
  ...['OwnerName', 'SerialNumber', 'LensModel'].map((tag) => `-ExifIFD:${tag}=${wordFor(`EXIF ${tag}`)}`),
  ...['-GPSLatitude=39.123437', '-GPSLatitudeRef=N', '-GPSLongitude=84.503446', '-GPSLongitudeRef=W'],
  '-ExifIFD:DateTimeOriginal=2026:02:21 03:14:07',
  `-GPSAreaInformation=${wordFor('GPS area')}`,
  ...['dc:Creator', 'dc:Title', 'photoshop:City', 'xmp:CreatorTool', 'xmpMM:DocumentID'].map(
    (tag) => `-XMP-${tag}=${wordFor(`XMP ${tag}`)}`,
  ),
];

/** How the place and the time of day that `tagsWith` writes would be told. */
export const WHERE_AND_WHEN = ['39.123437', '84.503446', '03:14:07'] as const;

/** ExifTool makes no maker's note of its own, so the comment becomes one: tag 0x9286 is written over with 0x927C. */
export function withMakersNote(jpeg: Buffer): Buffer {
  const at = jpeg.indexOf(Buffer.from([0x92, 0x86, 0x00, 0x07]));
  if (at < 0) throw new Error('no comment to make a maker’s note of');
  jpeg[at + 1] = 0x7c;
  return jpeg;
}

/** An index of two pictures (CIPA DC-007, 5.2) before the tables of the first; the second is to lie behind it. */
function withSecond(first: Buffer, second: Buffer): Buffer {
  const at = beforeTables(first);
  const length = 90;
  // The offset of the second counts from the index's own byte order mark.
  const index = Buffer.alloc(length);
  index.write('\xff\xe2\0\x58MPF\0MM\0\x2a\0\0\0\x08\0\x03', 'latin1');
  const entry = (place: number, tag: number, type: number, count: number, value: number): void => {
    index.writeUInt16BE(tag, place);
    index.writeUInt16BE(type, place + 2);
    index.writeUInt32BE(count, place + 4);
    index.writeUInt32BE(value, place + 8);
  };
  entry(18, 0xb000, 7, 4, 0x30313030);
  entry(30, 0xb001, 4, 1, 2);
  entry(42, 0xb002, 7, 32, 50);
  index.writeUInt32BE(0x20030000, 58);
  index.writeUInt32BE(first.length + length, 62);
  index.writeUInt32BE(second.length, 78);
  index.writeUInt32BE(first.length + length - (at + 8), 82);
  return Buffer.concat([first.subarray(0, at), index, first.subarray(at)]);
}

/** Where the segments of the camera end (ITU-T T.81, B.1.1.3: APPn and COM). */
function beforeTables(jpeg: Buffer): number {
  let at = 2;
  while (jpeg[at] === 0xff && ((jpeg[at + 1] ?? 0) >> 4 === 0xe || jpeg[at + 1] === 0xfe))
    at += 2 + jpeg.readUInt16BE(at + 2);
  return at;
}

/** An opaque picture, its left half in one colour and its right half in another. */
export function painted({ left, right }: Painting, width = WIDTH, height = HEIGHT) {
  const row = Buffer.concat(
    Array.from({ length: width }, (_, x) => Buffer.from(x * 2 < width ? left : right)),
  );
  const pixels = Buffer.concat(Array.from({ length: height }, () => row));
  return sharp(pixels, { raw: { width, height, channels: 3 } });
}

const flat = (colour: Colour, width: number, height: number) =>
  painted({ left: colour, right: colour }, width, height);

/** A PNG whose right half was taken out with an eraser: transparent, and its colour still there. */
export async function rubbedOut(colour: Colour): Promise<Buffer> {
  const { data, info } = await painted({ left: [100, 108, 104], right: colour })
    .ensureAlpha()
    .raw()
    .toBuffer({ resolveWithObject: true });
  for (let at = 0; at < data.length; at += 4) if (((at / 4) % WIDTH) * 2 >= WIDTH) data[at + 3] = 0;
  return sharp(data, { raw: info }).png().toBuffer();
}

/** A TIFF of two pages, as a scanner makes it; only the first is seen. */
export async function twoPages(first: Colour, second: Colour): Promise<Buffer> {
  const pages = await Promise.all(
    [first, second].map((colour) => flat(colour, WIDTH, HEIGHT).raw().toBuffer()),
  );
  const raw = { width: WIDTH, height: 2 * HEIGHT, channels: 3, pageHeight: HEIGHT } as const;
  return sharp(Buffer.concat(pages), { raw }).tiff({ compression: 'lzw' }).toBuffer();
}
