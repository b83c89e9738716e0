/**
 * A draft of listing remarks, checked in every way that there is: each claim against the facts with how they are known and
 * where they stand, its words against the rules for advertisements, "new" against its date, and its length.
 */
import type { Place } from './diagnostics/place.js';
import { ageSpan, inMonths } from './facts/age.js';
import { type HouseDate, printDate } from './facts/date.js';
import { valueAt } from './facts/explain-issue.js';
import type { House } from './facts/house.js';
import type { ReadHouse } from './intake/read-house.js';
import type { RemarksText } from './intake/read-remarks.js';
import type { Context } from './packet/context.js';
import { isoDate } from './packet/date-words.js';
import { markOf } from './packet/marks.js';
import { plainText } from './packet/rich.js';
import { type AdvertisingRule, advertisingRule, checkAdvertising, newWordRule } from './tally/advertising.js';
import { checkRemarks } from './tally/remarks/check-remarks.js';
import { type FactSaid, type Finding, knownOf, type Verdict } from './tally/remarks/items/known.js';
import { mendFindings } from './tally/remarks/mend/mend-findings.js';
import { type RemarksLength, type RemarksStop, remarksLength, stopWithin } from './tally/remarks-length.js';
import type { Tally } from './tally/tally.js';

export interface CheckedFact {
  readonly path: FactSaid['path'];
  readonly words: string;
  /** Ids of the papers and photos behind it. */
  readonly evidence: readonly string[];
  /** "Documented: permit, 14 June 2019", "Owner’s statement: from seller", "Not known". */
  readonly known: string;
  readonly place: Place | undefined;
}

export interface CheckedClaim extends Omit<Finding, 'facts'> {
  readonly facts: readonly CheckedFact[];
}

/** A word that a rule for advertisements is about. */
export interface CheckedWord {
  /** UTF-16 offsets in the text. */
  readonly from: number;
  readonly to: number;
  /** The draft's words. */
  readonly says: string;
  /** block: a rule names it as a violation. warn: doubtful. date: new once, and longer ago than the word lasts. */
  readonly level: 'block' | 'warn' | 'date';
  readonly because: string;
  readonly instead: string | undefined;
  readonly rule: AdvertisingRule;
}

export interface CheckedDraft {
  readonly draft: RemarksText;
  /** In the order of the text. */
  readonly claims: readonly CheckedClaim[];
  readonly words: readonly CheckedWord[];
  readonly length: RemarksLength;
  /** How many characters the listing service takes; undefined where nobody wrote it down. */
  readonly limit: number | undefined;
  /** Where to end it, if it is too long and one of its sentences fits. */
  readonly stop: RemarksStop | undefined;
}

export interface DraftOrder {
  readonly draft: RemarksText;
  readonly house: House;
  readonly tally: Tally;
  readonly read: ReadHouse;
  /** Of the house file: the owner reads, and every paper may be named. */
  readonly context: Context;
}

export function checkDraft({ draft, house, tally, read, context }: DraftOrder): CheckedDraft {
  const { text } = draft;
  const found = checkRemarks(text, house, tally);
  const length = remarksLength(text);
  const limit = house.listing?.['remarks-limit'];
  const known = (fact: FactSaid): CheckedFact => ({
    ...fact,
    known: howKnown(fact, house, context),
    place: placeOf(fact, read),
  });
  return {
    draft,
    claims: mendFindings(text, found, house, tally).map((claim) => ({
      ...claim,
      facts: claim.facts.map(known),
    })),
    words: [...wordsToMind(text), ...newLongAgo(found, house, tally)].sort(
      (a, b) => a.from - b.from || a.to - b.to,
    ),
    length,
    limit,
    stop: limit === undefined || length.characters <= limit ? undefined : stopWithin(text, limit),
  };
}

export const isTooLong = ({ length, limit }: Pick<CheckedDraft, 'length' | 'limit'>): boolean =>
  limit !== undefined && length.characters > limit;

/** What has to be changed before the draft is sent. */
export const TO_MEND: readonly Verdict[] = ['contradicted', 'wider'];

export const needsMending = (checked: CheckedDraft): boolean =>
  isTooLong(checked) ||
  checked.words.some(({ level }) => level === 'block') ||
  checked.claims.some(({ verdict }) => TO_MEND.includes(verdict));

export const countOf = ({ claims }: Pick<CheckedDraft, 'claims'>, verdict: Verdict): number =>
  claims.filter((one) => one.verdict === verdict).length;

// ------------------------------------------------------------------ facts

function howKnown({ path, evidence }: FactSaid, house: House, context: Context): string {
  const value = valueAt(house, path);
  const from = ownWord(value, 'from');
  const mark = markOf(context, { evidence, ...(from === undefined ? {} : { from }) });
  const detail = plainText(mark.detail);
  return detail === '' ? mark.word : `${mark.word}: ${detail}`;
}

function ownWord(value: unknown, word: string): string | undefined {
  if (typeof value !== 'object' || value === null) return undefined;
  const inner = (value as Record<string, unknown>)[word];
  return typeof inner === 'string' ? inner : undefined;
}

function placeOf({ path }: FactSaid, read: ReadHouse): Place | undefined {
  const found = read.places.find(read.writtenPath(path), false);
  return found !== undefined && 'place' in found ? found.place : undefined;
}

// ------------------------------------------------------------------ words

const wordsToMind = (text: string): CheckedWord[] =>
  checkAdvertising(text).map(({ from, to, words, level, because, instead, rule }) => ({
    from,
    to,
    says: words,
    level,
    because,
    instead,
    rule,
  }));

/** Claims that a thing is new which are true, and older than the word lasts in an advertisement: the date says it better. */
function newLongAgo(found: readonly Finding[], house: House, tally: Tally): CheckedWord[] {
  const { asOf } = tally;
  const { months } = newWordRule();
  const listed = house.house.listed?.earliest ?? asOf;
  const dates = new Map<string, HouseDate>();
  for (const { path, done } of knownOf(house, tally).items)
    if (done !== undefined) dates.set(JSON.stringify(path), done);
  return found.flatMap((claim): CheckedWord[] => {
    if (claim.verdict !== 'backed' || claim.rule !== 'newness.new') return [];
    const known = claim.facts.flatMap(({ path }) => dates.get(JSON.stringify(path)) ?? []);
    const old = known.find((date) => monthsOf(date, listed) >= months);
    if (old === undefined) return [];
    const when = printDate(old);
    return [
      {
        from: claim.from,
        to: claim.to,
        says: claim.says,
        level: 'date',
        because: `it dates from ${when}, ${months} months or more before ${house.house.listed === undefined ? `the as-of day, ${isoDate(asOf)}` : 'it was listed'}`,
        instead: `say the date: ${when}`,
        rule: advertisingRule('F10'),
      },
    ];
  });
}

/** Completed months from the last day that a date allows; 0 where it has none. */
function monthsOf(date: HouseDate, day: string): number {
  const { youngest } = ageSpan(date, day);
  return youngest === undefined ? 0 : inMonths(youngest);
}
