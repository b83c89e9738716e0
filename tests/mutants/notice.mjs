/**
 * Keeps what the rewritten files tell while tests run (`watch-values`): per test, how often each mutant was passed by, and
 * which ones would have made a difference there.
 */

/** @typedef {Record<string, number>} Hits times by mutant */

/** Hits outside of any test: while modules load. @type {Map<number, number>} */
let fixed = new Map();
/** @type {{ hits: Map<number, number>, felt: Set<number> } | undefined} */
let current;
/** Whether another value is being worked out: what is passed by then does not count. */
let asking = false;

/** @param {number} id @param {boolean} felt */
function note(id, felt) {
  const { hits } = current ?? { hits: fixed };
  hits.set(id, (hits.get(id) ?? 0) + 1);
  if (felt) current?.felt.add(id);
}

/** @param {unknown} a @param {unknown} b @returns {boolean} */
const same = (a, b) =>
  Object.is(a, b) ||
  (Array.isArray(a) &&
    Array.isArray(b) &&
    a.length === b.length &&
    a.every((one, at) => Object.is(one, b[at])));

/** @param {unknown} a @param {unknown} b */
const sameTruth = (a, b) => Boolean(a) === Boolean(b);

/** @param {(a: unknown, b: unknown) => boolean} alike */
const compared =
  (alike) =>
  (
    /** @type {unknown} */ own,
    /** @type {readonly number[]} */ ids,
    /** @type {((() => unknown) | null)[]} */ ...others
  ) => {
    if (asking) return own;
    for (let at = 0; at < ids.length; at++) {
      const id = /** @type {number} */ (ids[at]);
      const other = others[at];
      let felt = true;
      if (current !== undefined && other != null && !current.felt.has(id)) {
        asking = true;
        try {
          felt = !alike(own, other());
        } catch {
          felt = true;
        } finally {
          asking = false;
        }
      }
      note(id, felt);
    }
    return own;
  };

/** A pattern beside its mutants: each text that it is held against is held against them too. */
class WatchedPattern extends RegExp {
  /** @type {readonly number[]} */
  ids = [];
  /** @type {readonly RegExp[]} */
  others = [];

  /** @override */
  static get [Symbol.species]() {
    return RegExp;
  }

  /** @override @param {string} text */
  exec(text) {
    const { lastIndex } = this;
    const own = super.exec(text);
    if (current === undefined || asking) return own;
    for (let at = 0; at < this.ids.length; at++) {
      const id = /** @type {number} */ (this.ids[at]);
      if (current.felt.has(id)) continue;
      const other = /** @type {RegExp} */ (this.others[at]);
      other.lastIndex = lastIndex;
      const theirs = other.exec(text);
      note(id, own?.index !== theirs?.index || !same(own && [...own], theirs && [...theirs]));
    }
    return own;
  }

  /** Used in a way that is not followed: as good as felt. */
  #used() {
    if (current !== undefined) for (const id of this.ids) note(id, true);
  }

  /** @override */
  get source() {
    this.#used();
    return super.source;
  }

  /** @override @param {string} text @param {number} [limit] */
  [Symbol.split](text, limit) {
    this.#used();
    return super[Symbol.split](text, limit);
  }

  /** @override @param {string} text */
  [Symbol.matchAll](text) {
    this.#used();
    return super[Symbol.matchAll](text);
  }
}

/** @param {RegExp} own @param {readonly number[]} ids @param {readonly RegExp[]} others */
function pattern(own, ids, others) {
  const made = new WatchedPattern(own.source, own.flags);
  made.ids = ids;
  made.others = others;
  for (const id of ids) note(id, false);
  return made;
}

Object.assign(globalThis, {
  __value: compared(same),
  __truth: compared(sameTruth),
  __pattern: pattern,
  __passed: (/** @type {readonly string[]} */ ids) => {
    if (!asking) for (const id of ids) note(Number(id), true);
  },
});

/** What was passed by since the last call, outside of tests. */
export function takeFixed() {
  const taken = fixed;
  fixed = new Map();
  return Object.fromEntries(taken);
}

/** Begins a test, or hooks. */
export function beginNoting() {
  current = { hits: new Map(), felt: new Set() };
}

/** @returns {{ felt: Hits, passed: Hits }} */
export function endNoting() {
  const { hits, felt } = current ?? { hits: new Map(), felt: new Set() };
  current = undefined;
  return {
    felt: Object.fromEntries([...hits].filter(([id]) => felt.has(id))),
    passed: Object.fromEntries([...hits].filter(([id]) => !felt.has(id))),
  };
}
