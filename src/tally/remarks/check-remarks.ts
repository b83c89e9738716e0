/**
 * A draft of listing remarks, held against the facts of the house.
 *
 * Takes plain English text, a checked house and what was worked out of it. Gives findings in the order of the text, each
 * with the exact characters, a verdict, the facts behind it and words that would be true. No model and no network: the
 * words are data (`tables/remarks-*.yaml`), the rules are the `judge-*.ts` files. Start reading at `readSentence`.
 */
import type { House } from '../../facts/house.js';
import type { Tally } from '../tally.js';
import { type Finding, knownOf } from './items/known.js';
import { readSentence, type Spoken } from './read-sentence.js';
import { type Asked, askedIn, statementOf } from './sentence/questions.js';
import { answeredFindings, answeredIn } from './sentence/questions-answered.js';
import { stretchOf } from './words/stretch-of.js';
import { sentencesOf, tokenize } from './words/token.js';

export function checkRemarks(
  text: string,
  house: House,
  tally: Pick<Tally, 'areas' | 'ages' | 'asOf'>,
): Finding[] {
  const known = knownOf(house, tally);
  const tokens = tokenize(text);
  const findings: Finding[] = [];
  const questions = answeredIn(text, tokens);
  // The no that answers a question denies nothing behind it.
  const names = [...ownNames(text, house), ...questions.map(({ word }) => word)];
  let spoken: Spoken | undefined;
  let heading: Spoken['context'];
  const asked = askedIn(text).values();
  let pair = asked.next().value;
  for (const [first, end] of sentencesOf(text, tokens)) {
    let start = first;
    const { from, to } = stretchOf(tokens.slice(first, end));
    while (pair !== undefined && pair.to <= from) pair = asked.next().value;
    if (pair !== undefined && to > pair.from) {
      const { to: answered } = pair;
      // Question and answer are read together, once.
      if (from <= pair.from) {
        const told = readAnswered(known, pair, text, house);
        findings.push(...told.findings);
        spoken = told.spoken ?? spoken;
      }
      const rest = tokens.slice(first, end).filter((token) => token.from >= answered);
      if (rest.length === 0) continue;
      start = end - rest.length;
    }
    const read = readSentence({ known, text, tokens, names }, start, end, spoken, heading);
    findings.push(...read.findings);
    spoken = read.spoken;
    if (isLineByItself(text, from, to)) heading = spoken?.context;
  }
  return answeredFindings(known, text, questions, findings);
}

/** Characters that a heading has at most. */
const LONGEST_HEADING = 28;
const MARKS = /^[\s*#•:_~=–—-]*$/;

/** "**KITCHEN**": a line of a few words without a stop, with another line below. */
function isLineByItself(text: string, from: number, to: number): boolean {
  if (to - from > LONGEST_HEADING || !/[A-Za-z]/.test(text.slice(from, to))) return false;
  const start = text.lastIndexOf('\n', from) + 1;
  const below = text.indexOf('\n', to);
  return (
    below >= 0 &&
    !/[\d,]/.test(text.slice(from, to)) &&
    MARKS.test(text.slice(start, from)) &&
    !/^\s*[-•]/.test(text.slice(start, from)) &&
    MARKS.test(text.slice(to, below))
  );
}

/** What a question and its answer say together, where they stand in the draft. */
function readAnswered(
  known: ReturnType<typeof knownOf>,
  asked: Asked,
  draft: string,
  house: House,
): { readonly findings: Finding[]; readonly spoken: Spoken | undefined } {
  const { text, spanOf } = statementOf(asked);
  const tokens = tokenize(text);
  const names = ownNames(text, house);
  const findings: Finding[] = [];
  let spoken: Spoken | undefined;
  for (const [first, end] of sentencesOf(text, tokens)) {
    const read = readSentence({ known, text, tokens, names }, first, end, spoken);
    spoken = read.spoken ?? spoken;
    for (const one of read.findings) {
      const [from, to] = spanOf(one.from, one.to);
      findings.push({ ...one, from, to, says: draft.slice(from, to) });
    }
  }
  return { findings, spoken };
}

/** Where the text names the house, its street or its town: "Dry Lake Wells" has no well. */
function ownNames(text: string, { house, people }: House): (readonly [number, number])[] {
  const { address } = house;
  const street = address.street?.replace(/^[\d\s-]+/, '');
  // "By Dry Wash Roofing" says nothing of dryness.
  const firms = people.map(({ name }) => name).filter((name) => /\s/.test(name));
  const names = [house.name, street, address.city, address.county, ...firms].flatMap((name) =>
    name !== undefined && name.length > 3 ? [name.toLowerCase()] : [],
  );
  const lower = text.toLowerCase();
  return names.flatMap((word) => {
    const found: (readonly [number, number])[] = [];
    for (let at = lower.indexOf(word); at >= 0; at = lower.indexOf(word, at + word.length))
      found.push([at, at + word.length]);
    return found;
  });
}
