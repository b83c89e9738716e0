/**
 * The tests and the program in this process, with one file's mutants switched on in turn. Takes the project's folder, the
 * test files and the instrumented texts; gives what covers which mutant, and what became of each.
 */
import path from 'node:path';
import fc from 'fast-check';
import { Modules } from './modules.mjs';
import { beginNoting, endNoting, takeFixed } from './notice.mjs';
import { runTests } from './run-tests.mjs';
import { collectTests, SHIM, suitesOf } from './test-tree.mjs';
import { watchValues } from './watch-values.mjs';
import { NOT_HERE } from './which-tests.mjs';

/**
 * @typedef {import('./test-tree.mjs').Test} Test
 * @typedef {import('./test-tree.mjs').Suite} Suite
 * @typedef {{ activeMutant?: string, currentTestId?: string, hitCount?: number, hitLimit?: number }} Switches
 * @typedef {{ tests: { id: string, name: string, file: string, ms: number }[], failed: Record<string, string>,
 *   fixed: Record<string, number>, felt: Record<string, Record<string, number>>, cold: string[],
 *   readers: Record<string, string[]>, mutantsOf: Record<string, string[]> }} Learnt `fixed`: hits while modules load; `felt`: by test, or hooks; `cold`: mutants that
 *   some test meets only when nothing is remembered
 * @typedef {{ id: string, file: string, atLoad: boolean, tests: readonly string[] | undefined, hitLimit: number | undefined }} Mutant
 * @typedef {{ kind: 'survived', ran: number } | { kind: 'endless', ran: number }
 *   | { kind: 'killed', ran: number, by: string, message: string }} Fate
 */

/** Stryker's own name for what its switches look at. */
const shared = /** @type {{ __stryker__: Switches }} */ (/** @type {unknown} */ (globalThis));
shared.__stryker__ ??= {};
const switches = shared.__stryker__;

/** What a run may take at most: an endless loop is told from a slow test by far more time than the tests took. */
const limitOf = (/** @type {number} */ ms) => 1000 + 5 * ms;

/** Stryker's helpers, in the file with its own switches, replaced. @param {string} source @param {string} helpers */
function withHelpers(source, helpers) {
  const from = source.indexOf('function stryCov_9fa48(');
  const end = 'return isActive(id);\n}';
  const to = source.indexOf(end, from);
  if (from < 0 || to < 0)
    throw new Error('the instrumented file does not have the helpers that were looked for');
  return `${source.slice(0, from)}${helpers}${source.slice(to + end.length)}`;
}

/** As Stryker writes them they count each hit; while mutants run, nobody asks. */
const SWITCHING = `const stryHit_9fa48 = globalThis.__sillplateHit, stryNow_9fa48 = globalThis.__stryker__;
function stryCov_9fa48() {}
function stryMutAct_9fa48(id) { return stryNow_9fa48.activeMutant === id && stryHit_9fa48(); }
`;
const NOTICING = `function stryCov_9fa48(...ids) { __passed(ids); }
function stryMutAct_9fa48() { return false; }
`;

/** @type {any} */ (globalThis).__sillplateHit = () => {
  const { hitCount = 0, hitLimit = Number.POSITIVE_INFINITY } = switches;
  switches.hitCount = hitCount + 1;
  if (hitCount >= hitLimit) throw new HitLimit();
  return true;
};

class HitLimit extends Error {}

/** What became of a mutant with which a module or a test file can't even be read. @param {unknown} error @returns {Fate} */
const unread = (error) =>
  error instanceof HitLimit
    ? { kind: 'endless', ran: 0 }
    : { kind: 'killed', ran: 0, by: '', message: `can’t be read: ${/** @type {Error} */ (error).message}` };

const given = { vitest: SHIM };

export class Session {
  /**
   * @param {string} root
   * @param {readonly string[]} files the test files
   * @param {ReadonlyMap<string, string>} instrumented texts by file of the project
   */
  constructor(root, files, instrumented) {
    fc.configureGlobal({ seed: 7001, endOnFailure: true });
    this.root = root;
    this.files = files;
    this.instrumented = instrumented;
    /** @type {Map<string, import('./modules.mjs').Body>} */
    this.bodies = new Map();
    /** The files with their switches. @type {Map<string, import('./modules.mjs').Body>} */
    this.switched = new Map();
    /** @type {Learnt | undefined} */
    this.learnt = undefined;
    /** Those that fail with the program as it is: they can't tell anything. @type {Set<string>} */
    this.failing = new Set();
    /** @type {Map<string, Test>} */
    this.tests = new Map();
    this.modules = new Modules(root, { given });
    /** @type {{ file: string, back: (() => void)[] } | undefined} */
    this.open = undefined;
    /** Tests that failed lately in the open file, latest first. @type {string[]} */
    this.killers = [];
    this.leaks = 0;
  }

  #name(/** @type {string} */ file) {
    return path.relative(this.root, file);
  }

  /**
   * @param {Modules} modules
   * @param {{ before: () => void, after: (file: string) => void }} [around] each file
   */
  async #collect(modules, around) {
    /** @type {Map<string, Test>} */
    const tests = new Map();
    for (const file of this.files) {
      await modules.asLoading(file, async () => {
        around?.before();
        for (const test of await collectTests(this.#name(file), () => modules.load(file).done))
          if (!NOT_HERE.test(test.name)) tests.set(test.id, test);
        around?.after(this.#name(file));
      });
    }
    return tests;
  }

  /** Finds out who covers what, and how long each test takes. */
  async learn() {
    const watched = new Modules(this.root, { given, watch: true });
    await this.#collect(watched);
    this.bodies = watched.bodies;

    const bodies = new Map(this.bodies);
    for (const [file, text] of this.instrumented)
      bodies.set(file, watched.bodyFrom(file, withHelpers(text, NOTICING), watchValues));
    const counted = new Modules(this.root, { given, bodies });
    takeFixed();
    for (const file of watched.files) if (this.#name(file).startsWith('src/')) counted.load(file);
    const fixed = takeFixed();
    /** @type {Learnt['failed']} */
    const failed = {};
    /** @type {Learnt['felt']} */
    const felt = {};
    const tests = await this.#collect(counted, {
      before: () => beginNoting(),
      after: (file) => {
        felt[`file ${file}`] = endNoting().felt;
      },
    });
    const everything = [...tests.values()];
    /** @type {Learnt['cold']} */
    const cold = [];
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
    cold.push(...coldOnly);
    for (const [id, name] of idle) if (!met.has(id)) felt[name] = { ...felt[name], [id]: 1 };

    this.failing = new Set(Object.keys(failed));
    await this.#take();
    const times = await this.#times();
    const files = new Set([...watched.files, ...this.files]);
    this.learnt = {
      tests: [...this.tests.values()].map(({ id, name, file }) => ({
        id,
        name,
        file,
        ms: times.get(id) ?? 0,
      })),
      failed,
      fixed,
      felt,
      cold,
      readers: Object.fromEntries([...files].map((file) => [file, [...watched.readAtLoad(file)]])),
      mutantsOf: Object.fromEntries(
        [...this.instrumented].map(([file, text]) => [
          file,
          [...text.matchAll(/stryMutAct_9fa48\("(\d+)"\)/g)].map(([, id]) => id ?? ''),
        ]),
      ),
    };
    this.#prepare();
    return this.learnt;
  }

  /** Begins where an earlier process stopped. @param {Learnt} learnt */
  async resume(learnt) {
    this.learnt = learnt;
    this.failing = new Set(Object.keys(learnt.failed));
    await this.#take();
    this.#prepare();
  }

  async #take() {
    this.modules = new Modules(this.root, { given, bodies: this.bodies });
    this.tests = await this.#collect(this.modules);
    for (const id of this.failing) this.tests.delete(id);
  }

  async #times() {
    /** @type {Map<string, number>} */
    const times = new Map();
    for (const test of this.tests.values()) {
      const start = performance.now();
      await runTests([test], { limit: 120_000 });
      times.set(test.id, performance.now() - start);
    }
    return times;
  }

  #prepare() {
    const { tests = [], felt = {}, cold = [] } = this.learnt ?? {};
    this.ms = new Map(tests.map(({ id, ms }) => [id, ms]));
    this.coldOnly = new Set(cold);
    /** Test files that already work something out while they are read, in which a mutant is felt: by mutant. @type {Map<string, string[]>} */
    this.filesFeel = new Map();
    for (const [name, met] of Object.entries(felt)) {
      if (!name.startsWith('file ')) continue;
      for (const id of Object.keys(met))
        this.filesFeel.set(id, [
          ...(this.filesFeel.get(id) ?? []),
          path.join(this.root, name.slice('file '.length)),
        ]);
    }
    /** @type {Map<string, Set<string>>} */
    this.hooksMeet = new Map(
      Object.entries(felt)
        .filter(([id]) => id.startsWith('hooks '))
        .map(([id, met]) => [id.slice('hooks '.length), new Set(Object.keys(met))]),
    );
  }

  /** What each test feels, by the hooks that it stands on as well. @returns {Map<string, Record<string, number>>} */
  coverage() {
    const { felt = {} } = this.learnt ?? {};
    /** @type {Map<string, Record<string, number>>} */
    const all = new Map();
    for (const test of this.tests.values())
      all.set(
        test.id,
        Object.assign(
          {},
          felt[`file ${test.file}`],
          felt[`remembered ${test.file}`],
          ...suitesOf(test.suite).map((suite) => felt[`hooks ${suite.id}`]),
          felt[test.id],
        ),
      );
    return all;
  }

  /** Modules that hold something of `file` from when they were loaded, each behind those it needs. @param {string} file */
  #dependants(file) {
    const readers = this.learnt?.readers ?? {};
    const touched = new Set([file]);
    for (let size = 0; size !== touched.size; ) {
      size = touched.size;
      for (const [one, read] of Object.entries(readers))
        if (!touched.has(one) && read.some((name) => touched.has(name))) touched.add(one);
    }
    touched.delete(file);
    return this.modules.files.filter((one) => touched.has(one));
  }

  /** Puts the file with its switches in place, and what hangs on it. @param {string} file */
  async #put(file) {
    /** @type {(() => void)[]} */
    const back = [];
    const text = this.instrumented.get(file);
    if (text === undefined) throw new Error(`${file} has no mutants`);
    const body = this.switched.get(file) ?? this.modules.bodyFrom(file, withHelpers(text, SWITCHING));
    this.switched.set(file, body);
    try {
      back.unshift(this.modules.replace(file, body).back);
      for (const one of this.#dependants(file)) {
        if (!this.files.includes(one)) {
          back.unshift(this.modules.replace(one).back);
          continue;
        }
        await this.#readAgain(one, back);
      }
    } catch (error) {
      for (const undo of back) undo();
      throw error;
    }
    return back;
  }

  /** Reads a test file anew; what undoes that goes in front of `back`. @param {string} file @param {(() => void)[]} back */
  async #readAgain(file, back) {
    const name = this.#name(file);
    const earlier = [...this.tests].filter(([, test]) => test.file === name);
    const tests = await collectTests(name, () => {
      const { back: undo, done } = this.modules.replace(file);
      back.unshift(undo);
      return done;
    });
    for (const [id] of earlier) this.tests.delete(id);
    for (const test of tests)
      if (!NOT_HERE.test(test.name) && !this.failing.has(test.id)) this.tests.set(test.id, test);
    back.unshift(() => {
      for (const { id } of tests) this.tests.delete(id);
      for (const [id, test] of earlier) this.tests.set(id, test);
    });
  }

  async #close() {
    if (this.open === undefined) return;
    const killers = this.killers.flatMap((id) => this.tests.get(id) ?? []);
    const outcome = await runTests(killers, { limit: 60_000 });
    if (outcome.kind !== 'passed') this.leaks++;
    for (const undo of this.open.back) undo();
    this.open = undefined;
    this.killers = [];
    this.modules.forget();
  }

  /** @param {Mutant} mutant @returns {Promise<Fate>} */
  async run(mutant) {
    const forgets = mutant.atLoad || this.coldOnly?.has(mutant.id) === true;
    switches.hitCount = 0;
    switches.hitLimit = mutant.hitLimit;
    if (mutant.atLoad) {
      await this.#close();
      switches.activeMutant = mutant.id;
      let back;
      try {
        back = await this.#put(mutant.file);
      } catch (error) {
        switches.activeMutant = undefined;
        this.modules.forget();
        return unread(error);
      }
      this.modules.forget();
      const fate = await this.#judge(mutant);
      for (const undo of back) undo();
      this.modules.forget();
      return fate;
    }
    if (this.open?.file !== mutant.file) {
      await this.#close();
      this.open = { file: mutant.file, back: await this.#put(mutant.file) };
    }
    if (forgets) this.modules.forget();
    switches.activeMutant = mutant.id;
    /** @type {(() => void)[]} */
    const back = [];
    try {
      for (const file of this.filesFeel?.get(mutant.id) ?? []) await this.#readAgain(file, back);
      return await this.#judge(mutant);
    } catch (error) {
      return unread(error);
    } finally {
      switches.activeMutant = undefined;
      for (const undo of back) undo();
      if (forgets) this.modules.forget();
    }
  }

  /** @param {Mutant} mutant @returns {Promise<Fate>} */
  async #judge({ id, tests: names, atLoad }) {
    const tests = this.#inOrder(names ?? this.#testsOfLoad(id));
    const ms = tests.reduce((all, test) => all + (this.ms?.get(test.id) ?? 0), 0);
    try {
      const outcome = await runTests(tests, {
        limit: limitOf(ms),
        again: (suite) => atLoad || this.hooksMeet?.get(suite.id)?.has(id) === true,
      });
      if (outcome.kind === 'passed') return { kind: 'survived', ran: outcome.ran };
      if (
        outcome.kind === 'endless' ||
        (switches.hitCount ?? 0) > (switches.hitLimit ?? Number.POSITIVE_INFINITY)
      )
        return { kind: 'endless', ran: outcome.ran };
      const by = outcome.test.id;
      this.killers = [by, ...this.killers.filter((one) => one !== by)].slice(0, 20);
      return { kind: 'killed', ran: outcome.ran, by, message: outcome.message };
    } finally {
      switches.activeMutant = undefined;
    }
  }

  /** Those that killed lately first, then the quick ones. @param {readonly string[]} names */
  #inOrder(names) {
    const rank = new Map(this.killers.map((id, at) => [id, at - this.killers.length]));
    const cost = (/** @type {Test} */ { id }) => rank.get(id) ?? this.ms?.get(id) ?? 0;
    return names.flatMap((id) => this.tests.get(id) ?? []).sort((a, b) => cost(a) - cost(b));
  }

  /** Tests that run anything of the file that the mutant is in; all of them where nobody does. @param {string} id */
  #testsOfLoad(id) {
    const ids = Object.values(this.learnt?.mutantsOf ?? {}).find((all) => all.includes(id)) ?? [];
    const near = new Set(ids);
    const covered = [...this.coverage()].filter(([, met]) => Object.keys(met).some((one) => near.has(one)));
    return covered.length > 0 ? covered.map(([test]) => test) : [...this.tests.keys()];
  }
}
