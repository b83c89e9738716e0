/** Listing fields of systems and appliances: heat, air, power, alarms, what stays. */
import type { House, System } from '../facts/house.js';
import { HEATS_ROOMS } from '../tally/heat-sources.js';
import { isThere } from '../tally/still-there.js';
import { resoTable } from '../tally/tables/reso.js';
import { list, type SomeFields } from './listing-check.js';
import { valuesIn } from './listing-words.js';

export function systemFields(house: House): SomeFields {
  const systems = house.systems.filter(isThere);
  return {
    ...heating(systems),
    ...cooling(systems),
    Electric: list(service(systems)),
    // What is there may be carried off; only what stays is offered.
    Appliances: list(
      valuesIn(
        'Appliances',
        systems.filter((one) => one.conveys === 'yes').map((one) => withFuel(one)),
      ),
    ),
    SecurityFeatures: list([
      ...(house.alarms.some(({ is }) => is !== 'carbon-monoxide') ? ['Smoke Detector(s)'] : []),
      ...(house.alarms.some(({ is }) => is !== 'smoke') ? ['Carbon Monoxide Detector(s)'] : []),
    ]),
  };
}

/** "range, gas" from `is: range` and `fuel: gas`; a fuel that stands there already is not said twice. */
const withFuel = ({ is, fuel }: System): string =>
  fuel === undefined || fuel === 'none' || new RegExp(`\\b${fuel}\\b`, 'i').test(is) ? is : `${is}, ${fuel}`;

function heating(systems: readonly System[]): SomeFields {
  const sources = systems.filter(({ is }) => HEATS_ROOMS.test(is));
  if (sources.length === 0) return {};
  const { fuels } = resoTable();
  return {
    HeatingYN: true,
    Heating: list([
      ...sources.flatMap(({ is }) => valuesIn('Heating', [is])),
      ...sources.flatMap(({ fuel }) => (fuel === undefined ? [] : (fuels[fuel] ?? []))),
    ]),
  };
}

/** What moves or cools the air of rooms. A heat pump in a water heater or a dryer cools nobody. */
const COOLS =
  /^(?!.*\b(water heater|pool|spa|dryer|heating only)\b).*\b(air condition|central air|heat pump(?! water)|mini.?split|ductless|window unit|wall unit|evaporative|swamp cooler|(ceiling|attic|whole.house) fan)/i;

/** A ceiling fan moves air, and is listed; a house that has no more than that is not said to be cooled. */
const ONLY_MOVES = ['Ceiling Fan(s)', 'Attic Fan', 'Whole House Fan'];

function cooling(systems: readonly System[]): SomeFields {
  const values = systems.flatMap(({ is }) => (COOLS.test(is) ? valuesIn('Cooling', [is]) : []));
  return {
    CoolingYN: values.some((value) => !ONLY_MOVES.includes(value)) ? true : undefined,
    Cooling: list(values),
  };
}

/** Of the one panel there is; of two nobody knows which is the service. */
function service(systems: readonly System[]): string[] {
  const panels = systems.filter(({ is }) => /^(electrical|service) panel\b/i.test(is));
  const [panel] = panels;
  if (panel === undefined || panels.length > 1) return [];
  const amperes = Number(
    /^(\d+)\s*(?:A|amps?|amperes?)\b/i.exec(panel.capacity?.value ?? '')?.[1] ?? Number.NaN,
  );
  if (amperes >= 200) return ['200+ Amp Service'];
  return amperes === 100 || amperes === 150 ? [`${amperes} Amp Service`] : [];
}
