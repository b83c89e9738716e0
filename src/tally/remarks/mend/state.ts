/** What may be said of a thing in a listing, as short as can be: "2019", "second-hand", "refinished", "from about 1991". */
import { type HouseDate, printDate } from '../../../facts/date.js';
import type { Deed } from '../../improvements.js';
import { type Item, putsIn } from '../items/items.js';

const COATED: Readonly<Partial<Record<Deed, string>>> = {
  refinished: 'refinished',
  painted: 'painted',
  repaired: 'repaired',
  moved: 'moved',
};

/** The deed that was another one than the draft says. */
export const otherDeed = ({ deed, kept }: Item): string | undefined =>
  kept || deed === undefined ? undefined : COATED[deed];

export const dateOf = ({ made, done }: Item): HouseDate | undefined => done ?? made;

/** The year, where the date lies in one. */
export function yearOf(date: HouseDate | undefined): string | undefined {
  const first = date?.earliest?.slice(0, 4);
  return first !== undefined && first === date?.latest?.slice(0, 4) && !date?.about ? first : undefined;
}

/** "2019", "about 1991", "2013 or 2014", "2012 to 2016", "1990 or before". */
export function yearsOf(date: HouseDate): string {
  const year = yearOf(date);
  if (year !== undefined) return year;
  const [from, to] = [date.earliest?.slice(0, 4), date.latest?.slice(0, 4)];
  if (date.about || from === undefined || to === undefined) {
    const words = printDate(date).replace(/^between (.+) and (.+)$/, '$1 to $2');
    return words.replace(/\b\d{1,2} (?=[A-Z])/, '');
  }
  return Number(to) - Number(from) === 1 ? `${from} or ${to}` : `${from} to ${to}`;
}

/** "kitchen floor", "supply pipes", "cabinet boxes". */
export function nameOf({ kind, label, what }: Item): string {
  const of = /^(.+) of the (.+)$/.exec(label);
  if (kind === 'finish' && of !== null) {
    const [, part, place] = of;
    return `${place} ${part === 'cabinets' && /\bbox/i.test(what) ? 'cabinet boxes' : part}`;
  }
  const [first = label, ...rest] = label.split(', ');
  if (kind === 'alarm') return [...rest, first].join(' ');
  return [...rest.filter((word) => /^(garage|house|bath|kitchen|half bath)$/i.test(word)), first]
    .map(lowerFirst)
    .join(' ');
}

/** The name of a finish alone, in the words of a listing: "floor", "counters". */
export function partOf({ label }: Item): string {
  const part = label.replace(/ of the .+$/, '');
  return lowerFirst(part === 'counter' ? 'counters' : part);
}

const lowerFirst = (text: string): string =>
  /^[A-Z][a-z]/.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text;

/** Why a word is not true of it: "left as found", "second-hand", "refinished in 2026", "of 2009". */
export function hindrance(item: Item): string {
  const date = dateOf(item);
  if (item.deed === 'serviced' || item.deed === 'cleaned') return `only ${item.deed}`;
  if (item.secondHand) return 'second-hand';
  const other = otherDeed(item);
  if (other !== undefined) return item.done === undefined ? other : `${other} in ${yearsOf(item.done)}`;
  if (date !== undefined && !(item.kept && putsIn(item.deed))) return `of ${yearsOf(item.made ?? date)}`;
  return item.kept ? 'left as found' : 'no date';
}

/** "floor, counters and tile" */
export function listed(words: readonly string[]): string {
  const own = [...new Set(words)];
  return own.length < 2 ? own.join('') : `${own.slice(0, -1).join(', ')} and ${own.at(-1)}`;
}
