/**
 * What someone probably meant by a date in another habit: `4/11/2026`, `April 2026`, `about 2019`, `1990s`.
 *
 * The answers are only suggestions for the hint of a refusal. They are never used as the date: 4/11/2026 is
 * 11 April to one reader and 4 November to another, and the writer has to say which.
 */

import { monthOfName, SHORT_MONTHS } from './month-names.js';

const SEASON_CODES: Readonly<Record<string, number>> = {
  spring: 21,
  summer: 22,
  autumn: 23,
  fall: 23,
  winter: 24,
};

/** Of a year in two digits, as spreadsheets take it; the writer sees the whole year before they type it. */
const century = (digits: string): string => (digits < '30' ? '20' : '19');

const two = (digits: string): string => digits.padStart(2, '0');

/** "april", "apr." and "sept" give "04", "04", "09"; anything else gives undefined. */
function monthNumber(word: string): string | undefined {
  const month = monthOfName(word.slice(0, 3));
  return month === undefined ? undefined : two(String(month));
}

/** A pattern of a human spelling, and the spellings here that it may stand for. */
type Habit = readonly [RegExp, (...parts: string[]) => readonly (string | undefined)[]];

const MONTH = String.raw`(${SHORT_MONTHS.join('|').toLowerCase()})[a-z]*\.?`;
const of = (pattern: string): RegExp => new RegExp(`^${pattern}$`);

const HABITS: readonly Habit[] = [
  // 4/11/2026, 4-11-2026, 11.4.2026: month first as in the United States, then day first.
  [
    /^(\d{1,2})[/.-](\d{1,2})[/.-](\d{4})$/,
    (a, b, year) => [`${year}-${two(a)}-${two(b)}`, `${year}-${two(b)}-${two(a)}`],
  ],
  [
    /^(\d{1,2})[/.-](\d{1,2})[/.-]['’]?(\d{2})$/,
    (a, b, year) => [
      `${century(year)}${year}-${two(a)}-${two(b)}`,
      `${century(year)}${year}-${two(b)}-${two(a)}`,
    ],
  ],
  [/^(\d{1,2})[/.-](\d{4})$/, (month, year) => [`${year}-${two(month)}`]],
  [
    /^(\d{4})([/.-])(\d{1,2})\2(\d{1,2})$/,
    (year, _mark, month, day) => [`${year}-${two(month)}-${two(day)}`],
  ],
  [/^(\d{4})[/.-](\d{1,2})$/, (year, month) => [`${year}-${two(month)}`]],
  [/^(\d{4})(\d{2})(\d{2})$/, (year, month, day) => [`${year}-${month}-${day}`]],
  [/^(\d{4}-\d{2}-\d{2})[t ]\d.*$/, (day) => [day]],
  [of(String.raw`${MONTH},?\s+(\d{4})`), (month, year) => [`${year}-${monthNumber(month)}`]],
  [
    of(String.raw`${MONTH}\s+(\d{1,2})(?:st|nd|rd|th)?,?\s+(\d{4})`),
    (month, day, year) => [`${year}-${monthNumber(month)}-${two(day)}`],
  ],
  [
    of(String.raw`(\d{1,2})(?:st|nd|rd|th)?[\s-]+${MONTH},?[\s-]+(\d{4})`),
    (day, month, year) => [`${year}-${monthNumber(month)}-${two(day)}`],
  ],
  [
    /^(spring|summer|autumn|fall|winter)(?:\s+of)?,?\s+(\d{4})$/,
    // A winter may be named for the year it begins in or the one it ends in.
    (season, year) =>
      season === 'winter' ? [`${year}-24`, `${Number(year) - 1}-24`] : [`${year}-${SEASON_CODES[season]}`],
  ],
  [/^(?:about|around|approx\.?|approximately|circa|ca?\.?|~)\s*(\d{4}(?:-\d{2})?)$/, (date) => [`${date}~`]],
  [/^(\d{4}(?:-\d{2})?)\s*(?:or so|ish)$/, (date) => [`${date}~`]],
  [/^(\d{4}(?:-\d{2})?)\s*(?:\(?not certain\)?|\(\?\))$/, (date) => [`${date}?`]],
  // Whether "before 2010" lets 2010 in, only the writer knows.
  [/^before\s*(\d{4})$/, (year) => [`../${year}`, `../${Number(year) - 1}`]],
  [/^after\s*(\d{4})$/, (year) => [`${year}/..`, `${Number(year) + 1}/..`]],
  [/^(?:before|by|until|up to|no later than|<|<=|≤)\s*([\d-]+)$/, (date) => [`../${date}`]],
  [/^([\d-]+)\s+or\s+(?:before|earlier)$/, (date) => [`../${date}`]],
  [/^(?:after|since|from|no earlier than|>|>=|≥)\s*([\d-]+)$/, (date) => [`${date}/..`]],
  [/^([\d-]+)\s+or\s+(?:after|later)$/, (date) => [`${date}/..`]],
  [/^(?:between\s+)?(\d{4})\s*(?:-|–|—|to|and|or|\.\.)\s*(\d{4})$/, (from, to) => [`${from}/${to}`]],
  [/^(?:the\s+)?(\d{3})(?:0['’]?s|x)$/, (decade) => [`${decade}X`]],
];

/**
 * The spellings of this project that a text in another habit may stand for, likeliest first; none when the text
 * is in no known habit. They are not checked here: a thirteenth month comes out as one.
 */
export function suggestSpelling(text: string): readonly string[] {
  const tidy = text.trim().toLowerCase().replace(/\s+/g, ' ');
  for (const [pattern, spell] of HABITS) {
    const match = pattern.exec(tidy);
    if (!match) continue;
    const spelt = spell(...match.slice(1).map((part) => part ?? '')).filter((one) => one !== undefined);
    // A text that is already spelt as suggested is in no other habit.
    return [...new Set(spelt)].filter((one) => one !== text);
  }
  return [];
}
