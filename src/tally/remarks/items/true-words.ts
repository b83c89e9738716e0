/** Words that would be true, and that could stand in a listing. */
import { printDate } from '../../../facts/date.js';
import type { Deed } from '../../improvements.js';
import type { Item } from './items.js';

/** Words that would be true: a few things, each with its deed and date. */
export function truth(yes: readonly Item[], no: readonly Item[]): string {
  const words = [...yes.slice(0, 2), ...no.slice(0, Math.max(1, 3 - yes.length))].map(trueWords);
  return [...new Set(words)].join('; ');
}

/** A few things in such words, each once. */
export const joined = (items: readonly Item[]): string =>
  [...new Set(items.slice(0, 3).map(trueWords))].join('; ');

/** "bath tub refinished in 2026", "roof (house) from June 2019", "second-hand range made about 2021". */
function trueWords(item: Item): string {
  let words = said.get(item);
  if (words === undefined) {
    words = inWords(item);
    said.set(item, words);
  }
  return words;
}

// A fact is named by many findings, and its date is slow to print.
const said = new WeakMap<Item, string>();

function inWords(item: Item): string {
  const name = nameOf(item);
  if (item.secondHand)
    return `second-hand ${name}${item.made === undefined ? '' : ` made ${printDate(item.made)}`}`;
  if (item.kind === 'system') {
    if (item.done !== undefined) return `${name} from ${printDate(item.done)}`;
    if (item.made !== undefined) return `${name} made ${printDate(item.made)}`;
    return item.kept ? asFound(name) : name;
  }
  if (item.deed === undefined || item.kept) return item.kept ? asFound(name) : name;
  return `${name} ${DEEDS[item.deed]}${item.done === undefined ? '' : ` in ${yearOf(item)}`}`;
}

/** A thing whose own name says so is told once. */
const asFound = (name: string): string => (/\bas found\b/i.test(name) ? name : `${name} as found`);

const DEEDS: Readonly<Record<Deed, string>> = {
  new: 'new',
  replaced: 'replaced',
  added: 'added',
  moved: 'moved',
  removed: 'taken out',
  repaired: 'repaired',
  refinished: 'refinished',
  painted: 'painted',
  cleaned: 'cleaned',
  serviced: 'serviced',
};

/** "floor of the kitchen" is the kitchen floor; "Roof, house" the roof (house). */
function nameOf({ kind, label, what }: Item): string {
  const of = /^(.+) of the (.+)$/.exec(label);
  if (kind === 'finish' && of !== null) return `${of[2]} ${of[1]} (${what.split(', ')[0]})`;
  const [first = label, ...rest] = label.split(', ');
  return rest.length === 0 ? lowerFirst(first) : `${lowerFirst(first)} (${rest.join(', ')})`;
}

function yearOf({ done }: Item): string {
  const first = done?.earliest?.slice(0, 4);
  if (done === undefined) return '';
  return first !== undefined && first === done.latest?.slice(0, 4) ? first : printDate(done);
}

const lowerFirst = (text: string): string =>
  /^[A-Z][a-z]/.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text;
