/** What stays with the house, and what is said to work or to be without fault. */

import { judgeCondition } from '../judge/judge-conditions.js';
import { judgeConvey } from '../judge/judge-conveys.js';
import type { Attribute } from '../sentence/phrase.js';
import { sinceLast, untilFirst } from '../words/cut-at.js';
import { attributesOfKind, type ClaimCase, tell } from './claim-case.js';

const COMES_WITH =
  /\b(complete|comes?|coming|delivered|sold|offered) (complete )?with (all|every|its|the)( of)?( the| its| kitchen| stainless| steel| existing| current)*\s*$/i;

/** Rooms that stand behind a condition, or right before it: "grounded outlets in the kitchen". */
const roomsOf = ({ phrase }: ClaimCase, word: Attribute): string[] =>
  phrase.rooms.filter(({ from, to }) => from >= word.to || to <= phrase.from).map((room) => room.thing);

const EXCEPTS = /^(except|minus|less)$/i;
const OF_THE_SALE =
  /\b(convey|stay|includ|remain|leaves?\b|left|sale|sold|goes|going|comes?\b|inventory|transfer|yours|furnish|furniture)/i;

/** "From 2025 except in bedroom 3": it leaves a room out of what is said, where nothing is said to stay. */
function isException(text: string, { from, to }: Attribute): boolean {
  if (!EXCEPTS.test(text.slice(from, to))) return false;
  const ahead = sinceLast(text.slice(Math.max(0, from - 90), from), /[.;!?\n]/);
  const behind = untilFirst(text.slice(to, to + 60), /[.;!?\n]/);
  return /^\s+(for\s+)?(in|on|at|where)\b/i.test(behind) && !OF_THE_SALE.test(`${ahead} ${behind}`);
}

export function tellSale(one: ClaimCase): void {
  const { known, phrase, items, sentence } = one;
  const all = attributesOfKind(one, 'all').length > 0;
  for (const word of attributesOfKind(one, 'convey')) {
    if (isException(sentence.text, word)) continue;
    const id = word.negated && word.id === 'stays' ? 'goes' : word.id;
    const words = sentence.text.slice(
      Math.min(
        phrase.from,
        ...phrase.attributes.filter(({ before, shared }) => before && !shared).map(({ from }) => from),
      ),
      phrase.to,
    );
    tell(one, judgeConvey(known, items, { id, things: [phrase.thing], words, all }), word);
  }
  // "The kitchen comes complete with all appliances."
  const ahead = sentence.text.slice(Math.max(0, phrase.from - 40), phrase.from);
  if (phrase.thing === 'appliance' && !attributesOfKind(one, 'convey').length && COMES_WITH.test(ahead))
    tell(
      one,
      judgeConvey(known, items, { id: 'stays', things: ['appliance'], words: 'appliances', all: true }),
    );
  for (const word of attributesOfKind(one, 'condition')) {
    // Outlets are told of by themselves, whatever stands before them.
    if (
      word.id === 'grounded' &&
      /outlet|receptacle|plug/i.test(sentence.text.slice(word.from, word.to)) &&
      phrase.to <= word.from
    )
      continue;
    const judgement = judgeCondition(known, word.id, [phrase.thing], roomsOf(one, word));
    if (!word.negated) tell(one, judgement, word);
    else if (judgement.verdict === 'contradicted')
      tell(one, { ...judgement, verdict: 'backed', because: 'the folder says so' }, word);
  }
}
