/** Bedrooms and baths that a phrase counts, names by their order, or places: "3 beds", "a second full bath", "a full bath below". */

import type { Judgement } from '../items/known.js';
import type { PlaceMeant } from '../items/places.js';
import { type BathKind, judgeBaths, judgeBedrooms } from '../judge/judge-rooms.js';
import { bathKind, isCounting } from '../sentence/counting.js';
import { belongsTo } from '../words/taxonomy.js';
import { type AttributeOf, type ClaimCase, tell } from './claim-case.js';
import { countsSomeOnly, isOfThem, levelSaid, partBacked } from './some-rooms.js';

type Figure = AttributeOf<'number'>;

const COUNTED_ONE = /^\s*([,/&+|]|and\b|plus\b)/;
const IN_ALL = /^\s*(in all|total|altogether|in total)/i;
/** "Two baths – one full, one with a shower": kinds are told behind it, one by one. */
const THEN_EACH = /^\s*[-–—:(,]?\s*(one|1) (full|half|with|has|is|three|ensuite|en-suite|off|up|down)\b/i;

/** Tells a count of bedrooms or baths; false where the phrase counts something else. */
export function tellRoomCount(one: ClaimCase, figure: Figure): boolean {
  const { phrase, sentence } = one;
  const { text } = sentence;
  const beds = belongsTo(phrase.thing, 'bedroom');
  if (!beds && phrase.thing !== 'bath' && phrase.thing !== 'half-bath') return false;
  if (figure.number.kind === 'ordinal') tellOrder(one, figure, figure.number.value);
  // "On this five-bedroom home": the rooms say how large the house is, and not where something is.
  const sizesHouse = sentence.phrases.some(
    (other) => other.thing === 'house' && other.rooms.some(({ from }) => from === phrase.from),
  );
  if (figure.number.kind !== 'count' || (phrase.place && !sizesHouse) || !isCounting(phrase, figure, text))
    return true;
  const { value } = figure.number;
  // "one bedroom has …" names one of them.
  if (value === 1 && phrase.thing === 'bedroom' && !COUNTED_ONE.test(text.slice(phrase.to))) return true;
  if (beds) tellBedrooms(one, figure, value);
  else {
    tellFullBefore(one, figure);
    tellBaths(one, figure, value);
  }
  return true;
}

/** "2F/1H baths": the full ones stand before the half ones, with no bath of their own behind them. */
function tellFullBefore(one: ClaimCase, figure: Figure): void {
  const full = /\b(\d)\s?F(?=\s?\/\s?$)/.exec(one.sentence.text.slice(0, figure.from));
  if (full === null || kindOf(one) !== 'half') return;
  const value = Number(full[1]);
  const span = { from: full.index, to: full.index + full[0].length };
  tell(
    one,
    counted(one, (where) => judgeBaths(one.known, value, 'full', where)),
    { ...figure, ...span, number: { kind: 'count', value } },
  );
}

/** A place that a list shares may be that of its last member alone. */
function counted(one: ClaimCase, judge: (places: readonly PlaceMeant[]) => Judgement): Judgement {
  const shared = one.phrase.attributes.some((other) => other.kind === 'place' && other.shared);
  const there = judge(one.places);
  const anywhere = shared && there.verdict === 'contradicted' ? judge([]) : there;
  return anywhere.verdict === 'backed' ? anywhere : there;
}

function tellBedrooms(one: ClaimCase, figure: Figure, value: number): void {
  const { known, phrase, sentence } = one;
  const total = known.house.rooms.filter(({ use }) => use === 'bedroom').length;
  const judgement = counted(one, (where) =>
    judgeBedrooms(known, value, phrase.thing === 'bedroom' ? where.slice(0, 1) : []),
  );
  // "Upstairs are three bedrooms": those of that level, and else those of the house.
  const level =
    judgement.verdict === 'contradicted' ? levelSaid(known, sentence.text, figure.from) : undefined;
  const onLevel = level === undefined ? undefined : judgeBedrooms(known, value, [level]);
  if (onLevel !== undefined && phrase.thing === 'bedroom') {
    tell(one, onLevel, figure);
    return;
  }
  const some =
    judgement.verdict === 'contradicted' &&
    value < total &&
    phrase.thing === 'bedroom' &&
    (countsSomeOnly(sentence.text, figure.from, phrase.to) || isOfThem(sentence.text, figure.to));
  tell(one, some ? partBacked(known, value, judgement) : judgement, figure);
}

function tellBaths(one: ClaimCase, figure: Figure, value: number): void {
  const { known, phrase, sentence } = one;
  const end = Math.max(figure.to, phrase.to);
  const behind = sentence.text.slice(end, end + 24);
  const kind: BathKind =
    IN_ALL.test(behind) || (value > 1 && kindOf(one) === 'any' && THEN_EACH.test(behind))
      ? 'rooms'
      : kindOf(one);
  // "One and a half baths" are those of the house, wherever they are.
  const whole = Number.isInteger(value);
  const total = known.house.rooms.filter(({ use }) => use === 'bath').length;
  const level = whole ? levelSaid(known, sentence.text, figure.from) : undefined;
  if (level !== undefined) {
    const there = judgeBaths(known, value, kind, [level]);
    tell(
      one,
      there.verdict === 'backed' ? there : counted(one, (where) => judgeBaths(known, value, kind, where)),
      figure,
    );
    return;
  }
  if (value < total && countsSomeOnly(sentence.text, figure.from, phrase.to)) {
    const there = counted(one, (where) => judgeBaths(known, value, kind, where));
    if (there.verdict === 'backed') tell(one, there, figure);
    return;
  }
  tell(
    one,
    whole
      ? counted(one, (where) => judgeBaths(known, value, kind, where))
      : judgeBaths(known, value, 'any', []),
    figure,
  );
}

const kindOf = ({ phrase, sentence }: ClaimCase): Exclude<BathKind, 'rooms'> =>
  phrase.thing === 'half-bath' ? 'half' : bathKind(phrase, sentence.text);

/** "A second full bath", "fourth bedroom": there are at least so many. */
function tellOrder(one: ClaimCase, figure: Figure, value: number): void {
  const { known, phrase } = one;
  const { rooms } = known.house;
  if (
    rooms.length === 0 ||
    !figure.before ||
    COULD_BE.test(one.sentence.text.slice(phrase.to, phrase.to + 40))
  )
    return;
  if (phrase.thing === 'bedroom') {
    if (value > rooms.filter(({ use }) => use === 'bedroom').length)
      tell(one, judgeBedrooms(known, value, []), figure);
    return;
  }
  if (phrase.thing !== 'bath' && phrase.thing !== 'half-bath') return;
  const kind = kindOf(one);
  const fits = rooms.filter(
    ({ use, bath }) =>
      use === 'bath' &&
      (bath === undefined ||
        kind === 'any' ||
        bath === kind ||
        (kind === 'full' && bath === 'three-quarter')),
  );
  if (value > fits.length) tell(one, judgeBaths(known, value, kind === 'any' ? 'rooms' : kind, []), figure);
}

/** "A fourth bedroom could be added": nothing is said to be there. */
const COULD_BE = /^[^.;!?,]{0,24}\b(could|can|might|may|would|possible|potential|if)\b/i;

const A_BATH = /\b(an?|w\/|with|its own|private|another|and|&|plus)\s+(?:\S+\s+){0,4}$/i;

/** "The lower level has a full bath", "w/ half bath below": one of its kind is there. */
export function tellPlacedBath(one: ClaimCase): void {
  const { known, phrase, places, sentence } = one;
  if ((phrase.thing !== 'bath' && phrase.thing !== 'half-bath') || phrase.place || places.length === 0)
    return;
  if (one.attributes.some(({ kind }) => kind === 'number' || kind === 'both' || kind === 'all')) return;
  const kind = kindOf(one);
  const before = sentence.text.slice(Math.max(0, phrase.from - 28), phrase.from);
  if (kind === 'any' || !A_BATH.test(before)) return;
  const ids = new Set(places.flatMap((place) => place.ids));
  const there = known.house.rooms.filter(({ id, use }) => use === 'bath' && ids.has(id));
  const fits = there.filter(
    ({ bath }) => bath === undefined || bath === kind || (kind === 'full' && bath === 'three-quarter'),
  );
  if (fits.length === 0) tell(one, judgeBaths(known, 1, kind, places));
}
