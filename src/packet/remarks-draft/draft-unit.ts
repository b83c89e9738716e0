/** What a draft is put together from: facts in a few words each, with what is behind them. */
import type { FactPath } from '../../diagnostics/fact-path.js';
import type { EvidenceMark } from '../packet.js';

/** What stands behind a phrase. */
export interface Backing {
  /** The fact in words, for the list of traces. */
  readonly fact: string;
  readonly mark: EvidenceMark;
  /** Ids of the papers and photos behind it. */
  readonly evidence: readonly string[];
  readonly path: FactPath;
}

/** Some words of the text; those without a backing only join others and say nothing. */
export interface Piece {
  readonly text: string;
  readonly backing?: Backing;
}

/** Sentences of a draft, in the order in which they are read. */
export const SENTENCES = [
  'house',
  'size',
  'systems',
  'kitchen',
  'baths',
  'floors',
  'roof-and-structure',
  'services',
  'interior',
  'outside',
  'pool',
  'paint',
  'grounds',
  'utilities',
  'ground-and-walls',
  'association',
  'stays',
] as const;
export type SentenceId = (typeof SENTENCES)[number];

/** The smallest thing that is told or left out. */
export interface DraftUnit {
  readonly sentence: SentenceId;
  /** Which part of its sentence: a room, a slot; units of one part are told together. */
  readonly part?: string;
  /** What is asked first has the lowest. */
  readonly rank: number;
  readonly pieces: readonly Piece[];
  /** Told behind the part's list, once for all units with the same words: "new in 2026". */
  readonly tail?: string;
  /** Told once at the end of the part: what stands of a permit. Never without the unit it belongs to. */
  readonly aside?: readonly Piece[];
}

/** Words that join and say nothing by themselves. */
export const joining = (text: string): Piece => ({ text });

/** The words of several pieces. */
export const wordsOfPieces = (pieces: readonly Piece[]): string => pieces.map(({ text }) => text).join('');
