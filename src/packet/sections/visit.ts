/**
 * The open-house sheet: one leaf that a visitor takes from the table or from the box at the sign.
 *
 * Chosen and short: of every list so many, what buyers ask about first before the rest, and how many more there are.
 * It names nobody, no serial number and no price. Words and marks are those of the other editions.
 */
import type { System } from '../../facts/house.js';
import { type Improvement, toldByThemselves } from '../../tally/improvements.js';
import { TRADES } from '../../tally/trades.js';
import { ASKED_FIRST, isAsked } from '../age-words.js';
import { collectFacts } from '../collect-facts.js';
import { columns } from '../columns.js';
import { type Context, placeName } from '../context.js';
import { drawQr } from '../draw-qr.js';
import { evidenceOf, markOf, markOfFact, markOfSeveral } from '../marks.js';
import type { Block, EvidenceMark, Rich, Section, TableRow } from '../packet.js';
import { fullStop, rich, soft, strong, upperFirst, verbatim } from '../rich.js';
import { datesSpan, placeBehind, subjectOf, whoWords } from '../tell.js';
import { ageText, termLines } from './agent.js';
import { markOfAge } from './how-old.js';
import { done, frontPhoto, keyFacts, lead, sizeMark } from './in-short.js';

/** The most of each list: with usual lengths both sides are full then, on letter and on A4. */
export const MOST = {
  renewed: 5,
  ages: 7,
  trades: 7,
  ofOneTrade: 3,
  conditions: 4,
  notKnown: 3,
  terms: 12,
} as const;

/** Side one is the first section, side two all others. */
export const visitSections = (context: Context): Section[] => [
  {
    id: 'at-a-glance',
    title: 'At a glance',
    blocks: [
      lead(context),
      ...[frontPhoto(context)].filter((block) => block !== undefined),
      ...code(context),
      factTable(context),
      ...renewed(context),
    ],
  },
  howOldShort(context),
  doneByTrade(context),
  leftShort(context),
  ...staysShort(context),
];

/** The address as a code and in words. On a page one is there already. */
function code({ house }: Context): Block[] {
  const address = house.house.web;
  if (address === undefined) return [];
  return [
    {
      kind: 'drawing',
      only: 'print',
      role: 'code',
      id: 'packet-address',
      drawing: drawQr(address),
      alt: `A code to scan. It leads to the buyer packet on the web: ${address}`,
      caption: rich('All of it, with papers and photos, is in the buyer packet. Scan, or type: ', {
        ...verbatim(address),
        manner: 'strong',
      }),
    },
  ];
}

/** What a visitor asks for in the hall, besides what every title block has. The foundation is in the opening sentence. */
const ASKED = [
  ['Lot', ['lot']],
  ['Outside walls', ['exterior']],
  ['Parking', ['parking']],
  ['Water and sewer', ['water', 'sewer']],
] as const;

/** Few rows, large: each with its own mark. */
function factTable(context: Context): Block {
  const marks: Readonly<Record<string, EvidenceMark>> = {
    'key-built': markOfFact(context, context.house.house.built),
    'key-size': sizeMark(context),
  };
  const counted = keyFacts(context).map(
    ({ id, label, value, known }): TableRow => ({
      id: `glance-${id}`,
      cells: [rich(soft(label)), rich(strong(value))],
      mark: marks[id] ?? markOf(context, { evidence: [] }, known),
    }),
  );
  const stated = ASKED.flatMap(([label, words]): TableRow[] => {
    const facts = words.map((word) => context.house.house[word]).filter((fact) => fact !== undefined);
    if (facts.length === 0) return [];
    const values = new Set(
      facts.map((fact) => (fact.value === undefined ? 'not known' : printed(fact.value))),
    );
    return [
      {
        id: `glance-${words[0]}`,
        cells: [rich(soft(label)), rich(strong([...values].join('; ')))],
        mark:
          facts.length === 1
            ? markOfFact<unknown>(context, facts[0])
            : markOfSeveral(
                context,
                facts.map((fact) => ({
                  from: fact.from,
                  evidence: fact.evidence,
                  known: fact.value !== undefined,
                })),
              ),
      },
    ];
  });
  return {
    kind: 'table',
    id: 'glance',
    size: 'large',
    caption: '',
    columns: columns(['Fact', 30], ['As known', 70]),
    rows: [...counted, ...stated],
  };
}

const printed = (value: string | { readonly written: string }): string =>
  typeof value === 'string' ? value : value.written;

/** What was put in new, by what buyers ask about first. */
function renewed(context: Context): Block[] {
  const all = toldByThemselves(context.tally.improvements);
  const list = all
    .filter((one) => NEW.has(one.did) && one.source.kind !== 'finish' && !isOlder(context, one))
    .map((one, index) => ({ one, rank: rankOf(one), index }))
    .sort((a, b) => a.rank - b.rank || a.index - b.index)
    .map(({ one }) => one);
  const shown = list.slice(0, MOST.renewed);
  if (shown.length === 0) return [];
  return [
    { kind: 'heading', id: 'renewed', level: 3, text: 'New or replaced' },
    {
      kind: 'list',
      id: 'all-renewed',
      items: shown.map((one) => ({
        id: `renewed-${one.id}`,
        text: inOneLine(context, one),
        mark: markOf(context, evidenceOf(context, one.source.item)),
      })),
    },
  ];
}

const NEW: ReadonlySet<Improvement['did']> = new Set(['new', 'replaced', 'added']);

/** Done before the owner had the house, or nobody knows when: nothing that is new. */
function isOlder({ house }: Context, { done }: Improvement): boolean {
  const bought = house.house.bought?.earliest;
  return done?.latest === undefined || (bought !== undefined && done.latest < bought);
}

/** Smaller is told first: the systems that all buyers ask about, other systems, then the rest by trade. */
function rankOf(one: Improvement): number {
  const systems =
    one.source.kind === 'system' ? [one.source.item] : one.source.kind === 'work' ? one.source.systems : [];
  const first = Math.min(...systems.map(askedAt));
  if (first < ASKED_FIRST.length) return first;
  return (systems.some(isAsked) ? 100 : 200) + TRADES.indexOf(one.trade);
}

/** At which place buyers ask about a system; behind all of them where it is none of these. */
function askedAt({ is }: System): number {
  const at = ASKED_FIRST.findIndex((pattern) => pattern.test(is));
  return at < 0 ? ASKED_FIRST.length : at;
}

function inOneLine(context: Context, one: Improvement): Rich {
  return rich(
    strong(`${subjectOf(one)}${placeBehind(context, one)}, ${one.did}.`),
    ` ${upperFirst(datesSpan([one]))}, ${whoWords(context, one.who)}.`,
  );
}

const inPacket = (more: number): string => `${more} more in the buyer packet`;

function howOldShort(context: Context): Section {
  const { ages } = context.tally;
  const asked = ages.filter((age) => isAsked(age.system));
  const shown = (asked.length > 0 ? asked : ages)
    .map((age, index) => ({ age, rank: askedAt(age.system), index }))
    .sort((a, b) => a.rank - b.rank || a.index - b.index)
    .map(({ age }) => age)
    .slice(0, MOST.ages);
  const more = ages.length - shown.length;
  const blocks: Block[] =
    shown.length === 0
      ? [nothing('ages-none', 'No system or appliance is described.')]
      : [
          {
            kind: 'list',
            id: 'ages-list',
            items: shown.map((age) => ({
              id: `age-${age.system.id}`,
              text: ageText(age),
              mark: markOfAge(context, age),
            })),
          },
        ];
  if (more > 0) blocks.push(nothing('ages-more', `… ${inPacket(more)}, all of them beside published lives.`));
  return { id: 'how-old', title: 'How old things are', blocks };
}

const nothing = (id: string, words: string): Block => ({
  kind: 'paragraph',
  id,
  size: 'small',
  text: rich(words),
});

/** One line a trade: what was done to what, and when. By whose hands is said once, of all together. */
function doneByTrade(context: Context): Section {
  const improvements = toldByThemselves(context.tally.improvements);
  const groups = TRADES.map((trade) => ({
    trade,
    list: improvements.filter((one) => one.trade === trade),
  })).filter(({ list }) => list.length > 0);
  const shown = groups.slice(0, MOST.trades);
  const left = groups.slice(MOST.trades).flatMap(({ list }) => list).length;
  const blocks: Block[] =
    shown.length === 0
      ? [nothing('done-none', 'No work is recorded.')]
      : [
          ...done(context),
          {
            kind: 'list',
            id: 'done-list',
            items: shown.map(({ trade, list }) => ({
              id: `done-${trade.replaceAll(' ', '-')}`,
              text: tradeText(trade, list),
              mark: markOfSeveral(
                context,
                list.map((one) => evidenceOf(context, one.source.item)),
              ),
            })),
          },
        ];
  if (left > 0) blocks.push(nothing('done-more', `… ${inPacket(left)}.`));
  return { id: 'what-was-done', title: 'What was done, by trade', blocks };
}

function tradeText(trade: string, list: readonly Improvement[]): Rich {
  const told = [...new Set(list.map((one) => `${subjectOf(one).toLowerCase()} ${one.did}`))];
  const shown = told.slice(0, MOST.ofOneTrade);
  const more = told.length - shown.length;
  return rich(
    strong(`${upperFirst(trade)}. `),
    `${upperFirst(shown.join('; '))}${more === 0 ? '' : `; and ${more} more`}. `,
    soft(`${upperFirst(datesSpan(list))}.`),
  );
}

/** Known and not mended; and what nobody could say. */
function leftShort(context: Context): Section {
  const { conditions } = context.house;
  const shown = conditions.slice(0, MOST.conditions);
  const unknown = collectFacts(context.house).filter((one) => one.fact.value === undefined);
  const named = unknown.slice(0, MOST.notKnown).map((one) => upperFirst(one.words));
  const blocks: Block[] = [];
  if (shown.length > 0)
    blocks.push({
      kind: 'list',
      id: 'condition-list',
      items: shown.map((item, index) => ({
        id: `condition-${index + 1}`,
        text: rich(
          strong(fullStop(upperFirst(item.what))),
          item.where === undefined ? undefined : ` ${upperFirst(placeName(context, item.where))}.`,
        ),
        mark: markOf(context, { from: item.from, evidence: [...item.evidence, ...item.photos] }),
      })),
    });
  else blocks.push(nothing('conditions-none', NO_CONDITION));
  if (conditions.length > shown.length)
    blocks.push(nothing('condition-more', `… ${inPacket(conditions.length - shown.length)}.`));
  if (named.length > 0)
    blocks.push({
      kind: 'statement',
      id: 'not-known',
      size: 'body',
      text: rich(
        strong('Not known: '),
        `${named.join('; ')}${unknown.length > named.length ? `; and ${inPacket(unknown.length - named.length)}` : ''}. Not known is never the same as no.`,
      ),
      mark: markOf(context, { evidence: [] }, false),
    });
  return { id: 'left-as-found', title: 'Left as found', blocks };
}

const NO_CONDITION = 'The owner has written down no such condition. That is no finding that there is none.';

function staysShort(context: Context): Section[] {
  const blocks = termLines(context, MOST.terms);
  return blocks.length === 0 ? [] : [{ id: 'terms', title: 'What stays', blocks }];
}
