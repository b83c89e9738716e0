/** What one unit says of a thing. */
import { isAgent } from './agents.js';
import type { Attribute, Head } from './phrase.js';
import { canBeSaidOf } from './taxonomy.js';
import { has, isBoundary, senseOf, type Unit } from './units.js';
import { isPlainWord } from './word-kinds.js';

/** "Full bath", "full basement": a kind, and no word for all. */
const FULL_OF_ITS_KIND = /^(bath|half-bath|primary-bath|basement|kitchen|foundation)$/;

export function attributesOf(units: readonly Unit[], at: number, head: Head, before: boolean): Attribute[] {
  const unit = units[at];
  if (unit === undefined) return [];
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
  const newness = senseOf(unit, 'newness');
  if (newness !== undefined) found.push({ ...base, kind: 'newness', id: newness.id, word: unit.word });
  const classes = unit.senses.filter(
    (sense) => sense.tag === 'class' && sense.group !== undefined && canBeSaidOf(sense.group, head.thing),
  );
  if (classes.length > 0) found.push({ ...base, kind: 'class', senses: classes, word: unit.word });
  for (const kind of ['all', 'both', 'some', 'permit', 'unpermitted', 'inspected'] as const)
    if (
      has(unit, kind) &&
      !(kind === 'all' && !before && isBoundary(units[at - 1])) &&
      !(kind === 'all' && unit.word === 'full' && FULL_OF_ITS_KIND.test(head.thing))
    )
      found.push({ ...base, kind });
  const who = senseOf(unit, 'who');
  const trade = senseOf(unit, 'trade');
  if (who !== undefined || trade !== undefined)
    found.push({
      ...base,
      kind: 'who',
      id: who?.id ?? (/licen/.test(unit.word) ? 'licensed' : 'professional'),
      trade: trade?.id,
    });
  if (found.length === 0 && isAgent(units, at))
    found.push({
      ...base,
      to: units[Math.min(at + 3, units.length - 1)]?.to ?? unit.to,
      kind: 'who',
      id: 'professional',
      trade: undefined,
    });
  for (const kind of ['convey', 'condition', 'place'] as const) {
    const sense = senseOf(unit, kind);
    if (sense !== undefined) found.push({ ...base, kind, id: sense.id });
  }
  if (found.length === 0 && isPlainWord(unit)) found.push({ ...base, kind: 'word', word: unit.word });
  return found;
}

function hedgeBefore(units: readonly Unit[], at: number): string | undefined {
  const near = [units[at - 1], units[at - 2]].map((unit) => senseOf(unit, 'hedge')?.id);
  return (
    near[0] ??
    (has(units[at - 1], 'determiner') ? near[1] : undefined) ??
    (units[at + 1]?.sign === '+' || units[at + 1]?.word === 'plus' ? 'over' : undefined)
  );
}

const isUnlike = (units: readonly Unit[], at: number): boolean =>
  [units[at - 1], units[at - 2]].some((unit) => has(unit, 'unlike') && !has(unit, 'newness')) ||
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
