/** What stands above a checked draft: how many claims there are of each kind, its length, and signs that nobody sees. */
import { type CheckedDraft, countOf, isTooLong } from './check-draft.js';
import { groupThousands } from './facts/written-number.js';
import { hiddenWords } from './hidden-signs.js';
import { wrapped } from './wrapped-lines.js';

/** "17 claims: 6 backed, 5 contradicted, …; 2 words to mind; 1,012 of 1,000 characters". */
export function summary(checked: CheckedDraft): string {
  const { claims, words } = checked;
  const part = (n: number, many: string, one = many): string[] =>
    n === 0 ? [] : [`${n} ${n === 1 ? one : many}`];
  const verdicts = [
    ...part(countOf(checked, 'backed'), 'backed'),
    ...part(countOf(checked, 'contradicted'), 'contradicted'),
    ...part(countOf(checked, 'wider'), 'wider than the facts'),
    ...part(countOf(checked, 'no-fact'), 'without a fact'),
    ...part(countOf(checked, 'opinion'), 'opinions', 'opinion'),
  ];
  const count =
    claims.length === 0
      ? 'no claim was found'
      : `${claims.length} ${claims.length === 1 ? 'claim' : 'claims'}: ${verdicts.join(', ')}`;
  return [count, ...part(words.length, 'words to mind', 'word to mind'), lengthOf(checked)].join('; ');
}

function lengthOf({ length, limit }: CheckedDraft): string {
  const has = groupThousands(length.characters);
  return limit === undefined ? `${has} characters` : `${has} of ${groupThousands(limit)} characters`;
}

export function lengthLines(checked: CheckedDraft, width: number): string[] {
  if (!isTooLong(checked)) return [];
  return wrapped(`Too long: ${tooLongWords(checked)}.`, '', width);
}

/** Signs that nobody sees, and that a listing service may show as boxes or take for other words. */
export function hiddenLines({ draft }: CheckedDraft, width: number): string[] {
  const words = hiddenWords(draft.text);
  return words === undefined ? [] : wrapped(`${words.charAt(0).toUpperCase()}${words.slice(1)}.`, '', width);
}

/** "12 characters more than the listing service takes; end it behind “on the porch.” (985 characters)". */
export function tooLongWords({ draft, length, limit = 0, stop }: CheckedDraft): string {
  const more = length.characters - limit;
  const many = `${groupThousands(more)} ${more === 1 ? 'character' : 'characters'} more than the listing service takes`;
  if (stop === undefined) return `${many}; not even its first sentence fits`;
  return `${many}; to fit, end it behind “${lastWords(draft.text.slice(0, stop.to))}” (${groupThousands(stop.characters)} characters)`;
}

/** Enough of the end to find it. */
function lastWords(text: string): string {
  const words = text.slice(-200).trim().split(/\s+/u).slice(-5).join(' ');
  return [...words].length > 60 ? `…${[...words].slice(-59).join('')}` : words;
}
