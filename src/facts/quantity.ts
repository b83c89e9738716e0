/**
 * A number with a unit word, for what a label or a manual says: `50 gallons`, `120 °F`, `30 amps`, `2 1/2 tons`.
 * Lengths, areas, money and dates have readers of their own.
 */
import { bad, good, type Read } from './read.js';
import { LONGEST_TEXT, readWrittenNumber } from './written-number.js';

/** A number and its unit. */
export interface Quantity {
  /** The number, in `unit`. */
  readonly value: number;
  /** The unit as the caller's list of allowed units spells it, however the writer did. */
  readonly unit: string;
  /** The text as its author wrote it, without blanks around it. */
  readonly written: string;
}

/** Spellings of the same unit, in lower case. A unit in no row matches itself, with or without a plural s. */
const SAME_UNIT: readonly (readonly string[])[] = [
  ['gal', 'gallon', 'gallons', 'us gal'],
  ['gpm', 'gal/min', 'gallons per minute'],
  ['gpf', 'gal/flush', 'gallons per flush'],
  ['l', 'litre', 'litres', 'liter', 'liters'],
  ['°f', 'f', 'ºf', 'deg f', 'degrees f', 'degree f', 'degrees fahrenheit', 'fahrenheit'],
  ['°c', 'c', 'ºc', 'deg c', 'degrees c', 'degree c', 'degrees celsius', 'celsius'],
  ['a', 'amp', 'amps', 'ampere', 'amperes'],
  ['v', 'volt', 'volts', 'vac'],
  ['w', 'watt', 'watts'],
  ['kw', 'kilowatt', 'kilowatts'],
  ['kwh', 'kilowatt-hour', 'kilowatt-hours'],
  ['btu/h', 'btu/hr', 'btuh', 'btu per hour', 'btu an hour'],
  ['cfm', 'cubic feet per minute', 'ft³/min'],
  ['in', 'in.', 'inch', 'inches', '"', '″', '”'],
  ['ft', 'ft.', 'foot', 'feet', "'", '′', '’'],
  ['lb', 'lbs', 'lb.', 'pound', 'pounds'],
  ['psi', 'lb/in²', 'pounds per square inch'],
  ['%', 'percent', 'per cent'],
];

const MAY_BE_NEGATIVE = new Set(['°f', '°c']);

/** One name for all spellings of a unit. */
function unitKey(unit: string): string {
  const tidy = unit.trim().toLowerCase().replace(/\s+/g, ' ');
  const family = SAME_UNIT.find((spellings) => spellings.includes(tidy));
  return family?.[0] ?? tidy.replace(/s$/, '');
}

/**
 * Reads a number with one of the `allowed` units; `50 gal`, `50 gallons` and `50-gallon` are the same.
 *
 * Refuses a number without a unit, a unit that is not allowed, and a minus sign on anything but a temperature.
 */
export function readQuantity(text: string, allowed: readonly string[]): Read<Quantity> {
  const written = text.trim();
  const hint = hintFor(allowed);
  if (written === '') return bad('there is no quantity', hint);
  if (written.length > LONGEST_TEXT) return bad('this is too long for a quantity', hint);

  const [, sign = '', before = '', after = ''] = /^([-−]?)([\d.,\s/⁄¼-¾⅐-⅞-]*)(.*)$/s.exec(written) ?? [];
  const numberText = before.replace(/[\s-]+$/, '');
  if (numberText.trim() === '') return bad(`“${written}” does not begin with a number`, hint);
  const number = readWrittenNumber(numberText);
  if (!number.ok) return number;
  if (after.trim() === '') return bad('a quantity needs its unit', hint);
  const key = unitKey(after);
  const unit = allowed.find((one) => unitKey(one) === key);
  if (unit === undefined) return bad(`“${after.trim()}” is not a unit that belongs here`, hint);
  if (sign !== '' && !MAY_BE_NEGATIVE.has(key)) return bad(`a number of ${unit} is never negative`, hint);

  const { top, bottom } = number.value;
  const value = Number(top) / Number(bottom);
  if (!Number.isFinite(value) || value > Number.MAX_SAFE_INTEGER) return bad('the number is too large', hint);
  return good({ value: sign !== '' && value !== 0 ? -value : value, unit, written });
}

function hintFor(allowed: readonly string[]): string {
  if (allowed.length > 1) return `write the number with one of these units: ${allowed.join(', ')}`;
  return `write the number with its unit, for example 50 ${allowed[0] ?? 'gallons'}`;
}
