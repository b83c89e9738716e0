/** Which papers can show a thing that was seen or measured: how hot a heater is set, or whether a bracket is there. */
import type { Document, House } from '../facts/house.js';

/** A receipt shows that something was bought, a permit that work was allowed; neither shows how it stands now. */
const SHOWING: readonly Document['kind'][] = ['label', 'warranty', 'manual', 'report', 'letter', 'drawing'];

/** Those ids of `evidence` that are photos, or papers of a kind that can show it; in the same order. */
export function canShow(house: House, evidence: readonly string[]): string[] {
  return evidence.filter(
    (id) =>
      Object.hasOwn(house.photos, id) ||
      house.documents.some((paper) => paper.id === id && SHOWING.includes(paper.kind)),
  );
}
