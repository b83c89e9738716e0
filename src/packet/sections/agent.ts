/** The improvements sheet: two to four pages for the listing agent and the appraiser. */
import type { SystemAge } from '../../tally/ages.js';
import { type Improvement, toldByThemselves } from '../../tally/improvements.js';
import { TRADES } from '../../tally/trades.js';
import { ageWords, datesWords, isAsked } from '../age-words.js';
import { columns } from '../columns.js';
import { type Context, photoAnchor, photoIn, placeName } from '../context.js';
import { evidenceOf, markOf, markOfSeveral } from '../marks.js';
import type { Block, Rich, Section } from '../packet.js';
import { fullStop, inWords, rich, soft, strong, upperFirst } from '../rich.js';
import { sizePlans } from '../size-plans.js';
import { datesSpan, finishWords, permitState, placeBehind, subjectOf, whoWords } from '../tell.js';
import { conveyedThings, dues } from './conveys-and-dues.js';
import { markOfAge } from './how-old.js';
import { SHOWS_FRONT } from './in-short.js';
import { classesTable, declarationInShort, readings, record } from './size.js';

/** All improvements by trade. The same thing done in several rooms by the same hands is one line. */
export function improvementsByTrade(context: Context): Section {
  const improvements = toldByThemselves(context.tally.improvements);
  const blocks = TRADES.flatMap((trade): Block[] => {
    const list = improvements.filter((one) => one.trade === trade);
    if (list.length === 0) return [];
    const slug = trade.replaceAll(' ', '-');
    return [
      { kind: 'heading', id: `trade-${slug}`, level: 3, text: upperFirst(trade) },
      {
        kind: 'list',
        id: `trade-${slug}-list`,
        items: alike(context, list).map((group) => ({
          id: `improvement-${(group[0] as Improvement).id}`,
          text: group.length === 1 ? oneText(context, group[0] as Improvement) : groupText(context, group),
          mark:
            group.length === 1
              ? markOf(context, evidenceOf(context, (group[0] as Improvement).source.item))
              : markOfSeveral(
                  context,
                  group.map((one) => evidenceOf(context, one.source.item)),
                ),
        })),
      },
    ];
  });
  if (blocks.length === 0)
    blocks.push({
      kind: 'paragraph',
      id: 'improvements-none',
      size: 'body',
      text: rich('No improvement is recorded.'),
    });
  return { id: 'improvements', title: 'Improvements by trade', blocks };
}

function alike(context: Context, list: readonly Improvement[]): Improvement[][] {
  const groups = new Map<string, Improvement[]>();
  for (const one of list) {
    const key =
      one.source.kind === 'finish'
        ? JSON.stringify([
            one.did,
            whoWords(context, one.who),
            one.source.item.on === 'floor' ? one.source.item.what : one.trade,
          ])
        : one.id;
    groups.set(key, [...(groups.get(key) ?? []), one]);
  }
  return [...groups.values()];
}

const placesOf = (context: Context, list: readonly Improvement[]): string =>
  inWords([...new Set(list.flatMap((one) => one.where))].map((id) => placeName(context, id).toLowerCase()));

function groupText(context: Context, group: readonly Improvement[]): Rich {
  const [first] = group as [Improvement];
  const subjects = inWords([...new Set(group.map((one) => subjectOf(one).toLowerCase()))]);
  const what =
    first.source.kind === 'finish' && first.source.item.on === 'floor'
      ? ` ${upperFirst(first.source.item.what)}:`
      : '';
  return rich(
    strong(`${upperFirst(subjects)} ${first.did}.`),
    `${what} ${upperFirst(placesOf(context, group))}. ${upperFirst(datesSpan(group))}, ${whoWords(context, first.who)}.`,
  );
}

function oneText(context: Context, one: Improvement): Rich {
  const { source } = one;
  const body =
    source.kind === 'work'
      ? source.item.how
      : source.kind === 'finish'
        ? finishWords(source.item)
        : undefined;
  const permit = context.house.permits.find((each) => each.id === source.item.permit);
  const place = placeBehind(context, one);
  return rich(
    strong(`${subjectOf(one)}, ${one.did}`),
    `${place}. `,
    body === undefined || body === '' ? undefined : `${upperFirst(fullStop(body))} `,
    `${upperFirst(datesSpan([one]))}, ${whoWords(context, one.who)}`,
    permit === undefined ? '.' : `; permit ${permitState(permit)}.`,
  );
}

/** Points: half a page is left for the rest of the section. */
const HIGHEST_PLAN = 300;

/** The main level's plan only, to its own scale: the sheet is short. */
export function sheetSize(context: Context): Section {
  const { areas } = context.tally;
  const largest = [...areas.levels].sort((a, b) =>
    Number(b.byClass['above-finished'] - a.byClass['above-finished']),
  )[0];
  const plan = largest === undefined ? [] : sizePlans(context, [largest], HIGHEST_PLAN);
  return {
    id: 'size',
    title: 'Size',
    blocks: [
      classesTable(context, 'classes only'),
      ...declarationInShort(context),
      ...readings(context),
      ...record(context),
      ...plan,
    ],
  };
}

/** What buyers ask the age of; the rest is named in one line, and stands in full in the buyer packet. */
export function sheetAges(context: Context): Section {
  const { ages } = context.tally;
  if (ages.length === 0)
    return {
      id: 'ages',
      title: 'Systems and appliances',
      blocks: [
        {
          kind: 'paragraph',
          id: 'ages-none',
          size: 'body',
          text: rich('No system or appliance is described.'),
        },
      ],
    };
  const asked = ages.filter((age) => isAsked(age.system));
  const others = ages
    .filter((age) => !asked.includes(age))
    .map((age) => `${(age.system.name ?? age.system.is).toLowerCase()} (${ageWords(age)})`);
  return {
    id: 'ages',
    title: 'Systems and appliances',
    blocks: [
      {
        kind: 'list',
        id: 'ages-list',
        items: asked.map((age) => ({
          id: `age-${age.system.id}`,
          text: ageText(age),
          mark: markOfAge(context, age),
        })),
      },
      ...(others.length === 0
        ? []
        : [
            {
              kind: 'paragraph',
              id: 'ages-others',
              size: 'small',
              text: rich(`Also described: ${others.join('; ')}.`),
            } satisfies Block,
          ]),
    ],
  };
}

export function ageText(age: SystemAge): Rich {
  const name = upperFirst(age.system.name ?? age.system.is);
  if (age.age === undefined)
    return rich(strong(name), age.system.kept ? soft(', as found') : undefined, ': age not known.');
  return rich(
    strong(name),
    age.system.kept ? soft(', as found') : undefined,
    `: ${ageWords(age)}, ${datesWords(age)}.`,
  );
}

/** More facts than these make the appraiser's table unreadable. */
const MOST_FACTS = 2;

/** The appraiser's words for kitchens and baths, as a suggestion with the facts that led to it. */
export function updateClasses(context: Context): Section {
  const list = context.tally.updates;
  const blocks: Block[] =
    list.length === 0
      ? [
          {
            kind: 'paragraph',
            id: 'updates-none',
            size: 'body',
            text: rich('No kitchen or bath is described.'),
          },
        ]
      : [
          {
            kind: 'table',
            id: 'updates-table',
            caption: 'Kitchen and baths, sorted into the appraiser’s words',
            columns: columns(['Room', 16], ['Suggested', 34], ['Among the facts that led to it', 50]),
            rows: list.map((one) => ({
              id: one.id,
              cells: [
                rich(one.name),
                rich(
                  `${one.word}${one.alsoPossible.length === 0 ? '' : ` (or ${one.alsoPossible.join(' or ')})`}${one.timeFrames.length === 0 ? '' : `, ${one.timeFrames.join(' or ')}`}`,
                ),
                rich(
                  one.facts.length === 0
                    ? 'no update is recorded'
                    : one.facts.slice(0, MOST_FACTS).join('; '),
                  one.facts.length > MOST_FACTS ? `; ${one.facts.length - MOST_FACTS} more` : undefined,
                ),
              ],
            })),
            note: rich(list[0]?.decides),
          },
        ];
  return { id: 'updates', title: 'Updates, for the appraiser', blocks };
}

/** What stays, what goes and what is open, a line each. `most` of each are named. */
export function termLines(context: Context, most = Number.POSITIVE_INFINITY): Block[] {
  const things = conveyedThings(context);
  const line = (id: string, head: string, stays: 'yes' | 'no' | 'not known'): Block[] => {
    const list = things.filter((thing) => thing.stays === stays).map((thing) => thing.what.toLowerCase());
    if (list.length === 0) return [];
    const more = list.length > most ? ` and ${list.length - most} more` : '';
    return [
      {
        kind: 'statement',
        id,
        size: 'body',
        text: rich(strong(`${head}: `), `${list.slice(0, most).join(', ')}${more}.`),
        mark: markOf(context, { evidence: [] }, stays !== 'not known'),
      },
    ];
  };
  return [
    ...line('terms-stays', 'Stays', 'yes'),
    ...line('terms-goes', 'Goes', 'no'),
    ...line('terms-open', 'Not settled', 'not known'),
  ];
}

export function sheetTerms(context: Context): Section {
  const blocks = [...termLines(context), ...dues(context)];
  return {
    id: 'terms',
    title: 'What stays, and dues',
    blocks:
      blocks.length > 0
        ? blocks
        : [
            {
              kind: 'paragraph',
              id: 'terms-none',
              size: 'body',
              text: rich('Nothing is written about what stays.'),
            },
          ],
  };
}

/** Two photos: the front, and one room after the work. */
export function sheetPhotos(context: Context): Block[] {
  const after = Object.entries(context.house.photos)
    .filter(([, photo]) => photo.when === 'after')
    .map(([id]) => photoIn(context, id))
    .filter((photo) => photo !== undefined && photo.width >= photo.height);
  const front = after.find((photo) => photo !== undefined && SHOWS_FRONT.test(photo.shows)) ?? after[0];
  const room =
    after.find((photo) => photo !== front && photo !== undefined && /kitchen|living/i.test(photo.shows)) ??
    after.find((photo) => photo !== front);
  const shown = [front, room].filter((photo) => photo !== undefined);
  if (shown.length < 2) return [];
  return [
    {
      kind: 'photos',
      form: 'row',
      id: 'sheet-photos',
      photos: shown.map((photo) => ({
        id: photoAnchor(context, photo.id),
        photo: photo.id,
        caption: rich(upperFirst(photo.shows)),
      })),
    },
  ];
}
