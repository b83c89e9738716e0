/**
 * The hand-labelled remarks in their folders. `seen`, `practice` and `plain` (ordinary agents' wording) may be read while
 * rules are written. `unseen` was written before the rules and is only counted; its two demo houses are known to the rules
 * from the other folders. `unread` has a house of its own that no rule was written on: it tells how the draft of a new
 * house fares.
 */
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { housesOf, type Remark, readRemarks } from './score.js';

export const HALVES = ['seen', 'practice', 'plain', 'unseen', 'unread'] as const;
export type Half = (typeof HALVES)[number];

/** The day that the labels were given for. */
export const LABELLED_AS_OF = '2026-11-20';

/** The least that each half has to reach, and the most it may: shares of 1. */
export const FLOORS: Readonly<Record<Half, { readonly caught: number; readonly accused: number }>> = {
  /** Of the contradicted claims, how many are called so; of the true ones, how many are called contradicted. */
  seen: { caught: 0.94, accused: 0.01 },
  practice: { caught: 0.86, accused: 0.005 },
  plain: { caught: 0.86, accused: 0.015 },
  unseen: { caught: 0.85, accused: 0.025 },
  unread: { caught: 0.7, accused: 0.045 },
};

export interface LabelledHouse {
  readonly half: Half;
  readonly name: string;
  /** Of the house folder. */
  readonly folder: string;
  readonly remarks: readonly Remark[];
}

/** `root`: address of the project's folder. */
export function labelledHouses(root: URL, half: Half): LabelledHouse[] {
  const folder = new URL(`tests/remarks/${half}/`, root);
  return housesOf(folder).map((name) => {
    const own = fileURLToPath(new URL(`houses/${name}`, folder));
    return {
      half,
      name,
      folder: existsSync(own) ? own : fileURLToPath(new URL(`content/${name}`, root)),
      remarks: readRemarks(folder, name),
    };
  });
}
