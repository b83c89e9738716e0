/** Lengths and areas in the area room's sentences: as they are printed, and as a writer would type them. */
import { printSquareFeet, SQUARE_FOOT, SQUARE_INCH } from '../facts/floor-area.js';
import { FOOT, type Length, printLength } from '../facts/length.js';

export type Reading = Length['reading'];

/** What has a tape behind it: a length, or a step of an outline. */
export interface Taped {
  readonly reading: Reading;
  /** Whether it is a whole number of feet, which either kind of foot tape reads alike. */
  readonly wholeFeet: boolean;
}

export const tapedLength = (length: Length): Taped => ({
  reading: length.reading,
  wholeFeet: length.units % FOOT === 0,
});

/** The one tape that all were read with; undefined if there were several. */
export function commonReading(list: readonly Taped[]): Reading | undefined {
  if (list.every((one) => one.reading === 'metric')) return 'metric';
  if (list.some((one) => one.reading === 'metric')) return undefined;
  if (list.every((one) => one.reading === 'inches')) return 'inches';
  return list.every((one) => one.reading === 'tenths' || one.wholeFeet) ? 'tenths' : undefined;
}

/** `units` of 0.1 µm as printed: `11′ 6½″`, `11.5 ft`, `3.50 m`. */
export const lengthWords = (units: number, reading: Reading = 'inches'): string =>
  printLength({ units, reading, written: '' });

const ASCII_FRACTIONS = [
  ['⅛', '1/8'],
  ['¼', '1/4'],
  ['⅜', '3/8'],
  ['½', '1/2'],
  ['⅝', '5/8'],
  ['¾', '3/4'],
  ['⅞', '7/8'],
] as const;

/** `units` of 0.1 µm as a keyboard can type them into a house folder: `11'6 1/2"`, `11.5 ft`, `3.50 m`. */
export function lengthToType(units: number, reading: Reading = 'inches'): string {
  const apart = lengthWords(units, reading).replace(/(?<=\d)(?=[⅛¼⅜½⅝¾⅞])/, ' ');
  return ASCII_FRACTIONS.reduce((words, [glyph, typed]) => words.replace(glyph, typed), apart)
    .replace('′ 0″', "'")
    .replace('′ ', "'")
    .replace('′', "'")
    .replace('″', '"');
}

/** A way of `east` and `north` units, as steps to type: `east 12', south 4'`; empty for no way at all. */
export function stepsToType(
  east: number,
  north: number,
  reading: Reading = 'inches',
  between = ', ',
): string {
  const steps: string[] = [];
  if (east !== 0) steps.push(`${east > 0 ? 'east' : 'west'} ${lengthToType(Math.abs(east), reading)}`);
  if (north !== 0) steps.push(`${north > 0 ? 'north' : 'south'} ${lengthToType(Math.abs(north), reading)}`);
  return steps.join(between);
}

/** "1,436 sq ft", rounded for a sentence; below 10 sq ft with a tenth, below a tenth in square inches. */
export function areaWords(area: bigint): string {
  if (area >= 10n * SQUARE_FOOT) return `${printSquareFeet(area)} sq ft`;
  const tenths = (20n * area + SQUARE_FOOT) / (2n * SQUARE_FOOT);
  if (tenths > 0n) return `${tenths / 10n}${tenths % 10n === 0n ? '' : `.${tenths % 10n}`} sq ft`;
  return `${(2n * area + SQUARE_INCH) / (2n * SQUARE_INCH)} sq in`;
}

/** "A", "A and B", "A, B and C". */
export function listWords(words: readonly string[]): string {
  if (words.length < 2) return words.join('');
  return `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}

/** The words with a capital in front, to begin a line. */
export const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
