/** What stands beside a unit: nothing before the first and behind the last, and so no word either. */
import type { Unit } from '../words/units.js';

export const wordAt = (units: readonly Unit[], at: number): string => units[at]?.word ?? '';

/** A comma, a dash, a bracket; nothing for a word. */
export const signAt = (units: readonly Unit[], at: number): string => units[at]?.sign ?? '';

const NOWHERE = { from: 0, to: 0 };

/** From the first unit to the end of the last. */
export function boundsOf(units: readonly Unit[]): readonly [from: number, to: number] {
  const [{ from } = NOWHERE] = units;
  const [{ to } = NOWHERE] = units.slice(-1);
  return [from, to];
}
