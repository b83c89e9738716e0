/** Words that would be true, and that could stand in a listing. */
import { printDate } from '../../facts/date.js';
import type { Item } from './items.js';

/** Words that would be true: each thing with its deed and date. */
export function truth(yes: readonly Item[], no: readonly Item[]): string {
  const words = [...yes.slice(0, 3), ...no.slice(0, Math.max(1, 3 - yes.length))].map(trueWords);
  return [...new Set(words)].join(', ');
}

export function trueWords(item: Item): string {
  const name =
    item.kind === 'finish'
      ? `${item.what}${item.label.includes(' of the ') ? ` (${item.label.split(' of the ')[1]})` : ''}`
      : lowerFirst(item.label);
  if (item.kind !== 'system' && item.deed !== undefined && item.done !== undefined)
    return `${name}, ${item.deed === 'new' ? 'new' : item.deed} ${yearOf(item)}`;
  if (item.secondHand)
    return `second-hand ${name}${item.made === undefined ? '' : `, made ${printDate(item.made)}`}`;
  const day = item.kind === 'system' ? (item.done ?? item.made) : item.done;
  if (day === undefined) return item.kept ? `${name}, as found` : name;
  return `${name}, ${item.kind === 'system' && item.done !== undefined ? 'put in' : item.kind === 'system' ? 'made' : ''} ${printDate(day)}`.replace(
    ',  ',
    ', ',
  );
}

const yearOf = ({ done }: Item): string =>
  done?.earliest?.slice(0, 4) === done?.latest?.slice(0, 4)
    ? (done?.earliest?.slice(0, 4) ?? '')
    : done === undefined
      ? ''
      : printDate(done);

const lowerFirst = (text: string): string =>
  /^[A-Z][a-z]/.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text;
