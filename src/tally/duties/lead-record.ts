/**
 * What the words under `lead:` say of the federal duties at a sale. The duties themselves are rules like all others, in
 * `../tables/duties/us.yaml`; this keeps what was written before there was `duties: given:`.
 */
import type { HouseDate } from '../../facts/date.js';
import type { House } from '../../facts/house.js';

/** When `lead:` says that something was handed to the buyer; undefined where it says nothing of that duty. */
export const leadGiven = ({ lead }: House, duty: string): HouseDate | undefined =>
  duty === 'us-lead-pamphlet' ? lead?.['pamphlet-given'] : undefined;

/**
 * "stated in this folder: none known", "one report is on file": what there is to tell or to hand over. None of it says
 * that the buyer got it.
 */
export function leadInFolder({ lead }: House, duty: string): string | undefined {
  if (lead === undefined) return undefined;
  if (duty === 'us-lead-known') return `stated in this folder: ${lead.known.value ?? 'not known'}`;
  if (duty !== 'us-lead-reports' || lead.reports.length === 0) return undefined;
  return lead.reports.length === 1 ? 'one report is on file' : `${lead.reports.length} reports are on file`;
}
