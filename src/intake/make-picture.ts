/**
 * One original becomes the pictures that may be shown: upright, covered where `hide` says, in sRGB, without anything
 * that the camera wrote, in the sizes that pages and paper ask for.
 *
 * One decode serves every size, and the bytes depend on the original, `hide` and what `RECIPE` holds alone.
 * Loaded where `pictureLibrary` has a library to give, and not before.
 */
import sharp, { type Raw, type ResizeOptions, type Sharp } from 'sharp';
import { saysDisplayP3, withProfile } from './colour-profile.js';
import { COVER_RECIPE, coverOf, type Rectangle } from './cover.js';
import { type HeicPixels, heicVersion } from './decode-heic.js';
import { HUGE_LIMIT } from './look-at-photo.js';
import { digestName, type Keep, type Make } from './photo-cache.js';

/** `full`: every size that pages and paper use; `contact`: the one that a contact sheet uses. */
export type PictureUse = 'full' | 'contact';

/** Longest edge of the largest picture. */
const LARGEST = 1600;
const CONTACT = 480;
/** Widths for pages below the largest. A picture is never enlarged. */
const SMALLER_WIDTHS = [480, 960] as const;
/** Longest edge on paper: 300 dots an inch and more at every size but that of a panorama, which stays as large as it is. */
const PAPER = 1200;
const PANORAMA = 2;
/** Measured on photographs: at effort 0, AVIF is smaller and better than WebP, and quicker. */
const AVIF = { quality: 50, effort: 0, chromaSubsampling: '4:2:0' } as const;
/** Table 3 is a twentieth smaller at the same error. mozjpeg's trellis took ten times as long and only moved the quality. */
const JPEG = { quality: 78, quantisationTable: 3 } as const;
/** Longest edge of what stands in until the picture is there. */
const TINY = 8;

/** All that the bytes depend on beside the original and what is hidden. */
export const RECIPE = JSON.stringify([
  4,
  [LARGEST, CONTACT, SMALLER_WIDTHS, PAPER, PANORAMA, AVIF, JPEG, TINY],
  COVER_RECIPE,
  sharp.versions,
  heicVersion() ?? null,
]);

export interface Original {
  readonly bytes: Buffer;
  /** Decodes the bytes where they are HEIC; left out for what sharp reads itself. */
  readonly decode?: (bytes: Uint8Array) => Promise<HeicPixels>;
}

/** Throws if the original is cut short or can't be decoded. */
export async function makePicture(
  original: Original,
  hide: readonly Rectangle[],
  use: PictureUse,
  keep: Keep,
): ReturnType<Make> {
  const large = await shrunken(original, hide, use === 'full' ? LARGEST : CONTACT);
  const save = async (bytes: Buffer, ending: string): Promise<string> => {
    const name = `${digestName(bytes)}.${ending}`;
    await keep(name, bytes);
    return name;
  };
  const widths = [...SMALLER_WIDTHS.filter((each) => each < large.raw.width), large.raw.width];
  const sizes = [];
  // One after the other: side by side they are no quicker where another photo is in hand, and hold half as much again.
  for (const width of widths) {
    const picture = await shrunkTo(large, width);
    sizes.push({
      width,
      height: picture.raw.height,
      jpeg: await save(await sharpOf(picture).jpeg(JPEG).toBuffer(), 'jpg'),
      avif: await save(await sharpOf(picture).avif(AVIF).toBuffer(), 'avif'),
    });
  }
  const { width, height } = large.raw;
  const edge = Math.max(width, height) >= PANORAMA * Math.min(width, height) ? LARGEST : PAPER;
  const paper = await shrunkTo(
    large,
    Math.max(1, Math.round(width * Math.min(1, edge / Math.max(width, height)))),
  );
  const tiny = await sharpOf(large).resize(TINY, TINY, { fit: 'inside' }).png().toBuffer();
  return {
    width,
    height,
    sizes,
    tiny: `data:image/png;base64,${tiny.toString('base64')}`,
    print: {
      width: paper.raw.width,
      height: paper.raw.height,
      name: await save(await sharpOf(paper).jpeg(JPEG).toBuffer(), 'jpg'),
    },
  };
}

interface RawPicture {
  readonly data: Buffer;
  readonly raw: Raw;
}

/** The original upright, covered and in sRGB, its longest edge no longer than `edge`. */
async function shrunken(original: Original, hide: readonly Rectangle[], edge: number): Promise<RawPicture> {
  const { bytes, decode } = original;
  const inside: ResizeOptions = { width: edge, height: edge, fit: 'inside', withoutEnlargement: true };
  if (decode !== undefined) return shrunkenHeic(bytes, await decode(bytes), hide, inside);
  const opened = await openUpright(bytes);
  if (hide.length > 0) {
    // In sRGB before anything is covered, so that a cover is as dense on every kind of original.
    return rawOf(sharpOf(await covered(await rawOf(inSrgb(opened)), hide)).resize(inside));
  }
  // The colour profile is kept through the shrinking and applied to the small picture: a quarter of the work.
  const small = await opened.keepIccProfile().resize(inside).tiff({ compression: 'none' }).toBuffer();
  return rawOf(inSrgb(sharp(small)));
}

async function shrunkenHeic(
  bytes: Buffer,
  pixels: HeicPixels,
  hide: readonly Rectangle[],
  inside: ResizeOptions,
): Promise<RawPicture> {
  const whole: RawPicture = {
    data: Buffer.from(pixels.data.buffer),
    raw: { width: pixels.width, height: pixels.height, channels: 4 },
  };
  // White behind what is transparent before anything is covered: a cover takes the transparency away.
  const opaque = async () => rawOf(sharpOf(whole).flatten({ background: '#ffffff' }));
  const small = sharpOf(hide.length === 0 ? whole : await covered(await opaque(), hide))
    .resize(inside)
    .flatten({ background: '#ffffff' });
  const profile = await profileOf(bytes);
  if (profile === undefined) return rawOf(small);
  // Pixels can't be given a profile, a PNG can.
  const png = await small.png({ compressionLevel: 0 }).toBuffer();
  return rawOf(inSrgb(sharp(withProfile(png, profile))));
}

/** Upright, and with the profile it has or ought to have. */
async function openUpright(bytes: Buffer): Promise<Sharp> {
  const opened = sharp(bytes, { failOn: 'error', limitInputPixels: HUGE_LIMIT }).autoOrient();
  if (!saysDisplayP3(bytes)) return opened;
  const profile = await profileOf(bytes);
  const png = await opened.keepIccProfile().png({ compressionLevel: 0 }).toBuffer();
  const { icc } = await sharp(png, { limitInputPixels: false }).metadata();
  return sharp(icc === undefined && profile !== undefined ? withProfile(png, profile) : png, {
    limitInputPixels: HUGE_LIMIT,
  });
}

/** The profile in the file; failing that, the one that its code points name. */
async function profileOf(bytes: Buffer): Promise<Buffer | undefined> {
  const { icc } = await sharp(bytes, { limitInputPixels: false }).metadata();
  return icc ?? (saysDisplayP3(bytes) ? displayP3() : undefined);
}

let p3: Promise<Buffer | undefined> | undefined;

/** The profile of Display P3 that ships with sharp. */
function displayP3(): Promise<Buffer | undefined> {
  const dot = sharp({ create: { width: 1, height: 1, channels: 3, background: '#000000' } });
  p3 ??= dot
    .withIccProfile('p3')
    .png()
    .toBuffer()
    .then(async (png) => (await sharp(png).metadata()).icc);
  return p3;
}

const sharpOf = ({ data, raw }: RawPicture): Sharp => sharp(data, { raw, limitInputPixels: HUGE_LIMIT });

const shrunkTo = async (picture: RawPicture, width: number): Promise<RawPicture> =>
  width === picture.raw.width ? picture : rawOf(sharpOf(picture).resize(width));

const inSrgb = (picture: Sharp): Sharp =>
  picture.flatten({ background: '#ffffff' }).toColourspace('srgb').removeAlpha();

async function rawOf(picture: Sharp): Promise<RawPicture> {
  const { data, info } = await picture.removeAlpha().raw().toBuffer({ resolveWithObject: true });
  return { data, raw: { width: info.width, height: info.height, channels: info.channels as 3 } };
}

/** One after the other, so that no more than one cover and two pictures are held. */
async function covered(picture: RawPicture, hide: readonly Rectangle[]): Promise<RawPicture> {
  let result = picture;
  for (const rectangle of hide)
    result = await rawOf(sharpOf(result).composite([coverOf(rectangle, result.raw)]));
  return result;
}
