/**
 * Drafts of listing texts: how well the hand-labelled claims are found in each half of the corpus, and how long 4,000
 * characters take, within a running program and as a whole process; beside it `grep` for the words of our tables.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { mkdir, symlink, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { load } from 'js-yaml';
import { rolldown } from 'rolldown';
import { readHouse } from '../../dist/intake/read-house.js';
import { checkAdvertising } from '../../dist/tally/advertising.js';
import { checkRemarks } from '../../dist/tally/remarks/check-remarks.js';
import { deriveTally } from '../../dist/tally/tally.js';
import { AS_OF, PROGRAM } from './demo-houses.mjs';
import { inMs, runProgram, spread, timeChildren } from './measure.mjs';

/** @typedef {import('./table.mjs').Row} Row */

const ROOT = new URL('../../', import.meta.url);
const LENGTH = 4000;
/** Within a running program; the first fifty find everything cold and are not counted. */
const WARM = 50;

/**
 * @param {string} base temporary folder
 * @param {number} runs of whole processes
 * @param {number} checks within this process
 * @returns {Promise<Row[]>}
 */
export async function timeRemarks(base, runs, checks) {
  await mkdir(base, { recursive: true });
  const { corpus, score } = await corpusModules(base);
  const rows = [];
  for (const half of corpus.HALVES) rows.push(await found(corpus, score, half));
  return [...rows, ...(await timed(corpus, base, runs, checks))];
}

/**
 * The corpus is read by the same code as in the tests, which is TypeScript.
 * @param {string} base
 */
async function corpusModules(base) {
  await symlink(fileURLToPath(new URL('node_modules', ROOT)), path.join(base, 'node_modules'));
  const load = async (/** @type {string} */ name) => {
    const bundle = await rolldown({
      input: fileURLToPath(new URL(`tests/remarks/${name}.ts`, ROOT)),
      external: [/^node:/, 'js-yaml'],
      logLevel: 'silent',
    });
    const file = path.join(base, `${name}.mjs`);
    await bundle.write({ file, format: 'esm' });
    await bundle.close();
    return import(pathToFileURL(file).href);
  };
  const corpus = /** @type {typeof import('../remarks/corpus.js')} */ (await load('corpus'));
  const score = /** @type {typeof import('../remarks/score.js')} */ (await load('score'));
  return { corpus, score };
}

/**
 * @param {string} folder
 * @param {string} asOf
 */
async function houseIn(folder, asOf) {
  const { found: house } = await readHouse(folder, folder, { everyPhoto: false });
  if (house === undefined) throw new Error(`${folder} can’t be read`);
  return { house: house.house, tally: deriveTally(house.house, asOf).tally };
}

/**
 * @param {typeof import('../remarks/corpus.js')} corpus
 * @param {typeof import('../remarks/score.js')} score
 * @param {import('../remarks/corpus.js').Half} half
 * @returns {Promise<Row>}
 */
async function found(corpus, score, half) {
  const scored = [];
  let remarks = 0;
  for (const one of corpus.labelledHouses(ROOT, half)) {
    const { house, tally } = await houseIn(one.folder, corpus.LABELLED_AS_OF);
    remarks += one.remarks.length;
    for (const remark of one.remarks)
      scored.push(...score.scoreRemark(remark, checkRemarks(remark.text, house, tally)));
  }
  const it = score.figuresOf(scored);
  const share = (/** @type {number} */ part, /** @type {number} */ of) =>
    `${((100 * part) / of).toFixed(1)} %`;
  return {
    what: `claims of the half “${half}”: ${remarks} remarks with ${it.labels} labels, ${it.contradicted} of them contradicted and ${it.backed} true`,
    ours: [
      `right ${share(it.right, it.labels)}`,
      `contradicted found ${share(it.caught, it.contradicted)} (with “wider” ${share(it.flagged, it.contradicted)})`,
      `precision ${share(it.rightCalls, it.calls)}`,
      `true ones accused ${share(it.accused, it.backed)} (with “wider” ${share(it.doubted, it.backed)})`,
    ].join('; '),
    aim: half === 'unseen' ? 'found 95 %, accused 2 % at most' : '',
  };
}

/**
 * @param {typeof import('../remarks/corpus.js')} corpus
 * @param {string} base
 * @param {number} runs
 * @param {number} checks
 * @returns {Promise<Row[]>}
 */
async function timed(corpus, base, runs, checks) {
  const demo = corpus.labelledHouses(ROOT, 'seen').find(({ name }) => name === 'quarry-road');
  if (demo === undefined) throw new Error('the corpus has no remarks of quarry-road');
  const text = demo.remarks
    .map((remark) => remark.text)
    .join('\n')
    .slice(0, LENGTH);
  const { house, tally } = await houseIn(demo.folder, AS_OF);
  const claims = [];
  const words = [];
  for (let run = 0; run < WARM + checks; run += 1) {
    const started = performance.now();
    checkRemarks(text, house, tally);
    const between = performance.now();
    checkAdvertising(text);
    if (run < WARM) continue;
    claims.push(between - started);
    words.push(performance.now() - between);
  }
  const draft = path.join(base, 'draft.txt');
  await writeFile(draft, text);
  const whole = await timeChildren(runs, () =>
    runChecked([PROGRAM, 'remarks', draft, demo.folder, '--as-of', AS_OF]),
  );
  const lexicon = path.join(base, 'words.txt');
  const count = await writeWords(lexicon);
  const grep = await timeChildren(runs, () =>
    runProgram('grep', ['-E', '-i', '-c', '-f', lexicon, draft]),
  ).catch(() => undefined);
  const size = LENGTH.toLocaleString('en-US');
  return [
    {
      what: `${size} characters held against the facts of quarry-road, in a running program`,
      ours: inMs(spread(claims)),
      runs: checks,
      aim: 'under 50 ms',
    },
    {
      what: `${size} characters held against the words of advertisements, in a running program`,
      ours: inMs(spread(words)),
      runs: checks,
    },
    {
      what: `${size} characters checked by the command, as a whole process: house read, both checks, report`,
      ours: inMs(whole.clock),
      ...(whole.cpu === undefined ? {} : { cpu: inMs(whole.cpu) }),
      runs,
      beside:
        grep === undefined
          ? 'grep: not here'
          : `grep -E -c for the ${count.toLocaleString('en-US')} words of our tables, which says only whether one is there: ${inMs(grep.clock)}`,
    },
  ];
}

/**
 * A draft that has to be mended ends with 1, and that is what is timed.
 * @param {readonly string[]} words
 */
async function runChecked(words) {
  await runProgram(process.execPath, words).catch((/** @type {Error} */ error) => {
    if (!error.message.includes('ended with 1:')) throw error;
  });
}

/**
 * All words of the tables, as patterns of whole words.
 * @param {string} file
 * @returns {Promise<number>} how many
 */
async function writeWords(file) {
  const tables = new URL('src/tally/tables/', ROOT);
  /** @type {Set<string>} */
  const all = new Set();
  const take = (/** @type {unknown} */ value, /** @type {boolean} */ within) => {
    if (typeof value === 'string' && within) all.add(value);
    else if (Array.isArray(value)) for (const one of value) take(one, within || typeof one === 'string');
    else if (typeof value === 'object' && value !== null)
      for (const [key, one] of Object.entries(value)) take(one, key === 'words');
  };
  for (const name of readdirSync(tables))
    if (/^remarks-.*\.yaml$/.test(name)) take(load(readFileSync(new URL(name, tables), 'utf8')), false);
  const escaped = [...all].map((word) => word.replace(/[.*+?^${}()|[\]\\]/g, '\\$&'));
  await writeFile(file, escaped.map((word) => `\\b${word}\\b\n`).join(''));
  return all.size;
}
