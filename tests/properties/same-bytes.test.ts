/**
 * Same input, same bytes: in another process, another folder, another time zone and language, with an empty and
 * a filled photo cache, and whatever was made before in the same process.
 */

import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { buildHouse, EDITION_NAMES } from '../../src/build.js';
import { MADE_FROM } from '../../src/made-from.js';
import type { EditionName } from '../../src/packet/packet.js';
import { HOUSES_FOLDER } from '../tools/golden-houses.js';
import { photoWithSecrets } from '../tools/photo-with-secrets.js';
import { MADE_AS_OF, madeSpec } from './made-house.js';

const cli = fileURLToPath(new URL('../../dist/cli.js', import.meta.url));

/** File below the house's output folder → digest of its bytes. */
function digestsBelow(folder: string): Record<string, string> {
  const entries = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((one) => one.isFile());
  return Object.fromEntries(
    entries
      .map((one) => path.join(one.parentPath, one.name))
      .map((file) => [
        path.relative(folder, file),
        createHash('sha256').update(readFileSync(file)).digest('hex'),
      ])
      .sort(([a = ''], [b = '']) => (a < b ? -1 : 1)),
  );
}

const houses: string[] = [];
let root: string;

/** A made house with a photo, and the golden one with the wildest letters. */
beforeAll(async () => {
  root = mkdtempSync(path.join(tmpdir(), 'same-'));
  const [spec] = fc.sample(madeSpec, { seed: 99, numRuns: 1 });
  const made = path.join(root, 'content', 'made-house');
  mkdirSync(path.join(made, 'photos'), { recursive: true });
  writeFileSync(path.join(made, 'house.yaml'), JSON.stringify(spec));
  writeFileSync(path.join(made, 'photos', 'photo-1.jpg'), await photoWithSecrets('photo-1', 6));
  const hostile = path.join(root, 'content', 'hostile-texts');
  cpSync(path.join(HOUSES_FOLDER, 'hostile-texts', 'input'), hostile, { recursive: true });
  houses.push(made, hostile);
});

async function builtHere(folder: string, out: string, editions: readonly EditionName[]) {
  const { made } = await buildHouse({
    folder,
    shown: 'content',
    asOf: MADE_AS_OF,
    editions,
    out,
    outShown: 'out',
    paper: 'letter',
  });
  expect(made).toHaveLength(editions.length);
  return digestsBelow(path.join(out, path.basename(folder)));
}

function builtElsewhere(folder: string, place: string, environment: Record<string, string>) {
  const elsewhere = path.join(root, place);
  const name = path.basename(folder);
  mkdirSync(elsewhere, { recursive: true });
  cpSync(folder, path.join(elsewhere, 'houses', name), { recursive: true });
  const words = [
    `./houses/${name}`,
    '--as-of',
    MADE_AS_OF,
    '--out',
    'made',
    '--edition',
    EDITION_NAMES.join(','),
  ];
  execFileSync(process.execPath, [cli, 'build', ...words], {
    cwd: elsewhere,
    env: { PATH: process.env.PATH ?? '', HOME: elsewhere, ...environment },
  });
  return digestsBelow(path.join(elsewhere, 'made', name));
}

describe('a house', () => {
  it.each([0, 1])('comes out the same wherever and whenever it is built: house %i', async (i) => {
    const folder = houses[i] ?? '';
    const here = await builtHere(folder, path.join(root, `out-${i}`), EDITION_NAMES);
    expect(Object.keys(here).length).toBeGreaterThan(20);
    const east = builtElsewhere(folder, 'a/long way/östlich', {
      TZ: 'Pacific/Kiritimati',
      LANG: 'de_DE.UTF-8',
      LC_ALL: 'tr_TR.UTF-8',
    });
    const west = builtElsewhere(folder, 'b', { TZ: 'Pacific/Niue', LANG: 'C', NO_COLOR: '1' });
    expect(east).toEqual(here);
    expect(west).toEqual(here);
  });

  it('comes out the same beside other editions, alone, and after other houses', async () => {
    const [made = '', hostile = ''] = houses;
    const all = await builtHere(made, path.join(root, 'out-all'), EDITION_NAMES);
    await builtHere(hostile, path.join(root, 'out-between'), ['agent']);
    for (const edition of EDITION_NAMES) {
      const { [MADE_FROM]: record, ...alone } = await builtHere(made, path.join(root, `out-${edition}`), [
        edition,
      ]);
      // What each was made from is told of those that were made.
      expect(record).toBeDefined();
      const among = Object.entries(all).filter(([file]) => file.startsWith(`${edition}${path.sep}`));
      expect(alone).toEqual(Object.fromEntries(among));
    }
  });

  it('comes out differently on another day: the comparison can fail', async () => {
    const [made = ''] = houses;
    const today = await builtHere(made, path.join(root, 'out-today'), ['agent']);
    await buildHouse({
      folder: made,
      shown: 'content',
      asOf: '2026-07-01',
      editions: ['agent'],
      out: path.join(root, 'out-tomorrow'),
      outShown: 'out',
      paper: 'letter',
    });
    expect(digestsBelow(path.join(root, 'out-tomorrow', 'made-house'))).not.toEqual(today);
  });
});
