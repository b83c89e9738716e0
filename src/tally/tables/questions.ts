/**
 * The questions that buyers ask, most asked first, each with other ways to say it, and whom to ask where the record
 * has no answer. `check` takes its gaps from here, the packet its questions, the search its words.
 */
import { z } from 'zod';
import { readTable } from '../read-table.js';
import { readings } from './sourced.js';

const text = z.string().min(1);

const question = z.strictObject({
  id: z.string().regex(/^[a-z]+(-[a-z]+)*$/),
  group: text,
  /** As a buyer says it. */
  ask: text,
  /** Other words for it, with blanks between. */
  words: text,
  /** Patterns that the question of an owner's own answer must all have to belong here. */
  owner: z.array(text).min(1),
  /** A sentence that follows "Not known." */
  whom: text,
  /** No packet says this, and no owner is asked to: a sentence of why, before `whom`. */
  refused: text.optional(),
  /** What the owner types so that it is known: where, two blanks, the line. */
  type: text.optional(),
  /** `whom` stands behind an answer, too: somebody can be hurt, or much can be lost. */
  defers: z.literal(true).optional(),
  /** `check` names it where it has no answer. */
  gap: z.literal(true).optional(),
  read: z.enum(readings),
});

const table = z.strictObject({
  /** Headings by id, in the order of the page. */
  groups: z.record(z.string(), text),
  questions: z.array(question).min(45),
});

export type AskedQuestion = z.infer<typeof question>;

/** Reads `questions.yaml`; throws on a broken table, which is our own mistake. */
export const askedQuestions = (): readonly AskedQuestion[] => readTable('questions', table).questions;

/** Headings by id, in the order of the page. */
export const questionGroups = (): Readonly<Record<string, string>> => readTable('questions', table).groups;

/** Whether what the owner asks, in the owner's own words, is this question. */
export const isAskedBy = (question: Pick<AskedQuestion, 'owner'>, ask: string): boolean =>
  question.owner.every((pattern) => expressionOf(pattern).test(ask));

/** Each is asked of every answer of a house, so it is read once. */
const expressions = new Map<string, RegExp>();

function expressionOf(pattern: string): RegExp {
  const known = expressions.get(pattern);
  if (known !== undefined) return known;
  const made = new RegExp(pattern, 'iu');
  expressions.set(pattern, made);
  return made;
}

/** What to type so that it is known: where, two blanks, the line. */
export const whatToType = ({ ask, type }: Pick<AskedQuestion, 'ask' | 'type'>): string =>
  type ?? `under answers:  - { ask: "${ask}", answer: "…" }`;
