/** What is offered, hoped for, imagined or elsewhere: words that take their sense from those around them. */
import { has, isBoundary, type Unit, wordOf } from './units.js';

/** Marks what is offered, imagined or elsewhere. */
export function setAside(units: readonly Unit[]): void {
  const marks = new Marks(units);
  for (const [index, unit] of units.entries()) {
    const next = units[index + 1];
    const ahead = has(unit, 'maybe-ahead');
    // "close to 1,400 sq ft" is a figure; "close to the lake" is a place.
    const away = has(unit, 'elsewhere') && !(has(unit, 'hedge') && next?.number !== undefined);
    if (ahead || away) {
      unit.aside = ahead ? 'maybe' : 'elsewhere';
      marks.ahead(index + 1, unit.aside);
    }
    if (has(unit, 'maybe-behind') && (unit.joined || STANDS_ALONE.test(unit.word)) && !isSupply(units, index))
      marks.behind(index);
    if (has(unit, 'elsewhere-noun')) marks.noun(index);
    // "where a hot tub might go"
    if (
      /^(might|could|would)( be| go)?$/.test(unit.word) &&
      units.slice(Math.max(0, index - 6), index).some(({ word }) => word === 'where')
    )
      marks.behind(index);
    if (ahead && isBoundary(next) && isBoundary(units[index - 1]) && BRING.test(unit.word))
      marks.behind(index - 2);
    // "hardwood would be fun": of no thing that is there.
    if (ahead && WOULD_BE.test(unit.word) && !isDefinite(units, index)) marks.behind(index);
    // "a fifth bedroom if you like"
    if (/^if( you)?$/.test(unit.word)) marks.behind(index);
  }
}

/** "Pool – bring your own!": of what stands before it. */
const BRING = /^(bring|add|imagine)( your(s| own)?)?$/;

const WOULD_BE = /^(would|could|might) (be|look|work|make|go|fit)\b/;

/** "The den would be …": what stands before it is there. */
function isDefinite(units: readonly Unit[], index: number): boolean {
  let first = index;
  while (first > 0 && !isBoundary(units[first - 1])) first--;
  return (
    /^(the|this|that|these|those|its|it|they|your|our|my|which|all|both|each|every)$/.test(
      wordOf(units[first]),
    ) || index - first > 4
  );
}

/** "city water & sewer hookups" are there; "pool hookup" is none. */
const isSupply = (units: readonly Unit[], index: number): boolean =>
  /^hook/.test(wordOf(units[index])) &&
  units
    .slice(Math.max(0, index - 4), index)
    .some((one) =>
      one.senses.some(
        ({ tag, id }) => tag === 'thing' && /^(sewer|water-supply|laundry|electrical)$/.test(id),
      ),
    );

const STANDS_ALONE =
  /^(await|potential|possibilit|needed|wanted|hook|rough|poss|optional|permitting|feel|vibe)/;

/**
 * Sets units aside around a word. A mark that is set stays, so what an earlier word has marked is not walked again:
 * a long sentence of such words takes no longer than another.
 */
class Marks {
  readonly #units: readonly Unit[];
  #aheadEnd = 0;
  #lastBehind = -1;
  #lastNoun = -1;

  constructor(units: readonly Unit[]) {
    this.#units = units;
  }

  ahead(first: number, aside: Unit['aside']): void {
    for (let at = Math.max(first, this.#aheadEnd); ; at++) {
      const unit = this.#units[at];
      this.#aheadEnd = at;
      if (unit !== undefined && unit.sign === ',' && this.#offersOneOf(at + 1)) continue;
      if (unit === undefined || isBoundary(unit)) return;
      unit.aside ??= aside;
    }
  }

  /** "Room for a carport, pool or workshop": a list that ends in "or" offers all its members. */
  #offersOneOf(from: number): boolean {
    for (let at = from; at < from + 10; at++) {
      const unit = this.#units[at];
      if (
        unit === undefined ||
        (isBoundary(unit) && unit.sign !== ',') ||
        has(unit, 'copula') ||
        has(unit, 'verb')
      )
        return false;
      if (unit.word === 'or') return true;
    }
    return false;
  }

  behind(index: number): void {
    for (let at = index; at > this.#lastBehind; at--) {
      const unit = this.#units[at];
      if (unit === undefined || (at < index && isBoundary(unit))) break;
      unit.aside ??= 'maybe';
    }
    this.#lastBehind = index;
  }

  /** "the new park", "school with pool": what stands before such a noun speaks of it. */
  noun(index: number): void {
    for (let at = index; at > this.#lastNoun; at--) {
      const unit = this.#units[at];
      if (unit === undefined || isBoundary(unit) || has(unit, 'verb') || has(unit, 'preposition')) break;
      unit.aside ??= 'elsewhere';
      if (has(unit, 'determiner')) break;
    }
    this.#lastNoun = index;
  }
}
