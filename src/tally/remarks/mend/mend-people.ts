/** Words in place of a claim about who did it, a permit, what stays, or where a thing is. */
import type { Permit } from '../../../facts/house.js';
import { sensesIn } from '../items/item-meaning.js';
import type { Item } from '../items/items.js';
import type { Known } from '../items/known.js';
import { untilFirst } from '../words/cut-at.js';
import { belongsTo, thing } from '../words/taxonomy.js';
import { listed } from './state.js';
import { newnessIn, type Stretch } from './stretch.js';

/** "by a licensed roofer" → "by the owner"; "professionally installed" → "installed". */
export function whoWords(
  { says, ahead, behind }: Stretch,
  items: readonly Item[],
  isWide: boolean,
): string[] {
  const who = items[0]?.who;
  const dropped = says.replace(/\b(?:professionally|expertly|professional)\s+/i, '');
  const plain = dropped !== says && dropped !== '' ? [dropped] : [];
  if (who === undefined || who.kind === 'not-known' || isWide) return plain;
  const by = who.kind === 'hired' ? 'by a contractor' : who.kind === 'owner' ? 'by the owner' : 'by family';
  const from = /\bby\s+[^,.;]*$/i.exec(says);
  // The name of a firm or a trade goes on behind it.
  if (from !== null && !/^\s+[a-z]/.test(behind)) return [`${says.slice(0, from.index)}${by}`, ...plain];
  const self =
    /\b(?:himself|herself|themselves|ourselves|myself|diy|owner[- ](?:installed|built|done))\b/i.exec(says);
  if (self === null || who.kind !== 'hired' || /\b(?:did|we|our|i|sellers?|owners?)\b/i.test(ahead))
    return plain;
  const [pre, post] = [says.slice(0, self.index), says.slice(self.index + self[0].length)];
  // "A DIY project": it belongs to the noun, where no "by" can stand.
  const ofNoun = /\b(?:an?|the)\s+$/i.test(`${ahead}${pre}`) || /^\s*\p{L}/u.test(`${post}${behind}`);
  return ofNoun && !/sel(?:f|ves)$/i.test(self[0]) ? plain : [`${pre}${by}${post}`];
}

/** "plumbing and electrical permits closed; steps permit open" */
export function permitWords(stretch: Stretch, all: boolean, permits: readonly Permit[]): string[] {
  const { says } = stretch;
  const bare = says.replace(/^(?:fully |all )?(?:permitted|legal)\s+/i, '');
  if (bare !== says && !all) return [bare];
  const names = (wanted: (permit: Permit) => boolean): string[] => [
    ...new Set(permits.filter(wanted).map(nameOf)),
  ];
  const open = names(({ state }) => state === 'open');
  const expired = names(({ state }) => state === 'expired').filter((name) => !open.includes(name));
  // Of two permits for one trade the one that is not closed is told.
  const closed = names(({ state }) => state === 'final').filter(
    (name) => ![...open, ...expired].includes(name),
  );
  const none = permits.filter(({ state }) => state === 'none-found');
  const permit = (n: readonly string[]): string => (n.length === 1 ? 'permit' : 'permits');
  const parts = [
    ...(closed.length === 0 ? [] : [`${listed(closed.slice(0, 3))} ${permit(closed)} closed`]),
    ...(open.length === 0 ? [] : [`${listed(open)} ${permit(open)} open`]),
    ...(expired.length === 0 ? [] : [`${listed(expired)} ${permit(expired)} expired`]),
  ];
  const isOpen = open.length > 0 && closed.length === 0 && none.length === 0;
  if (!all) return isOpen ? openWords(stretch) : [];
  // It stands for a sentence only where the words of one were marked.
  if (!/^(?:all|every|everything|permits?|full|with)\b/i.test(says) || parts.length === 0) return [];
  return [
    parts.join('; '),
    ...(closed.length > 0 && parts.length > 1
      ? [['some permits closed', ...parts.slice(1)].join('; '), parts.slice(1).join('; ')]
      : []),
  ];
}

/** "fence is permitted" → "fence permit is open"; ", permitted" → ", permit open". */
function openWords({ says, ahead, behind }: Stretch): string[] {
  const of = /^(.+?)\s+(?:is|was|are|were)\s+(?:fully\s+)?permitted\b.*$/i.exec(says)?.[1];
  if (/^\s+(?:and|&)/i.test(behind)) return [];
  if (of !== undefined) return [`${of} permit is open`];
  if (/\bpermits?\s+(?:closed|final|signed off|approved|finaled)$/i.test(says))
    return [says.replace(/(?:closed|final|signed off|approved|finaled)$/i, 'open')];
  return /^(?:fully\s+|all\s+)?permitted$/i.test(says) && /,\s*$/.test(ahead) && !/^\s+[\p{L}&]/u.test(behind)
    ? ['permit open']
    : [];
}

const TRADES: readonly (readonly [string, string])[] = [
  ['plumbing', 'plumbing'],
  ['water-heater', 'plumbing'],
  ['electrical', 'electrical'],
  ['wiring', 'electrical'],
  ['hvac', 'heating'],
];

/** What a permit is for, in a word: its trade, or the first thing that it names. */
function nameOf({ what }: Permit): string {
  const things = sensesIn(what).flatMap((sense) =>
    sense.tag === 'thing' && !/^(house|work|lot)$/.test(sense.id) ? [sense.id] : [],
  );
  for (const id of things) for (const [wide, name] of TRADES) if (belongsTo(id, wide)) return name;
  const [first] = things;
  return first === undefined ? untilFirst(what, /[,;]/).toLowerCase() : thing(first).label;
}

const STAYS: readonly (readonly [RegExp, string])[] = [
  [/\b(?:does not|do not|doesn't|don't|will not|won't) (?:convey|stay|remain|transfer)\b/i, 'stays'],
  [/\b(?:not included|not conveyed|excluded)\b/i, 'included'],
  [/\b(?:is|are) (?:all )?included\b/i, 'not included'],
  [/\b(?:all |also )?included?\b/i, 'not included'],
  [/\b(?:also )?(?:all |both )?(?:conveys?|stays?|remains?)\b/i, 'not included'],
];

/** "potted citrus trees included" → "potted citrus trees not included" */
export function conveyWords({ says, behind }: Stretch, isWide: boolean): string[] {
  if (isWide || /^\s*(?:with|to|and)\b/i.test(behind)) return [];
  for (const [said, put] of STAYS) {
    const hit = said.exec(says);
    if (hit === null || hit.index === 0) continue;
    if (/\b(?:that|which|who)\s*$/i.test(says.slice(0, hit.index)))
      return put === 'stays' ? [] : [`${says.slice(0, hit.index)}is ${put}`];
    const many = /s\s*$/i.test(says.slice(0, hit.index)) && put === 'stays' ? 'stay' : put;
    return [`${says.slice(0, hit.index)}${many}${says.slice(hit.index + hit[0].length)}`];
  }
  return [];
}

/** "Laundry on main level" → "Laundry in the cellar". */
export function placeWords(
  { house }: Known,
  { says }: Stretch,
  rooms: readonly number[],
  items: readonly Item[],
): string[] {
  const id = rooms[0] === undefined ? items[0]?.where[0] : house.rooms[rooms[0]]?.level;
  const place = [...house.levels, ...house.rooms, ...house.structures].find((one) => one.id === id);
  const name = (place?.name ?? place?.id)?.toLowerCase();
  const at = /\s(?:on|in|at)\s.*$/i.exec(says);
  if (name === undefined) return [];
  const level = /level|floor|storey|story/.test(name) ? `on the ${name}` : `in the ${name}`;
  if (at !== null) return [`${says.slice(0, at.index)} ${level}`];
  const where =
    /^(?:(?:main|first|second|upper|lower|1st|2nd|ground)[\s-](?:floor|level|story)|upstairs|downstairs|basement|indoor|inside)\s+/i.exec(
      says,
    );
  return where === null ? [] : [`${says.slice(where[0].length)} ${level}`];
}

/** "furnace, gas" → "gas furnace"; "heat pump, air source" → "heat pump". */
export function otherWords(stretch: Stretch, truth: string): string[] {
  const [first = truth, second] = truth.split(', ');
  const own = second !== undefined && /^[a-z]+$/.test(second) ? `${second} ${first}` : first;
  const at = newnessIn(stretch);
  // "NEW FURNACE" where there is a boiler: the age is not known to be that of the other.
  return at === undefined ? [own, first] : [first];
}
