/**
 * What a test file says to `vitest`, as a tree of suites and tests that can be run one by one. Takes a file's calls of
 * `describe`, `test`, the hooks and `expect`; a call of anything else fails loudly.
 */
import { format } from 'node:util';
import {
  ASYMMETRIC_MATCHERS_OBJECT,
  chai,
  customMatchers,
  GLOBAL_EXPECT,
  getState,
  JestAsymmetricMatchers,
  JestChaiExpect,
  JestExtend,
  setState,
} from '@vitest/expect';

/**
 * @typedef {() => unknown} Work
 * @typedef {{ name: string, parent: Suite | undefined, suites: Suite[], tests: Test[], beforeAll: Work[], beforeEach: Work[],
 *   skipped: boolean, body: Work | undefined, id: string }} Suite
 * @typedef {{ id: string, name: string, file: string, suite: Suite, body: Work }} Test
 */

chai.use(JestExtend);
chai.use(JestChaiExpect);
chai.use(JestAsymmetricMatchers);

/** `expect`, made as vitest makes it from the same parts. */
function makeExpect() {
  const made = /** @type {any} */ (
    (/** @type {unknown} */ value, /** @type {string} */ message) => {
      const state = getState(made);
      setState({ assertionCalls: state.assertionCalls + 1 }, made);
      return chai.expect(value, message);
    }
  );
  Object.assign(made, chai.expect, /** @type {any} */ (globalThis)[ASYMMETRIC_MATCHERS_OBJECT]);
  made.getState = () => getState(made);
  made.setState = (/** @type {any} */ state) => setState(state, made);
  /** @type {any} */ (globalThis)[GLOBAL_EXPECT] = made;
  made.extend = (/** @type {any} */ matchers) => /** @type {any} */ (chai.expect).extend(made, matchers);
  made.extend(customMatchers);
  return made;
}

const expect = makeExpect();
/** To be called before each test. */
export const freshExpectations = () =>
  setState(
    {
      assertionCalls: 0,
      isExpectingAssertions: false,
      isExpectingAssertionsError: null,
      expectedAssertionsNumber: null,
      expectedAssertionsNumberErrorGen: null,
    },
    expect,
  );

/** @type {Suite | undefined} */
let current;

/** @param {string} name @param {Suite | undefined} parent @param {Work} [body] @returns {Suite} */
const newSuite = (name, parent, body) => ({
  name,
  parent,
  suites: [],
  tests: [],
  beforeAll: [],
  beforeEach: [],
  skipped: parent?.skipped ?? false,
  body,
  id: '',
});

function here() {
  if (current === undefined) throw new Error('outside of a test file');
  return current;
}

/** A test's or suite's own work among what was given: options may stand before or behind. @param {unknown[]} given */
function workOf(given) {
  const work = given.find((one) => typeof one === 'function');
  if (work === undefined) throw new Error('a test without a body');
  return /** @type {(...args: any[]) => unknown} */ (work);
}

/** @param {unknown} name @param {readonly unknown[]} row @param {number} at */
function nameOf(name, row, at) {
  const text = typeof name === 'function' ? name.name : String(name);
  const held = /** @type {Record<string, unknown> | undefined} */ (row[0]);
  const numbered = text.replaceAll('%%', '%\u0000').replaceAll('%#', String(at)).replaceAll('%\u0000', '%%');
  const named = numbered.replaceAll(/\$([\w.]+)/g, (whole, key) => {
    const value = String(key)
      .split('.')
      .reduce((/** @type {any} */ one, part) => one?.[part], held);
    return value === undefined ? whole : String(value);
  });
  const wanted = (named.match(/%[sdifjoOc]/g) ?? []).length;
  return format(named, ...row.slice(0, wanted));
}

/** @param {(name: string, work: Work, skipped: boolean) => void} add */
function withKinds(add) {
  const each =
    (/** @type {readonly unknown[]} */ rows, skipped = false) =>
    (/** @type {unknown} */ name, /** @type {unknown[]} */ ...given) => {
      const work = workOf(given);
      rows.forEach((row, at) => {
        const args = Array.isArray(row) ? row : [row];
        add(nameOf(name, args, at), () => work(...args), skipped);
      });
    };
  const kind =
    (/** @type {boolean} */ skipped) =>
    (/** @type {unknown} */ name, /** @type {unknown[]} */ ...given) => {
      const work = workOf(given);
      add(typeof name === 'function' ? name.name : String(name), () => work(), skipped);
    };
  const plain = kind(false);
  return Object.assign(plain, {
    each: (/** @type {readonly unknown[]} */ rows) => each(rows),
    skipIf: (/** @type {unknown} */ so) =>
      Object.assign(kind(Boolean(so)), {
        each: (/** @type {readonly unknown[]} */ rows) => each(rows, Boolean(so)),
      }),
    runIf: (/** @type {unknown} */ so) =>
      Object.assign(kind(!so), { each: (/** @type {readonly unknown[]} */ rows) => each(rows, !so) }),
    skip: kind(true),
  });
}

const describe = withKinds((name, work, skipped) => {
  const suite = newSuite(name, here(), work);
  suite.skipped ||= skipped;
  here().suites.push(suite);
});

const test = withKinds((name, work, skipped) => {
  const suite = here();
  if (skipped || suite.skipped) return;
  suite.tests.push({ id: '', name, file: '', suite, body: work });
});

/** Tests of pure code leave nothing behind. */
function notHere() {
  throw new Error('hooks after a test are not run here');
}

/** @param {'beforeAll' | 'beforeEach'} when */
const hook = (when) => (/** @type {Work} */ work) => {
  here()[when].push(work);
};

/** What stands in for `vitest`. */
export const SHIM = {
  __esModule: true,
  describe,
  test,
  it: test,
  expect,
  beforeAll: hook('beforeAll'),
  beforeEach: hook('beforeEach'),
  afterEach: notHere,
  afterAll: notHere,
};

/**
 * The tests of a file, in its order. Suites are opened after the whole file was read, as vitest does.
 * @param {string} file as it is called in ids
 * @param {() => unknown} evaluate evaluates the file
 * @returns {Promise<Test[]>}
 */
export async function collectTests(file, evaluate) {
  const top = newSuite('', undefined);
  const open = async (/** @type {Suite} */ suite, /** @type {() => unknown} */ body) => {
    const outer = current;
    current = suite;
    try {
      await body();
    } finally {
      current = outer;
    }
    for (const inner of suite.suites) await open(inner, () => inner.body?.());
  };
  await open(top, evaluate);
  /** @type {Test[]} */
  const tests = [];
  /** @type {Map<string, number>} */
  const met = new Map();
  let suites = 0;
  const number = (/** @type {Suite} */ suite, /** @type {string} */ above) => {
    const name = `${above} ${suite.name}`.trim();
    suite.id = `${file}/${suites++}`;
    for (const one of suite.tests) {
      const full = `${name} ${one.name}`.trim();
      const times = (met.get(full) ?? 0) + 1;
      met.set(full, times);
      tests.push(
        Object.assign(one, { file, name: full, id: `${file}#${full}${times > 1 ? ` (${times})` : ''}` }),
      );
    }
    for (const inner of suite.suites) number(inner, name);
  };
  number(top, '');
  return tests;
}

/** The suite's hooks of a kind, outermost first. @param {Suite | undefined} suite @returns {Suite[]} */
export function suitesOf(suite) {
  return suite === undefined ? [] : [...suitesOf(suite.parent), suite];
}
