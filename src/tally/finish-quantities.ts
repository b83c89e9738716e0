/**
 * How much of a finish a room took: net area, boxes of flooring or tile, gallons of paint.
 *
 * For reordering and touch-up notes. Everything rests on trade conventions, never on a standard, and each
 * answer says which. Boxes and gallons are decided in whole numbers: in binary fractions 420 × 1.1 / 22 is a
 * hair above 21 and would buy a box too many. Start reading at `deriveQuantities`.
 */
import type { FactPath } from '../diagnostics/fact-path.js';
import { SQUARE_FOOT } from '../facts/floor-area.js';
import type { Finish, House, Room, Structure } from '../facts/house.js';
import { type TradeQuantities, tradeQuantities } from './tables/quantities.js';

/** What was measured of the rooms, as the area answer gives it. */
export interface RoomMeasures {
  /** Inside floor by room id, (0.1 µm)². */
  readonly roomFloors: ReadonlyMap<string, bigint>;
  /** By room id, 0.1 µm; no height where the ceiling slopes or wasn't measured. */
  readonly roomWalls: ReadonlyMap<
    string,
    { readonly perimeter: number; readonly height: number | undefined }
  >;
}

export interface FinishQuantity {
  /** `finish-kitchen-0`: the same id as in the list of improvements. */
  readonly id: string;
  readonly home: Room | Structure;
  readonly finish: Finish;
  readonly path: FactPath;
  /** What decides the convention. `other`: carpet, sheet goods, stain and all else that has none here. */
  readonly kind: 'paint' | 'flooring' | 'tile' | 'other';
  /** Net area in (0.1 µm)²; undefined: not known. */
  readonly area: bigint | undefined;
  readonly basis: 'stated' | 'floor of the room' | 'walls less openings' | 'not known';
  /** How the area was come by, in a sentence. */
  readonly how: string;
  /** For flooring and tile; undefined if the area isn't known. */
  readonly flooring: FlooringNeed | undefined;
  /** For paint; undefined if the area isn't known. */
  readonly paint: PaintNeed | undefined;
  /** The convention and its status, in a sentence; empty where none was used. */
  readonly rule: string;
}

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
export interface DefectReadings {
  readonly percent: number;
  readonly added: { readonly order: bigint; readonly boxes: number | undefined };
  readonly compounded: { readonly order: bigint; readonly boxes: number | undefined };
  readonly words: string;
}

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

/**
 * Finishes of floors, walls and ceilings, and every other one whose area is stated, in the folder's order. What
 * was removed is left out: nobody reorders it.
 */
export function deriveQuantities(house: House, measures: RoomMeasures): FinishQuantity[] {
  const homes: readonly (readonly [string, readonly (Room | Structure)[]])[] = [
    ['rooms', house.rooms],
    ['structures', house.structures],
  ];
  return homes.flatMap(([top, list]) =>
    list.flatMap((home, at) =>
      home.finishes.flatMap((finish, index) =>
        finish.did !== 'removed' && (finish.area !== undefined || SURFACES.includes(finish.on))
          ? [quantityOf(home, index, finish, [top, at, 'finishes', index], measures)]
          : [],
      ),
    ),
  );
}

const SURFACES: readonly Finish['on'][] = ['floor', 'walls', 'ceiling'];

function quantityOf(
  home: Room | Structure,
  index: number,
  finish: Finish,
  path: FactPath,
  measures: RoomMeasures,
): FinishQuantity {
  const table = tradeQuantities();
  const kind = kindOf(finish);
  const net = netArea(home, finish, measures, table);
  const laid = net.area !== undefined && (kind === 'flooring' || kind === 'tile');
  const waste = laid ? wasteOf(finish, kind, table) : undefined;
  const cover = kind === 'paint' && net.area !== undefined ? coverageOf(finish, table) : undefined;
  return {
    id: `finish-${home.id}-${index}`,
    home,
    finish,
    path,
    kind,
    ...net,
    flooring:
      net.area === undefined || waste === undefined
        ? undefined
        : flooringNeed(finish, net.area, waste, table),
    paint: net.area === undefined || cover === undefined ? undefined : paintNeed(finish, net.area, cover),
    rule: waste?.rule ?? cover?.rule ?? '',
  };
}

/** Words of a material that comes in boxes. Sheet goods and carpet are cut from rolls: no box, no figure here. */
const BOXED =
  /plank|laminate|parquet|\bwood\b|hardwood|engineered|bamboo|cork|vinyl|\b(oak|maple|hickory|walnut|birch|cherry|pine)\b/;
const ROLLED = /\bsheet\b|carpet(?! tile)|linoleum|\broll\b/;

function kindOf(finish: Finish): FinishQuantity['kind'] {
  const what = finish.what.toLowerCase();
  if (finish.coats !== undefined || finish.coverage !== undefined || /\bpaint(ed)?\b/.test(what))
    return 'paint';
  if (finish.tile !== undefined || /\btiles?\b/.test(what)) return 'tile';
  if (finish.plank !== undefined || finish.box !== undefined) return 'flooring';
  return finish.on === 'floor' && BOXED.test(what) && !ROLLED.test(what) ? 'flooring' : 'other';
}

type Net = Pick<FinishQuantity, 'area' | 'basis' | 'how'>;

const notKnown = (how: string): Net => ({ area: undefined, basis: 'not known', how });

function netArea(
  home: Room | Structure,
  finish: Finish,
  measures: RoomMeasures,
  table: TradeQuantities,
): Net {
  if (finish.area !== undefined)
    return { area: finish.area.area, basis: 'stated', how: `Area as stated: ${finish.area.written}.` };
  const beside = home.finishes.filter((other) => other !== finish && other.on === finish.on).length;
  const rest =
    beside === 0 ? '' : ` Other finishes of the same ${finish.on} are in it: their part wasn’t taken off.`;
  if (finish.on === 'walls') return wallArea(home, measures, table, rest);
  const floor = measures.roomFloors.get(home.id);
  if (floor === undefined) return notKnown('Not known: the size of the room isn’t recorded.');
  if (finish.on === 'ceiling' && 'ceiling' in home && isSloped(home.ceiling))
    return notKnown('Not known: the ceiling slopes, and its own area isn’t stated.');
  const how = finish.on === 'ceiling' ? 'Flat ceiling, as large as the floor inside.' : 'Floor inside.';
  return { area: floor, basis: 'floor of the room', how: `${how}${rest}` };
}

const isSloped = (ceiling: Room['ceiling']): boolean => ceiling !== undefined && !('units' in ceiling);

function wallArea(home: Room | Structure, measures: RoomMeasures, table: TradeQuantities, rest: string): Net {
  const walls = measures.roomWalls.get(home.id);
  if (walls === undefined) return notKnown('Not known: the size of the room isn’t recorded.');
  if (walls.height === undefined) return notKnown('Not known: the height of the walls isn’t recorded.');
  const { doorSquareFeet, windowSquareFeet } = table.wallOpenings.figures;
  const doors = 'doors' in home ? home.doors : undefined;
  const windows = 'windows' in home ? home.windows.length : 0;
  const openings = BigInt((doors ?? 0) * doorSquareFeet + windows * windowSquareFeet) * SQUARE_FOOT;
  const area = BigInt(walls.perimeter) * BigInt(walls.height) - openings;
  if (area <= 0n) return notKnown('Not known: the openings would be larger than the walls.');
  return {
    area,
    basis: 'walls less openings',
    how: `Perimeter times height, ${openingWords(doors, windows, doorSquareFeet, windowSquareFeet)}.${rest}`,
  };
}

/** What was taken off for openings, which nobody measured, and what wasn't because nobody counted it. */
function openingWords(
  doors: number | undefined,
  windows: number,
  doorSquareFeet: number,
  windowSquareFeet: number,
): string {
  const off = [
    ...(doors === undefined || doors === 0 ? [] : [`${doorSquareFeet} sq ft a door (${doors})`]),
    ...(windows === 0 ? [] : [`${windowSquareFeet} sq ft a window (${windows})`]),
  ];
  const absent = [
    ...(doors === undefined ? ['doors weren’t counted'] : []),
    ...(windows === 0 ? ['no window is recorded'] : []),
  ];
  return [
    off.length === 0 ? 'nothing taken off' : `less ${off.join(' and ')} as is usual without measures`,
    ...(absent.length === 0 ? [] : [absent.join(' and ')]),
  ].join('; ');
}

interface Waste {
  readonly percent: number;
  readonly basis: FlooringNeed['wasteBasis'];
  readonly rule: string;
}

function wasteOf(finish: Finish, kind: 'flooring' | 'tile', table: TradeQuantities): Waste {
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

function flooringNeed(finish: Finish, area: bigint, waste: Waste, table: TradeQuantities): FlooringNeed {
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

const ceilDivide = (top: bigint, bottom: bigint): bigint => (top + bottom - 1n) / bottom;

interface Coverage {
  readonly squareFeet: number;
  readonly basis: PaintNeed['coverageBasis'];
  readonly rule: string;
}

function coverageOf(finish: Finish, { paintCoverage }: TradeQuantities): Coverage | undefined {
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

function paintNeed(finish: Finish, area: bigint, coverage: Coverage): PaintNeed {
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
