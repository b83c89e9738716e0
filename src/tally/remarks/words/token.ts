/** A text cut into words, numbers and signs, each with its place; letters are compared in a plain form. */

import { isStopOfShort, wordMeant } from './abbreviations.js';

export type Token = {
  /** UTF-16 offsets in the text as it was given. */
  readonly from: number;
  readonly to: number;
  /** Lower case, without accents and invisible characters, in the singular. */
  readonly norm: string;
  readonly raw: string;
  /** Nothing stands between it and the token before. */
  readonly glued: boolean;
} & (
  | { readonly kind: 'number'; readonly value: number }
  | { readonly kind: 'word' | 'sign'; readonly value?: undefined }
);

// Soft hyphens, joiners and marks of direction are seen by nobody and must not hide a word.
const INVISIBLE = '\\u00ad\\u200b-\\u200f\\u202a-\\u202e\\u2060-\\u2069\\ufeff';
const TOKEN = new RegExp(
  `[${INVISIBLE}]+|\\p{L}[\\p{L}\\p{M}'’${INVISIBLE}]*|\\d+(?:,\\d{3})*(?:\\.\\d+)?|\\.\\d+|[¼½¾⅓⅔⅛]|\\S`,
  'gu',
);
/** Measures that are written with a full stop. */
const MEASURES = /^(gal|amp|amps|btu)$/;
/** Most words: nothing in them is unseen or accented, so that they need no plainer form. */
const ASCII = /^[\x20-\x7e]+$/;
const UNSEEN = new RegExp(`[${INVISIBLE}]`, 'gu');
const FRACTIONS: Readonly<Record<string, number>> = {
  '¼': 0.25,
  '½': 0.5,
  '¾': 0.75,
  '⅓': 1 / 3,
  '⅔': 2 / 3,
  '⅛': 0.125,
};

export function tokenize(text: string): Token[] {
  const tokens: Token[] = [];
  let end = 0;
  // As it stands in the text, where the word before was a shortened one.
  let short: string | undefined;
  for (const { 0: raw, index: from } of text.matchAll(TOKEN)) {
    const isAscii = ASCII.test(raw);
    const plain = isAscii ? raw : raw.replace(UNSEEN, '').replaceAll('’', "'");
    const to = from + raw.length;
    const glued = from === end && tokens.length > 0;
    end = to;
    if (plain === '') continue;
    const first = plain.charAt(0);
    const fraction = FRACTIONS[first];
    const shortBefore = short;
    short = undefined;
    if (/[\d.]/.test(first) && plain !== '.') {
      const value = Number(plain.replace(/,/g, ''));
      tokens.push({ from, to, kind: 'number', norm: plain, raw: plain, value, glued });
    } else if (fraction !== undefined)
      tokens.push({ from, to, kind: 'number', norm: first, raw: first, value: fraction, glued });
    else if (isAscii ? /[A-Za-z]/.test(first) : /\p{L}/u.test(first)) {
      const { raw: said, norm: plainNorm } = formsOf(plain, isAscii);
      const norm = wordMeant(said) ?? plainNorm;
      short = norm === plainNorm && !MEASURES.test(said) ? undefined : plain;
      tokens.push({ from, to, kind: 'word', norm, raw: said, glued });
    } else if (
      plain === '.' &&
      glued &&
      shortBefore !== undefined &&
      isStopOfShort(shortBefore, text.slice(to, to + 5))
    ) {
      // The stop of a shortened word ends nothing.
      end = from;
    } else tokens.push({ from, to, kind: 'sign', norm: signOf(plain), raw: plain, glued });
  }
  return tokens;
}

function formsOf(plain: string, isAscii: boolean): { norm: string; raw: string } {
  const lower = plain.toLowerCase();
  const bare = isAscii ? lower : lower.normalize('NFKD').replace(/\p{M}/gu, '');
  const raw = bare.endsWith("'") ? bare.replace(/'+$/, '') : bare;
  return { raw, norm: singular(raw.endsWith("'s") ? raw.slice(0, -2) : raw) };
}

/** Right for plain plurals; for other words merely the same on both sides. */
function singular(word: string): string {
  if (word.length < 4 || !word.endsWith('s')) return word;
  if (word.endsWith('ies')) return `${word.slice(0, -3)}y`;
  if (/(ss|sh|ch|x)es$/.test(word)) return word.slice(0, -2);
  return /[^sui]s$/.test(word) ? word.slice(0, -1) : word;
}

const signOf = (sign: string): string =>
  /[–—]/.test(sign) ? '—' : /[•*·●▪◦|]/.test(sign) ? '•' : /[‘’`´]/.test(sign) ? "'" : sign;

// A full stop behind one of these ends no sentence.
const SHORT = new Set(
  'sq ft approx yr yrs det att incl est bed ba br bd bdrm no st ave ext int min gar appx a c apx ca bsmt kit mstr mbr w ac jan feb mar apr jun jul aug sep sept oct nov dec mo mos appl pkg elec elect equip sf'.split(
    ' ',
  ),
);

/** Runs of tokens between full stops, line breaks, bullets and semicolons: [first, end). */
export function sentencesOf(text: string, tokens: readonly Token[]): (readonly [number, number])[] {
  const found: (readonly [number, number])[] = [];
  let start = 0;
  const close = (end: number, next: number): void => {
    if (end > start) found.push([start, end]);
    start = next;
  };
  for (const [index, token] of tokens.entries()) {
    const before = tokens[index - 1];
    if (
      before !== undefined &&
      index > start &&
      before.to < token.from &&
      text.slice(before.to, token.from).includes('\n')
    )
      close(index, index);
    // "Sewer: public  Water: well": a wide gap before a key begins another.
    else if (
      before !== undefined &&
      index > start &&
      token.from - before.to > 1 &&
      tokens[index + 1]?.norm === ':'
    )
      close(index, index);
    if (token.kind !== 'sign') continue;
    // "Furnace? New!" asks and answers in one.
    if (token.norm === '?' && index - start <= 4 && tokens[index + 1] !== undefined) continue;
    if (/^[!?;•]$/.test(token.norm)) close(index, index + 1);
    else if (token.norm === '.' && endsSentence(tokens, index)) close(index, index + 1);
  }
  close(tokens.length, tokens.length);
  return found;
}

function endsSentence(tokens: readonly Token[], index: number): boolean {
  const before = tokens[index - 1];
  const after = tokens[index + 1];
  if (after === undefined) return true;
  if (after.glued && (after.kind !== 'word' || after.raw.length === 1)) return false;
  // "A/C." ends a line; "c. 2014" goes on.
  const cooling = before?.raw === 'c' && before.glued && tokens[index - 2]?.norm === '/';
  if (before?.kind === 'word' && SHORT.has(before.raw) && !cooling) {
    // "approx. 1,400 SF." goes on in the first case; a capital behind the second begins anew.
    return (
      /^(yr|yrs|ft|ba|br|bd|bed|ac)$/.test(before.raw) &&
      after.kind === 'word' &&
      !after.glued &&
      /[A-Z]/.test(after.raw)
    );
  }
  return true;
}
