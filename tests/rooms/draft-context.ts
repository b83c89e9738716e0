/** The context of the agent edition that a draft of listing remarks is written from: of a demo house, or of a made one. */
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import type { House } from '../../src/facts/house.js';
import { readHouse } from '../../src/intake/read-house.js';
import { type Context, contextFor } from '../../src/packet/context.js';
import { houseFor } from '../../src/packet/edition-house.js';
import { deriveTally } from '../../src/tally/tally.js';

const content = fileURLToPath(new URL('../../content/', import.meta.url));

/** `asOf`: YYYY-MM-DD. Photos are taken to lie in the folder. */
export function draftContext(house: House, asOf: string): Context {
  const { tally } = deriveTally(house, asOf);
  const photos = new Map(
    Object.keys(house.photos).map((id) => [
      id,
      { id, width: 4, height: 3, takenAt: undefined, name: `${id}.jpg`, content: id },
    ]),
  );
  return contextFor('house', house, houseFor(house, 'agent', asOf), tally, 'agent', photos, [], new Map());
}

/** Of a folder below content/. Fails the test where it can't be read. */
export const demoContext = (name: string): Promise<Context> => folderContext(path.join(content, name));

export async function folderContext(folder: string): Promise<Context> {
  const { found } = await readHouse(folder, path.basename(folder));
  if (found === undefined) throw new Error(`${folder} can't be read`);
  return draftContext(found.house, '2026-11-20');
}
