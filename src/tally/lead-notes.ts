/**
 * Lead paint and asbestos: whether the federal lead rules reach the house, which work disturbed how much paint, and
 * which old materials to ask about. What a seller is to tell stands in `duties/`.
 *
 * Says what was recorded and what to ask; gives no legal advice and calls no house free of either. Start reading
 * at `deriveLead`.
 */
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import type { FactPath } from '../diagnostics/fact-path.js';
import { addYears } from '../facts/age.js';
import { printDate } from '../facts/date.js';
import type { House, WorkItem } from '../facts/house.js';
import { type AsbestosCaution, asbestosCautions } from './asbestos-cautions.js';
import { isStudio } from './bedroom-at.js';
import { type LeadJob, leadJobs } from './lead-jobs.js';
import { leadWarnings } from './lead-warnings.js';
import { leadAsbestosRules } from './tables/lead-asbestos.js';
import { tradeOf } from './trades.js';

export interface LeadNotes {
  /** Whether the house is housing the federal lead rules reach. `not known` is treated as yes. */
  readonly target: 'yes' | 'no' | 'not known';
  /** True for `yes` and `not known`: everything below is then filled. */
  readonly treatAsTarget: boolean;
  /** Why, in a sentence. */
  readonly because: string;
  /** Paint disturbed, by place and thirty days. */
  readonly jobs: readonly LeadJob[];
  /** Work that often disturbs paint and has no figure for it. */
  readonly unrecorded: readonly { readonly item: WorkItem; readonly path: FactPath }[];
  /** To ask about where own hands did more than minor repair; undefined where that isn't so. */
  readonly ask: string | undefined;
  /** Filled for houses of any year. */
  readonly asbestos: readonly AsbestosCaution[];
  readonly diagnostics: readonly Diagnostic[];
}

export function deriveLead(house: House): LeadNotes {
  const rules = leadAsbestosRules();
  const { target, because } = targetOf(house);
  const treatAsTarget = target !== 'no';
  const jobs = treatAsTarget ? leadJobs(house, rules) : [];
  const own = jobs.some((job) => job.verdict !== 'minor' && job.who.some((who) => who.kind !== 'hired'));
  return {
    target,
    treatAsTarget,
    because,
    jobs,
    unrecorded: treatAsTarget ? unrecordedWork(house) : [],
    ask: own
      ? `Something to ask about: ${rules.leadRenovateToSell.rule} ${rules.leadRenovateToSell.caution}`
      : undefined,
    asbestos: asbestosCautions(house, rules),
    diagnostics: leadWarnings(house, jobs),
  };
}

/** The signed attachment of a sale completed on `saleDay` (YYYY-MM-DD) is kept through this day at least. */
export function disclosureKeptThrough(saleDay: string): string {
  return addYears(saleDay, leadAsbestosRules().leadDisclosureKept.figures.years, 'later');
}

/** Whether the lead rules reach the house, by the year it was built; a dwelling without a bedroom is outside them. */
export function targetOf(house: House): Pick<LeadNotes, 'target' | 'because'> {
  const year = leadAsbestosRules().targetHousing.figures.builtBeforeYear;
  if (isStudio(house))
    return { target: 'no', because: 'A dwelling without a bedroom is no housing that the lead rules reach.' };
  const built = house.house.built.value;
  if (built === undefined)
    return {
      target: 'not known',
      because: `When the house was built is not known; it is treated as built before ${year}.`,
    };
  const when = `Built ${printDate(built)}`;
  if (built.latest !== undefined && built.latest < `${year}-01-01`)
    return { target: 'yes', because: `${when}, before ${year}.` };
  if (built.earliest !== undefined && built.earliest >= `${year}-01-01`)
    return { target: 'no', because: `${when}, not before ${year}.` };
  return {
    target: 'not known',
    because: `${when}, which may be before ${year}; the house is treated as built before it.`,
  };
}

const OFTEN_DISTURBS: readonly WorkItem['did'][] = [
  'replaced',
  'repaired',
  'refinished',
  'painted',
  'moved',
  'removed',
];

const PAINTED_TRADES = [
  'painting',
  'carpentry',
  'windows and doors',
  'structure',
  'kitchen and bath',
  'outside',
];

/** What is painted in most houses and belongs to no one trade. */
const PAINTED_PARTS = /\b(plaster|drywall|lath|walls?|ceilings?|wainscot(ing|ting)?|mou?ldings?|casings?)\b/i;

function mayBePainted(item: WorkItem): boolean {
  const words = `${item.what} ${item.how ?? ''}`;
  const trade = tradeOf(words, item.trade);
  return PAINTED_TRADES.includes(trade) || (trade === 'other' && PAINTED_PARTS.test(words));
}

function unrecordedWork(house: House): LeadNotes['unrecorded'] {
  return house.work.flatMap((item, index) =>
    item['paint-disturbed'] === undefined &&
    !item['windows-replaced'] &&
    OFTEN_DISTURBS.includes(item.did) &&
    mayBePainted(item)
      ? [{ item, path: ['work', index] }]
      : [],
  );
}
