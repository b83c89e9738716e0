/** Who did it, and under which permit. */

import { answerOf } from '../items/answer-of.js';
import { type Item, putsIn } from '../items/items.js';
import type { Judgement } from '../items/known.js';
import { paintItems, whoItems } from '../items/meant-items.js';
import { saysIssued, saysOpen } from '../items/open-permits.js';
import { itemsFor } from '../items/pick-items.js';
import { worksOfTrade } from '../items/works-of-trade.js';
import { judgeDate } from '../judge/judge-dates.js';
import { judgeNamed, judgeTrade, judgeWho } from '../judge/judge-people.js';
import { judgePermit, permitFact, permitsNamed } from '../judge/judge-permits.js';
import { isParkingPermit } from '../standing/parking-permits.js';
import { untilFirst } from '../words/cut-at.js';
import { belongsTo, thing } from '../words/taxonomy.js';
import {
  type AttributeOf,
  attributesOfKind,
  type ClaimCase,
  isDate,
  tell,
  wordsBehind,
} from './claim-case.js';
import { reversed } from './negated-claims.js';

export function tellPeople(one: ClaimCase): void {
  const items = deedItems(one);
  tellWho(one, items);
  tellPermits(one, items);
}

function tellWho(one: ClaimCase, items: readonly Item[]): void {
  const { known, phrase, sentence } = one;
  const all = attributesOfKind(one, 'all').length > 0;
  const told = new Set<string>();
  for (const who of attributesOfKind(one, 'who')) {
    // "The owners did the work themselves": said once.
    if (who.trade === undefined && told.has(who.id)) continue;
    told.add(who.trade === undefined ? who.id : '');
    // "a fixture by an electrician" is a light.
    const lit = phrase.thing === 'bath-fixture' && who.trade === 'electrician';
    const doneBy = lit
      ? itemsFor(known, 'light')
      : (ofSubject(one) ?? ofPaint(one) ?? whoItems(items, one.items));
    const ofTrade = all && who.id !== 'owner' ? [...new Set([...doneBy, ...worksOfTrade(one)])] : doneBy;
    const judgement = judgeWho(ofTrade, who.id, who.trade, all);
    if (isBuyerOfWork(one, who) && judgement.verdict !== 'backed') continue;
    // "Who did the work? A roofer, a plumber": one of those who did it.
    const loose =
      judgement.verdict === 'contradicted' &&
      ((phrase.thing === 'work' && !all) || /,/.test(sentence.text.slice(phrase.to, who.from)));
    const oneOf = loose && who.trade !== undefined ? judgeTrade(known, who.id, who.trade) : undefined;
    tell(one, judgeTaken(one, items, who) ?? oneOf ?? judgement, who);
  }
  tell(one, judgeNamed(known, whoItems(items, one.items), wordsBehind(one, 80)));
}

function tellPermits(one: ClaimCase, items: readonly Item[]): void {
  const { known, phrase, sentence } = one;
  const { text } = sentence;
  const from =
    attributesOfKind(one, 'permit')[0]?.before === true
      ? phrase.from
      : Math.min(phrase.from, ...one.attributes.filter(({ before }) => before).map((word) => word.from));
  const words = text.slice(from, phrase.to).toLowerCase();
  const claim = { all: attributesOfKind(one, 'all').length > 0, thing: phrase.thing, words };
  for (const permit of attributesOfKind(one, 'permit')) {
    if (isParkingPermit(text, permit.from, permit.to)) continue;
    const own = judgePermit(known, items, claim);
    // A tub has no permit of its own; the work on its bath has.
    const judgement =
      permitOfOwner(one) ??
      (own.verdict === 'no-fact' && own.facts.every(({ path }) => path[0] !== 'permits')
        ? judgePermit(known, roomWork(one, items), claim)
        : own);
    const denied = permit.negated || saysOpen(text, permit.from, permit.to);
    if (saysIssued(text, permit.to) && /still open/.test(judgement.because)) {
      tell(one, { ...judgement, verdict: 'backed', because: 'the folder lists it as issued' }, permit);
      continue;
    }
    tell(one, denied ? denialOf(judgement) : judgement, permit);
  }
  for (const passed of attributesOfKind(one, 'inspected')) {
    const judgement = permitOfOwner(one) ?? judgePermit(known, items, claim);
    // What a code asks no folder says; that the office's last visit is outstanding does.
    const ofCode = /\bcode\b/i.test(text.slice(passed.from, passed.to));
    if (passed.negated || (ofCode && judgement.verdict !== 'contradicted')) continue;
    if (judgement.facts.some(({ path }) => path[0] === 'permits')) tell(one, judgement, passed);
  }
  for (const permit of attributesOfKind(one, 'unpermitted'))
    tell(one, denialOf(judgePermit(known, items, { ...claim, all: false })), permit);
}

const IS_A =
  /^\s+(was|is|were|are)\s+(?:(?:an?|all|the|strictly|purely|entirely|just|weekend|one)\s+)*(\S+\s+)?$/i;

/** "The water heater was a DIY project": the project is what stands before it. */
function ofSubject({ known, phrase, sentence }: ClaimCase): readonly Item[] | undefined {
  if (phrase.thing !== 'work') return undefined;
  const subject = sentence.phrases.findLast(({ to, place }) => to <= phrase.from && !place);
  if (subject === undefined || !IS_A.test(sentence.text.slice(subject.to, phrase.from))) return undefined;
  return itemsFor(known, subject.thing);
}

/** "The exterior painted by a painter and the interior by family": of the paint there. */
function ofPaint({ known, phrase, sentence, found }: ClaimCase): readonly Item[] | undefined {
  const word = sentence.text.slice(phrase.from, phrase.to);
  if (phrase.thing !== 'house' || !/^(interior|exterior|inside|outside)$/i.test(word)) return undefined;
  if (!/\bpaint/i.test(sentence.text.slice(Math.max(0, phrase.from - 120), phrase.to + 40))) return undefined;
  const own = paintItems(known, phrase, found).filter(({ deed }) => deed === 'painted');
  return own.length > 0 ? own : undefined;
}

const SELLER = /^(owners?|sellers?|we|homeowners?|they)$/i;
const OWN_HANDS =
  /\b(himself|herself|themselves|themself|myself|ourselves|diy|own (two )?(hands|knees)|hands and knees)\b/i;

/** Characters behind a thing in which its sentence may say that it was done by own hands. */
const FAR = 60;

/** "The sellers replaced the roof": they had it done; by whom, the words leave open. */
const isBuyerOfWork = ({ sentence, phrase }: ClaimCase, who: AttributeOf<'who'>): boolean =>
  SELLER.test(sentence.text.slice(who.from, who.to)) &&
  who.to <= phrase.from &&
  !OWN_HANDS.test(untilFirst(sentence.text.slice(who.from, phrase.to + FAR), /[.;!?\n]/));

const TAKEN =
  /\b(pull(ed|ing)?|taken( out)?|took( out)?|obtained|applied for|filed( for)?|secured|got(ten)?|in the name)\W+(\w+\W+){0,3}$/i;

/** "The plumbing permit was pulled by the owner": who took the permit, and not who did the work. */
function judgeTaken(
  { known, sentence, phrase, attributes }: ClaimCase,
  items: readonly Item[],
  who: AttributeOf<'who'>,
): Judgement | undefined {
  const permit = attributes.some(({ kind }) => kind === 'permit');
  if (!permit || who.trade !== undefined || !TAKEN.test(sentence.text.slice(phrase.from, who.from)))
    return undefined;
  const named = permitsNamed(
    known,
    sentence.text.slice(phrase.from, phrase.to).toLowerCase(),
    items,
    phrase.thing,
  );
  const told = named.filter(({ 'taken-by': by }) => by === 'owner' || by === 'contractor');
  const wanted = who.id === 'owner' ? 'owner' : 'contractor';
  const fits = told.filter(({ 'taken-by': by }) => by === wanted);
  if (told.length === 0) return undefined;
  const of = fits.length > 0 ? fits : told;
  return {
    verdict: fits.length > 0 ? 'backed' : 'contradicted',
    rule: 'permit.taken',
    because: `the folder says that the permit was taken by the ${fits.length > 0 ? wanted : wanted === 'owner' ? 'contractor' : 'owner'}`,
    facts: of.slice(0, 3).map((one) => permitFact(known, one)),
  };
}

const BESIDE_IT = /^\s*(around|round|at|by|for|of|near|off|beside)\s+(the\s+|our\s+|its\s+)?$/i;

/** "The fence around the pool passed inspection": of the fence, and not of the pool. */
function permitOfOwner({ known, phrase, sentence }: ClaimCase): Judgement | undefined {
  const owner = sentence.phrases.findLast(({ to }) => to <= phrase.from);
  if (owner === undefined || !BESIDE_IT.test(sentence.text.slice(owner.to, phrase.from))) return undefined;
  const judgement = judgePermit(known, itemsFor(known, owner.thing), {
    all: false,
    thing: owner.thing,
    words: sentence.text.slice(owner.from, owner.to).toLowerCase(),
  });
  return judgement.verdict === 'no-fact' ? undefined : judgement;
}

function roomWork({ known, sentence }: ClaimCase, items: readonly Item[]): readonly Item[] {
  const rooms = new Set(
    known.house.rooms
      .filter(({ use }) => use === 'bath' || use === 'kitchen' || use === 'laundry')
      .map(({ id }) => id),
  );
  const near = sentence.context?.place.ids.filter((id) => rooms.has(id)) ?? [];
  const where =
    near.length > 0
      ? near
      : [...new Set(items.filter(({ kept }) => !kept).flatMap((item) => item.where))].filter((id) =>
          rooms.has(id),
        );
  return known.items.filter(
    (item) =>
      item.kind === 'work' &&
      item.where.length === 1 &&
      item.where.some((id) => where.includes(id)) &&
      item.permit !== undefined,
  );
}

const denialOf = (judgement: ReturnType<typeof judgePermit>): ReturnType<typeof judgePermit> =>
  judgement.verdict === 'wider'
    ? { ...judgement, verdict: 'backed', because: 'the folder says so' }
    : reversed(judgement);

type Deed = AttributeOf<'newness'>;
const NO_DEED = /^(new|newer|original|old)$/;

/** Of a room, the work that made or remade it; of a deed with a date, what was done then. */
function deedItems(one: ClaimCase): readonly Item[] {
  const { known, phrase, items } = one;
  // Of a shed or a deck the work stands in a list of its own.
  const pool =
    thing(phrase.thing).structure === undefined ? items : [...items, ...itemsFor(known, phrase.thing)];
  const made = [...new Set(pool)].filter(
    (item) =>
      item.kind === 'work' &&
      item.deed !== undefined &&
      item.deed !== 'painted' &&
      item.deed !== 'cleaned' &&
      namesIt(item, phrase.thing),
  );
  const onLevel = made.length === 0 ? worksOnLevel(one) : [];
  const words = attributesOfKind(one, 'newness').filter(
    (word: Deed) => !word.unlike && !word.negated && !NO_DEED.test(word.id),
  );
  const dates = attributesOfKind(one, 'number').filter(({ number }) => isDate(number));
  let own = made.length > 0 && made.some(({ deed }) => putsIn(deed)) ? made : items;
  if (onLevel.length > 0) own = onLevel;
  const doneSo = own.filter((item) => words.some((word) => answerOf(known, item, word.id) === 'yes'));
  if (doneSo.length > 0) own = doneSo;
  const then = own.filter((item) =>
    dates.some(
      ({ number, hedge }) =>
        isDate(number) &&
        judgeDate(known, [item], { moment: number, hedge, deed: undefined }).verdict === 'backed',
    ),
  );
  return then.length > 0 ? then : own;
}

/** "The basement was finished by a contractor": the work that made rooms there, and not what stands in them. */
function worksOnLevel({ phrase, items, attributes }: ClaimCase): readonly Item[] {
  // An electrician made no rooms: his work there is meant.
  if (attributes.some((word) => word.kind === 'who' && word.trade !== undefined)) return [];
  if (thing(phrase.thing).level === undefined && phrase.thing !== 'basement') return [];
  return items.filter(
    ({ kind, deed, things }) => kind === 'work' && putsIn(deed) && things.slice(-1).some(isRoomLike),
  );
}

/** Its last word names the room: "rear bath", and not "bath tile". */
function namesIt(item: Item, id: string): boolean {
  const last = item.things.at(-1);
  // A powder room is not what "the bath" means.
  if (last === 'half-bath' && id === 'bath') return false;
  return last !== undefined && (belongsTo(last, id) || belongsTo(id, last)) && isRoomLike(id);
}

const ROOMS =
  /^(bath|half-bath|primary-bath|bedroom|primary-bedroom|kitchen|family|office|laundry|basement|sunroom|addition|garage|deck|porch|shed)$/;
const isRoomLike = (id: string): boolean => ROOMS.test(id);
