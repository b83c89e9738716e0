/** A correction tells what was written before and when it was mended; one without the other tells half. */
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import type { FactPath } from '../diagnostics/fact-path.js';
import type { House } from './house.js';

export function checkCorrections(house: House): Diagnostic[] {
  return halves(house, []);
}

function halves(value: unknown, path: FactPath): Diagnostic[] {
  if (typeof value !== 'object' || value === null) return [];
  const { was, corrected } = value as { was?: unknown; corrected?: unknown };
  const word = String(path.at(-1) ?? '');
  const own: Diagnostic[] =
    (was === undefined) === (corrected === undefined)
      ? []
      : was === undefined
        ? [
            half(
              [...path, 'corrected'],
              `“${word}” was corrected, but what it said before is not there`,
              'was: 1999',
            ),
          ]
        : [
            half(
              [...path, 'was'],
              `“${word}” has an earlier value, but not the day it was corrected`,
              'corrected: 2026-05-02',
            ),
          ];
  const inner = Object.entries(value).flatMap(([key, part]) =>
    halves(part, [...path, Array.isArray(value) ? Number(key) : key]),
  );
  return [...own, ...inner];
}

const half = (path: FactPath, message: string, example: string): Diagnostic => ({
  code: 'facts.correction',
  severity: 'warning',
  path,
  message,
  hints: [`add it, for example  ${example}`],
});
