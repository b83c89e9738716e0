/**
 * A PDF that went out is held against what its house folder makes now.
 *
 * The packet's data inside the PDF say of which edition and day it is. The same is made again, and compared byte by byte:
 * the same facts give the same bytes, and nothing less proves what the sheets show. Where the bytes differ, the facts are
 * compared, to say what changed.
 */
import { composeHouse, EDITION_NAMES, renderPdf } from './build.js';
import { factsInPdf, type Unreadable } from './data-in-pdf.js';
import type { Located } from './diagnostics/report.js';
import { readDate } from './facts/date.js';
import { FOLDER_NAME } from './find-houses.js';
import type { HouseOrder } from './house-order.js';
import { factsOf } from './packet/changes-since.js';
import { compareFacts, type FactChange } from './packet/compare-facts.js';
import type { FactsFile } from './packet/facts-file.js';
import type { EditionName } from './packet/packet.js';

/** A packet's PDF as it lies there. */
export interface PacketPdf {
  readonly bytes: Uint8Array;
  readonly facts: FactsFile;
  readonly edition: EditionName;
}

export type Verdict =
  | { readonly kind: 'same' }
  /** The packet, and behind it as many bytes more: a form filled in, a note, a signature, or another look. */
  | { readonly kind: 'added-to'; readonly bytes: number }
  /** It tells other facts. */
  | { readonly kind: 'facts'; readonly changes: readonly FactChange[] }
  /** The same facts in another file. What its sheets show is not known. */
  | { readonly kind: 'another-file' };

/** Reads a PDF as a packet, or says why it can't be one. */
export function readPacketPdf(bytes: Uint8Array): PacketPdf | Unreadable {
  const facts = factsInPdf(bytes);
  if (typeof facts === 'string') return facts;
  const edition = EDITION_NAMES.find((name) => name === facts.edition);
  const day = readDate(facts.asOf);
  // They become a folder's name and a day to count to; nobody else's file may choose others.
  if (edition === undefined || !FOLDER_NAME.test(facts.house.folder)) return 'no-data';
  if (!day.ok || day.value.precision !== 'day') return 'no-data';
  return { bytes, facts, edition };
}

export type Verified =
  /** `digest` is of the packet that the folder makes now. */
  | { readonly verdict: Verdict; readonly digest: string }
  /** The folder's record has errors and makes no packet. */
  | { readonly verdict: undefined; readonly located: readonly Located[] };

const PAPERS: readonly HouseOrder['paper'][] = ['letter', 'a4'];

/** `order` names the house folder; edition and day are the PDF's. Writes nothing but the photo cache. */
export async function verifyPdf(
  { bytes, facts, edition }: PacketPdf,
  order: Omit<HouseOrder, 'editions' | 'asOf' | 'paper'>,
): Promise<Verified> {
  // A folder that was renamed since makes the same packet, under its earlier name.
  const named = {
    ...order,
    named: facts.house.folder,
    editions: [edition],
    asOf: facts.asOf,
    paper: 'letter' as const,
  };
  const composed = await composeHouse(named);
  const made = composed.packets[0];
  if (composed.failed || made === undefined) return { verdict: undefined, located: composed.locate() };
  const { digest } = made;
  for (const paper of PAPERS) {
    const printed = await renderPdf(made, composed.picturesOf(made), paper);
    const ours = Buffer.from(printed.bytes);
    if (ours.compare(bytes, 0, Math.min(ours.length, bytes.length)) !== 0) continue;
    const more = bytes.length - ours.length;
    return { verdict: more === 0 ? { kind: 'same' } : { kind: 'added-to', bytes: more }, digest };
  }
  const changes = compareFacts(facts, factsOf(made));
  const verdict: Verdict = changes.length > 0 ? { kind: 'facts', changes } : { kind: 'another-file' };
  return { verdict, digest };
}
