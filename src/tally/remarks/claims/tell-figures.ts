/** Counts, sizes and ratings that a phrase gives its thing. */

import type { Judgement } from '../items/known.js';
import { contextOf, isRoomThing } from '../items/meant-items.js';
import { itemsFor } from '../items/pick-items.js';
import { type PlaceMeant, placeMeant } from '../items/places.js';
import { judgeCars } from '../judge/judge-cars.js';
import { judgeCount } from '../judge/judge-counts.js';
import { judgeDepth, judgeSides, judgeWidth } from '../judge/judge-extents.js';
import { judgeFeet } from '../judge/judge-feet.js';
import { judgeLivingSpaces, livedIn } from '../judge/judge-living-spaces.js';
import { judgeRating } from '../judge/judge-ratings.js';
import { judgeCeiling, judgeDimensions, judgeFloor, judgeLot, judgeSize } from '../judge/judge-sizes.js';
import { isCounting } from '../sentence/counting.js';
import { LEAST_SERVICE } from '../standing/standing-figures.js';
import { type AttributeOf, attributesOfKind, type ClaimCase, tell } from './claim-case.js';
import { isByRecord } from './size-part.js';
import { tellPlacedBath, tellRoomCount } from './tell-room-counts.js';

type Figure = AttributeOf<'number'>;

export function tellFigures(one: ClaimCase): void {
  for (const figure of attributesOfKind(one, 'number')) {
    tellCount(one, figure);
    tellSize(one, figure);
  }
  tellPlacedBath(one);
}

function tellCount(one: ClaimCase, figure: Figure): void {
  const { known, phrase, sentence } = one;
  const { number } = figure;
  if (number.kind === 'cars' && (phrase.thing === 'garage' || phrase.thing === 'carport'))
    tell(one, judgeCars(known, number.value, phrase.thing), figure);
  if (tellRoomCount(one, figure) || number.kind !== 'count' || phrase.place) return;
  if (phrase.thing === 'living-area') {
    tell(one, judgeLivingArea(one, figure, number.value), figure);
    return;
  }
  if (isCounting(phrase, figure, sentence.text)) tell(one, judgeCount(one, number.value), figure);
}

/** A figure too large for a count of rooms is a size. */
const LEAST_SIZE = 400;
const MOST_SPACES = 6;

function judgeLivingArea(
  { known, sentence }: ClaimCase,
  { from, to, hedge }: Figure,
  value: number,
): Judgement | undefined {
  const byRecord = isByRecord(sentence.text, from, to);
  if (value >= LEAST_SIZE) return judgeSize(known, { value, hedge, byRecord, part: 'whole' });
  return value > 1 && value <= MOST_SPACES ? judgeLivingSpaces(known, value) : undefined;
}

function tellSize(one: ClaimCase, figure: Figure): void {
  const { known, phrase, sentence } = one;
  const { number, hedge } = figure;
  const all = attributesOfKind(one, 'all').length > 0;
  if (number.kind === 'square-feet' && phrase.thing === 'lot')
    tell(one, judgeLot(known, number.value / 43_560, undefined, hedge ?? 'about'), figure);
  if (number.kind === 'feet')
    tell(
      one,
      phrase.thing === 'ceiling'
        ? judgeCeiling(known, number.value, all, placesAround(one))
        : (judgeLength(one, figure, number.value) ?? judgeFeet(one, number.value)),
      figure,
    );
  if (number.kind === 'rating') tell(one, judgeRatingOf(one, number.value, number.unit), figure);
  const sides = number.kind === 'dimensions' ? judgeSides(one, number.feet) : undefined;
  if (sides !== undefined) {
    tell(one, sides, figure);
    return;
  }
  const ofRoom =
    (isRoomThing(phrase.thing) && phrase.thing !== 'basement') ||
    (phrase.thing === 'living-area' && number.kind === 'dimensions');
  if (number.kind !== 'dimensions' && !(number.kind === 'square-feet' && ofRoom)) return;
  const place = phrase.thing === 'living-area' ? livedIn(known) : contextOf(known, phrase, sentence).place;
  if (number.kind === 'square-feet' && isOfHouse(one, figure, number.value)) {
    tell(one, judgeSize(known, { value: number.value, hedge, byRecord: false, part: 'whole' }), figure);
    return;
  }
  if (place.ids.length > 0)
    tell(
      one,
      number.kind === 'dimensions'
        ? judgeDimensions(known, number.feet, place)
        : judgeFloor(known, number.value, hedge, place),
      figure,
    );
}

/** "… and a bright family room, about 2,200 square feet": set off by a comma, and more than any room has. */
const isOfHouse = ({ phrase, sentence }: ClaimCase, figure: Figure, feet: number): boolean =>
  !figure.before && feet >= LEAST_HOUSE && sentence.text.slice(phrase.to, figure.from).includes(',');

const LEAST_HOUSE = 800;

/** Where a ceiling is: as it says, else the one level or room below ground that was spoken of before it. */
function placesAround({ known, phrase, places, sentence }: ClaimCase): readonly PlaceMeant[] {
  if (places.length > 0) return places;
  const before = sentence.phrases.findLast(({ to, aside }) => to <= phrase.from && aside === undefined);
  return before?.thing === 'basement' ? [placeMeant(known.house, 'basement')] : [];
}

/** A rating of the thing; amps that it hasn't are those of the panel. */
function judgeRatingOf({ known, phrase, found }: ClaimCase, value: number, unit: string): Judgement {
  const own = judgeRating(found.length > 0 ? found : itemsFor(known, phrase.thing), value, unit);
  return own.verdict === 'no-fact' && unit === 'amp' && value >= LEAST_SERVICE
    ? judgeRating(itemsFor(known, 'panel'), value, unit)
    : own;
}

const DEEP = /\b(deep|depth)/i;

/** A depth of a pool, or a width in inches, which is read as parts of a foot. */
function judgeLength(one: ClaimCase, { from, to }: Figure, feet: number): Judgement | undefined {
  const near = one.sentence.text.slice(Math.max(0, from - 24), to + 16);
  return (DEEP.test(near) ? judgeDepth(one, feet) : undefined) ?? judgeWidth(one, feet * 12);
}
