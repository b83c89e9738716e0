/** A well or a septic system that the folder tells of beside the house's own supply: for the lawn, or of former days. */
import type { FactSaid, Known } from '../items/known.js';

/** A well for the garden supplies no house. */
const FOR_THE_HOUSE =
  /\b(?:drinking|potable|domestic|household|house|home|indoor|kitchen|faucets?|taps?)\b|\bwater (?:source|supply)|\bwell (?:and|&|\/|\+) septic\b|\bon (?:a |its own |private )?(?:private )?well\b/i;
const FOR_THE_GARDEN =
  /\b(?:irrigat\w*|irrig|lawn|yard|garden|sprinklers?|landscap\w*|outdoor|pasture|livestock|stock|pond)\b/i;

/** Words by which a thing is told as one of former days. */
const GONE =
  /\b(?:no longer|not|never|n['’]t|anymore|any more|abandon\w*|decommission\w*|retired|filled|crushed|caved|collapsed|remov\w+|gone|former\w*|previous\w*|once|used to|had been|there (?:was|were)|joined|connect\w+|convert\w+|switch\w+|hook\w+|tied|taken out|dug (?:up|out)|replaced (?:by|with) (?:the |a )?(?:city|public|town|municipal|sewer)|off (?:of )?septic|instead of|from septic|given up|history)\b/i;

/** An entry of the folder that tells of a well beside public water, where the clause doesn't have it supply the house. */
export function wellBesideSupply(known: Known, clause: string): FactSaid | undefined {
  if (FOR_THE_HOUSE.test(clause) && !FOR_THE_GARDEN.test(clause)) return undefined;
  return entryOf(known, /\bwells?\b(?! (?:known|kept|built|made|done|laid|below|above))/i);
}

/** The entry that tells of a septic system given up, where the clause says that it is gone. */
export function septicOfBefore(known: Known, clause: string): FactSaid | undefined {
  return GONE.test(clause) ? entryOf(known, /\b(?:septic|cesspool|(?:old|former) tank)\b/i) : undefined;
}

function entryOf({ house }: Known, word: RegExp): FactSaid | undefined {
  const { water, sewer } = house.house;
  const told: readonly (readonly [readonly (string | number)[], string])[] = [
    ...house.systems.map(
      (one, at) => [['systems', at], [one.name ?? one.is, one.serves, one.note].join(' ')] as const,
    ),
    ...house.work.map((one, at) => [['work', at], [one.what, one.how, one.note].join(' ')] as const),
    ...house.answers.map((one, at) => [['answers', at], one.answer.value ?? ''] as const),
    ...house.conditions.map((one, at) => [['conditions', at], one.what] as const),
    [['house', 'sewer'], [sewer?.was, sewer?.note].join(' ')],
    [['house', 'water'], [water?.was, water?.note].join(' ')],
  ];
  const found = told.find(([, words]) => word.test(words));
  return found === undefined ? undefined : { path: [...found[0]], words: found[1].trim(), evidence: [] };
}
