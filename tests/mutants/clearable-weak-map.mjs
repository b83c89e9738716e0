/** A WeakMap that can forget everything. Behaves as one otherwise. */
export class ClearableWeakMap {
  #inner = new WeakMap();

  /** @param {WeakKey} key */
  get(key) {
    return this.#inner.get(key);
  }

  /** @param {WeakKey} key */
  has(key) {
    return this.#inner.has(key);
  }

  /** @param {WeakKey} key @param {unknown} value */
  set(key, value) {
    this.#inner.set(key, value);
    return this;
  }

  /** @param {WeakKey} key */
  delete(key) {
    return this.#inner.delete(key);
  }

  clear() {
    this.#inner = new WeakMap();
  }
}
