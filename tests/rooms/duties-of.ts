/** The duties of a made house in some state: what their tests look at. */
import { deriveDuties } from '../../src/tally/duties/derive-duties.js';
import type { Duty } from '../../src/tally/duties/duty.js';
import { houseFrom, type PartialSpec } from './house-from.js';

export const AS_OF = '2026-11-20';

export const inState = (state: string, more: PartialSpec = {}): PartialSpec => ({
  ...more,
  house: { built: 1991, ...more.house, address: { city: 'Fallow Mills', state } },
});

export const dutiesOf = (spec: PartialSpec, asOf = AS_OF): readonly Duty[] =>
  deriveDuties(houseFrom(spec), asOf, []).duties;

/** The duty of that rule; a test that names none fails. */
export function duty(id: string, spec: PartialSpec, asOf?: string): Duty {
  const found = dutiesOf(spec, asOf).find(({ rule }) => rule.id === id);
  if (found === undefined) throw new Error(`no duty ${id}`);
  return found;
}
