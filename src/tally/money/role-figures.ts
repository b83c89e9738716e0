/** What the sheets of the four roles hand to the comparison between them. */
import type { Role } from '../../facts/bucket.js';
import type { RuleId } from './money-rules.js';
import type { Worksheet, WorksheetPart } from './money-tally.js';

/** A figure, and what it would be where an open question went the other way. */
export interface OpenFigure {
  readonly cents: number;
  /** Undefined: nothing is open. */
  readonly other: number | undefined;
}

export interface RoleSheet {
  readonly role: Role;
  readonly title: string;
  readonly form: string;
  readonly dates: NonNullable<Worksheet['dates']>;
  readonly parts: readonly WorksheetPart[];
  /** Adjusted basis, or what went into cost of goods sold. */
  readonly basis: OpenFigure;
  /** Gain, or gross profit; undefined while it isn't sold. */
  readonly gain: OpenFigure | undefined;
  /** Cost of the building before depreciation; undefined where land isn't split off. */
  readonly building: number | undefined;
}

export interface SheetNote {
  readonly id: string;
  readonly text: string;
  readonly rules: readonly RuleId[];
}

export const worksheetOf = (
  { role, title, form, dates, parts }: RoleSheet,
  notes: readonly SheetNote[],
): Worksheet => ({ role, title, form, dates, parts, notes });
