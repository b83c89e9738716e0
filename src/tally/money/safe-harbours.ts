/** Two elections for small sums. Sources: `de-minimis` and `small-building` in tables/basis.yaml. */
import { basisRules } from '../tables/basis.js';
import { divideRounded } from './divide.js';

/**
 * Whether a thing of so many cents, its share of the delivery included, is within the limit. Without audited
 * statements.
 */
export const isDeMinimis = (cents: number): boolean =>
  cents <= basisRules()['de-minimis'].figures.dollars * 100;

export interface SmallBuilding {
  /** The lesser of the fixed sum and the share of the building’s cost, in cents. */
  readonly cap: number;
  readonly verdict: 'within' | 'over' | 'building too dear';
}

/** Holds a year’s `spent` on a building against its cost before depreciation, both in cents. */
export function smallBuilding(cost: number, spent: number): SmallBuilding {
  const { buildingDollars, capDollars, capPercent } = basisRules()['small-building'].figures;
  const share = divideRounded(BigInt(cost) * BigInt(capPercent), 100n);
  const cap = Math.min(capDollars * 100, share);
  if (cost > buildingDollars * 100) return { cap, verdict: 'building too dear' };
  // Compared before rounding.
  const within = spent <= capDollars * 100 && BigInt(spent) * 100n <= BigInt(cost) * BigInt(capPercent);
  return { cap, verdict: within ? 'within' : 'over' };
}
