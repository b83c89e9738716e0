/**
 * The files that lie beside the pages: a style sheet, the fonts with their licences, the photos shown with a style
 * sheet of their own, where there is a pair of photos the script that lays one over the other, and the search box.
 */
import { fileURLToPath } from 'node:url';
import type { Packet, Picture, Pictures, StoredFile } from '../packet/packet.js';
import { shownBlocks } from './links.js';
import { FRAMES_PATH, framesCss } from './photo-frames.js';
import { PAIR_SCRIPT_PATH, photoPath } from './photo-view.js';
import {
  hasSearch,
  SEARCH_DATA_PATH,
  SEARCH_ENGINE_PATH,
  SEARCH_SCRIPT_PATH,
  searchDataScript,
} from './search-data.js';

/** The folders hold for `src/web` and for `dist/web` alike. */
const FONTS = new URL('../../dist/fonts/', import.meta.url);
const SCRIPTS = new URL('../../dist/browser/', import.meta.url);
const TEMPLATES = new URL('../../templates/', import.meta.url);

const FONT_FILES = [
  'SourceSerif4-Regular.woff2',
  'SourceSerif4-It.woff2',
  'SourceSerif4-Semibold.woff2',
  'SourceSans3-Regular.woff2',
  'SourceSans3-It.woff2',
  'SourceSans3-Semibold.woff2',
  'OFL-SourceSerif4.txt',
  'OFL-SourceSans3.txt',
];

/** Folder with the templates, as a path. */
export const templatesFolder = fileURLToPath(TEMPLATES);

/** A file to be put into the edition's folder: as it lies elsewhere, or with this text. */
export type Asset =
  | { readonly path: string; readonly copyOf: string }
  | { readonly path: string; readonly text: string };

/** Everything an edition's pages ask for, photos only as far as the packet shows them. */
export function assetsOf(packet: Packet, pictures: Pictures): Asset[] {
  const files: Asset[] = [
    { path: 'assets/style.css', copyOf: fileURLToPath(new URL('assets/style.css', TEMPLATES)) },
  ];
  for (const name of FONT_FILES)
    files.push({ path: `assets/fonts/${name}`, copyOf: fileURLToPath(new URL(name, FONTS)) });
  return [...files, ...searchAssets(packet), ...photoAssets(packet, pictures)];
}

function searchAssets(packet: Packet): Asset[] {
  if (!hasSearch(packet)) return [];
  const script = (path: string, name: string): Asset => ({
    path,
    copyOf: fileURLToPath(new URL(name, SCRIPTS)),
  });
  return [
    script(SEARCH_SCRIPT_PATH, 'search.js'),
    script(SEARCH_ENGINE_PATH, 'search-engine.js'),
    { path: SEARCH_DATA_PATH, text: searchDataScript(packet) },
  ];
}

function photoAssets(packet: Packet, pictures: Pictures): Asset[] {
  const shown = packet.photos.flatMap(({ id }) => pictures.get(id) ?? []);
  if (shown.length === 0) return [];
  const files = new Map<string, Asset>();
  for (const { name, file } of shown.flatMap(filesOf)) {
    // Named by content: two photos may be the same file.
    files.set(name, { path: photoPath(name), copyOf: file });
  }
  const cuts = packet.sections
    .flatMap(shownBlocks)
    .flatMap((block) => (block.kind === 'pair' ? [block.aspect] : []));
  const scripts: Asset[] =
    cuts.length === 0 ? [] : [{ path: PAIR_SCRIPT_PATH, copyOf: fileURLToPath(new URL('pair.js', SCRIPTS)) }];
  return [{ path: FRAMES_PATH, text: framesCss(shown, cuts) }, ...files.values(), ...scripts];
}

function filesOf(picture: Picture): StoredFile[] {
  return picture.sizes.flatMap((size) => [size.jpeg, size.avif]);
}
