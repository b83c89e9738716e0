/**
 * Makes a view fail loudly when a template asks it for something it hasn't.
 *
 * Nunjucks' `throwOnUndefined` only watches `{{ output }}`; `{% if typo %}` and `{% for x in typo %}` pass in
 * silence. Wrapped values close the first gap (a name after a dot), wrapped globals the second (a bare name).
 */

/** A prototype of its own: Eleventy copies plain objects deeply and would lose the wrapping. */
class View {}

/** Names that the language, Nunjucks or Eleventy ask any object for. */
const ASKED_OF_ANYTHING = new Set(['then', 'toJSON', 'constructor', 'length', 'val', 'toString', 'valueOf']);

const wrapped = new WeakMap<object, object>();

/**
 * Wraps a view so that reading an unknown field throws a TypeError naming the field and its owner.
 * An optional field must be present with `null`.
 */
export function strictView<T extends object>(view: T, name: string): T {
  return wrap(Array.isArray(view) ? view : Object.assign(new View(), view), name);
}

function wrap<T extends object>(value: T, name: string): T {
  const known = wrapped.get(value);
  if (known !== undefined) return known as T;
  const proxy = new Proxy<object>(value, {
    get(target, key) {
      const inner: unknown = (target as Record<PropertyKey, unknown>)[key];
      if (typeof inner === 'object' && inner !== null)
        return wrapped.get(inner) ?? wrap(inner, Array.isArray(target) ? name : `${name}.${String(key)}`);
      if (inner !== undefined || typeof key === 'symbol' || key in target || ASKED_OF_ANYTHING.has(key))
        return inner;
      const has = Object.keys(target).join(', ');
      throw new TypeError(`template used unknown field "${key}" of ${name} (has: ${has})`);
    },
  });
  wrapped.set(value, proxy);
  return proxy as T;
}

/**
 * Wraps the globals of a Nunjucks environment: a bare name that is neither a variable, an argument nor a
 * global throws. Works because Nunjucks looks among the globals last.
 */
export function strictGlobals(globals: Record<string, unknown>): Record<string, unknown> {
  return new Proxy(globals, {
    has: () => true,
    get(target, key, receiver) {
      if (typeof key === 'symbol' || key in target) return Reflect.get(target, key, receiver);
      throw new TypeError(`template used unknown name "${key}"`);
    },
  });
}
