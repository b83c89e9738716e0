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
  'intake.unused-photo': ['photos'],
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
  const fresh =
    causes.length === 0
      ? derived
      : derived.filter((one) => one.code !== 'tally.gap' && !follows(one, causes));
  const own = fresh.filter(isError);
  // Lead rules ask who, when and how much, never for a shape that fits.
  return fresh.filter((one) => isError(one) || one.code === 'tally.lead' || !follows(one, own));
}

const isError = (one: Diagnostic): boolean => one.severity === 'error';

function follows(one: Diagnostic, causes: readonly Diagnostic[]): boolean {
  const paths = causes.flatMap((cause) => (cause.path === undefined ? [] : [cause.path]));
  if (RESTS_ON[one.code]?.some((word) => paths.some((path) => path[0] === word))) return true;
  const { path } = one;
  return path !== undefined && paths.some((cause) => isAboveOrBelow(cause, path));
}

const unreadFile = (one: Diagnostic): boolean => one.path === undefined && one.code.startsWith('intake.');

/** Two paths of which one begins with the other. */
function isAboveOrBelow(a: FactPath, b: FactPath): boolean {
  const shorter = Math.min(a.length, b.length);
  return a.slice(0, shorter).every((part, index) => part === b[index]);
}
