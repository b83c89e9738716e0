/**
 * Photos of a piece of work whose days can't be right: an "after" that is older than its "before", or one that was
 * taken on the wrong side of the day the work claims.
 *
 * As with other dates, a pair is wrong only if it is wrong whatever the dates leave open. The camera's clock may
 * itself be wrong, so this is a warning.
 */
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import type { Cameras } from '../facts/camera.js';
import { type HouseDate, printDate } from '../facts/date.js';
import type { House, WorkItem } from '../facts/house.js';
import { type PhotoDay, photoDay } from './photo-days.js';

interface Dated {
  readonly id: string;
  readonly day: PhotoDay;
}

export function checkPhotoDates(house: House, cameras: Cameras): Diagnostic[] {
  return house.work.flatMap((item, index) => {
    const dated = (id: string | undefined): Dated | undefined => {
      const day = id === undefined ? undefined : photoDay(house, cameras, id);
      return id === undefined || day === undefined ? undefined : { id, day };
    };
    const before = dated(item.photos?.before);
    const after = dated(item.photos?.after);
    const swapped = olderAfter(before, after, index);
    // Two photos the wrong way round also contradict the day of the work; that is one mistake.
    return swapped === undefined
      ? [...tooEarly(item, after, index), ...tooLate(item, before, index)]
      : [swapped];
  });
}

function olderAfter(
  before: Dated | undefined,
  after: Dated | undefined,
  index: number,
): Diagnostic | undefined {
  if (before === undefined || after === undefined) return undefined;
  const [{ latest }, { earliest }] = [after.day.date, before.day.date];
  const wrongDay = latest !== undefined && earliest !== undefined && latest < earliest;
  // Two photos of one day can still be told apart by the camera's time.
  const [earlier, later] = [after.day.takenAt, before.day.takenAt];
  const wrongTime = earlier !== undefined && later !== undefined && earlier < later;
  if (!wrongDay && !wrongTime) return undefined;
  const at = ({ date, takenAt }: PhotoDay): string =>
    wrongDay ? printDate(date) : `${printDate(date)}, ${takenAt?.slice(11, 16)}`;
  return {
    code: 'tally.photo-date',
    severity: 'warning',
    path: ['work', index, 'photos', 'after'],
    message: `the photo after the work, ${after.id} (${at(after.day)}), is older than the one before it, ${before.id} (${at(before.day)})`,
    hints: [
      `if they stand the wrong way round:  before: ${after.id}  and  after: ${before.id}`,
      correctDay(after),
      ...(before.day.by === 'entry' ? [correctDay(before)] : []),
    ],
  };
}

/** After the work, and taken before the work claims it was done. */
function tooEarly({ done, what, photos }: WorkItem, after: Dated | undefined, index: number): Diagnostic[] {
  const claimed = done?.earliest;
  const day = after?.day.date.latest;
  if (after === undefined || done === undefined || claimed === undefined || day === undefined) return [];
  if (day >= claimed) return [];
  const other = photos?.before === undefined ? [ifOther('before', after)] : [];
  return [wrongSide('after', index, what, after, done, [correctDone(done, day), ...other])];
}

/** Before the work, and taken after it was done. */
function tooLate({ done, what, photos }: WorkItem, before: Dated | undefined, index: number): Diagnostic[] {
  const claimed = done?.latest;
  const day = before?.day.date.earliest;
  if (before === undefined || done === undefined || claimed === undefined || day === undefined) return [];
  if (day <= claimed) return [];
  const other = photos?.after === undefined ? [ifOther('after', before)] : [];
  return [wrongSide('before', index, what, before, done, [...other, correctDone(done, day)])];
}

/** A photo on one side of the work, taken on the other side of the day it was done. */
function wrongSide(
  side: Side,
  index: number,
  what: string,
  photo: Dated,
  done: HouseDate,
  hints: readonly string[],
): Diagnostic {
  const day = printDate(photo.day.date);
  return {
    code: 'tally.photo-date',
    severity: 'warning',
    path: ['work', index, 'photos', side],
    message: `${photo.id} is to show “${what}” ${side} the work, but was taken (${day}) ${otherSide(side)} it was done (${printDate(done)})`,
    hints: [...hints, correctDay(photo)],
  };
}

type Side = 'before' | 'after';

const otherSide = (side: Side): Side => (side === 'before' ? 'after' : 'before');

const ifOther = (side: Side, { id }: Dated): string =>
  `if it shows the place ${side} the work:  ${side}: ${id}`;

const correctDone = (done: HouseDate, day: string): string =>
  `if  done: ${done.written}  is wrong, correct it, for example  done: ${day}`;

/** The day of the photo itself: typed by the writer, or given by a clock that may be wrong. */
const correctDay = ({ id, day }: Dated): string =>
  day.by === 'entry'
    ? `if the day of the photo is wrong, correct  taken:  of ${id}`
    : `if the camera’s clock was wrong, add  taken:  with the right day to ${id} under photos:`;
