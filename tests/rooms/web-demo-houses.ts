/** The demo houses' packets and their pages, rendered for the checks that read every page. */
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { composeHouse, EDITION_NAMES, pdfNameOf, renderPages } from '../../src/build.js';
import type { EditionName, OutputFile, Packet } from '../../src/packet/packet.js';

const content = fileURLToPath(new URL('../../content/', import.meta.url));

export const DEMO_HOUSES = ['quarry-road', 'larkspur-court'] as const;

export interface DemoEdition {
  readonly house: string;
  readonly edition: EditionName;
  readonly packet: Packet;
  readonly files: readonly OutputFile[];
}

export interface DemoPages {
  readonly editions: readonly DemoEdition[];
  /** Deletes the photos that the files are to be copied from. */
  readonly clear: () => Promise<void>;
}

/** Every edition of every demo house, the house file among them. Throws when a house has an error. */
export async function demoPages(): Promise<DemoPages> {
  const out = await mkdtemp(join(tmpdir(), 'demo-photos-'));
  const editions: DemoEdition[] = [];
  for (const house of DEMO_HOUSES) {
    const composed = await composeHouse({
      folder: join(content, house),
      shown: `content/${house}`,
      asOf: '2026-11-20',
      editions: EDITION_NAMES,
      out,
      outShown: 'out',
      paper: 'letter',
    });
    if (composed.failed) {
      const errors = composed.diagnostics.filter((one) => one.severity === 'error');
      throw new Error(`${house} can't be composed: ${errors.map((one) => one.message).join('; ')}`);
    }
    for (const packet of composed.packets) {
      const files = await renderPages(packet, composed.picturesOf(packet), {
        file: pdfNameOf(packet),
        pages: 9,
      });
      editions.push({ house, edition: packet.edition.name, packet, files });
    }
  }
  return { editions, clear: () => rm(out, { recursive: true, force: true }) };
}
