import { z } from 'zod';
import { count, fileName, text } from '../field-kinds.js';

/** `listing:` where the house is offered, and what the service takes. For the owner's commands alone. */
export const listing = z.strictObject({
  service: text('Name of the listing service, in your own words.', 'the county listing service').optional(),
  'remarks-limit': count('How many characters the service takes for public remarks.', '1000').optional(),
  remarks: fileName('File with the draft of the listing text. Left out: remarks.txt.', 'remarks.txt').default(
    'remarks.txt',
  ),
});
