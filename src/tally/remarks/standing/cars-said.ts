/** For how many cars, told without the word: "garage with room for three", "parking for two in the garage", "Garage spaces: 3". */
import type { NumberSense } from '../words/numbers.js';
import { has, isBoundary, type Unit } from '../words/units.js';
import { signAt, wordAt } from './beside.js';

const MOST_CARS = 9;
/** Units on either side in which the garage is named. */
const FAR = 8;
const SPACE =
  /^(spaces?|spots?|stalls?|slots?|bays?|parking|covered|indoor|enclosed|autos?|automobiles?|trucks?|vehicles?|cars?)$/;
const TAKES =
  /^(for|room for|space for|spot for|place for|parking for|fits?|holds?|takes?|houses?|accommodates?|seats?|parks?|fitting|holding|sleeps)$/;
const KEPT_OUTSIDE = /^(drive|driveway|street|curb|alley|pad|rv|boat|lot|tandem)$/;

export interface CarsSaid {
  readonly value: number;
  readonly structure: 'garage' | 'carport';
}

/** The cars that the number at `at` counts; undefined where it counts something else, or parking in the open. */
export function carsSaid(units: readonly Unit[], at: number, number: NumberSense): CarsSaid | undefined {
  if ((number.kind !== 'count' && number.kind !== 'cars') || !Number.isInteger(number.value))
    return undefined;
  const { value } = number;
  if (value < 1 || value > MOST_CARS) return undefined;
  if (isKeptOutside(units, at)) return undefined;
  const structure = clauseAround(units, at)
    .map(structureOf)
    .find((one) => one !== undefined);
  if (structure === undefined) return undefined;
  return number.kind === 'cars' || takes(units, at) || spaces(units, at) || isWide(units, at)
    ? { value, structure }
    : undefined;
}

/** "Parking for two cars in the drive": they stand in no garage. */
export const isKeptOutside = (units: readonly Unit[], at: number): boolean =>
  clauseAround(units, at).some(({ word }) => KEPT_OUTSIDE.test(word));

function clauseAround(units: readonly Unit[], at: number): readonly Unit[] {
  let [low, high] = [at, at];
  const stops = (beside: number): boolean =>
    isBoundary(units[beside]) && !/^[:—=]$/.test(signAt(units, beside));
  while (low > at - FAR && !stops(low - 1)) low--;
  while (high < at + FAR && !stops(high + 1)) high++;
  return units.slice(low, high + 1);
}

const structureOf = (unit: Unit): CarsSaid['structure'] | undefined => {
  const id = unit.senses.find(({ tag, id }) => tag === 'thing' && /^(garage|carport)$/.test(id))?.id;
  return id === 'garage' || id === 'carport' ? id : undefined;
};

/** "double garage", "triple attached garage". */
const isWide = (units: readonly Unit[], at: number): boolean =>
  /^(single|double|twin|triple|quad)$/.test(wordAt(units, at)) &&
  units.slice(at + 1, at + 3).some((unit) => structureOf(unit) !== undefined);

/** "for three", "holds two": nothing else is counted behind it. */
function takes(units: readonly Unit[], at: number): boolean {
  if (!TAKES.test(wordAt(units, at - 1)) || isBesideGarage(units, at)) return false;
  const next = units[at + 1];
  return isBoundary(next) || SPACE.test(wordAt(units, at + 1)) || has(next, 'preposition');
}

/** "one-car garage and parking for three": the three stand elsewhere. */
function isBesideGarage(units: readonly Unit[], at: number): boolean {
  const first = /^(room|space|spot|place|parking) for$/.test(wordAt(units, at - 1)) ? at - 1 : at - 2;
  return (
    /^(room|space|spot|place|parking)\b/.test(wordAt(units, first)) &&
    /^(and|plus|&|\+)$/.test(units[first - 1]?.sign ?? units[first - 1]?.word ?? '') &&
    !units.slice(at + 1, at + 6).some((unit) => structureOf(unit) !== undefined)
  );
}

/** "two garage spaces", "Garage spaces: 3", "Garage: 2". */
function spaces(units: readonly Unit[], at: number): boolean {
  if (units.slice(at + 1, at + 4).some(({ word }) => /^(spaces?|spots?|stalls?|slots?|bays?)$/.test(word)))
    return true;
  if (!/^[:—=]$/.test(signAt(units, at - 1)) || !isBoundary(units[at + 1])) return false;
  return units.slice(Math.max(0, at - 4), at - 1).some((unit) => structureOf(unit) !== undefined);
}
