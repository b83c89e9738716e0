/** Things that no table knows, held against the list of what stays. */
import { judgeConvey } from './judge-conveys.js';
import type { Finding, Known } from './known.js';
import type { Find } from './read-sentence.js';
import { has, isBoundary, senseOf, type Unit } from './units.js';

/** Units on either side in which the thing is looked for. */
const FAR = 12;

/** "Wine cooler stays", "leave the citrus pots": things that no table knows, held against the list of what stays. */
export function conveyed(
  known: Known,
  units: readonly Unit[],
  text: string,
  findings: readonly Finding[],
  find: Find,
): void {
  for (const [at, unit] of units.entries()) {
    const sense = senseOf(unit, 'convey');
    if (sense === undefined || unit.aside !== undefined) continue;
    if (
      findings.some(
        ({ rule, from, to }) => rule.startsWith('conveys') && from < unit.to + 30 && to > unit.from - 30,
      )
    )
      continue;
    let [low, high] = [at, at];
    while (low > at - FAR && units[low - 1] !== undefined && !isBoundary(units[low - 1])) low--;
    while (high < at + FAR && units[high + 1] !== undefined && !isBoundary(units[high + 1])) high++;
    const [from, to] = [units[low]?.from ?? unit.from, units[high]?.to ?? unit.to];
    const negated = units.slice(low, high + 1).some((one) => has(one, 'negation'));
    const judgement = judgeConvey(known, [], {
      id: negated && sense.id === 'stays' ? 'goes' : sense.id,
      things: [],
      words: text.slice(from, to),
      all: false,
    });
    if (judgement.facts.length > 0) find(from, to, judgement);
  }
}
