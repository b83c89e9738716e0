/** What was done, by whom, why and under which permit; what was left. */
import { printDate } from '../../facts/date.js';
import type { Permit } from '../../facts/house.js';
import { type Improvement, PUT_IN, toldByThemselves } from '../../tally/improvements.js';
import type { Trade } from '../../tally/trades.js';
import type { Context } from '../context.js';
import { evidenceOf } from '../marks.js';
import { counted, fullStop, link, lowerFirst, rich, say, upperFirst } from '../rich.js';
import { permitState, subjectOf, whoWords } from '../tell.js';
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
import { conditionsLike, workLike } from './mentioned.js';

/** What is told by itself; walls and floors have their own pages. */
const things = ({ tally }: Context): Improvement[] =>
  toldByThemselves(tally.improvements).filter((one) => one.source.kind !== 'finish');

const yearOf = ({ done }: Improvement): string => {
  if (done === undefined) return 'date not known';
  const { earliest, latest } = done;
  const [from, to] = [earliest?.slice(0, 4), latest?.slice(0, 4)];
  return from !== undefined && from === to && !done.about ? from : printDate(done);
};

/** Put in since this owner bought it; what an earlier one added is not new, whenever it was found out. */
const sinceBought = ({ house }: Context, { done }: Improvement): boolean => {
  const bought = house.house.bought?.earliest;
  return (
    done?.earliest !== undefined && (bought === undefined || done.earliest >= `${bought.slice(0, 7)}-01`)
  );
};

/** "Range (made about 2021)": what was put in this year may be older than that. */
function freshName(one: Improvement): string {
  const name = lowerFirst(subjectOf(one));
  if (one.source.kind !== 'system') return name;
  const made = one.source.item.made?.value;
  const year = one.done?.earliest?.slice(0, 4);
  return made === undefined || made.earliest?.slice(0, 4) === year
    ? name
    : `${name} (made ${printDate(made)})`;
}

/** What was put in or replaced, by year, newest first; all else is not called new. */
function whatsNew(context: Context): Answer | undefined {
  const fresh = things(context).filter((one) => PUT_IN.includes(one.did) && sinceBought(context, one));
  if (fresh.length === 0) return undefined;
  const years = new Map<string, Improvement[]>();
  for (const one of fresh) years.set(yearOf(one), [...(years.get(yearOf(one)) ?? []), one]);
  const named = [...years]
    .sort(([a], [b]) => (a < b ? 1 : -1))
    .map(
      ([year, list]): Named => ({
        words: rich(
          `${upperFirst(year)}: `,
          ...list.flatMap((one, index) => [
            ...(index === 0 ? [] : [say('; ')]),
            link(freshName(one), `done-${one.id}`),
          ]),
        ),
        known: { evidence: [] },
      }),
    );
  const answer = answerOf(context, named, {
    before: 'Put in or replaced by this owner.',
    between: '. ',
    after: 'What is not named here is not called new.',
  });
  const each = fresh.map((one): Named => ({ words: [], known: evidenceOf(context, one.source.item) }));
  return answer === undefined ? undefined : { ...answer, mark: markOfNamed(context, each) };
}

/** In full under “Left as found”, and there with what is known of each. */
const leftAsFound: AnswerOf = (context) =>
  inShort(keptWords(context), `${context.tally.kept.length} of them`, 'Left as found', 'kept-list');

function keptWords(context: Context): Answer | undefined {
  const { kept } = context.tally;
  const systems = kept.flatMap(({ id, source }) =>
    source.kind === 'system'
      ? [{ words: [link(lowerFirst(source.item.name ?? source.item.is), `kept-${id}`)], known: source.item }]
      : [],
  );
  const surfaces = kept.length - systems.length;
  const more =
    surfaces === 0
      ? undefined
      : `${upperFirst(counted(surfaces, 'surface', 'surfaces'))} besides, by room under “Left as found”.`;
  if (systems.length > 0)
    return answerOf(context, systems, { before: 'Of systems and appliances:', between: '; ', after: more });
  return surfaces === 0
    ? undefined
    : {
        text: rich(more),
        mark: markOfNamed(
          context,
          kept.map(({ source }) => ({ words: [], known: source.item })),
        ),
      };
}

const knownDefects: AnswerOf = (context) => {
  const known = conditionsLike(context, /./);
  const answer = answerOf(context, known, { between: '. ', after: 'More may be there than was seen.' });
  return inShort(answer, `${known.length} of them`, 'Left as found', 'conditions');
};

/** A permit, or the finding that there is none. */
const permitNamed = (permit: Permit): Named => ({
  words: about(
    permit.number === undefined ? upperFirst(permit.what ?? 'permit') : permit.number,
    `paper-${permit.id}`,
    [permit.number === undefined ? undefined : permit.what, permitState(permit), permit.note]
      .filter(Boolean)
      .join(', '),
  ),
  known: permit,
  isKnown: permit.state !== 'not-known',
});

const permits: AnswerOf = (context) => {
  const list = context.house.permits;
  const answer = answerOf(context, list.map(permitNamed), {
    between: '. ',
    after: 'Whether other work called for one is for the building office to say.',
  });
  const final = list.filter(({ state }) => state === 'final').length;
  return inShort(answer, `${list.length} on record, ${final} of them final`, 'Papers', 'permits');
};

function openPermits(context: Context): Answer | undefined {
  const list = context.house.permits;
  const open = list.filter(({ state }) => state === 'open' || state === 'expired');
  if (open.length > 0) return answerOf(context, open.map(permitNamed), { between: '. ' });
  const final = list.filter(({ state }) => state === 'final');
  if (final.length === 0) return undefined;
  return {
    text: rich(
      `None of the ${final.length === 1 ? 'one permit' : `${final.length} permits`} on record with a final is open. Whether there are others is for the building office to say.`,
    ),
    mark: markOfNamed(context, final.map(permitNamed)),
  };
}

/** Trades in which a permit is asked for most often; common practice, no source. */
const OFTEN_PERMITTED: readonly Trade[] = [
  'roofing',
  'structure',
  'heating and cooling',
  'plumbing',
  'electrical',
  'pool',
];

function withoutPermit(context: Context): Answer | undefined {
  const none = context.house.permits.filter(({ state }) => state === 'none-found').map(permitNamed);
  const bare = things(context).filter(
    (one) =>
      OFTEN_PERMITTED.includes(one.trade) &&
      [...PUT_IN, 'moved'].includes(one.did) &&
      one.source.item.permit === undefined,
  );
  const unnamed = bare.map(
    (one): Named => ({
      words: [link(lowerFirst(subjectOf(one)), `done-${one.id}`)],
      known: evidenceOf(context, one.source.item),
    }),
  );
  const office = 'Whether one was called for is for the building office to say.';
  const named = answerOf(context, unnamed, {
    before: 'No permit is named in this record for:',
    between: '; ',
    after: office,
  });
  const found = answerOf(context, none, { between: '. ' });
  if (found === undefined || named === undefined) return found ?? named;
  return { text: rich(...found.text, ' ', ...named.text), mark: found.mark };
}

const HANDS: readonly Improvement['who']['kind'][] = ['owner', 'family', 'hired', 'not-known'];

/** By whom, with how many things each did. */
function whoDidIt(context: Context): Answer | undefined {
  const all = toldByThemselves(context.tally.improvements);
  const hands = new Map<string, Improvement[]>();
  for (const one of all) {
    const who = whoWords(context, one.who);
    hands.set(who, [...(hands.get(who) ?? []), one]);
  }
  const place = ([, [first]]: readonly [string, readonly Improvement[]]): number =>
    first === undefined ? HANDS.length : HANDS.indexOf(first.who.kind);
  const ordered = [...hands].sort((a, b) => place(a) - place(b));
  const named = ordered.map(
    ([who, list]): Named => ({
      words: rich(`${upperFirst(who)}: ${list.length} ${list.length === 1 ? 'thing' : 'things'}`),
      known: { evidence: [] },
      isKnown: !who.startsWith('by whom'),
    }),
  );
  const answer = answerOf(context, named, { between: '. ' });
  const each = all.map((one): Named => ({ words: [], known: evidenceOf(context, one.source.item) }));
  return answer === undefined ? undefined : { ...answer, mark: markOfNamed(context, each) };
}

const licensed: AnswerOf = (context) => {
  const { people } = context.house;
  const answer = answerOf(
    context,
    people.map(({ id, name, trade, licence }) => ({
      words: about(
        trade === undefined ? name : `${name} (${trade})`,
        `person-${id}`,
        licence?.value === undefined ? 'licence not known' : `licence as stated ${licence.value}`,
      ),
      known: { from: licence?.from, evidence: licence?.evidence ?? [] },
      isKnown: licence?.value !== undefined,
    })),
    {
      between: '. ',
      after: 'Licences were not checked; the state’s board can say whether one is in force.',
    },
  );
  const stated = people.filter(({ licence }) => licence?.value !== undefined).length;
  return inShort(
    answer,
    `${stated} of ${people.length} stated a licence, which was not checked`,
    'Papers',
    'people',
  );
};

/** What was put in or redone for a reason that nobody wrote down: that it is not known is told, too. */
function withoutReason(context: Context): string {
  const silent = things(context).flatMap((one) =>
    one.source.kind === 'work' && one.source.item.why === undefined && PUT_IN.includes(one.did)
      ? [lowerFirst(subjectOf(one))]
      : [],
  );
  return silent.length === 0 ? '' : `No reason is written down for: ${silent.join('; ')}.`;
}

function whyRedone(context: Context): Answer | undefined {
  const told = things(context).flatMap((one): Named[] =>
    one.source.kind === 'work' && one.source.item.why !== undefined
      ? [
          {
            words: about(subjectOf(one), `done-${one.id}`, one.source.item.why),
            known: evidenceOf(context, one.source.item),
          },
        ]
      : [],
  );
  const { few, more } = fewOf(told, 12);
  const answer = answerOf(context, few, {
    between: '. ',
    after: [more, withoutReason(context)].filter((one) => one !== '').join(' '),
  });
  return inShort(answer, `${told.length} reasons`, 'What was done', 'what-was-done');
}

function structural(context: Context): Answer | undefined {
  const changed = things(context).flatMap((one): Named[] =>
    one.source.kind === 'work' && one.source.item.structural
      ? [
          {
            words: about(
              subjectOf(one),
              `done-${one.id}`,
              [one.did, one.done && printDate(one.done), one.source.item.how].filter(Boolean).join(', '),
            ),
            known: evidenceOf(context, one.source.item),
          },
        ]
      : [],
  );
  return answerOf(context, changed, { between: '. ' });
}

const WET =
  /\b(damp|wet|flood(s|ed)?|seep(s|age|ed)?|moisture|standing water|water (mark|stain|line|comes?|came))\b/i;
const LEAK = /\b(leak(s|ed|ing)?|stain(s|ed)?|drip(s|ped|ping)|weeps?|wept|damp|rust(s|ed|y)?)\b/i;

const waterIn: AnswerOf = (context) => answerOf(context, conditionsLike(context, WET), { between: '. ' });

/** What is known and not mended, and what was mended because of it. */
function leaks(context: Context): Answer | undefined {
  const known = conditionsLike(context, LEAK);
  const mended = workLike(context, LEAK, 'with reason');
  const found = answerOf(context, known, { between: '. ' });
  const done = answerOf(context, mended, { before: 'Worked on:', between: '. ' });
  if (found === undefined || done === undefined) return found ?? done;
  return { text: rich(...found.text, ' ', ...done.text), mark: markOfNamed(context, [...known, ...mended]) };
}

function ownedSince(context: Context): Answer | undefined {
  const { bought, listed } = context.house.house;
  if (bought === undefined) return undefined;
  const offered = listed === undefined ? '' : ` Offered: ${printDate(listed)}.`;
  return {
    text: rich(`${fullStop(`Bought: ${printDate(bought)}`)}${offered}`),
    mark: markOfNamed(context, [{ words: [], known: { evidence: [] } }]),
  };
}

export const WORK_ANSWERED = {
  'whats-new': whatsNew,
  'left-as-found': leftAsFound,
  'known-defects': knownDefects,
  permits,
  'open-permits': openPermits,
  'no-permit': withoutPermit,
  'who-did-it': whoDidIt,
  licensed,
  'why-redone': whyRedone,
  structural,
  'water-in': waterIn,
  leaks,
  'owned-since': ownedSince,
} satisfies Record<string, AnswerOf>;
