/**
 * Houses with twenty photos each, by the command as somebody would give it: whether the thousandth takes as long as the
 * first, what is held meanwhile, and how much one changed house costs afterwards.
 *
 * Nothing here asks for help from outside: `--jobs` spreads the houses over the cores of this machine.
 */
import { spawn } from 'node:child_process';
import { mkdir, readdir, readFile, writeFile } from 'node:fs/promises';
import { availableParallelism } from 'node:os';
import path from 'node:path';
import { AS_OF, PROGRAM } from './demo-houses.mjs';
import { madeHouse, madeName } from './made-houses.mjs';
import { numbered, photoId, scenesIn, smallScenes, withPhotos } from './made-photos.mjs';
import { runProgram } from './measure.mjs';
import { heldByTree } from './tree-memory.mjs';

const PHOTOS = 20;
/** A thousand houses hold twenty thousand of them; at a phone’s size that would be 60 GB. */
const SIZE = { width: 800, height: 600 };

/**
 * @param {string} base
 * @param {readonly string[]} photoFolders to cut the photos from
 * @param {number} count houses
 * @returns {Promise<import('./table.mjs').Row[]>}
 */
export async function timeThousand(base, photoFolders, count) {
  const content = path.join(base, 'content');
  const out = path.join(base, 'out');
  await writeHouses(content, photoFolders, count);
  const jobs = String(availableParallelism());
  const words = ['build', '--content', content, '--out', out, '--as-of', AS_OF, '--jobs', jobs];
  const first = await watched(words, out, count);
  const one = path.join(content, madeName(Math.ceil(count / 2)), 'house.yaml');
  await writeFile(
    one,
    (await readFile(one, 'utf8')).replace('Linen White', 'Linen Grey').replace('Made House', 'Changed House'),
  );
  const before = await stamps(out);
  const started = performance.now();
  await runProgram(process.execPath, [PROGRAM, ...words, '--stale'], 3_600_000);
  const again = performance.now() - started;
  const after = await stamps(out);
  const changed = [...after].filter(([name, stamp]) => before.get(name) !== stamp).map(([name]) => name);
  const asked = performance.now();
  await runProgram(
    process.execPath,
    [PROGRAM, ...words.slice(0, -2), '--list', '--stale', '--format', 'json'],
    3_600_000,
  );
  const listed = performance.now() - asked;
  const seconds = (/** @type {number} */ ms) => `${(ms / 1000).toFixed(1)} s`;
  const parts = first.tenths.map(({ houses, ms, mb }) => `${houses}: ${seconds(ms)}, ${mb} MB`).join(' · ');
  return [
    {
      what: `${count} made houses with ${PHOTOS} photos of ${SIZE.width} × ${SIZE.height} each, 4 editions, cold, \`build --jobs ${jobs}\`: houses ready, time since the start, memory held by all its processes`,
      ours: `${parts}; the last tenth took ${(first.lastTenth / first.firstTenth).toFixed(2)} of the time of the second; at most ${first.peak} MB`,
      runs: 1,
      aim: 'time grows linearly, memory is flat',
    },
    {
      what: 'the same, one house changed, `build --stale`',
      ours: `${seconds(again)}; houses made anew: ${changed.length} (${changed.join(', ')})`,
      runs: 1,
      aim: 'that house alone',
    },
    {
      what: 'the same, nothing changed, `build --list --stale --format json`',
      ours: seconds(listed),
      runs: 1,
    },
  ];
}

/**
 * @param {string} content
 * @param {readonly string[]} folders
 * @param {number} count
 */
async function writeHouses(content, folders, count) {
  const scenes = await smallScenes(await scenesIn(folders), SIZE);
  for (let number = 1; number <= count; number += 1) {
    const folder = path.join(content, madeName(number));
    await mkdir(path.join(folder, 'photos'), { recursive: true });
    for (const [file, text] of Object.entries(madeHouse(number)))
      await writeFile(path.join(folder, file), file === 'house.yaml' ? withPhotos(text, PHOTOS) : text);
    for (let index = 0; index < PHOTOS; index += 1)
      await writeFile(
        path.join(folder, 'photos', `${photoId(index)}.jpg`),
        numbered(scenes[(number + index) % scenes.length] ?? Buffer.alloc(0), `${number} ${index}`),
      );
  }
}

/**
 * @param {readonly string[]} words
 * @param {string} out
 * @param {number} count
 */
async function watched(words, out, count) {
  const started = performance.now();
  const child = spawn(process.execPath, [PROGRAM, ...words], { stdio: ['ignore', 'ignore', 'pipe'] });
  let said = '';
  child.stderr.on('data', (chunk) => {
    said = (said + chunk).slice(-2000);
  });
  const tenths = /** @type {{ houses: number, ms: number, mb: number }[]} */ ([]);
  let peak = 0;
  const look = async () => {
    const mb = Math.round(heldByTree(child.pid ?? 0) / 1024);
    peak = Math.max(peak, mb);
    const ready = await housesIn(out);
    while (tenths.length < 10 && ready.length >= ((tenths.length + 1) * count) / 10)
      tenths.push({ houses: ready.length, ms: performance.now() - started, mb });
  };
  const watch = setInterval(look, 250);
  const status = await new Promise((resolve) => child.once('close', resolve));
  clearInterval(watch);
  if (status !== 0) throw new Error(`build ended with ${status}: ${said}`);
  const end = performance.now() - started;
  while (tenths.length < 10) tenths.push({ houses: count, ms: end, mb: tenths.at(-1)?.mb ?? 0 });
  const at = (/** @type {number} */ index) => tenths[index]?.ms ?? Number.NaN;
  // The first tenth has the start of the program in it.
  return {
    tenths: tenths.filter((_, index) => [0, 4, 9].includes(index)),
    peak,
    firstTenth: at(1) - at(0),
    lastTenth: at(9) - at(8),
  };
}

/** @param {string} out */
async function housesIn(out) {
  try {
    return (await readdir(out)).filter((name) => !name.startsWith('.'));
  } catch {
    return [];
  }
}

/**
 * What each house was made from, by its name.
 * @param {string} out
 */
async function stamps(out) {
  const names = await housesIn(out);
  return new Map(
    await Promise.all(
      names.map(
        async (name) =>
          /** @type {const} */ ([name, await readFile(path.join(out, name, '.sillplate-made.json'), 'utf8')]),
      ),
    ),
  );
}
