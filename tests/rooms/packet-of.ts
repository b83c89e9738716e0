/** Packets of small houses for tests, and ways to find a block, a row or a mark in them. */
import { composePacket } from '../../src/packet/compose.js';
import type { Block, EditionName, EvidenceMark, Packet, Rich, TableRow } from '../../src/packet/packet.js';
import { wordsOf } from '../../src/packet/words-of.js';
import { deriveTally } from '../../src/tally/tally.js';
import { houseFrom, type PartialSpec } from './house-from.js';

export function packetOf(spec: PartialSpec, edition: EditionName = 'buyer'): Packet {
  const house = houseFrom(spec);
  const { tally } = deriveTally(house, '2026-06-30');
  return composePacket({ folder: 'test-house', house, tally, edition, photos: new Map() });
}

const blocks = (packet: Packet): Block[] => packet.sections.flatMap((section) => section.blocks);

export const plain = (text: Rich): string => text.map((run) => run.text).join('');

/** "Documented · receipt". */
export const markWords = (mark: EvidenceMark | undefined): string =>
  mark === undefined ? 'no mark' : [mark.word, plain(mark.detail)].filter(Boolean).join(' · ');

/** The block with this id. Fails the test if there is none. */
export function block(packet: Packet, id: string): Block {
  const found = blocks(packet).find((one) => one.id === id);
  if (found === undefined) throw new Error(`no block ${id}`);
  return found;
}

/** The words that a block shows by itself. */
export function text(packet: Packet, id: string): string {
  const found = block(packet, id);
  if (found.kind === 'statement' || found.kind === 'paragraph') return plain(found.text);
  return wordsOf(found).join('\n');
}

export function rowsOf(packet: Packet, id: string): readonly TableRow[] {
  const found = block(packet, id);
  return found.kind === 'table' ? found.rows : [];
}

/** The mark of the block, row or item with this id. Fails the test if there is none with it. */
export function mark(packet: Packet, id: string): string {
  const all: { readonly id: string; readonly mark?: EvidenceMark }[] = blocks(packet).flatMap((one) => [
    ...(one.kind === 'table' ? one.rows : one.kind === 'list' ? one.items : []),
    one as { id: string; mark?: EvidenceMark },
  ]);
  const found = all.find((one) => one.id === id);
  if (found === undefined) throw new Error(`nothing has the id ${id}`);
  return markWords(found.mark);
}

/** Everything that the packet prints, one string a line. */
export const allWords = (packet: Packet): string => blocks(packet).flatMap(wordsOf).join('\n');
