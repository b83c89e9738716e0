/**
 * The program and its tests as modules that can be put in place of each other while the process goes on. Takes TypeScript
 * files, gives each module's exports; one object per file for good, so that whoever imported it sees what replaces it.
 */
import { existsSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import vm from 'node:vm';
import ts from 'typescript';
import { ClearableWeakMap } from './clearable-weak-map.mjs';

/**
 * @typedef {Record<string, unknown>} Exports
 * @typedef {(exports: Exports, require: (name: string) => unknown, url: string, cache: (one: Clearable) => Clearable,
 *   reset: (back: () => void) => void, weak: typeof ClearableWeakMap) => unknown} Body
 * @typedef {{ clear(): void }} Clearable
 */

/** Caches of what stands in the program's own files; no mutant elsewhere can change it, and it takes long to read again. */
const KEEPS_ITS_CACHE = ['src/tally/read-table.ts'];

/** TypeScript to a function body. What a module remembers between calls becomes something that can be forgotten. */
function compile(
  /** @type {string} */ file,
  /** @type {string} */ source,
  /** @type {boolean} */ forgets,
  /** @type {ts.TransformerFactory<ts.SourceFile>[]} */ rewrite,
) {
  let { outputText: code } = ts.transpileModule(source, {
    fileName: file,
    transformers: { before: rewrite },
    compilerOptions: {
      module: ts.ModuleKind.CommonJS,
      target: ts.ScriptTarget.ES2022,
      esModuleInterop: true,
      isolatedModules: true,
    },
  });
  code = code
    .replaceAll('import.meta.url', '__url')
    .replaceAll('{ enumerable: true, get:', '{ configurable: true, enumerable: true, get:');
  if (forgets)
    code = code
      .replace(/^const (\w+) = new (Map|Set)\(\);$/gm, 'const $1 = __cache(new $2());')
      .replace(/^const (\w+) = new WeakMap\(\);$/gm, 'const $1 = __cache(new __WeakMap());')
      .replace(/^let (\w+);$/gm, 'let $1; __reset(() => { $1 = undefined; });');
  const open = /^(?:const|let) .*\bawait /m.test(code) ? `return (async () => {${code}\n})();` : code;
  return /** @type {Body} */ (
    vm.compileFunction(open, ['exports', 'require', '__url', '__cache', '__reset', '__WeakMap'], {
      filename: file,
    })
  );
}

export class Modules {
  /** @type {Map<string, Exports>} */
  #exports = new Map();
  /** @type {Map<string, Body>} */
  #bodies = new Map();
  /** What each module brought along to forget. @type {Map<string, (() => void)[]>} */
  #resets = new Map();
  /** Modules whose exports were read while another one was loading: that one → those. @type {Map<string, Set<string>>} */
  #readAtLoad = new Map();
  /** @type {Map<string, Set<string>>} */
  #imports = new Map();
  /** @type {string[]} */
  #loading = [];
  /** @type {string[]} */
  #order = [];
  #require;

  /**
   * @param {string} root the project's folder
   * @param {{ sourceOf?: (file: string) => string | undefined, given?: Readonly<Record<string, unknown>>, watch?: boolean,
   *   bodies?: Map<string, Body> }} how `given`: modules by name that are ours; `watch`: note who reads whom while loading
   */
  constructor(root, how = {}) {
    this.root = root;
    this.how = how;
    this.#require = createRequire(path.join(root, 'package.json'));
    if (how.bodies !== undefined) this.#bodies = new Map(how.bodies);
  }

  get bodies() {
    return this.#bodies;
  }

  /** The loaded modules, each behind those it needed while it loaded. */
  get files() {
    return this.#order;
  }

  /** @param {string} file */
  isLoaded(file) {
    return this.#exports.has(file);
  }

  /** Which of the loaded modules a module names. @param {string} file @returns {ReadonlySet<string>} */
  importsOf(file) {
    return this.#imports.get(file) ?? new Set();
  }

  /** Which modules’ exports a module read while it was loading. @param {string} file @returns {ReadonlySet<string>} */
  readAtLoad(file) {
    return this.#readAtLoad.get(file) ?? new Set();
  }

  /**
   * The module's exports; a promise beside them where it has to wait.
   * @param {string} file
   * @returns {{ exports: Exports, done: unknown }}
   */
  load(file) {
    const known = this.#exports.get(file);
    if (known !== undefined) return { exports: known, done: undefined };
    /** @type {Exports} */
    const exports = {};
    this.#exports.set(file, exports);
    return { exports, done: this.#evaluate(file, exports, this.#bodyOf(file)) };
  }

  /**
   * Evaluates a module once more and puts its exports in place of the ones that are there. Gives back what undoes it.
   * @param {string} file @param {Body} [body] of its own where another text is wanted
   */
  replace(file, body = this.#bodyOf(file)) {
    const stable = this.load(file).exports;
    const before = Object.getOwnPropertyDescriptors(stable);
    const resets = this.#resets.get(file);
    /** @type {Exports} */
    const fresh = {};
    const back = () => {
      put(stable, before);
      if (resets === undefined) this.#resets.delete(file);
      else this.#resets.set(file, resets);
    };
    try {
      const done = this.#evaluate(file, fresh, body);
      put(stable, Object.getOwnPropertyDescriptors(fresh));
      return { back, done };
    } catch (error) {
      back();
      throw error;
    }
  }

  /**
   * A text of the module that is not the file's.
   * @param {string} file @param {string} source @param {ts.TransformerFactory<ts.SourceFile>[]} rewrite
   */
  bodyFrom(file, source, ...rewrite) {
    const name = path.relative(this.root, file);
    return compile(file, source, name.startsWith('src/') && !KEEPS_ITS_CACHE.includes(name), rewrite);
  }

  /** Forgets what the loaded modules remember between calls. */
  forget() {
    for (const resets of this.#resets.values()) for (const reset of resets) reset();
  }

  /** @param {string} file @param {Exports} exports @param {Body} body @returns {unknown} */
  #evaluate(file, exports, body) {
    /** @type {(() => void)[]} */
    const resets = [];
    this.#loading.push(file);
    try {
      return body(
        exports,
        (name) => this.#required(file, name),
        pathToFileURL(file).href,
        (one) => {
          resets.push(() => one.clear());
          return one;
        },
        (back) => resets.push(back),
        ClearableWeakMap,
      );
    } finally {
      this.#loading.pop();
      if (!this.#order.includes(file)) this.#order.push(file);
      if (resets.length > 0) this.#resets.set(file, resets);
      else this.#resets.delete(file);
    }
  }

  /** @param {string} from @param {string} name @returns {unknown} */
  #required(from, name) {
    const given = this.how.given?.[name];
    if (given !== undefined) return given;
    if (!name.startsWith('.')) return this.#require(name);
    const file = sourceFile(path.resolve(path.dirname(from), name));
    if (file.endsWith('.json')) return JSON.parse(readFileSync(file, 'utf8'));
    const imports = this.#imports.get(from) ?? new Set();
    this.#imports.set(from, imports.add(file));
    const { exports, done } = this.load(file);
    if (done !== undefined) throw new Error(`${file} waits while it loads; only a test file may`);
    return this.how.watch === true ? this.#watched(file, exports) : exports;
  }

  /** Tells which module that is still loading reads from this one. @param {string} file @param {Exports} exports */
  #watched(file, exports) {
    return new Proxy(exports, {
      get: (target, key) => {
        if (typeof key === 'string' && key !== '__esModule') this.noteReader(file);
        return Reflect.get(target, key);
      },
    });
  }

  /** @param {string} file */
  noteReader(file) {
    const reader = this.#loading.at(-1);
    if (reader === undefined || reader === file) return;
    const read = this.#readAtLoad.get(reader) ?? new Set();
    this.#readAtLoad.set(reader, read.add(file));
  }

  /** While `work` runs, what is read counts as read by `file` while it loads. @param {string} file @param {() => Promise<void>} work */
  async asLoading(file, work) {
    this.#loading.push(file);
    try {
      await work();
    } finally {
      this.#loading.pop();
    }
  }

  /** @param {string} file */
  #bodyOf(file) {
    const known = this.#bodies.get(file);
    if (known !== undefined) return known;
    const body = this.bodyFrom(file, this.how.sourceOf?.(file) ?? readFileSync(file, 'utf8'));
    this.#bodies.set(file, body);
    return body;
  }
}

/** @param {Exports} stable @param {PropertyDescriptorMap} wanted */
function put(stable, wanted) {
  for (const key of Object.keys(stable)) if (!(key in wanted)) delete stable[key];
  for (const [key, one] of Object.entries(wanted))
    if (key !== '__esModule') Object.defineProperty(stable, key, { ...one, configurable: true });
}

/** The program names its modules by what they become. @param {string} file */
function sourceFile(file) {
  const written = file.replace(/\.js$/, '.ts');
  return existsSync(written) ? written : file;
}
