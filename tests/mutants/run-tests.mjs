/**
 * Runs tests one after another and stops at the first that fails. Takes tests as `test-tree` gives them; hooks before all
 * of a suite run again only where what they made may be another thing now.
 */
import vm from 'node:vm';
import { freshExpectations, suitesOf } from './test-tree.mjs';

/**
 * @typedef {import('./test-tree.mjs').Test} Test
 * @typedef {import('./test-tree.mjs').Suite} Suite
 * @typedef {{ kind: 'passed', ran: number }
 *   | { kind: 'failed', ran: number, test: Test, message: string }
 *   | { kind: 'endless', ran: number, test: Test }} Outcome
 * @typedef {{ limit: number, again?: (suite: Suite) => boolean, before?: (test: Test) => void, after?: (test: Test) => void,
 *   beforeHooks?: (suite: Suite) => void, afterHooks?: (suite: Suite) => void }} How `again`: whether the hooks of a suite may now make another thing
 */

/** Suites whose hooks have run, and whether what they made is what the program as it is makes. @type {WeakMap<Suite, 'as-is' | 'odd'>} */
const made = new WeakMap();

const step = new vm.Script('globalThis.__sillplateStep()');
const global = /** @type {{ __sillplateStep?: () => void }} */ (globalThis);

/** Calls something that may never come back by itself. @param {() => void} work @param {number} limit milliseconds */
function within(work, limit) {
  global.__sillplateStep = work;
  try {
    step.runInThisContext({ timeout: Math.max(1, Math.round(limit)) });
    return 'done';
  } catch (error) {
    if (/** @type {NodeJS.ErrnoException} */ (error).code === 'ERR_SCRIPT_EXECUTION_TIMEOUT')
      return 'endless';
    throw error;
  }
}

/** @param {unknown} value @returns {value is PromiseLike<unknown>} */
const waits = (value) => typeof (/** @type {any} */ (value)?.then) === 'function';

/**
 * @param {readonly Test[]} tests
 * @param {How} how
 * @returns {Promise<Outcome>}
 */
export async function runTests(tests, how) {
  const until = performance.now() + how.limit;
  /** Hooks of these suites have run in this very run. @type {Set<Suite>} */
  const now = new Set();
  let at = 0;
  /** @type {string | undefined} */
  let message;
  const failed = (/** @type {unknown} */ error) => {
    message = error instanceof Error ? `${error.message}` : String(error);
  };

  while (at < tests.length) {
    /** @type {PromiseLike<unknown> | undefined} */
    let pending;
    /** What comes when the pending work is done. @type {(() => void) | undefined} */
    let then;
    const steps = () => {
      for (; at < tests.length; at++) {
        const test = /** @type {Test} */ (tests[at]);
        const hooks = hooksFor(test, how, now);
        const first = hooks.shift();
        if (first !== undefined) {
          how.beforeHooks?.(first.suite);
          pending = first.run().finally(() => how.afterHooks?.(first.suite));
          return;
        }
        freshExpectations();
        how.before?.(test);
        const each = suitesOf(test.suite).flatMap(({ beforeEach }) => beforeEach);
        if (each.some((hook) => waits(hook()))) throw new Error('a hook before each test may not wait');
        const value = test.body();
        if (waits(value)) {
          pending = value;
          then = () => {
            how.after?.(test);
            at++;
          };
          return;
        }
        how.after?.(test);
      }
    };
    try {
      if (within(steps, until - performance.now()) === 'endless')
        return { kind: 'endless', ran: at + 1, test: /** @type {Test} */ (tests[at]) };
      if (pending !== undefined) {
        await pending;
        /** @type {(() => void) | undefined} */ (then)?.();
      }
    } catch (error) {
      failed(error);
    }
    if (message !== undefined) {
      return { kind: 'failed', ran: at + 1, test: /** @type {Test} */ (tests[at]), message };
    }
  }
  return { kind: 'passed', ran: tests.length };
}

/** @param {Test} test @param {How} how @param {Set<Suite>} now */
function hooksFor(test, how, now) {
  return suitesOf(test.suite)
    .filter((suite) => {
      if (suite.beforeAll.length === 0 || now.has(suite)) return false;
      return made.get(suite) !== 'as-is' || how.again?.(suite) === true;
    })
    .map((suite) => ({
      suite,
      run: async () => {
        now.add(suite);
        made.set(suite, 'odd');
        for (const hook of suite.beforeAll) await hook();
        if (how.again?.(suite) !== true) made.set(suite, 'as-is');
      },
    }));
}
