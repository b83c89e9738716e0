/** What `build-houses.ts` made, for the tests: packets, pages, PDFs. */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { inject } from 'vitest';
import { composeHouse, EDITION_NAMES, pdfNameOf } from '../../src/build.js';
import type { Packet } from '../../src/packet/packet.js';
import { BUILT_AS_OF } from './build-houses.js';

export interface BuiltEdition {
  readonly house: string;
  readonly packet: Packet;
  readonly folder: string;
  readonly pdf: string;
}

/** Those in `content/`; the other built houses are golden ones. */
export const DEMO_HOUSES = ['quarry-road', 'larkspur-court'] as const;

export const builtFolder = (): string => inject('built');

export const builtHouses = (): string[] => readdirSync(path.join(builtFolder(), 'content')).sort();

const composedOnce = new Map<string, Promise<BuiltEdition[]>>();

/** All editions of a built house, with the packets that were rendered. Composed once a process: nobody changes a packet. */
export function editionsOf(house: string): Promise<BuiltEdition[]> {
  const known = composedOnce.get(house) ?? compose(house);
  composedOnce.set(house, known);
  return known;
}

async function compose(house: string): Promise<BuiltEdition[]> {
  const built = builtFolder();
  const composed = await composeHouse({
    folder: path.join(built, 'content', house),
    shown: `content/${house}`,
    asOf: BUILT_AS_OF,
    editions: EDITION_NAMES,
    out: path.join(built, 'out'),
    outShown: 'out',
    paper: 'letter',
  });
  return composed.packets.map((packet) => {
    const folder = path.join(built, 'out', house, packet.edition.name);
    return { house, packet, folder, pdf: path.join(folder, pdfNameOf(packet)) };
  });
}

/** Page's file name → HTML. */
export function pagesIn(folder: string): Map<string, string> {
  const names = readdirSync(folder).filter((name) => name.endsWith('.html'));
  return new Map(names.map((name) => [name, readFileSync(path.join(folder, name), 'utf8')]));
}

/** Every file below a folder, as paths with forward slashes. */
export function filesBelow(folder: string): string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((one) => one.isFile())
    .map((one) => path.relative(folder, path.join(one.parentPath, one.name)).split(path.sep).join('/'))
    .sort();
}
