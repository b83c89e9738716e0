/**
 * Figures of model codes and agencies that observations about alarms, stairs, windows and the like are set
 * against. They say what to look at, never that a house meets or fails a code.
 *
 * Units are in the names: whole inches, sixteenths of an inch, tenths of a square inch (an escape opening of
 * 5.7 sq ft is 8,208 of them), feet, years. All are exact integers.
 */
import { z } from 'zod';
import { readTable } from '../read-table.js';
import { rule, whole } from './sourced.js';

const table = z.strictObject({
  escapeOpening: rule({
    /** Net clear area for every opening but one at ground level. */
    minTenthsOfSquareInch: whole,
    /** Net clear area where the sill is about at ground level. */
    minTenthsOfSquareInchAtGrade: whole,
    minHeightInches: whole,
    minWidthInches: whole,
  }),
  escapeSill: rule({ maxSillInches: whole }),
  escapeBasement: rule({
    /** A basement only for mechanical equipment is left out up to this size. */
    mechanicalUpToSquareFeet: whole,
  }),
  smokeAlarmPlaces: rule({ bathDoorFeet: whole }),
  smokeAlarmNearCooker: rule({
    ionizationFeet: whole,
    ionizationWithSilenceFeet: whole,
    photoelectricFeet: whole,
  }),
  coAlarmPlaces: rule({}),
  smokeAlarmAge: rule({
    /** Counted from the date of manufacture on the unit. */
    maxYears: whole,
  }),
  coAlarmAge: rule({
    /** Lives that makers print, for the text only: the date on the unit decides. */
    printedYears: z.array(whole),
  }),
  handrailNewWork: rule({ fromRisers: whole, minHeightInches: whole, maxHeightInches: whole }),
  stairNewWork: rule({
    maxRiserSixteenths: whole,
    minTreadInches: whole,
    maxSpreadSixteenths: whole,
    minWidthInches: whole,
    minHeadroomInches: whole,
  }),
  guardNewWork: rule({
    /** A guard is looked for where the drop is more than this. */
    dropOverInches: whole,
    reachInches: whole,
    minHeightInches: whole,
    minStairHeightInches: whole,
    ballInches: whole,
  }),
  maintenanceStairs: rule({
    /** A handrail is looked for where a flight has more risers than this. */
    overRisers: whole,
    minHandrailInches: whole,
    maxHandrailInches: whole,
    minGuardInches: whole,
    dropOverInches: whole,
  }),
  reliefPipe: rule({
    maxEndInches: whole,
    /** The least distance of the pipe's end above floor or pan, as a multiple of its own diameter. */
    minEndDiameters: whole,
  }),
  hotWater: rule({
    adviceFahrenheit: whole,
    /** Time to a deep burn of an adult's skin at the tap, hottest first. */
    burns: z.array(z.strictObject({ fahrenheit: whole, seconds: whole })),
  }),
  rangeTip: rule({ doorPounds: whole, sinceYear: whole, deaths: whole, fromYear: whole, toYear: whole }),
  poolBarrier: rule({
    minHeightInches: whole,
    maxBottomGapInches: whole,
    ballInches: whole,
    latchBelowTopInches: whole,
    latchGapSixteenths: whole,
    latchReachInches: whole,
    highLatchInches: whole,
    alarmDecibels: whole,
    alarmFeet: whole,
    alarmSeconds: whole,
  }),
});

/** The rules of `safety.yaml` by name. */
export type SafetyRules = z.infer<typeof table>;

/** Reads `safety.yaml`; throws on a broken table, which is our own mistake. */
export function safetyRules(): SafetyRules {
  return readTable('safety', table);
}
