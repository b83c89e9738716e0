/**
 * One process of the mutated houses: changes bytes of a house folder's text files, checks the folder as `sillplate check`
 * does, and tells what must not be. Its parent kills it if it falls silent.
 *
 * Words: content folder, scratch folder, first number, behind the last number, seed.
 */
import { cpSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { checkHouseFolder } from '../../dist/build.js';
import { CODES } from '../../dist/diagnostics/codes.js';
import { locate, printReport } from '../../dist/diagnostics/report.js';
import { readHouse } from '../../dist/intake/read-house.js';
import { deriveTally } from '../../dist/tally/tally.js';
import { seeded } from './seeded.mjs';

const [content = '', scratch = '', first = '0', end = '0', seed = '1'] = process.argv.slice(2);

/** Pieces that mean something to YAML, CSV, HTML, templates, spreadsheets or a terminal, or that people paste. */
const PIECES = [
  '\t',
  ':',
  ': ',
  '"',
  "'",
  '[',
  ']',
  '{',
  '}',
  '- ',
  '#',
  '&a ',
  '*a',
  '<<: *a\n',
  '!',
  '!!js/function ',
  '|',
  '>',
  '\n',
  '\n\n',
  '---\n',
  '? ',
  '%',
  '@',
  '`',
  '\\',
  ',',
  '\u0000',
  '\uFEFF',
  '\u2028',
  '\u202E',
  '\u200B',
  '1e999',
  '.nan',
  '-0',
  '9'.repeat(40),
  '__proto__: x\n',
  'constructor:',
  'is:',
  'not known',
  'kept: true',
  '~',
  '  ',
  '\r',
  '<script>',
  '{{ 7*7 }}',
  '{% raw %}',
  '=1+1',
  '@SUM(A1)',
  '\u001b[2J',
  '../../../etc/passwd',
  'javascript:alert(1)',
  '2026-02-30',
  '1/0',
  "10' x",
  '€',
  '😀',
  'a'.repeat(300),
  ';',
  '""',
  '\r\n',
];

const TEXTS = /\.(ya?ml|csv|txt)$/i;
const houses = readdirSync(content, { withFileTypes: true })
  .filter((entry) => entry.isDirectory())
  .map(({ name }) => name)
  .sort();
const sources = new Map(
  houses.map((name) => [
    name,
    readdirSync(path.join(content, name), { withFileTypes: true })
      .filter((entry) => entry.isFile() && TEXTS.test(entry.name))
      .map((entry) => ({ file: entry.name, bytes: readFileSync(path.join(content, name, entry.name)) })),
  ]),
);
// Everything that is no text lies there once: photos and papers are not what is changed.
for (const name of houses) {
  const to = path.join(scratch, name);
  rmSync(to, { recursive: true, force: true });
  cpSync(path.join(content, name), to, { recursive: true });
}

/**
 * @param {Buffer} bytes
 * @param {() => number} random
 */
function mutated(bytes, random) {
  let now = bytes;
  for (let times = 1 + Math.floor(random() * 5); times > 0; times--) {
    const from = Math.floor(random() * (now.length + 1));
    const take = random() < 0.5 ? 0 : Math.floor(random() * 60);
    const kind = random();
    const put =
      kind < 0.6
        ? Buffer.from(PIECES[Math.floor(random() * PIECES.length)] ?? '')
        : kind < 0.8
          ? Buffer.from(Array.from({ length: Math.floor(random() * 5) }, () => Math.floor(random() * 256)))
          : kind < 0.9
            ? // A piece of the same file somewhere else.
              now.subarray(Math.floor(random() * now.length), Math.floor(random() * now.length))
            : Buffer.alloc(0);
    now = Buffer.concat([now.subarray(0, from), put.subarray(0, 4000), now.subarray(from + take)]);
  }
  return now;
}

/** @param {string} name */
const orderOf = (name) => ({
  folder: path.join(scratch, name),
  shown: `content/${name}`,
  asOf: '2026-11-20',
  editions: /** @type {const} */ (['buyer']),
  out: path.join(scratch, 'out'),
  outShown: 'out',
  paper: /** @type {const} */ ('letter'),
});

/** @param {string} name */
async function readAndDerive(name) {
  const read = await readHouse(path.join(scratch, name), `content/${name}`, { ledger: true });
  const derived =
    read.found === undefined
      ? []
      : deriveTally(read.found.house, '2026-11-20', new Map(), read.found.ledger).diagnostics;
  return locate([...read.diagnostics, ...derived], read.places);
}

// The photos are made ready once, before anybody counts seconds.
for (const name of houses) await checkHouseFolder(orderOf(name));
process.send?.({ at: Number(first) - 1 });

const said = { houses: 0, withErrors: 0, slowestMs: 0, mostMb: 0 };
for (let n = Number(first); n < Number(end); n++) {
  const random = seeded(Number(seed) * 1_000_003 + n);
  const name = houses[Math.floor(random() * houses.length)] ?? '';
  const files = sources.get(name) ?? [];
  const one = files[Math.floor(random() * files.length)];
  if (one === undefined) continue;
  const folder = path.join(scratch, name);
  writeFileSync(path.join(folder, one.file), mutated(one.bytes, random));
  process.send?.({ at: n });
  const began = performance.now();
  let wrong = '';
  try {
    // One of twenty as `check` does it, with every photo, all packets and the listing text; the others up to what is worked out.
    const located =
      n % 20 === 0 ? (await checkHouseFolder(orderOf(name))).located : await readAndDerive(name);
    const text = printReport(located, 'text', false);
    if (located.some(({ diagnostic }) => !(diagnostic.code in CODES))) wrong = 'a code that no table has';
    else if (located.some(({ diagnostic, place }) => place === undefined && diagnostic.file === undefined))
      wrong = 'a message without a place';
    else if (/ {4}at .*\.[jt]s:|undefined|\[object /.test(text))
      wrong = 'a stack trace or a hole in a message';
    // biome-ignore lint/suspicious/noControlCharactersInRegex: that is what it looks for
    else if (/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/.test(text))
      wrong = 'a control character on the terminal';
    if (located.some(({ diagnostic }) => diagnostic.severity === 'error')) said.withErrors++;
  } catch (thrown) {
    wrong = `an exception: ${/** @type {Error} */ (thrown).stack ?? thrown}`;
  }
  const took = performance.now() - began;
  said.houses++;
  said.slowestMs = Math.max(said.slowestMs, took);
  said.mostMb = Math.max(said.mostMb, process.memoryUsage.rss() / 2 ** 20);
  if (wrong !== '') process.send?.({ at: n, wrong });
  writeFileSync(path.join(folder, one.file), one.bytes);
}
process.send?.({ done: said });
