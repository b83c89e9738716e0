/** What a deed was done to: a verb that names its own part, a part of a thing, all of a system. */
import { answerOf } from '../items/answer-of.js';
import { factsOf } from '../items/item-words.js';
import type { Item } from '../items/items.js';
import type { Judgement } from '../items/known.js';
import { contextOf } from '../items/meant-items.js';
import { itemsFor } from '../items/pick-items.js';
import { belongsTo, thing } from '../words/taxonomy.js';
import type { AttributeOf, ClaimCase } from './claim-case.js';

type Word = AttributeOf<'newness'>;

/** Verbs that name the part that they are done to. */
const PARTS: readonly (readonly [RegExp, string])[] = [
  [/\b(re-?\s?)?tiled\b/i, 'tile'],
  [/\b(re-?\s?)?(carpeted|floored)\b/i, 'floor'],
  [/\b(re-?\s?)?(roofed|shingled)\b/i, 'roof'],
  [/\b(re-?\s?)?sided\b/i, 'siding'],
  [/\b(re-?\s?)?wired\b/i, 'wiring'],
  [/\b(re-?\s?)?(plumbed|piped)\b/i, 'supply-pipe'],
];

/** The facts that a word about a deed is held against. */
export function itemsOfDeed({ known, phrase, items, found }: ClaimCase, word: Word): readonly Item[] {
  // "New stainless appliances": those of another finish are appliances too.
  if (phrase.thing === 'appliance' && word.id === 'new' && found.length > 0) return found;
  const part = PARTS.find(([verb]) => verb.test(word.word))?.[1];
  if (part === undefined || phrase.thing === 'tile') return items;
  // "Re-plumbed in PEX": the deed is of all the pipes, the kind of the new ones alone.
  if (phrase.thing === part) return found;
  const { room, structure, level } = thing(phrase.thing);
  if (phrase.thing === 'house') return itemsFor(known, part);
  if (room === undefined && structure === undefined && level === undefined) return items;
  const places = new Set([...items, ...found].flatMap(({ where }) => where));
  const ids = structure === undefined ? places : structureIds(known, structure);
  const own = itemsFor(known, part).filter(
    (item) => item.where.some((id) => ids.has(id)) || (structure !== undefined && namesIt(item, structure)),
  );
  return own.length > 0 ? own : items;
}

const structureIds = ({ house }: ClaimCase['known'], is: string): Set<string> =>
  new Set(house.structures.filter((one) => one.is === is).map(({ id }) => id));

/** "Roof, garage". */
const namesIt = ({ label }: Item, structure: string): boolean => label.toLowerCase().includes(structure);

/** Everything that was done or left in a room: paint and new lights make "untouched" too wide. */
export function allInRoom({ known, phrase, sentence, items }: ClaimCase): readonly Item[] {
  if (thing(phrase.thing).room === undefined) return items;
  const { ids } = contextOf(known, phrase, sentence).place;
  return known.items.filter(
    ({ kind, where }) => kind !== 'structure' && where.some((id) => ids.includes(id)),
  );
}

/** "A rebuilt bath", "the main bath": the facts of all that may be meant, and behind them those of each by itself. */
export function ofOneRoom(
  { known, phrase, sentence, attributes }: ClaimCase,
  items: readonly Item[],
): readonly (readonly Item[])[] {
  const said = sentence.text.slice(phrase.from, phrase.to);
  if (thing(phrase.thing).room === undefined || /s$/i.test(said)) return [items];
  if (attributes.some(({ kind, before }) => kind === 'both' || kind === 'some' || (kind === 'all' && before)))
    return [items];
  const { ids } = contextOf(known, phrase, sentence).place;
  // A half bath is not what "the bath" means, where there is a whole one.
  const half = known.house.rooms.filter(({ bath }) => bath === 'half').map(({ id }) => id);
  const whole = ids.filter((id) => !half.includes(id));
  const rooms = (whole.length > 0 ? whole : ids)
    .map((id) => items.filter(({ where }) => where.length === 1 && where[0] === id))
    .filter((own) => own.length > 0);
  return rooms.length > 1 ? [items, ...rooms] : [items];
}

/** "New porch", where only its steps and rail are new. */
export function onlyParts({ known, phrase, items }: ClaimCase, { id }: Word): Judgement | undefined {
  if (thing(phrase.thing).structure === undefined || !/^(new|newer|remade)$/.test(id)) return undefined;
  // "Deck: new composite" names the part.
  if (phrase.attributes.some(({ kind }) => kind === 'class')) return undefined;
  const done = items.filter((item) => answerOf(known, item, id) === 'yes');
  if (done.length === 0 || done.some(({ things }) => things.some((one) => belongsTo(one, phrase.thing))))
    return undefined;
  return {
    verdict: 'wider',
    rule: `newness.${id}`,
    because: 'so of parts of it, but not of all',
    facts: factsOf(done, 3),
  };
}

/** Whether the phrase names the very part whose repair put new parts in: "the underlayment was replaced". */
export function namesMendedPart({ phrase, sentence, items }: ClaimCase): boolean {
  const words = (
    sentence.text
      .slice(phrase.from, phrase.to)
      .toLowerCase()
      .match(/[a-z]{4,}/g) ?? []
  ).map((word) => word.replace(/s$/, ''));
  const mended = items.filter(({ kind, deed }) => kind === 'work' && deed === 'repaired');
  return mended.some((item) => {
    const told = `${item.label} ${item.words}`.toLowerCase();
    return (
      words.length > 0 &&
      words.every((word) => told.includes(word)) &&
      !words.every((word) => item.things.includes(word))
    );
  });
}

/** "To the studs at the tub", "replaced on two slopes": of a part, as the text itself says. */
export const saysWhere = (text: string, { to }: Word): boolean => IN_PART.test(text.slice(to, to + 28));

const IN_PART =
  /^\s*(at|around|behind|by|beside) the \w+|^\s*(on|over|along) (one|two|three|the \w+ (slope|side|wall|end))/i;
