/**
 * How wide lettering in drawings comes out, so that a drawing can tell what fits before anything renders it.
 *
 * Takes text, gives points. Of the characters that the faces have, a line is the sum of their own widths. Kerning is
 * left out: it draws most pairs closer and a few apart, at most by a tenth of the type size ("(j"), which the air
 * around letters has to bear. A character that the faces lack comes in another face, and counts as wide as type is high.
 */
import { inRows } from './draw-rows.js';
import { CHARACTERS, DIGITS, WIDTHS } from './face-widths.js';
import { graphemesOf } from './graphemes.js';
import type { LetterStyle } from './packet.js';

/** Type sizes of drawings, in points. */
export const LETTER_SIZES: Record<LetterStyle, number> = {
  name: 9.5,
  body: 8.5,
  small: 7.5,
  tick: 7,
  unknown: 7.5,
};

/** From one line of lettering to the next, as a share of its size. */
const LEADING = 1.2;

/** From the top of a line to its baseline, as a share of the line: what puts small letters in its middle. */
const BASELINE = 0.78;

/** In print's `drawing-styles.ts` and in the pages' style sheet, one style is set in italics. */
const CUTS: Record<LetterStyle, keyof typeof WIDTHS> = {
  name: 'upright',
  body: 'upright',
  small: 'upright',
  tick: 'upright',
  unknown: 'italic',
};

/** Thousandths of the type size, by character. */
type Table = ReadonlyMap<string, number>;

const TABLES: Record<keyof typeof WIDTHS, Table> = {
  upright: tableOf(WIDTHS.upright),
  italic: tableOf(WIDTHS.italic),
};

function tableOf(widths: string): Table {
  const digits = [...widths.replaceAll('\n', '')].map((digit) => DIGITS.indexOf(digit));
  const characters = CHARACTERS.trim().split(/\s+/).flatMap(stretch);
  return new Map(
    characters.map((character, index) => [
      character,
      (digits[2 * index] as number) * DIGITS.length + (digits[2 * index + 1] as number),
    ]),
  );
}

/** "61-63" is a, b and c. */
function stretch(written: string): string[] {
  const [from = 0, to = from] = written.split('-').map((codePoint) => Number.parseInt(codePoint, 16));
  return Array.from({ length: to - from + 1 }, (_, index) => String.fromCodePoint(from + index));
}

/** Other scripts' letters are rarely wider than they are high. */
const ANY_OTHER = 1000;

/** In thousandths of the type size. */
function unitsOf(text: string, style: LetterStyle): number {
  const table = TABLES[CUTS[style]];
  let units = 0;
  for (const character of text) units += table.get(character) ?? ANY_OTHER;
  return units;
}

const pointsOf = (units: number, style: LetterStyle): number => (units * LETTER_SIZES[style]) / 1000;

/** The width of one line, in points. */
export const letteringWidth = (text: string, style: LetterStyle): number =>
  pointsOf(unitsOf(text, style), style);

/** From one line to the next, in points. */
export const letteringHeight = (style: LetterStyle): number => LEADING * LETTER_SIZES[style];

/** From the top of a line to its baseline, in points. */
export const letteringBaseline = (style: LetterStyle): number => BASELINE * letteringHeight(style);

export interface Broken {
  readonly lines: readonly string[];
  /** Of the widest line, in points. */
  readonly width: number;
}

/** Breaks one text at blanks, into lines of a width at most; undefined where one word is wider. Its words are measured once. */
export function lineBreaker(text: string, style: LetterStyle): (widest: number) => Broken | undefined {
  const words = text
    .split(/[ \n\t]+/)
    .filter((word) => word !== '')
    .map((word) => ({ word, units: unitsOf(word, style) }));
  const blank = unitsOf(' ', style);
  return (widest) => {
    const most = (widest * 1000) / LETTER_SIZES[style];
    if (words.some(({ units }) => units > most)) return undefined;
    const lines = inRows(words, most, blank, ({ units }) => units);
    const width = (line: (typeof lines)[number]): number =>
      line.reduce((sum, { units }) => sum + units, blank * (line.length - 1));
    return {
      lines: lines.map((line) => line.map(({ word }) => word).join(' ')),
      width: pointsOf(Math.max(0, ...lines.map(width)), style),
    };
  };
}

/** Text in lines of a width at most, inside a word where there is no other way. */
export function breakAnyhow(text: string, style: LetterStyle, widest: number): readonly string[] {
  const parted = text.split(' ').map((word) => {
    if (letteringWidth(word, style) <= widest) return word;
    const pieces: string[] = [];
    for (const character of graphemesOf(word)) {
      const longer = `${pieces.at(-1) ?? ''}${character}`;
      if (pieces.length > 0 && letteringWidth(longer, style) <= widest) pieces[pieces.length - 1] = longer;
      else pieces.push(character);
    }
    return pieces.join(' ');
  });
  return lineBreaker(parted.join(' '), style)(widest)?.lines ?? [];
}
