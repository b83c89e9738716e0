/** "Larger than the county says", "the bath is smaller than the kitchen", "more baths than bedrooms". */
import { wholeSquareFeet } from '../../../facts/floor-area.js';
import { nameOf } from '../../../facts/place-name.js';
import { groupThousands } from '../../../facts/written-number.js';
import type { SentenceWords } from '../claims/claim-case.js';
import type { FactSaid, Judgement, Known } from '../items/known.js';
import { contextOf, isRoomThing } from '../items/meant-items.js';
import { roomArea } from '../items/room-areas.js';
import type { Find } from '../read-sentence.js';
import type { Phrase } from '../sentence/phrase.js';
import { judged, plural } from './judged.js';

const COMPARES = /\b(larg|bigg|great|room|small|tini|more|few)\w*[\s-]+/i;
const LARGER = /\b(larger|bigger|roomier|more spacious)\s+(?:\w+\s+)?than\b/gi;
const SMALLER = /\b(smaller|tinier|less spacious)\s+(?:\w+\s+)?than\b/gi;
/** Behind "than": the figure that a public office has of the house. */
const THE_RECORD =
  /^\s*(what\s+)?(the\s+|its\s+)?(\w+\s+)?(county|assessor|tax|public|town|city|record|appraiser)\w*('s)?\b/i;
const BY_SO_MUCH =
  /\bby\s+(over|more than|about|some|at least|nearly|almost)?\s*([\d,]+)\s*(?:sq|square|sf)/i;
const MORE_OF = /\b(more|fewer)\s+(bath|bed)(?:room)?s?\s+than\s+(bath|bed)(?:room)?s?\b/gi;

/** Comparatives of a sentence that hold two sizes or two counts of the folder against each other. */
export function compared(known: Known, sentence: SentenceWords, find: Find, from: number, to: number): void {
  const words = sentence.text.slice(from, to);
  if (!COMPARES.test(words)) return;
  for (const [pattern, sign] of [
    [LARGER, 1],
    [SMALLER, -1],
  ] as const)
    for (const match of words.matchAll(pattern)) {
      const start = from + match.index;
      const end = start + match[0].length;
      const office = THE_RECORD.exec(sentence.text.slice(end, to));
      if (office === null) {
        tellRooms(known, sentence, find, [start, end], sign);
        continue;
      }
      const sizes = sizesOf(known);
      if (sizes === undefined) continue;
      find(start, end + office[0].length, againstRecord(sizes, sign, null));
      const by = BY_SO_MUCH.exec(sentence.text.slice(end, to));
      if (by !== null) find(end + by.index, end + by.index + by[0].length, againstRecord(sizes, sign, by));
    }
  for (const match of words.matchAll(MORE_OF)) {
    const told = moreOf(known, match);
    if (told !== undefined) find(from + match.index, from + match.index + match[0].length, told);
  }
}

/** Square feet as measured and as recorded, where the folder has both. */
interface Sizes {
  readonly measured: number;
  readonly recorded: number;
  readonly evidence: readonly string[];
}

function sizesOf(known: Known): Sizes | undefined {
  const { record } = known.house;
  const measured = known.tally.areas.byClass['above-finished'].squareFeet;
  if (record === undefined || measured === 0) return undefined;
  return { measured, recorded: wholeSquareFeet(record.area.area), evidence: record.evidence };
}

function againstRecord(
  { measured, recorded, evidence }: Sizes,
  sign: 1 | -1,
  by: RegExpExecArray | null,
): Judgement {
  const difference = (measured - recorded) * sign;
  const [, hedge = '', figure] = by ?? [];
  const claimed = figure === undefined ? undefined : Number(figure.replaceAll(',', ''));
  const enough =
    claimed === undefined ||
    (/about|some|nearly|almost/.test(hedge)
      ? Math.abs(difference - claimed) <= Math.max(10, claimed * 0.1)
      : hedge === ''
        ? Math.abs(difference - claimed) <= 10
        : difference >= claimed);
  const facts: FactSaid[] = [
    { path: ['measured'], words: `${groupThousands(measured)} sq ft finished above grade`, evidence: [] },
    { path: ['record'], words: `${groupThousands(recorded)} sq ft by the record`, evidence },
  ];
  return judged(
    difference > 0 && enough,
    'size.compared',
    `the folder says ${groupThousands(measured)} sq ft, and the record ${groupThousands(recorded)} sq ft`,
    facts,
    `${groupThousands(measured)} sq ft`,
  );
}

function tellRooms(
  known: Known,
  sentence: SentenceWords,
  find: Find,
  [start, end]: readonly [number, number],
  sign: 1 | -1,
): void {
  const rooms = sentence.phrases.filter(({ thing, aside }) => aside === undefined && isRoomThing(thing));
  const first = rooms.findLast((phrase) => phrase.to <= start && start - phrase.to < NEAR);
  const second = rooms.find((phrase) => phrase.from >= end && phrase.from - end < NEAR);
  if (first === undefined || second === undefined) return;
  const [ones, others] = [areasOf(known, first, sentence), areasOf(known, second, sentence)];
  const [one, other] = [ones[0], others[0]];
  if (one === undefined || other === undefined) return;
  const fits = ones.some(({ feet }) => others.some((beside) => (feet - beside.feet) * sign > 0));
  const words = [one, other].map(({ name, feet }) => `${name}: ${Math.round(feet)} sq ft`).join('; ');
  find(
    first.from,
    second.to,
    judged(
      fits,
      'size.compared',
      `the folder says ${words}`,
      [{ path: ['rooms'], words, evidence: [] }],
      words,
    ),
  );
}

/** Characters between a room and the comparative that is said of it. */
const NEAR = 32;

function areasOf(known: Known, phrase: Phrase, sentence: SentenceWords): { name: string; feet: number }[] {
  const { ids } = contextOf(known, phrase, sentence).place;
  return known.house.rooms.flatMap((room) => {
    const feet = ids.includes(room.id) ? roomArea(room) : undefined;
    return feet === undefined ? [] : [{ name: nameOf(room), feet }];
  });
}

function moreOf(known: Known, [, more, first, second]: RegExpExecArray): Judgement | undefined {
  if (first?.toLowerCase() === second?.toLowerCase() || known.house.rooms.length === 0) return undefined;
  const count = (use: string): number => known.house.rooms.filter((room) => room.use === use).length;
  const [beds, baths] = [count('bedroom'), count('bath')];
  const bedsFirst = first?.toLowerCase() === 'bed';
  const difference = (bedsFirst ? beds - baths : baths - beds) * (more?.toLowerCase() === 'more' ? 1 : -1);
  const words = `${plural(beds, 'bedroom', 'bedrooms')} and ${plural(baths, 'bath', 'baths')}`;
  return judged(
    difference > 0,
    'count.compared',
    `the folder lists ${words}`,
    [{ path: ['rooms'], words, evidence: [] }],
    words,
  );
}
