/** From the phrases of a sentence to findings: each thing that is said of a thing, held against the facts. */
import { absent } from './absent-things.js';
import {
  attributesOfKind,
  type ClaimCase,
  type SentenceWords,
  type Told,
  tell,
  wordsBehind,
} from './claim-case.js';
import { periodBehind } from './counting.js';
import { factsOf } from './item-words.js';
import { judgeDues, judgeLets } from './judge-dues.js';
import type { Judgement, Known } from './known.js';
import { deadByNote, missingByCondition, praisedThoughListed } from './listed-conditions.js';
import { meant } from './meant-items.js';
import { negatedClaim, reversed } from './negated-claims.js';
import { nothingKnown } from './nothing-known.js';
import type { Attribute, Phrase } from './phrase.js';
import { itemsFor } from './pick-items.js';
import { placeClaim } from './place-claims.js';
import { thing } from './taxonomy.js';
import { tellAges } from './tell-ages.js';
import { tellFigures } from './tell-figures.js';
import { tellKinds } from './tell-kinds.js';
import { tellPeople } from './tell-people.js';
import { tellSale } from './tell-sale.js';
import { tubNotThere } from './tubs.js';

/** Everything that a phrase claims. `done`: attributes that were told by themselves. */
export function claimsOf(
  known: Known,
  phrase: Phrase,
  done: ReadonlySet<Attribute>,
  sentence: SentenceWords,
): Told[] {
  const attributes = phrase.attributes.filter((one) => !done.has(one));
  // "fourth bedroom addition": where no fact is called so, the room is meant.
  const room = phrase.rooms.find(({ to }) => to <= phrase.from);
  if (phrase.thing === 'addition' && room !== undefined && itemsFor(known, 'addition').length === 0)
    return claimsOf(known, { ...phrase, thing: room.thing, rooms: [] }, done, sentence);
  const remade = asRemodelled(phrase, sentence.text);
  if (remade !== undefined) return claimsOf(known, remade, done, sentence);
  const { places, found } = meant(known, phrase, sentence);
  const one: ClaimCase = {
    known,
    phrase,
    sentence,
    attributes,
    places,
    found,
    items: found,
    told: [],
  };
  if (phrase.negated) return negatedClaim(one);
  const apart = apartFromFacts(one);
  if (apart !== undefined) return apart;
  tellFigures(one);
  tellKinds(one);
  const missing =
    tubNotThere(one) ??
    (found.length === 0 ? missingByCondition(known, phrase) : undefined) ??
    praisedThoughListed(one) ??
    deadByNote(one);
  if (missing !== undefined) return [...one.told, { judgement: missing, attributes: [] }];
  if (one.items.length === 0 && found.length === 0) return [...one.told, ...nothingKnown(one)];
  tellAges(one);
  tellPeople(one);
  tellSale(one);
  // Where it is said to be, and the thing by its bare mention.
  const placed = /^(hall|closet|entry|storage|house)$/.test(phrase.rooms[0]?.thing ?? '')
    ? undefined
    : placeClaim(known, phrase, places);
  const wrong = one.told.some(({ judgement }) => judgement.verdict === 'contradicted');
  if (placed !== undefined && !(wrong && placed.verdict === 'backed')) tell(one, placed);
  if (one.told.length === 0 && thing(phrase.thing).feature)
    tell(one, {
      verdict: 'backed',
      rule: 'there',
      because: 'the folder tells of it',
      facts: factsOf(found, 2),
    });
  return one.told;
}

const LET_DENIED = /\b(not|no|never|prohibited|forbidden|barred|limited|restricted|minimum)\b/i;

const OFTEN_FORMER = /\b(former|convert|conver|used to|once|was)/i;

const FLOOD: Judgement = {
  verdict: 'no-fact',
  rule: 'flood-zone',
  because: 'the folder says nothing of it; the federal flood map does',
  facts: [],
};

/** Dues, lets, flood zones, and things that the folder excludes: told without a look at the facts of the thing. */
function apartFromFacts(one: ClaimCase): Told[] | undefined {
  const { known, phrase, sentence, attributes } = one;
  const { text } = sentence;
  if (phrase.thing === 'association') {
    const money = attributesOfKind(one, 'number').find(({ number }) => number.kind === 'money');
    if (money === undefined) return [{ judgement: judgeDues(known, undefined, false), attributes: [] }];
    const sum = money.number.kind === 'money' ? money.number.value : undefined;
    return [
      {
        judgement: judgeDues(known, sum, false, periodBehind(text.slice(money.to, money.to + 16))),
        attributes: [money],
      },
    ];
  }
  if (phrase.thing === 'short-lets') {
    const judgement = judgeLets(known);
    return [
      { judgement: LET_DENIED.test(wordsBehind(one)) ? reversed(judgement) : judgement, attributes: [] },
    ];
  }
  if (phrase.thing === 'flood-zone') return [{ judgement: FLOOD, attributes: [] }];
  const behind = (text.slice(phrase.to, phrase.to + 14).split(/[.!?;\n]/)[0] ?? '').toLowerCase();
  const ahead =
    text
      .slice(Math.max(0, phrase.from - 14), phrase.from)
      .split(/[.!?;\n]/)
      .at(-1) ?? '';
  const around = `${ahead}${text.slice(phrase.from, phrase.to)}${behind}`;
  if (/^\W*(is |are |was )?(not|none|no)\b/i.test(behind) || OFTEN_FORMER.test(around)) return undefined;
  const missing = absent(one);
  return missing === undefined
    ? undefined
    : [{ judgement: missing, attributes: attributes.filter(({ before }) => before).slice(0, 1) }];
}

const REMODEL = /^(remodel|renovation|reno|rehab|makeover|overhaul|refresh|redo|update|upgrade)s?$/i;

/** "Hall bath remodel 2025": said of the room. */
function asRemodelled(phrase: Phrase, text: string): Phrase | undefined {
  const room = phrase.rooms.findLast(({ to }) => to <= phrase.from);
  const word = text.slice(phrase.from, phrase.to);
  if (phrase.thing !== 'work' || room === undefined || !REMODEL.test(word)) return undefined;
  const deed: Attribute = {
    kind: 'newness',
    id: 'updated',
    word: word.toLowerCase(),
    from: phrase.from,
    to: phrase.to,
    before: false,
    shared: false,
    unlike: false,
    negated: false,
  };
  return {
    ...phrase,
    thing: room.thing,
    from: room.from,
    to: room.to,
    rooms: phrase.rooms.filter((one) => one !== room),
    attributes: [...phrase.attributes, deed],
  };
}
