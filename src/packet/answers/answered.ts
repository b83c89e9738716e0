/**
 * The questions that buyers ask, answered from what an edition may know.
 *
 * Takes a context, so that an answer tells no more than the edition. Gives the owner's own answers first, then those
 * put together from facts, and last what nobody has answered, with whom to ask. Silence is never "no". Start reading at
 * `answersOf`; the questions are data, in `tally/tables/questions.yaml`.
 */
import { type AskedQuestion, askedQuestions, isAskedBy } from '../../tally/tables/questions.js';
import type { Context } from '../context.js';
import { markOfFact } from '../marks.js';
import type { EvidenceMark, Rich } from '../packet.js';
import { fullStop, plainText, rich, soft, upperFirst } from '../rich.js';
import { AGES_ANSWERED } from './ages-answered.js';
import { type AnswerOf, DOES_NOT_ARISE } from './answer.js';
import { INSIDE_ANSWERED } from './inside-answered.js';
import { SALE_ANSWERED } from './sale-answered.js';
import { SYSTEMS_ANSWERED } from './systems-answered.js';
import { WORK_ANSWERED } from './work-answered.js';

/** How each question of the table is answered, by its id. */
export const ANSWERS: Readonly<Record<string, AnswerOf>> = {
  ...AGES_ANSWERED,
  ...WORK_ANSWERED,
  ...SYSTEMS_ANSWERED,
  ...SALE_ANSWERED,
  ...INSIDE_ANSWERED,
};

/** A question with its answer, or without one. */
export interface AnsweredQuestion {
  /** Its anchor in the packet. */
  readonly id: string;
  readonly ask: string;
  /** What of it is known, where nothing is, too: "Not known: no date on the label." */
  readonly answer: Rich;
  /** The same on paper. */
  readonly onPaper: Rich;
  readonly mark: EvidenceMark;
  /** In the owner's own words, or put together from facts. */
  readonly by: 'owner' | 'facts';
  /** Heading that it stands under; undefined for an owner's question that is none of the table's. */
  readonly group: string | undefined;
  /** The first of the table's questions that it is; undefined for an owner's question of another kind. */
  readonly question: AskedQuestion | undefined;
}

export interface AnswersOfHouse {
  readonly answered: readonly AnsweredQuestion[];
  /** Without an answer, most asked first. */
  readonly open: readonly AnsweredQuestion[];
  /** What no packet says: why, and whom to ask. An owner who answers it all the same is heard. */
  readonly refused: readonly AskedQuestion[];
}

/**
 * Every question once: the owner's, in the owner's order, then the table's that none of them is, most asked first. An
 * owner's answer stands for one question of the table; of others that it may touch, what the facts say is told as well.
 */
export function answersOf(context: Context): AnswersOfHouse {
  const own = ownAnswers(context);
  const covered = new Set(own.map(({ one }) => one.question));
  const touched = new Set(own.flatMap(({ questions }) => questions));
  const derived = askedQuestions()
    .filter((question) => !covered.has(question) && question.refused === undefined)
    .flatMap((question) => derivedAnswer(context, question))
    .filter((one) => one.mark.standing !== 'not-known' || !touched.has(one.question));
  const all = [...own.map(({ one }) => one), ...derived];
  return {
    answered: all.filter(isAnswered),
    open: all.filter((one) => !isAnswered(one)).sort(mostAskedFirst),
    refused: askedQuestions().filter((question) => question.refused !== undefined && !covered.has(question)),
  };
}

/** An owner's "not known" with a reason tells something; without one it is an open question like any other. */
function isAnswered({ mark, by, answer }: AnsweredQuestion): boolean {
  return mark.standing !== 'not-known' || (by === 'owner' && plainText(answer) !== NOT_KNOWN);
}

const NOT_KNOWN = 'Not known.';

const rankIn = (question: AskedQuestion | undefined): number =>
  question === undefined ? Number.POSITIVE_INFINITY : askedQuestions().indexOf(question);

const mostAskedFirst = (a: AnsweredQuestion, b: AnsweredQuestion): number => {
  const [first, second] = [rankIn(a.question), rankIn(b.question)];
  return first === second ? 0 : first - second;
};

interface OwnAnswer {
  readonly one: AnsweredQuestion;
  /** All of the table's that it may be. */
  readonly questions: readonly (AskedQuestion | undefined)[];
}

function ownAnswers(context: Context): OwnAnswer[] {
  return context.house.answers.map((item, index): OwnAnswer => {
    const questions = askedQuestions().filter((question) => isAskedBy(question, item.ask));
    const { value, note } = item.answer;
    const said = value === undefined ? NOT_KNOWN : fullStop(upperFirst(value));
    const [question] = questions;
    const answer = rich(
      said,
      note === undefined ? undefined : ` ${fullStop(upperFirst(note))}`,
      ...(value === undefined && note !== undefined
        ? askThem(question)
        : deferring(question, value !== undefined)),
    );
    return {
      questions,
      one: {
        id: `question-${index + 1}`,
        ask: item.ask,
        answer,
        onPaper: answer,
        mark: markOfFact(context, item.answer),
        by: 'owner',
        group: question?.group,
        question,
      },
    };
  });
}

function derivedAnswer(context: Context, question: AskedQuestion): AnsweredQuestion[] {
  const answer = ANSWERS[question.id]?.(context);
  if (answer === DOES_NOT_ARISE) return [];
  const known = answer !== undefined && answer.mark.standing !== 'not-known';
  const text = answer?.text ?? rich(NOT_KNOWN);
  return [
    {
      id: `question-${question.id}`,
      ask: question.ask,
      answer: rich(...text, ...deferring(question, known)),
      onPaper: rich(...(answer?.short ?? text), ...deferring(question, known)),
      mark: answer?.mark ?? { standing: 'not-known', word: 'Not known', detail: [] },
      by: 'facts',
      group: question.group,
      question,
    },
  ];
}

/** Behind an answer by which somebody could be hurt stands who can say more. */
const deferring = (question: AskedQuestion | undefined, said: boolean): Rich =>
  question?.defers === true && said ? askThem(question) : [];

const askThem = (question: AskedQuestion | undefined): Rich =>
  question === undefined ? [] : [{ text: ' ' }, soft(question.whom)];

/** Whom to ask where it is not known. */
export const whomToAsk = ({ question }: Pick<AnsweredQuestion, 'question'>): string =>
  question?.whom ?? 'The owner could not say.';
