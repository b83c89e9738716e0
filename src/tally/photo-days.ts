/** When a photo was taken: the day its entry gives, else the day and time by the camera's own clock. */
import type { Cameras } from '../facts/camera.js';
import { type HouseDate, printDate } from '../facts/date.js';
import { dayWords } from '../facts/date-moment.js';
import type { House } from '../facts/house.js';

export interface PhotoDay {
  /** First and last day it can be, YYYY-MM-DD; undefined where it is open. */
  readonly earliest: string | undefined;
  readonly latest: string | undefined;
  /** In words: "11 April 2026". */
  readonly words: string;
  /** The camera's day and time, if the day is the camera's. */
  readonly takenAt: string | undefined;
}

/** What the writer gives goes before the camera, whose clock may be wrong. Undefined where neither says. */
export function photoDay(house: House, cameras: Cameras, id: string): PhotoDay | undefined {
  return dayOf(house.photos[id]?.taken, cameras.get(id)?.takenAt);
}

export function dayOf(taken: HouseDate | undefined, takenAt: string | undefined): PhotoDay | undefined {
  if (taken !== undefined)
    return {
      earliest: taken.earliest,
      latest: taken.latest,
      words: printDate(taken),
      takenAt: undefined,
    };
  if (takenAt === undefined) return undefined;
  const day = takenAt.slice(0, 10);
  return { earliest: day, latest: day, words: dayWords(day), takenAt };
}
