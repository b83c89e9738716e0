/** Fires that can't be lit: a hearth whose flue the folder calls closed, said to work or to burn something. */

import { sensesIn } from '../items/item-meaning.js';
import { factsOf } from '../items/item-words.js';
import type { Item } from '../items/items.js';
import type { FactSaid, Judgement, Known } from '../items/known.js';
import { toldAnswers } from '../judge/told-answers.js';
import { sinceLast, untilFirst } from '../words/cut-at.js';
import { belongsTo } from '../words/taxonomy.js';
import { attributesOfKind, type ClaimCase, wordsBehind } from './claim-case.js';

const CLOSED =
  /\b(closed (off|up|over)|sealed( off| up| over)?|blocked( off| up)?|capped( off)?|bricked (up|over|in)|plugged|boarded (up|over)|filled in|decorative( only)?|for (show|looks)|not in use|out of use|unusable|unlined|never lit|(does|do|can|may) not (work|draw|burn|be (used|lit)))\b/i;

/** Words behind a hearth by which a fire burns in it. */
const BURNS =
  /^\W*((that|which|both|still|really|all|can|will|do|does|are|is|each)\W+)*(burns?|works?|working|draws?|functional|functions?|operational|lit|lights?|roars?|crackles?|glows?|in use|usable|ready (for|to))\b/i;
const AHEAD =
  /\b(working|functional|functioning|operational|operating|operable|usable|wood[- ]?burning|gas[- ]?burning|gas|crackling|roaring|cozy|cosy|lit|wood)[\s-]+([\w-]+\s+){0,2}$/i;
const DENIED =
  /\b(no|not|non|never|neither|nor|once|former(ly)?|used to|decorative|sealed|closed|could|if|ready to)\b/i;

const HEARTHS = /^(fireplace|wood-stove|chimney)$/;

/** "Working fireplace", "fireplaces burn wood", where each hearth of the folder is closed, or an answer says that none works. */
export function fireIsOut(one: ClaimCase): Judgement | undefined {
  const { known, phrase, sentence, found } = one;
  if (!HEARTHS.test(phrase.thing) || phrase.negated) return undefined;
  const ahead = sinceLast(sentence.text.slice(Math.max(0, phrase.from - 32), phrase.from), /[.,;:!?\n(]/);
  const behind = wordsBehind(one, 40);
  const said =
    AHEAD.test(ahead) ||
    BURNS.test(behind) ||
    attributesOfKind(one, 'condition').some(({ id, negated }) => id === 'works' && !negated) ||
    attributesOfKind(one, 'class').some(
      ({ senses, negated }) => !negated && senses.some(({ group }) => group === 'fuel'),
    );
  if (!said || DENIED.test(ahead) || DENIED.test(untilFirst(behind, /[,.;:]/))) return undefined;
  const facts = closedHearths(found) ?? saysItDoesNot(known, phrase.thing);
  return facts === undefined
    ? undefined
    : {
        verdict: 'contradicted',
        rule: 'condition.out-of-use',
        because: 'the folder says that it is not in use',
        facts,
      };
}

function closedHearths(found: readonly Item[]): FactSaid[] | undefined {
  const own = found.filter(({ kind, things }) => kind !== 'work' && things.some((id) => HEARTHS.test(id)));
  return own.length > 0 && own.every(({ words, what }) => CLOSED.test(`${what} ${words}`))
    ? factsOf(own, 3)
    : undefined;
}

const ASKS_WHETHER_IT_WORKS =
  /^\W*(do|does|did|is|are|can|may)\b.*\b(work|works|working|used|usable|in use|function|functional|operational|operate|run|lit|burn|draw)\b/i;

/** An answer that denies that a thing works. */
function saysItDoesNot(known: Known, id: string): FactSaid[] | undefined {
  const answer = toldAnswers(known).find(
    ({ ask, value }) =>
      ASKS_WHETHER_IT_WORKS.test(ask) &&
      /^(no|none|neither|not)\b(?! known)/i.test(value) &&
      sensesIn(ask).some((sense) => sense.tag === 'thing' && belongsTo(sense.id, id)),
  );
  return answer === undefined ? undefined : [answer.fact];
}
