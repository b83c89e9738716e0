/**
 * A PDF that went out is held against what its house folder makes now.
 *
 * The packet's own data inside the PDF says of which edition and day it is; the same is made again and compared: byte
 * by byte, then fact by fact, then sheet by sheet.
 */
import { type ComposedHouse, composeHouse, EDITION_NAMES, renderPdf } from './build.js';
import { readDate } from './facts/date.js';
import { FOLDER_NAME } from './find-houses.js';
import type { HouseOrder } from './house-order.js';
import { compareFacts, type FactChange } from './packet/compare-facts.js';
import { FACTS_NAME, type FactsFile, readFactsFile } from './packet/facts-file.js';
import type { EditionName, Packet } from './packet/packet.js';
import { type PdfContents, readPdf } from './print/read-pdf.js';

/** A packet's PDF as it lies there. */
export interface PacketPdf {
  readonly bytes: Uint8Array;
  readonly contents: PdfContents;
  readonly facts: FactsFile;
  readonly edition: EditionName;
  readonly paper: HouseOrder['paper'];
}

/** What a PDF is beside the one that its house folder makes now. */
export type Verdict =
  | { readonly kind: 'same' }
  /** It tells other facts. */
  | { readonly kind: 'facts'; readonly changes: readonly FactChange[] }
  /** The same facts in its data, and sheets that show something else. */
  | { readonly kind: 'sheets'; readonly sheets: readonly number[] }
  /** The same facts and sheets, and notes or stamps over some of them. */
  | { readonly kind: 'laid-over'; readonly sheets: readonly number[] }
  /** The same facts and sheets in another file: saved anew, or a form filled in. */
  | { readonly kind: 'around' };

/** Reads a PDF as a packet; undefined if it is no PDF, or carries no packet's data. */
export async function readPacketPdf(bytes: Uint8Array): Promise<PacketPdf | undefined> {
  const contents = await readPdf(bytes);
  const text = contents?.attachedText(FACTS_NAME);
  const facts = text === undefined ? undefined : readFactsFile(text);
  if (contents === undefined || facts === undefined) return undefined;
  const edition = EDITION_NAMES.find((name) => name === facts.edition);
  const day = readDate(facts.asOf);
  // They become a folder's name and a day to count to; nobody else's file may choose others.
  if (edition === undefined || !FOLDER_NAME.test(facts.house.folder)) return undefined;
  if (!day.ok || day.value.precision !== 'day') return undefined;
  return {
    bytes,
    contents,
    facts,
    edition,
    paper: contents.paper.widthPt < LETTER_WIDTH - 1 ? 'a4' : 'letter',
  };
}

/** Points; A4 is narrower. */
const LETTER_WIDTH = 612;

export type Verified =
  | { readonly verdict: Verdict; readonly made: Packet; readonly composed: ComposedHouse }
  /** The folder's record has errors and makes no packet. */
  | { readonly verdict: undefined; readonly composed: ComposedHouse };

/** `order` names the house folder; edition, day and paper are the PDF's. Writes nothing but the photo cache. */
export async function verifyPdf(
  { bytes, contents, facts, edition, paper }: PacketPdf,
  order: Omit<HouseOrder, 'editions' | 'asOf' | 'paper'>,
): Promise<Verified> {
  const composed = await composeHouse({ ...order, editions: [edition], asOf: facts.asOf, paper });
  const made = composed.packets[0];
  if (composed.failed || made === undefined) return { verdict: undefined, composed };
  const printed = await renderPdf(made, composed.picturesOf(made), paper);
  const verdict = async (): Promise<Verdict> => {
    if (Buffer.compare(printed.bytes, bytes) === 0) return { kind: 'same' };
    const changes = compareFacts(facts, factsOf(made));
    if (changes.length > 0) return { kind: 'facts', changes };
    const ours = await readPdf(printed.bytes);
    if (ours === undefined) throw new Error('a PDF that was just made can’t be read');
    const sheets = differing(contents.sheets, ours.sheets);
    if (sheets.length > 0) return { kind: 'sheets', sheets };
    return contents.laidOver.length > 0
      ? { kind: 'laid-over', sheets: contents.laidOver }
      : { kind: 'around' };
  };
  return { verdict: await verdict(), made, composed };
}

function factsOf(packet: Packet): FactsFile {
  const text = packet.exports.find(({ file }) => file === FACTS_NAME)?.text;
  const facts = text === undefined ? undefined : readFactsFile(text);
  if (facts === undefined) throw new Error('a packet without its own data');
  return facts;
}

/** Numbers of sheets that differ, counted from 1; those that only one file has are among them. */
function differing(one: readonly string[], other: readonly string[]): number[] {
  const count = Math.max(one.length, other.length);
  return Array.from({ length: count }, (_, i) => i).flatMap((i) => (one[i] === other[i] ? [] : [i + 1]));
}
