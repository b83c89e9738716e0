/** The houses whose folders are changed: the demos, and the small golden ones, which are read in a twentieth of the time. */
import { cpSync, existsSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const at = (/** @type {string} */ place) => fileURLToPath(new URL(place, import.meta.url));

/**
 * @typedef {{ readonly file: string, readonly bytes: Buffer }} Source
 * @typedef {{ readonly name: string, readonly folder: string, readonly texts: Source[], readonly pictures: Source[] }} MutantHouse
 */

/**
 * Copies every house below `scratch`.
 *
 * @param {string} scratch
 * @returns {{ demos: MutantHouse[], small: MutantHouse[] }}
 */
export function copyHouses(scratch) {
  const below = (/** @type {string} */ place, /** @type {string} */ inside) =>
    readdirSync(at(place), { withFileTypes: true })
      .filter((entry) => entry.isDirectory())
      .map(({ name }) => copy(name, path.join(at(place), name, inside), path.join(scratch, name)));
  return { demos: below('../../content', ''), small: below('../houses', 'input') };
}

/** @param {string} name @param {string} from @param {string} folder @returns {MutantHouse} */
function copy(name, from, folder) {
  rmSync(folder, { recursive: true, force: true });
  cpSync(from, folder, { recursive: true });
  const files = (/** @type {string} */ inside, /** @type {RegExp} */ ends) =>
    existsSync(path.join(folder, inside))
      ? readdirSync(path.join(folder, inside), { withFileTypes: true })
          .filter((entry) => entry.isFile() && ends.test(entry.name))
          .map((entry) => path.join(inside, entry.name))
          .sort()
          .map((file) => ({ file, bytes: readFileSync(path.join(folder, file)) }))
      : [];
  return {
    name,
    folder,
    texts: files('', /\.(ya?ml|csv|txt)$/i),
    pictures: [...files('photos', /./), ...files('documents', /./)],
  };
}
