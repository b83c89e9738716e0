/** On which days pieces of work may have been going on, and which of them may fall within so many days. */
import { Temporal } from 'temporal-polyfill';
import type { WorkItem } from '../facts/house.js';

/** One piece of work with the days on which it may have been going on. */
export interface DatedWork {
  readonly item: WorkItem;
  /** Its position under `work:`. */
  readonly index: number;
  /** Days since 1970; infinite where the date is open or not known. */
  readonly first: number;
  readonly last: number;
}

export function datedWork(item: WorkItem, index: number): DatedWork {
  const from = item.started?.earliest ?? item.done?.earliest;
  const to = item.done?.latest;
  const last = to === undefined ? Number.POSITIVE_INFINITY : dayNumber(to);
  const first = from === undefined ? Number.NEGATIVE_INFINITY : dayNumber(from);
  // A beginning after the end is a slip; the work still was where its end is.
  return { item, index, first: Math.min(first, last), last };
}

const dayNumber = (iso: string): number =>
  Temporal.PlainDate.from('1970-01-01').until(iso, { largestUnit: 'days' }).days;

/**
 * Pieces that lie, or may lie, within `days` of each other. A piece can be in two groups: the rule looks at any
 * thirty days, and does not chain one to the next. A group that is part of another is left out.
 */
export function gatherWithin(pieces: readonly DatedWork[], days: number): DatedWork[][] {
  // The widest group of any stretch is met by letting the stretch begin on some piece's last possible day.
  const groups = pieces
    .map(({ last }) => last)
    .sort((a, b) => a - b)
    .map((begin) => pieces.filter((piece) => piece.last >= begin && piece.first <= begin + days));
  // The piece that a stretch begins with is in no later one, so only an earlier group can hold another.
  return groups.filter(
    (group, at) => !groups.slice(0, at).some((earlier) => group.every((piece) => earlier.includes(piece))),
  );
}

/** Whether all of a group surely lies within `days`; open dates leave it open, which is no. */
export function surelyWithin(group: readonly DatedWork[], days: number): boolean {
  const spread = Math.max(...group.map(({ last }) => last)) - Math.min(...group.map(({ first }) => first));
  return group.length < 2 || spread <= days;
}
