/**
 * Reads a house folder with its sheets, checks and tallies it and writes its ledger files, in a process of its own.
 * Prints milliseconds, processor time and the most memory held, as JSON. The workbook is timed apart.
 *
 *   node tests/bench/ledger-process.mjs FOLDER OUT workbook|texts
 */
import { readFileSync } from 'node:fs';
import { writeFile } from 'node:fs/promises';
import path from 'node:path';
import { writeTree } from '../../dist/archive/write-tree.js';
import { readHouse } from '../../dist/intake/read-house.js';
import { ledgerExports } from '../../dist/packet/ledger-exports.js';
import { deriveTally } from '../../dist/tally/tally.js';
import { AS_OF } from './demo-houses.mjs';

const [, , folder = '', out = '', what = 'texts'] = process.argv;
const before = process.cpuUsage();
const started = performance.now();
const { found, diagnostics } = await readHouse(folder, folder, { ledger: true });
if (found?.ledger === undefined) throw new Error(`nothing was read: ${diagnostics[0]?.message}`);
const { tally, diagnostics: derived } = deriveTally(found.house, AS_OF, new Map(), found.ledger);
if (tally.money === undefined) throw new Error('nothing was tallied');
const files = ledgerExports({ folder: 'made', house: found.house, money: tally.money, asOf: AS_OF });
const texts = files.flatMap((file) => ('text' in file ? [{ path: file.file, text: file.text }] : []));
await writeTree(out, texts);
if (what === 'workbook') {
  // Loaded where a workbook is written, as in a build.
  const { workbookBytes } = await import('../../dist/archive/write-workbook.js');
  for (const file of files)
    if ('workbook' in file) await writeFile(path.join(out, file.file), await workbookBytes(file.workbook()));
}
const clock = performance.now() - started;
const { user, system } = process.cpuUsage(before);
// Linux hands the most memory that a parent held on to its children in getrusage; this is the process's own (man 5 proc).
const status = readFileSync('/proc/self/status', 'utf8');
const peakMb = Number(/^VmHWM:\s+(\d+) kB$/m.exec(status)?.[1]) / 1024;
process.stdout.write(
  JSON.stringify({
    clock,
    cpu: (user + system) / 1000,
    peakMb,
    rows: found.ledger.costs.length,
    errors: [...diagnostics, ...derived].filter(({ severity }) => severity === 'error').length,
  }),
);
