/**
 * The measured area beside the public record's figure. The two are never averaged and neither is corrected; what
 * may explain the difference is drawn from the facts of the folder only.
 */
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import { type HouseDate, printDate } from '../facts/date.js';
import { SQUARE_FOOT, wholeSquareFeet } from '../facts/floor-area.js';
import type { House, WorkItem } from '../facts/house.js';
import { groupThousands } from '../facts/written-number.js';
import type { Areas, RecordComparison, StructureArea } from './area-answer.js';
import { listWords } from './area-words.js';

type PublicRecord = NonNullable<House['record']>;

export type Compared = Pick<Areas, 'levels' | 'byClass' | 'structures' | 'estimate' | 'readings'> & {
  /** Inside floors of the finished rooms above grade that count, added up. */
  readonly insideFinished: bigint;
};

/** Compares finished area above grade with the record; undefined if the folder holds none. */
export function compareRecord(
  house: House,
  areas: Compared,
): { comparison: RecordComparison | undefined; diagnostics: readonly Diagnostic[] } {
  const { record } = house;
  if (record === undefined) return { comparison: undefined, diagnostics: [] };
  const squareFeet = wholeSquareFeet(record.area.area);
  const above = areas.levels.filter((level) => level.grade === 'above');
  const compared = above.length === 0 ? areas.levels : above;
  const measured = compared.some((level) => level.basis !== 'none');
  const difference = measured ? areas.byClass['above-finished'].squareFeet - squareFeet : undefined;
  const words = comparisonWords(record, areas, squareFeet, difference);
  const comparison: RecordComparison = {
    squareFeet,
    source: record.source,
    difference,
    words,
    causes:
      difference === undefined || difference === 0
        ? []
        : causesOf(house, record, areas, squareFeet, difference),
  };
  const large =
    difference !== undefined && (Math.abs(difference) > 10 || Math.abs(difference) * 100 > squareFeet);
  return { comparison, diagnostics: large ? [differs(comparison)] : [] };
}

function comparisonWords(
  record: PublicRecord,
  areas: Compared,
  squareFeet: number,
  difference: number | undefined,
): string {
  const says = [record.source, record.date === undefined ? undefined : printDate(record.date)].filter(
    Boolean,
  );
  const source = says.length === 0 ? 'The public record' : `The public record (${says.join(', ')})`;
  const stated = `${source} says ${groupThousands(squareFeet)} sq ft`;
  if (difference === undefined) {
    const none = areas.levels.every((level) => level.basis === 'none') ? 'of the house' : 'above grade';
    return `${stated}. No level ${none} is measured, so there is nothing to compare.`;
  }
  const own = groupThousands(areas.byClass['above-finished'].squareFeet);
  const apart =
    difference === 0
      ? 'the same'
      : `${groupThousands(Math.abs(difference))} sq ft ${difference > 0 ? 'more' : 'less'} than the record`;
  return `${stated}. The finished area above grade given here is ${own} sq ft, ${apart}.`;
}

function differs(comparison: RecordComparison): Diagnostic {
  return {
    code: 'tally.record-differs',
    severity: 'note',
    path: ['record', 'area'],
    message: comparison.words.replace(/\.$/, '').replace(' sq ft. The', ' sq ft; the'),
    hints: [
      ...comparison.causes.map((cause) => cause.replace(/\.$/, '')),
      'both figures are printed; check the outlines if nothing explains the difference',
    ],
  };
}

/** About the same: within 10 sq ft or a tenth. */
const isAbout = (a: number, b: number): boolean => 10 * Math.abs(a - b) <= Math.max(100, Math.abs(b));

function causesOf(
  house: House,
  record: PublicRecord,
  areas: Compared,
  squareFeet: number,
  difference: number,
): string[] {
  return [
    ...shortcut(record, areas),
    ...(difference < 0 ? countedThere(areas, -difference) : []),
    ...(difference < 0 && areas.estimate
      ? ['The figure here is an estimate that leaves out walls or rooms; the record’s may hold them.']
      : []),
    ...laterWork(house, record.date),
    ...measuredInside(areas, squareFeet, difference),
    ...(Math.abs(difference) <= 10 ? ['The record’s figure may come from rounded lengths.'] : []),
  ];
}

/** The first floor times one and a half, for a half storey: an old habit of assessors that measures nothing. */
function shortcut(record: PublicRecord, areas: Compared): string[] {
  const stated = record.area.area;
  return areas.levels.flatMap((level) => {
    if (level.gross === undefined || level.grade === 'below') return [];
    const doubled = 2n * stated - 3n * level.gross;
    const off = doubled < 0n ? -doubled : doubled;
    if (off > 2n * SQUARE_FOOT) return [];
    return [
      `The record’s figure is 1.5 times the area of ${level.name}: an old shortcut for a half storey, not a measurement.`,
    ];
  });
}

/** What the record may count that finished area above grade doesn't hold. */
function countedThere(areas: Compared, missing: number): string[] {
  const { byClass, structures, readings } = areas;
  const may = (what: string, size: number): string[] =>
    size > 0 && isAbout(size, missing)
      ? [`The record may count ${what} (${groupThousands(size)} sq ft).`]
      : [];
  const each = (list: readonly StructureArea[], about: string) =>
    list.flatMap(({ name, squareFeet }) =>
      squareFeet === undefined ? [] : may(`${about}${name}`, squareFeet),
    );
  return [
    ...may('the finished area below grade', byClass['below-finished'].squareFeet),
    ...may('the finished area with too low a ceiling', byClass['non-standard'].squareFeet),
    ...may('the finished area that is not joined to the house', byClass.disconnected.squareFeet),
    ...may('the unfinished area', byClass.unfinished.squareFeet),
    ...each(structures.garage, 'the garage as living area: '),
    ...each(structures.open, 'an open structure as enclosed: '),
    ...each(structures['not-all-year'], 'a space that is not usable all year: '),
    ...each(structures.outbuildings, 'an outbuilding: '),
    ...readings
      .filter((reading) => reading.used === 'fail')
      .flatMap((reading) => may(`${reading.room}, whose reading is open`, reading.countedIfPass)),
  ];
}

/** Work on the structure since; a date known only as a span may lie on either side of the record's. */
function laterWork(house: House, dated: HouseDate | undefined): string[] {
  const end = dated?.latest;
  if (dated === undefined || end === undefined) return [];
  const changed = house.work.filter((item) => item.structural && (item.done?.latest ?? '9999') > end);
  const surely = changed.filter((item) => item.done?.earliest !== undefined && item.done.earliest > end);
  const unsure = changed.filter((item) => item.done !== undefined && !surely.includes(item));
  const say = (items: readonly WorkItem[], verb: string) =>
    items.length === 0
      ? []
      : [
          `The record (${printDate(dated)}) ${verb} older than work on the structure: ${listWords(items.map((item) => item.what))}.`,
        ];
  return [...say(surely, 'is'), ...say(unsure, 'may be')];
}

function measuredInside(areas: Compared, squareFeet: number, difference: number): string[] {
  const inside = wholeSquareFeet(areas.insideFinished);
  const outside = areas.levels.some(
    (level) => level.basis === 'outside' || level.basis === 'grown-from-inside',
  );
  if (difference <= 0 || !outside || inside === 0) return [];
  if (50 * Math.abs(inside - squareFeet) > Math.max(500, squareFeet)) return [];
  return [
    `The record may have been measured inside: the finished rooms above grade add up to ${groupThousands(inside)} sq ft between their walls.`,
  ];
}
