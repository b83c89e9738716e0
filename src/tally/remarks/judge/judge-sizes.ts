/** Living area, lot, room sizes and heights. */
import { ACRE, wholeSquareFeet } from '../../../facts/floor-area.js';
import { FOOT } from '../../../facts/length.js';
import { nameOf } from '../../../facts/place-name.js';
import type { Size } from '../../../facts/size.js';
import { groupThousands } from '../../../facts/written-number.js';
import type { FactSaid, Judgement, Known } from '../items/known.js';
import type { PlaceMeant } from '../items/places.js';
import { roomArea } from '../items/room-areas.js';
import { isSameSize, type Sides, shortAndLong } from './judge-extents.js';
import { judged, unknown } from './judged.js';

/** How far a figure may be from the fact: a hundredth plain, three behind "about". */
const PLAIN = 0.01;

const ABOUT = 0.03;
const ROOM_SLACK = 0.1;
const ROOM_RULE = 'size.room';

function nearEnough(claimed: number, actual: number, hedge: string | undefined): boolean {
  if (hedge === 'over') return actual >= claimed - 0.5;
  if (hedge === 'under') return actual <= claimed + 0.5;
  if (hedge === 'nearly') return actual <= claimed * 1.005 && actual >= claimed * (1 - ABOUT);
  const slack = hedge === 'about' ? ABOUT : PLAIN;
  return Math.abs(claimed - actual) <= Math.max(1, actual * slack);
}

export interface SizeClaim {
  readonly value: number;
  readonly hedge: string | undefined;
  /** "per county records". */
  readonly byRecord: boolean;
  /** Which part of the house is meant. */
  readonly part: 'whole' | 'above' | 'below' | 'everything' | 'level';
}

export function judgeSize(known: Known, claim: SizeClaim): Judgement {
  const rule = 'size.living-area';
  const { areas } = known.tally;
  const above = areas.byClass['above-finished'].squareFeet;
  const below = areas.byClass['below-finished'].squareFeet;
  const recorded = recordOf(known);
  if (claim.byRecord)
    return recorded === undefined
      ? unknown(rule, 'the folder holds no public record of the size')
      : byRecord(rule, recorded, claim, `${groupThousands(recorded.feet)} sq ft per the ${recorded.source}`);
  if (above + below === 0)
    return recorded === undefined
      ? unknown(rule, 'the folder holds no size')
      : byRecord(rule, recorded, claim);
  const sums = sumsOf(areas, claim.part);
  const ok =
    claim.hedge === 'over'
      ? nearEnough(claim.value, Math.max(...sums), 'over')
      : sums.some((sum) => nearEnough(claim.value, sum, claim.hedge));
  const [plainest = above] = sums;
  const told = measuredFact(known, above, below);
  const words = `${groupThousands(plainest)} sq ft`;
  if (ok || recorded === undefined) return judged(ok, rule, `the folder says ${words}`, [told], words);
  const isOfRecord = nearEnough(claim.value, recorded.feet, claim.hedge);
  return judged(
    false,
    rule,
    `the folder says ${words}${isOfRecord ? '; the figure is the public record’s' : ''}`,
    [told, recorded.fact],
    words,
  );
}

interface Recorded {
  readonly feet: number;
  readonly source: string;
  readonly fact: FactSaid;
}

function recordOf({ house: { record } }: Known): Recorded | undefined {
  if (record === undefined) return undefined;
  const feet = wholeSquareFeet(record.area.area);
  const { source = 'public record', evidence } = record;
  return {
    feet,
    source,
    fact: { path: ['record'], words: `${groupThousands(feet)} sq ft by the ${source}`, evidence },
  };
}

const byRecord = (rule: string, { feet, fact }: Recorded, claim: SizeClaim, instead?: string): Judgement =>
  judged(
    nearEnough(claim.value, feet, claim.hedge),
    rule,
    `the record says ${groupThousands(feet)} sq ft`,
    [fact],
    instead,
  );

function measuredFact({ house: { measured } }: Known, above: number, below: number): FactSaid {
  const finished = `${groupThousands(above)} sq ft finished above grade${below > 0 ? `, ${groupThousands(below)} sq ft finished below` : ''}`;
  if (measured === undefined) return { path: ['levels'], words: finished, evidence: [] };
  const by = measured.by === 'owner' ? 'the owner' : measured.by;
  return { path: ['measured'], words: `${finished}, measured by ${by}`, evidence: measured.evidence };
}

/** Square feet that a part of the house may be said to have, the plainest first. */
function sumsOf({ byClass, levels }: Known['tally']['areas'], part: SizeClaim['part']): number[] {
  const above = byClass['above-finished'].squareFeet;
  const below = byClass['below-finished'].squareFeet;
  const unfinished = byClass.unfinished.squareFeet;
  const whole = below > 0 ? [above, above + below] : [above];
  switch (part) {
    case 'whole':
      return whole;
    case 'above':
      return [above];
    case 'below':
      return [below, unfinished].filter((area) => area > 0);
    case 'everything':
      return [...whole, above + below + unfinished];
    case 'level':
      return levels
        .flatMap((level) => [
          ...Object.values(level.byClass).map(wholeSquareFeet),
          wholeSquareFeet(Object.values(level.byClass).reduce((sum, area) => sum + area, 0n)),
        ])
        .filter((area) => area > 0);
  }
}

export function judgeLot(
  known: Known,
  acres: number,
  decimals: number | undefined,
  hedge: string | undefined,
): Judgement {
  const rule = 'size.lot';
  const lot = known.house.house.lot;
  if (lot?.value === undefined) return unknown(rule, 'the folder does not say how large the lot is');
  const actual = Number(lot.value.area) / Number(ACRE);
  const fact: FactSaid = {
    path: ['house', 'lot'],
    words: `lot: ${lot.value.written}${lot.was === undefined ? '' : ` (corrected; was ${lot.was})`}`,
    evidence: lot.evidence,
  };
  const rounding = decimals === undefined ? actual * 0.06 : 0.5 * 10 ** -decimals + 1e-9;
  const ok =
    hedge === 'over'
      ? actual >= acres - 1e-9
      : hedge === 'under'
        ? actual <= acres + 1e-9
        : hedge === 'nearly'
          ? actual <= acres && actual >= acres * 0.93
          : Math.abs(acres - actual) <=
            (hedge === 'about'
              ? Math.max(rounding, actual * 0.06)
              : Math.min(rounding, Math.max(actual * 0.06, 0.006)));
  return judged(
    ok,
    rule,
    `the folder says ${lot.value.written}`,
    [fact],
    `${Math.round(actual * 100) / 100}-acre lot`,
  );
}

/** "13 x 17 living room": feet, within half a foot. */
export function judgeDimensions(known: Known, feet: readonly [number, number], place: PlaceMeant): Judgement {
  const sized = [...known.house.rooms, ...known.house.structures]
    .filter(({ id }) => place.ids.includes(id))
    .flatMap((one) => (one.size === undefined ? [] : [{ one, sides: sidesOf(one.size) }]));
  if (sized.length === 0) return unknown(ROOM_RULE, 'the folder does not give that size');
  const words = sized.map(
    ({ one, sides: { short, long } }) => `${nameOf(one)}: ${rounded(short)} by ${rounded(long)} ft`,
  );
  const claimed = shortAndLong(...feet);
  return judgedOf(
    sized.some(({ sides }) => isSameSize(sides, claimed)),
    words,
  );
}

/** "9-foot ceilings": within two inches of a height that the folder gives. */
export function judgeCeiling(
  known: Known,
  feet: number,
  all: boolean,
  places: readonly PlaceMeant[] = [],
): Judgement {
  const rule = 'size.ceiling';
  const everywhere = [...known.house.levels, ...known.house.rooms].flatMap((one) => {
    const { ceiling } = one;
    return ceiling !== undefined && 'units' in ceiling ? [{ one, feet: ceiling.units / FOOT }] : [];
  });
  // A room without a height of its own has its level's.
  const ids = new Set(places.flatMap((place) => place.ids));
  for (const { id, level } of known.house.rooms) if (ids.has(id)) ids.add(level);
  const there = everywhere.filter(({ one }) => ids.has(one.id));
  const heights =
    there.length > 0 ? there : everywhere.filter(({ one }) => !('grade' in one && one.grade === 'below'));
  if (heights.length === 0) return unknown(rule, 'the folder gives no height');
  const fits = heights.filter((height) => Math.abs(height.feet - feet) <= 0.17);
  const words = heights
    .slice(0, 3)
    .map(({ one, feet: height }) => `${nameOf(one)}: ${Math.round(height * 100) / 100} ft`)
    .join('; ');
  const facts: FactSaid[] = [{ path: ['levels'], words, evidence: [] }];
  if (fits.length > 0 && (fits.length === heights.length || !all))
    return judged(true, rule, 'the folder gives that height', facts);
  return fits.length > 0
    ? { verdict: 'wider', rule, because: 'so in some, but not in all', facts, instead: words }
    : judged(false, rule, 'the folder gives other heights', facts, words);
}

/** "140 sq ft deck": the product of its sides. */
export function judgeFloor(
  known: Known,
  value: number,
  hedge: string | undefined,
  place: PlaceMeant,
): Judgement {
  const floors = [...known.house.rooms, ...known.house.structures].flatMap((one) => {
    const feet = place.ids.includes(one.id) ? roomArea(one) : undefined;
    return feet === undefined ? [] : [{ one, feet }];
  });
  if (floors.length === 0) return unknown(ROOM_RULE, 'the folder does not give that size');
  const words = floors.map(({ one, feet }) => `${nameOf(one)}: ${Math.round(feet)} sq ft`);
  return judgedOf(
    // Inside or outside its walls, by sides that were rounded: a tenth is nothing.
    floors.some(({ feet }) => nearEnough(value, feet, hedge) || Math.abs(value - feet) <= feet * ROOM_SLACK),
    words,
  );
}

/** The rooms that may be meant, each with its size in words: the first is shown. */
const judgedOf = (fits: boolean, words: readonly string[]): Judgement =>
  judged(
    fits,
    ROOM_RULE,
    `the folder says ${words[0]}`,
    [{ path: ['rooms'], words: words.join('; '), evidence: [] }],
    words[0],
  );

const rounded = (feet: number): number => Math.round(feet * 10) / 10;

const sidesOf = ({ width, depth }: Size): Sides => shortAndLong(width.units / FOOT, depth.units / FOOT);
