/** One thing of which two words of its own entry, or two entries, say different things: fuel, serial number, heat, storeys. */
import type { Diagnostic } from '../../diagnostics/diagnostic.js';
import type { House, System } from '../../facts/house.js';
import { nameOf } from '../../facts/place-name.js';
import { HEATS_ROOMS } from '../heat-sources.js';
import { isThere } from '../still-there.js';
import { systemName } from '../system-name.js';
import { type ClashSources, clashOf } from './clash.js';

export function oneThingTwoWords({ house }: ClashSources): Diagnostic[] {
  return [...fuels(house), ...serials(house), ...heat(house), ...storeys(house)];
}

const FUELS = ['electric', 'gas', 'propane', 'oil', 'wood'] as const;

const burns = (fuel: NonNullable<System['fuel']>): string =>
  fuel === 'electric' ? 'electricity' : fuel === 'none' ? 'no fuel' : fuel;

/** `is: water heater, tank, gas` with `fuel: electric`. What names two fuels, as a range may burn both, is left alone. */
function fuels({ systems }: House): Diagnostic[] {
  return systems.flatMap((system, at) => {
    // Window, floor and roof are of wood and burn none.
    if (
      system.fuel === undefined ||
      !/heat|furnace|boiler|stove|range|oven|cooktop|dryer|fireplace|generator/i.test(system.is)
    )
      return [];
    const named = FUELS.filter((fuel) => new RegExp(`\\b${fuel}\\b`, 'i').test(system.is));
    const [only] = named;
    if (named.length !== 1 || only === undefined || only === system.fuel) return [];
    // People call propane gas.
    if (only === 'gas' && system.fuel === 'propane') return [];
    return [
      clashOf({
        severity: 'error',
        path: ['systems', at, 'fuel'],
        beside: ['systems', at, 'is'],
        message:
          system.name === undefined
            ? `the fuel of “${system.is}” is “${system.fuel}”`
            : `“${system.name}” is “${system.is}”, and its fuel is “${system.fuel}”`,
        hints: [
          `if it runs on ${burns(only)}, write  fuel: ${only}`,
          `if it runs on ${burns(system.fuel)}, correct  is:`,
        ],
      }),
    ];
  });
}

/** Letters and digits alone; a number that has none, as “?”, was not read and is nobody’s. */
const serialKey = ({ label }: System): string | undefined =>
  label?.serial.toLowerCase().replace(/[^a-z0-9]/g, '') || undefined;

function serials({ systems }: House): Diagnostic[] {
  const keys = systems.map(serialKey);
  return systems.flatMap((system, at) => {
    const key = keys[at];
    const first = key === undefined ? -1 : keys.indexOf(key);
    const other = systems[first];
    if (first < 0 || first >= at || other === undefined || system.label === undefined) return [];
    return [
      clashOf({
        severity: 'warning',
        path: ['systems', at, 'label', 'serial'],
        beside: ['systems', first, 'label', 'serial'],
        message: `“${systemName(system)}” has the serial number of “${systemName(other)}”: ${system.label.serial}`,
        hints: ['read both labels again', 'if both entries are of one thing, delete one of them'],
      }),
    ];
  });
}

/** Every source of heat was taken out, and rooms are still heated. */
function heat(house: House): Diagnostic[] {
  const sources = house.systems.flatMap((system, at) =>
    HEATS_ROOMS.test(system.is) ? [{ system, at }] : [],
  );
  const [first] = sources;
  if (first === undefined || sources.some(({ system }) => isThere(system))) return [];
  const room = house.rooms.findIndex(({ heated }) => heated === 'yes');
  const heated = house.rooms[room];
  if (heated === undefined) return [];
  return [
    clashOf({
      severity: 'warning',
      path: ['rooms', room, 'heated'],
      beside: ['systems', first.at, 'did'],
      message: `${nameOf(heated)} is heated, and “${systemName(first.system)}” was removed, with no other heat among the systems`,
      hints: ['add what heats the house now to  systems:', 'if there is no heat, write  heated: no'],
    }),
  ];
}

const UPPER = /\b(upper|upstairs|second|2nd|third|3rd|half[- ]storey|half[- ]story)\b/i;
const DOWN_TO_HOUSE = /\bdown to (the )?(main|first|ground|lower|living)/i;

/** A house of one storey with a level over another. A wing beside the house is a level, and no storey. */
function storeys({ house, levels }: House): Diagnostic[] {
  if (house.storeys !== 'one') return [];
  const at = levels.findIndex(
    (level) =>
      level.grade === 'above' &&
      (UPPER.test(level.name) || level.openings.some(({ what }) => DOWN_TO_HOUSE.test(what))),
  );
  const level = levels[at];
  if (level === undefined || levels.filter(({ grade }) => grade === 'above').length < 2) return [];
  return [
    clashOf({
      severity: 'warning',
      path: ['house', 'storeys'],
      beside: ['levels', at, 'name'],
      message: `the house has one storey, and ${level.name} lies over another level`,
      hints: [
        'write how many there are, for example  storeys: one-and-a-half  or  storeys: two',
        'if it lies beside the house, name it so',
      ],
    }),
  ];
}
