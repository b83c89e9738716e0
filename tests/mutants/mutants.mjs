/**
 * Mutation testing of `src/tally`, folder by folder: `npm run mutants`, `npm run mutants -- src/tally/money` or files; with
 * `--one-in 20` a sample. Prints what became of the mutants; the reports, with each mutant in its place, lie in
 * `reports/mutants/`.
 */
import { mkdirSync, readdirSync, readFileSync, statSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { Stryker } from '@stryker-mutator/core';
import { isInSample, setSample } from './sample.mjs';

const root = fileURLToPath(new URL('../../', import.meta.url));
const REPORTS = 'reports/mutants';

/** Each folder below `folder` with files of the program in it. @param {string} folder @returns {string[]} */
function foldersBelow(folder) {
  const entries = readdirSync(path.join(root, folder), { withFileTypes: true });
  const own = entries.some((entry) => entry.isFile() && entry.name.endsWith('.ts')) ? [folder] : [];
  return [
    ...own,
    ...entries
      .filter((entry) => entry.isDirectory())
      .flatMap(({ name }) => foldersBelow(`${folder}/${name}`)),
  ];
}

/** What to change in one go, by the name of its report. @param {readonly string[]} asked @returns {Map<string, string[]>} */
function batches(asked) {
  /** @type {Map<string, string[]>} */
  const all = new Map();
  for (const one of asked) {
    const place = path.relative(root, path.resolve(one)).replaceAll('\\', '/');
    if (!place.startsWith('src/tally')) throw new Error(`${one} is not in src/tally`);
    if (statSync(path.join(root, place)).isDirectory())
      for (const folder of foldersBelow(place)) all.set(nameOf(folder), [`${folder}/*.ts`]);
    else all.set('files', [...(all.get('files') ?? []), place]);
  }
  return all;
}

/** @param {string} folder */
const nameOf = (folder) => folder.slice('src/'.length).replaceAll('/', '-');

/** @param {string} name @param {readonly string[]} mutate */
async function change(name, mutate) {
  const report = `${REPORTS}/${name}.json`;
  const stryker = new Stryker({
    mutate: [...mutate],
    testRunner: 'one-process',
    plugins: [fileURLToPath(new URL('one-process-runner.mjs', import.meta.url))],
    coverageAnalysis: 'perTest',
    concurrency: 1,
    testRunnerNodeArgs: ['--max-semi-space-size=64', '--single-threaded-gc'],
    timeoutMS: 8000,
    dryRunTimeoutMinutes: 15,
    ignorePatterns: ['**', '!src/tally/**'],
    disableTypeChecks: false,
    tempDirName: 'reports/mutants-at-work',
    reporters: ['json', 'html'],
    jsonReporter: { fileName: report },
    htmlReporter: { fileName: `${REPORTS}/${name}.html` },
    logLevel: /** @type {import('@stryker-mutator/api/core').LogLevel} */ (/** @type {unknown} */ ('warn')),
    allowConsoleColors: false,
    thresholds: { high: 80, low: 60, break: null },
    warnings: { slow: false, unknownOptions: true, preprocessorErrors: true, unserializableOptions: true },
  });
  const start = performance.now();
  await stryker.runMutationTest();
  return { ...countsIn(report), seconds: Math.round((performance.now() - start) / 1000) };
}

/** @param {string} report */
function countsIn(report) {
  const { files } = /** @type {{ files: Record<string, { mutants: { id: string, status: string }[] }> }} */ (
    JSON.parse(readFileSync(path.join(root, report), 'utf8'))
  );
  const found = Object.values(files).flatMap(({ mutants }) => mutants);
  const all = found.filter(({ id }) => isInSample(id));
  const count = (/** @type {string} */ status) => all.filter((one) => one.status === status).length;
  return {
    mutants: found.length,
    killed: count('Killed'),
    timeout: count('Timeout'),
    survived: count('Survived'),
    uncovered: count('NoCoverage'),
    other:
      all.length - ['Killed', 'Timeout', 'Survived', 'NoCoverage'].reduce((sum, one) => sum + count(one), 0),
  };
}

/** @typedef {Awaited<ReturnType<typeof change>>} Counts */

/** Share of the mutants that were noticed, in percent. @param {Counts} counts */
const score = ({ killed, timeout, survived, uncovered }) =>
  ((100 * (killed + timeout)) / (killed + timeout + survived + uncovered)).toFixed(1);

/** @param {string} name @param {Counts} counts */
const row = (name, counts) =>
  [
    name.padEnd(26),
    ...[counts.mutants, counts.killed, counts.timeout, counts.survived, counts.uncovered, counts.other].map(
      (n) => String(n).padStart(9),
    ),
    score(counts).padStart(8),
    String(counts.seconds).padStart(8),
  ].join('');

/** @param {string} line */
const say = (line) => process.stdout.write(`${line}\n`);

process.chdir(root);
mkdirSync(path.join(root, REPORTS), { recursive: true });
const { values, positionals: asked } = parseArgs({
  allowPositionals: true,
  options: { 'one-in': { type: 'string', default: '1' } },
});
setSample(values['one-in']);
const all = batches(asked.length > 0 ? asked : ['src/tally']);
say(`${'folder'.padEnd(26)}  mutants   killed  timeout survived  nowhere    other   score seconds`);
/** @type {Counts[]} */
const done = [];
for (const [name, mutate] of all) {
  const counts = await change(name, mutate);
  done.push(counts);
  say(row(name, counts));
}
if (done.length > 1) {
  const sum = (/** @type {keyof Counts} */ key) => done.reduce((total, one) => total + one[key], 0);
  say(
    row('all', {
      mutants: sum('mutants'),
      killed: sum('killed'),
      timeout: sum('timeout'),
      survived: sum('survived'),
      uncovered: sum('uncovered'),
      other: sum('other'),
      seconds: sum('seconds'),
    }),
  );
}
