/**
 * What can be worked out from the facts on a given day.
 *
 * Takes a checked `House` and an as-of date. Gives areas, ages, lists and gaps, with diagnostics beside them.
 * Never asks the clock, reads a house folder or makes a page. Start reading at `deriveTally`.
 */
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import type { Cameras } from '../facts/camera.js';
import type { House } from '../facts/house.js';
import type { Ledger } from '../facts/ledger.js';
import { deriveAges, type SystemAge } from './ages.js';
import { type AlarmPlan, deriveAlarms } from './alarms.js';
import { deriveUpdates, type UpdateSuggestion } from './appraiser-updates.js';
import { type Areas, deriveAreas } from './area.js';
import { checkClashes } from './clashes/check-clashes.js';
import { checkDateOrder } from './date-order.js';
import { deriveDuties } from './duties/derive-duties.js';
import type { Duties } from './duties/duty.js';
import { deriveQuantities, type FinishQuantity } from './finish-quantities.js';
import { checkFutureDates } from './future-dates.js';
import { type Gap, gapDiagnostics, listGaps } from './gaps.js';
import { type Improvement, type Kept, listImprovements } from './improvements.js';
import { deriveLead, type LeadNotes } from './lead-notes.js';
import { deriveMoney } from './money/derive-money.js';
import type { MoneyTally } from './money/money-tally.js';
import { deriveObservations, type Observation } from './observations.js';
import { checkPhotoWords } from './photo-alt.js';
import { checkPhotoDates } from './photo-dates.js';
import { checkPhotoPlaces } from './photo-places.js';
import { deriveWarranties, type WarrantyEnd } from './warranties.js';

export interface Tally {
  /** ISO date that ages are counted to. */
  readonly asOf: string;
  readonly areas: Areas;
  readonly ages: readonly SystemAge[];
  readonly warranties: readonly WarrantyEnd[];
  readonly improvements: readonly Improvement[];
  readonly kept: readonly Kept[];
  readonly quantities: readonly FinishQuantity[];
  readonly updates: readonly UpdateSuggestion[];
  readonly alarms: AlarmPlan;
  readonly observations: readonly Observation[];
  readonly lead: LeadNotes;
  readonly duties: Duties;
  readonly gaps: readonly Gap[];
  /** Of the cost sheets, where they were read. The house file's alone. */
  readonly money?: MoneyTally | undefined;
}

/**
 * `cameras`: what the cameras wrote into the photos that are there; left out, nothing is said of photos. `ledger`: the rows
 * of its sheets; left out, nothing is said of money.
 */
export function deriveTally(
  house: House,
  asOf: string,
  cameras: Cameras = new Map(),
  ledger?: Ledger,
): { readonly tally: Tally; readonly diagnostics: readonly Diagnostic[] } {
  const { areas, diagnostics: areaDiagnostics } = deriveAreas(house);
  const { ages, diagnostics: ageDiagnostics } = deriveAges(house, asOf);
  const { done, kept } = listImprovements(house);
  const lead = deriveLead(house);
  const duties = deriveDuties(house, asOf, lead.jobs);
  const alarms = deriveAlarms(house, asOf);
  const gaps = listGaps({ house, ages, areas, alarms, asOf });
  const books =
    ledger === undefined || !hasMoney(house, ledger)
      ? undefined
      : deriveMoney({ house, ledger, areas, improvements: done, asOf });
  const tally: Tally = {
    asOf,
    areas,
    ages,
    warranties: deriveWarranties(house, asOf),
    improvements: done,
    kept,
    quantities: deriveQuantities(house, areas),
    updates: deriveUpdates(house, done, asOf),
    alarms,
    observations: deriveObservations(house),
    lead,
    duties,
    gaps,
    money: books?.money,
  };
  return {
    tally,
    diagnostics: [
      ...areaDiagnostics,
      ...ageDiagnostics,
      ...lead.diagnostics,
      ...duties.diagnostics,
      ...checkFutureDates(house, asOf),
      ...checkDateOrder(house),
      ...checkClashes({ house, areas, ages, observations: tally.observations, cameras, ledger }),
      ...checkPhotoDates(house, cameras),
      ...checkPhotoPlaces(house, cameras),
      // A photo that is not there needs no words.
      ...checkPhotoWords(house).filter(({ path }) => cameras.has(String(path?.[1]))),
      ...(books?.diagnostics ?? []),
      ...gapDiagnostics(gaps),
    ],
  };
}

/** A folder without any sheet or word on money has nothing to be told. */
const hasMoney = (house: House, { costs, trips, hours, sheets }: Ledger): boolean =>
  house.money !== undefined ||
  costs.length + trips.length + hours.length > 0 ||
  Object.values(sheets).some((sheet) => sheet !== undefined);
