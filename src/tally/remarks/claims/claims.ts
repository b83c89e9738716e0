/** From the phrases of a sentence to findings: each thing that is said of a thing, held against the facts. */

import { factsOf } from '../items/item-words.js';
import type { Item } from '../items/items.js';
import type { Known } from '../items/known.js';
import { meant } from '../items/meant-items.js';
import { itemsFor } from '../items/pick-items.js';
import { deedOfRest } from '../items/rest-of-it.js';
import { judgeDues, judgeLets } from '../judge/judge-dues.js';
import { periodBehind } from '../sentence/counting.js';
import type { Attribute, Phrase } from '../sentence/phrase.js';
import { missesLevel } from '../standing/each-level.js';
import { FLOOD_NOT_TOLD } from '../standing/flood-read.js';
import { sinceLast, untilFirst } from '../words/cut-at.js';
import type { Sense } from '../words/lexicon.js';
import { belongsTo, isKindOf, thing } from '../words/taxonomy.js';
import { absent } from './absent-things.js';
import { deadFeature, fencesPoolOnly, walksOut } from './as-features.js';
import { ceilingIsFlat } from './ceiling-shapes.js';
import {
  attributesOfKind,
  type ClaimCase,
  type SentenceWords,
  type Told,
  tell,
  wordsBehind,
} from './claim-case.js';
import {
  cabinetsKept,
  isVanityTop,
  onlyInlet,
  pedestalNotThere,
  showerIsOverTub,
  vanityTops,
} from './described-otherwise.js';
import { deadByNote, missingByCondition, praisedThoughListed } from './listed-conditions.js';
import { negatedClaim, reversed } from './negated-claims.js';
import { nothingKnown } from './nothing-known.js';
import { fireIsOut } from './out-of-use.js';
import { placeClaim } from './place-claims.js';
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
  /** Facts that it is held against, where a second look found them. */
  only?: readonly Item[],
): Told[] {
  const attributes = phrase.attributes.filter((one) => !done.has(one));
  // "fourth bedroom addition": where no fact is called so, the room is meant.
  const room = phrase.rooms.find(({ to }) => to <= phrase.from);
  if (phrase.thing === 'addition' && room !== undefined && itemsFor(known, 'addition').length === 0)
    return claimsOf(known, { ...phrase, thing: room.thing, rooms: [] }, done, sentence, only);
  if (phrase.thing === 'door' && isOfCabinets(phrase, sentence))
    return claimsOf(known, { ...phrase, thing: 'cabinet-front' }, done, sentence, only);
  if (phrase.thing === 'tile' && isOfRoof(known, phrase, sentence))
    return claimsOf(known, { ...phrase, thing: 'roof' }, done, sentence, only ?? tiledRoofs(known));
  const remade = asRemodelled(phrase, sentence.text);
  if (remade !== undefined) return claimsOf(known, remade, done, sentence, only);
  // "The attic was spray foamed" tells of its insulation.
  if (
    phrase.thing === 'attic' &&
    attributes.some((one) => one.kind === 'class' && one.senses.some(isOfInsulation))
  )
    return claimsOf(known, { ...phrase, thing: 'insulation' }, done, sentence, only);
  const { places, found: plain } = meant(known, phrase, sentence);
  const found = only ?? (isVanityTop({ phrase, sentence }) ? vanityTops({ known, places, sentence }) : plain);
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
  if (phrase.thing === 'flood-zone') return [{ judgement: FLOOD_NOT_TOLD, attributes: [] }];
  if (phrase.negated && isSubjectOfDenial(phrase, sentence.text)) return [];
  if (phrase.negated && !NOT_WITHOUT.test(sentence.text.slice(Math.max(0, phrase.from - 20), phrase.from)))
    return negatedClaim(one);
  const apart = apartFromFacts(one);
  if (apart !== undefined) return apart;
  const less = walksOut(one) ?? fencesPoolOnly(one);
  if (less !== undefined) return [{ judgement: less, attributes: [] }];
  tellFigures(one);
  tellKinds(one);
  const praised = praisedThoughListed(one);
  const missing =
    tubNotThere(one) ??
    showerIsOverTub(one) ??
    pedestalNotThere(one) ??
    cabinetsKept(one) ??
    onlyInlet(one) ??
    fireIsOut(one) ??
    ceilingIsFlat(one) ??
    (found.length === 0 ? missingByCondition(known, phrase) : undefined) ??
    (praised === undefined ? deadByNote(one) : undefined);
  if (missing !== undefined) return [...one.told, { judgement: missing, attributes: [] }];
  if (one.items.length === 0 && found.length === 0)
    return [...one.told, ...(praised === undefined ? nothingKnown(one) : [praised])];
  tellAges(one);
  tell(one, deedOfRest(one));
  tellPeople(one);
  tellSale(one);
  tell(one, missesLevel(one));
  if (praised !== undefined && !one.told.some(isOfCondition)) one.told.push(praised);
  // Where it is said to be, and the thing by its bare mention.
  const placed = /^(hall|closet|entry|storage|house)$/.test(phrase.rooms[0]?.thing ?? '')
    ? undefined
    : placeClaim(known, phrase, places);
  const wrong = one.told.some(({ judgement }) => judgement.verdict === 'contradicted');
  if (placed !== undefined && !(wrong && placed.verdict === 'backed')) tell(one, placed);
  if (one.told.length === 0) tell(one, deadFeature(one));
  if (one.told.length === 0 && thing(phrase.thing).feature)
    tell(one, {
      verdict: 'backed',
      rule: 'there',
      because: 'the folder tells of it',
      facts: factsOf(found, 2),
    });
  return one.told;
}

const isOfInsulation = ({ group }: Sense): boolean => group === 'insulation-material';

/** "The cabinet boxes are old, the doors are new": those of the cabinets. */
const isOfCabinets = ({ from, at }: Phrase, { phrases }: SentenceWords): boolean => {
  const before = phrases.filter((one) => one.at < at && !one.place).at(-1);
  return before !== undefined && /^cabinet/.test(before.thing) && from - before.to < 40;
};

/** "The roof underlayment is new, the tiles are the first ones": those of the roof. */
const isOfRoof = (known: Known, { at, rooms }: Phrase, { phrases, spoken }: SentenceWords): boolean => {
  const before = phrases.findLast((one) => one.at < at && !one.place)?.thing ?? spoken;
  return (
    rooms.length === 0 && before !== undefined && belongsTo(before, 'roof') && tiledRoofs(known).length > 0
  );
};

const tiledRoofs = (known: Known): readonly Item[] =>
  itemsFor(known, 'roof').filter(({ classes }) =>
    classes.some((one) => isKindOf(one.group, one.id, 'roof-tile')),
  );

const isOfCondition = ({ judgement: { verdict, rule } }: Told): boolean =>
  verdict === 'contradicted' && rule.startsWith('condition.');

/** Two denials: it has one. */
const NOT_WITHOUT = /\bnot (without|lacking|missing)( an?| its| the)?\s*$/i;

/** "Not in an association". */
const isNotOf = (text: string, { from }: Phrase): boolean =>
  /\b(not|never|isn['’]t|free of|outside(?: of)?|(?<!\bnot )without)\b(?! without)[^.;,:]{0,18}$/i.test(
    text.slice(Math.max(0, from - 36), from),
  );

const LET_DENIED = /\b(not|no|never|prohibited|forbidden|barred|limited|restricted|minimum)\b/i;

/** "Neither the hall nor the bath was skipped": the room is there, and something else is denied of it. */
const isSubjectOfDenial = ({ from, to }: Phrase, text: string): boolean =>
  /\b(neither|nor)\b[^.;:!?]{0,40}$/i.test(text.slice(Math.max(0, from - 48), from)) &&
  /^\s+(was|were|is|are|has|have|had|got|been)\b/i.test(text.slice(to, to + 12));

const OFTEN_FORMER =
  /\b(former|conver|used to|once|was(?! (?:just|recently|newly|lately|all|re[a-z]|inst|serv|upd|built|add)))/i;

/** Dues, lets, and things that the folder excludes: told without a look at the facts of the thing. */
function apartFromFacts(one: ClaimCase): Told[] | undefined {
  const { known, phrase, sentence, attributes } = one;
  const { text } = sentence;
  if (phrase.thing === 'association') {
    for (const money of attributesOfKind(one, 'number')) {
      if (money.number.kind !== 'money') continue;
      const per = periodBehind(text.slice(money.to, money.to + 16));
      return [{ judgement: judgeDues(known, money.number.value, false, per), attributes: [money] }];
    }
    return [{ judgement: judgeDues(known, undefined, isNotOf(text, phrase)), attributes: [] }];
  }
  if (phrase.thing === 'short-lets') {
    const judgement = judgeLets(known);
    return [
      { judgement: LET_DENIED.test(wordsBehind(one)) ? reversed(judgement) : judgement, attributes: [] },
    ];
  }
  const behind = untilFirst(text.slice(phrase.to, phrase.to + 14), /[.!?;\n]/).toLowerCase();
  const ahead = sinceLast(text.slice(Math.max(0, phrase.from - 14), phrase.from), /[.!?;\n]/);
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
