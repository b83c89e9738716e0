/** One sentence: its phrases, what is said of the whole house, counts and figures that stand by themselves, and praise. */

import type { SentenceWords } from './claims/claim-case.js';
import type { Finding, Judgement, Known } from './items/known.js';
import { contextOf, isRoomThing } from './items/meant-items.js';
import { compared } from './judge/judge-compared.js';
import { sureClaimsOf } from './second-look.js';
import { withAnswers } from './sentence/answers.js';
import { withLeftOut } from './sentence/ellipsis.js';
import { withHeadings } from './sentence/headings.js';
import { nameHeaterTanks } from './sentence/heater-tanks.js';
import { takeOffersAsThey } from './sentence/offers-of-it.js';
import type { Attribute, Phrase } from './sentence/phrase.js';
import { phrasesOf } from './sentence/phrases.js';
import { opensWithPronoun, withPronoun } from './sentence/pronouns.js';
import { spansOf } from './sentence/spans.js';
import { houseNewness } from './standing/house-newness.js';
import { conveyed, conveyedInLists } from './standing/listed-conveys.js';
import { setPhrases } from './standing/set-phrases.js';
import { spokenLevels } from './standing/spoken-levels.js';
import { standing } from './standing/standing-figures.js';
import { whole } from './standing/whole-house.js';
import { stretchOf } from './words/stretch-of.js';
import type { Token } from './words/token.js';
import { has, type Unit, unitsOf } from './words/units.js';

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
  /** Nothing else was spoken of in that sentence. */
  readonly alone: boolean;
  /** What was said of it. */
  readonly predicate: readonly Attribute[];
}

export function readSentence(
  { known, text, tokens, names }: Draft,
  first: number,
  end: number,
  before?: Spoken,
  /** The room that a line by itself names above. */
  heading?: SentenceWords['context'],
): { readonly findings: Finding[]; readonly spoken: Spoken | undefined } {
  const { from, to } = stretchOf(tokens.slice(first, end));
  const units = withAnswers(withPronoun(unitsOf(tokens, first, end), before), text, before?.thing);
  const said = stretchOf(units);
  takeOffersAsThey(units);
  nameHeaterTanks(units);
  for (const unit of units) if (isInName(names, unit)) unit.senses = [];
  const read = phrasesOf(units);
  const done = new Set<Attribute>();
  const findings: Finding[] = [];
  // The same characters judged twice by one rule are told once.
  const found = new Set<string>();
  const find = (from: number, to: number, judgement: Judgement): void => {
    const key = `${from} ${to} ${judgement.rule}`;
    // What stands for a thing that isn't written there has no characters of its own.
    if (from >= to || found.has(key)) return;
    found.add(key);
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
  const { phrases, said: predicate } = withLeftOut(
    units,
    withHeadings(units, read.phrases, read.loose),
    before?.predicate ?? [],
  );
  const sentence: SentenceWords = {
    text,
    phrases,
    ...(before === undefined ? {} : { spoken: before.thing }),
    context: undefined,
  };
  let context: SentenceWords['context'] =
    opensWithPronoun(units) || goesOn(text, from) ? before?.context : heading;
  for (const phrase of phrases) {
    sentence.context = context;
    if (
      phrase.aside === undefined &&
      (!phrase.place || opens(text, said.from, phrase)) &&
      isRoomThing(phrase.thing) &&
      !isTally(phrase, text)
    )
      context = withTwin({ ...contextOf(known, phrase, sentence), to: phrase.to }, context, phrase, text);
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
    for (const { from, to, judgement } of spansOf(phrase, sureClaimsOf(known, phrase, done, sentence), text))
      find(from, to, judgement);
  }
  whole(known, read.phrases, read.loose, done, find, text, {
    text,
    from,
    to,
    phrases: read.phrases,
    spoken: before,
  });
  compared(known, sentence, find, said.from, said.to);
  spokenLevels(known, sentence, units, find);
  houseNewness(known, text, units, find);
  conveyed(known, units, text, findings, find);
  conveyedInLists(known, units, findings, find);
  inSetPhrases(known, text, from, to, findings);
  praise(units, findings, find);
  const named = phrases.filter((phrase) => !phrase.place && phrase.aside === undefined);
  const last = named.at(-1);
  return {
    findings: unique(findings),
    spoken:
      last === undefined
        ? undefined
        : {
            thing: last.thing,
            context,
            alone: named.length === 1,
            predicate: predicate.map((one) => ({ ...one, negated: false })),
          },
  };
}

/** "Half bath: new basin; new toilet": behind a semicolon the room is still spoken of. */
const goesOn = (text: string, from: number): boolean => /;\s*$/.test(text.slice(Math.max(0, from - 3), from));

/** "In the hall bath: tile floor, new tub": the place that begins a sentence is that of all that follows. */
const opens = (text: string, from: number, { at, from: head }: Phrase): boolean =>
  at < 5 && /^\W*(in|inside|at|for)\b/i.test(text.slice(from, head)) && !/[,:]/.test(text.slice(from, head));

/** "4 bed 3 bath": a tally of the whole house, and no room that the rest is said of. */
const isTally = ({ thing, attributes, to }: Phrase, text: string): boolean =>
  /^(bedroom|bath|half-bath)$/.test(thing) &&
  attributes.some(
    (one) => one.kind === 'number' && one.before && one.number.kind === 'count' && one.number.value > 1,
  ) &&
  !SAYS_MORE.test(text.slice(to, to + 12));

const SAYS_MORE =
  /^\s*(with|w\/|have|each|all|both|are|were|feature|boast|share|keep|kept|retain|show|offer|enjoy|got|get|gain|wear|receiv|still|[(:–—])/i;

/** "The laundry/mudroom has": two rooms that are spoken of as one. */
function withTwin(
  room: NonNullable<SentenceWords['context']>,
  before: SentenceWords['context'],
  phrase: Phrase,
  text: string,
): NonNullable<SentenceWords['context']> {
  if (before?.to === undefined || !TWIN.test(text.slice(before.to, phrase.from))) return room;
  return { ...room, place: { ...room.place, ids: [...before.place.ids, ...room.place.ids] } };
}

const TWIN = /^\s*(\/|and|&|\+)\s*(the )?$/i;

/** A set phrase says more than the words of which it is made: what these were taken for goes. */
function inSetPhrases(known: Known, text: string, from: number, to: number, findings: Finding[]): void {
  for (const said of setPhrases(known, text.slice(from, to))) {
    const [start, end] = [from + said.from, from + said.to];
    for (const one of findings.slice()) {
      const shared = Math.min(one.to, end) - Math.max(one.from, start);
      if (shared > 0 && shared * 2 > one.to - one.from) findings.splice(findings.indexOf(one), 1);
    }
    findings.push({ ...said.judgement, from: start, to: end, says: text.slice(start, end) });
  }
}

/** Taste and salesmanship, where nothing else was told. */
function praise(units: readonly Unit[], findings: readonly Finding[], find: Find): void {
  const told = findings.toSorted((a, b) => a.from - b.from).values();
  let next = told.next().value;
  let end = 0;
  for (const unit of units) {
    for (; next !== undefined && next.from < unit.to; next = told.next().value) end = Math.max(end, next.to);
    if (has(unit, 'opinion') && unit.aside === undefined && end <= unit.from)
      find(unit.from, unit.to, {
        verdict: 'opinion',
        rule: 'praise',
        because: 'taste, left alone',
        facts: [],
      });
  }
}

/** The run of units that were set aside around a head. */
function asideSpan(units: readonly Unit[], at: number): readonly [number, number] {
  let [low, high] = [at, at];
  while (units[low - 1]?.aside === units[at]?.aside && units[low - 1] !== undefined) low--;
  while (units[high + 1]?.aside === units[at]?.aside && units[high + 1] !== undefined) high++;
  const { from, to } = stretchOf(units.slice(low, high + 1));
  return [from, to];
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
