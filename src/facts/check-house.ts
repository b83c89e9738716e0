/**
 * From what YAML gave to a checked `House`.
 *
 * A fact that fails its check is unknown from there on: it is cut away and the rest is checked again, so that
 * every later room can still speak. Lists lose the failed items, and `writtenPath` says where an item of
 * the checked house stands in what was written.
 */
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import type { FactPath } from '../diagnostics/fact-path.js';
import { explainIssue, valueAt, type Written } from './explain-issue.js';
import { type House, houseSchema } from './house.js';

export interface CheckedHouse {
  /** Undefined only if nothing of use was written. */
  readonly house: House | undefined;
  readonly diagnostics: readonly Diagnostic[];
  /** Path of a checked value → path in what was written. */
  readonly writtenPath: (path: FactPath) => FactPath;
}

/** Stands in for what `house:` lacks, so that the rest can be checked. Never printed: an error stands when it is used. */
const STAND_IN = {
  name: 'House',
  address: { city: 'not given', state: 'XX' },
  kind: 'detached',
  built: 'not known',
} as const;

const ROUNDS = 12;

export function checkHouse(spec: unknown, written: Written = () => undefined): CheckedHouse {
  const origins = new WeakMap<readonly unknown[], number[]>();
  const raw = copyOf(spec, origins) as Record<string, unknown>;
  const diagnostics: Diagnostic[] = [];
  /** Paths of words that stand there misspelt, as JSON. */
  const misspelt = new Set<string>();
  const writtenPath = (path: FactPath): FactPath => originOf(path, raw, origins);

  for (let round = 0; round < ROUNDS; round++) {
    const parsed = houseSchema.safeParse(raw);
    if (parsed.success) return { house: parsed.data, diagnostics, writtenPath };
    const explained = parsed.error.issues.flatMap((issue) =>
      explainIssue(issue, raw, (path) => written(writtenPath(path))),
    );
    // Paths are translated before anything is cut: cutting moves the positions.
    const found = explained.map(({ diagnostic, cut, absent, meant }) => ({
      meant: meant && writtenPath(meant),
      diagnostic: { ...diagnostic, path: writtenPath(diagnostic.path ?? []) },
      cut,
      absent,
    }));
    // What a stand-in or an earlier cut brings up again has been said; so has what another finding explains better.
    const said = new Set(diagnostics.map(pathOf));
    for (const { meant } of found) if (meant !== undefined) misspelt.add(JSON.stringify(meant));
    for (const { diagnostic } of bestFirst(found)) {
      if (said.has(pathOf(diagnostic))) continue;
      if (diagnostic.code === 'facts.missing' && misspelt.has(pathOf(diagnostic))) continue;
      said.add(pathOf(diagnostic));
      diagnostics.push(diagnostic);
    }
    const cuts = found.map(({ cut, absent }) => (absent ? holderOf(cut) : cut));
    let changed = false;
    for (const path of deepestLast(cuts)) if (cutAway(raw, path, origins)) changed = true;
    if (fillHouse(raw)) changed = true;
    // The same words would fail in the same way again.
    if (!changed) break;
  }
  return { house: undefined, diagnostics, writtenPath };
}

const pathOf = (diagnostic: Diagnostic): string => JSON.stringify(diagnostic.path);

/** A value that a comma cut in two can't be read either; the comma is the cause. */
const bestFirst = <T extends { readonly diagnostic: Diagnostic }>(found: readonly T[]): T[] =>
  [...found].sort(
    (a, b) => Number(b.diagnostic.code === 'facts.quotes') - Number(a.diagnostic.code === 'facts.quotes'),
  );

/**
 * The nearest thing that can go as a whole: a list item, a named entry, a word of the house, a top-level word. What
 * the address lacks is filled in, so the rest of it stays.
 */
function holderOf(path: FactPath): FactPath {
  if (path[0] === 'house') return path[1] === 'address' ? path : path.slice(0, 2);
  for (let depth = path.length - 1; depth > 1; depth--) {
    if (typeof path[depth - 1] === 'number') return path.slice(0, depth);
  }
  return path.slice(0, path[0] === 'photos' ? 2 : 1);
}

/** Items of one list are cut from its end, so that positions stay right while cutting. */
function deepestLast(paths: FactPath[]): FactPath[] {
  const unique = new Map(paths.map((path) => [JSON.stringify(path), path]));
  return [...unique.values()].sort((a, b) => {
    for (let i = 0; i < Math.min(a.length, b.length); i++) {
      const [x, y] = [a[i], b[i]];
      if (x === y) continue;
      return typeof x === 'number' && typeof y === 'number' ? y - x : String(x) < String(y) ? -1 : 1;
    }
    return b.length - a.length;
  });
}

/** Says whether there was anything to cut. */
function cutAway(raw: unknown, path: FactPath, origins: WeakMap<readonly unknown[], number[]>): boolean {
  const parent = valueAt(raw, path.slice(0, -1));
  const last = path.at(-1);
  if (last === undefined || typeof parent !== 'object' || parent === null) return false;
  if (Array.isArray(parent) && typeof last === 'number') {
    if (last >= parent.length) return false;
    parent.splice(last, 1);
    origins.get(parent)?.splice(last, 1);
    return true;
  }
  if (!Object.hasOwn(parent, last)) return false;
  delete (parent as Record<string, unknown>)[String(last)];
  return true;
}

/** Says whether there was anything to fill. */
function fillHouse(raw: Record<string, unknown>): boolean {
  const isGroup = typeof raw.house === 'object' && raw.house !== null && !Array.isArray(raw.house);
  if (!isGroup) raw.house = {};
  const house = raw.house as Record<string, unknown>;
  const filled = fillIn(house, STAND_IN);
  const { address } = house;
  const inAddress =
    typeof address === 'object' &&
    address !== null &&
    fillIn(address as Record<string, unknown>, STAND_IN.address);
  return !isGroup || filled || inAddress;
}

function fillIn(group: Record<string, unknown>, standIn: Readonly<Record<string, unknown>>): boolean {
  const absent = Object.entries(standIn).filter(([word]) => group[word] === undefined);
  for (const [word, value] of absent) group[word] = structuredClone(value);
  return absent.length > 0;
}

function copyOf(value: unknown, origins: WeakMap<readonly unknown[], number[]>): unknown {
  if (Array.isArray(value)) {
    const copy = value.map((item) => copyOf(item, origins));
    origins.set(
      copy,
      copy.map((_, index) => index),
    );
    return copy;
  }
  if (typeof value === 'object' && value !== null) {
    return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, copyOf(inner, origins)]));
  }
  return value;
}

function originOf(path: FactPath, raw: unknown, origins: WeakMap<readonly unknown[], number[]>): FactPath {
  let value = raw;
  return path.map((part) => {
    const own =
      Array.isArray(value) && typeof part === 'number' ? (origins.get(value)?.[part] ?? part) : part;
    value = valueAt(value, [part]);
    return own;
  });
}
