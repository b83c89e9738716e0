/** Photos that were taken in one go: a finger held on the button. */
import type { House } from '../facts/house.js';
import { dayOfSeen, type SeenPhoto } from './photo-seen.js';

export interface Burst {
  readonly photos: readonly SeenPhoto[];
  /**
   * The one to look at first: one that the facts name, else the middle one, when the hand has settled (common
   * practice, no source).
   */
  readonly best: SeenPhoto;
}

const MOST_SECONDS = 2;

/**
 * Neighbours in time, at most two seconds apart, whose names count on and whose size is the same. A photo whose entry
 * corrects the camera's day is in none: what that clock says is not when it was taken.
 */
export function findBursts(house: House, inOrder: readonly SeenPhoto[]): Burst[] {
  const bursts: Burst[] = [];
  let run: SeenPhoto[] = [];
  const close = (): void => {
    const best = run.find(({ id }) => id !== undefined) ?? run[Math.floor((run.length - 1) / 2)];
    if (run.length > 1 && best !== undefined) bursts.push({ photos: run, best });
    run = [];
  };
  const secondsOf = (photo: SeenPhoto): number => seconds(dayOfSeen(house, photo)?.takenAt);
  for (const photo of inOrder) {
    const last = run.at(-1);
    if (last !== undefined && !(soonAfter(secondsOf(last), secondsOf(photo)) && alike(last, photo))) close();
    run.push(photo);
  }
  close();
  return bursts;
}

/** No number is none of this. */
const soonAfter = (first: number, second: number): boolean =>
  second - first >= 0 && second - first <= MOST_SECONDS;

const alike = (a: SeenPhoto, b: SeenPhoto): boolean =>
  a.width === b.width && a.height === b.height && countsOn(a.name, b.name);

/** Of a camera's local time, only to be compared with another one's; NaN where there is none. */
const seconds = (takenAt: string | undefined): number => Date.parse(`${takenAt ?? ''}Z`) / 1000;

/** IMG_0412.jpg and IMG_0413.jpg. */
function countsOn(a: string, b: string): boolean {
  const [first, second] = [numbered(a), numbered(b)];
  return (
    first !== undefined &&
    second !== undefined &&
    first.rest === second.rest &&
    second.number - first.number === 1
  );
}

function numbered(name: string): { rest: string; number: number } | undefined {
  const last = /\d{1,9}(?=\D*$)/.exec(name);
  if (last === null) return undefined;
  const [digits] = last;
  const ending = name.slice(last.index + digits.length).toLowerCase();
  return { rest: `${name.slice(0, last.index)}\u0000${ending}`, number: Number(digits) };
}
