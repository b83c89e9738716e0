/** `duties:` what decides which laws reach a sale, and what was given to the buyer. The house file's alone. */
import { z } from 'zod';
import { count, date, id, text, yesNo } from '../field-kinds.js';

/** One thing that was told or handed over. */
const given = z.strictObject({
  duty: id('Which: the short name that the house file and the messages give it.', 'us-lead-pamphlet'),
  on: date('When it was told or handed over.', '2026-06-22'),
  evidence: z
    .array(id('A document or photo that shows it.', 'lead-attachment'))
    .default([])
    .describe('Ids of the papers that show it.'),
  note: text('A remark.', 'by e-mail to the buyer’s agent').optional(),
});

export const duties = z.strictObject({
  units: count('Dwellings on the property. Left out: one for a house that is no apartment.', '1').optional(),
  contract: date('When the contract of sale was signed by both sides.', '2026-07-03').optional(),
  closing: date('When the sale closes or closed.', '2026-08-14').optional(),
  foreclosure: yesNo('Sold at foreclosure.').optional(),
  studio: yesNo('A dwelling without a bedroom. Left out: no, if a bedroom is among the rooms.').optional(),
  condominium: yesNo('A condominium or cooperative.').optional(),
  association: yesNo('An owners’ association whose membership is mandatory.').optional(),
  district: yesNo('In a community development district, which asks for yearly sums of its own.').optional(),
  'seaward-of-line': yesNo('Partly or wholly seaward of the coastal construction control line.').optional(),
  'sinkhole-claim-paid': yesNo('An insurer paid you for a sinkhole.').optional(),
  'sewer-lateral-defect': yesNo('You know of a defect in the pipe to the public sewer.').optional(),
  'declared-disaster': yesNo('Roof work after damage by a declared disaster.').optional(),
  unincorporated: yesNo('Outside the limits of any city or town.').optional(),
  subdivided: yesNo('In a recorded subdivision.').optional(),
  pool: yesNo('A pool. Left out: yes, if the folder names one.').optional(),
  'for-resale': yesNo(
    'Renovated to be sold. Left out: yes, if work was done after you bought it and it was listed.',
  ).optional(),
  given: z.array(given).default([]).describe('What was told or handed over, and when.'),
});
