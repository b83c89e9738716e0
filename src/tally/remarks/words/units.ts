/** A sentence as a row of units: entries of the tables, numbers, signs, and words that no table knows. */
import { type Hit, lexicon, type Sense } from './lexicon.js';
import { type NumberSense, numberAt } from './numbers.js';
import { setAside } from './set-aside.js';
import { stretchOf } from './stretch-of.js';
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

/** Asked more often than anything else here, so a plain loop. */
export function senseOf(unit: Unit | undefined, tag: Sense['tag']): Sense | undefined {
  if (unit === undefined) return undefined;
  for (const sense of unit.senses) if (sense.tag === tag) return sense;
  return undefined;
}

/** As it stands, lower case; nothing beyond either end of the row. */
export const wordOf = (unit: Unit | undefined): string => unit?.word ?? '';

export const has = (unit: Unit | undefined, tag: Sense['tag']): boolean => senseOf(unit, tag) !== undefined;

export function unitsOf(tokens: readonly Token[], first: number, end: number): Unit[] {
  const units: Unit[] = [];
  const words = lexicon();
  let joined = false;
  let next = first;
  for (const [offset, token] of tokens.slice(first, end).entries()) {
    const at = first + offset;
    if (at < next) continue;
    if (token.norm === '-' && token.glued && tokens[at + 1]?.glued === true && at + 1 < end) {
      joined = true;
      continue;
    }
    const number = numberAt(tokens, at, end);
    const hit = words.at(tokens, at, end);
    // "one level", "two-story", "100%", "1/2 bath": an entry that is longer than the number in it.
    const wins =
      hit !== undefined &&
      (number === undefined || hit.length > number.length || token.norm === 'zero') &&
      !isCounted(hit, number, token);
    next = at + (wins ? hit.length : (number?.length ?? 1));
    const run = tokens.slice(at, next);
    units.push({
      from: token.from,
      to: stretchOf(run).to,
      senses: wins ? hit.senses : NO_SENSES,
      number: wins ? undefined : number?.sense,
      sign:
        token.kind === 'sign' && number === undefined && !wins ? signOf(token, tokens[at + 1]) : undefined,
      word: run.map(({ raw }) => raw).join(' '),
      joined,
      aside: undefined,
    });
    joined = false;
  }
  nameGivers(units);
  nameWorks(units);
  nameDry(units);
  setAside(units);
  return units;
}

// One list for all words that no table knows: what is kept by the list of senses is kept once.
const NO_SENSES: Unit['senses'] = [];

/** A hyphen with blanks around it is meant as a dash. */
const signOf = (token: Token, next: Token | undefined): string =>
  token.norm === '-' && !token.glued && next?.glued !== true ? '—' : token.norm;

/** "one bath" is a count, and no entry may hide it; "one level" is an entry. */
const isCounted = (hit: Hit, number: unknown, token: Token): boolean =>
  number !== undefined &&
  token.kind === 'number' &&
  hit.senses.every(({ tag }) => tag === 'thing') &&
  token.norm !== '1';

const BOUNDARIES = new Set([...',—:?=()[]']);

export const isBoundary = (unit: Unit | undefined): boolean =>
  unit === undefined || (unit.sign !== undefined && BOUNDARIES.has(unit.sign));

const MOVES =
  /^(go|goes|going|goes with|go with|head|heads|pass|passes|travel|travels|leave|leaves|leave with|leaves with|leaving|depart|departs)$/;
const BUYERS = /^(buyer|buyers|you|purchaser|purchasers)$/;
const SELLERS = /^(seller|sellers|seller's|sellers'|owner|owners|us|me|them|family)$/;

/** "goes to the lucky buyer" stays; "leaves with the sellers" goes: a verb of moving means what its person says. */
function nameGivers(units: readonly Unit[]): void {
  for (const [index, unit] of units.entries()) {
    if (!MOVES.test(unit.word)) continue;
    for (const [order, next] of units.slice(index + 1, index + 6).entries()) {
      if (isBoundary(next)) break;
      const id =
        BUYERS.test(next.word) ||
        (/^owners?$/.test(next.word) && /^(new|next)$/.test(wordOf(units[index + order])))
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
      /^(works|work|opens|functions|operates)$/.test(unit.word) &&
      index > 0 &&
      has(units[index - 1], 'thing') &&
      (isBoundary(units[index + 1]) || WELL.test(wordOf(units[index + 1]))) &&
      (unit.word !== 'work' || index < 3)
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
