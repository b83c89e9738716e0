/**
 * What a text says in set phrases, of the owners, the permits, the association or an answer, and of no thing that a
 * table knows: "one owner since it was built", "no open permits", "an engineer signed off". Each reader finds its
 * words in one sentence and holds them against the facts of the house.
 */

import type { Judgement, Known } from '../items/known.js';
import { answersRead } from './answers-read.js';
import { countsAtLeast } from './counts-at-least.js';
import { deniedRead } from './denied-read.js';
import { floodRead } from './flood-read.js';
import { houseKind } from './house-kind.js';
import { laundryRead } from './laundry-read.js';
import { leavesNothing } from './leaves-nothing.js';
import { listedRead } from './listed-read.js';
import { onlyRead } from './only-read.js';
import { outletsRead } from './outlets-read.js';
import { ownersRead } from './owners-read.js';
import { permitsRead } from './permits-read.js';
import { petsRead } from './pets-read.js';
import { rankedRooms } from './ranked-rooms.js';
import { ratedRead } from './rated-read.js';
import { streetParking } from './street-parking.js';
import { suppliedRead } from './supplied-read.js';
import { toldFigures } from './told-figures.js';
import { warrantiesRead } from './warranties-read.js';

/** Offsets are those of the sentence. */
export interface SetPhrase {
  readonly from: number;
  readonly to: number;
  readonly judgement: Judgement;
}

export type SetPhraseReader = (known: Known, sentence: string) => SetPhrase[];

const READERS: readonly SetPhraseReader[] = [
  ownersRead,
  petsRead,
  permitsRead,
  warrantiesRead,
  answersRead,
  countsAtLeast,
  deniedRead,
  listedRead,
  onlyRead,
  suppliedRead,
  rankedRooms,
  toldFigures,
  outletsRead,
  leavesNothing,
  streetParking,
  houseKind,
  floodRead,
  laundryRead,
  ratedRead,
];

export const setPhrases: SetPhraseReader = (known, sentence) =>
  READERS.flatMap((reader) => reader(known, sentence));

/** Every place at which a pattern with the flag g matches. */
export const matches = (pattern: RegExp, sentence: string): RegExpExecArray[] => [
  ...(sentence.matchAll(pattern) as Iterable<RegExpExecArray>),
];
