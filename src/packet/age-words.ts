import { printAge } from '../facts/age.js';
import { printDate } from '../facts/date.js';
import type { System } from '../facts/house.js';
import type { SystemAge } from '../tally/ages.js';
import { ROOF } from '../tally/roof.js';

/** The systems every buyer asks about first; common practice, no source. A solar panel is no service panel. */
export const ASKED_FIRST: readonly RegExp[] = [
  ROOF,
  /^(?!.*water heater).*(furnace|boiler|heat pump)/i,
  /air condition/i,
  /water heater/i,
  /\b(electrical|service|breaker|main) panel\b|^(?!.*(solar|radiant|photovoltaic|control)).*\bpanel(?!l)/i,
];

/** What else buyers ask the age of, where a page is short. */
const ASKED_TOO =
  /^(supply pipe|wiring|drain|window|range\b(?! (hood|outlet))|dishwasher|refrigerator|clothes|pool|garage door)/i;

export const isAsked = (system: System): boolean =>
  [...ASKED_FIRST, ASKED_TOO].some((pattern) => pattern.test(system.is));

/** "7 years", "not known". */
export function ageWords(age: SystemAge): string {
  if (age.age === undefined) return 'not known';
  return printAge(age.age);
}

/** "made January 2026", "installed about 2019"; undefined if no date is known. */
export function whenWords(age: SystemAge): string | undefined {
  if (age.date === undefined) return undefined;
  if (age.basis === 'label') return `made ${printDate(age.date)}, by its label`;
  return `${age.basis === 'made' ? 'made' : 'installed'} ${printDate(age.date)}`;
}

/** Dates and, where both are known, both: the age counts from the first named. */
export function datesWords(age: SystemAge): string {
  const first = whenWords(age) ?? 'date not known';
  const installed = age.system.installed?.value;
  return age.basis !== 'installed' && installed !== undefined
    ? `${first}; installed ${printDate(installed)}`
    : first;
}
