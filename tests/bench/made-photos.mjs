/** Photos for made houses: what the facts say of them, and files of which no two are the same bytes. */
import { readdir } from 'node:fs/promises';
import path from 'node:path';
import { dump, load } from 'js-yaml';
import sharp from 'sharp';

/** @param {number} index */
export const photoId = (index) => `IMG_${String(1000 + index * 7)}`;

/**
 * A made house's facts with photos: the first pieces of work have one before and one after each.
 *
 * @param {string} text of `house.yaml`
 * @param {number} count an even number, no more than two for each piece of work
 */
export function withPhotos(text, count) {
  const facts = /** @type {{ work: { what: string, where: string[], photos?: unknown }[] }} */ (load(text));
  /** @type {Record<string, unknown>} */
  const photos = {};
  for (const [index, work] of facts.work.slice(0, count / 2).entries()) {
    const [before, after] = [photoId(2 * index), photoId(2 * index + 1)];
    work.photos = { before, after };
    for (const [id, when, taken] of [
      [before, 'before', '2026-02-21'],
      [after, 'after', '2026-06-12'],
    ])
      photos[id ?? ''] = {
        shows: work.what,
        when,
        where: work.where[0],
        taken,
        alt: `The ${work.what}, ${when} the work, seen from the door.`,
      };
  }
  return dump({ ...facts, photos }, { lineWidth: 120, noRefs: true });
}

/**
 * The JPEG files of some folders, in the order of their names.
 *
 * @param {readonly string[]} folders
 */
export async function scenesIn(folders) {
  const lists = await Promise.all(
    folders.map(async (folder) =>
      (await readdir(folder)).filter((name) => /\.jpg$/i.test(name)).map((name) => path.join(folder, name)),
    ),
  );
  return lists.flat().sort();
}

/**
 * Scenes in a small size, as JPEG.
 *
 * @param {readonly string[]} scenes
 * @param {{ width: number, height: number }} size
 */
export const smallScenes = (scenes, { width, height }) =>
  Promise.all(
    scenes.map((scene) =>
      sharp(scene).autoOrient().resize(width, height, { fit: 'cover' }).jpeg({ quality: 85 }).toBuffer(),
    ),
  );

/**
 * The same picture as another file: a comment (JPEG’s marker COM, ITU-T T.81, B.2.4.5) behind its first marker. Every
 * photo is then made ready on its own, as if it had been taken on its own.
 *
 * @param {Buffer} jpeg
 * @param {string} comment
 */
export function numbered(jpeg, comment) {
  const text = Buffer.from(comment);
  const head = Buffer.from([0xff, 0xfe, 0, 0]);
  head.writeUInt16BE(text.length + 2, 2);
  return Buffer.concat([jpeg.subarray(0, 2), head, text, jpeg.subarray(2)]);
}
