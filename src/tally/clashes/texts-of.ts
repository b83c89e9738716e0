/** What is written in sentences in some fields of one entry, each with its path. */
import type { FactPath } from '../../diagnostics/fact-path.js';

export const textsOf = (
  path: FactPath,
  entry: Readonly<Record<string, unknown>>,
  words: readonly string[],
): (readonly [string, FactPath])[] =>
  words.flatMap((word): (readonly [string, FactPath])[] => {
    const text = entry[word];
    return typeof text === 'string' ? [[text, [...path, word]]] : [];
  });
