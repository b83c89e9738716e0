/**
 * The style sheet that an edition's photos get of their own: the shape of each, and its few pixels that are seen
 * until the file is there. Pages carry no style of their own, so that they can forbid it.
 *
 * Classes are named by content, as the files are: a photo's own name tells when and with what it was taken.
 */
import type { Picture } from '../packet/packet.js';

/** Path of the style sheet inside the edition's folder. */
export const FRAMES_PATH = 'assets/photos/frames.css';

/** What a digest, as part of a class, may consist of. */
const DIGEST = /^[a-zA-Z0-9_-]+$/;

/** A data address that can stand between quotes in a style sheet. */
const TINY = /^data:image\/[a-z]+;base64,[A-Za-z0-9+/]+=*$/;

/** Class that gives `--ratio`, the picture's width over height. */
export function shapeClass(picture: Picture): string {
  return `shape-${digestOf(picture)}`;
}

/** Class of the `img` that shows the picture's few pixels behind it. */
export function tinyClass(picture: Picture): string {
  return `tiny-${digestOf(picture)}`;
}

/** Class that gives `--ratio` for a pair cut to this width over height. */
export function cutClass(ratio: number): string {
  return `cut-${String(ratio).replace('.', '-')}`;
}

/**
 * The style sheet for these pictures and cuts, each once, in this order. Throws on a picture without sizes or whose
 * names or few pixels could be read as something else in a style sheet: both are our bugs.
 */
export function framesCss(pictures: readonly Picture[], cuts: readonly number[]): string {
  const rules = new Set<string>();
  for (const picture of pictures) {
    if (!TINY.test(picture.tiny)) throw new Error('a photo’s few pixels are no data address');
    rules.add(ratioRule(shapeClass(picture), picture.width / picture.height));
    rules.add(`.${tinyClass(picture)} {\n  background-image: url("${picture.tiny}");\n}\n`);
  }
  for (const cut of cuts) rules.add(ratioRule(cutClass(cut), cut));
  return [...rules].join('');
}

function ratioRule(name: string, ratio: number): string {
  return `.${name} {\n  --ratio: ${Math.round(ratio * 1e5) / 1e5};\n}\n`;
}

/** File names are digests; that of the largest JPEG stands for the picture. */
function digestOf(picture: Picture): string {
  const name = picture.sizes.at(-1)?.jpeg.name ?? '';
  const digest = name.replace(/\.[a-z]+$/u, '');
  if (!DIGEST.test(digest)) throw new Error('a photo’s file is not named by a digest');
  return digest;
}
