/** A sentence as a row of units: entries of the tables, numbers, signs, and words that no table knows. */
import { type Hit, lexicon, type Sense } from './lexicon.js';
import { type NumberSense, numberAt } from './numbers.js';
import type { Token } from './token.js';

export interface Unit {
  readonly from: number;
  readonly to: number;
  senses: readonly Sense[];
  readonly number: NumberSense | undefined;
  /** A comma, a dash, a bracket; undefined for words. */
  readonly sign: string | undefined;
  /** The words as they stand, lower case, for what no table knows. */
  readonly word: string;
  /** A hyphen joins it to the unit before. */
  readonly joined: boolean;
  /** What stands around it takes its sense away: an offer, another place, a likeness. */
  aside: 'maybe' | 'elsewhere' | undefined;
}

export const has = (unit: Unit | undefined, tag: Sense['tag']): boolean =>
  unit?.senses.some((sense) => sense.tag === tag) === true;

export const senseOf = (unit: Unit | undefined, tag: Sense['tag']): Sense | undefined =>
  unit?.senses.find((sense) => sense.tag === tag);

export function unitsOf(tokens: readonly Token[], first: number, end: number): Unit[] {
  const units: Unit[] = [];
  let joined = false;
  for (let at = first; at < end; ) {
    const token = tokens[at];
    if (token === undefined) break;
    if (token.norm === '-' && token.glued && tokens[at + 1]?.glued === true && at + 1 < end) {
      joined = true;
      at++;
      continue;
    }
    const number = numberAt(tokens, at, end);
    const hit = lexicon().at(tokens, at, end);
    // "one level", "two-story", "100%", "1/2 bath": an entry that is longer than the number in it.
    const wins =
      hit !== undefined &&
      (number === undefined || hit.length > number.length || token.norm === 'zero') &&
      !isCounted(hit, number, token);
    const length = wins ? hit.length : (number?.length ?? 1);
    units.push({
      from: token.from,
      to: tokens[at + length - 1]?.to ?? token.to,
      senses: wins ? hit.senses : [],
      number: wins ? undefined : number?.sense,
      sign:
        token.kind === 'sign' && number === undefined && !wins ? signOf(token, tokens[at + 1]) : undefined,
      word: tokens
        .slice(at, at + length)
        .map((one) => one.raw)
        .join(' '),
      joined,
      aside: undefined,
    });
    joined = false;
    at += length;
  }
  nameGivers(units);
  nameWorks(units);
  nameDry(units);
  setAside(units);
  return units;
}

/** A hyphen with blanks around it is meant as a dash. */
const signOf = (token: Token, next: Token | undefined): string =>
  token.norm === '-' && !token.glued && next?.glued !== true ? '—' : token.norm;

/** "one bath" is a count, and no entry may hide it; "one level" is an entry. */
const isCounted = (hit: Hit, number: unknown, token: Token): boolean =>
  number !== undefined &&
  token.kind === 'number' &&
  hit.senses.every(({ tag }) => tag === 'thing') &&
  token.norm !== '1';

const STRONG = /^[—:?=()[\]]$/;

export const isBoundary = (unit: Unit | undefined): boolean =>
  unit === undefined || unit.sign === ',' || (unit.sign !== undefined && STRONG.test(unit.sign));

const MOVES =
  /^(go|goes|going|goes with|go with|head|heads|pass|passes|travel|travels|leave|leaves|leave with|leaves with|leaving|depart|departs)$/;
const BUYERS = /^(buyer|buyers|you|purchaser|purchasers)$/;
const SELLERS = /^(seller|sellers|seller's|sellers'|owner|owners|us|me|them|family)$/;

/** "goes to the lucky buyer" stays; "leaves with the sellers" goes: a verb of moving means what its person says. */
function nameGivers(units: readonly Unit[]): void {
  for (const [index, unit] of units.entries()) {
    if (!MOVES.test(unit.word)) continue;
    for (const next of units.slice(index + 1, index + 6)) {
      if (isBoundary(next)) break;
      const id =
        BUYERS.test(next.word) ||
        (/^owners?$/.test(next.word) && /^(new|next)$/.test(units[units.indexOf(next) - 1]?.word ?? ''))
          ? 'stays'
          : SELLERS.test(next.word)
            ? 'goes'
            : undefined;
      if (id === undefined) continue;
      unit.senses = [{ tag: 'convey', id }];
      break;
    }
  }
}

const opensClause = (before: Unit | undefined): boolean =>
  isBoundary(before) || before?.word === 'and' || before?.word === 'with';

/** "The opener works": a verb behind a thing, and no work. */
function nameWorks(units: readonly Unit[]): void {
  // "All work permitted": the work, and not what works.
  for (const [index, unit] of units.entries())
    if (/^(all|every) works?$/.test(unit.word) && opensClause(units[index - 1]))
      unit.senses = [
        { tag: 'thing', id: 'work' },
        { tag: 'all', id: 'all' },
      ];
  for (const [index, unit] of units.entries())
    if (
      /^(works|work)$/.test(unit.word) &&
      index > 0 &&
      has(units[index - 1], 'thing') &&
      (isBoundary(units[index + 1]) || WELL.test(units[index + 1]?.word ?? '')) &&
      (unit.word === 'works' || index < 3)
    )
      unit.senses = [{ tag: 'condition', id: 'works' }];
}

const NEVER = /^(never|not a|no|zero|without|hasn't|hasnt|haven't)$/;
const WATER =
  /^(water|leaks?|leaked|leaking|flood|floods|flooded|flooding|wet|damp|dampness|moisture|seepage|puddles?|drop)$/;

/** "Has never taken on water": a denial with a word of water close behind. */
function nameDry(units: readonly Unit[]): void {
  for (const [index, unit] of units.entries()) {
    if (!NEVER.test(unit.word) || !has(unit, 'negation')) continue;
    for (const next of units.slice(
      index + 1,
      index + (unit.word === 'never' || /^ha/.test(unit.word) ? 6 : 3),
    )) {
      if (isBoundary(next)) break;
      if (!WATER.test(next.word)) continue;
      unit.senses = [{ tag: 'condition', id: 'dry' }];
      next.senses = next.senses.filter(({ tag }) => tag !== 'thing');
      break;
    }
  }
}

const WELL = /^(well|fine|great|perfectly|like|as|and|but|properly|smoothly)$/;

/** Marks what is offered, imagined or elsewhere. */
function setAside(units: readonly Unit[]): void {
  for (const [index, unit] of units.entries()) {
    const next = units[index + 1];
    const ahead = has(unit, 'maybe-ahead');
    // "close to 1,400 sq ft" is a figure; "close to the lake" is a place.
    const away = has(unit, 'elsewhere') && !(has(unit, 'hedge') && next?.number !== undefined);
    if (ahead || away) markAhead(units, index, ahead ? 'maybe' : 'elsewhere');
    // "city water & sewer hookups" are there; "pool hookup" is none.
    const supply =
      /^hook/.test(unit.word) &&
      units
        .slice(Math.max(0, index - 4), index)
        .some((one) =>
          one.senses.some(
            ({ tag, id }) => tag === 'thing' && /^(sewer|water-supply|laundry|electrical)$/.test(id),
          ),
        );
    if (has(unit, 'maybe-behind') && !supply && (unit.joined || STANDS_ALONE.test(unit.word)))
      markBehind(units, index);
    if (has(unit, 'elsewhere-noun')) markNoun(units, index);
    // "where a hot tub might go"
    if (
      /^(might|could|would)( be| go)?$/.test(unit.word) &&
      units.slice(Math.max(0, index - 6), index).some(({ word }) => word === 'where')
    )
      markBehind(units, index);
    // "a fifth bedroom if you like"
    if (/^if( you)?$/.test(unit.word)) markBehind(units, index);
  }
}

const STANDS_ALONE =
  /^(await|potential|possibilit|needed|wanted|hook|rough|poss|optional|permitting|feel|vibe)/;

function markAhead(units: readonly Unit[], index: number, aside: 'maybe' | 'elsewhere'): void {
  const self = units[index];
  if (self !== undefined) self.aside = aside;
  for (const unit of units.slice(index + 1)) {
    if (isBoundary(unit)) return;
    unit.aside ??= aside;
  }
}

function markBehind(units: readonly Unit[], index: number): void {
  for (let at = index; at >= 0; at--) {
    const unit = units[at];
    if (unit === undefined || (at < index && isBoundary(unit))) return;
    unit.aside ??= 'maybe';
  }
}

/** "the new park", "school with pool": what stands before such a noun speaks of it. */
function markNoun(units: readonly Unit[], index: number): void {
  for (let at = index; at >= 0; at--) {
    const unit = units[at];
    if (unit === undefined || isBoundary(unit) || has(unit, 'verb') || has(unit, 'preposition')) return;
    unit.aside ??= 'elsewhere';
    if (has(unit, 'determiner')) return;
  }
}
