/**
 * Two facts that can't both be true, as one message: it names both with their values, stands at the one that is more
 * likely to be wrong, and shows the place of the other.
 *
 * A pair is a clash only if it is one whatever its dates leave open; a date that its writer is not certain of (`?`)
 * clashes with nothing.
 */
import type { Diagnostic, Severity } from '../../diagnostics/diagnostic.js';
import type { FactPath } from '../../diagnostics/fact-path.js';
import type { Cameras } from '../../facts/camera.js';
import type { HouseDate } from '../../facts/date.js';
import type { House } from '../../facts/house.js';
import type { Ledger } from '../../facts/ledger.js';
import type { SystemAge } from '../ages.js';
import type { Areas } from '../area.js';
import type { Observation } from '../observation.js';

/** What clashes are looked for in. Without a ledger nothing is said of costs. */
export interface ClashSources {
  readonly house: House;
  readonly areas: Areas;
  readonly ages: readonly SystemAge[];
  readonly observations: readonly Observation[];
  readonly cameras: Cameras;
  readonly ledger?: Ledger | undefined;
}

export interface Clash {
  /** error: one of the two is printed and false · warning: likely so · note: worth a look. */
  readonly severity: Severity;
  readonly path: FactPath;
  readonly beside?: FactPath | undefined;
  readonly message: string;
  readonly hints: readonly string[];
}

export const clashOf = ({ beside, ...rest }: Clash): Diagnostic => ({
  code: 'tally.clash',
  ...rest,
  ...(beside === undefined ? {} : { beside }),
});

/** Whether every day that `one` can be lies before every day that `other` can be. */
export const surelyBefore = (one: HouseDate | undefined, other: HouseDate | undefined): boolean =>
  one?.latest !== undefined &&
  other?.earliest !== undefined &&
  !one.uncertain &&
  !other.uncertain &&
  one.latest < other.earliest;
