/** A small house that is there for its photos, built in all editions by the program itself. */
import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { buildHouse, EDITION_NAMES } from '../../src/build.js';
import type { Located } from '../../src/diagnostics/report.js';
import type { HouseSpec } from '../../src/facts/house.js';

const PHOTO_HOUSE = 'photo-house';

export interface BuiltPhotoHouse {
  /** Holds one folder for each edition. */
  readonly out: string;
  readonly photos: string;
  readonly located: readonly Located[];
}

/** `put` fills the folder of photos. Throws, and so fails the test, if an edition can't be made. */
export async function buildPhotoHouse(
  root: string,
  photos: NonNullable<HouseSpec['photos']>,
  put: (folder: string) => Promise<void> | void,
): Promise<BuiltPhotoHouse> {
  const folder = path.join(root, 'content', PHOTO_HOUSE);
  const photosFolder = path.join(folder, 'photos');
  mkdirSync(photosFolder, { recursive: true });
  await put(photosFolder);
  const spec: HouseSpec = {
    house: {
      name: 'Photo House',
      address: { city: 'Fallow Mills', state: 'OH' },
      kind: 'detached',
      built: 1948,
    },
    levels: [{ id: 'main', name: 'Main level', grade: 'above' }],
    rooms: [{ id: 'kitchen', level: 'main', use: 'kitchen', size: "10' x 12'" }],
    photos,
  };
  writeFileSync(path.join(folder, 'house.yaml'), JSON.stringify(spec, null, 1));
  const { located, made } = await buildHouse({
    folder,
    shown: `content/${PHOTO_HOUSE}`,
    asOf: '2026-06-30',
    editions: EDITION_NAMES,
    out: path.join(root, 'out'),
    outShown: 'out',
    paper: 'letter',
  });
  if (made.length !== EDITION_NAMES.length)
    throw new Error(located.map(({ diagnostic }) => diagnostic.message).join('\n'));
  return { out: path.join(root, 'out', PHOTO_HOUSE), photos: photosFolder, located };
}
