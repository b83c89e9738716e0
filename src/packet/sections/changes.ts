/**
 * What changed since a packet was given to somebody, for whoever holds both.
 *
 * Published editions name that packet by its day and digest, never by who got it, and of what is no longer said they
 * tell the number alone. The house file tells both.
 */
import {
  aboutOf,
  CHANGES_PREFIX,
  CHANGES_SECTION,
  type ChangesSince,
  DELIVERIES_SECTION,
  nothingChanged,
  restOf,
  type ToldOtherwise,
} from '../changes-since.js';
import { columns } from '../columns.js';
import type { Context } from '../context.js';
import { cutWords } from '../cut-words.js';
import { isoDate } from '../date-words.js';
import { EDITIONS } from '../edition-house.js';
import { type SaidFact, saidIn } from '../facts-file.js';
import type { Block, Section, TableBlock } from '../packet.js';
import { counted, fullStop, inWords, link, rich, soft, strong, upperFirst } from '../rich.js';
import { whereTheyDiffer } from '../where-they-differ.js';
import { correctedTable } from './corrected-table.js';

/** Longer texts are told by the words that differ. */
const LONGEST = 100;
/** New statements of one section that are told; of more, how many they are. */
const MOST_ADDED = 30;

/**
 * Puts the changes among the sections: of a published edition near the front if a fact was corrected, else before the
 * last. Nothing is added where nothing changed, so that a packet made again right after it was given is the same.
 */
export function withChanges(
  context: Context,
  all: readonly ChangesSince[],
  sections: readonly Section[],
): Section[] {
  if (context.rules.everything) {
    const own = deliveries(context, all, sections);
    return [...sections.slice(0, -1), ...own, ...sections.slice(-1)];
  }
  const since = all.filter((one) => !nothingChanged(one));
  // One leaf has no room for it, and visitors hold no earlier one.
  if (since.length === 0 || context.rules.arrangement === 'two-sides') return [...sections];
  const section: Section = {
    id: CHANGES_SECTION,
    title: 'Changes since earlier deliveries',
    blocks: alike(since).flatMap((group, n) =>
      changesOf(context, group, `${CHANGES_PREFIX}${n + 1}`, sections),
    ),
  };
  const corrected = since.some((one) => one.corrections.length > 0);
  const at = corrected ? 1 : Math.max(1, sections.length - 1);
  return [...sections.slice(0, at), section, ...sections.slice(at)];
}

/** The house file's own: who was given what, and what is told otherwise by now. */
function deliveries(context: Context, all: readonly ChangesSince[], sections: readonly Section[]): Section[] {
  if (all.length === 0) return [];
  const list: TableBlock = {
    kind: 'table',
    id: `${CHANGES_PREFIX}given`,
    caption: 'Packets that were given',
    columns: columns(['Given', 15], ['To', 28], ['Packet', 20], ['Digest', 17], ['Since then', 20]),
    rows: all.map((one) => ({
      id: `${CHANGES_PREFIX}given-${one.delivered.number}`,
      cells: [
        rich(isoDate(one.delivered.given)),
        rich(
          one.delivered.to.join(', '),
          one.delivered.note === undefined ? undefined : soft(` (${one.delivered.note})`),
        ),
        rich(`${EDITIONS[one.delivered.edition].title}, as of ${isoDate(one.delivered.said.asOf)}`),
        rich({ text: one.delivered.said.digest, verbatim: true }),
        rich(inShort(one)),
      ],
    })),
    note: rich('They lie as they were given in the folder deliveries, with a digest of each file.'),
  };
  const since = all.filter((one) => !nothingChanged(one));
  return [
    {
      id: DELIVERIES_SECTION,
      title: 'Deliveries',
      blocks: [
        list,
        ...alike(since).flatMap((group, n) =>
          changesOf(context, group, `${CHANGES_PREFIX}${n + 1}`, sections),
        ),
      ],
    },
  ];
}

function inShort(one: ChangesSince): string {
  if (nothingChanged(one)) return 'nothing changed';
  const parts = [
    one.told.length > 0 && `${one.told.length} told otherwise`,
    one.added.length > 0 && `${one.added.length} new`,
    one.gone.length > 0 && `${one.gone.length} no longer told`,
  ].filter((part) => part !== false);
  return parts.length === 0 ? 'pictures, papers or headings' : parts.join(', ');
}

/** Packets since which the same things changed are told of together. */
function alike(all: readonly ChangesSince[]): (readonly [ChangesSince, ...ChangesSince[]])[] {
  const groups = new Map<string, [ChangesSince, ...ChangesSince[]]>();
  for (const one of all) {
    const { delivered, told, added, ...rest } = one;
    const key = JSON.stringify([
      delivered.edition,
      { ...rest, corrections: rest.corrections.map(({ words }) => words) },
      told.map(({ correction, now, ...words }) => [words, correction?.words]),
      added.map(({ fact }) => fact),
    ]);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [one]);
    else group.push(one);
  }
  return [...groups.values()];
}

function changesOf(
  context: Context,
  group: readonly [ChangesSince, ...ChangesSince[]],
  id: string,
  sections: readonly Section[],
): Block[] {
  const [one] = group;
  const days = [...new Set(group.map(({ delivered }) => isoDate(delivered.said.asOf)))];
  const read = days.length === 1 ? `both read as of ${days[0]}` : 'each time read as of the earlier day';
  return [
    { kind: 'heading', id: `${id}-since`, level: 3, text: `Since ${inWords(namesOf(context, group))}` },
    {
      kind: 'paragraph',
      id: `${id}-read`,
      size: 'small',
      text: rich(
        `${digests(context, group)} What it said is held against the same facts as they are now, ${read}, so that what merely grew older is not listed.`,
        one.otherProgram
          ? ' Another version of the program made it: where words differ and the fact does not, that is why.'
          : undefined,
      ),
    },
    ...corrections(context, one, id),
    ...told(context, one, id),
    ...added(one, id, sections),
    ...gone(context, one, id),
    ...counts(context, one, id),
  ];
}

/** "the packet of 12 June 2026"; in the house file with its edition and who got it. */
function namesOf(context: Context, group: readonly ChangesSince[]): string[] {
  if (!context.rules.everything)
    return [...new Set(group.map(({ delivered }) => `the packet of ${isoDate(delivered.given)}`))];
  return group.map(
    ({ delivered }) =>
      `the ${EDITIONS[delivered.edition].title.toLowerCase()} given to ${inWords(delivered.to)} on ${isoDate(delivered.given)}`,
  );
}

function digests(context: Context, group: readonly ChangesSince[]): string {
  const all = [...new Set(group.map(({ delivered }) => delivered.said.digest))];
  const whose = context.rules.everything ? 'Its' : 'That packet’s';
  return all.length === 1
    ? `${whose} digest, at the foot of its sheets, is ${all[0]}.`
    : `Their digests, at the foot of their sheets, are ${inWords(all)}.`;
}

function corrections(context: Context, { corrections: list }: ChangesSince, id: string): Block[] {
  if (list.length === 0) return [];
  return [
    correctedTable(context, list, {
      id: `${id}-corrected`,
      row: `${id}-corrected`,
      caption: 'Corrected: it was wrong in that packet',
      titles: ['It said', 'So it is'],
    }),
  ];
}

/** One table for each section, in the packet's order. */
function told(context: Context, { told: list }: ChangesSince, id: string): Block[] {
  return bySection(list, ({ section }) => section).map(([section, group], n) => ({
    kind: 'table',
    id: `${id}-told-${n + 1}`,
    caption: `Told otherwise under “${section}”`,
    columns: columns(['What', 26], ['It said', 37], ['It says now', 37]),
    rows: group.map((one, row) => {
      const [was, is] = sideBySide(context.rules.everything ? { ...one, was: one.oldWords } : one);
      return {
        id: `${id}-told-${n + 1}-${row + 1}`,
        cells: [
          rich(
            link(upperFirst(one.about), one.id),
            one.correction === undefined ? undefined : soft(' (corrected)'),
          ),
          was,
          is,
        ],
        ...(one.mark === undefined ? {} : { mark: one.mark }),
      };
    }),
  }));
}

function sideBySide({ was, oldWords, is, wasKnown }: ToldOtherwise) {
  if (wasKnown !== undefined)
    return [rich(soft(`the same, known by: ${wasKnown.toLowerCase()}`)), rich(shortOf(is))] as const;
  // Of a long text those of the new words that took the place of others.
  if (was === undefined) {
    const now = is.length > LONGEST ? whereTheyDiffer(oldWords, is)[1] : is;
    return [rich(soft('other words')), rich(now === '' ? soft('nothing') : now)] as const;
  }
  const [before, after] =
    was.length > LONGEST || is.length > LONGEST ? whereTheyDiffer(was, is) : ([was, is] as const);
  return [
    rich(before === '' ? soft('nothing') : before),
    rich(after === '' ? soft('nothing') : after),
  ] as const;
}

const behind = (words: string): string => (words === '' ? '' : ` ${words}`);

const shortOf = (words: string): string => cutWords(words, LONGEST);

/** In the present packet's own words, where it has them: ages in them are counted to its own day. */
function added({ added: list }: ChangesSince, id: string, sections: readonly Section[]): Block[] {
  if (list.length === 0) return [];
  const present = new Map(sections.flatMap((one) => saidIn(one, new Map())).map((fact) => [fact.id, fact]));
  const asItIs = (fact: SaidFact): SaidFact => {
    const one = present.get(fact.id);
    return one !== undefined && one.about === fact.about && one.section === fact.section ? one : fact;
  };
  const groups = bySection(
    list.map(({ fact, mark }) => ({ fact: asItIs(fact), mark })),
    ({ fact }) => fact.section,
  );
  return groups.flatMap(([section, group], n): Block[] => {
    const shown = group.slice(0, MOST_ADDED);
    const more = group.length - shown.length;
    const home = sections.find(({ title }) => title === section)?.id;
    return [
      { kind: 'heading', id: `${id}-new-${n + 1}`, level: 4, text: `New under “${section}”` },
      {
        kind: 'list',
        id: `${id}-new-${n + 1}-list`,
        items: shown.map(({ fact, mark }, item) => ({
          id: `${id}-new-${n + 1}-${item + 1}`,
          text: rich(link(fullStop(upperFirst(aboutOf(fact))), fact.id), behind(shortOf(restOf(fact)))),
          ...(mark === undefined ? {} : { mark }),
        })),
      },
      ...(more <= 0
        ? []
        : [
            {
              kind: 'paragraph',
              id: `${id}-new-${n + 1}-more`,
              size: 'small',
              text: rich(
                'And ',
                home === undefined
                  ? counted(more, 'more statement')
                  : link(counted(more, 'more statement'), home),
                ' there.',
              ),
            } satisfies Block,
          ]),
    ];
  });
}

/** Their words may have been withheld since: only their owner reads them again. */
function gone(context: Context, { gone: list }: ChangesSince, id: string): Block[] {
  if (list.length === 0 || !context.rules.everything) return [];
  return [
    { kind: 'heading', id: `${id}-gone`, level: 4, text: 'No longer told' },
    {
      kind: 'list',
      id: `${id}-gone-list`,
      items: list.map((fact, n) => ({
        id: `${id}-gone-${n + 1}`,
        text: rich(strong(fullStop(upperFirst(aboutOf(fact)))), behind(shortOf(restOf(fact)))),
      })),
    },
  ];
}

function counts(context: Context, one: ChangesSince, id: string): Block[] {
  const { pictures, gone: noMore, otherPapers, movedTo, drawings, head } = one;
  const sentences = [
    noMore.length > 0 &&
      !context.rules.everything &&
      `${upperFirst(counted(noMore.length, 'statement'))} of that packet ${noMore.length === 1 ? 'is' : 'are'} not in this one.`,
    otherPapers > 0 &&
      `${upperFirst(counted(otherPapers, 'statement'))} ${otherPapers === 1 ? 'says' : 'say'} the same and ${otherPapers === 1 ? 'rests' : 'rest'} on other papers or photos.`,
    movedTo.length > 0 &&
      `What stands under ${inWords(movedTo.map((title) => `“${title}”`))} stood under another heading or in another place.`,
    pictures.added > 0 && `${upperFirst(counted(pictures.added, 'photo is', 'photos are'))} new.`,
    pictures.exchanged > 0 &&
      `${upperFirst(counted(pictures.exchanged, 'photo is', 'photos are'))} another picture or ${pictures.exchanged === 1 ? 'has' : 'have'} other words.`,
    pictures.gone > 0 && `${upperFirst(counted(pictures.gone, 'photo is', 'photos are'))} no longer shown.`,
    drawings > 0 &&
      `${upperFirst(counted(drawings, 'drawing was', 'drawings were'))} made anew from these facts.`,
    head.length > 0 && `At the head of the packet, ${inWords(head.map(({ about }) => about))} changed.`,
  ].filter((sentence) => sentence !== false);
  if (sentences.length === 0) return [];
  return [{ kind: 'paragraph', id: `${id}-more`, size: 'small', text: rich(sentences.join(' ')) }];
}

function bySection<T>(list: readonly T[], sectionOf: (one: T) => string): [string, T[]][] {
  const groups = new Map<string, T[]>();
  for (const one of list) groups.set(sectionOf(one), [...(groups.get(sectionOf(one)) ?? []), one]);
  return [...groups];
}
