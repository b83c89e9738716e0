/** Who did it, and under which permit. */

import { answerOf } from './answer-of.js';
import {
  type AttributeOf,
  attributesOfKind,
  type ClaimCase,
  isDate,
  tell,
  wordsBehind,
} from './claim-case.js';
import { type Item, putsIn } from './items.js';
import { judgeDate } from './judge-dates.js';
import { judgeNamed, judgePermit, judgeTrade, judgeWho } from './judge-people.js';
import { whoItems } from './meant-items.js';
import { reversed } from './negated-claims.js';
import { saysOpen } from './open-permits.js';
import { belongsTo } from './taxonomy.js';

export function tellPeople(one: ClaimCase): void {
  const items = deedItems(one);
  tellWho(one, items);
  tellPermits(one, items);
}

function tellWho(one: ClaimCase, items: readonly Item[]): void {
  const { known, phrase, sentence } = one;
  const all = attributesOfKind(one, 'all').length > 0;
  for (const who of attributesOfKind(one, 'who')) {
    const judgement = judgeWho(whoItems(items, one.items), who.id, who.trade, all);
    const loose =
      who.trade !== undefined &&
      judgement.verdict === 'contradicted' &&
      /,/.test(sentence.text.slice(phrase.to, who.from));
    tell(one, (loose ? judgeTrade(known, who.id, who.trade ?? '') : undefined) ?? judgement, who);
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
    const own = judgePermit(known, items, claim);
    // A tub has no permit of its own; the work on its bath has.
    const judgement =
      own.verdict === 'no-fact' && own.facts.every(({ path }) => path[0] !== 'permits')
        ? judgePermit(known, roomWork(one, items), claim)
        : own;
    const denied = permit.negated || saysOpen(text, permit.from, permit.to);
    tell(one, denied ? denialOf(judgement) : judgement, permit);
  }
  for (const permit of attributesOfKind(one, 'unpermitted'))
    tell(one, denialOf(judgePermit(known, items, { ...claim, all: false })), permit);
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
  const made = items.filter(
    (item) =>
      item.kind === 'work' &&
      item.deed !== undefined &&
      item.deed !== 'painted' &&
      item.deed !== 'cleaned' &&
      namesIt(item, phrase.thing),
  );
  const words = attributesOfKind(one, 'newness').filter(
    (word: Deed) => !word.unlike && !word.negated && !NO_DEED.test(word.id),
  );
  const dates = attributesOfKind(one, 'number').filter(({ number }) => isDate(number));
  let own = made.length > 0 && made.some(({ deed }) => putsIn(deed)) ? made : items;
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

/** Its last word names the room: "rear bath", and not "bath tile". */
function namesIt(item: Item, id: string): boolean {
  const last = item.things.at(-1);
  // A powder room is not what "the bath" means.
  if (last === 'half-bath' && id === 'bath') return false;
  return last !== undefined && (belongsTo(last, id) || belongsTo(id, last)) && isRoomLike(id);
}

const ROOMS =
  /^(bath|half-bath|primary-bath|bedroom|primary-bedroom|kitchen|family|office|laundry|basement|sunroom|addition|garage|deck|porch)$/;
const isRoomLike = (id: string): boolean => ROOMS.test(id);
