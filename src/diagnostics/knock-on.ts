/**
 * Where a fact could not be read, whatever rests on it says something wrong as well. Those are kept back: one
 * cause is said once, and what remains is said when the cause is mended.
 */
import type { Code } from './codes.js';
import type { Diagnostic } from './diagnostic.js';
import type { FactPath } from './fact-path.js';

/** Findings about the house as a whole, and the top-level words they are drawn from. */
const RESTS_ON: Partial<Record<Code, readonly string[]>> = {
  'tally.record-differs': ['house', 'levels', 'rooms', 'structures', 'record'],
  'tally.method': ['house', 'levels', 'rooms', 'measured'],
  'tally.level-size': ['levels', 'rooms'],
  'tally.level-split': ['levels'],
  'tally.half-rule': ['levels', 'rooms'],
  'tally.lead': ['house', 'rooms', 'work', 'lead', 'people'],
  'tally.duty': ['house', 'duties', 'permits', 'work', 'lead', 'people'],
  'intake.unused-photo': ['photos'],
  // A row that could not be read is in no sum.
  'tally.receipt-total': ['costs', 'documents'],
  'tally.unused-receipt': ['costs', 'documents'],
  'tally.negative': ['costs'],
  'tally.payee': ['costs', 'people', 'money'],
  'tally.miles': ['miles', 'money'],
  'tally.role': ['money'],
};

/**
 * `derived` without what follows from `errors`, which are those of reading it was derived from, and without
 * what follows from an error of its own.
 */
export function withoutKnockOns(derived: readonly Diagnostic[], errors: readonly Diagnostic[]): Diagnostic[] {
  const causes = errors.filter(isError);
  // A file that could not be read at all may have held anything.
  if (causes.some(unreadFile)) return [];
  // What was cut away for its own error must not be called a gap as well.
  const follows = followersOf(causes);
  const fresh =
    causes.length === 0 ? derived : derived.filter((one) => one.code !== 'tally.gap' && !follows(one));
  const followsOwn = followersOf(fresh.filter(isError));
  // Lead rules ask who, when and how much, never for a shape that fits.
  return fresh.filter((one) => isError(one) || one.code === 'tally.lead' || !followsOwn(one));
}

const isError = (one: Diagnostic): boolean => one.severity === 'error';

/** Whether a finding follows from one of `causes`. A sheet can have many thousands of either, so none is compared with each other. */
function followersOf(causes: readonly Diagnostic[]): (one: Diagnostic) => boolean {
  const tops = new Set<FactPath[number] | undefined>();
  const paths = new Set<string>();
  const above = new Set<string>();
  for (const { path } of causes) {
    if (path === undefined) continue;
    tops.add(path[0]);
    paths.add(JSON.stringify(path));
    for (const prefix of prefixesOf(path)) above.add(prefix);
  }
  // One of the two paths begins with the other.
  const meets = (path: FactPath | undefined): boolean =>
    path !== undefined &&
    (above.has(JSON.stringify(path)) || prefixesOf(path).some((prefix) => paths.has(prefix)));
  return ({ code, path, beside }) =>
    RESTS_ON[code]?.some((word) => tops.has(word)) === true || meets(path) || meets(beside);
}

/** The path itself and all that it stands below. */
const prefixesOf = (path: FactPath): string[] =>
  Array.from({ length: path.length + 1 }, (_, length) => JSON.stringify(path.slice(0, length)));

const unreadFile = (one: Diagnostic): boolean => one.path === undefined && one.code.startsWith('intake.');
