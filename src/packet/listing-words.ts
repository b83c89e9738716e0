/** A house's own words as values of a listing field, by the phrases of `reso.yaml`. What no phrase settles is left out. */
import { type ResoWords, resoTable } from '../tally/tables/reso.js';

/** Says what isn’t there, was there once, or isn’t known: no word beside it settles anything. */
const DENIES = /\b(no|not|none|never|without|formerly|former|was|unknown|removed|instead)\b/;

/**
 * Values that `texts` settle for a field, in the order of its phrases, each once. The longest phrase of all rows is
 * taken out of its text before the next is looked for, so that brick veneer is no brick and a steel frame no frame.
 */
export function valuesIn(field: string, texts: readonly (string | undefined)[]): string[] {
  const rows = resoTable().words[field] ?? [];
  const found = new Set(texts.flatMap((text) => (text === undefined ? [] : inOneText(rows, text))));
  const order = rows.flatMap(({ values }) => values);
  return [...found].sort((a, b) => order.indexOf(a) - order.indexOf(b));
}

function inOneText(rows: readonly ResoWords[], text: string): string[] {
  let left = plain(text.replace(NEW_MEMBER, ' | '));
  if (DENIES.test(left)) return [];
  const phrases = rows
    .flatMap((row) => row.says.map((phrase) => ({ row, phrase: plain(phrase) })))
    .sort((a, b) => b.phrase.length - a.phrase.length);
  const said = new Set<ResoWords>();
  for (const { row, phrase } of phrases) {
    if (!left.includes(phrase)) continue;
    left = left.replaceAll(phrase, ' | ');
    said.add(row);
  }
  const imitated = [...said].flatMap(({ imitates = [] }) => imitates);
  return [...said].flatMap(({ values }) => values).filter((value) => !imitated.includes(value));
}

/** In "gas cooktop, electric oven" the comma parts two things; in "range, gas" the fuel stands behind its thing. */
const NEW_MEMBER = /[,;](?=\s*[\w-]+\s+\w)/g;

/** Lower case, signs as blanks, a blank at each end: whole words are found alone. */
const plain = (text: string): string =>
  ` ${text
    .toLowerCase()
    .replace(/[^a-z0-9|]+/g, ' ')
    .trim()} `;
