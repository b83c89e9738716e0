/** What one unit says of a thing. */

import type { ClassSense, Sense } from '../words/lexicon.js';
import { stretchOf } from '../words/stretch-of.js';
import { canBeSaidOf } from '../words/taxonomy.js';
import { has, isBoundary, senseOf, type Unit, wordOf } from '../words/units.js';
import { isPlainWord } from '../words/word-kinds.js';
import { isAgent } from './agents.js';
import type { Attribute, Head } from './phrase.js';

/** "Full bath", "full basement": a kind, and no word for all. */
const FULL_OF_ITS_KIND = /^(bath|half-bath|primary-bath|basement|kitchen|foundation)$/;

export function attributesOf(units: readonly Unit[], at: number, head: Head, before: boolean): Attribute[] {
  const unit = units[at];
  if (unit === undefined || saysNothing(units, at)) return [];
  const base = {
    from: unit.from,
    to: unit.to,
    before,
    shared: false,
    unlike: isUnlike(units, at),
    negated: isNegated(units, at, before ? head.start : head.at + 1),
  };
  const found: Attribute[] = [];
  if (unit.number !== undefined)
    found.push({ ...base, kind: 'number', number: unit.number, hedge: hedgeBefore(units, at) });
  const { newness, who, trade, plain, named } = saidBy(unit.senses);
  if (newness !== undefined) found.push({ ...base, kind: 'newness', id: newness.id, word: unit.word });
  const classes = classesFor(unit.senses, head.thing);
  // Written out, and not spread: of these a text has the most.
  if (classes.length > 0)
    found.push({
      from: unit.from,
      to: unit.to,
      before,
      shared: false,
      unlike: base.unlike,
      negated: base.negated,
      kind: 'class',
      senses: classes,
      word: unit.word,
    });
  for (const kind of plain)
    if (
      !(kind === 'all' && !before && isBoundary(units[at - 1])) &&
      !(kind === 'all' && unit.word === 'full' && FULL_OF_ITS_KIND.test(head.thing))
    )
      found.push({ ...base, kind });
  // "a licensed pool builder": one doer, told at the trade.
  const licensed = trade !== undefined && senseOf(units[at - 1], 'who')?.id === 'licensed';
  const goesOn = who?.id === 'licensed' && has(units[at + 1], 'trade');
  // "By the owner's measurement": not the owner, but what is theirs.
  const ofTheirs = /['’]s?$/.test(unit.word) && !OF_THE_FAMILY.test(wordOf(units[at + 1]));
  if ((who !== undefined || trade !== undefined) && !goesOn && !ofTheirs)
    found.push({
      ...base,
      from: stretchOf(units.slice(licensed ? at - 1 : at, at + 1)).from,
      kind: 'who',
      id: who?.id ?? (licensed || /licen/.test(unit.word) ? 'licensed' : 'professional'),
      trade: trade?.id,
    });
  if (found.length === 0 && isAgent(units, at))
    found.push({
      ...base,
      to: stretchOf(units.slice(at, at + 4)).to,
      kind: 'who',
      id: 'professional',
      trade: undefined,
    });
  for (const [kind, id] of named)
    if (kind !== 'place' || !isParticle(units, at)) found.push({ ...base, kind, id });
  if (found.length === 0 && isPlainWord(unit)) found.push({ ...base, kind: 'word', word: unit.word });
  return found;
}

// An entry of the lexicon is met again and again; what it says of a thing is one list, and known by that.
const classesOf = new WeakMap<Unit['senses'], Map<string, readonly ClassSense[]>>();

/** Of all that a word may mean, the kinds that can be said of a thing. */
function classesFor(senses: Unit['senses'], id: string): readonly ClassSense[] {
  let byThing = classesOf.get(senses);
  if (byThing === undefined) {
    byThing = new Map();
    classesOf.set(senses, byThing);
  }
  let found = byThing.get(id);
  if (found === undefined) {
    found = classesIn(senses).filter(({ group }) => canBeSaidOf(group, id));
    byThing.set(id, found);
  }
  return found;
}

const classesAlone = new WeakMap<Unit['senses'], readonly ClassSense[]>();

/** Of all that a word may mean, the kinds. */
export function classesIn(senses: Unit['senses']): readonly ClassSense[] {
  let found = classesAlone.get(senses);
  if (found === undefined) {
    found = senses.filter((sense) => sense.tag === 'class');
    classesAlone.set(senses, found);
  }
  return found;
}

/** Most units say nothing of anything: seen at one look. */
const saysNothing = (units: readonly Unit[], at: number): boolean => {
  const unit = units[at];
  return unit?.number === undefined && unit?.senses.length === 0 && !isPlainWord(unit) && !isAgent(units, at);
};

const PLAIN = ['all', 'both', 'some', 'permit', 'unpermitted', 'inspected'] as const;
const NAMED = ['convey', 'condition', 'place'] as const;

interface Said {
  readonly newness: Sense | undefined;
  readonly who: Sense | undefined;
  readonly trade: Sense | undefined;
  readonly plain: readonly (typeof PLAIN)[number][];
  readonly named: readonly (readonly [kind: (typeof NAMED)[number], id: string])[];
}

const said = new WeakMap<Unit['senses'], Said>();

/** What an entry says of any thing. */
function saidBy(senses: Unit['senses']): Said {
  let found = said.get(senses);
  if (found === undefined) {
    const of = (tag: Sense['tag']): Sense | undefined => senses.find((sense) => sense.tag === tag);
    found = {
      newness: of('newness'),
      who: of('who'),
      trade: of('trade'),
      plain: PLAIN.filter(of),
      named: NAMED.flatMap((kind) => {
        const sense = of(kind);
        return sense === undefined ? [] : [[kind, sense.id] as const];
      }),
    };
    said.set(senses, found);
  }
  return found;
}

const TAKES_PARTICLE =
  /^(put|laid|set|nailed|glued|screwed|torn|tore|taken|took|stripped|broke|pulled|ripped|cut|came|went|sat|stepped|wound|handed)$/;

/** "put down by a carpenter": of the verb, and no place. */
const isParticle = (units: readonly Unit[], at: number): boolean =>
  /^(down|up)$/.test(wordOf(units[at])) && TAKES_PARTICLE.test(wordOf(units[at - 1]));

function hedgeBefore(units: readonly Unit[], at: number): string | undefined {
  const near = [units[at - 1], units[at - 2]].map((unit) => senseOf(unit, 'hedge')?.id);
  const own = units[at]?.number;
  if (own?.kind === 'square-feet' && own.least === true) return 'over';
  return (
    near[0] ??
    (has(units[at - 1], 'determiner') ? near[1] : undefined) ??
    (units[at + 1]?.sign === '+' || units[at + 1]?.word === 'plus' ? 'over' : undefined)
  );
}

const isLikeness = (unit: Unit | undefined): boolean => has(unit, 'unlike') && !has(unit, 'newness');

const isUnlike = (units: readonly Unit[], at: number): boolean =>
  isLikeness(units[at - 1]) ||
  isLikeness(units[at - 2]) ||
  has(units[at], 'unlike') ||
  (has(units[at + 1], 'unlike') && units[at + 1]?.joined === true);

function isNegated(units: readonly Unit[], at: number, from: number): boolean {
  for (let back = at - 1; back >= Math.max(0, from - 3, at - 4); back--) {
    const unit = units[back];
    if (unit === undefined || isBoundary(unit)) return false;
    if (has(unit, 'negation')) return true;
  }
  return false;
}

/** "The seller's brother" did it all the same. */
const OF_THE_FAMILY =
  /^(self|own|hands?|brother|sister|son|sons|daughter|father|dad|mother|mom|uncle|aunt|cousin|nephew|niece|husband|wife|spouse|partner|family|friends?|grandson|grandfather|in-laws?)$/;
