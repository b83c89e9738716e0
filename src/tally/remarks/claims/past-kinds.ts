/** Kinds that a text tells of as gone: "the knob-and-tube is gone", "the tub was pink". */

import { factsOf } from '../items/item-words.js';
import type { Judgement } from '../items/known.js';
import { itemsFor } from '../items/pick-items.js';
import { sortByClass } from '../judge/judge-class.js';
import { asTyped } from '../judge/judged.js';
import { sinceLast, untilFirst } from '../words/cut-at.js';
import type { ClaimCase } from './claim-case.js';
import type { Kind } from './tell-kinds.js';

const GONE =
  /^\W*((is|are|was|were|has|have|had|been|got|all|now|finally|long|since|recently|completely|entirely|fully)\W+)*(gone|removed|ripped|pulled (up|out)|taken (out|up|down|off)|taken away|stripped|scraped|eliminated|no more|history|disposed|demolished|demoed|abandoned|tossed|thrown (out|away)|hauled|decommissioned|disconnected|out of here)\b/i;

/** Deeds before a thing by which it is no longer there: "removed all of the knob and tube". */
const TOOK_AWAY =
  /\b(removed|eliminated|got rid of|gotten rid of|tore out|torn out|ripped out|pulled out|took out|taken out|stripped out|hauled (off|away)|did away with|abated|decommissioned|replaced|swapped out|changed out)\s+((all|every|each|the last|the|that|those|its|our|any|old|original|remaining|existing|of|bit|inch|run|foot|piece|trace)\s+)*$/i;

/** "Removed the carpet" may be that of one room. */
const ALL_OF_IT = /\b(all|every|each|last|any|remaining)\b/i;

/** Words that limit it to a part. */
const IN_PART =
  /\b(some|most|part|several|few|partly|half|in the|at the|of the|for the|to the|under the|where)\b/i;

export const isSaidGone = ({ phrase, sentence }: ClaimCase): boolean =>
  GONE.test(sentence.text.slice(phrase.to, phrase.to + 60)) || isTakenAway(phrase, sentence.text);

/** "Replaced all the galvanized": said of all of it, and not of the runs of one room. */
const isTakenAway = ({ from, to, attributes, rooms }: ClaimCase['phrase'], text: string): boolean => {
  const start = Math.min(
    from,
    ...attributes.filter(({ kind, before }) => kind === 'class' && before).map((one) => one.from),
  );
  return (
    rooms.length === 0 &&
    ALL_OF_IT.test(
      TOOK_AWAY.exec(sinceLast(text.slice(Math.max(0, start - 60), start), /[.;:!?\n]/))?.[0] ?? '',
    ) &&
    !IN_PART.test(untilFirst(text.slice(to, to + 40), /[,.;:!?\n]/))
  );
};

/** What is said to be gone is told of as gone only where the folder has none of it. */
export function judgeGone(one: ClaimCase, { senses, word }: Kind): Judgement {
  const { known, phrase, found } = one;
  const items = (found.length > 0 ? found : itemsFor(known, phrase.thing)).filter(
    ({ kind }) => kind !== 'work',
  );
  const { fits } = sortByClass(items, senses);
  const rule = `kind.${senses[0]?.group}`;
  if (fits.length > 0)
    return {
      verdict: 'contradicted',
      rule,
      because: `the folder still tells of “${asTyped(word)}”`,
      facts: factsOf(fits, 3),
    };
  return { verdict: 'no-fact', rule, because: 'the folder does not say what was there before', facts: [] };
}

const WAS =
  /^\W*(it |they |she |this )?(was|were|used to be|had been|once was)\W+(once |formerly |originally |all |just |plain )?$/i;

/** "The tub? It was pink": how it was before. */
export const isOfBefore = ({ phrase, sentence }: ClaimCase, { from, before }: Kind): boolean =>
  !before && WAS.test(sentence.text.slice(phrase.to, from));
