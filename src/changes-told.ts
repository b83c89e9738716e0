/** What changed since a delivery, as lines on its owner's screen: here old words are told, whatever an edition withholds. */
import type { SinceDelivery } from './delivered.js';
import { visible } from './diagnostics/report.js';
import { aboutOf, nothingChanged, restOf } from './packet/changes-since.js';
import { cutWords } from './packet/cut-words.js';
import { isoDate } from './packet/date-words.js';
import { EDITIONS } from './packet/edition-house.js';
import type { SaidFact } from './packet/facts-file.js';
import { whereTheyDiffer } from './packet/where-they-differ.js';

/** More of one kind are no longer read one by one. */
const MOST = 20;
/** Characters of one text. */
const LONGEST = 200;

export function changesTold(since: SinceDelivery, indent = '  '): string {
  const { delivered, corrections, told, added, gone } = since;
  const head = `Since the ${EDITIONS[delivered.edition].title.toLowerCase()} of ${isoDate(delivered.given)} to ${delivered.to.join(', ')} (digest ${delivered.said.digest})`;
  if (nothingChanged(since)) return lines(indent, [`${head}: nothing changed`]);
  const out = [
    `${head}:`,
    ...block(
      'corrected',
      corrections.map(({ words, before, printed }) => [`${words}: it said ${before}, and is ${printed}`]),
    ),
    ...block(
      'told otherwise',
      told.map(({ section, about, oldWords, is, wasKnown }) => {
        if (wasKnown !== undefined)
          return [`${section}: ${about}`, `  it was known by: ${wasKnown.toLowerCase()}`];
        const [before, after] =
          Math.max(oldWords.length, is.length) > LONGEST ? whereTheyDiffer(oldWords, is) : [oldWords, is];
        return [`${section}: ${about}`, `  it said      ${cut(before)}`, `  it says now  ${cut(after)}`];
      }),
    ),
    ...block(
      'new',
      added.map(({ fact }) => [named(fact)]),
    ),
    ...block(
      'no longer told',
      gone.map((fact) => [named(fact)]),
    ),
    ...rest(since),
  ];
  return lines(indent, out);
}

function block(title: string, items: readonly (readonly string[])[]): string[] {
  if (items.length === 0) return [];
  const more = items.length - MOST;
  return [
    `  ${title} (${items.length})`,
    ...items.slice(0, MOST).flatMap((item) => item.map((line) => `    ${line}`)),
    ...(more > 0 ? [`    and ${more} more; all of them with  sillplate deliveries --format json`] : []),
  ];
}

function rest({ otherPapers, movedTo, pictures, drawings, head, otherProgram }: SinceDelivery): string[] {
  const photos = pictures.added + pictures.exchanged + pictures.gone;
  return [
    ...head.map(({ about, was, is }) => `  ${about}: it was ${was}, and is ${is}`),
    ...(otherPapers > 0 ? [`  ${otherPapers} with the same words rest on other papers`] : []),
    ...(movedTo.length > 0 ? [`  under other headings now: ${movedTo.join(', ')}`] : []),
    ...(photos > 0
      ? [`  photos: ${pictures.added} new, ${pictures.exchanged} changed, ${pictures.gone} gone`]
      : []),
    ...(drawings > 0 ? [`  drawings made anew: ${drawings}`] : []),
    ...(otherProgram
      ? ['  another version of the program made it, and may have worded the same facts in another way']
      : []),
  ];
}

const named = (fact: SaidFact): string =>
  [fact.section, aboutOf(fact), cut(restOf(fact))].filter((part) => part !== '').join(': ');

const cut = (words: string): string => cutWords(words, 2 * LONGEST);

const lines = (indent: string, all: readonly string[]): string =>
  all.map((line) => `${indent}${visible(line.replace(/\s*\n\s*/gu, ' '))}\n`).join('');
