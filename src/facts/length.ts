/**
 * Lengths as a tape says them, kept as exact integers of 0.1 µm.
 *
 * In that unit a sixteenth of an inch is 15,875, a tenth of a foot 304,800 and a centimetre 100,000, so lengths
 * read in feet and inches, in tenths of a foot and in metres can be added and compared without rounding.
 * The foot is the international foot of 0.3048 m exactly, the inch 25.4 mm exactly.
 */
import { bad, good, type Read } from './read.js';
import { exactMultiple, LONGEST_TEXT, readWrittenNumber, type WrittenNumber } from './written-number.js';

/** A length, and the kind of tape it was read from. */
export interface Length {
  /** Tenths of a micrometre; a whole number over 0. */
  readonly units: number;
  /** Feet and inches, decimal feet, or metric. A whole number of feet counts as feet and inches. */
  readonly reading: 'inches' | 'tenths' | 'metric';
  /** The text as its author wrote it, without blanks around it. */
  readonly written: string;
}

/** One inch (25.4 mm) in units of 0.1 µm. */
export const INCH = 254_000;
/** One foot (0.3048 m) in units of 0.1 µm. */
export const FOOT = 3_048_000;
/** One metre in units of 0.1 µm. */
export const METRE = 10_000_000;

const SIXTEENTH = INCH / 16;
const THOUSANDTH = INCH / 1000;
/** No length of a house is longer. */
export const LONGEST_FEET = 100_000;
const LONGEST = LONGEST_FEET * FOOT;

const EXAMPLE = `write feet and inches, for example 11'6"`;
const FORMS = `write feet and inches (11'6"), decimal feet (11.5 ft) or metres (3.5 m)`;

type UnitName = 'foot' | 'inch' | 'm' | 'cm' | 'mm';

const SPELLINGS: Readonly<Record<UnitName, readonly string[]>> = {
  foot: ["'", 'ft', 'foot', 'feet'],
  inch: ['"', 'in', 'inch', 'inches'],
  m: ['m', 'metre', 'metres', 'meter', 'meters'],
  cm: ['cm', 'centimetre', 'centimetres', 'centimeter', 'centimeters'],
  mm: ['mm', 'millimetre', 'millimetres', 'millimeter', 'millimeters'],
};
const UNIT_BY_SPELLING: ReadonlyMap<string, UnitName> = new Map(
  (Object.keys(SPELLINGS) as UnitName[]).flatMap((name) =>
    SPELLINGS[name].map((word) => [word, name] as const),
  ),
);
const SIZE_OF: Readonly<Record<UnitName, number>> = {
  foot: FOOT,
  inch: INCH,
  m: METRE,
  cm: METRE / 100,
  mm: METRE / 1000,
};

/** A number and the unit behind it: the two of `11'6"` are 11 feet and 6 inches. */
interface Piece {
  readonly number: WrittenNumber;
  readonly unit: UnitName;
  readonly text: string;
}

/**
 * Reads a length: `11'6"`, `11′ 6½″`, `11'-6"`, `11 ft 6 1/2 in`, `138"`, `11.5 ft`, `3.5 m`, `350 cm`, `3500 mm`.
 *
 * Refuses a number without a unit, zero and negative lengths, 12 or more inches after feet, what cannot be kept
 * exactly (a thirty-second of an inch, four decimals of a foot), and anything over 100,000 ft.
 */
export function readLength(text: string): Read<Length> {
  const written = text.trim();
  if (written === '') return bad('there is no length', EXAMPLE);
  if (written.length > LONGEST_TEXT) return bad('this is too long for a length', EXAMPLE);
  if (/^[-−–+]/.test(written)) return bad('a length has no sign and is never negative', EXAMPLE);

  const pieces = splitPieces(plainMarks(written));
  if (!pieces.ok) return pieces;
  const [first, second, third] = pieces.value;
  if (!first) return bad('a length needs its unit', EXAMPLE);
  if (third) return bad('a length has at most feet and inches', EXAMPLE);

  const units = second ? feetAndInches(first, second) : onePiece(first);
  if (!units.ok) return units;
  if (units.value === 0n) return bad('a length of zero is no length', `${EXAMPLE}, or leave it out`);
  if (units.value > BigInt(LONGEST)) return bad('a length over 100,000 ft is no part of a house', EXAMPLE);
  return good({ units: Number(units.value), reading: second ? 'inches' : readingOf(first), written });
}

/** Curly quotes, primes and doubled apostrophes become the two marks on a keyboard. */
function plainMarks(text: string): string {
  return text
    .replace(/[′’‘´`]/g, "'")
    .replace(/[″”“]|''/g, '"')
    .toLowerCase();
}

function splitPieces(text: string): Read<readonly Piece[]> {
  const pieces: Piece[] = [];
  let rest = text;
  for (;;) {
    const match = /^([^a-z'"]*)([a-z]+|['"])\.?\s*/.exec(rest);
    if (!match) break;
    const [whole, before = '', word = ''] = match;
    const unit = UNIT_BY_SPELLING.get(word);
    if (!unit) return bad(`“${word}” is no unit of length`, FORMS);
    // In 11'-6" the hyphen only joins feet and inches.
    const number = readWrittenNumber(pieces.length > 0 ? before.replace(/^\s*-/, '') : before);
    if (!number.ok)
      return bad(number.problem, number.problem === 'there is no number' ? EXAMPLE : number.hint);
    pieces.push({ number: number.value, unit, text: before.trim() });
    rest = rest.slice(whole.length);
  }
  if (rest.trim() === '') return good(pieces);
  return leftOver(pieces, text, rest.trim());
}

/** Something stands behind the last unit, or there was no unit at all. */
function leftOver(pieces: readonly Piece[], text: string, rest: string): Read<never> {
  const number = readWrittenNumber(rest.replace(/^-\s*/, ''));
  if (pieces.length === 0) {
    return number.ok ? bad('a length needs its unit', EXAMPLE) : bad(`“${rest}” is no length`, FORMS);
  }
  if (number.ok && pieces.length === 1 && pieces[0]?.unit === 'foot') {
    const mended = readLength(`${text}"`);
    return bad(
      `the ${rest.replace(/^-\s*/, '')} has no unit`,
      mended.ok ? `for inches write ${mended.value.written}` : EXAMPLE,
    );
  }
  return bad(`“${rest}” cannot be read as part of a length`, FORMS);
}

function readingOf(piece: Piece): Length['reading'] {
  if (piece.unit === 'foot') return piece.number.form === 'decimal' ? 'tenths' : 'inches';
  return piece.unit === 'inch' ? 'inches' : 'metric';
}

function onePiece(piece: Piece): Read<bigint> {
  const units = exactMultiple(piece.number, BigInt(SIZE_OF[piece.unit]));
  if (units !== undefined) return good(units);
  if (piece.number.form === 'fraction') {
    return bad(
      `${piece.text} cannot be kept exactly`,
      'write the inches to a sixteenth, for example 7 3/16"',
    );
  }
  return bad(
    `${piece.text} has more decimals than a tape can tell`,
    'write at most three decimals of a foot or inch, or seven of a metre',
  );
}

function feetAndInches(feet: Piece, inches: Piece): Read<bigint> {
  if (feet.unit !== 'foot' || inches.unit !== 'inch') {
    return bad('only feet and inches go together, feet first', FORMS);
  }
  if (feet.number.form !== 'whole') {
    return bad(
      'the feet in front of inches are not a whole number',
      `${EXAMPLE}, or decimal feet alone, 11.5 ft`,
    );
  }
  const small = onePiece(inches);
  if (!small.ok) return small;
  const large = feet.number.top * BigInt(FOOT);
  if (small.value >= BigInt(FOOT)) {
    const total = large + small.value;
    const hint = total <= BigInt(LONGEST) ? `write ${printFeetInches(Number(total))}` : EXAMPLE;
    return bad(`${inches.text} inches are a foot or more`, hint);
  }
  return good(large + small.value);
}

/**
 * Prints a length in the unit it was read in: `11′ 6½″`, `7¾″`, `11.5 ft`, `3.50 m`.
 *
 * What {@link readLength} accepted comes out exactly; reading the print again gives the same units and reading.
 * A computed length that falls between sixteenths is printed to the nearest one.
 */
export function printLength(length: Length): string {
  if (length.reading === 'metric') return `${printDecimal(length.units, METRE, 2, 7)} m`;
  if (length.reading === 'tenths') return `${printDecimal(length.units, FOOT, 1, 3)} ft`;
  if (length.units % SIXTEENTH === 0 || length.units % THOUSANDTH !== 0) return printFeetInches(length.units);
  const feet = Math.floor(length.units / FOOT);
  const inches = `${printDecimal(length.units % FOOT, INCH, 1, 3)}″`;
  return feet === 0 ? inches : `${feet}′ ${inches}`;
}

/**
 * Prints units of 0.1 µm as feet and inches to the nearest sixteenth (halves away from zero): `11′ 6½″`, `12′ 0″`.
 *
 * Under a foot the feet are left out (`7¾″`). A negative number gets a minus sign.
 */
export function printFeetInches(units: number): string {
  const sixteenths = Math.round(Math.abs(units) / SIXTEENTH);
  const sign = units < 0 && sixteenths > 0 ? '−' : '';
  const feet = Math.floor(sixteenths / 192);
  const inches = `${printSixteenths(sixteenths % 192)}″`;
  return feet === 0 ? `${sign}${inches}` : `${sign}${feet}′ ${inches}`;
}

/** Prints units of 0.1 µm in inches alone, to the nearest sixteenth: `48″`, `2¼″`. */
export function printInches(units: number): string {
  return `${printSixteenths(Math.round(units / SIXTEENTH))}″`;
}

const FRACTION_GLYPH: Readonly<Record<number, string>> = {
  2: '⅛',
  4: '¼',
  6: '⅜',
  8: '½',
  10: '⅝',
  12: '¾',
  14: '⅞',
};

function printSixteenths(sixteenths: number): string {
  const inches = Math.floor(sixteenths / 16);
  const rest = sixteenths % 16;
  if (rest === 0) return String(inches);
  const glyph = FRACTION_GLYPH[rest];
  if (glyph) return inches === 0 ? glyph : `${inches}${glyph}`;
  return inches === 0 ? `${rest}/16` : `${inches} ${rest}/16`;
}

/** `units` / `unit` with at least `fewest` and at most `most` decimals; halves are rounded up. */
function printDecimal(units: number, unit: number, fewest: number, most: number): string {
  const scale = 10n ** BigInt(most);
  const scaled = (2n * BigInt(units) * scale + BigInt(unit)) / (2n * BigInt(unit));
  const places = String(scaled % scale)
    .padStart(most, '0')
    .replace(/0+$/, '')
    .padEnd(fewest, '0');
  return `${scaled / scale}.${places}`;
}
