/**
 * `npm run bench`: how long things take, as one table.
 *
 * `npm run bench -- --quick` takes fewer runs; `npm run bench -- pages photos` only these parts. Everything is
 * written below the system's temporary folder and removed afterwards. A peer that is not installed is named in
 * its row. Figures of a busy machine say little: look at the load in the head, and at the processor times.
 */
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { comparePaper } from './compare-paper.mjs';
import { copyDemoHouses } from './demo-houses.mjs';
import { machine } from './measure.mjs';
import { printTable } from './table.mjs';
import { timeBags } from './time-bags.mjs';
import { timeBuilds } from './time-builds.mjs';
import { timeLedger } from './time-ledger.mjs';
import { timeManyHouses } from './time-many-houses.mjs';
import { timePages } from './time-pages.mjs';
import { timePaper } from './time-paper.mjs';
import { timePhotos } from './time-photos.mjs';
import { timeRemarks } from './time-remarks.mjs';
import { timeServe } from './time-serve.mjs';
import { timeThousand } from './time-thousand.mjs';

const PARTS = [
  'builds',
  'pages',
  'serve',
  'paper',
  'photos',
  'ledger',
  'bags',
  'remarks',
  'many',
  'thousand',
];

const words = process.argv.slice(2);
const quick = words.includes('--quick');
const wanted = words.filter((word) => !word.startsWith('--'));
const unknown = words.filter((word) => word !== '--quick' && !PARTS.includes(word));
if (unknown.length > 0) {
  process.stderr.write(`bench: no part ${unknown.join(', ')}; there are ${PARTS.join(', ')} and --quick\n`);
  process.exit(2);
}

const runs = quick ? 3 : 7;
/** @type {import('./table.mjs').Row[]} */
const rows = [];
const before = machine();
const base = await mkdtemp(path.join(tmpdir(), 'sillplate-bench-'));
// Ctrl+C removes the folder too.
process.once('SIGINT', () => void rm(base, { recursive: true, force: true }).then(() => process.exit(130)));
try {
  const names = await copyDemoHouses(path.join(base, 'content'));
  const first = names.includes('quarry-road') ? 'quarry-road' : (names[0] ?? '');
  await part('builds', () => timeBuilds(base, names, runs));
  if (isWanted('pages') || isWanted('serve')) {
    const { rows: made, pages } = await timePages(base, first, isWanted('pages') ? runs : 1);
    if (isWanted('pages')) rows.push(...made);
    await part('serve', () => timeServe(base, first, pages.get('buyer') ?? 0, runs));
  }
  await part('paper', () => timePaper(base, first, runs));
  if (isWanted('paper')) rows.push(...(await comparePaper(base, runs)));
  await part('photos', () => timePhotos(base, names, runs, quick ? [30, 90] : [30, 300]));
  await part('ledger', () => timeLedger(path.join(base, 'ledger'), 50_000, runs));
  await part('bags', () => timeBags(path.join(base, 'bags'), quick ? 512 : 2048, 3));
  await part('remarks', () => timeRemarks(path.join(base, 'remarks'), runs, quick ? 50 : 200));
  await part('many', () => timeManyHouses(path.join(base, 'many'), quick ? 40 : 200));
  const photos = names.map((name) => path.join(base, 'content', name, 'photos'));
  await part('thousand', () => timeThousand(path.join(base, 'thousand'), photos, quick ? 30 : 1000));
  process.stdout.write(
    `\nMeasured on ${before}; at the end ${machine().split(', ').slice(-3).join(', ')}.\nMedian (least–most).\n\n${printTable(rows)}\n`,
  );
} finally {
  await rm(base, { recursive: true, force: true });
}

/** @param {string} name */
function isWanted(name) {
  return wanted.length === 0 || wanted.includes(name);
}

/**
 * @param {string} name
 * @param {() => Promise<import('./table.mjs').Row[]>} time
 */
async function part(name, time) {
  if (!isWanted(name)) return;
  process.stderr.write(`bench: ${name}\n`);
  rows.push(...(await time()));
}
