/** The files that lie beside the pages: one style sheet, the fonts with their licences, the photos shown. */
import { fileURLToPath } from 'node:url';
import type { Packet, Pictures } from '../packet/packet.js';
import { photoPath } from './photo-view.js';

/** The folders hold for `src/web` and for `dist/web` alike. */
const FONTS = new URL('../../dist/fonts/', import.meta.url);
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

/** A file to be copied into the edition's folder as it is. */
export interface Asset {
  readonly path: string;
  readonly copyOf: string;
}

/** Everything an edition's pages ask for, photos only as far as the packet shows them. */
export function assetsOf(packet: Packet, pictures: Pictures): Asset[] {
  const files: Asset[] = [
    { path: 'assets/style.css', copyOf: fileURLToPath(new URL('assets/style.css', TEMPLATES)) },
  ];
  for (const name of FONT_FILES)
    files.push({ path: `assets/fonts/${name}`, copyOf: fileURLToPath(new URL(name, FONTS)) });
  const named = new Set<string>();
  for (const photo of packet.photos) {
    for (const size of pictures.get(photo.id)?.sizes ?? []) {
      // Named by content: two photos may be the same file.
      if (!named.has(size.name)) files.push({ path: photoPath(size.name), copyOf: size.file });
      named.add(size.name);
    }
  }
  return files;
}
