/** Of which part of the house a size is told, and whether a public record told it. */
import type { SizeClaim } from '../judge/judge-sizes.js';
import type { Phrase } from '../sentence/phrase.js';
import { sinceLast, untilFirst } from '../words/cut-at.js';
import type { Unit } from '../words/units.js';

const FULL_STOP = /[.!?](?=\s)|[;\n•]/;
const FINISHED = /finished|living/i;
const ALL_OF_IT = /under roof|total|gross|including|counting/i;
const ABOVE = /above grade|above ground|upstairs/i;

/** Which part of the house a size is said of, by the words around it. */
export function partMeant(text: string, { from, to }: Unit, owner: Phrase | undefined): SizeClaim['part'] {
  // What stands in another sentence is said of something else.
  const ahead = (most: number): string => sinceLast(text.slice(Math.max(0, from - most), from), FULL_STOP);
  const behind = (most: number): string => untilFirst(text.slice(to, to + most), FULL_STOP);
  const around = (before: number, after: number): string => `${ahead(before)}#${behind(after)}`;
  const own = `${ahead(26).split(BESIDE_AHEAD).at(-1)}#${behind(26).split(BESIDE_BEHIND)[0]}`;
  if (LEVEL.test(own) || PER_LEVEL.test(text.slice(to, to + 20))) return 'level';
  if (owner?.thing === 'basement' && !isBeside(text, from, to, owner)) return 'below';
  if (!FINISHED.test(around(40, 40)) && ALL_OF_IT.test(around(40, 60))) return 'everything';
  return ABOVE.test(around(30, 40)) ? 'above' : 'whole';
}

/** "1,200 sq ft plus a cellar", "a cellar below 1,200 sq ft": what is joined to a size by such words has another size. */
const BESIDE_BEHIND =
  /\b(?:plus|and|with|over|above|atop|on top of|besides|not (?:counting|including)|excluding|excl|without|in addition|beyond|apart|aside|along|before|then)\b|[&+\d]|\bw\//i;
const BESIDE_AHEAD =
  /\b(?:plus|and|under|beneath|below|supports?|supporting|besides|in addition to|beyond)\b|[&+\d]/i;

const isBeside = (text: string, from: number, to: number, owner: Phrase): boolean =>
  owner.from >= to
    ? BESIDE_BEHIND.test(text.slice(to, owner.from))
    : BESIDE_AHEAD.test(text.slice(owner.to, from));

const BY_RECORD =
  /\b(per|according to|by|via)\s+(the\s+)?(\w+\s+)?(county|tax|assessor|public|city|town|appraiser|card|record)|(county|tax|public|assessor['’]?s?|town|city) (record|card|roll|data|figure)|\b(county|assessor|town|record|card|appraiser)(s|'s)? (has|have|shows?|says?|lists?|gives?|counts?|reports?|records?|carr(y|ies))\b/i;

/** "County: 1,858" gives what stands behind it, and not what stands before. */
const RECORD_AHEAD = /\b(county|assessor|tax (?:record|roll|card))s?\s*[:=–—]\s*$/i;

/** "989 sq ft down", "936 sq ft per floor". */
const PER_LEVEL = /^\W*(?:up|down|below|each|per (?:floor|level|story)|on each)\b/i;

const LEVEL =
  /\b(main|first|second|lower|upper|ground|upstairs|downstairs|bsmt|basement|cellar)\b[^.;,]{0,10}(level|lvl|floor|story)?/i;

/** Whether the words beside a size, up to the next figure or stop, give it to a public record. */
export function isByRecord(text: string, from: number, to: number): boolean {
  const before = sinceLast(text.slice(Math.max(0, from - 45), from), /[;.!?\d]/);
  // "1,872 sq ft, larger than the county says" is the house's own figure.
  const behind = untilFirst(untilFirst(text.slice(to, to + 60), /[;.!?\d]/), /\bthan\b/i);
  return RECORD_AHEAD.test(before) || BY_RECORD.test(`${before}#${behind}`);
}
