/**
 * How much of a finish a room took: net area, boxes of flooring or tile, gallons of paint.
 *
 * For reordering and touch-up notes. Everything rests on trade conventions, never on a standard, and each
 * answer says which. Start reading at `deriveQuantities`.
 */
import type { FactPath } from '../diagnostics/fact-path.js';
import { SQUARE_FOOT } from '../facts/floor-area.js';
import type { Finish, House, Room, Structure } from '../facts/house.js';
import { type FlooringNeed, flooringNeed, wasteOf } from './flooring-need.js';
import { coverageOf, type PaintNeed, paintNeed } from './paint-need.js';
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
const ROLLED = /\bsheet\b|carpet|linoleum|\broll\b/;

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
  const beside = home.finishes.filter(
    (other) => other !== finish && other.on === finish.on && other.did !== 'removed',
  ).length;
  const rest =
    beside === 0 ? '' : ` Other finishes of the same ${finish.on} are in it: their part wasn’t taken off.`;
  if (finish.on === 'walls' && 'windows' in home) return wallArea(home, measures, table, rest);
  const floor = measures.roomFloors.get(home.id);
  if (floor === undefined) return notKnown('Not known: the size of the room isn’t recorded.');
  if (finish.on === 'ceiling' && 'ceiling' in home && isSloped(home.ceiling))
    return notKnown('Not known: the ceiling slopes, and its own area isn’t stated.');
  const how = finish.on === 'ceiling' ? 'Flat ceiling, as large as the floor inside.' : 'Floor inside.';
  return { area: floor, basis: 'floor of the room', how: `${how}${rest}` };
}

const isSloped = (ceiling: Room['ceiling']): boolean => ceiling !== undefined && !('units' in ceiling);

function wallArea(home: Room, measures: RoomMeasures, table: TradeQuantities, rest: string): Net {
  const walls = measures.roomWalls.get(home.id);
  if (walls === undefined) return notKnown('Not known: the size of the room isn’t recorded.');
  if (walls.height === undefined) return notKnown('Not known: the height of the walls isn’t recorded.');
  const { doorSquareFeet, windowSquareFeet } = table.wallOpenings.figures;
  const { doors } = home;
  const windows = home.windows.length;
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
