/** What contradicts itself in a house, as lines of text: whatever changes in it shows as a changed line. */
import { expect } from 'vitest';
import type { Diagnostic } from '../../src/diagnostics/diagnostic.js';
import { printFactPath } from '../../src/diagnostics/fact-path.js';
import type { Cameras } from '../../src/facts/camera.js';
import { EMPTY_LEDGER } from '../../src/facts/ledger.js';
import { deriveTally } from '../../src/tally/tally.js';
import { heldText } from './held-text.js';
import { houseFrom, type PartialSpec } from './house-from.js';
import { type CostWords, costRows } from './tally-money-case.js';

export interface ClashingHouse {
  readonly spec: PartialSpec;
  readonly costs?: readonly CostWords[];
  readonly cameras?: Cameras;
}

export function clashesOf({ spec, costs, cameras }: ClashingHouse): readonly Diagnostic[] {
  const ledger = costs && {
    ...EMPTY_LEDGER,
    costs: costRows(costs),
    sheets: { costs: 'costs.csv', miles: undefined, hours: undefined },
  };
  const { diagnostics } = deriveTally(houseFrom(spec), '2026-11-20', cameras, ledger);
  return diagnostics.filter(({ code }) => code === 'tally.clash');
}

/** Where each clash stands. */
export const placesOf = (house: ClashingHouse): string[] =>
  clashesOf(house).map(({ path = [] }) => printFactPath(path));

/** Every clash of the house: severity, code and path, the path of the other fact, the message, the hints. */
const clashesAsText = (house: ClashingHouse): string =>
  clashesOf(house)
    .map(({ severity, code, path, beside, message, hints, ...rest }) =>
      [
        `${severity} ${code} ${printFactPath(path ?? [])}`,
        ...(beside === undefined ? [] : [`  beside ${printFactPath(beside)}`]),
        ...Object.entries(rest).map(([word, value]) => `  ${word} ${JSON.stringify(value)}`),
        `  ${message}`,
        ...hints.map((hint) => `  - ${hint}`),
      ].join('\n'),
    )
    .join('\n\n');

/** Holds the clashes of some houses, one after another, against `clashes-whole/<name>.txt`. */
export function expectWhole(name: string, houses: Readonly<Record<string, ClashingHouse>>): void {
  const text = Object.entries(houses)
    .map(([house, made]) => `== ${house} ==\n\n${clashesAsText(made)}\n`)
    .join('\n');
  expect(text).toBe(heldText(`clashes-whole/${name}.txt`, text));
}
