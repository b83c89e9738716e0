/** "Rear windows", "street-facing sashes", "the wall at the back": of several, the facts that name the same side. */

import type { Phrase } from '../sentence/phrase.js';
import { sinceLast } from '../words/cut-at.js';
import { thing } from '../words/taxonomy.js';
import type { Item } from './items.js';

/** Sides of a house, by the words that a text or a folder has for each. */
const SIDES: readonly (readonly [string, RegExp])[] = [
  ['front', /^(front|street|curb|road|facade|porch-side)$/],
  ['back', /^(back|rear|court|courtyard|backyard|garden|alley|yard)$/],
  ['east', /^(east|eastern|east-facing)$/],
  ['west', /^(west|western|west-facing)$/],
  ['north', /^(north|northern|north-facing)$/],
  ['south', /^(south|southern|south-facing)$/],
];

const sidesIn = (words: string): string[] => {
  const parts = words.toLowerCase().split(/[^a-z]+/);
  return SIDES.flatMap(([side, word]) => (parts.some((part) => word.test(part)) ? [side] : []));
};

/** Things of which a folder tells side by side. */
const HAS_SIDES =
  /^(window|storm-window|siding|wall|door|gutter|downspout|fence|chimney|trim-outside|shutter|foundation|roof|skylight|gate|walk|retaining-wall)$/;

const AHEAD = /(?:^|[\s(])((?:[a-z']+[\s-]+){0,2})$/i;
const BEHIND =
  /^\s*(?:(?:facing|on|at|along|of|in|to|toward|towards|overlooking)\s+(?:the\s+|our\s+)?)((?:(?:front|back|rear|street|court|courtyard|garden|alley|yard|east|west|north|south)(?:\s+side)?)(?:\s+(?:and|&)\s+(?:front|back|rear|street|court|garden|alley))?)\b(?!\s+(?:bedroom|bath|porch|hall|parlou?r|room|door|deck|patio))/i;

/** The sides that the words around a phrase name; none where they name none, or the side of a room. */
function sidesSaid({ from, to, rooms }: Pick<Phrase, 'from' | 'to' | 'rooms'>, text: string): string[] {
  const ahead = AHEAD.exec(sinceLast(text.slice(Math.max(0, from - 28), from), /[.,;:!?\n(]/))?.[1] ?? '';
  // "Back bedroom windows": the bedroom's side.
  const own = rooms.some((room) => room.to <= from && from - room.to < 3) ? '' : ahead;
  const behind = BEHIND.exec(text.slice(to, to + 40))?.[1] ?? '';
  return [...new Set([...sidesIn(`${own} ${text.slice(from, to)}`), ...sidesIn(behind)])];
}

/** Of facts that are told by side, those of the side that is said; those that name no side may be meant as well. */
export function onSide(phrase: Phrase, text: string, items: readonly Item[]): readonly Item[] {
  if (!HAS_SIDES.test(phrase.thing) || thing(phrase.thing).room !== undefined) return items;
  const said = sidesSaid(phrase, text);
  if (said.length === 0) return items;
  const named = items.map((item) => ({ item, sides: sidesIn(item.label) }));
  const fits = named.filter(({ sides }) => sides.some((side) => said.includes(side)));
  // Where the folder has entries for the side, they are meant; else whatever is not of another side.
  if (fits.length > 0) return fits.map(({ item }) => item);
  return named.flatMap(({ item, sides }) => (sides.length === 0 ? [item] : []));
}
