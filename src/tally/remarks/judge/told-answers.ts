/** The questions of the folder that have an answer, each with the fact that a finding rests on. */
import type { FactSaid, Known } from '../items/known.js';

export interface ToldAnswer {
  readonly ask: string;
  readonly value: string;
  readonly fact: FactSaid;
}

/** What is said to be not known is no answer. */
export const toldAnswers = ({ house }: Pick<Known, 'house'>): ToldAnswer[] =>
  house.answers.flatMap(({ ask, answer: { value, evidence } }, index) =>
    value === undefined
      ? []
      : [{ ask, value, fact: { path: ['answers', index], words: `${ask} ${value}`, evidence } }],
  );
