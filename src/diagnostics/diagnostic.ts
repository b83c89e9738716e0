/**
 * What is wrong, where, and what to do about it.
 *
 * Rooms return diagnostics beside their value and never throw for a writer's mistake. They carry the fact's
 * path; only the report (`report.ts`) turns it into file, line and column.
 */
import type { Code } from './codes.js';
import type { FactPath } from './fact-path.js';
import type { Place } from './place.js';

/** error: the packet would be false or can't be made · warning: true but thin · note: an assumption. */
export type Severity = 'error' | 'warning' | 'note';

export interface Diagnostic {
  readonly code: Code;
  readonly severity: Severity;
  /** The fact it is about. Left out only where no fact is concerned (a folder, the disk). */
  readonly path?: FactPath;
  /** The other fact, of two that can't both be true: shown with its own place below the first. */
  readonly beside?: FactPath;
  /** It is about the word at `path`, not about the value behind it. */
  readonly onWord?: true;
  /** Given by a room that knows the spot itself: a syntax error, a row of a sheet. */
  readonly place?: Place;
  /** The file it is about, where there is no line to show: a photo, a folder. */
  readonly file?: string;
  /** What is so, in one sentence without a full stop. */
  readonly message: string;
  /** For gaps: smaller is asked for more often. They are told in that order, not in the file's. */
  readonly rank?: number;
  /** What to type or do; the first is the best. */
  readonly hints: readonly string[];
}
