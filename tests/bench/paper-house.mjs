/** The house of the paper timings: a made one with thirty photos as a phone takes them, for a packet of about 25 pages. */
import { mkdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import sharp from 'sharp';
import { madeHouse } from './made-houses.mjs';
import { photoId, scenesIn, withPhotos } from './made-photos.mjs';

/** How many photos: two for each piece of work. */
export const PHOTOS = 30;

/** As a phone takes them, and a size with which making them ready stays quick. */
const SIZE = { width: 2016, height: 1512 };

/** Strength of the grain that makes a print of 1200 pixels about 170 KB, as a phone's are; a drawn scene has none. */
const GRAIN = 10;

/**
 * Writes one house with its photos. The same scenes give the same house.
 * @param {string} folder to be made
 * @param {readonly string[]} scenes folders with photos to cut these from
 */
export async function writePaperHouse(folder, scenes) {
  const photos = path.join(folder, 'photos');
  await mkdir(photos, { recursive: true });
  for (const [file, text] of Object.entries(madeHouse(1)))
    await writeFile(path.join(folder, file), file === 'house.yaml' ? withPhotos(text, PHOTOS) : text);
  const from = await scenesIn(scenes);
  const grain = grainOf(SIZE.width * SIZE.height);
  for (let index = 0; index < PHOTOS; index += 1)
    await writeFile(
      path.join(photos, `${photoId(index)}.jpg`),
      await phonePhoto(from[index % from.length] ?? '', index, grain),
    );
}

/**
 * Grain like a small sensor's, the same every time: the sum of two drawn numbers about the middle.
 * @param {number} pixels
 */
function grainOf(pixels) {
  let state = 1;
  const drawn = () => {
    // A linear congruential generator, the constants of Numerical Recipes, from memory.
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
  return Float32Array.from({ length: pixels }, () => (drawn() + drawn() - 1) * GRAIN * 2);
}

/**
 * @param {string} scene
 * @param {number} index shifts the grain, so that a scene used twice makes two photos
 * @param {Float32Array} grain
 */
async function phonePhoto(scene, index, grain) {
  const { data, info } = await sharp(scene)
    .autoOrient()
    .resize(SIZE.width, SIZE.height, { fit: 'cover' })
    .removeAlpha()
    .raw()
    .toBuffer({ resolveWithObject: true });
  const { width, height } = info;
  const from = index * 9973;
  for (let pixel = 0; pixel < width * height; pixel += 1) {
    const more = grain[(pixel + from) % grain.length] ?? 0;
    for (let channel = 0; channel < 3; channel += 1) {
      const at = pixel * 3 + channel;
      data[at] = Math.min(255, Math.max(0, (data[at] ?? 0) + more));
    }
  }
  return sharp(data, { raw: { width, height, channels: 3 } })
    .jpeg({ quality: 90 })
    .toBuffer();
}
