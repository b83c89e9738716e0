/** How much paint an area takes: coats, the label's coverage or the usual one, and whole gallons. */
import { SQUARE_FOOT } from '../facts/floor-area.js';
import type { Finish } from '../facts/house.js';
import { ceilDivide } from './flooring-need.js';
import type { TradeQuantities } from './tables/quantities.js';

export interface PaintNeed {
  readonly coats: number;
  /** False: nobody said how many coats, and the figures are for one. */
  readonly coatsStated: boolean;
  /** Square feet a gallon and coat. */
  readonly coverage: number;
  readonly coverageBasis: 'label' | 'usual';
  /** Exact, as a fraction. */
  readonly gallons: Gallons;
  /** To a hundredth, half up: "1.99". */
  readonly gallonsWords: string;
  /** Whole gallons to buy. */
  readonly buy: number;
}

export interface Gallons {
  readonly top: bigint;
  /** Above zero. */
  readonly bottom: bigint;
}

/** The coverage that is reckoned with. */
export interface Coverage {
  readonly squareFeet: number;
  readonly basis: PaintNeed['coverageBasis'];
  readonly rule: string;
}

export function coverageOf(finish: Finish, { paintCoverage }: TradeQuantities): Coverage | undefined {
  const coats = finish.coats === undefined ? ' Coats not recorded: the figures are for one.' : '';
  if (finish.coverage !== undefined) {
    // A label that covers nothing is a slip; no figure rests on it.
    if (finish.coverage === 0) return undefined;
    return {
      squareFeet: finish.coverage,
      basis: 'label',
      rule: `${finish.coverage} sq ft a gallon and coat, as on the label.${coats}`,
    };
  }
  const { usualSquareFeet, roughSquareFeet, labelsSquareFeet } = paintCoverage.figures;
  const rough = /\b(rough|bare)\b/i.test(`${finish.what} ${finish.over ?? ''}`);
  const squareFeet = rough ? roughSquareFeet : usualSquareFeet;
  const labels = `labels run from ${labelsSquareFeet.low} to ${labelsSquareFeet.high}`;
  return {
    squareFeet,
    basis: 'usual',
    rule:
      `Trade practice, not a standard: ${squareFeet} sq ft a gallon and coat ` +
      `${rough ? 'on rough or bare board' : `on smooth walls (${labels})`}; the label’s rate isn’t recorded.${coats}`,
  };
}

export function paintNeed(finish: Finish, area: bigint, coverage: Coverage): PaintNeed {
  const coats = finish.coats ?? 1;
  const gallons = gallonsFor(area, coats, coverage.squareFeet);
  return {
    coats,
    coatsStated: finish.coats !== undefined,
    coverage: coverage.squareFeet,
    coverageBasis: coverage.basis,
    gallons,
    gallonsWords: printGallons(gallons),
    buy: wholeGallons(gallons),
  };
}

/** Paint for `area` (0.1 µm)² at `coverage` square feet a gallon and coat; `coverage` is above zero. */
export function gallonsFor(area: bigint, coats: number, coverage: number): Gallons {
  return { top: area * BigInt(coats), bottom: BigInt(coverage) * SQUARE_FOOT };
}

/** To a hundredth of a gallon, half up: "1.99". */
export function printGallons({ top, bottom }: Gallons): string {
  const hundredths = (200n * top + bottom) / (2n * bottom);
  return `${hundredths / 100n}.${String(hundredths % 100n).padStart(2, '0')}`;
}

/** The whole gallons that hold it; exactly 2 gallons are 2. */
export function wholeGallons({ top, bottom }: Gallons): number {
  return Number(ceilDivide(top, bottom));
}
