/**
 * The print room: one packet becomes the bytes of a PDF file.
 *
 * Takes a packet, its pictures and a paper size. Gives bytes, the number of pages, and the characters that no face
 * has (each drawn as an empty square that still copies as the character). It never decides who may see what,
 * rounds a number or asks a clock: the same packet and pictures give the same bytes. Start reading at `plan.ts`,
 * where a block becomes boxes; `paint.ts` makes operators of boxes, `write-pdf.ts` a file of operators.
 */
import type { Packet, Pictures } from '../packet/packet.js';
import { loadFaces } from './faces.js';
import { sharedLetters } from './letters.js';
import type { PaperName } from './paper.js';
import { planPages } from './plan.js';
import { writePdf } from './write-pdf.js';

export interface Printed {
  readonly bytes: Uint8Array;
  readonly pages: number;
  /** Characters that no face has, each once. */
  readonly missing: readonly string[];
}

/**
 * Renders a packet for paper.
 *
 * Fails with the file system's error when the fonts of the compile step or a photo's file are not there; a photo
 * that has no picture at all is printed as a plain area with its alternative text.
 */
export async function renderPrint(packet: Packet, pictures: Pictures, paper: PaperName): Promise<Printed> {
  const letters = sharedLetters(loadFaces);
  const plan = planPages(packet, pictures, paper, letters);
  const bytes = await writePdf(plan, packet, pictures, letters);
  return { bytes, pages: plan.pages.length, missing: plan.missing };
}
