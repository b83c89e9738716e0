/**
 * A packet never says what it would itself object to: what the owner wrote in their own words, and a published packet
 * shows, is held against the facts and the rules for advertisements as a draft of a listing text is.
 *
 * Notes tell of what was there before, of parts and of other houses, so only what can't be read otherwise is said:
 * counts, sizes, years and "new", in sentences about today.
 */
import type { Diagnostic } from './diagnostics/diagnostic.js';
import type { FactPath } from './diagnostics/fact-path.js';
import type { House } from './facts/house.js';
import type { ReadHouse } from './intake/read-house.js';
import type { Packet } from './packet/packet.js';
import { wordsOf } from './packet/words-of.js';
import { ruleName } from './remarks-as-data.js';
import { type AdvertisingFinding, checkAdvertising } from './tally/advertising.js';
import { checkRemarks } from './tally/remarks/check-remarks.js';
import type { Finding } from './tally/remarks/items/known.js';
import { mendFindings } from './tally/remarks/mend/mend-findings.js';
import type { Tally } from './tally/tally.js';
import { type FactText, textsIn } from './texts-in.js';

/** `text`: which of the texts says it. */
export type Objection =
  | { readonly kind: 'fact'; readonly finding: Finding; readonly text: number }
  | { readonly kind: 'word'; readonly finding: AdvertisingFinding; readonly text: number };

/** Warnings at the owner's words. `packets`: those that were composed; only published ones count. */
export function ownWords(
  packets: readonly Packet[],
  house: House,
  tally: Tally,
  read: ReadHouse,
): Diagnostic[] {
  const published = packets.filter(({ edition }) => edition.name !== 'file');
  const shown = published.map((packet) => ({ packet, letters: lettersOf(proseOf(packet).join('\n')) }));
  const texts = freeWordsIn(read.spec).flatMap((one) => {
    const key = lettersOf(one.text);
    const where = shown.find(({ letters }) => letters.includes(key));
    return where === undefined ? [] : [{ ...one, title: where.packet.edition.title }];
  });
  return objectionsTo(
    texts.map(({ text }) => text),
    house,
    tally,
  ).flatMap((objection) => {
    const at = texts[objection.text];
    if (at === undefined || (isCount(objection) && at.path[0] !== 'answers')) return [];
    return [warning(objection, at.title, at.path, read)];
  });
}

/** A house has a few dozen; every one is held against all facts. */
const MOST_SENTENCES = 300;
/** Beyond so many, what is wrong is told without words to write in its place. */
const MOST_MENDED = 30;

/** What some texts say that the facts contradict, or that no advertisement may say; in their order. */
export function objectionsTo(texts: readonly string[], house: House, tally: Tally): Objection[] {
  // Sentences that no certain rule can be about are not read at all: notes are many, and most are about parts.
  const sentences = texts
    .flatMap((text, index) =>
      sentencesOf(text)
        .filter(mayBeCertain)
        .map((words) => ({ words, index })),
    )
    .slice(0, MOST_SENTENCES);
  let mended = 0;
  const facts = together(
    sentences.map(({ words }) => words),
    (all) => checkRemarks(all, house, tally),
  ).flatMap(({ finding, index }): Objection[] => {
    const sentence = sentences[index];
    if (sentence === undefined || !isCertain(finding, sentence.words)) return [];
    if (++mended > MOST_MENDED) return [{ kind: 'fact', finding, text: sentence.index }];
    // Words that fit in place of what is said; the reason stays the judge's.
    const all = checkRemarks(sentence.words, house, tally);
    const better = mendFindings(sentence.words, all, house, tally).find(
      ({ rule, from, to }) => rule === finding.rule && from < finding.to && finding.from < to,
    );
    const fit = better === undefined ? finding : { ...better, because: finding.because };
    return [{ kind: 'fact', finding: fit, text: sentence.index }];
  });
  const words = together(texts, checkAdvertising)
    .filter(({ finding }) => finding.level === 'block')
    .map(({ finding, index }): Objection => ({ kind: 'word', finding, text: index }));
  return [...facts, ...words].sort((a, b) => a.text - b.text);
}

/** One reading for all of them, since each begins anew with the facts; every text is a paragraph of its own. */
function together<Found extends { readonly from: number; readonly to: number }>(
  texts: readonly string[],
  check: (all: string) => readonly Found[],
): { finding: Found; index: number }[] {
  if (texts.length === 0) return [];
  const starts: number[] = [];
  let at = 0;
  for (const text of texts) {
    starts.push(at);
    at += text.length + BETWEEN.length;
  }
  let index = 0;
  return [...check(texts.join(BETWEEN))]
    .sort((a, b) => a.from - b.from)
    .map((finding) => {
      while ((starts[index + 1] ?? Number.POSITIVE_INFINITY) <= finding.from) index += 1;
      const start = starts[index] ?? 0;
      return { finding: { ...finding, from: finding.from - start, to: finding.to - start }, index };
    });
}

const BETWEEN = '\n\n';

// ------------------------------------------------------------------ what is certain

/** Rules whose word is a figure that one fact has, or "new". */
const CERTAIN =
  /^(count\.(bedrooms|baths|cars|storeys)|size\.(living-area|lot)|date\.year|newness\.new|kind\.(water-source|sewer))$/;

/**
 * A sentence without any of these can't be contradicted by one of those rules: a year beside a thing that has one, a
 * count of rooms, cars or storeys, a size, "new", and where water comes from or goes to. The words of the tables take
 * longer to load than all the rest takes, so they are loaded only where something is to be read.
 */
const WORTH_A_LOOK = new RegExp(
  [
    String.raw`\b(?:roofs?|shingles|furnace|boiler|heater|heat pump|air condition\w*|windows|siding|panel|wiring|plumbing|pipes|deck|pool|kitchen|house|home)\b.*\b(?:18|19|20)\d\d\b`,
    String.raw`\b(?:18|19|20)\d\d (?:roof|furnace|boiler|water heater|heat pump|windows|kitchen|house|home)\b`,
    String.raw`\b(?:\d+|one|two|three|four|five|six|seven|eight)[\s-]+(?:full |half )?(?:bed|bath|car|stor(?:y|ey|ies))`,
    String.raw`\d\s*(?:sq\b|square f|acre)|\bacre\b`,
    String.raw`\bnew (?:roof|furnace|boiler|water heater|heat pump|windows|kitchen|bath|siding|wiring|plumbing)\b`,
    String.raw`\b(?:public|city|town|private)\s+(?:water|sewer)|\bwell water|\bseptic`,
  ].join('|'),
  'i',
);

/** A sentence about what was, may be, or was said. */
const NOT_TODAY =
  /\b(?:was|were|had|been|once|former(?:ly)?|earlier|previous(?:ly)?|before|until|used to|old|older|originally|card|record|seller|said|says?|told|asked|maybe|perhaps|could|would|might|not|no|nobody|never|taken|removed|out|counted|printed|since|about|between)\b/i;

/** With their stops. */
const sentencesOf = (text: string): string[] =>
  text.split(/(?<=[.!?])\s+|\n/u).filter((sentence) => sentence.trim().includes(' '));

/** A list behind a colon is no sentence about the house, and a question none at all. */
const mayBeCertain = (sentence: string): boolean =>
  WORTH_A_LOOK.test(sentence) && !NOT_TODAY.test(sentence) && !/:|\?$/.test(sentence);

function isCertain({ verdict, rule, says, because, from, to }: Finding, sentence: string): boolean {
  if (verdict !== 'contradicted' || !CERTAIN.test(rule)) return false;
  // A fraction or a part of a measure is no count, and a kind of bath not three of them.
  if (/[\d/'"′″]$/.test(sentence.slice(0, from)) || /^[/'"′″]/.test(sentence.slice(to))) return false;
  if (/^three[- ]quarter/i.test(says)) return false;
  const years = sentence.match(YEAR)?.length ?? 0;
  // What was new in a year may be old now; and of two years each may belong to another thing.
  if (rule === 'newness.new') return /\bnew\b/i.test(says) && years === 0;
  // "painted 2025" alone names no thing.
  if (rule === 'date.year') return years === 1 && !/^\w+ed\b/i.test(says) && ONE_THING.test(because);
  // Of a gallon of paint, a room or a lawn.
  if (rule === 'size.living-area' && !/\b(?:house|home|living|finished|above grade)\b/i.test(sentence))
    return false;
  return ONE_THING.test(because);
}

const YEAR = /\b(?:18|19|20)\d\d\b/g;

/** The verdict rests on what the folder says of the very thing, not on another deed or another's figure. */
const ONE_THING = /^the folder (?:says|lists)/;

/** "serves two bedrooms" counts them, and not all of them: counts mean the house in its answers alone. */
const isCount = (objection: Objection): boolean =>
  objection.kind === 'fact' && /^(count|kind)\./.test(objection.finding.rule);

// ------------------------------------------------------------------ whose words

/** The last word of paths that hold an owner's sentences. All others are facts, names and figures. */
const FREE = new Set(['note', 'how', 'why']);

function freeWordsIn(spec: unknown): FactText[] {
  return textsIn(spec).filter(({ path, text }) => {
    if (!text.trim().includes(' ')) return false;
    const names = path.filter((part) => typeof part === 'string');
    const last = names.at(-1) ?? '';
    if (FREE.has(last)) return true;
    if (names[0] === 'answers') return last === 'answer' || (last === 'is' && names.includes('answer'));
    return names[0] === 'conditions' && last === 'what';
  });
}

/** What a packet shows as sentences or cells; drawings and forms hold none of the owner's. */
const proseOf = ({ sections }: Packet): string[] =>
  sections.flatMap(({ blocks }) =>
    blocks.filter(({ kind }) => kind !== 'drawing' && kind !== 'form').flatMap(wordsOf),
  );

/** A text as far as no full stop, capital or kind of quotation mark changes it. */
const lettersOf = (text: string): string => text.toLowerCase().replace(/[^\p{L}\p{N}\n]+/gu, '');

// ------------------------------------------------------------------ what is said

function warning(objection: Objection, title: string, path: FactPath, read: ReadHouse): Diagnostic {
  const packet = `the ${title.toLowerCase()}`;
  if (objection.kind === 'word') {
    const { words, because, instead, rule } = objection.finding;
    return {
      code: 'remarks.own-words',
      severity: 'warning',
      path,
      message: `${packet} says “${words}” here, and ${because} (${ruleName(rule)})`,
      hints: [instead ?? 'leave it out'],
    };
  }
  const { says, because, facts, instead } = objection.finding;
  const [fact] = facts;
  return {
    code: 'remarks.own-words',
    severity: 'warning',
    path,
    ...(fact === undefined ? {} : { beside: read.writtenPath(fact.path) }),
    message: `${packet} says “${says}” here, and ${because}`,
    hints: [
      instead === undefined ? 'leave it out' : `write  ${instead}`,
      'or, if these words are right, correct the fact',
    ],
  };
}
