/**
 * Finds out which test notices which mutant, before any of them runs. Takes the instrumented texts and the test files; each
 * test runs once or twice in a program that tells what it passes by (`watch-values`, `notice`).
 */
import path from 'node:path';
import { Modules } from './modules.mjs';
import { beginNoting, endNoting, takeFixed } from './notice.mjs';
import { runTests } from './run-tests.mjs';
import { NOTICING, withHelpers } from './stryker-helpers.mjs';
import { collectTests, SHIM } from './test-tree.mjs';
import { watchValues } from './watch-values.mjs';
import { NOT_HERE } from './which-tests.mjs';

/**
 * @typedef {import('./test-tree.mjs').Test} Test
 * @typedef {{ tests: { id: string, name: string, ms: number }[], failed: Record<string, string>,
 *   fixed: Record<string, number>, felt: Record<string, Record<string, number>>, cold: string[],
 *   readers: Record<string, string[]>, mutantsOf: Record<string, string[]> }} Learnt `fixed`: hits while modules load; `felt`: by test, or hooks; `cold`: mutants that
 *   some test meets only when nothing is remembered
 */

/** Modules that the tests ask for and get from us. */
export const GIVEN = { vitest: SHIM };

/**
 * The tests of all files, by id.
 * @param {string} root
 * @param {readonly string[]} files
 * @param {Modules} modules
 * @param {{ before: () => void, after: (file: string) => void }} [around] each file
 */
export async function collectAll(root, files, modules, around) {
  /** @type {Map<string, Test>} */
  const tests = new Map();
  for (const file of files) {
    const name = path.relative(root, file);
    await modules.asLoading(file, async () => {
      around?.before();
      for (const test of await collectTests(name, () => modules.load(file).done))
        if (!NOT_HERE.test(test.name)) tests.set(test.id, test);
      around?.after(name);
    });
  }
  return tests;
}

/**
 * @param {string} root
 * @param {readonly string[]} files the test files
 * @param {ReadonlyMap<string, string>} instrumented texts by file of the project
 * @returns {Promise<{ learnt: Learnt, bodies: Map<string, import('./modules.mjs').Body> }>} `tests` is left to who times them
 */
export async function learn(root, files, instrumented) {
  const watched = new Modules(root, { given: GIVEN, watch: true });
  await collectAll(root, files, watched);

  const bodies = new Map(watched.bodies);
  for (const [file, text] of instrumented)
    bodies.set(file, watched.bodyFrom(file, withHelpers(text, NOTICING), watchValues));
  const counted = new Modules(root, { given: GIVEN, bodies });
  takeFixed();
  for (const file of watched.files) if (path.relative(root, file).startsWith('src/')) counted.load(file);
  const fixed = takeFixed();
  /** @type {Learnt['failed']} */
  const failed = {};
  /** @type {Learnt['felt']} */
  const felt = {};
  const tests = await collectAll(root, files, counted, {
    before: () => beginNoting(),
    after: (file) => {
      felt[`file ${file}`] = endNoting().felt;
    },
  });
  const everything = [...tests.values()];
  /** Mutants that were passed by and never made a difference, each with a test that passed by. @type {Map<string, string>} */
  const idle = new Map();
  /** @type {Set<string>} */
  const met = new Set();
  const end = (/** @type {string} */ name, /** @type {ReturnType<typeof endNoting>} */ now) => {
    felt[name] = { ...felt[name], ...now.felt };
    for (const id of Object.keys(now.felt)) met.add(id);
    for (const id of Object.keys(now.passed)) if (!idle.has(id)) idle.set(id, name);
  };
  /** @type {Set<string>} */
  const coldOnly = new Set();
  let last = '';
  for (const [at, test] of everything.entries()) {
    // What is remembered between calls takes long to make again; now and then is enough to see who makes it.
    const forgets = test.file !== last || at % 25 === 0;
    last = test.file;
    if (forgets) counted.forget();
    /** What was met the first time, when nothing was remembered. @type {ReturnType<typeof endNoting> | undefined} */
    let first;
    for (const _ of forgets ? ['cold', 'warm'] : ['warm']) {
      const outcome = await runTests([test], {
        limit: 120_000,
        beforeHooks: () => beginNoting(),
        afterHooks: (suite) => void end(`hooks ${suite.id}`, endNoting()),
        before: () => beginNoting(),
      });
      const now = endNoting();
      end(test.id, now);
      if (forgets && first === undefined) first = now;
      else if (first !== undefined)
        for (const id of Object.keys({ ...first.felt, ...first.passed }))
          if (!(id in now.felt) && !(id in now.passed)) {
            coldOnly.add(id);
            // Any test of that file may be the one that makes it.
            const name = `remembered ${test.file}`;
            if (id in first.felt) felt[name] = { ...felt[name], [id]: 1 };
          }
      if (outcome.kind === 'passed') continue;
      failed[test.id] = outcome.kind === 'failed' ? outcome.message : 'takes too long';
    }
  }
  for (const [id, name] of idle) if (!met.has(id)) felt[name] = { ...felt[name], [id]: 1 };

  const loaded = new Set([...watched.files, ...files]);
  const learnt = {
    tests: [],
    failed,
    fixed,
    felt,
    cold: [...coldOnly],
    readers: Object.fromEntries([...loaded].map((file) => [file, [...watched.readAtLoad(file)]])),
    mutantsOf: Object.fromEntries(
      [...instrumented].map(([file, text]) => [
        file,
        [...text.matchAll(/stryMutAct_9fa48\("(\d+)"\)/g)].map(([, id]) => id ?? ''),
      ]),
    ),
  };
  return { learnt, bodies: watched.bodies };
}
