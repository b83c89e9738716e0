import type { Rich } from './packet.js';

/** The same value with every rich text in it changed, however deep it lies; of one shape with what it was. */
export function mapRich<T>(value: T, change: (rich: Rich) => Rich): T {
  return mapWords(value, change, (_key, word) => word);
}

/** As `mapRich`, and every other text that is the value of a word (a block's title, a column's) changed as well. */
export function mapWords<T>(
  value: T,
  change: (rich: Rich) => Rich,
  word: (key: string, text: string) => string,
): T {
  const walk = (inner: unknown): unknown => {
    if (isRich(inner)) return change(inner);
    if (Array.isArray(inner)) return inner.map(walk);
    if (typeof inner !== 'object' || inner === null) return inner;
    return Object.fromEntries(
      Object.entries(inner).map(([key, deeper]) => [
        key,
        typeof deeper === 'string' ? word(key, deeper) : walk(deeper),
      ]),
    );
  };
  return walk(value) as T;
}

/** Runs of text; a list's items have a `text` too, which is runs itself, and a drawing's letters are shapes. */
const isRich = (value: unknown): value is Rich =>
  Array.isArray(value) &&
  value.length > 0 &&
  value.every(
    (one) =>
      typeof one === 'object' &&
      one !== null &&
      'text' in one &&
      typeof one.text === 'string' &&
      !('kind' in one),
  );
