/** Eleventy's own command on one small house, in a folder and a process of its own. */
import { execFile } from 'node:child_process';
import { cp, mkdir, mkdtemp, readdir, readFile, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { attributes } from './rendered-sample.js';

const root = fileURLToPath(new URL('../../', import.meta.url));
const run = promisify(execFile);

const HOUSE = `
house:
  name: Elder Lane
  address: { city: Fallow Mills, state: OH, show: city-only }
  kind: detached
  built: 1961
people:
  - { id: mill-plumbing, name: Mill Plumbing, trade: plumber }
levels:
  - { id: main, name: Main level, grade: above, outline: [east 30', north 20', west 30', south 20'], ceiling: 8' }
rooms:
  - { id: kitchen, level: main, use: kitchen, size: 10' x 12' }
systems:
  - { id: heater, is: "water heater, tank, electric", name: Water heater, where: kitchen, installed: 2026-03 }
work:
  - { id: tap, what: kitchen tap, did: replaced, where: [kitchen], done: 2026-03, by: mill-plumbing }
`;

let folder: string;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'by-hand-'));
  // What an owner has beside the houses; the compiled program and the packages are too big to copy.
  for (const name of ['.eleventy.js', 'package.json', 'templates'])
    await cp(join(root, name), join(folder, name), { recursive: true });
  for (const name of ['dist', 'node_modules']) await symlink(join(root, name), join(folder, name), 'dir');
  await mkdir(join(folder, 'houses/elder-lane'), { recursive: true });
  await writeFile(join(folder, 'houses/elder-lane/house.yaml'), HOUSE);
});

afterAll(() => rm(folder, { recursive: true, force: true }));

function eleventy(settings: Record<string, string>) {
  const command = join(root, 'node_modules/@11ty/eleventy/cmd.cjs');
  const { SILLPLATE_AS_OF: _, ...others } = process.env;
  return run(process.execPath, [command], { cwd: folder, env: { ...others, ...settings } });
}

/** Path → HTML below a folder. */
async function pagesBelow(top: string): Promise<Map<string, string>> {
  const pages = new Map<string, string>();
  for (const name of await readdir(top, { recursive: true }))
    if (name.endsWith('.html')) pages.set(name, await readFile(join(top, name), 'utf8'));
  return pages;
}

test('every published edition has its pages in its own folder, and every link and picture is there', async () => {
  await eleventy({ SILLPLATE_AS_OF: '2026-11-20', SILLPLATE_CONTENT: 'houses' });
  const house = join(folder, '_site/elder-lane');
  expect(await readdir(join(folder, '_site'))).toEqual(['elder-lane']);
  expect((await readdir(house)).sort()).toEqual(['agent', 'buyer', 'care', 'visit']);
  let followed = 0;
  for (const edition of ['agent', 'visit', 'buyer', 'care']) {
    const pages = await pagesBelow(join(house, edition));
    expect(pages.has('index.html'), edition).toBe(true);
    if (edition === 'buyer') expect(pages.size).toBeGreaterThan(5);
    const files = new Set(await readdir(join(house, edition), { recursive: true }));
    for (const [name, html] of pages) {
      expect(html, `${edition}/${name}`).toContain(`<body class="edition-${edition}`);
      for (const address of [...attributes(html, 'href'), ...attributes(html, 'src')]) {
        if (address === 'data:,') continue;
        const [file = '', anchor] = address.split('#');
        expect(files, `${edition}/${name}: ${address}`).toContain(decodeURI(file));
        if (anchor !== undefined) expect(attributes(pages.get(file) ?? '', 'id'), address).toContain(anchor);
        followed += 1;
      }
    }
  }
  expect(followed).toBeGreaterThan(100);
});

test('without a date it says which word is missing', async () => {
  await expect(eleventy({})).rejects.toThrow('SILLPLATE_AS_OF=year-month-day');
});
