/** One line that says how far work on photos has come, which photo is being made, and how long it will take. */
import { visible } from './diagnostics/report.js';

export interface PhotoProgress {
  readonly house: string;
  /** File name of the photo that was begun or finished last. */
  readonly photo: string;
  readonly done: number;
  readonly all: number;
  /** Since the first photo was begun, in milliseconds. */
  readonly elapsed: number;
}

const BAR = 20;
/** What the first photos took says little about the rest. */
const SURE_AFTER = { photos: 3, ms: 2000 };
const LONGEST_NAME = 32;

export function progressLine({ house, photo, done, all, elapsed }: PhotoProgress): string {
  const full = all === 0 ? BAR : Math.floor((BAR * done) / all);
  const bar = '█'.repeat(full) + '░'.repeat(BAR - full);
  const name = [...visible(photo)];
  const shown = name.length > LONGEST_NAME ? `${name.slice(0, LONGEST_NAME - 1).join('')}…` : name.join('');
  return [
    visible(house),
    ` ${bar} ${done} of ${all} photos`,
    timeLeft(done, all, elapsed),
    `  ${shown}`,
  ].join('');
}

function timeLeft(done: number, all: number, elapsed: number): string {
  if (done < SURE_AFTER.photos || elapsed < SURE_AFTER.ms || done >= all) return '';
  const seconds = ((elapsed / done) * (all - done)) / 1000;
  if (seconds < 2) return ', a moment left';
  if (seconds < 90) return `, about ${Math.ceil(seconds)} s left`;
  return `, about ${Math.ceil(seconds / 60)} min left`;
}
