/** Counts, sizes and ratings that a phrase gives its thing. */
import { type AttributeOf, attributesOfKind, type ClaimCase, tell } from './claim-case.js';
import { bathKind, isCounting } from './counting.js';
import { judgeCars } from './judge-cars.js';
import { judgeCount } from './judge-counts.js';
import { judgeFeet } from './judge-feet.js';
import { judgeRating } from './judge-ratings.js';
import { judgeBaths, judgeBedrooms } from './judge-rooms.js';
import { judgeCeiling, judgeDimensions, judgeFloor, judgeLot, judgeSize } from './judge-sizes.js';
import type { Judgement } from './known.js';
import { contextOf, isRoomThing } from './meant-items.js';
import { itemsFor } from './pick-items.js';
import type { PlaceMeant } from './places.js';
import { belongsTo } from './taxonomy.js';

type Figure = AttributeOf<'number'>;

export function tellFigures(one: ClaimCase): void {
  for (const figure of attributesOfKind(one, 'number')) {
    tellCount(one, figure);
    tellSize(one, figure);
  }
}

const COUNTED_ONE = /^\s*([,/&+|]|and\b|plus\b)/;
const IN_ALL = /^\s*(in all|total|altogether|in total)/i;

function tellCount(one: ClaimCase, figure: Figure): void {
  const { known, phrase, places, sentence } = one;
  const { number } = figure;
  const { text } = sentence;
  if (number.kind === 'cars' && (phrase.thing === 'garage' || phrase.thing === 'carport'))
    tell(one, judgeCars(known, number.value, phrase.thing), figure);
  if (number.kind === 'ordinal' && phrase.thing === 'bedroom') {
    const rooms = known.house.rooms.filter(({ use }) => use === 'bedroom').length;
    if (number.value > rooms && rooms > 0) tell(one, judgeBedrooms(known, number.value, []), figure);
  }
  if (number.kind !== 'count' || phrase.place) return;
  if (phrase.thing === 'living-area' && number.value >= 400) {
    tell(
      one,
      judgeSize(known, { value: number.value, hedge: figure.hedge, byRecord: false, part: 'whole' }),
      figure,
    );
    return;
  }
  if (!isCounting(phrase, figure, text)) return;
  // "one bedroom has …" names one of them.
  if (number.value === 1 && phrase.thing === 'bedroom' && !COUNTED_ONE.test(text.slice(phrase.to))) return;
  // A place that a list shares may be that of its last member alone.
  const shared = phrase.attributes.some((other) => other.kind === 'place' && other.shared);
  const counted = (judge: (places: readonly PlaceMeant[]) => Judgement): void => {
    const there = judge(places);
    const anywhere = shared && there.verdict === 'contradicted' ? judge([]) : there;
    tell(one, anywhere.verdict === 'backed' ? anywhere : there, figure);
  };
  if (belongsTo(phrase.thing, 'bedroom'))
    counted((where) =>
      judgeBedrooms(known, number.value, phrase.thing === 'bedroom' ? where.slice(0, 1) : []),
    );
  else if (phrase.thing === 'half-bath') counted((where) => judgeBaths(known, number.value, 'half', where));
  else if (phrase.thing === 'bath') {
    const end = Math.max(figure.to, phrase.to);
    const kind = IN_ALL.test(text.slice(end, end + 14)) ? 'rooms' : bathKind(phrase, text);
    counted((where) => judgeBaths(known, number.value, kind, where));
  } else tell(one, judgeCount(one, number.value), figure);
}

function tellSize(one: ClaimCase, figure: Figure): void {
  const { known, phrase, found, sentence } = one;
  const { number, hedge } = figure;
  const all = attributesOfKind(one, 'all').length > 0;
  if (number.kind === 'acres') tell(one, judgeLot(known, number.value, number.decimals, hedge), figure);
  if (number.kind === 'square-feet' && phrase.thing === 'lot')
    tell(one, judgeLot(known, number.value / 43_560, undefined, hedge ?? 'about'), figure);
  if (number.kind === 'feet')
    tell(
      one,
      phrase.thing === 'ceiling' ? judgeCeiling(known, number.value, all) : judgeFeet(one, number.value),
      figure,
    );
  if (number.kind === 'rating')
    tell(
      one,
      judgeRating(found.length > 0 ? found : itemsFor(known, phrase.thing), number.value, number.unit),
      figure,
    );
  const ofRoom = isRoomThing(phrase.thing) && phrase.thing !== 'basement';
  if (number.kind !== 'dimensions' && !(number.kind === 'square-feet' && ofRoom)) return;
  const { place } = contextOf(known, phrase, sentence);
  if (place.ids.length > 0)
    tell(
      one,
      number.kind === 'dimensions'
        ? judgeDimensions(known, number.feet, place)
        : judgeFloor(known, number.value, hedge, place),
      figure,
    );
}
