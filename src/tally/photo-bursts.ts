/** Photos that were taken in one go: a finger held on the button. */
import type { SeenPhoto } from './photo-proposals.js';

export interface Burst {
  readonly photos: readonly SeenPhoto[];
  /**
   * The one to look at first: one that the facts name, else the middle one, when the hand has settled (common
   * practice, no source).
   */
  readonly best: SeenPhoto;
}

const MOST_SECONDS = 2;

/** Neighbours in time, at most two seconds apart, whose names count on and whose size is the same. */
export function findBursts(inOrder: readonly SeenPhoto[]): Burst[] {
  const bursts: Burst[] = [];
  let run: SeenPhoto[] = [];
  const close = (): void => {
    const best = run.find(({ id }) => id !== undefined) ?? run[Math.floor((run.length - 1) / 2)];
    if (run.length > 1 && best !== undefined) bursts.push({ photos: run, best });
    run = [];
  };
  for (const photo of inOrder) {
    const last = run.at(-1);
    if (last !== undefined && !follows(last, photo)) close();
    run.push(photo);
  }
  close();
  return bursts;
}

function follows(a: SeenPhoto, b: SeenPhoto): boolean {
  if (a.takenAt === undefined || b.takenAt === undefined) return false;
  const seconds = (secondsOf(b.takenAt) ?? Number.NaN) - (secondsOf(a.takenAt) ?? Number.NaN);
  return seconds <= MOST_SECONDS && a.width === b.width && a.height === b.height && countsOn(a.name, b.name);
}

/** Seconds of a camera's local time, only to be compared with another one's. */
export function secondsOf(takenAt: string): number | undefined {
  const milliseconds = Date.parse(`${takenAt}Z`);
  return Number.isNaN(milliseconds) ? undefined : milliseconds / 1000;
}

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
  const match = /^(.*?)(\d{1,9})(\D*)$/.exec(name);
  return match === null
    ? undefined
    : { rest: `${match[1]}\u0000${(match[3] ?? '').toLowerCase()}`, number: Number(match[2]) };
}
