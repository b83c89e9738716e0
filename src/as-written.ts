/** What was worked out points at the checked facts; a message points at what the writer typed. */
import type { Diagnostic } from './diagnostics/diagnostic.js';
import { withoutKnockOns } from './diagnostics/knock-on.js';
import type { ReadHouse } from './intake/read-house.js';

/** Findings of `tally` at their places in the files, without those that an earlier mistake brought about. */
export function asWritten(read: ReadHouse, derived: readonly Diagnostic[]): Diagnostic[] {
  const traced = derived.map((one) => ({
    ...one,
    ...(one.path === undefined ? {} : { path: read.writtenPath(one.path) }),
    ...(one.beside === undefined ? {} : { beside: read.writtenPath(one.beside) }),
  }));
  return withoutKnockOns(traced, read.diagnostics);
}
