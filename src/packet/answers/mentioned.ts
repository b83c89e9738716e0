/** What the record mentions of a matter, for questions that no fact of their own answers. */
import { printDate } from '../../facts/date.js';
import { type Context, placeName } from '../context.js';
import { evidenceOf } from '../marks.js';
import { link, rich, upperFirst } from '../rich.js';
import { subjectOf } from '../tell.js';
import { type AnswerOf, about, answerOf, type Named } from './answer.js';

/** Known conditions whose words match, each leading to its statement. */
export const conditionsLike = (context: Context, pattern: RegExp): Named[] =>
  context.house.conditions.flatMap((item, index): Named[] => {
    if (!pattern.test(item.what)) return [];
    const place = item.where === undefined ? undefined : placeName(context, item.where).toLowerCase();
    const where = place === undefined || item.what.toLowerCase().includes(place) ? undefined : place;
    const behind = [where, item.since, item.note].filter((part) => part !== undefined).join(', ');
    return [
      {
        words: [
          link(upperFirst(item.what), `condition-${index + 1}`),
          ...rich(behind === '' ? '' : ` (${behind})`),
        ],
        known: { from: item.from, evidence: [...item.evidence, ...item.photos] },
      },
    ];
  });

/** Papers whose words match, by what they are and their date. */
export const papersLike = ({ house }: Context, pattern: RegExp): Named[] =>
  house.documents.flatMap((paper): Named[] =>
    pattern.test(paper.what)
      ? [
          {
            words: about(
              `On file: ${paper.what}`,
              `paper-${paper.id}`,
              paper.date === undefined ? '' : printDate(paper.date),
            ),
            known: { evidence: [paper.id] },
          },
        ]
      : [],
  );

/** Work whose words match: what it was, what was done and when, how, and if wanted why. */
export const workLike = (context: Context, pattern: RegExp, reason?: 'with reason'): Named[] =>
  context.tally.improvements.flatMap((one): Named[] => {
    if (one.source.kind !== 'work') return [];
    const { item } = one.source;
    if (!pattern.test([item.what, item.how, item.why].filter(Boolean).join(' '))) return [];
    const when = one.done === undefined ? 'date not known' : printDate(one.done);
    return [
      {
        words: about(
          subjectOf(one),
          `done-${one.id}`,
          [`${one.did} ${when}`, item.how, reason && item.why].filter(Boolean).join(', '),
        ),
        known: evidenceOf(context, item),
      },
    ];
  });

/** Whatever conditions and papers say of it. */
export const mentioned =
  (pattern: RegExp): AnswerOf =>
  (context) =>
    answerOf(context, [...conditionsLike(context, pattern), ...papersLike(context, pattern)], {
      between: '. ',
    });

/** Only the owner can say, under `answers:`. */
export const onlyTheOwner: AnswerOf = () => undefined;
