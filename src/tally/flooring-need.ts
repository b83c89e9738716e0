/**
 * How much flooring or tile an area takes: the usual waste of its lay, and whole boxes.
 *
 * Trade conventions, never a standard. Boxes are decided in whole numbers: in binary fractions 420 × 1.1 / 22 is a
 * hair above 21 and would buy a box too many.
 */
import type { Finish } from '../facts/house.js';
import type { TradeQuantities } from './tables/quantities.js';

export interface FlooringNeed {
  /** Percent of the net area. */
  readonly wastePercent: number;
  readonly wasteBasis: 'stated' | 'usual';
  /** Area with its waste, (0.1 µm)², rounded up. */
  readonly order: bigint;
  /** Whole boxes; undefined if the area of a box isn't known. */
  readonly boxes: number | undefined;
  /** For wood laid with the usual waste: what more for defects would come to. Not part of `order` and `boxes`. */
  readonly defects: DefectReadings | undefined;
}

/** The trade quotes defects as a percentage "plus" the cutting waste: added to it or compounded isn't settled. */
interface DefectReadings {
  readonly percent: number;
  readonly added: { readonly order: bigint; readonly boxes: number | undefined };
  readonly compounded: { readonly order: bigint; readonly boxes: number | undefined };
  readonly words: string;
}

/** The waste that is reckoned with. */
export interface Waste {
  readonly percent: number;
  readonly basis: FlooringNeed['wasteBasis'];
  readonly rule: string;
}

export function wasteOf(finish: Finish, kind: 'flooring' | 'tile', table: TradeQuantities): Waste {
  if (finish.waste !== undefined)
    return {
      percent: finish.waste,
      basis: 'stated',
      rule: `Waste of ${finish.waste} % as stated; boxes are rounded up.`,
    };
  const { figure, words, remembered } =
    kind === 'tile' ? tileFigure(finish, table) : floorFigure(finish, table);
  const percent = typeof figure === 'number' ? figure : figure.high;
  const range =
    typeof figure === 'number' ? '' : ` (${figure.low} to ${figure.high} % are quoted; the higher is used)`;
  const status = remembered ? 'Trade practice, from memory' : 'Trade practice';
  return {
    percent,
    basis: 'usual',
    rule: `${status}, not a standard: ${percent} % more for ${words}${range}; boxes are rounded up.`,
  };
}

interface WasteFigure {
  readonly figure: number | { readonly low: number; readonly high: number };
  readonly words: string;
  readonly remembered: boolean;
}

function tileFigure({ pattern }: Finish, { tileWaste }: TradeQuantities): WasteFigure {
  const { figures, read } = tileWaste;
  const remembered = read === 'from memory';
  if (pattern === 'diagonal')
    return { figure: figures.diagonalPercent, words: 'tile laid diagonally', remembered };
  if (pattern === 'pattern' || pattern === 'herringbone')
    return { figure: figures.patternPercent, words: 'tile laid in a pattern', remembered };
  const words = pattern === undefined ? 'tile, its pattern not recorded' : 'tile laid straight';
  return { figure: figures.straightPercent, words, remembered };
}

function floorFigure({ pattern }: Finish, { floorWaste }: TradeQuantities): WasteFigure {
  const { figures, remembered: names } = floorWaste;
  const pick = (name: keyof typeof figures & string, words: string): WasteFigure => ({
    figure: figures[name],
    words,
    remembered: names.includes(name),
  });
  if (pattern === 'straight') return pick('straightPercent', 'a plain straight lay');
  if (pattern === 'diagonal') return pick('diagonalPercent', 'a diagonal lay');
  if (pattern === 'herringbone') return pick('herringbonePercent', 'herringbone');
  // No figure for other patterns was read: herringbone’s is the nearest, and the highest.
  if (pattern === 'pattern')
    return pick('herringbonePercent', 'a pattern, for which herringbone’s figure stands in');
  return pick('usualPercent', 'flooring, the lay not recorded');
}

const SOLID_WOOD = /\b(wood|hardwood|oak|maple|hickory|walnut|birch|cherry|pine)\b/;
const NO_WOOD = /vinyl|laminate|tile|look|bamboo|cork/;

export function flooringNeed(
  finish: Finish,
  area: bigint,
  waste: Waste,
  table: TradeQuantities,
): FlooringNeed {
  const what = finish.what.toLowerCase();
  const wood = SOLID_WOOD.test(what) && !NO_WOOD.test(what);
  const box = finish.box?.area;
  const order = orderFor(area, waste.percent);
  return {
    wastePercent: waste.percent,
    wasteBasis: waste.basis,
    order,
    boxes: box === undefined ? undefined : boxesFor(area, waste.percent, box),
    defects: wood && waste.basis === 'usual' ? defectsOf(area, waste.percent, box, table) : undefined,
  };
}

function defectsOf(
  area: bigint,
  percent: number,
  box: bigint | undefined,
  table: TradeQuantities,
): DefectReadings {
  const { woodDefectPercent: defects, woodCuttingPercent: cutting } = table.floorWaste.figures;
  const addedBoxes = box === undefined ? undefined : boxesFor(area, percent + defects, box);
  // (1 + p) × (1 + d) over 10,000, so that the product stays a whole number.
  const product = BigInt((100 + percent) * (100 + defects));
  const compoundedBoxes = box === undefined ? undefined : Number(ceilDivide(area * product, 10_000n * box));
  return {
    percent: defects,
    added: { order: orderFor(area, percent + defects), boxes: addedBoxes },
    compounded: { order: ceilDivide(area * product, 10_000n), boxes: compoundedBoxes },
    words:
      `For wood ${cutting.low} to ${cutting.high} % for cutting and ${defects} % more for defects are quoted. The ` +
      `${defects} % is not assumed here; whether it is added or compounded isn’t settled` +
      (addedBoxes === undefined ? '.' : `: ${addedBoxes} or ${compoundedBoxes} boxes.`),
  };
}

/** Area with `wastePercent` more, in (0.1 µm)², rounded up. */
export function orderFor(area: bigint, wastePercent: number): bigint {
  return ceilDivide(area * BigInt(100 + wastePercent), 100n);
}

/** Whole boxes of `box` (0.1 µm)² that hold `area` and its waste; an exact fit takes no further box. */
export function boxesFor(area: bigint, wastePercent: number, box: bigint): number {
  return Number(ceilDivide(area * BigInt(100 + wastePercent), 100n * box));
}

/** Rounded up; both are whole and above zero. */
export const ceilDivide = (top: bigint, bottom: bigint): bigint => (top + bottom - 1n) / bottom;
