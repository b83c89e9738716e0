/** Dates as banks write them, beside those of every sheet: with a time behind, without signs, with hyphens. */
import type { Read } from '../facts/read.js';
import { readSheetDate, type SheetDay } from '../facts/sheet-date.js';

export type DayOrder = 'month-first' | 'day-first';

/** Reads the day of a bank's row: as `readSheetDate`, and `2026-04-03T00:00:00`, `20260403`, `2026/4/3`, `04-03-2026`. */
export const readBankDay = (text: string): Read<SheetDay> => readSheetDate(inPlainForm(text.trim()));

function inPlainForm(text: string): string {
  const day = /^(\d[\d/-]{5,9})(?:T|\s+)\d{1,2}:\d{2}\S*(?:\s*[AP]M)?(?:\s+\S+)?$/i.exec(text)?.[1] ?? text;
  const packed = /^((?:19|20)\d{2})(\d{2})(\d{2})$/.exec(day);
  if (packed) return `${packed[1]}-${packed[2]}-${packed[3]}`;
  const yearFirst = /^(\d{4})[/-](\d{1,2})[/-](\d{1,2})$/.exec(day);
  if (yearFirst)
    return [yearFirst[1], ...[yearFirst[2], yearFirst[3]].map((n) => n?.padStart(2, '0'))].join('-');
  return /^\d{1,2}-\d{1,2}-(\d{4}|\d{2})$/.test(day) ? day.replaceAll('-', '/') : day;
}
