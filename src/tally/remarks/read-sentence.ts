/** One sentence: its phrases, what is said of the whole house, counts and figures that stand by themselves, and praise. */
import type { SentenceWords, Told } from './claim-case.js';
import { claimsOf } from './claims.js';
import { withHeadings } from './headings.js';
import type { Finding, Judgement, Known } from './known.js';
import { conveyed } from './listed-conveys.js';
import { contextOf, isRoomThing } from './meant-items.js';
import type { Attribute, Phrase } from './phrase.js';
import { phrasesOf } from './phrases.js';
import { standing } from './standing-figures.js';
import type { Token } from './token.js';
import { has, type Unit, unitsOf } from './units.js';
import { whole } from './whole-house.js';

/** A text with all that its sentences are read by. */
export interface Draft {
  readonly known: Known;
  readonly text: string;
  readonly tokens: readonly Token[];
  /** Where the house, its street or its town is named. */
  readonly names: readonly (readonly [number, number])[];
}

const isInName = (names: Draft['names'], { from, to }: Unit): boolean =>
  names.length < MOST_NAMES && names.some(([start, end]) => from >= start && to <= end);

// A text that is nothing but its town's name is no draft.
const MOST_NAMES = 50;

/** What the sentence before spoke of, for "it" and "they". */
export interface Spoken {
  readonly thing: string;
  readonly context: SentenceWords['context'];
}

export function readSentence(
  { known, text, tokens, names }: Draft,
  first: number,
  end: number,
  before?: Spoken,
): { readonly findings: Finding[]; readonly spoken: Spoken | undefined } {
  const units = withPronoun(unitsOf(tokens, first, end), before);
  for (const unit of units) if (isInName(names, unit)) unit.senses = [];
  const read = phrasesOf(units);
  const done = new Set<Attribute>();
  const findings: Finding[] = [];
  const find = (from: number, to: number, judgement: Judgement): void => {
    findings.push({ ...judgement, from, to, says: text.slice(from, to) });
  };
  // A figure that a list shares stands in several phrases; the first one takes it.
  const taken = new Map<number, { readonly attribute: Attribute; readonly phrase: Phrase | undefined }>();
  const sameFigure = new Map<number, Attribute[]>();
  const note = (one: Attribute, phrase: Phrase | undefined): void => {
    if (one.kind !== 'number') return;
    if (!taken.has(one.from)) taken.set(one.from, { attribute: one, phrase });
    const same = sameFigure.get(one.from);
    if (same === undefined) sameFigure.set(one.from, [one]);
    else same.push(one);
  };
  for (const phrase of read.phrases) for (const one of phrase.attributes) note(one, phrase);
  for (const one of read.loose) note(one, undefined);
  const settle = (unit: Unit): void => {
    for (const one of sameFigure.get(unit.from) ?? []) done.add(one);
  };
  standing({ known, text, units, find, settle, taken });
  const phrases = withHeadings(units, read.phrases, read.loose);
  const sentence: SentenceWords = {
    text,
    phrases,
    context: undefined,
  };
  let context: SentenceWords['context'] = /^(it|they|both|these|those|it's|they're)$/.test(
    units[0]?.word ?? '',
  )
    ? before?.context
    : undefined;
  for (const phrase of phrases) {
    sentence.context = context;
    if (phrase.aside === undefined && !phrase.place && isRoomThing(phrase.thing))
      context = contextOf(known, phrase, sentence);
    if (phrase.aside !== undefined) {
      if (phrase.aside === 'maybe')
        find(...asideSpan(units, phrase.at), {
          verdict: 'opinion',
          rule: 'aside',
          because: 'it offers or imagines, and claims nothing',
          facts: [],
        });
      continue;
    }
    for (const { from, to, judgement } of spansOf(phrase, claimsOf(known, phrase, done, sentence), text))
      find(from, to, judgement);
  }
  whole(known, read.phrases, read.loose, done, find, text);
  conveyed(known, units, text, findings, find);
  praise(units, findings, find);
  const last = phrases.filter((phrase) => !phrase.place && phrase.aside === undefined).at(-1);
  return {
    findings: unique(findings),
    spoken: last === undefined ? undefined : { thing: last.thing, context },
  };
}

/** Taste and salesmanship, where nothing else was told. */
function praise(units: readonly Unit[], findings: readonly Finding[], find: Find): void {
  const told = findings.map(({ from, to }) => [from, to] as const).sort((a, b) => a[0] - b[0]);
  let [next, end] = [0, 0];
  for (const unit of units) {
    for (; (told[next]?.[0] ?? Number.POSITIVE_INFINITY) < unit.to; next++)
      end = Math.max(end, told[next]?.[1] ?? 0);
    if (has(unit, 'opinion') && unit.aside === undefined && end <= unit.from)
      find(unit.from, unit.to, {
        verdict: 'opinion',
        rule: 'praise',
        because: 'taste, left alone',
        facts: [],
      });
  }
}

/** "It was replaced in 2016": the first word stands for what was spoken of last. */
function withPronoun(units: Unit[], before: Spoken | undefined): Unit[] {
  const [first, second] = units;
  if (
    before === undefined ||
    first === undefined ||
    second === undefined ||
    !/^(it|they|both|these|those|it's|they're)$/.test(first.word)
  )
    return units;
  if (!has(second, 'copula') && !has(second, 'newness') && !/'/.test(first.word)) return units;
  return [{ ...first, senses: [{ tag: 'thing', id: before.thing }] }, ...units.slice(1)];
}

/** The run of units that were set aside around a head. */
function asideSpan(units: readonly Unit[], at: number): [number, number] {
  let [low, high] = [at, at];
  while (units[low - 1]?.aside === units[at]?.aside && units[low - 1] !== undefined) low--;
  while (units[high + 1]?.aside === units[at]?.aside && units[high + 1] !== undefined) high++;
  return [units[low]?.from ?? 0, units[high]?.to ?? 0];
}

/** Which characters each claim underlines: its word, with the thing where the two stand together. */
function spansOf(
  phrase: Phrase,
  told: readonly Told[],
  text: string,
): { from: number; to: number; judgement: Judgement }[] {
  const starts = told.flatMap(({ attributes }) =>
    attributes.filter(({ before, shared }) => before && !shared).map(({ from }) => from),
  );
  const lastBefore = Math.max(...starts, -1);
  const anyBefore = starts.length > 0;
  let behind = false;
  return told.map(({ judgement, attributes }) => {
    const own = attributes.filter(({ shared }) => !shared);
    if (own.length === 0) {
      // What was shared from behind stands there; what was shared from before is told at the thing.
      const [one] = attributes;
      return one !== undefined && !one.before && one.kind !== 'convey'
        ? { from: one.from, to: one.to, judgement }
        : { from: phrase.from, to: phrase.to, judgement };
    }
    let from = Math.min(...own.map((one) => one.from));
    let to = Math.max(...own.map((one) => one.to));
    if (
      own.some((one) => one.before && one.from === lastBefore && one.kind !== 'who' && one.kind !== 'permit')
    )
      to = Math.max(to, phrase.to);
    else if (own.every(({ before }) => !before) && !anyBefore && !behind) {
      behind = true;
      const near = own.some(({ kind }) => kind === 'number') ? 3 : 24;
      if (from > phrase.to && !/[,;—–]/.test(text.slice(phrase.to, from)) && from - phrase.to < near)
        from = phrase.from;
    }
    return { from, to, judgement };
  });
}

export type Find = (from: number, to: number, judgement: Judgement) => void;

/** The same characters judged twice by one rule are told once; the heavier verdict stays. */
function unique(findings: readonly Finding[]): Finding[] {
  const seen = new Set<string>();
  return findings
    .filter(({ from, to, rule }) => {
      const key = `${from} ${to} ${rule}`;
      const first = !seen.has(key);
      seen.add(key);
      return first;
    })
    .sort((a, b) => a.from - b.from || a.to - b.to);
}
