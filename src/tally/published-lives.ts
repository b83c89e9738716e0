/**
 * What published tables say about how long a part of a house lasts, and how an age stands to that.
 *
 * Takes a component's name as people write it; gives the published rows with their sources, the span they cover
 * and a comparison in words. Never gives one number for a component (the sources differ by two and a half times
 * on a gas water heater alone), never subtracts an age from a life, and gives no figure where none was read.
 * The rows are in `tables/lives.yaml`. Start reading at `livesOf`.
 */
import { z } from 'zod';
import { entryOf, readTable } from './read-table.js';

/** A table or study that lives were read from. */
export interface LifeSource {
  readonly id: string;
  /** Short name for drawings, e.g. "NAHB 2007". */
  readonly label: string;
  readonly title: string;
  readonly publisher: string;
  /** The year or date it is of, as text: it may be "undated". */
  readonly date: string;
  /** What kind of life it states, e.g. "median of a field survival study". */
  readonly basis: string;
  /** How closely it was read, in a sentence. */
  readonly read: string;
}

/** One row of one source. Years may have a tenth (14.5). */
export interface PublishedLife {
  readonly source: LifeSource;
  /** The shortest life it gives, in years; undefined for "up to" and "life of the house" rows. */
  readonly low: number | undefined;
  /** The longest life it gives, in years; undefined when the row is open. */
  readonly high: number | undefined;
  /** The row has no upper end: "20 years or longer", or with no `low` "as long as the house". */
  readonly open: boolean;
  /** The row gives only its upper end. */
  readonly upTo: boolean;
  /** Where this row was read. */
  readonly read: 'on the publisher’s own page' | 'in a third party’s reproduction';
  /** What to know about the row, in our own words. */
  readonly note: string | undefined;
}

/** A part of a house that tables may have a life for. */
export interface Component {
  readonly id: string;
  /** The plain name to write in a house folder, e.g. "water heater, tank, electric". */
  readonly name: string;
  readonly aliases: readonly string[];
}

/** The years that a component's rows cover together. */
interface LifeSpan {
  /** The shortest lower end of any row; undefined when no row gives one. */
  readonly low: number | undefined;
  /** The longest upper end of any row; undefined when no row gives one. */
  readonly high: number | undefined;
  /** At least one row has no upper end. */
  readonly open: boolean;
}

/** What was found for a component. Without rows there is no span, and `reason` says why. */
export interface Lives {
  readonly rows: readonly PublishedLife[];
  readonly span: LifeSpan | undefined;
  readonly reason?: string;
}

/** An age in completed months: both ends when it is known as a span, either undefined when that end isn't. */
export interface AgeInMonths {
  readonly youngestMonths?: number | undefined;
  readonly oldestMonths?: number | undefined;
}

export type AgeAgainstLives =
  | 'younger than every published life'
  | 'within the published lives'
  | 'older than every published life'
  | 'not known';

export interface LifeComparison {
  readonly words: AgeAgainstLives;
  /** The age is a span, and its two ends don't fall in the same class. */
  readonly straddles: boolean;
  /** The class if the age is the youngest it can be. */
  readonly ifYoungest: AgeAgainstLives;
  /** The class if the age is the oldest it can be. */
  readonly ifOldest: AgeAgainstLives;
}

const years = z.number().positive().multipleOf(0.1);
const table = z.strictObject({
  sources: z.record(
    z.string(),
    z.strictObject({
      label: z.string().min(1),
      title: z.string().min(1),
      publisher: z.string().min(1),
      date: z.string().min(1),
      basis: z.string().min(1),
      read: z.string().min(1),
    }),
  ),
  names: z.record(
    z.string(),
    z.strictObject({
      name: z.string().min(1),
      aliases: z.array(z.string().min(1)).default([]),
      none: z.literal(true).optional(),
      reason: z.string().min(1).optional(),
    }),
  ),
  lives: z.array(
    z.strictObject({
      component: z.string(),
      source: z.string(),
      low: years.optional(),
      high: years.optional(),
      open: z.literal(true).optional(),
      upTo: z.literal(true).optional(),
      read: z.enum(['publisher', 'reproduction']),
      note: z.string().min(1).optional(),
    }),
  ),
});

const readWords = {
  publisher: 'on the publisher’s own page',
  reproduction: 'in a third party’s reproduction',
} as const;

/**
 * The component that a text names, or undefined. Capitals, punctuation and the order of the words don't matter:
 * "Gas furnace" is "furnace, gas". Nothing is guessed: a bare "water heater" names none, since gas and electric,
 * with tank and without, have lives of their own.
 */
export function findComponent(text: string): Component | undefined {
  index ??= indexNames(lives().names);
  return index.get(keyOf(text));
}

/** Every component's plain name in alphabetical order, for hints and for the schema that editors read. */
export function componentNames(): string[] {
  return Object.values(lives().names)
    .map((entry) => entry.name)
    .sort((a, b) => (a.toLowerCase() < b.toLowerCase() ? -1 : 1));
}

/**
 * The published rows for a component with the span they cover. Where no row was read there is no figure at all,
 * and `reason` says why: "no published life was found" is what a page prints then.
 */
export function livesOf(component: Pick<Component, 'id'>): Lives {
  const { names, sources, lives: all } = lives();
  const entry = names[component.id];
  if (entry === undefined) throw new Error(`tables/lives.yaml has no component ${component.id}`);
  const rows = all
    .filter((row) => row.component === component.id)
    .map((row): PublishedLife => {
      const source = entryOf(sources, row.source, 'lives');
      const { low, high, open = false, upTo = false, note } = row;
      return {
        source: { id: row.source, ...source },
        low,
        high,
        open,
        upTo,
        read: readWords[row.read],
        note,
      };
    });
  if (rows.length === 0) return { rows, span: undefined, reason: entry.reason };
  return { rows, span: spanOf(rows) };
}

/**
 * Sets an age against published lives, in words.
 *
 * An age is younger than every published life while it is below the span's low, older than every one once it is
 * past the span's high, and within them from low to high inclusive. As long as one row has no upper end, no age
 * is older than every published life; as long as no row has a lower end ("up to 30 years"), none is younger. Where
 * a row only says "as long as the house" there is no figure to compare with, and the answer is not known.
 *
 * An age that is a span is classed at both its ends. If they agree, that is the answer. If they don't, part of the
 * span is within the published lives: those are the words then, and `straddles` is true, so that the reader can be
 * told both ends. But if one end isn't known and the other lies outside the published lives, the age could be on
 * either side of them or among them, and the answer is not known.
 */
export function compareWithLives(age: AgeInMonths, lives: Pick<Lives, 'span'>): LifeComparison {
  const { youngestMonths, oldestMonths } = age;
  const { span } = lives;
  const settled = span !== undefined && (span.low !== undefined || span.high !== undefined);
  if (!settled || (youngestMonths === undefined && oldestMonths === undefined))
    return { words: 'not known', straddles: false, ifYoungest: 'not known', ifOldest: 'not known' };
  const ifYoungest = classOf(youngestMonths ?? 0, span);
  const ifOldest = classOf(oldestMonths ?? Number.POSITIVE_INFINITY, span);
  if (ifYoungest === ifOldest) return { words: ifYoungest, straddles: false, ifYoungest, ifOldest };
  const adrift =
    (oldestMonths === undefined && ifYoungest === 'younger than every published life') ||
    (youngestMonths === undefined && ifOldest === 'older than every published life');
  return {
    words: adrift ? 'not known' : 'within the published lives',
    straddles: true,
    ifYoungest,
    ifOldest,
  };
}

/** A row in words: "10 years", "11 to 13 years", "20 years or longer", "up to 50 years", "as long as the house". */
export function printLife(row: Pick<PublishedLife, 'low' | 'high' | 'open'>): string {
  const { low, high, open } = row;
  if (open) return low === undefined ? 'as long as the house' : `${low} years or longer`;
  if (low === undefined) return `up to ${high} years`;
  return low === high ? `${low} years` : `${low} to ${high} years`;
}

function lives(): z.infer<typeof table> {
  return readTable('lives', table);
}

/** Every name and alias, so that finding one doesn't walk the table; the id counts as a name too. */
let index: Map<string, Component> | undefined;

/** Throws where two components have a name in common: nobody could tell which is meant. */
export function indexNames(
  names: Readonly<Record<string, Pick<Component, 'name' | 'aliases'>>>,
): Map<string, Component> {
  const found = new Map<string, Component>();
  for (const [id, { name, aliases }] of Object.entries(names)) {
    for (const text of [id, name, ...aliases]) {
      const earlier = found.get(keyOf(text));
      if (earlier !== undefined && earlier.id !== id)
        throw new Error(`tables/lives.yaml gives "${text}" to both ${earlier.id} and ${id}`);
      found.set(keyOf(text), { id, name, aliases });
    }
  }
  return found;
}

/** The words of a name in a fixed order and without capitals or punctuation. */
function keyOf(text: string): string {
  const words = text.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? [];
  return words.sort().join(' ');
}

function spanOf(rows: readonly PublishedLife[]): LifeSpan {
  const ends = (pick: (row: PublishedLife) => number | undefined) =>
    rows.map(pick).filter((end) => end !== undefined);
  const lows = ends((row) => row.low);
  const highs = ends((row) => row.high);
  return {
    low: lows.length === 0 ? undefined : Math.min(...lows),
    high: highs.length === 0 ? undefined : Math.max(...highs),
    open: rows.some((row) => row.open),
  };
}

/** Compared as whole numbers: tenths of months on one side, twelve times tenths of years on the other. */
function classOf(months: number, span: LifeSpan): AgeAgainstLives {
  const tenths = months * 10;
  if (span.low !== undefined && tenths < monthsTimesTen(span.low)) return 'younger than every published life';
  if (!span.open && span.high !== undefined && tenths > monthsTimesTen(span.high))
    return 'older than every published life';
  return 'within the published lives';
}

/** Years with at most one decimal, as tenths of months: 14.5 years are 1,740. */
function monthsTimesTen(lifeYears: number): number {
  return Math.round(lifeYears * 10) * 12;
}
