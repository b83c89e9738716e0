/** Whether carbon monoxide alarms are looked for: something burns fuel, or a garage opens into the house. */
import type { House, System } from '../facts/house.js';
import { nameOf } from '../facts/place-name.js';

/** Whether carbon monoxide alarms are looked for, and the facts that say so. */
export interface CarbonMonoxideQuestion {
  readonly asked: 'yes' | 'no' | 'not known';
  readonly because: readonly string[];
}

const BURNS = ['gas', 'propane', 'oil', 'wood'];
const MAY_BURN =
  /heater|heating|\bheat\b(?! *(pump|recovery|exchanger|tape|cable))|furnace|boiler|\brange\b(?! *hood)|\boven|cooktop|dryer(?! *(vent|duct))|fireplace|stove|generator/i;
/** A name that says what else heats, too: "heat pump with gas furnace". */
const BURNS_AS_WELL = /\b(gas|propane|oil (furnace|boiler|backup))\b/i;

/** Whether it burns fuel, by what is recorded or, failing that, by its own name: "furnace, gas". */
export function burns(system: System): boolean | undefined {
  if (system.did === 'removed') return false;
  if (system.fuel !== undefined) return BURNS.includes(system.fuel);
  if (!MAY_BURN.test(system.is)) return false;
  if (/electric|heat pump/i.test(system.is)) return BURNS_AS_WELL.test(system.is);
  return /\b(natural gas|gas|propane|oil|wood|pellet)\b/i.test(system.is) ? true : undefined;
}

/** "furnace, gas" as it stands in a sentence: the furnace. */
const called = ({ is }: System): string => is.replace(/,.*$/s, '');

/** "Garage" as it stands in a sentence. */
const lower = (name: string): string =>
  /^the /i.test(name) ? name : `the ${name.charAt(0).toLowerCase()}${name.slice(1)}`;

export function askCarbonMonoxide(house: House): CarbonMonoxideQuestion {
  const burning = house.systems.filter((system) => burns(system) === true);
  const garages = house.structures.filter((one) => one.is === 'garage' && one.attached);
  const because = [
    ...burning.map((system) => `the ${called(system)} burns ${system.fuel ?? 'fuel, by its name'}`),
    ...garages
      .filter((garage) => garage['opens-into-house'] === true)
      .map((garage) => `${lower(garage.name ?? 'the garage')} opens into the house`),
  ];
  if (because.length > 0) return { asked: 'yes', because };
  const unsure = [
    ...house.systems
      .filter((system) => burns(system) === undefined)
      .map((system) => `what the ${called(system)} runs on is not recorded`),
    ...garages
      .filter((garage) => garage['opens-into-house'] === undefined)
      .map((garage) => `whether ${lower(garage.name ?? 'the garage')} opens into the house is not recorded`),
    ...house.rooms
      .filter((room) => room.use === 'garage')
      .map((room) => `whether ${nameOf(room)} opens into the house is not recorded`),
    ...house.rooms
      .filter((room) =>
        room.finishes.some(
          (finish) => finish.on === 'fireplace' && finish.did !== 'removed' && !/electric/i.test(finish.what),
        ),
      )
      .map((room) => `whether the fireplace in ${nameOf(room)} burns anything is not recorded`),
  ];
  return unsure.length > 0
    ? { asked: 'not known', because: unsure }
    : {
        asked: 'no',
        because: ['nothing that burns fuel is recorded, and no garage that opens into the house'],
      };
}
