import type { Rich } from './packet.js';

/** The same value with every rich text in it changed, however deep it lies; of one shape with what it was, with which it shares what is not changed. */
export function mapRich<T>(value: T, change: (rich: Rich) => Rich): T {
  return mapWords(value, change, (_key, word) => word);
}

/** As `mapRich`, and every other text that is the value of a word (a block's title, a column's) changed as well. */
export function mapWords<T>(
  value: T,
  change: (rich: Rich) => Rich,
  word: (key: string, text: string) => string,
): T {
  // What nothing changes in is handed on as it is: most of a packet, and copies of all of it would be the larger work.
  const walk = (inner: unknown): unknown => {
    if (isRich(inner)) return change(inner);
    if (Array.isArray(inner)) {
      const walked = inner.map(walk);
      return walked.every((one, index) => one === inner[index]) ? inner : walked;
    }
    if (typeof inner !== 'object' || inner === null) return inner;
    let copy: Record<string, unknown> | undefined;
    for (const [key, deeper] of Object.entries(inner)) {
      const walked = typeof deeper === 'string' ? word(key, deeper) : walk(deeper);
      if (walked === deeper) continue;
      copy ??= { ...inner };
      copy[key] = walked;
    }
    return copy ?? inner;
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
