/** Words in place of a wrong year or age. */
import type { Item } from '../items/items.js';
import { dateOf, otherDeed, yearOf, yearsOf } from './state.js';
import { newnessIn, type Stretch } from './stretch.js';

/** Years and ages; best first. */
export function dateWords(stretch: Stretch, items: readonly Item[]): string[] {
  const { says, units } = stretch;
  const item = items.find((one) => dateOf(one) !== undefined);
  const number = units.find((unit) => unit.number !== undefined && unit.number.kind !== 'rating');
  if (item === undefined || number === undefined) return [];
  return [item.done, item.made].flatMap((date): string[] => {
    if (date === undefined) return [];
    const year = yearOf(date);
    const years = yearsOf(date);
    const pre = says.slice(0, number.from).replace(HEDGE, '');
    const post = says
      .slice(number.to)
      .replace(/^\s*(?:old|years?|yrs?|on|ago|years? old|[-–]\s*(?:19|20)?\d\d)\b/i, '');
    const swapped = deedSwapped(stretch, pre, post, item);
    const before =
      /^\s*[\p{L}]/u.test(post) && !/^\s*(?:install|replacement|by|and|with|under|per|remodel)/i.test(post);
    const isYear = number.number?.kind === 'year';
    if (before && pre.trim() === '')
      return year !== undefined ? [`${year}${post}`] : [`${post.trim()} from ${years}`];
    if (isYear)
      return swapped.map(([a, b]) => `${a}${isShort(says) && year !== undefined ? year : years}${b}`);
    // "under ten years old" → "from 2013 or 2014"
    if (newnessIn(stretch) !== undefined && pre !== '')
      return [`${pre.replace(/\s+in\s*$/i, ' ').trimEnd()} in ${years}${post}`];
    // "Roof (3 yrs" → "Roof (from 2019"
    return [`${pre}${/[\p{L}\d]$/u.test(pre) ? ' ' : ''}from ${years}${post}`];
  });
}

const isShort = (says: string): boolean => /['’]\d\d/.test(says);

const HEDGE =
  /\b(?:about|around|circa|ca\.?|c\.|approx\.?|approximately|just|barely|only|under|over|less than|more than|nearly|almost|within the last|within)\s*$/i;

/** "replaced in 2026" of what was refinished: its own deed. */
function deedSwapped(stretch: Stretch, pre: string, post: string, item: Item): [string, string][] {
  const at = newnessIn(stretch);
  const other = otherDeed(item);
  if (at === undefined || other === undefined || at[1] > pre.length) return [[pre, post]];
  return [
    [pre, post],
    [`${pre.slice(0, at[0])}${other}${pre.slice(at[1])}`, post],
  ];
}
