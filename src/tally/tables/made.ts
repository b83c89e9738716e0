import { existsSync, readFileSync } from 'node:fs';

/**
 * What was made of a table when the program was built: the same contents, already checked, in a form that is read in no
 * time. Undefined where the program runs from its source: there the YAML itself is read. Only YAML is written by hand.
 *
 * @param folder where the build puts them (`tests/tools/make-tables.mjs`)
 */
export function madeTable<T>(name: string, folder = new URL('./made/', import.meta.url)): T | undefined {
  const file = new URL(`${name}.json`, folder);
  return existsSync(file) ? (JSON.parse(readFileSync(file, 'utf8')) as T) : undefined;
}
