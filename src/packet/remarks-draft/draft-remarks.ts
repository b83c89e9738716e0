/**
 * Listing remarks written from the facts.
 *
 * Takes a context of the agent edition and a length. Gives a text no longer than that, each phrase with the fact and
 * the papers behind it, and what did not fit. Tells documented facts alone, unless the owner's statements are asked
 * for; never what is not known, a person, a sum, a withheld street, or praise. Where the text would be too long, what
 * is asked last goes first; no sentence is cut. Start reading at `draftRemarks`.
 */
import type { FactPath } from '../../diagnostics/fact-path.js';
import { remarksLength } from '../../tally/remarks-length.js';
import type { Context } from '../context.js';
import type { EvidenceMark } from '../packet.js';
import { inAmerican } from './american.js';
import type { DraftRules } from './backing.js';
import { type DraftUnit, type Piece, wordsOfPieces } from './draft-unit.js';
import { finishUnits } from './finish-units.js';
import { houseUnits } from './house-units.js';
import { mayBeSaid } from './may-be-said.js';
import { piecesOf } from './sentences.js';
import { systemUnits } from './system-units.js';
import { workUnits } from './work-units.js';

export interface DraftOrder {
  /** The most characters it may have, counted as `remarksLength` does. */
  readonly length: number;
  /** Whether the owner's statements may be told as well. */
  readonly owner?: boolean;
}

/** A few words of the draft and what is behind them. */
export interface DraftPhrase {
  /** UTF-16 offsets in the text. */
  readonly from: number;
  readonly to: number;
  /** The words. */
  readonly says: string;
  /** The fact, in words. */
  readonly fact: string;
  readonly mark: EvidenceMark;
  /** Ids of the papers and photos behind it. */
  readonly evidence: readonly string[];
  readonly path: FactPath;
}

type LeftFact = Omit<DraftPhrase, 'from' | 'to'>;

export interface RemarksDraft {
  readonly text: string;
  /** In the order of the text; none over another. */
  readonly phrases: readonly DraftPhrase[];
  /** Facts that might have been told and did not fit, most asked first. */
  readonly left: readonly LeftFact[];
}

/** From this rank on a fact is told only where all others were. */
const MINOR = 30;

export function draftRemarks(context: Context, { length, owner = false }: DraftOrder): RemarksDraft {
  const units = mostAskedFirst(unitsOf({ context, owner }));
  let chosen: readonly DraftUnit[] = [];
  const left: DraftUnit[] = [];
  for (const unit of units) {
    // A faucet does not fill the place of a bath that was left out.
    if (unit.rank >= MINOR && left.length > 0) {
      left.push(unit);
      continue;
    }
    const more = inOrder(units, [...chosen, unit]);
    if (remarksLength(wordsOfPieces(piecesOf(more))).characters <= length) chosen = more;
    else left.push(unit);
  }
  return { ...traced(piecesOf(chosen)), left: left.flatMap(({ pieces }) => pieces.flatMap(leftFact)) };
}

function unitsOf(rules: DraftRules): DraftUnit[] {
  const finishes = finishUnits(rules);
  const systems = systemUnits(rules);
  return [
    ...houseUnits(rules),
    ...systems.units,
    ...finishes.units,
    ...workUnits(rules, finishes.told, systems.told),
  ]
    .map(spelt)
    .filter((unit) => mayBeSaid(rules.context, wordsOfPieces([...unit.pieces, ...(unit.aside ?? [])])));
}

const spelt = (unit: DraftUnit): DraftUnit => ({
  ...unit,
  pieces: unit.pieces.map((piece) => ({ ...piece, text: inAmerican(piece.text) })),
});

/** By rank; where that is the same, as the facts stand in the folder. */
const mostAskedFirst = (units: readonly DraftUnit[]): DraftUnit[] =>
  units
    .map((unit, index) => ({ unit, index }))
    .sort((a, b) => a.unit.rank - b.unit.rank || a.index - b.index)
    .map(({ unit }) => unit);

const inOrder = (all: readonly DraftUnit[], some: readonly DraftUnit[]): DraftUnit[] =>
  all.filter((unit) => some.includes(unit));

function traced(pieces: readonly Piece[]): Pick<RemarksDraft, 'text' | 'phrases'> {
  let text = '';
  const phrases: DraftPhrase[] = [];
  for (const { text: says, backing } of pieces) {
    const from = text.length;
    text += says;
    if (backing !== undefined) phrases.push({ from, to: text.length, says, ...backing });
  }
  return { text, phrases };
}

const leftFact = ({ text, backing }: Piece): LeftFact[] =>
  backing === undefined ? [] : [{ says: text, ...backing }];
