/**
 * Independent check: what the project reads of a camera is what ExifTool reads, on 50 made files of every format a
 * phone writes: time, place, and the size of the upright picture.
 *
 * Tags and their values: Exif 2.32 (CIPA DC-008), 4.6.4 to 4.6.6; the tags are written by ExifTool as well. HEIC files
 * are made by libheif's heif-enc; that their turning stands in the container, not in Exif, is ISO/IEC 23008-12, 6.5.10
 * (written by turn-heic.mjs).
 */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { PhotoFile } from '../../src/intake/look-at-photo.js';
import { lookedAt } from '../tools/develop-file.js';
import { heifEnc, lacking, run, type Tags, tagsOf, turnHeic } from '../tools/outside-programs.js';
import { seeded } from './seeded-outlines.js';

const { some: lacks, words: without } = lacking('exiftool', 'heif-enc');

const FORMATS = ['jpg', 'png', 'webp', 'avif', 'tif', 'heic'] as const;
const COUNT = 50;

/** Ways to write a time, taken in turns; the words are ExifTool's. */
const TIMES: readonly ((time: () => string) => readonly string[])[] = [
  (time) => [`-EXIF:DateTimeOriginal=${time()}`, `-EXIF:CreateDate=${time()}`, `-EXIF:ModifyDate=${time()}`],
  (time) => [`-EXIF:CreateDate=${time()}`, `-EXIF:ModifyDate=${time()}`],
  (time) => [`-EXIF:CreateDate=${time()}`],
  (time) => [`-EXIF:ModifyDate=${time()}`],
  () => [],
  () => ['-EXIF:DateTimeOriginal=0000:00:00 00:00:00'],
  (time) => ['-EXIF:DateTimeOriginal=0000:00:00 00:00:00', `-EXIF:CreateDate=${time()}`],
  () => ['-EXIF:DateTimeOriginal=2025:02:30 10:00:00'],
  (time) => ['-EXIF:DateTimeOriginal=2026:13:01 10:00:00', `-EXIF:ModifyDate=${time()}`],
  () => ['-EXIF:DateTimeOriginal=2026:01:01 25:61:00'],
  (time) => [
    `-EXIF:DateTimeOriginal=${time()}`,
    '-EXIF:OffsetTimeOriginal=-08:00',
    '-EXIF:SubSecTimeOriginal=87',
  ],
];

/** All four quarters of the world, in turns, with fractions of a second; no fix; nothing. */
const PLACES: readonly ((next: () => number) => readonly string[])[] = [
  (next) => placed(next() * 89, 'N', next() * 179, 'E'),
  (next) => placed(next() * 89, 'S', next() * 179, 'W'),
  (next) => placed(next() * 89, 'N', next() * 179, 'W'),
  () => [],
  (next) => placed(next() * 89, 'S', next() * 179, 'E'),
  () => placed(0, 'N', 0, 'E'),
  (next) => placed(next() / 100, 'S', next() / 100, 'W'),
];

const placed = (north: number, northRef: string, east: number, eastRef: string): string[] => [
  `-GPSLatitude=${north.toFixed(8)}`,
  `-GPSLatitudeRef=${northRef}`,
  `-GPSLongitude=${east.toFixed(8)}`,
  `-GPSLongitudeRef=${eastRef}`,
];

let folder: string;
const files: string[] = [];
let read: readonly Tags[];
let ours: PhotoFile[];

beforeAll(async () => {
  if (lacks) return;
  folder = mkdtempSync(path.join(tmpdir(), 'camera-'));
  const plain = sharp({ create: { width: 64, height: 48, channels: 3, background: '#886644' } });
  const png = path.join(folder, 'plain.png');
  writeFileSync(png, await plain.clone().png().toBuffer());
  const next = seeded(20_261_120);
  const orders: string[] = [];
  for (let i = 0; i < COUNT; i++) {
    const format = FORMATS[i % FORMATS.length] ?? 'jpg';
    const orientation = 1 + (Math.floor(i / FORMATS.length) % 8);
    const file = path.join(folder, `photo-${i}.${format}`);
    if (format === 'heic') {
      heifEnc(file, [png]);
      const quarters = QUARTERS[orientation] ?? 0;
      if (quarters > 0) turnHeic(file, file, quarters);
    } else
      writeFileSync(
        file,
        await plain
          .clone()
          .toFormat(format === 'jpg' ? 'jpeg' : format === 'tif' ? 'tiff' : format, { effort: 1 })
          // In AVIF, sharp writes the turning into the container.
          .withMetadata({ orientation: format === 'avif' ? orientation : 1 })
          .toBuffer(),
      );
    const words = [
      ...(TIMES[(i + Math.floor(i / FORMATS.length)) % TIMES.length]?.(() => madeTime(next)) ?? []),
      ...(PLACES[i % PLACES.length]?.(next) ?? []),
      // Written by phones into HEIC as well, where it is said twice.
      ...(format === 'avif' ? [] : [`-Orientation=${orientation}`]),
    ];
    orders.push(...words, '-n', '-overwrite_original', '-q', file, '-execute');
    files.push(file);
  }
  writeFileSync(path.join(folder, 'orders'), orders.join('\n'));
  run('exiftool', '-@', path.join(folder, 'orders'));
  read = tagsOf(files);
  ours = [];
  for (const file of files) ours.push(await lookedAt(file));
});
afterAll(() => {
  if (!lacks) rmSync(folder, { recursive: true });
});

/** Quarter turns anticlockwise that a container writes for an orientation; turned over is not written by phones. */
const QUARTERS: Readonly<Record<number, number>> = { 3: 2, 6: 3, 8: 1 };

function madeTime(next: () => number): string {
  const two = (most: number, least = 0): string =>
    String(least + Math.floor(next() * (most - least + 1))).padStart(2, '0');
  return `${1995 + Math.floor(next() * 31)}:${two(12, 1)}:${two(28, 1)} ${two(23)}:${two(59)}:${two(59)}`;
}

/**
 * When it was taken, if that is a day and a time that there are, by the language's own calendar. The times of scanning
 * and of the last change are no answer.
 */
function expectedTime(tags: Tags): string | undefined {
  const written = String(tags['ExifIFD:DateTimeOriginal'] ?? '').slice(0, 19);
  const iso = written.replace(/^(\d{4}):(\d\d):(\d\d) /, '$1-$2-$3T');
  const instant = new Date(`${iso}Z`);
  return !Number.isNaN(instant.valueOf()) && instant.toISOString().startsWith(iso) ? iso : undefined;
}

/** Stored size turned by what the format goes by: its Exif tag, or in HEIC and AVIF the container. */
function expectedSize(tags: Tags): { width: number; height: number } {
  const [width = 0, height = 0] = String(tags['Composite:ImageSize']).split(' ').map(Number);
  const container = /\.(heic|avif)$/u.test(tags.SourceFile);
  const turned = container
    ? [90, 270].includes(Number(tags['QuickTime:Rotation'] ?? 0))
    : Number(tags['IFD0:Orientation']) >= 5;
  return turned ? { width: height, height: width } : { width, height };
}

describe.skipIf(lacks)(`${COUNT} made photos read by ExifTool and by this program${without}`, () => {
  it('hold what they are to hold: the check can fail', () => {
    expect(read.map((tags) => tags.SourceFile)).toEqual(files);
    const times = read.map(expectedTime);
    expect(times.filter((time) => time !== undefined).length).toBeGreaterThan(8);
    expect(times.filter((time) => time === undefined).length).toBeGreaterThan(10);
    const tall = read.map(expectedSize).filter(({ width, height }) => width < height);
    expect(tall.length).toBeGreaterThan(12);
    for (const format of FORMATS)
      for (const tag of ['ExifIFD:DateTimeOriginal', 'GPS:GPSLatitude'])
        expect(
          read.some((tags) => tags.SourceFile.endsWith(`.${format}`) && tags[tag] !== undefined),
          `${format} with ${tag}`,
        ).toBe(true);
  });

  it('were taken at the same time, or at none', () => {
    expect(ours.map(({ name, camera }) => [name, camera.takenAt])).toEqual(
      read.map((tags) => [path.basename(tags.SourceFile), expectedTime(tags)]),
    );
  });

  it('were taken at the same place within a millionth of a degree (11 cm), or at none', () => {
    let compared = 0;
    for (const [i, tags] of read.entries()) {
      const [north, east] = [tags['Composite:GPSLatitude'], tags['Composite:GPSLongitude']].map(Number);
      const spot = ours[i]?.camera.spot;
      const name = path.basename(tags.SourceFile);
      // Zero and zero lies in the sea; receivers without a fix write it.
      if (north === undefined || east === undefined || Number.isNaN(north) || (north === 0 && east === 0)) {
        expect([name, spot]).toEqual([name, undefined]);
        continue;
      }
      compared += 1;
      expect(Math.abs((spot?.north ?? 99) - north), `${name} north`).toBeLessThan(1e-6);
      expect(Math.abs((spot?.east ?? 199) - east), `${name} east`).toBeLessThan(1e-6);
    }
    expect(compared).toBeGreaterThan(30);
  });

  it('are as wide and as high when they stand upright', () => {
    expect(ours.map(({ name, width, height }) => ({ name, width, height }))).toEqual(
      read.map((tags) => ({ name: path.basename(tags.SourceFile), ...expectedSize(tags) })),
    );
  });
});
