/**
 * What was counted and taped where somebody can be hurt, beside the figure of a published rule.
 *
 * Every observation states both and defers to local code and a licensed inspection. None says that anything
 * is safe or meets a code. Start reading at `deriveObservations`; each topic has a file of its own.
 */
import type { House } from '../facts/house.js';
import type { Observation } from './observation.js';
import { observeEscapeOpenings } from './observed-escape-openings.js';
import { observePoolBarriers } from './observed-pool.js';
import { observeRanges } from './observed-range.js';
import { observeGuards, observeStairs } from './observed-stairs.js';
import { observeWaterHeaters } from './observed-water-heater.js';
import { canShow } from './shown-by.js';

export type { Observation } from './observation.js';

export function deriveObservations(house: House): Observation[] {
  const all = [
    ...observeEscapeOpenings(house),
    ...observeStairs(house),
    ...observeGuards(house),
    ...observeWaterHeaters(house),
    ...observeRanges(house),
    ...observePoolBarriers(house),
  ];
  return all.map((one) => ({ ...one, evidence: canShow(house, one.evidence) }));
}
