/** Questions and their answers: "Q: How old is the roof? A: About seven years." */
import { stretchOf } from '../words/stretch-of.js';
import { has, type Unit } from '../words/units.js';

/** "All new except the refrigerator": what is not new, and nothing that goes. */
const isExceptionOfDeed = (unit: Unit, all: readonly Unit[]): boolean =>
  /^(except|minus|less)$/.test(unit.word) &&
  has(unit, 'convey') &&
  all.some((other) => has(other, 'newness')) &&
  !all.some((other) => other !== unit && has(other, 'convey'));

const plainWord = (unit: Unit): Unit => ({ ...unit, senses: [{ tag: 'preposition', id: 'preposition' }] });

/** A question that asks, and claims nothing of what it names. */
const ASKS = /^(is|are|was|were|does|do|did|has|have|had|how|what|when|who|which|any|can|will|where|why)$/;
const CLAIMS = [
  'newness',
  'condition',
  'convey',
  'permit',
  'unpermitted',
  'inspected',
  'who',
  'trade',
] as const;

/** The units of a sentence without the letters that mark a question and its answer, and with the subject that an answer leaves out. */
export function withAnswers(units: Unit[], text: string, spoken: string | undefined): Unit[] {
  const { from, to } = stretchOf(units);
  const asked = endsInQuestion(text, to);
  const plain = notAsserted(withoutLetters(units)).map((unit, _, all) =>
    isExceptionOfDeed(unit, all) ? plainWord(unit) : unit,
  );
  if (asked && ASKS.test(firstWord(plain))) return plain.map((unit) => asking(unit));
  if (spoken === undefined || !/\?\s*$/.test(text.slice(Math.max(0, from - 3), from))) return plain;
  const first = plain[0];
  if (first === undefined || !answersAlone(plain)) return plain;
  const subject: Unit = {
    from: first.from,
    to: first.from,
    senses: [{ tag: 'thing', id: spoken }],
    number: undefined,
    sign: undefined,
    word: '',
    joined: false,
    aside: undefined,
  };
  return [subject, ...plain];
}

const ASSENTS = /^(yes|yep|yup|yeah|sure|absolutely|indeed|correct|definitely|certainly)$/;

/** "Is the tub new? No, recoated": what was asked is claimed by nobody but who says yes. */
function notAsserted(units: Unit[]): Unit[] {
  const at = units.findIndex(({ sign }) => sign === '?');
  const answer = units[at + 1];
  // "What stays? Washer, fridge": the answer is what does.
  if (/^(what|which)$/.test(firstWord(units)) && units.slice(0, at).some((unit) => has(unit, 'convey')))
    return units;
  if (at < 0 || answer === undefined || ASSENTS.test(answer.word) || !ASKS.test(firstWord(units)))
    return units;
  // "No," goes, so that what is said instead stands behind the question.
  const denied = /^(no|nope|nah)$/.test(answer.word) && units[at + 2]?.sign === ',' ? at : Number.NaN;
  return units
    .map((unit, index) => (index < at ? asking(unit) : unit))
    .filter((_, index) => index !== denied + 1 && index !== denied + 2);
}

/** "Q:", "A:" at the beginning and behind a question mark. */
function withoutLetters(units: Unit[]): Unit[] {
  const marks = new Set<number>();
  for (const [at, unit] of units.entries())
    if (
      /^(q|a)$/.test(unit.word) &&
      /^[:.—]$/.test(units[at + 1]?.sign ?? '') &&
      (at === 0 || units[at - 1]?.sign === '?')
    )
      marks.add(at).add(at + 1);
  return marks.size === 0 ? units : units.filter((_, at) => !marks.has(at));
}

const firstWord = (units: readonly Unit[]): string =>
  units.find(({ sign }) => sign === undefined)?.word ?? '';

/** What a yes or a no answers is read as it stands; the answer decides of it. */
const ANSWERED_BY_YES =
  /^\s*\?\s*(?:a(?:nswer)?\s*[:.—–-]\s*)?(yes|yep|yup|yeah|absolutely|certainly|definitely|sure|no|nope|never|nah|none|not)\b/i;

const endsInQuestion = (text: string, to: number): boolean =>
  /^\s*\?/.test(text.slice(to, to + 3)) && !ANSWERED_BY_YES.test(text.slice(to, to + 24));

const asking = (unit: Unit): Unit => ({
  ...unit,
  senses: unit.senses.filter(({ tag }) => !CLAIMS.some((claim) => claim === tag)),
});

/** It names no thing of its own, and says something of one. */
const answersAlone = (units: readonly Unit[]): boolean =>
  units.every((unit) => !has(unit, 'thing') || has(unit, 'newness')) &&
  units.slice(0, 8).some((unit) => has(unit, 'newness') || isMoment(unit));

const isMoment = ({ number }: Unit): boolean =>
  number !== undefined && /^(year|age|within|ago)$/.test(number.kind);
