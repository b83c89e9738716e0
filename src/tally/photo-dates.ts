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
  const [earlier, later] = [after.day, before.day];
  const wrongDay =
    earlier.latest !== undefined && later.earliest !== undefined && earlier.latest < later.earliest;
  // Two photos of one day can still be told apart by the camera's time.
  const wrongTime =
    earlier.takenAt !== undefined && later.takenAt !== undefined && earlier.takenAt < later.takenAt;
  if (!wrongDay && !wrongTime) return undefined;
  const at = (day: PhotoDay): string =>
    wrongDay ? day.words : `${day.words}, ${day.takenAt?.slice(11, 16)}`;
  return {
    code: 'tally.photo-date',
    severity: 'warning',
    path: ['work', index, 'photos', 'after'],
    message: `the photo after the work, ${after.id} (${at(after.day)}), is older than the one before it, ${before.id} (${at(before.day)})`,
    hints: [
      `if they stand the wrong way round:  before: ${after.id}  and  after: ${before.id}`,
      correctDay(after),
      ...(before.day.takenAt === undefined ? [correctDay(before)] : []),
    ],
  };
}

/** After the work, and taken before the work claims it was done. */
function tooEarly({ done, what, photos }: WorkItem, after: Dated | undefined, index: number): Diagnostic[] {
  const claimed = done?.earliest;
  if (done === undefined || claimed === undefined || after?.day.latest === undefined) return [];
  if (after.day.latest >= claimed) return [];
  return [
    {
      code: 'tally.photo-date',
      severity: 'warning',
      path: ['work', index, 'photos', 'after'],
      message: `${after.id} is to show “${what}” after the work, but was taken (${after.day.words}) before it was done (${printDate(done)})`,
      hints: [
        ...correctDone(done, after.day.latest),
        ...(photos?.before === undefined
          ? [`if it shows the place before the work:  before: ${after.id}`]
          : []),
        correctDay(after),
      ],
    },
  ];
}

/** Before the work, and taken after it was done. */
function tooLate({ done, what, photos }: WorkItem, before: Dated | undefined, index: number): Diagnostic[] {
  const claimed = done?.latest;
  if (done === undefined || claimed === undefined || before?.day.earliest === undefined) return [];
  if (before.day.earliest <= claimed) return [];
  return [
    {
      code: 'tally.photo-date',
      severity: 'warning',
      path: ['work', index, 'photos', 'before'],
      message: `${before.id} is to show “${what}” before the work, but was taken (${before.day.words}) after it was done (${printDate(done)})`,
      hints: [
        ...(photos?.after === undefined
          ? [`if it shows the place after the work:  after: ${before.id}`]
          : []),
        ...correctDone(done, before.day.earliest),
        correctDay(before),
      ],
    },
  ];
}

const correctDone = (done: HouseDate, day: string): string[] => [
  `if  done: ${done.written}  is wrong, correct it, for example  done: ${day}`,
];

/** The day of the photo itself: typed by the writer, or given by a clock that may be wrong. */
const correctDay = ({ id, day }: Dated): string =>
  day.takenAt === undefined
    ? `if the day of the photo is wrong, correct  taken:  of ${id}`
    : `if the camera’s clock was wrong, add  taken:  with the right day to ${id} under photos:`;
