/** `sillplate compare`: what several houses cost and took, side by side, for the owner alone. */
import path from 'node:path';
import { placeTrouble } from './archive/output-place.js';
import { recover, replaceFolder } from './archive/replace-folder.js';
import { pdfNameOf, renderPages, renderPdf } from './build.js';
import { compareHouses } from './compare-houses.js';
import type { Diagnostic } from './diagnostics/diagnostic.js';
import { diskTrouble } from './diagnostics/disk-trouble.js';
import { NOWHERE } from './diagnostics/place.js';
import { locate, printReport, visible } from './diagnostics/report.js';
import { findHouses, shownPath } from './find-houses.js';
import type { Packet } from './packet/packet.js';
import type { Terminal } from './terminal.js';

export interface CompareOptions {
  readonly content: string;
  readonly asOf: string;
  readonly out: string;
  readonly paper: 'letter' | 'a4';
}

export async function compareCommand(
  wanted: readonly string[],
  options: CompareOptions,
  terminal: Terminal,
): Promise<number> {
  const refuse = (trouble: readonly Diagnostic[]): number => {
    terminal.error(printReport(locate(trouble, NOWHERE), 'text', terminal.colour));
    return 1;
  };
  const { houses, diagnostics } = await findHouses(options.content, wanted);
  if (diagnostics.some(({ severity }) => severity === 'error')) return refuse(diagnostics);
  const { located, packet, shown, leftOut } = await compareHouses(houses, options.asOf);
  if (located.length > 0) terminal.out(`${printReport(located, 'text', terminal.colour)}\n`);
  for (const { house, why } of leftOut) terminal.out(`${visible(house)} is left out: ${why}\n`);
  if (packet === undefined) {
    terminal.out(nothingToCompare(shown, located.length > 0));
    return 1;
  }
  const trouble = await write(packet, options);
  if (trouble !== undefined) return refuse([trouble]);
  const at = (file: string): string => path.posix.join(shownPath(options.out), PLACE, file);
  terminal.out(
    `${shown.join(', ')}: compared as of ${options.asOf}\n  ${at('index.html')}\n  ${at(pdfNameOf(packet))}\n\nIt holds what was paid, and is for you alone.\n`,
  );
  return located.length > 0 ? 1 : 0;
}

/** Below the output folder. No house folder can be called so, and none is replaced by it. */
const PLACE = '_compared';

function nothingToCompare(shown: readonly string[], errors: boolean): string {
  const [only] = shown;
  if (only !== undefined)
    return `\n${visible(only)} alone can’t be compared. Name another house behind it, or leave the names out for all of them.\n`;
  if (errors) return '\nNothing was compared; what was there before is as it was.\n';
  return '\nThere is no house to compare. A house needs costs.csv, for example\n\n  date,payee,what,amount,bucket\n  2026-04-03,Corner Supply,vinyl plank,472.14,improvement\n';
}

async function write(packet: Packet, options: CompareOptions): Promise<Diagnostic | undefined> {
  const out = path.resolve(options.out);
  const shown = path.posix.join(shownPath(options.out), PLACE);
  try {
    await recover(out, PLACE);
    const own = ['index.html', 'assets', pdfNameOf(packet), ...packet.exports.map(({ file }) => file)];
    const unfit = await placeTrouble(path.join(out, PLACE), path.resolve(options.content), own, shown);
    if (unfit !== undefined) return unfit;
    const sheets = await renderPdf(packet, new Map(), options.paper);
    const pages = await renderPages(packet, new Map(), { file: pdfNameOf(packet), pages: sheets.pages });
    const files = [
      ...pages,
      { path: pdfNameOf(packet), bytes: sheets.bytes },
      ...packet.exports.flatMap((one) => ('text' in one ? [{ path: one.file, text: one.text }] : [])),
    ];
    return await replaceFolder(out, PLACE, files, shown);
  } catch (thrown) {
    if ((thrown as NodeJS.ErrnoException).syscall === undefined) throw thrown;
    return diskTrouble(thrown, shown);
  }
}
