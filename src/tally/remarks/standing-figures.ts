/** Figures that need no phrase: storeys, sizes, lots, lists of baths, dues. */
import { BUILT, isBuilt, judgeBuilt } from './built-year.js';
import { periodBehind } from './counting.js';
import { judgeCars } from './judge-cars.js';
import { judgeDues } from './judge-dues.js';
import { judgeBaths, judgeBedrooms } from './judge-rooms.js';
import { judgeLot, judgeSize, type SizeClaim } from './judge-sizes.js';
import { judgeLevels, judgeStoreys } from './judge-storeys.js';
import type { Known } from './known.js';
import { isRoomThing } from './meant-items.js';
import type { NumberSense } from './numbers.js';
import type { Attribute, Phrase } from './phrase.js';
import type { Find } from './read-sentence.js';
import { storeysAt } from './storeys-said.js';
import { has, isBoundary, senseOf, type Unit } from './units.js';
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
    if (unit.aside !== undefined && !overlooks(units, at)) continue;
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
  /^overlook/.test(units[at - 1]?.word ?? '');

function tellFigure(figures: Figures, at: number, unit: Unit, number: NumberSense): void {
  const { known, units, text, find, settle } = figures;
  if (tellStoreys(figures, at, number)) return;
  const owner = ownerOf(figures, unit, number);
  const hedge = hedgeOf(figures.taken.get(unit.from)?.attribute);
  if (number.kind === 'year' && isBuilt(units, at)) {
    settle(unit);
    const word = [units[at - 1], units[at - 2], units[at - 3]].find((one) => BUILT.test(one?.word ?? ''));
    find(word?.from ?? unit.from, unit.to, judgeBuilt(known, number.first, number.last, hedge));
  }
  if (number.kind === 'square-feet') tellSquareFeet(figures, at, number, owner, hedge);
  if (number.kind === 'acres') {
    settle(unit);
    const lot = owner?.thing === 'lot' && owner.from > unit.from ? owner.to : unit.to;
    find(hedgeFrom(units, at), lot, judgeLot(known, number.value, number.decimals, hedge));
  }
  if (number.kind === 'count') tellRooms(figures, at, number);
  if (number.kind === 'cars' && owner === undefined) {
    settle(unit);
    find(unit.from, unit.to, judgeCars(known, number.value, 'garage'));
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

const PERIOD = /^(\/|a|per|month|monthly|quarterly|due)/;
const DUES = /hoa|dues|association|fee/i;

function tellStoreys({ known, units, find, settle }: Figures, at: number, number: NumberSense): boolean {
  const said = storeysAt(units, at);
  const unit = units[at];
  if (said === undefined || unit === undefined) return false;
  settle(unit);
  const count = number.kind === 'count' ? number.value : 0;
  find(said.from, said.to, said.levels ? judgeLevels(known, count) : judgeStoreys(known, said.id));
  return true;
}

/** The phrase that a figure belongs to; a size that stands before a heater is no size of the heater. */
function ownerOf({ taken }: Figures, unit: Unit, number: NumberSense): Phrase | undefined {
  const owner = taken.get(unit.from)?.phrase;
  if (number.kind !== 'square-feet' || owner === undefined) return owner;
  return isRoomThing(owner.thing) || /^(lot|house|living-area)$/.test(owner.thing) ? owner : undefined;
}

/** Square feet of the house, or of the lot where the words or the figure say so. */
function tellSquareFeet(
  figures: Figures,
  at: number,
  number: Of<'square-feet'>,
  owner: Phrase | undefined,
  hedge: string | undefined,
): void {
  const { known, text, units, find, settle } = figures;
  const unit = units[at];
  if (unit === undefined || owner?.thing === 'lot' || (owner !== undefined && !isHouseSize(owner))) return;
  settle(unit);
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

const FINISHED = /finished|living/i;
const ALL_OF_IT = /under roof|total|gross|including|counting/i;
const ABOVE = /above grade|above ground|upstairs/i;

/** Which part of the house a size is said of, by the words around it. */
function partMeant(text: string, { from, to }: Unit, owner: Phrase | undefined): SizeClaim['part'] {
  const around = (before: number, behind: number): string =>
    text.slice(Math.max(0, from - before), to + behind);
  if (LEVEL.test(around(26, 26))) return 'level';
  if (owner?.thing === 'basement') return 'below';
  if (!FINISHED.test(around(40, 40)) && ALL_OF_IT.test(around(40, 60))) return 'everything';
  return ABOVE.test(around(30, 40)) ? 'above' : 'whole';
}

/** "3/2", and "one full and one half bath". */
function tellRooms(figures: Figures, at: number, number: Of<'count'>): void {
  const { known, units, find, settle } = figures;
  const unit = units[at];
  if (unit === undefined) return;
  const slash = units[at + 1]?.sign === '/' ? units[at + 2]?.number : undefined;
  if (slash?.kind === 'count' && isBedsAndBaths(units, at, number.value, slash.value)) {
    const beds = judgeBedrooms(known, number.value, []);
    find(
      unit.from,
      units[at + 2]?.to ?? unit.to,
      beds.verdict === 'backed' ? judgeBaths(known, slash.value, 'any', []) : beds,
    );
  }
  if (units[at + 1]?.word !== 'full' || has(units[at + 2], 'thing')) return;
  const later = units.slice(at + 2, at + 6).find((one) => one.word === 'half' || isBathWord(one));
  if (later === undefined) return;
  const halves = later.word === 'half' ? units[units.indexOf(later, at) - 1] : undefined;
  if (halves?.number?.kind === 'count') {
    settle(halves);
    find(halves.from, later.to, judgeBaths(known, halves.number.value, 'half', []));
  }
  settle(unit);
  find(unit.from, units[at + 1]?.to ?? unit.to, judgeBaths(known, number.value, 'full', []));
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

const hedgeFrom = (units: readonly Unit[], at: number): number =>
  has(units[at - 1], 'hedge') ? (units[at - 1]?.from ?? 0) : (units[at]?.from ?? 0);

const BY_RECORD =
  /\b(per|according to|by|via)\s+(the\s+)?(\w+\s+)?(county|tax|assessor|public|city|town|appraiser|card|record)|(county|tax|public|assessor'?s?) (record|card|roll|data)/i;

const LEVEL =
  /\b(main|first|second|lower|upper|ground|upstairs|downstairs|bsmt|basement|cellar)\b[^.;,]{0,10}(level|lvl|floor|story)?/i;

const isHouseSize = ({ thing }: Phrase): boolean =>
  /^(house|living-area|basement|bedroom|bath|half-bath|work|roof|siding|floor|lot)$/.test(thing);

const isLotSize = (units: readonly Unit[], at: number, known: Known, value: number): boolean =>
  judgeLot(known, value / 43_560, undefined, undefined).verdict === 'backed' ||
  [units[at + 1], units[at + 2], units[at - 1], units[at - 2]].some(
    (unit) => unit?.senses.some(({ tag, id }) => tag === 'thing' && id === 'lot') ?? false,
  );

/** Whether the words beside a size, up to the next figure or stop, give it to a public record. */
function isByRecord(text: string, from: number, to: number): boolean {
  const before = /[^;.!?\d]*$/.exec(text.slice(Math.max(0, from - 45), from))?.[0] ?? '';
  const behind = /^[^;.!?\d]*/.exec(text.slice(to, to + 60))?.[0] ?? '';
  return BY_RECORD.test(`${before}#${behind}`);
}
