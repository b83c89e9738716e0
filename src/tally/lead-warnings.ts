/** What the writer is told of paint that was disturbed: one line a place, and what to type. */
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import type { House } from '../facts/house.js';
import { listWords } from './area-words.js';
import { type LeadJob, paintedSquareFeet } from './lead-jobs.js';
import { placeKey } from './lead-places.js';

/**
 * A warning for each place with a job beyond minor repair. A place where the certified firm did all of it and its
 * papers are named needs none: the folder already answers what the warning would ask.
 */
export function leadWarnings(house: House, jobs: readonly LeadJob[]): Diagnostic[] {
  const places = new Map<string, [LeadJob, ...LeadJob[]]>();
  for (const job of jobs) {
    if (job.verdict === 'minor' || isAnswered(house, job)) continue;
    const known = places.get(placeKey(job));
    if (known === undefined) places.set(placeKey(job), [job]);
    else known.push(job);
  }
  return [...places.values()].map((found) => warning(house, found));
}

const isAnswered = (house: House, job: LeadJob): boolean =>
  job.items.every(
    (item) => item.by !== undefined && item.by === house.lead?.firm && item.evidence.length > 0,
  );

function warning(house: House, jobs: readonly [LeadJob, ...LeadJob[]]): Diagnostic {
  const [first] = jobs;
  return {
    code: 'tally.lead',
    severity: 'warning',
    path: first.path,
    message: `lead rules may reach this work: ${first.where}, ${whatWasDone(jobs)}`,
    hints: [whatToType(house, jobs), 'ask the state’s lead programme whether the rules apply'],
  };
}

/** "8.5 sq ft of paint disturbed (minor repair ends at 6)", "painted windows replaced". */
function whatWasDone(jobs: readonly [LeadJob, ...LeadJob[]]): string {
  const hasWindows = (job: LeadJob): boolean => job.items.some((item) => item['windows-replaced']);
  const painted = (verdict: LeadJob['verdict'], how: string): string[] => {
    const found = jobs.filter((job) => job.verdict === verdict && !hasWindows(job));
    const areas = [...new Set(found.map((job) => paintedSquareFeet(job.area)))];
    return areas.length === 0 ? [] : [`${listWords(areas)} sq ft of paint disturbed ${how}`];
  };
  return [
    ...(jobs.some(hasWindows) ? ['painted windows replaced'] : []),
    ...painted('more than minor', `(minor repair ends at ${jobs[0].limitSquareFeet})`),
    ...painted('open', 'with a part of the structure'),
  ].join('; ');
}

/** The fact that is missing first: who did it, then whether they are the certified firm, then the papers. */
function whatToType(house: House, jobs: readonly LeadJob[]): string {
  const items = jobs.flatMap((job) => job.items);
  if (items.some((item) => item.by === undefined)) return 'say who did it:  by: owner  or the id of a person';
  const hired = jobs.flatMap((job) => job.who).find((who) => who.kind === 'hired');
  if (hired?.kind === 'hired' && house.lead?.firm === undefined) {
    const firm = `firm: ${hired.person.id}`;
    return house.lead === undefined
      ? `if they are a certified firm, add  lead: { known: not known, ${firm} }`
      : `if they are a certified firm, add under lead:  ${firm}`;
  }
  return 'name the firm’s records or a lead test:  evidence: [id-of-the-paper]';
}
