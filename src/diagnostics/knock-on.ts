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

/** `derived` without what follows from `errors`: errors of reading, for what was worked out from what was read. */
export function withoutKnockOns(derived: readonly Diagnostic[], errors: readonly Diagnostic[]): Diagnostic[] {
  const causes = errors.filter((one) => one.severity === 'error');
  if (causes.length === 0) return [...derived];
  // A file that could not be read at all may have held anything.
  if (causes.some(unreadFile)) return derived.filter((one) => one.place !== undefined);
  const paths = causes.flatMap((one) => (one.path === undefined ? [] : [one.path]));
  const words = new Set(paths.map((path) => String(path[0])));
  return derived.filter((one) => {
    // What was cut away for its own error must not be called a gap as well.
    if (one.code === 'tally.gap') return false;
    if (RESTS_ON[one.code]?.some((word) => words.has(word))) return false;
    const { path } = one;
    return path === undefined || !paths.some((cause) => isAboveOrBelow(cause, path));
  });
}

const unreadFile = (one: Diagnostic): boolean =>
  one.path === undefined && (one.code.startsWith('intake.') || one.code === 'facts.id');

/** Two paths of which one begins with the other. */
function isAboveOrBelow(a: FactPath, b: FactPath): boolean {
  const shorter = Math.min(a.length, b.length);
  return a.slice(0, shorter).every((part, index) => part === b[index]);
}
