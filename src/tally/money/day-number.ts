/**
 * Days as whole numbers, for counting through thousands of rows. Gregorian calendar, also before it was in use.
 * The algorithm counts years from 1 March, so that the leap day is the last of one.
 */

/** Days from 1970-01-01 to `day` (YYYY-MM-DD, a real day). */
export function dayNumber(day: string): number {
  const month = Number(day.slice(5, 7));
  const year = Number(day.slice(0, 4)) - (month <= 2 ? 1 : 0);
  const era = Math.floor(year / 400);
  const yearOfEra = year - era * 400;
  const dayOfYear = Math.floor((153 * ((month + 9) % 12) + 2) / 5) + Number(day.slice(8, 10)) - 1;
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear;
  return era * 146_097 + dayOfEra - 719_468;
}

/** The day, YYYY-MM-DD, that lies `number` days after 1970-01-01. */
export function dayOfNumber(number: number): string {
  const shifted = number + 719_468;
  const era = Math.floor(shifted / 146_097);
  const dayOfEra = shifted - era * 146_097;
  const yearOfEra = Math.floor(
    (dayOfEra -
      Math.floor(dayOfEra / 1460) +
      Math.floor(dayOfEra / 36_524) -
      Math.floor(dayOfEra / 146_096)) /
      365,
  );
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const monthFromMarch = Math.floor((5 * dayOfYear + 2) / 153);
  const date = dayOfYear - Math.floor((153 * monthFromMarch + 2) / 5) + 1;
  const month = ((monthFromMarch + 2) % 12) + 1;
  const year = yearOfEra + era * 400 + (month <= 2 ? 1 : 0);
  return `${String(year).padStart(4, '0')}-${two(month)}-${two(date)}`;
}

/** 0 for Monday to 6 for Sunday. */
export function weekday(number: number): number {
  // 1970-01-01 was a Thursday.
  return (((number + 3) % 7) + 7) % 7;
}

export const yearOf = (day: string): number => Number(day.slice(0, 4));

const two = (number: number): string => String(number).padStart(2, '0');
