/** The improvements sheet: two to four pages for the listing agent and the appraiser. */
import { printDate } from '../../facts/date.js';
import { TRADES } from '../../tally/trades.js';
import { ageWords, datesWords } from '../age-words.js';
import { type Context, photoIn, placeName } from '../context.js';
import { markOf } from '../marks.js';
import type { Block, Section } from '../packet.js';
import { inWords, rich, strong, upperFirst } from '../rich.js';
import { deedWords, finishWords, permitState, subjectOf, systemWords, whoWords } from '../tell.js';
import { markOfAge } from './how-old.js';
import { conveys, dues } from './questions.js';
import { classesTable, declaration, plans, record } from './size.js';

/** All improvements by trade, one line each. */
export function improvementsByTrade(context: Context): Section {
  const { improvements } = context.tally;
  const blocks = TRADES.flatMap((trade): Block[] => {
    const list = improvements.filter((one) => one.trade === trade);
    if (list.length === 0) return [];
    return [
      {
        kind: 'table',
        id: `trade-${trade.replaceAll(' ', '-')}`,
        caption: upperFirst(trade),
        columns: [
          { title: 'What', align: 'left', weight: 48 },
          { title: 'Where', align: 'left', weight: 20 },
          { title: 'When and by whom', align: 'left', weight: 32 },
        ],
        rows: list.map((one) => {
          const { source } = one;
          const body =
            source.kind === 'work'
              ? source.item.how
              : source.kind === 'finish'
                ? finishWords(source.item)
                : systemWords(source.item);
          const permit = context.house.permits.find((each) => each.id === source.item.permit);
          return {
            id: `improvement-${one.id}`,
            cells: [
              rich(
                strong(`${subjectOf(one)}, ${deedWords(one.did)}`),
                body === undefined || body === '' ? undefined : `. ${upperFirst(body)}`,
              ),
              rich(
                one.where.length === 0
                  ? 'whole house'
                  : inWords(one.where.map((id) => placeName(context, id).toLowerCase())),
              ),
              rich(
                `${one.done === undefined ? 'date not known' : printDate(one.done)}, ${whoWords(context, one.who)}${permit === undefined ? '' : `; permit ${permitState(permit)}`}`,
              ),
            ],
            mark: markOf(context, source.item),
          };
        }),
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

export function sheetSize(context: Context): Section {
  const [plan] = plans(context);
  return {
    id: 'size',
    title: 'Size',
    blocks: [
      classesTable(context),
      ...declaration(context),
      ...record(context),
      ...(plan === undefined ? [] : [plan]),
    ],
  };
}

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
  return {
    id: 'ages',
    title: 'Systems and appliances',
    blocks: [
      {
        kind: 'table',
        id: 'age-list',
        caption: 'Dates and ages',
        columns: [
          { title: 'What', align: 'left', weight: 42 },
          { title: 'Date', align: 'left', weight: 34 },
          { title: 'Age', align: 'left', weight: 24 },
        ],
        rows: ages.map((age) => ({
          id: `age-${age.system.id}`,
          cells: [
            rich(upperFirst(age.system.name ?? age.system.is), age.system.kept ? ', as found' : undefined),
            rich(datesWords(age)),
            rich(ageWords(age)),
          ],
          mark: markOfAge(context, age),
        })),
      },
    ],
  };
}

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
            id: 'updates',
            caption: 'Kitchen and baths, sorted into the appraiser’s words',
            columns: [
              { title: 'Room', align: 'left', weight: 20 },
              { title: 'Suggested', align: 'left', weight: 30 },
              { title: 'From these facts', align: 'left', weight: 50 },
            ],
            rows: list.map((one) => ({
              id: one.id,
              cells: [
                rich(one.name),
                rich(
                  `${one.word}${one.alsoPossible.length === 0 ? '' : ` (or ${one.alsoPossible.join(' or ')})`}${one.timeFrames.length === 0 ? '' : `, ${one.timeFrames.join(' or ')}`}`,
                ),
                rich(one.facts.length === 0 ? 'no update is recorded' : one.facts.join('; ')),
              ],
            })),
            note: rich(list[0]?.decides),
          },
        ];
  return { id: 'updates', title: 'Updates, for the appraiser', blocks };
}

export function sheetTerms(context: Context): Section {
  const stays = [...conveys(context), ...dues(context)];
  return {
    id: 'terms',
    title: 'What stays, and dues',
    blocks:
      stays.length > 0
        ? stays
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

/** Four photos after the work, if there are as many. */
export function sheetPhotos(context: Context): Block[] {
  const after = Object.entries(context.house.photos)
    .filter(([, photo]) => photo.when === 'after')
    .map(([id]) => photoIn(context, id))
    .filter((photo) => photo !== undefined && photo.width >= photo.height)
    .slice(0, 4);
  if (after.length < 2) return [];
  return [
    {
      kind: 'photos',
      id: 'sheet-photos',
      photos: after.flatMap((photo) =>
        photo === undefined
          ? []
          : [{ id: `photo-${photo.id}`, photo: photo.id, caption: rich(upperFirst(photo.shows)) }],
      ),
    },
  ];
}
