/** Who did it, where no thing stands beside: "Everything was done by licensed pros", "Professionally installed." */
import type { Item } from '../items/items.js';
import type { FactSaid, Judgement, Known } from '../items/known.js';
import { isRoomThing, meant, whoItems } from '../items/meant-items.js';
import { itemsAt, itemsFor, placesOf } from '../items/pick-items.js';
import { placeMeant } from '../items/places.js';
import { sortByClass } from '../judge/judge-class.js';
import { judgeTrade, judgeWho } from '../judge/judge-people.js';
import type { Spoken } from '../read-sentence.js';
import type { Attribute, Phrase } from '../sentence/phrase.js';

type Who = Extract<Attribute, { kind: 'who' }>;

/** Words that make it a claim of all the work there is. */
const OF_EVERYTHING =
  /\b(everything|every (bit|inch|project|job|update|upgrade|improvement|trade)|all (of )?(the |this |our |its )?(work|it|that|projects?|jobs?|improvements?|updates?|upgrades?|renovations?|trades?)|start to finish|top to bottom|soup to nuts|across the board|the whole (thing|job|project|remodel|renovation|rehab)|the entire (thing|job|project|remodel|renovation|rehab)|no (diy|shortcuts?)|not (a )?diy)\b/i;

/** People told by themselves: "LICENSED AND INSURED CREW". */
const PEOPLE =
  /^\W*(?:(?:all|only|by|our|fully|licensed|insured|bonded|certified|professional|and|&)\W+)*(?:crews?|contractors?|trades|tradesmen|tradespeople|pros|professionals|craftsmen|workmanship|work)\W*$/i;

const MEASURED = /\b(measured|taped|tape|sized|drawn)\W+(\w+\W+)?$/i;

/** The sentence around it, as far as the reading knows it. */
export interface Around {
  readonly text: string;
  /** Where the sentence begins and ends in the text. */
  readonly from: number;
  readonly to: number;
  readonly phrases: readonly Phrase[];
  readonly spoken: Spoken | undefined;
}

export function judgeLooseWho(known: Known, one: Who, around: Around): Judgement | undefined {
  const { text, from, to, phrases, spoken } = around;
  if (MEASURED.test(text.slice(Math.max(from, one.from - 24), one.from))) return judgeMeasured(known, one.id);
  // "Hired out: gutters, deck": told of each member of the list.
  if (text[one.to] === ':' && phrases.some((phrase) => phrase.from > one.to)) return undefined;
  const sentence = text.slice(from, to);
  if (OF_EVERYTHING.test(sentence)) return judgeWho(works(known), one.id, one.trade, true);
  if (
    REDONE_BY.test(sentence) &&
    one.id !== 'owner' &&
    phrases.every(({ thing }) => /^(house|work)$/.test(thing))
  )
    return notAllSo(judgeWho(works(known), one.id, one.trade, true));
  const done = asSubject(known, one, around);
  if (done !== undefined) return done;
  const named = ofDeedBefore(known, one, around);
  if (named !== undefined) return named;
  const near = nearest(known, one, phrases);
  if (near !== undefined && one.id === 'owner') return near;
  if (phrases.length === 0 && spoken !== undefined && (opens(text, from, one) || OF_IT.test(sentence))) {
    const own = judgeWho(whoItems([], itemsFor(known, spoken.thing)), one.id, one.trade, false);
    if (own.verdict === 'contradicted' || own.verdict === 'backed') return own;
  }
  if (one.trade !== undefined) return judgeTrade(known, one.id, one.trade);
  // "We did the vanity ourselves": of the vanity alone, and no claim of all the work.
  if (one.id === 'owner' && phrases.some((phrase) => saysDid(one, phrase, text))) return undefined;
  if (one.id === 'licensed')
    return phrases.length === 0 && PEOPLE.test(sentence)
      ? judgeWho(works(known), 'licensed', undefined, true)
      : anyLicensed(known);
  return one.id === 'professional' ? undefined : judgeWho(works(known), one.id, one.trade, true);
}

/** "Renovated by a licensed contractor": said of the whole house. */
const REDONE_BY =
  /^\W*(?:(?:the|this|our|home|house|property|was|were|is|has|been|all|fully|totally|completely|entirely|recently|beautifully|lovingly|tastefully|professionally|whole|entire)\W+)*(?:renovated|remodel+ed|rehabbed|updated|redone|restored|rebuilt|gutted|renovation|remodel|rehab|work)\W+(?:\w+\W+){0,2}by\b/i;

/** Of much work by many hands: one who did some of it makes the words too wide, and not wrong. */
const notAllSo = (judgement: Judgement): Judgement =>
  judgement.verdict === 'contradicted' && judgement.because === 'so of some, but not of all'
    ? { ...judgement, verdict: 'wider' }
    : judgement;

const DID =
  /^\s+(?:(?:has|have|had|then|also|just|recently|later|even)\s+)*(?:did|made|put|laid|set|built|ran|hung|sprayed|blew|grouted|stained|sealed|cleaned|insulated|textured|roofed|reroofed|shingled|sided|fenced|paved|upgraded|updated|reworked|restored|repaired|rewired|replumbed|repiped|tore|cut|welded|framed|trimmed|reglazed|redid|handled|installed|replaced|changed|added|redid|rebuilt|painted|fixed|moved|swapped|wired|plumbed|refinished|sanded|tiled|finished|remodeled|renovated|completed|poured|sprayed)\b/i;

const saysDid = (one: Who, { from, aside, thing }: Phrase, text: string): boolean =>
  from >= one.to &&
  aside === undefined &&
  !/^(house|work)$/.test(thing) &&
  DID.test(text.slice(one.to, from));

/** "A tile contractor did the bath": who stands before the verb, what was done behind it. */
function asSubject(known: Known, one: Who, { text, phrases }: Around): Judgement | undefined {
  const object = phrases.find(({ from, aside }) => from >= one.to && aside === undefined);
  const between = object === undefined ? '' : text.slice(one.to, object.from);
  // "The window company did the four in front, the stone shop did the granite": behind a comma another did it.
  if (object === undefined || !DID.test(between) || /[,;:.!?]/.test(between)) return undefined;
  const items = meant(known, object, { text, phrases, context: undefined }).found;
  // Of a room, the work on it: "did the bath".
  const own = items.filter(({ kind, things }) => kind === 'work' && things.includes(object.thing));
  const judgement = judgeWho(own.length > 0 ? own : whoItems([], items), one.id, one.trade, false);
  return judgement.verdict === 'contradicted' || judgement.verdict === 'backed' ? judgement : undefined;
}

const DONE_BY =
  /\b(?:done|work|installed|built|laid|hung|put (?:in|up|on|down)|completed|handled|performed|replaced|set|poured|sprayed|blown in|painted|tiled|made|carried out|redone|rebuilt|refinished|installation|finished|fitted|wired|run)\W+(?:\w+ly\W+)?(?:by\W+)?(?:(?:a|an|the|our|their|local|licensed|hired|professional|certified|area|well-known|reputable)\W+)*$/i;

const OF_SEVERAL = /\b(all|both|each|every\w*|mostly|some|most|and)\b/i;

/** "The carport got a metal roof, done by a roofing company": of the thing named last. */
function ofDeedBefore(known: Known, one: Who, { text, from, phrases }: Around): Judgement | undefined {
  const deed = DONE_BY.exec(text.slice(from, one.from));
  const last = phrases.findLast(({ to, place, aside }) => to <= one.from && !place && aside === undefined);
  if (deed === null || last === undefined) return undefined;
  const between = text.slice(last.to, from + deed.index);
  if (/[.;:!?\n]/.test(between) || OF_SEVERAL.test(between) || between.length > 40) return undefined;
  const room = phrases.find(
    (phrase) => phrase !== last && phrase.to <= last.from && isRoomThing(phrase.thing),
  );
  const there = itemsAt(known, last, placesOf(known, last));
  const ids = room === undefined ? [] : placeMeant(known.house, room.thing).ids;
  const own = there.filter(({ where }) => where.some((id) => ids.includes(id)));
  const near = itemsFor(known, last.thing).filter(({ where }) => where.some((id) => ids.includes(id)));
  const items = own.length > 0 ? own : near.length > 0 ? near : there;
  const kinds = last.attributes.flatMap((word) => (word.kind === 'class' ? [word.senses] : []));
  const fits = kinds.reduce<readonly Item[]>((left, senses) => {
    const so = sortByClass(left, senses).fits;
    return so.length > 0 ? so : left;
  }, items);
  const judgement = judgeWho(whoItems([], fits), one.id, one.trade, false);
  return judgement.verdict === 'contradicted' || judgement.verdict === 'backed' ? judgement : undefined;
}

const works = (known: Known): readonly Item[] => known.items.filter(({ kind }) => kind === 'work');

/** "a rail on the steps, built by the owner": of the thing named before it, where the folder knows who did that. */
function nearest(known: Known, one: Who, phrases: readonly Phrase[]): Judgement | undefined {
  const told = phrases.filter(({ aside }) => aside === undefined);
  const around = [
    ...told.filter(({ to }) => to <= one.from).slice(-2),
    ...told.filter(({ from }) => from >= one.to).slice(0, 1),
  ];
  for (const phrase of around) {
    const judgement = judgeWho(
      whoItems([], itemsAt(known, phrase, placesOf(known, phrase))),
      one.id,
      one.trade,
      false,
    );
    if (judgement.verdict === 'backed') return judgement;
  }
  return undefined;
}

/** "The owner sanded them himself." */
const OF_IT = /\b(them|it|those|these)\b/i;

/** Nothing but an adverb or a verb stands before it: the sentence goes on with what was spoken of. */
const opens = (text: string, from: number, one: Who): boolean =>
  /^\W*(?:(?:it|they|both|all|this|that|these|was|were|is|are|done|completed|installed|handled|put|in|by|a|an|the|performed|carried|out)\W+)*$/i.test(
    text.slice(from, one.from),
  );

/** "Measured by the owner". */
function judgeMeasured({ house }: Known, id: string): Judgement | undefined {
  const { measured } = house;
  if (measured === undefined) return undefined;
  const fits = (id === 'owner') === (measured.by === 'owner');
  return {
    verdict: fits ? 'backed' : 'contradicted',
    rule: 'who.measured',
    because: `the folder says that ${measured.by === 'owner' ? 'the owner' : 'someone hired'} measured it`,
    facts: [
      {
        path: ['measured'],
        words: `measured by ${measured.by === 'owner' ? 'the owner' : measured.by}`,
        evidence: measured.evidence,
      },
    ],
  };
}

/** "Handled by a certified firm", of no thing that a table knows: whether anybody stated a licence. */
function anyLicensed({ house }: Known): Judgement {
  const rule = 'who.licensed';
  const stated = house.people.flatMap(({ trade = 'hired', licence }, index): FactSaid[] =>
    licence?.value === undefined
      ? []
      : [{ path: ['people', index], words: `${trade}: licence stated`, evidence: licence.evidence }],
  );
  if (stated.length === 0)
    return { verdict: 'no-fact', rule, because: 'the folder does not state a licence', facts: [] };
  return {
    verdict: 'backed',
    rule,
    because: 'the folder names somebody with a stated licence',
    facts: stated.slice(0, 1),
  };
}
