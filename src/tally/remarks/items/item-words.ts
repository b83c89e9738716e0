/** A fact in the words of a report, and in words that a listing could use. */
import { printDate } from '../../../facts/date.js';
import type { Deed } from '../../improvements.js';
import type { Item } from './items.js';
import type { FactSaid } from './known.js';

const DEEDS: Readonly<Record<Deed, string>> = {
  new: 'new',
  replaced: 'replaced',
  repaired: 'repaired',
  refinished: 'refinished',
  painted: 'painted',
  moved: 'moved',
  removed: 'taken out',
  cleaned: 'cleaned',
  serviced: 'serviced',
  added: 'added',
};

/** "Roof, house: roof, architectural shingle; put in June 2019; kept as found". */
function factOf(item: Item): FactSaid {
  const before = said.get(item);
  if (before !== undefined) return before;
  const fact = inWords(item);
  said.set(item, fact);
  return fact;
}

// A fact is quoted by many findings, and its dates are slow to print.
const said = new WeakMap<Item, FactSaid>();

function inWords(item: Item): FactSaid {
  const parts = [
    whatBeyond(item),
    item.secondHand ? 'second-hand' : undefined,
    item.made === undefined ? undefined : `made ${printDate(item.made)}`,
    deedWords(item),
    item.kept ? 'left as found' : undefined,
    item.capacity,
  ].filter((part) => part !== undefined && part !== '');
  const label = item.label.replace(NUMBERED, ' of ');
  return {
    path: item.path,
    words: parts.length === 0 ? label : `${label}: ${parts.join('; ')}`,
    evidence: item.evidence,
  };
}

/** "floor of the bedroom 1": a room that is called by its number takes no article. */
const NUMBERED = / of the (?=[a-z]+(?: [a-z]+)? \d+$)/;

/** What it is, without what its label or its deed says already: "furnace, gas" of the furnace is gas. */
function whatBeyond({ label, what, deed }: Item): string | undefined {
  const said = new Set([label.toLowerCase(), ...label.toLowerCase().split(', ')]);
  if (deed !== undefined) said.add(DEEDS[deed]);
  const words = what
    .split(', ')
    .filter(
      (part) =>
        !said.has(part.toLowerCase()) && !`${label.toLowerCase()} `.startsWith(`${part.toLowerCase()} `),
    );
  return words.length === 0 ? undefined : words.join(', ');
}

function deedWords({ deed, done, kind, kept }: Item): string | undefined {
  if (done === undefined) return deed === undefined ? undefined : `${DEEDS[deed]}, when is not known`;
  const when = printDate(done);
  if (kind === 'system') return `put in ${when}`;
  return deed === undefined || kept ? when : `${DEEDS[deed]} ${when}`;
}

/** A few facts, most telling first; the rest are counted. */
export function factsOf(items: readonly Item[], most = 4): FactSaid[] {
  return items.slice(0, most).map(factOf);
}
