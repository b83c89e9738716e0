/** Figures that need no phrase: storeys, sizes, lots, lists of baths, dues. */

import { isByRecord, partMeant } from '../claims/size-part.js';
import type { Known } from '../items/known.js';
import { isRoomThing } from '../items/meant-items.js';
import { itemsFor } from '../items/pick-items.js';
import { judgeCars } from '../judge/judge-cars.js';
import { judgeDues } from '../judge/judge-dues.js';
import { judgeRating } from '../judge/judge-ratings.js';
import { judgeBaths, judgeBedrooms } from '../judge/judge-rooms.js';
import { judgeLot, judgeSize } from '../judge/judge-sizes.js';
import { judgeLevels, judgeStoreys } from '../judge/judge-storeys.js';
import type { Find } from '../read-sentence.js';
import { periodBehind } from '../sentence/counting.js';
import type { Attribute, Phrase } from '../sentence/phrase.js';
import type { NumberSense } from '../words/numbers.js';
import { has, isBoundary, senseOf, type Unit } from '../words/units.js';
import { boundsOf, wordAt } from './beside.js';
import { BUILT, isBuilt, isBuiltAgo, isHouseAge, judgeBuilt, judgeHouseAge } from './built-year.js';
import { type CarsSaid, carsSaid, isKeptOutside } from './cars-said.js';
import { storeysAt } from './storeys-said.js';
import { judgeAllElectric } from './whole-house.js';

/** A sentence whose figures are looked through, and what to do with each. */
export interface Figures {
  readonly known: Known;
  readonly text: string;
  readonly units: readonly Unit[];
  readonly find: Find;
  /** Marks the figure of a unit as told. */
  readonly settle: (unit: Unit) => void;
  /** Where the figures of phrases stand, with the phrase that takes each first. */
  readonly taken: ReadonlyMap<number, { readonly attribute: Attribute; readonly phrase: Phrase | undefined }>;
}

type Of<K extends NumberSense['kind']> = Extract<NumberSense, { kind: K }>;

export function standing(figures: Figures): void {
  const { known, units, find } = figures;
  for (const [at, unit] of units.entries()) {
    if (unit.aside !== undefined && !overlooks(units, at) && !isRoomForCars(units, at)) continue;
    const storeys = senseOf(unit, 'storeys');
    if (storeys !== undefined && !has(units[at + 1], 'maybe-behind'))
      find(unit.from, unit.to, judgeStoreys(known, storeys.id));
    if (/^all[ -]electric$/.test(unit.word)) find(unit.from, unit.to, judgeAllElectric(known));
    if (unit.number !== undefined) tellFigure(figures, at, unit, unit.number);
  }
}

/** "overlooking half an acre" is still the lot. */
const overlooks = (units: readonly Unit[], at: number): boolean =>
  units[at]?.aside === 'elsewhere' &&
  units[at]?.number?.kind === 'acres' &&
  /^overlook/.test(wordAt(units, at - 1));

/** "garage with room for three": it holds so many. */
const isRoomForCars = (units: readonly Unit[], at: number): boolean => {
  const number = units[at]?.number;
  return (
    units[at]?.aside === 'maybe' &&
    /^(room|space) for$/.test(wordAt(units, at - 1)) &&
    number !== undefined &&
    carsSaid(units, at, number) !== undefined
  );
};

function tellFigure(figures: Figures, at: number, unit: Unit, number: NumberSense): void {
  const { known, units, text, find, settle } = figures;
  if (tellStoreys(figures, at, unit)) return;
  const owner = ownerOf(figures, unit, number);
  const hedge = hedgeOf(figures.taken.get(unit.from)?.attribute);
  if (number.kind === 'year' && isBuilt(units, at)) {
    settle(unit);
    const word = [units[at - 1], units[at - 2], units[at - 3]].find((one) => BUILT.test(one?.word ?? ''));
    find(word?.from ?? unit.from, unit.to, judgeBuilt(known, number.first, number.last, hedge));
  }
  const years = number.kind === 'age' ? number.years : number.kind === 'ago' ? number.months / 12 : undefined;
  if (
    years !== undefined &&
    (number.kind === 'age' ? isHouseAge(units, at, owner?.thing) : isBuiltAgo(units, at))
  ) {
    settle(unit);
    const end = owner !== undefined && owner.from > unit.from ? owner.to : unit.to;
    find(unit.from, end, judgeHouseAge(known, Math.round(years), hedge));
  }
  // "200 amp electric": amps are those of the panel.
  if (
    number.kind === 'rating' &&
    number.unit === 'amp' &&
    number.value >= LEAST_SERVICE &&
    owner === undefined
  ) {
    settle(unit);
    find(unit.from, unit.to, judgeRating(itemsFor(known, 'panel'), number.value, number.unit));
  }
  if (number.kind === 'square-feet') tellSquareFeet(figures, at, unit, number, owner, hedge);
  if (number.kind === 'acres') {
    settle(unit);
    // The figure of a public record, told as such, says nothing of its own.
    if (isByRecord(text, unit.from, unit.to)) return;
    const lot = owner?.thing === 'lot' && owner.from > unit.from ? owner.to : unit.to;
    find(hedgeFrom(units, at), lot, judgeLot(known, number.value, number.decimals, hedge));
  }
  if (number.kind === 'count') tellRooms(figures, at, unit, number);
  // "Two-car garage" is told by its phrase.
  const byPhrase = number.kind === 'cars' && /^(garage|carport)$/.test(owner?.thing ?? '');
  const loose: CarsSaid | undefined =
    number.kind === 'cars' && owner === undefined && !isKeptOutside(units, at)
      ? { value: number.value, structure: 'garage' }
      : undefined;
  const cars = (byPhrase ? undefined : carsSaid(units, at, number)) ?? loose;
  if (cars !== undefined) {
    settle(unit);
    find(unit.from, unit.to, judgeCars(known, cars.value, cars.structure));
  }
  const period = units[at + 1]?.sign ?? units[at + 1]?.word ?? '';
  const near = text.slice(Math.max(0, unit.from - 80), unit.to + 80);
  if (number.kind === 'money' && owner === undefined && PERIOD.test(period) && DUES.test(near)) {
    settle(unit);
    find(
      unit.from,
      unit.to,
      judgeDues(known, number.value, false, periodBehind(text.slice(unit.to, unit.to + 16))),
    );
  }
}

/** Amps of a whole house's service at least; fewer are those of a circuit. */
export const LEAST_SERVICE = 60;

const PERIOD = /^(\/|a|per|month|monthly|quarterly|due)/;
const DUES = /hoa|dues|association|fee/i;

function tellStoreys({ known, units, find, settle }: Figures, at: number, unit: Unit): boolean {
  const said = storeysAt(units, at);
  if (said === undefined) return false;
  settle(unit);
  find(said.from, said.to, 'levels' in said ? judgeLevels(known, said.levels) : judgeStoreys(known, said.id));
  return true;
}

/** The phrase that a figure belongs to; a size that stands before a heater is no size of the heater. */
function ownerOf({ taken }: Figures, unit: Unit, number: NumberSense): Phrase | undefined {
  const owner = taken.get(unit.from)?.phrase;
  if (number.kind !== 'square-feet' || owner === undefined) return owner;
  return isRoomThing(owner.thing) || /^(lot|house|living-area)$/.test(owner.thing) ? owner : undefined;
}

/** "an addition of roughly 300 sq ft": said of what stands before it, and not of the house. */
function isOfAnother({ taken, text }: Figures, unit: Unit): boolean {
  const one = taken.get(unit.from);
  const thing = one?.phrase?.thing ?? '';
  return (
    one?.attribute.before === false &&
    !/^(house|living-area|lot|work)$/.test(thing) &&
    SAID_OF_IT.test(text.slice(one.phrase?.to ?? unit.from, unit.from))
  );
}

const SAID_OF_IT = /^\s*(\(|:|of\b|is\b|has\b|measur\w*|spans?\b|offers?\b)[^,.;!?]*$/i;

/** Square feet of the house, or of the lot where the words or the figure say so. */
function tellSquareFeet(
  figures: Figures,
  at: number,
  unit: Unit,
  number: Of<'square-feet'>,
  owner: Phrase | undefined,
  hedge: string | undefined,
): void {
  const { known, text, units, find, settle } = figures;
  if (owner?.thing === 'lot' || (owner !== undefined && !isHouseSize(owner))) return;
  if (isOfAnother(figures, unit)) return;
  settle(unit);
  // "Larger by 90 square feet" is told with what it is larger than.
  if (/\bby\s+(?:\S+\s+){0,2}$/i.test(text.slice(Math.max(0, unit.from - 24), unit.from))) return;
  const from = hedgeFrom(units, at);
  if (isLotSize(units, at, known, number.value)) {
    find(from, unit.to, judgeLot(known, number.value / 43_560, undefined, hedge ?? 'about'));
    return;
  }
  const byRecord = isByRecord(text, unit.from, unit.to);
  find(
    from,
    unit.to,
    judgeSize(known, { value: number.value, hedge, byRecord, part: partMeant(text, unit, owner) }),
  );
}

/** "3/2", and "one full and one half bath". */
function tellRooms(figures: Figures, at: number, unit: Unit, number: Of<'count'>): void {
  const { known, units, find, settle } = figures;
  const [next, second] = [units[at + 1], units[at + 2]];
  const slash = next?.sign === '/' ? second?.number : undefined;
  if (
    second !== undefined &&
    slash?.kind === 'count' &&
    isBedsAndBaths(units, at, number.value, slash.value)
  ) {
    const beds = judgeBedrooms(known, number.value, []);
    find(unit.from, second.to, beds.verdict === 'backed' ? judgeBaths(known, slash.value, 'any', []) : beds);
  }
  if (next?.word !== 'full' || has(second, 'thing')) return;
  // "Baths: three full"
  if (units[at - 1]?.sign === ':' && names(units[at - 2], /^bath$/) && isBoundary(second)) {
    settle(unit);
    find(unit.from, next.to, judgeBaths(known, number.value, 'full', []));
    return;
  }
  const later = units.slice(at + 2, at + 6).find((one) => one.word === 'half' || isBathWord(one));
  if (later === undefined) return;
  const halves = later.word === 'half' ? units[units.indexOf(later, at) - 1] : undefined;
  if (halves?.number?.kind === 'count') {
    settle(halves);
    find(halves.from, later.to, judgeBaths(known, halves.number.value, 'half', []));
  }
  settle(unit);
  find(unit.from, next.to, judgeBaths(known, number.value, 'full', []));
}

const names = (unit: Unit | undefined, ids: RegExp): boolean =>
  unit?.senses.some(({ tag, id }) => tag === 'thing' && ids.test(id)) === true;

const isBathWord = (unit: Unit): boolean => names(unit, /^(half-bath|bath)$/);

const BEDS_AT_MOST = 8;
const BATHS_AT_MOST = 6;

/** "3/2 pool home" gives rooms; "1/2" and "24/7" do not. */
function isBedsAndBaths(units: readonly Unit[], at: number, beds: number, baths: number): boolean {
  if (!Number.isInteger(beds) || beds < 1 || beds > BEDS_AT_MOST || baths < 1 || baths > BATHS_AT_MOST)
    return false;
  const next = units[at + 3];
  if (units[at - 1]?.sign === '/' || next?.sign === '/') return false;
  return (
    isBoundary(next) ||
    names(next, /^(house|garage|pool)$/) ||
    names(units[at + 4], /^house$/) ||
    has(next, 'preposition') ||
    has(next, 'storeys')
  );
}

const hedgeOf = (one: Attribute | undefined): string | undefined =>
  one?.kind === 'number' ? one.hedge : undefined;

/** Where a figure begins, with the hedge before it. */
const hedgeFrom = (units: readonly Unit[], at: number): number =>
  boundsOf(units.slice(has(units[at - 1], 'hedge') ? at - 1 : at))[0];

const isHouseSize = ({ thing }: Phrase): boolean =>
  /^(house|living-area|basement|bedroom|bath|half-bath|work|roof|siding|floor|lot)$/.test(thing);

const isLotSize = (units: readonly Unit[], at: number, known: Known, value: number): boolean =>
  judgeLot(known, value / 43_560, undefined, undefined).verdict === 'backed' ||
  [units[at + 1], units[at + 2], units[at - 1], units[at - 2]].some(
    (unit) => unit?.senses.some(({ tag, id }) => tag === 'thing' && id === 'lot') ?? false,
  );
