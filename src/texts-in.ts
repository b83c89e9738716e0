import type { FactPath } from './diagnostics/fact-path.js';

/** One text of what was written, and where. */
export interface FactText {
  readonly path: FactPath;
  readonly text: string;
}

/** Every text in what was written, in its order. */
export function textsIn(value: unknown, path: FactPath = []): FactText[] {
  if (typeof value === 'string') return [{ path, text: value }];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) =>
    textsIn(inner, [...path, Array.isArray(value) ? Number(key) : key]),
  );
}
