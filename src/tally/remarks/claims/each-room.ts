/** "Both baths remodeled", "new carpet in all bedrooms": one of several rooms in which it was not done. */
import { answerOf } from '../items/answer-of.js';
import { factsOf } from '../items/item-words.js';
import type { Judgement } from '../items/known.js';
import { withoutPaint } from '../items/meant-items.js';
import { itemsFor } from '../items/pick-items.js';
import { type PlaceMeant, placeMeant } from '../items/places.js';
import type { Attribute } from '../sentence/phrase.js';
import { thing } from '../words/taxonomy.js';
import { type AttributeOf, attributesOfKind, type ClaimCase } from './claim-case.js';

type Word = AttributeOf<'newness'>;

const OUT_OF = /\b(one|two|three|four|\d) (out )?of (the |its |our )?(two|three|four|five|six|\d)\b[^.;]*$/i;

/** "Both baths remodeled": one of them in which nothing was done. */
export function eachRoom(one: ClaimCase, word: Word): Judgement | undefined {
  const { known, phrase, items } = one;
  const { room } = thing(phrase.thing);
  // "Two of the three baths" leaves the third out.
  if (OUT_OF.test(one.sentence.text.slice(Math.max(0, phrase.from - 40), phrase.from))) return undefined;
  const both = one.attributes.some(
    (other) =>
      other.kind === 'both' ||
      (other.kind === 'all' && other.before) ||
      (other.kind === 'number' && other.before && other.number.kind === 'count' && other.number.value > 1),
  );
  if (room === undefined || !both || !/^(updated|remade|new)$/.test(word.id)) return undefined;
  const whole = known.house.rooms.filter(
    ({ use, bath }) => use === room && !(phrase.thing === 'bath' && bath === 'half'),
  );
  // "Both" of one whole bath and one half bath means the half one too.
  const rooms = whole.length > 1 ? whole : known.house.rooms.filter(({ use }) => use === room);
  const judged = rooms.map(({ id }) => {
    const own = withoutPaint(items.filter(({ where }) => where.includes(id)));
    return (
      own.filter((item) => answerOf(known, item, word.id) === 'yes' && item.deed !== 'painted').length > 0
    );
  });
  const left = rooms.filter((_, index) => judged[index] === false);
  if (left.length === 0 || left.length === rooms.length) return undefined;
  const facts = left.slice(0, 3).flatMap(({ id }) =>
    factsOf(
      items.filter(({ where }) => where.includes(id)),
      2,
    ),
  );
  return {
    verdict: 'contradicted',
    rule: `newness.${word.id}`,
    because: 'not in all of them',
    facts,
  };
}

/** Words that make a claim of every room: "all bedrooms", "each bath", "both baths". */
const EVERY = /\b(all|both|each|every)\b[^.,;!?]*$/i;
const PER_ROOM =
  /^(floor|toilet|vanity|sink|tub|faucet|counter|window|light|wall|tile|ceiling-fan|plumbing)$/;

/** "All bedrooms have new carpet", "new vanities in both baths": a room where the folder says otherwise. */
export function eachPlace(one: ClaimCase, word: Word): Judgement | undefined {
  const { known, phrase } = one;
  if (!PER_ROOM.test(phrase.thing) || !/^(new|newer|replaced|updated)$/.test(word.id)) return undefined;
  const room = everyRoom(one);
  if (room === undefined) return undefined;
  const ids = placeMeant(known.house, room).ids;
  const items = itemsFor(known, phrase.thing);
  const judged = ids.map((id) => {
    const own = items.filter(({ where, kind }) => where.includes(id) && kind !== 'work');
    const answers = own.map((item) => answerOf(known, item, word.id));
    return {
      own,
      no: answers.length > 0 && answers.every((answer) => answer === 'no'),
      yes: answers.includes('yes'),
    };
  });
  const left = judged.filter(({ no }) => no).flatMap(({ own }) => own);
  if (left.length === 0) return undefined;
  return {
    verdict: judged.some(({ yes }) => yes) ? 'wider' : 'contradicted',
    rule: `newness.${word.id}`,
    because: 'not in all of them',
    facts: factsOf(left, 3),
  };
}

const COUNTED = /\b(one|two|three|four|[1-4])\s+(?:of the (?:\w+\s+)?)?$/i;
const COUNTS: Readonly<Record<string, number>> = { one: 1, two: 2, three: 3, four: 4 };

/** "New alarms in two bedrooms": so many rooms have one, and the text speaks of no more. */
export function inCountedRooms({ known, phrase, sentence, items }: ClaimCase, word: Word): boolean {
  for (const { thing: id, from, to } of phrase.rooms) {
    const said =
      from < phrase.to ? undefined : COUNTED.exec(sentence.text.slice(Math.max(0, from - 24), from))?.[1];
    if (said === undefined || !isPlural(id) || !/s$/i.test(sentence.text.slice(from, to))) continue;
    const wanted = COUNTS[said.toLowerCase()] ?? Number(said);
    const rooms = placeMeant(known.house, id).ids.filter((room) =>
      items.some((item) => item.where.includes(room) && answerOf(known, item, word.id) === 'yes'),
    );
    if (rooms.length >= wanted) return true;
  }
  return false;
}

const ON_LEVEL =
  /\b(down|downstairs|upstairs|up|main|first|second|upper|lower|ground|1st|2nd|secondary|guest|other|these|those)\b/i;

/** The rooms of which a phrase says that every one has it: "all bedrooms have carpet". */
export function everyRoomOf(one: ClaimCase): PlaceMeant | undefined {
  const near = one.phrase.rooms[0] ?? one.phrase;
  const { text } = one.sentence;
  // "Both downstairs bedrooms" are not all of them.
  if (ON_LEVEL.test(text.slice(Math.max(0, Math.min(near.from, one.phrase.from) - 40), near.to + 14)))
    return undefined;
  const room = PER_ROOM.test(one.phrase.thing) ? everyRoom(one) : undefined;
  return room === undefined ? undefined : placeMeant(one.known.house, room);
}

/** The kind of room of which a phrase says that every one has it. */
function everyRoom({ phrase, sentence }: ClaimCase): string | undefined {
  const { text } = sentence;
  const place = phrase.rooms.find(
    ({ thing: id, from }) => isPlural(id) && from > phrase.to && EVERY.test(text.slice(phrase.to, from)),
  );
  if (place !== undefined) return place.thing;
  const subject = sentence.phrases.filter((other) => other.to <= phrase.from && !other.place).at(-1);
  if (subject === undefined || !isPlural(subject.thing)) return undefined;
  const said = attributesOfKind({ attributes: subject.attributes as Attribute[] }, 'all').length > 0;
  const before = text.slice(Math.max(0, subject.from - 20), subject.from);
  return (said || EVERY.test(before)) &&
    /\b(have|has|got|with|feature|boast)\b/i.test(text.slice(subject.to, phrase.from))
    ? subject.thing
    : undefined;
}

const isPlural = (id: string): boolean => id === 'bedroom' || id === 'bath';

const REMODELLED = /\b(remodel|renovat|redone|redid|overhaul|rehab|transform)/i;
/** What makes a bath or a kitchen what it is. */
const CORE = /^(floor|tub|shower|vanity|toilet|cabinet|counter|sink)$/;

/** "The hall bath was remodeled", where as much was left or only coated as was put in. */
export function halfLeft({ known, phrase, items }: ClaimCase, word: Word): Judgement | undefined {
  const { room } = thing(phrase.thing);
  if (room === undefined || word.id !== 'updated' || !REMODELLED.test(word.word)) return undefined;
  const rooms = known.house.rooms.filter(
    ({ id, use }) => use === room && items.some(({ where }) => where.includes(id)),
  );
  if (rooms.length !== 1) return undefined;
  const core = items.filter(({ kind, things }) => kind !== 'work' && things.some((one) => CORE.test(one)));
  const left = core.filter(({ kept, deed }) => kept || deed === 'painted' || deed === 'refinished');
  if (left.length === 0 || left.length * 2 < core.length) return undefined;
  return {
    verdict: 'wider',
    rule: 'newness.updated',
    because: 'much of it was left or only coated',
    facts: factsOf(left, 3),
  };
}
