/**
 * Taxpayer numbers, which are kept nowhere in a house folder: whoever gets a copy of it could misuse them.
 *
 * Looked for are ###-##-#### (SSN, ITIN), ##-####### (EIN), and nine digits beside words that name such a number.
 * What is said about one never repeats it.
 */
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import type { FactPath } from '../diagnostics/fact-path.js';

// Hyphens as people and word processors write them.
const HYPHEN = '[-\u2010-\u2015\u2212]';
const ALONE = `(?<!\\d)(?<!\\d${HYPHEN})`;
const END = `(?!\\d)(?!${HYPHEN}\\d)`;
const PERSON = new RegExp(`${ALONE}\\d{3}${HYPHEN}\\d{2}${HYPHEN}\\d{4}${END}`);
const FIRM = new RegExp(`${ALONE}\\d{2}${HYPHEN}\\d{7}${END}`);
const PLAIN = new RegExp(`${ALONE}(?:\\d{9}|\\d{3} \\d{2} \\d{4}|\\d{2} \\d{7})${END}`);
const ANY = new RegExp(`${PERSON.source}|${FIRM.source}`, 'g');
const ANY_PLAIN = new RegExp(PLAIN, 'g');
/** Nothing shorter than nine digits is one; most texts of a sheet end their reading here. */
const WORTH_A_LOOK = /\d[^\n]{7,9}\d/;

const NUMBER_WORDS =
  /(?:^|[^a-z])(?:f?ein|tin|itin|ssn|w-?9|tax ?payers?|social security|tax[ -]?(?:id|no|nr|number)s?)(?:[^a-z]|$)/i;
const TAX_WORDS = /(?:^|[^a-z])tax(?:[^a-z]|$)/i;
/** Words of things whose own numbers may look like a person's. */
const OTHER_NUMBERS = /(?:^|[^a-z])(?:parcel|serial|model|number|licen[cs]e|label)s?(?:[^a-z]|$)/i;

interface Asked {
  /** Under money: or in a sheet of payments, where ##-####### is hardly anything else. */
  readonly aboutMoney: boolean;
  /** The words it stands under. */
  readonly under: string;
}

/**
 * Whether a text of a cost sheet holds a taxpayer number. The answer names it by its last four digits alone
 * ("ends in 6789"); undefined if there is none.
 */
export const taxpayerNumberIn = (text: string): string | undefined =>
  found(text, { aboutMoney: true, under: '' });

function found(text: string, { aboutMoney, under }: Asked): string | undefined {
  if (!WORTH_A_LOOK.test(text)) return undefined;
  const person = aboutMoney || !OTHER_NUMBERS.test(under) ? PERSON.exec(text) : null;
  const named = NUMBER_WORDS.test(text) || NUMBER_WORDS.test(under);
  const firm = aboutMoney || named || TAX_WORDS.test(text) || TAX_WORDS.test(under) ? FIRM.exec(text) : null;
  // A parcel or account number beside "property tax" has nine digits as well, so plain ones need a plainer word.
  const match = person ?? firm ?? (named ? PLAIN.exec(text) : null);
  return match === null ? undefined : `ends in ${match[0].slice(-4)}`;
}

/** A line with its taxpayer numbers covered, sign for sign, so that columns stay where they are. */
export function coverTaxpayerNumbers(line: string): string {
  if (!WORTH_A_LOOK.test(line)) return line;
  const cover = (number: string): string => number.replace(/\d/g, '•');
  const covered = line.replace(ANY, cover);
  return NUMBER_WORDS.test(line) ? covered.replace(ANY_PLAIN, cover) : covered;
}

/** A message about a value that could not be read may quote it: as `coverTaxpayerNumbers`, for all that is said. */
export const withoutTaxpayerNumbers = (diagnostic: Diagnostic): Diagnostic => ({
  ...diagnostic,
  message: coverTaxpayerNumbers(diagnostic.message),
  hints: diagnostic.hints.map(coverTaxpayerNumbers),
  ...(diagnostic.place === undefined
    ? {}
    : { place: { ...diagnostic.place, source: coverTaxpayerNumbers(diagnostic.place.source) } }),
});

/** One wording for sheets and YAML. `ending` is what `taxpayerNumberIn` answered. */
export const taxpayerNumberWords = (
  ending: string,
): Pick<Diagnostic, 'code' | 'severity' | 'message' | 'hints'> => ({
  code: 'facts.taxpayer-number',
  severity: 'error',
  message: `this looks like a taxpayer number (it ${ending}), and a house folder holds none`,
  hints: [
    'take it out, keep it with the signed form in a locked place, and write  taxpayer-form: on-file  under  money: payees:',
    'if it is another number, write it in other parts, for example 900.700.700',
  ],
});

/** Every taxpayer number in what YAML gave, with the path of the text it stands in. */
export function findTaxpayerNumbers(spec: unknown): Diagnostic[] {
  const diagnostics: Diagnostic[] = [];
  const walk = (value: unknown, path: FactPath): void => {
    if (typeof value === 'string' || typeof value === 'number') {
      const under = path.filter((part) => typeof part === 'string').join(' ');
      const ending = found(String(value), { aboutMoney: path[0] === 'money', under });
      if (ending !== undefined) diagnostics.push({ ...taxpayerNumberWords(ending), path });
    } else if (Array.isArray(value)) {
      for (const [at, item] of value.entries()) walk(item, [...path, at]);
    } else if (typeof value === 'object' && value !== null) {
      for (const [word, inner] of Object.entries(value)) walk(inner, [...path, word]);
    }
  };
  walk(spec, []);
  return diagnostics;
}
