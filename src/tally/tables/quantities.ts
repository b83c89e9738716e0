/**
 * Trade conventions for how much paint, flooring and tile a job takes, used only where a label or a measurement
 * is lacking. Percentages are of the area; coverage is square feet a gallon and coat.
 */
import { z } from 'zod';
import { readTable } from '../read-table.js';
import { sourced, whole } from './sourced.js';

const range = z.strictObject({ low: whole, high: whole });
const quantity = <Figures extends z.ZodRawShape>(figures: Figures) =>
  sourced.extend({ figures: z.strictObject(figures) });

const table = z.strictObject({
  paintCoverage: quantity({
    usualSquareFeet: whole,
    labelsSquareFeet: range,
    roughSquareFeet: whole,
  }),
  wallOpenings: quantity({ doorSquareFeet: whole, windowSquareFeet: whole }),
  floorWaste: quantity({
    usualPercent: whole,
    woodCuttingPercent: range,
    /** On top of the cutting waste. Whether added or compounded isn't settled: work out both. */
    woodDefectPercent: whole,
    straightPercent: range,
    diagonalPercent: whole,
    herringbonePercent: range,
  }),
  tileWaste: quantity({ straightPercent: whole, diagonalPercent: whole, patternPercent: range }),
});

/** The conventions of `quantities.yaml` by name. */
export type TradeQuantities = z.infer<typeof table>;

/** Reads `quantities.yaml`; throws on a broken table, which is our own mistake. */
export function tradeQuantities(): TradeQuantities {
  return readTable('quantities', table);
}
