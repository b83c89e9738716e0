/** Dates inside sentences. */
import { type HouseDate, printDate, readDate } from '../facts/date.js';

/** An ISO day in words. */
export function isoDate(iso: string): string {
  const read = readDate(iso);
  return read.ok ? printDate(read.value) : iso;
}

/** "on 3 May 2026", "in May 2026", "about 2019", "between 2015 and 2019". */
export function onDate(date: HouseDate): string {
  const words = printDate(date);
  if (/^(about|between) /.test(words)) return words;
  return `${/^\d{1,2} /.test(words) ? 'on' : 'in'} ${words}`;
}
