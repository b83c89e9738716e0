/**
 * When a photo was taken: the day its entry gives, else the day and time by the camera's own clock. The only file
 * that weighs the two against each other, and that puts photos in order.
 */
import type { Cameras } from '../facts/camera.js';
import { compareText } from '../facts/compare-text.js';
import { type HouseDate, readDate } from '../facts/date.js';
import type { House } from '../facts/house.js';

/** A photo, as far as its time is concerned. */
export interface DatedPhoto {
  /** `taken` of its entry; undefined where it has no entry, or the entry does not say. */
  readonly taken?: HouseDate | undefined;
  /** By the camera's clock: `2026-02-21T09:14:02`. */
  readonly takenAt: string | undefined;
}

export interface PhotoDay {
  /** The day, or as much of it as is known. */
  readonly date: HouseDate;
  /** The camera's day and time; undefined where the entry gives another day, since the clock was wrong then. */
  readonly takenAt: string | undefined;
  /** Who gives the day. */
  readonly by: 'entry' | 'camera';
}

/**
 * What the writer gives goes before the camera, whose clock may be wrong; on that very day, the camera knows the time
 * as well. Undefined where neither says.
 */
export function whenTaken({ taken, takenAt }: DatedPhoto): PhotoDay | undefined {
  const day = takenAt?.slice(0, 10);
  if (taken !== undefined) {
    const agreed = isOneDay(taken) && !taken.uncertain && taken.earliest === day;
    return { date: taken, takenAt: agreed ? takenAt : undefined, by: 'entry' };
  }
  const read = day === undefined ? undefined : readDate(day);
  return read?.ok === true ? { date: read.value, takenAt, by: 'camera' } : undefined;
}

/** The same of a photo that the facts name. */
export const photoDay = (house: House, cameras: Cameras, id: string): PhotoDay | undefined =>
  whenTaken({ taken: house.photos[id]?.taken, takenAt: cameras.get(id)?.takenAt });

export const isOneDay = ({ earliest, latest }: HouseDate): boolean =>
  earliest !== undefined && earliest === latest;

/**
 * In the order they were taken. What is no single day sorts by its first day, and what is open towards the past by its
 * last; photos without a time come last. Those of one second go by their names, which a camera counts up; those of
 * which no more than the day is known stay as they were.
 */
export function inTimeOrder<P extends DatedPhoto & { readonly name: string }>(photos: readonly P[]): P[] {
  return photos
    .map((photo) => ({ photo, key: sortKey(photo) }))
    .sort((a, b) => compareText(a.key, b.key))
    .map(({ photo }) => photo);
}

/** Behind every date. */
const LAST = '~';

function sortKey(photo: DatedPhoto & { readonly name: string }): string {
  const day = whenTaken(photo);
  if (day?.takenAt !== undefined) return `${day.takenAt}\u0000${photo.name}`;
  return day?.date.earliest ?? day?.date.latest ?? LAST;
}
