/** Questions that the folder asks and can't answer: "Is there aluminium wiring? Not known." */
import { sensesIn } from '../items/item-meaning.js';
import type { Judgement, Known } from '../items/known.js';
import type { Sense } from '../words/lexicon.js';
import { belongsTo } from '../words/taxonomy.js';

/** A question about the thing and its kinds that was left open: what is so throughout, or nowhere, nobody knows. */
export function leftOpen({ house }: Known, thing: string, senses: readonly Sense[]): Judgement | undefined {
  const groups = new Set(senses.map(({ group }) => group));
  const index = house.answers.findIndex(({ ask, answer }) => {
    if (answer.value !== undefined) return false;
    const asked = sensesIn(ask);
    return (
      asked.some(({ tag, id }) => tag === 'thing' && (belongsTo(id, thing) || belongsTo(thing, id))) &&
      asked.some(({ tag, group }) => tag === 'class' && groups.has(group))
    );
  });
  const one = house.answers[index];
  if (one === undefined) return undefined;
  return {
    verdict: 'no-fact',
    rule: 'answer',
    because: 'the folder asks it and says that it is not known',
    facts: [{ path: ['answers', index], words: `${one.ask} Not known.`, evidence: one.answer.evidence }],
  };
}
