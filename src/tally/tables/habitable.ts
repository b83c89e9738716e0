/**
 * What a model code asks of a room to sleep in: floor, width, height. For questions about what is counted as a
 * bedroom only; they never say that a room meets or fails a code.
 */
import { z } from 'zod';
import { readTable } from '../read-table.js';
import { sourced, whole } from './sourced.js';

const figures = <Figures extends z.ZodRawShape>(shape: Figures) =>
  sourced.extend({ figures: z.strictObject(shape) });

const table = z.strictObject({
  room: figures({ minSquareFeet: whole, minSideFeet: whole }),
  lowParts: figures({
    /**
     * Lower than this the floor below a slope doesn’t count. The folder tapes the floor at this very height, as
     * `at-5-ft`: another figure would need another word there.
     */
    minSlopeFeet: z.literal(5),
  }),
  ceiling: figures({ minFeet: whole }),
});

/** The rules of `habitable.yaml` by name. */
export type HabitableRules = z.infer<typeof table>;

/** Reads `habitable.yaml`; throws on a broken table, which is our own mistake. */
export function habitableRules(): HabitableRules {
  return readTable('habitable', table);
}
