/**
 * The signs that a keyboard lacks: quotation marks, apostrophes, primes, fractions, dashes, the multiplication sign.
 *
 * Owners type `it's 3 1/2" wide`; a well-set page says “it’s 3½″ wide”. What was typed with proper signs stays, and so
 * does what a law fixes word for word (notices), and what is read off or typed off letter for letter (verbatim runs).
 * Common practice of typesetting, no source.
 */
import { withoutTurning } from '../facts/turning-signs.js';
import { mapWords } from './map-rich.js';
import type { Block, Rich, Section } from './packet.js';

const FRACTIONS: Readonly<Record<string, string>> = {
  '1/2': '½',
  '1/4': '¼',
  '3/4': '¾',
  '1/8': '⅛',
  '3/8': '⅜',
  '5/8': '⅝',
  '7/8': '⅞',
  '1/3': '⅓',
  '2/3': '⅔',
};

/** A fraction is one only before a unit; elsewhere it may be a date, a lot or a size of screw. */
const FRACTION =
  /(?:(?<=\d) )?(?<![\d/])\b([12357]\/[2348])(?=(?:″|"| ?-?(?:in|inch|inches|ft|foot|feet|mile|miles|lb|gal|gallon|cup|acre|coat)\b(?! to the foot)))/gu;

const RULES: readonly (readonly [RegExp, string | ((...found: string[]) => string)])[] = [
  [FRACTION, (_whole, typed = '') => FRACTIONS[typed] ?? typed],
  [/\.\.\./gu, '…'],
  [/(?<=\s)--?-?(?=\s)/gu, '–'],
  // A span of two short numbers before what they count.
  [
    /(?<![\p{L}\d-])(\d{1,3})-(\d{1,3})(?= (?:years?|months?|weeks?|days?|hours?|ft|in|sq|percent)\b)/gu,
    '$1–$2',
  ],
  // Lumber and planks: two short numbers by themselves, with or without their inches.
  [/(?<=^|[\s(])([1-9]\d{0,2}["'″′]?)( ?)x\2(?=\d{1,3}["'″′]?(?:$|[\s,;)]|\.(?:\s|$)))/gu, '$1$2×$2'],
  // Feet stand before a blank, an inch or an end; anything else behind a digit is an apostrophe.
  [/(?<=\d)'(?=$|[\s\d.,;:)×])/gu, '′'],
  // The ’70s.
  [/(?<=^|[\s(])'(?=\d\ds?\b)/gu, '’'],
  [/(?<=[\p{L}\d.,!?])'/gu, '’'],
  [/(?<=^|[\s([“"])'(?=\p{L})/gu, '‘'],
];

/** Each rule needs one of these. Most words of a packet have none, and a dozen expressions for each of them would take their time. */
const SOME = /['"/]|\.\.\.|\s-|\d-\d|x ?\d/;

/** A text with its proper signs. `open`: a double quotation mark was opened before and not closed. */
export function withProperSigns(
  text: string,
  open = false,
): { readonly text: string; readonly open: boolean } {
  if (!SOME.test(text)) return { text, open };
  let quoted = open;
  const ruled = RULES.reduce((so, [sign, by]) => so.replace(sign, by as string), text);
  const set = ruled.replace(/"/gu, (_mark, at: number) => {
    const [before, after] = [ruled[at - 1], ruled[at + 1]];
    if (!quoted && before !== undefined && /[\d½¼¾⅛⅜⅝⅞⅓⅔]/u.test(before)) return '″';
    if (
      !quoted &&
      after !== undefined &&
      /\S/u.test(after) &&
      (before === undefined || /[\s(‘–—/]/u.test(before))
    ) {
      quoted = true;
      return '“';
    }
    quoted = false;
    return '”';
  });
  return { text: set, open: quoted };
}

/** Sections in which everything that is said in words has its proper signs. */
export const sectionsWithProperSigns = (sections: readonly Section[]): Section[] =>
  sections.map((section) => ({
    ...section,
    blocks: section.blocks.map(
      (block): Block =>
        block.kind === 'notice' || (block.kind === 'drawing' && block.role === 'code')
          ? block
          : mapWords(block, richWithSigns, (key, text) =>
              WORDS.has(key)
                ? withProperSigns(withoutTurning(text)).text
                : key === 'name'
                  ? withoutTurning(text)
                  : text,
            ),
    ),
  }));

/** The words of blocks (a `name` is a file's, shown as it is); everything else of them is ids, kinds and numbers. */
const WORDS = new Set(['text', 'label', 'value', 'title', 'caption', 'ask', 'alt', 'hint']);

/** A quotation may begin in one run and end in another. */
function richWithSigns(rich: Rich): Rich {
  let open = false;
  const runs = rich.map((run) => {
    let text = withoutTurning(run.text);
    if (run.verbatim !== true) ({ text, open } = withProperSigns(text, open));
    return text === run.text ? run : { ...run, text };
  });
  return runs.every((run, index) => run === rich[index]) ? rich : runs;
}
