/** The invented houses of tests/houses: where they lie, and how one is composed. */
import { cpSync, mkdtempSync, readdirSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { type ComposedHouse, composeHouse, EDITION_NAMES } from '../../src/build.js';

export const HOUSES_FOLDER = fileURLToPath(new URL('../houses', import.meta.url));
const AS_OF = '2026-06-30';

export const goldenHouses = (): string[] =>
  readdirSync(HOUSES_FOLDER, { withFileTypes: true })
    .filter((one) => one.isDirectory())
    .map((one) => one.name)
    .sort();

/** Copies a house to a temporary folder of its own name, since the folder's name is part of what a packet says. */
function copiedHouse(name: string): { content: string; folder: string } {
  const content = mkdtempSync(path.join(tmpdir(), 'houses-'));
  const folder = path.join(content, name);
  cpSync(path.join(HOUSES_FOLDER, name, 'input'), folder, { recursive: true });
  return { content, folder };
}

/** All editions of one house. Fails if an error stands. */
export async function composedHouse(name: string): Promise<ComposedHouse> {
  const { content, folder } = copiedHouse(name);
  const composed = await composeHouse({
    folder,
    shown: `tests/houses/${name}/input`,
    asOf: AS_OF,
    editions: EDITION_NAMES,
    out: path.join(content, 'out'),
    outShown: 'out',
    paper: 'letter',
  });
  if (composed.failed)
    throw new Error(`${name} is at fault:\n${JSON.stringify(composed.diagnostics, null, 2)}`);
  return composed;
}
