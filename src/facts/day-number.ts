/**
 * Days as whole numbers, for counting through thousands of rows: every day of the Gregorian calendar has the same
 * length in universal time, in which JavaScript's own dates count. Ages in years and months are counted in `age.ts`.
 */

const MILLISECONDS = 86_400_000;

/** Days from 1970-01-01 to `day` (YYYY-MM-DD, a real day). */
export const dayNumber = (day: string): number => Date.parse(`${day}T00:00:00Z`) / MILLISECONDS;

/** The day, YYYY-MM-DD, that lies `number` days after 1970-01-01. */
export const dayOfNumber = (number: number): string =>
  new Date(number * MILLISECONDS).toISOString().slice(0, 10);

/** Days from one day to another (YYYY-MM-DD); below zero if they stand the other way round. */
export const daysBetween = (from: string, to: string): number => dayNumber(to) - dayNumber(from);

/** 0 for Monday to 6 for Sunday. */
export const weekday = (number: number): number => (new Date(number * MILLISECONDS).getUTCDay() + 6) % 7;

export const yearOf = (day: string): number => Number(day.slice(0, 4));
