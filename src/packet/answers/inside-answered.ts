/** Floors, counters, ceilings, kitchen and bath; who did which trade's work. */
import { printDate } from '../../facts/date.js';
import type { Finish, Room } from '../../facts/house.js';
import { printLength } from '../../facts/length.js';
import { type Improvement, toldByThemselves } from '../../tally/improvements.js';
import { TRADES } from '../../tally/trades.js';
import { type Context, placeName } from '../context.js';
import { evidenceOf } from '../marks.js';
import { link, lowerFirst, rich, say, upperFirst } from '../rich.js';
import { subjectOf, whoShort } from '../tell.js';
import {
  type Answer,
  type AnswerOf,
  about,
  answerOf,
  fewOf,
  inShort,
  markOfNamed,
  type Named,
} from './answer.js';

interface Laid {
  readonly room: Room;
  readonly finish: Finish;
  readonly index: number;
}

const laidOn = ({ house }: Context, on: Finish['on']): Laid[] =>
  house.rooms.flatMap((room) =>
    room.finishes.flatMap((finish, index) => (finish.on === on ? [{ room, finish, index }] : [])),
  );

/** Each material once, with the rooms that have it: "Oak strip: living room, hall". */
function materials(context: Context, on: Finish['on']): Answer | undefined {
  const laid = laidOn(context, on);
  const kinds = new Map<string, Laid[]>();
  for (const one of laid) kinds.set(one.finish.what, [...(kinds.get(one.finish.what) ?? []), one]);
  const named = [...kinds].map(
    ([what, list]): Named => ({
      words: rich(
        `${upperFirst(what)}: `,
        ...list.flatMap(({ room, index }, at) => [
          ...(at === 0 ? [] : [say(', ')]),
          link(lowerFirst(placeName(context, room.id)), `finish-${room.id}-${index}`),
        ]),
      ),
      known: { evidence: [] },
    }),
  );
  const answer = answerOf(context, named, { between: '. ' });
  const each = laid.map(({ finish }): Named => ({ words: [], known: evidenceOf(context, finish) }));
  return answer === undefined ? undefined : { ...answer, mark: markOfNamed(context, each) };
}

const floors: AnswerOf = (context) =>
  inShort(
    materials(context, 'floor'),
    `${laidOn(context, 'floor').length} floors`,
    'Rooms and finishes',
    'rooms',
  );

/** By level, and the rooms that differ; a sloped one is told with its room. */
function ceilings(context: Context): Answer | undefined {
  const { levels, rooms } = context.house;
  const named = [
    ...levels.flatMap((level): Named[] =>
      level.ceiling === undefined
        ? []
        : [{ words: about(level.name, 'rooms', printLength(level.ceiling)), known: level }],
    ),
    ...rooms.flatMap((room): Named[] =>
      room.ceiling === undefined
        ? []
        : [
            {
              words: about(
                placeName(context, room.id),
                `room-${room.id}`,
                'units' in room.ceiling
                  ? printLength(room.ceiling)
                  : room.ceiling.highest === undefined
                    ? 'sloped'
                    : `sloped, ${printLength(room.ceiling.highest)} at its highest`,
              ),
              known: room,
            },
          ],
    ),
  ];
  return answerOf(context, named, { between: '. ' });
}

/** What was done in rooms of these uses, each with its date. */
const doneIn =
  (uses: RegExp): AnswerOf =>
  (context) => {
    const rooms = new Set(context.house.rooms.filter(({ use }) => uses.test(use)).map(({ id }) => id));
    if (rooms.size === 0) return undefined;
    const done = toldByThemselves(context.tally.improvements).filter((one) =>
      one.where.some((id) => rooms.has(id)),
    );
    const { few, more } = fewOf(done, 12);
    const answer = answerOf(
      context,
      few.map(
        (one): Named => ({
          words: about(
            subjectOf(one),
            `done-${one.id}`,
            `${one.did}, ${one.done === undefined ? 'date not known' : printDate(one.done)}`,
          ),
          known: evidenceOf(context, one.source.item),
        }),
      ),
      { between: '. ', after: more },
    );
    return inShort(answer, `${done.length} things`, 'What was done', 'what-was-done');
  };

/** "Electrical: by Ridge Street Electric (4), by the owner (1)." */
function whoByTrade(context: Context): Answer | undefined {
  const all = toldByThemselves(context.tally.improvements);
  const named = TRADES.flatMap((trade): Named[] => {
    const list = all.filter((one) => one.trade === trade);
    return list.length === 0
      ? []
      : [{ words: rich(`${upperFirst(trade)}: ${handsOf(context, list)}`), known: { evidence: [] } }];
  });
  const answer = answerOf(context, named, { between: '. ' });
  const each = all.map(
    (one): Named => ({
      words: [],
      known: evidenceOf(context, one.source.item),
      isKnown: one.who.kind !== 'not-known',
    }),
  );
  const marked = answer === undefined ? undefined : { ...answer, mark: markOfNamed(context, each) };
  return inShort(marked, `${named.length} trades`, 'What was done', 'what-was-done');
}

function handsOf(context: Context, list: readonly Improvement[]): string {
  const hands = new Map<string, number>();
  for (const { who } of list) {
    const words = whoShort(context, who);
    hands.set(words, (hands.get(words) ?? 0) + 1);
  }
  return [...hands].map(([who, count]) => `${who} (${count})`).join(', ');
}

export const INSIDE_ANSWERED = {
  floors,
  counters: (context) => materials(context, 'counter'),
  ceilings,
  'kitchen-work': doneIn(/kitchen/),
  'bath-work': doneIn(/bath/),
  'who-by-trade': whoByTrade,
} satisfies Record<string, AnswerOf>;
