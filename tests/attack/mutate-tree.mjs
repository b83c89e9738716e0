/**
 * Changes what a YAML file says rather than how it is written: one to four places of its tree hold something else, are
 * left out, stand twice, or hold what stands elsewhere. Byte changes seldom get past the parser; these always do.
 */
import fc from 'fast-check';
import { dump, load } from 'js-yaml';
import { PIECES } from './hostile-pieces.mjs';

/** Whatever YAML can hold: also keys of prototypes, numbers without end, and deep nests. */
const ANYTHING = fc.oneof(
  { weight: 4, arbitrary: fc.constantFrom(...PIECES) },
  { weight: 2, arbitrary: fc.string({ unit: 'binary', maxLength: 200 }) },
  { weight: 2, arbitrary: fc.oneof(fc.double(), fc.integer(), fc.constantFrom(-1, 0, 1, 1e21, 2 ** 53)) },
  {
    weight: 1,
    arbitrary: fc.constantFrom(null, true, false, [], {}, '', 'not known', '2026-02-30', '9999-12-31'),
  },
  {
    weight: 2,
    arbitrary: fc.anything({
      key: fc.oneof(fc.constantFrom('__proto__', 'constructor', 'is', 'id', 'toString'), fc.string()),
      maxDepth: 3,
      maxKeys: 4,
    }),
  },
  { weight: 1, arbitrary: fc.integer({ min: 2, max: 120 }).map((depth) => nest(depth)) },
);

/** @param {number} depth @returns {unknown} */
const nest = (depth) =>
  depth === 0 ? 'deep' : depth % 2 === 0 ? [nest(depth - 1)] : { in: nest(depth - 1) };

/**
 * @param {Buffer} bytes of a YAML file
 * @param {() => number} random
 * @returns {Buffer}
 */
export function mutateTree(bytes, random) {
  const tree = { root: load(bytes.toString('utf8')) };
  const times = 1 + Math.floor(random() * 4);
  const seed = Math.floor(random() * 2 ** 31);
  for (const put of fc.sample(ANYTHING, { seed, numRuns: times })) {
    const places = placesIn(tree);
    const place = places[Math.floor(random() * places.length)];
    const other = places[Math.floor(random() * places.length)];
    if (place === undefined || other === undefined) continue;
    const { holder, key } = place;
    const kind = random();
    if (kind < 0.6) holder[key] = put;
    else if (kind < 0.75) {
      if (Array.isArray(holder)) holder.splice(Number(key), 1);
      else delete holder[key];
    } else if (kind < 0.85 && Array.isArray(holder)) holder.push(structuredClone(holder[Number(key)]));
    else holder[key] = structuredClone(other.holder[other.key]);
  }
  return Buffer.from(dump(plain(tree.root), { lineWidth: 120, noRefs: true, skipInvalid: true }));
}

/** @typedef {{ readonly holder: Record<string, unknown>, readonly key: string }} Place */

/** @param {Record<string, unknown>} holder @returns {Place[]} */
function placesIn(holder) {
  return Object.keys(holder).flatMap((key) => {
    const value = holder[key];
    const below =
      typeof value === 'object' && value !== null
        ? placesIn(/** @type {Record<string, unknown>} */ (value))
        : [];
    return [{ holder, key }, ...below];
  });
}

/** What YAML can write: maps and sets, which fast-check makes too, become lists. @param {unknown} value @returns {unknown} */
function plain(value) {
  if (Array.isArray(value)) return value.map(plain);
  if (value instanceof Map || value instanceof Set) return [...value].map(plain);
  if (typeof value === 'bigint' || typeof value === 'symbol' || typeof value === 'function')
    return String(value);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, plain(one)]));
}
