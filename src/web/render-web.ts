/**
 * The web room: one packet becomes HTML pages with their style sheet, fonts and photos.
 *
 * Takes a packet, its pictures and what is known of the paper edition. Gives files to be put into the
 * edition's folder. Never decides who sees what, never words or rounds a fact, never writes to disk.
 * Start reading at `renderWeb`; then `page-view.ts` (what a page holds) and `templates/page.njk` (how it looks).
 */
import type { OutputFile, Packet, Pictures } from '../packet/packet.js';
import type { Paper } from './page-view.js';
import { runEleventy } from './run-eleventy.js';
import { assetsOf } from './site-assets.js';

/**
 * All files of one edition's pages, sorted as the pages follow each other; paths are relative to its folder.
 * The packet's exports and the PDF are linked but not among them.
 * Rejects on a link to an id that the packet hasn't and on a photo that was not made ready: both are our bugs.
 */
export async function renderWeb(
  packet: Packet,
  pictures: Pictures,
  paper: Paper | undefined,
): Promise<OutputFile[]> {
  const pages = await runEleventy({ packet, pictures, paper });
  return [...[...pages].map(([path, text]) => ({ path, text })), ...assetsOf(packet, pictures)];
}
