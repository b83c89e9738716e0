/**
 * Whole invented houses, edition by edition: the packet, where it stands on paper, what its pages say.
 *
 * A mismatch leaves `expected-changed/` beside `expected/` to look at; `node tests/tools/accept-houses.mjs`
 * takes it over. Bytes are compared elsewhere; here a person can read the difference.
 */
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { FACTS_NAME } from '../src/packet/facts-file.js';
import type { Packet, Pictures } from '../src/packet/packet.js';
import { loadFaces } from '../src/print/faces.js';
import { sharedLetters } from '../src/print/letters.js';
import { planPages } from '../src/print/plan.js';
import { renderWeb } from '../src/web/render-web.js';
import { htmlOf } from './rooms/rendered-sample.js';
import { composedHouse, goldenHouses, HOUSES_FOLDER } from './tools/golden-houses.js';
import { planAsText } from './tools/plan-as-text.js';
import { readablePage } from './tools/readable-page.js';

/** One house is kept whole; of the others, what they are there for. */
const WHOLE = 'tiny-cottage';

async function madeOf(packet: Packet, pictures: Pictures, whole: boolean): Promise<[string, string][]> {
  const { name } = packet.edition;
  // Its own data say the packet again; one edition's are enough to look at.
  const exports = packet.exports.filter(({ file }) => file !== FACTS_NAME || (whole && name === 'visit'));
  const json: [string, string] = [
    `${name}/packet.json`,
    `${JSON.stringify({ ...packet, exports }, null, 1)}\n`,
  ];
  if (!whole && name !== 'buyer') return [[`${name}/pages.txt`, await pagesOf(packet, pictures)]];
  if (!whole) return [json, [`${name}/pages.txt`, await pagesOf(packet, pictures)]];
  const plan = planAsText(planPages(packet, pictures, 'letter', sharedLetters(loadFaces)));
  return [json, [`${name}/plan.txt`, plan], [`${name}/pages.txt`, await pagesOf(packet, pictures)]];
}

async function pagesOf(packet: Packet, pictures: Pictures): Promise<string> {
  const pages = htmlOf(await renderWeb(packet, pictures, { file: 'packet.pdf', pages: 1 }));
  return [...pages].map(([file, html]) => `=== ${file}\n${readablePage(html)}`).join('\n');
}

function filesIn(folder: string): Map<string, string> {
  if (!existsSync(folder)) return new Map();
  const entries = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((one) => one.isFile());
  const named = entries.map((one): [string, string] => {
    const file = path.join(one.parentPath, one.name);
    return [path.relative(folder, file).split(path.sep).join('/'), readFileSync(file, 'utf8')];
  });
  return new Map(named.sort(([a], [b]) => (a < b ? -1 : 1)));
}

function leaveToLookAt(folder: string, files: ReadonlyMap<string, string>): void {
  rmSync(folder, { recursive: true, force: true });
  for (const [file, text] of files) {
    const to = path.join(folder, file);
    mkdirSync(path.dirname(to), { recursive: true });
    writeFileSync(to, text);
  }
}

describe('the houses', () => {
  it('are there', () => {
    expect(goldenHouses()).toEqual(expect.arrayContaining(['hostile-texts', 'split-level', WHOLE]));
  });

  it.each(goldenHouses())('%s says what it said', async (name) => {
    const composed = await composedHouse(name);
    const made = new Map<string, string>();
    for (const packet of composed.packets)
      for (const [file, text] of await madeOf(packet, composed.picturesOf(packet), name === WHOLE))
        made.set(file, text);
    const expected = filesIn(path.join(HOUSES_FOLDER, name, 'expected'));
    const changed = path.join(HOUSES_FOLDER, name, 'expected-changed');
    const differing = [...new Set([...made.keys(), ...expected.keys()])]
      .filter((file) => made.get(file) !== expected.get(file))
      .sort();
    if (differing.length > 0) leaveToLookAt(changed, made);
    else rmSync(changed, { recursive: true, force: true });
    const first = differing[0];
    if (first !== undefined) expect(made.get(first), `${name}, ${first}`).toBe(expected.get(first));
    expect(differing, 'see expected-changed/; accept with node tests/tools/accept-houses.mjs').toEqual([]);
  });
});
