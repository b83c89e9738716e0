/**
 * Independent check: of a house whose photos tell all they can (place, serial numbers, names, times, comments, small
 * copies of themselves, names of profiles), ExifTool finds nothing of it in any picture that is given away, nor in those
 * that pdfimages takes out of the sheets; and the house file keeps the originals as they are.
 *
 * Tags: Exif 2.32 (CIPA DC-008), XMP (ISO 16684-1), IPTC-IIM 4.2, PNG third edition 11.3.3, ICC.1:2010.
 */
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { EDITION_NAMES } from '../../src/build.js';
import { filesBelow } from '../tools/built-houses.js';
import { textsIn } from '../tools/every-byte.js';
import { heifEnc, lacking, run } from '../tools/outside-programs.js';
import { buildPhotoHouse } from '../tools/photo-house.js';
import { photoWithSecrets } from '../tools/photo-with-secrets.js';
import { beside, everyTag, isPicture, takenOut } from '../tools/picture-tags.js';
import { DISPLAY_P3, profileOf } from '../tools/rgb-profile.js';
import { withMakersNote } from '../tools/talking-photo.js';

const { some: lacks, words: without } = lacking('exiftool', 'pdfimages', 'heif-enc');

/** Planted in every place of a file that can hold words; none may be found in what is given away. */
const WORD = 'qzplantedxj';

/** Words, places and times for ExifTool to write into any format. */
const PLANTED = [
  ...[
    'Make',
    'Model',
    'Artist',
    'Copyright',
    'Software',
    'ImageDescription',
    'HostComputer',
    'XPComment',
    'XPAuthor',
  ].map((tag) => `-IFD0:${tag}=${WORD} ${tag}`),
  ...['OwnerName', 'SerialNumber', 'LensSerialNumber', 'LensModel', 'UserComment', 'ImageUniqueID'].map(
    (tag) => `-ExifIFD:${tag}=${WORD} ${tag}`,
  ),
  ...['DateTimeOriginal', 'CreateDate'].map((tag) => `-ExifIFD:${tag}=2026:02:21 09:14:02`),
  '-IFD0:ModifyDate=2026:02:21 09:14:02',
  ...['-GPSLatitude=39.123437', '-GPSLatitudeRef=N', '-GPSLongitude=84.503446', '-GPSLongitudeRef=W'],
  `-GPSAreaInformation=${WORD} area`,
  ...[
    'XMP-dc:Creator',
    'XMP-dc:Title',
    'XMP-photoshop:City',
    'XMP-xmp:CreatorTool',
    'XMP-aux:SerialNumber',
  ].map((tag) => `-${tag}=${WORD} ${tag}`),
  ...['-XMP-exif:GPSLatitude=39.123437', '-XMP-exif:GPSLongitude=-84.503446'],
];
const IN_A_JPEG = [
  ...['By-line', 'City', 'Caption-Abstract', 'Writer-Editor'].map((tag) => `-IPTC:${tag}=${WORD} ${tag}`),
  `-File:Comment=${WORD} comment`,
];
const IN_A_PNG = ['Author', 'Comment', 'Software', 'Source'].map((tag) => `-PNG:${tag}=${WORD} ${tag}`);

/** Places of a file that a published picture could give away; each is planted in one of the originals at least. */
const KINDS = [
  /^GPS:GPSLatitude=/u,
  /^XMP-exif:GPS/u,
  /:(SerialNumber|LensSerialNumber)=/u,
  /:(OwnerName|Artist|Creator|By-line)=/u,
  /:(Software|CreatorTool)=/u,
  /:(DateTimeOriginal|CreateDate|ModifyDate)=/u,
  /^File:Comment=/u,
  /^IFD1:Thumbnail/u,
  /^IPTC:/u,
  /^PNG:Author=/u,
  /^ICC_Profile:ProfileDescription=/u,
  /^ExifTool:Warning=.*MakerNotes/u,
];

describe.skipIf(lacks)(`a house of talkative photos${without}`, () => {
  const NAMES = ['one.jpg', 'two.png', 'three.heic', 'four.webp', 'five.avif', 'six.tif'];
  let folder: string;
  let house: Awaited<ReturnType<typeof buildPhotoHouse>>;
  let originals: ReadonlyMap<string, Buffer>;

  beforeAll(async () => {
    folder = mkdtempSync(path.join(tmpdir(), 'talkative-'));
    const photo = { shows: 'kitchen', where: 'kitchen', alt: 'A kitchen.', when: 'after' } as const;
    const photos = Object.fromEntries(NAMES.map((name) => [path.parse(name).name, photo]));
    house = await buildPhotoHouse(path.join(folder, 'talkative'), photos, plantAll);
    originals = new Map(NAMES.map((name) => [name, readFileSync(path.join(house.photos, name))]));
  });

  afterAll(() => rmSync(folder, { recursive: true }));

  async function plantAll(to: string): Promise<void> {
    const colours = path.join(folder, 'planted.icc');
    writeFileSync(colours, profileOf({ ...DISPLAY_P3, name: `${WORD} profile` }));
    const thumbnail = path.join(folder, 'thumbnail.jpg');
    await sharp({ create: { width: 32, height: 24, channels: 3, background: '#345678' } })
      .jpeg()
      .toFile(thumbnail);
    for (const [i, name] of NAMES.entries()) {
      const file = path.join(to, name);
      // Each a picture of its own, so that each has its own output.
      const plain = sharp(await photoWithSecrets(`scene ${'i'.repeat(i)}`)).withIccProfile(colours);
      if (name.endsWith('.heic')) {
        const png = path.join(folder, 'three.png');
        await plain.png().toFile(png);
        heifEnc(file, [png]);
      } else await plain.toFile(file);
      const words = [...PLANTED];
      if (name.endsWith('.jpg')) words.push(...IN_A_JPEG, `-ThumbnailImage<=${thumbnail}`);
      if (name.endsWith('.png')) words.push(...IN_A_PNG);
      run('exiftool', '-q', '-q', '-m', '-n', '-overwrite_original', ...words, file);
      if (name.endsWith('.jpg')) writeFileSync(file, withMakersNote(readFileSync(file)));
    }
  }

  const foundIn = (files: readonly string[]): string[] =>
    everyTag(files).flatMap((tags) => beside(tags).map((tag) => `${tags.SourceFile}: ${tag}`));

  it('begins with originals that tell everything: the check can fail', () => {
    const tags = everyTag(NAMES.map((name) => path.join(house.photos, name)));
    for (const one of tags) {
      expect(one['GPS:GPSLatitude'], one.SourceFile).toBeCloseTo(39.123437, 5);
      expect(one['ICC_Profile:ProfileDescription'], one.SourceFile).toBe(`${WORD} profile`);
      expect(beside(one).length, one.SourceFile).toBeGreaterThan(20);
    }
    for (const kind of KINDS)
      expect(
        tags.some((one) => Object.entries(one).some(([name, value]) => kind.test(`${name}=${value}`))),
        String(kind),
      ).toBe(true);
    for (const bytes of originals.values()) expect(textsIn(bytes, [WORD])).toEqual([WORD]);
  });

  it.each(EDITION_NAMES)('gives away nothing but the pictures: %s', (edition) => {
    const out = path.join(house.out, edition);
    const files = filesBelow(out).filter((name) => !name.startsWith('originals/'));
    const pictures = files.filter(isPicture).map((name) => path.join(out, name));
    expect(foundIn(pictures)).toEqual([]);
    expect(foundIn(takenOut(out, folder))).toEqual([]);
    for (const name of files) expect(textsIn(readFileSync(path.join(out, name)), [WORD]), name).toEqual([]);
    // The agent's pages show a few, those on care none.
    if (edition === 'buyer' || edition === 'file')
      expect(pictures.length).toBeGreaterThanOrEqual(2 * NAMES.length);
  });

  it('keeps the originals in the house file, byte for byte, and in no other', () => {
    const kept = path.join(house.out, 'file', 'originals');
    expect(readdirSync(kept).sort()).toEqual([...NAMES].sort());
    for (const [name, bytes] of originals)
      expect(readFileSync(path.join(kept, name)).equals(bytes), name).toBe(true);
    for (const edition of EDITION_NAMES.filter((name) => name !== 'file'))
      expect(filesBelow(path.join(house.out, edition)).filter((name) => name.includes('originals'))).toEqual(
        [],
      );
  });
});
