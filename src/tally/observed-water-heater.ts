/** How hot a water heater is set, and where its relief pipe ends. */

import type { YesNo } from '../facts/field-kinds.js';
import type { House, System } from '../facts/house.js';
import { printLength } from '../facts/length.js';
import {
  all,
  answered,
  atMost,
  inOneLine,
  judged,
  type Observation,
  type Observed,
  observe,
  taped,
} from './observation.js';
import { systemName } from './system-name.js';
import { safetyRules } from './tables/safety.js';

/** A heater that was taken out heats nothing, and its pan and expansion tank are no heater. */
export const isWaterHeater = (system: System): boolean =>
  /water heater(?! *(pan|expansion|vent|outlet|circuit|timer|blanket)\b)/i.test(system.is) &&
  system.did !== 'removed';

export function observeWaterHeaters(house: House): Observation[] {
  return house.systems.flatMap((system, index) => {
    if (!isWaterHeater(system)) return [];
    const base = (topic: Observation['topic'], word: 'set-to' | 'relief-pipe'): Observed => ({
      id: `${word}-${system.id}`,
      path: ['systems', index, word],
      topic,
      what: systemName(system),
      evidence: system.evidence,
    });
    // A tankless heater may have no relief pipe; where one is recorded it is told.
    const hasPipe = !/tankless/i.test(system.is) || system['relief-pipe'] !== undefined;
    return [
      hotWater(system, base('hot water', 'set-to')),
      ...(hasPipe ? [reliefPipe(system, base('relief pipe', 'relief-pipe'))] : []),
    ];
  });
}

function hotWater(system: System, base: Observed): Observation {
  const rule = safetyRules().hotWater;
  const { adviceFahrenheit, burns } = rule.figures;
  const set = system['set-to'];
  const burn =
    set === undefined || set.value <= adviceFahrenheit
      ? undefined
      : burns.find(({ fahrenheit }) => set.value >= fahrenheit);
  return observe(base, rule, {
    observed: inOneLine(
      set === undefined ? 'setting not recorded' : `set to ${set.value} °F`,
      `mixing valve: ${system['mixing-valve'] ?? 'not known'}`,
      burn && `at ${burn.fahrenheit} °F water can burn deeply in ${burn.seconds} seconds`,
    ),
    figure: `advice: ${adviceFahrenheit} °F`,
    stands: judged(set === undefined ? undefined : set.value <= adviceFahrenheit),
  });
}

function reliefPipe(system: System, base: Observed): Observation {
  const rule = safetyRules().reliefPipe;
  const { figures } = rule;
  const pipe = system['relief-pipe'];
  const end = pipe?.['ends-above-floor'];
  return observe({ ...base, evidence: pipe?.evidence ?? system.evidence }, rule, {
    observed:
      pipe === undefined
        ? 'relief pipe not recorded'
        : inOneLine(
            `pipe ${printLength(pipe.diameter)}`,
            end === undefined ? 'end not measured' : `ends ${printLength(end)} above the floor`,
            pipe.threaded && `threaded end: ${pipe.threaded}`,
            pipe.valve && `valve or tee in it: ${pipe.valve}`,
          ),
    figure: `ends at most ${figures.maxEndInches} in above floor or pan and at least ${figures.minEndDiameters} pipe diameters; no thread at its end, no valve, tee or trap`,
    stands: judged(
      pipe === undefined
        ? undefined
        : all(
            taped(
              end,
              (length) =>
                atMost(length, figures.maxEndInches) &&
                length.units >= figures.minEndDiameters * pipe.diameter.units,
            ),
            hasNone(pipe.threaded),
            hasNone(pipe.valve),
          ),
    ),
  });
}

/** Of what should not be there: whether it is not. */
function hasNone(value: YesNo | undefined): boolean | undefined {
  const has = answered(value);
  return has === undefined ? undefined : !has;
}
