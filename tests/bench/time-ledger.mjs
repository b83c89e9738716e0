/**
 * A cost sheet of 50,000 rows read, checked, tallied and written as CSV, journal and JSON, in a process of its own;
 * beside it two bookkeeping programs that read our journal and add it up.
 */
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdir, rm, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { inMs, runProgram, spread, timeChildren } from './measure.mjs';

/** @typedef {import('./table.mjs').Row} Row */

const PROCESS = fileURLToPath(new URL('ledger-process.mjs', import.meta.url));

/**
 * @param {string} base temporary folder
 * @param {number} rows
 * @param {number} runs
 * @returns {Promise<Row[]>}
 */
export async function timeLedger(base, rows, runs) {
  const folder = path.join(base, 'made');
  const out = path.join(base, 'out');
  await mkdir(folder, { recursive: true });
  await writeFile(path.join(folder, 'house.yaml'), HOUSE);
  await writeFile(path.join(folder, 'costs.csv'), sheetOf(rows));
  const texts = measured(folder, out, 'texts', rows, runs);
  const workbook = measured(folder, out, 'workbook', rows, runs);
  const journal = path.join(out, 'made.journal');
  const beside = [];
  for (const program of ['hledger', 'ledger']) {
    if (spawnSync(program, ['--version']).error !== undefined) {
      beside.push(`${program}: not here`);
      continue;
    }
    const timing = await timeChildren(Math.min(3, runs), () =>
      runProgram(program, ['-f', journal, 'balance', '--depth', '2']),
    );
    beside.push(`${program} reads the journal and adds it up: ${inMs(timing.clock)}`);
  }
  await rm(base, { recursive: true, force: true });
  const size = rows.toLocaleString('en-US');
  return [
    {
      what: `a cost sheet of ${size} rows read, checked, tallied and written as CSV, journal and JSON`,
      ours: `${inMs(texts.clock)}, ${texts.peakMb.toFixed(0)} MB`,
      cpu: inMs(texts.cpu),
      runs,
      beside: beside.join('; '),
      aim: 'under 2 s and 300 MB',
    },
    {
      what: 'the same with the workbook (XLSX)',
      ours: `${inMs(workbook.clock)}, ${workbook.peakMb.toFixed(0)} MB`,
      cpu: inMs(workbook.cpu),
      runs,
    },
  ];
}

/**
 * @param {string} folder
 * @param {string} out
 * @param {'texts' | 'workbook'} what
 * @param {number} rows
 * @param {number} runs
 */
function measured(folder, out, what, rows, runs) {
  const all = Array.from({ length: runs }, () => {
    const said = JSON.parse(
      execFileSync(process.execPath, [PROCESS, folder, out, what], {
        encoding: 'utf8',
        stdio: ['ignore', 'pipe', 'inherit'],
      }),
    );
    if (said.rows !== rows || said.errors !== 0)
      throw new Error(`${said.rows} of ${rows} rows were read, with ${said.errors} errors`);
    return said;
  });
  return {
    clock: spread(all.map(({ clock }) => clock)),
    cpu: spread(all.map(({ cpu }) => cpu)),
    peakMb: Math.max(...all.map(({ peakMb }) => peakMb)),
  };
}

const HOUSE = `house: { name: Made House, address: { city: Nowhere, state: OH }, kind: detached, built: 1990, bought: 2025-01-02 }
levels: [{ id: main, name: Main level, grade: above, size: 40' x 26' }]
rooms: [{ id: kitchen, level: main, use: kitchen }, { id: bath, level: main, use: bath }]
money: { role: dealer, in-business: yes }
`;

/** Many payees, all buckets but the price, refunds among them. @param {number} rows */
function sheetOf(rows) {
  const buckets = ['improvement', 'repair', 'utilities', 'tool', 'selling', 'insurance'];
  const ways = ['card', 'check', 'transfer', 'cash'];
  const places = ['kitchen', 'bath', 'main', ''];
  const lines = ['date,payee,what,amount,bucket,place,paid,sales tax'];
  for (let n = 0; n < rows; n += 1) {
    const day = new Date(Date.UTC(2025, 0, 3 + (n % 600))).toISOString().slice(0, 10);
    const cents = ((n * 7919) % 250_000) + 101;
    const sign = n % 97 === 0 ? '-' : '';
    const amount = `${sign}${Math.floor(cents / 100)}.${String(cents % 100).padStart(2, '0')}`;
    const tax = `${sign}${(Math.floor(cents / 20) / 100).toFixed(2)}`;
    lines.push(
      `${day},Supplier ${n % 3000},"item ${n}, by the box",${amount},${buckets[n % buckets.length]},${places[n % places.length]},${ways[n % ways.length]},${tax}`,
    );
  }
  return `${lines.join('\r\n')}\r\n`;
}
