import { z } from 'zod';
import { fact } from '../fact.js';
import { choice, date, floorArea, id, length, name, text, webAddress } from '../field-kinds.js';

const STOREYS = ['one', 'one-and-a-half', 'two', 'two-and-a-half', 'three', 'split-level'] as const;

/** `house:` what and where the house is. */
export const identity = z.strictObject({
  name: name('What you call the house; the title of every paper.', 'Quarry Road'),
  address: z.strictObject({
    street: text('Number and street.', '212 Quarry Road').optional(),
    city: text('City or town.', 'Fallow Mills'),
    state: z
      .string()
      .regex(/^[A-Z]{2}$/)
      .meta({ description: 'State, as two capital letters.', kind: 'state', example: 'OH' }),
    zip: z
      .string()
      .regex(/^\d{5}(-\d{4})?$/)
      .optional()
      .meta({
        description: 'ZIP code, in quotes, since YAML drops a leading zero.',
        kind: 'zip',
        example: '"44999"',
      }),
    county: text('County, for records and permits.', 'Fallow County').optional(),
    show: choice(
      ['full', 'street-withheld', 'city-only'],
      'How much of the address the editions print. The house file always prints all of it.',
      'street-withheld',
    ).default('full'),
  }),
  kind: choice(
    ['detached', 'attached', 'apartment-style', 'manufactured'],
    'How the house stands. Attached: a rowhouse or townhouse with a wall shared with the next unit.',
    'detached',
  ),
  storeys: choice(STOREYS, 'Storeys above the ground.', 'one-and-a-half').optional(),
  built: fact(
    date('', '1948'),
    'When it was built. Before 1978, lead rules apply; not known counts as before.',
    '1948',
  ),
  lot: fact(floorArea('', '0.21 acre'), 'Size of the lot.', '0.21 acre').optional(),
  construction: fact(text('', 'wood frame'), 'What the walls are made of.', 'wood frame').optional(),
  foundation: fact(
    text('', 'full cellar, block'),
    'What it stands on.',
    'full cellar, concrete block',
  ).optional(),
  exterior: fact(
    text('', 'painted wood siding'),
    'What the outside walls are covered with.',
    'painted wood siding',
  ).optional(),
  water: fact(text('', 'public'), 'Where the water comes from.', 'public').optional(),
  sewer: fact(text('', 'public'), 'Where the waste water goes.', 'public').optional(),
  parking: fact(
    text('', 'detached garage, one car'),
    'Where cars stand.',
    'detached garage, one car',
  ).optional(),
  parcel: fact(
    text('', '"12-345-678"'),
    'Parcel number of the county, in quotes.',
    '"12-345-678"',
  ).optional(),
  bought: date('When you bought it.', '2026-02-17').optional(),
  listed: date('When it was, or is to be, offered.', '2026-06-20').optional(),
  web: webAddress(
    'Where you have put the buyer packet’s pages on the web. Printed on the open-house sheet, as a code to scan and in words.',
  ).optional(),
  'photos-within': length(
    'A photo taken farther than this from the house’s other photos is named as probably not of this house. Left out: 1000 ft.',
    "1000'",
  ).optional(),
});

/** `people:` who did what was hired out. */
export const person = z.strictObject({
  id: id('Short name other facts refer to.', 'ridge-plumbing'),
  name: text('Name as on the invoice.', 'Ridge Street Plumbing'),
  trade: text('Trade.', 'plumber').optional(),
  licence: fact(
    text('', 'OH-PL-00000'),
    'Licence number as they stated it; printed as stated, not checked.',
    'OH-PL-00000',
  ).optional(),
  contact: text('Phone or address. House file only.', '555 0100').optional(),
});
