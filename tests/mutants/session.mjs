/**
 * The tests and the program in this process, with one file's mutants switched on in turn. Takes the project's folder, the
 * test files and the instrumented texts; gives what covers which mutant, and what became of each.
 */
import path from 'node:path';
import fc from 'fast-check';
import { collectAll, GIVEN, learn } from './learn.mjs';
import { Modules } from './modules.mjs';
import { runTests } from './run-tests.mjs';
import { SWITCHING, withHelpers } from './stryker-helpers.mjs';
import { collectTests, suitesOf } from './test-tree.mjs';
import { NOT_HERE } from './which-tests.mjs';

/**
 * @typedef {import('./test-tree.mjs').Test} Test
 * @typedef {import('./test-tree.mjs').Suite} Suite
 * @typedef {{ activeMutant?: string, currentTestId?: string, hitCount?: number, hitLimit?: number }} Switches
 * @typedef {import('./learn.mjs').Learnt} Learnt
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
    this.modules = new Modules(root, { given: GIVEN });
    /** @type {{ file: string, back: (() => void)[] } | undefined} */
    this.open = undefined;
    /** Tests that failed lately in the open file, latest first. @type {string[]} */
    this.killers = [];
    this.leaks = 0;
  }

  #name(/** @type {string} */ file) {
    return path.relative(this.root, file);
  }

  /** Finds out who covers what, and how long each test takes. */
  async learn() {
    const { learnt, bodies } = await learn(this.root, this.files, this.instrumented);
    this.bodies = bodies;
    this.learnt = learnt;
    this.failing = new Set(Object.keys(learnt.failed));
    await this.#take();
    const times = await this.#times();
    learnt.tests = [...this.tests.values()].map(({ id, name }) => ({ id, name, ms: times.get(id) ?? 0 }));
    this.#prepare();
    return learnt;
  }

  /** Begins where an earlier process stopped. @param {Learnt} learnt */
  async resume(learnt) {
    this.learnt = learnt;
    this.failing = new Set(Object.keys(learnt.failed));
    await this.#take();
    this.#prepare();
  }

  async #take() {
    this.modules = new Modules(this.root, { given: GIVEN, bodies: this.bodies });
    this.tests = await collectAll(this.root, this.files, this.modules);
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
