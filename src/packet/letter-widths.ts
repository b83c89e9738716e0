/**
 * How wide lettering in drawings comes out, so that a drawing can tell what fits before anything renders it.
 *
 * Takes text, gives points. The widths are those of the face that both renderers letter drawings in, with figures of
 * one width, and without kerning: kerning only draws letters closer, so nothing comes out wider than is said here.
 */
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

/** Source Sans 3, regular: thousandths of the type size, and the characters that are so wide. */
const ADVANCES: readonly (readonly [width: number, characters: string])[] = [
  [200, '  '],
  [241, '|¦'],
  [246, 'iìíîï'],
  [247, 'j'],
  [249, "',.:;·‘’′"],
  [255, 'l'],
  [263, 'IÌÍÎÏ'],
  [289, '!¡'],
  [292, 'f'],
  [303, '()[]{}•ł'],
  [311, '-'],
  [338, 't°'],
  [350, '/\\rª'],
  [367, '²³¹º'],
  [419, 'sš*'],
  [426, '"“”″?z¿ž®«»'],
  [446, 'x'],
  [456, 'cç'],
  [467, 'vyýÿ'],
  [486, 'LJ–YÝŸ'],
  [497, '#$+0123456789<=>^~¢£¤¥§¬±×÷−FkeèéêëŁ_'],
  [515, 'agàáâãäåXV'],
  [539, 'EÈÉÊËSŠTZŽ'],
  [544, '`o¨¯´¸òóôõöøAhuÀÁÂÃÄÅðùúûü'],
  [555, 'nñbdpqþ'],
  [588, 'PRCÇßKÞBµ¶'],
  [617, 'DG&'],
  [664, 'OQÒÓÔÕÖØHNÑUÙÚÛÜÐ'],
  [744, 'wM©'],
  [808, '—½¼¾⅛⅞Wæ'],
  [839, 'mœ%Æ⅜⅝'],
  [948, '…@Œ'],
];

const WIDTHS: ReadonlyMap<string, number> = new Map(
  ADVANCES.flatMap(([width, characters]) => [...characters].map((one): [string, number] => [one, width])),
);

/** Other scripts' letters are rarely wider than they are high. */
const ANY_OTHER = 1000;

/** The width of one line, in points. */
export function letteringWidth(text: string, style: LetterStyle): number {
  let units = 0;
  for (const character of text) units += WIDTHS.get(character) ?? ANY_OTHER;
  return (units * LETTER_SIZES[style]) / 1000;
}

/** From one line to the next, in points. */
export const letteringHeight = (style: LetterStyle): number => LEADING * LETTER_SIZES[style];

/** From the top of a line to its baseline, in points. */
export const letteringBaseline = (style: LetterStyle): number => BASELINE * letteringHeight(style);

/** Text in lines of a width at most, broken at blanks; undefined where one word is wider. */
export function breakLettering(text: string, style: LetterStyle, widest: number): string[] | undefined {
  const blank = letteringWidth(' ', style);
  const lines: string[] = [];
  let line = Number.POSITIVE_INFINITY;
  for (const word of text.split(/[ \n\t]+/)) {
    if (word === '') continue;
    const width = letteringWidth(word, style);
    if (width > widest) return undefined;
    if (line + blank + width <= widest) {
      lines.push(`${lines.pop()} ${word}`);
      line += blank + width;
    } else {
      lines.push(word);
      line = width;
    }
  }
  return lines;
}

/** Text in lines of a width at most, inside a word where there is no other way. */
export function breakAnyhow(text: string, style: LetterStyle, widest: number): string[] {
  const parted = text.split(' ').map((word) => {
    if (letteringWidth(word, style) <= widest) return word;
    const pieces: string[] = [];
    for (const character of word) {
      const longer = `${pieces.at(-1) ?? ''}${character}`;
      if (pieces.length > 0 && letteringWidth(longer, style) <= widest) pieces[pieces.length - 1] = longer;
      else pieces.push(character);
    }
    return pieces.join(' ');
  });
  return breakLettering(parted.join(' '), style, widest) ?? [];
}
