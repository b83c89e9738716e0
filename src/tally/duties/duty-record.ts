/** What the folder says of a thing that was to be told or handed over. */
import type { FactPath } from '../../diagnostics/fact-path.js';
import { compareText } from '../../facts/compare-text.js';
import { type HouseDate, printDate } from '../../facts/date.js';
import type { House } from '../../facts/house.js';
import type { DutyRule } from '../tables/duties.js';
import type { DutyDue, DutyRecord, DutyResult, DutyTelling } from './duty.js';
import { leadGiven, leadInFolder } from './lead-record.js';

/** `asOf`: YYYY-MM-DD. */
export function recordOf(
  rule: DutyRule,
  result: DutyResult,
  due: DutyDue | undefined,
  house: House,
  asOf: string,
): DutyRecord {
  if (rule.kind !== 'tell' || result === 'does not apply')
    return { state: 'none', words: '', evidence: [], told: undefined };
  const tellings = tellingsOf(rule.id, house);
  const [told] = tellings.toSorted((a, b) => compareText(firstDay(a), firstDay(b)));
  if (told !== undefined) {
    const after = due?.day !== undefined && firstDay(told) > due.day ? due.words : undefined;
    const note = told.note === undefined ? '' : `, ${told.note}`;
    return {
      state: after === undefined ? 'recorded' : 'late',
      words: `${printDate(told.on)}${note}${after === undefined ? '' : '; after its day'}`,
      evidence: tellings.flatMap(({ evidence }) => evidence),
      told: { on: told.on, path: told.path, after },
    };
  }
  const passed = result === 'applies' && due?.day !== undefined && due.day < asOf;
  const inFolder = leadInFolder(house, rule.id);
  const words = passed ? 'its day has passed and nothing is recorded' : 'not recorded';
  return {
    state: passed ? 'missing' : 'not recorded',
    words: inFolder === undefined ? words : `${words}; ${inFolder}`,
    evidence: [],
    told: undefined,
  };
}

type Told = Pick<DutyTelling, 'on' | 'path'> & {
  readonly note: string | undefined;
  readonly evidence: readonly string[];
};

/** What stands under `given:`, else under `lead:`. */
function tellingsOf(id: string, house: House): Told[] {
  const given = (house.duties?.given ?? []).flatMap(({ duty, on, note, evidence }, index): Told[] =>
    duty === id ? [{ on, note, evidence, path: ['duties', 'given', index, 'on'] }] : [],
  );
  const lead: HouseDate | undefined = leadGiven(house, id);
  if (given.length > 0 || lead === undefined) return given;
  const path: FactPath = ['lead', 'pamphlet-given'];
  return [{ on: lead, note: undefined, evidence: [], path }];
}

/** A day that is open towards the past may be any, and so is never late. */
const firstDay = ({ on }: Told): string => on.earliest ?? '';
