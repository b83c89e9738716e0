/**
 * Reads the published tables in `tables/`. Takes a table's name and the shape it must have, gives its contents,
 * never changes or fills in anything. The tables ship with the program, so a table that can't be read is our
 * mistake and throws; nothing here depends on a house.
 */
import { existsSync, readFileSync } from 'node:fs';
import { CORE_SCHEMA, load } from 'js-yaml';
import { z } from 'zod';

/** Tables already read, each with the shape it was checked against. */
const known = new Map<string, { shape: z.ZodType; value: unknown }>();

/**
 * The table `tables/<name>.yaml`, checked against `shape` and frozen, so that no reader can alter it for others.
 * A table is read once for a shape.
 *
 * Throws an Error that names the file when it is missing, isn't YAML or doesn't have the shape.
 */
export function readTable<T>(name: string, shape: z.ZodType<T>): T {
  const earlier = known.get(name);
  if (earlier?.shape === shape) return earlier.value as T;
  const value = freeze(madeTable<T>(name) ?? parseTable(`tables/${name}.yaml`, readText(name), shape));
  known.set(name, { shape, value });
  return value;
}

/** Whether the program has a table of that name. */
export const hasTable = (name: string): boolean =>
  existsSync(new URL(`./tables/${name}.yaml`, import.meta.url)) || madeTable(name) !== undefined;

/**
 * What was made of a table when the program was built: the same contents, already checked, in a form that is read in no
 * time. Undefined where the program runs from its source: there the YAML itself is read. Only YAML is written by hand.
 *
 * @param folder where the build puts them (`tests/tools/make-tables.mjs`)
 */
export function madeTable<T>(
  name: string,
  folder = new URL('./tables/made/', import.meta.url),
): T | undefined {
  const file = new URL(`${name}.json`, folder);
  return existsSync(file) ? (JSON.parse(readFileSync(file, 'utf8')) as T) : undefined;
}

/** The tables read so far, by name: what the build lays down beside the program. @internal */
export const tablesRead = (): ReadonlyMap<string, unknown> =>
  new Map([...known].map(([name, { value }]) => [name, value]));

/**
 * A table's text, checked. Dates stay text (YAML 1.2 core). Throws an Error that names `file`; that is split off
 * from `readTable` so that the messages can be tested without a broken table beside the good ones.
 */
export function parseTable<T>(file: string, text: string, shape: z.ZodType<T>): T {
  let raw: unknown;
  try {
    raw = load(text, { filename: file, schema: CORE_SCHEMA });
  } catch (error) {
    throw new Error(`${file} is not YAML that can be read: ${(error as Error).message}`, { cause: error });
  }
  const checked = shape.safeParse(raw);
  if (!checked.success)
    throw new Error(`${file} does not have its shape:\n${z.prettifyError(checked.error)}`);
  return checked.data;
}

/** An entry that another part of the same table names. Throws an Error that names both where there is none. */
export function entryOf<T>(entries: Readonly<Record<string, T>>, name: string, table: string): T {
  const entry = Object.hasOwn(entries, name) ? entries[name] : undefined;
  if (entry === undefined) throw new Error(`tables/${table}.yaml names “${name}”, which it lacks`);
  return entry;
}

function readText(name: string): string {
  try {
    return readFileSync(new URL(`./tables/${name}.yaml`, import.meta.url), 'utf8');
  } catch (error) {
    throw new Error(`tables/${name}.yaml is missing from the program`, { cause: error });
  }
}

function freeze<T>(value: T): T {
  if (typeof value === 'object' && value !== null && !Object.isFrozen(value)) {
    Object.freeze(value);
    for (const inner of Object.values(value)) freeze(inner);
  }
  return value;
}
