/** Rooms that are counted as bedrooms, beside what a model code asks of a room to sleep in. */
import type { Diagnostic } from '../../diagnostics/diagnostic.js';
import type { FactPath } from '../../diagnostics/fact-path.js';
import { SQUARE_FOOT } from '../../facts/floor-area.js';
import type { House, Room } from '../../facts/house.js';
import { FOOT, printLength } from '../../facts/length.js';
import { nameOf } from '../../facts/place-name.js';
import { areaWords } from '../area-words.js';
import { isSloped, readSlope, type SlopedCeiling } from '../ceiling.js';
import { type HabitableRules, habitableRules } from '../tables/habitable.js';
import { safetyRules } from '../tables/safety.js';
import { type ClashSources, clashOf } from './clash.js';

const ASK =
  'ask the building office whether it may be offered as a bedroom; if not, write another  use: , for example  use: office';

export function bedrooms({ house, areas, observations }: ClashSources): Diagnostic[] {
  const rules = habitableRules();
  return house.rooms.flatMap((room, index): Diagnostic[] => {
    if (room.use !== 'bedroom') return [];
    const path: FactPath = ['rooms', index];
    const small = tooSmall(room, path, areas.roomFloors.get(room.id), rules);
    return [
      ...wayOut(room, path, observations),
      ...(small.length > 0 ? small : tooNarrow(room, path, rules)),
      ...tooLow(house, room, path, rules),
    ];
  });
}

function wayOut(room: Room, path: FactPath, observations: ClashSources['observations']): Diagnostic[] {
  const name = nameOf(room);
  if (room.windows.length === 0)
    return [
      clashOf({
        severity: 'note',
        path: [...path, 'use'],
        message: 'this room is counted as a bedroom, and no window or door to escape by is recorded in it',
        hints: [
          `if it has one, open it and tape it:  windows: [{ name: south window, clear-width: 32", clear-height: 26", sill: 28" }]`,
          ASK,
        ],
      }),
    ];
  const seen = observations.find(({ id, topic }) => topic === 'escape opening' && id === `escape-${room.id}`);
  if (seen?.stands !== 'outside the figure') return [];
  return [
    clashOf({
      severity: 'warning',
      path: [...path, 'use'],
      beside: [...path, 'windows'],
      message: `${name} is counted as a bedroom, and no opening in it is as large as a model code asks to escape by (${sourceWords(safetyRules().escapeOpening.source)}); the nearest: ${seen.observed}`,
      hints: [
        'open it as far as it goes, tape it again, and correct  clear-width: , clear-height:  or  sill:',
        ASK,
      ],
    }),
  ];
}

/** Floor under the lowest part of a slope is no floor to this rule. */
function tooSmall(
  room: Room,
  path: FactPath,
  floor: bigint | undefined,
  rules: HabitableRules,
): Diagnostic[] {
  const { figures } = rules.room;
  const slope = isSloped(room.ceiling)
    ? readSlope(inFeet(room.ceiling), floor, nameOf(room), [...path, 'ceiling']).slope
    : undefined;
  const counting = slope?.counted ?? floor;
  if (counting === undefined || counting >= BigInt(figures.minSquareFeet) * SQUARE_FOOT) return [];
  const low =
    slope !== undefined && slope.counted < slope.floor
      ? ` at ${rules.lowParts.figures.minSlopeFeet} ft or higher`
      : '';
  const word = room.size !== undefined ? 'size' : room.outline !== undefined ? 'outline' : 'ceiling';
  return [
    under(room, [...path, word], path, {
      is: `has ${areaWords(counting)}${low}`,
      asks: `${figures.minSquareFeet} sq ft`,
      source: low === '' ? rules.room.source : rules.lowParts.source,
    }),
  ];
}

/** The code has its heights in feet, whatever the tape; the standard for areas has others for metres. */
const inFeet = (ceiling: SlopedCeiling): SlopedCeiling =>
  ceiling.highest === undefined
    ? ceiling
    : { ...ceiling, highest: { ...ceiling.highest, reading: 'inches' } };

function tooNarrow(room: Room, path: FactPath, rules: HabitableRules): Diagnostic[] {
  if (room.size === undefined) return [];
  const { width, depth } = room.size;
  const short = width.units < depth.units ? width : depth;
  const { minSideFeet } = rules.room.figures;
  if (short.units >= minSideFeet * FOOT) return [];
  return [
    under(room, [...path, 'size'], path, {
      is: `is ${printLength(short)} across at its narrow side`,
      asks: `${minSideFeet} ft in any direction`,
      source: rules.room.source,
    }),
  ];
}

function tooLow(house: House, room: Room, path: FactPath, rules: HabitableRules): Diagnostic[] {
  const at = house.levels.findIndex(({ id }) => id === room.level);
  const ceiling = room.ceiling ?? house.levels[at]?.ceiling;
  if (ceiling === undefined || isSloped(ceiling)) return [];
  const { minFeet } = rules.ceiling.figures;
  if (ceiling.units >= minFeet * FOOT) return [];
  return [
    under(room, room.ceiling === undefined ? ['levels', at, 'ceiling'] : [...path, 'ceiling'], path, {
      is: `has a ceiling of ${printLength(ceiling)}`,
      asks: `${minFeet} ft`,
      source: rules.ceiling.source,
    }),
  ];
}

interface Under {
  readonly is: string;
  readonly asks: string;
  readonly source: HabitableRules['room']['source'];
}

const under = (room: Room, measured: FactPath, path: FactPath, { is, asks, source }: Under): Diagnostic =>
  clashOf({
    severity: 'warning',
    path: [...path, 'use'],
    beside: measured,
    message: `${nameOf(room)} is counted as a bedroom, and it ${is}; for new work a model code asks ${asks} of a room to sleep in (${sourceWords(source)})`,
    hints: [`tape it again, and correct  ${measured.at(-1)}:`, ASK],
  });

/** Without the numbers of other editions. */
const sourceWords = ({ title, section }: Under['source']): string => `${title}, ${section.split(' (')[0]}`;
