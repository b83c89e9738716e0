/** What stays with the house, and what is said to work or to be without fault. */
import { attributesOfKind, type ClaimCase, tell } from './claim-case.js';
import { judgeCondition } from './judge-conditions.js';
import { judgeConvey } from './judge-conveys.js';

export function tellSale(one: ClaimCase): void {
  const { known, phrase, items, sentence } = one;
  const all = attributesOfKind(one, 'all').length > 0;
  for (const word of attributesOfKind(one, 'convey')) {
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
  for (const word of attributesOfKind(one, 'condition')) {
    const judgement = judgeCondition(known, word.id, [phrase.thing]);
    if (!word.negated) tell(one, judgement, word);
    else if (judgement.verdict === 'contradicted')
      tell(one, { ...judgement, verdict: 'backed', because: 'the folder says so' }, word);
  }
}
