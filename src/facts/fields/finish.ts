import { z } from 'zod';
import { knownBy } from '../fact.js';
import { choice, count, date, flag, floorArea, id, length, size, text } from '../field-kinds.js';

export const DEEDS = [
  'new',
  'replaced',
  'repaired',
  'refinished',
  'painted',
  'moved',
  'removed',
  'cleaned',
  'serviced',
  'added',
] as const;

export const byWhom = (about: string) =>
  id(`${about} owner, family, or a person’s id; "not-known" if nobody can say.`, 'owner');

/** `finishes:` one surface or fixed part of a room. */
export const finish = z.strictObject({
  on: choice(
    [
      'floor',
      'walls',
      'ceiling',
      'trim',
      'doors',
      'cabinets',
      'counter',
      'backsplash',
      'shower',
      'tub',
      'vanity',
      'sink',
      'faucet',
      'toilet',
      'hardware',
      'lights',
      'windows',
      'stairs',
      'fireplace',
      'siding',
      'other',
    ],
    'Which surface or fixed part.',
    'floor',
  ),
  what: text('What it is.', 'vinyl plank'),
  did: choice(DEEDS, 'What was done. Left out with a date: new; with kept: nothing.', 'new').optional(),
  product: text('Product line, as on the label.', 'click plank, 5 mm').optional(),
  colour: text('Colour name.', 'ash').optional(),
  code: text('Colour or product code, in quotes.', '"X-104"').optional(),
  sheen: text('Sheen word of the label; never converted.', 'eggshell').optional(),
  base: text('Paint base on the lid.', 'white base').optional(),
  lot: text('Lot, batch or shade number, in quotes.', '"A2219"').optional(),
  plank: size('Plank size.', `7" x 48"`).optional(),
  tile: size('Tile size.', `12" x 24"`).optional(),
  thickness: length('Thickness.', `3/4"`).optional(),
  joint: length('Grout joint width.', `1/8"`).optional(),
  grout: text('Grout colour and code.', 'warm grey 11').optional(),
  sealed: date('When it was sealed.', '2026-05').optional(),
  pattern: choice(
    ['straight', 'diagonal', 'herringbone', 'pattern'],
    'How it is laid; sets the usual waste.',
    'straight',
  ).optional(),
  direction: text('Which way it runs.', 'east–west').optional(),
  over: text('What lies below.', 'levelled plywood').optional(),
  coats: count('Coats of paint.', '2').optional(),
  coverage: count('Square feet a gallon covers, from the label.', '400').optional(),
  area: floorArea('Area, if it is not the whole floor or wall.', '38 sq ft').optional(),
  box: floorArea('Area in one box.', '23.4 sq ft').optional(),
  waste: count('Waste in percent, if you know better than the usual.', '10').optional(),
  left: text('What is left over.', 'one part-box').optional(),
  'left-at': text('Where the rest is kept.', 'cellar, north shelf').optional(),
  done: date('When.', '2026-04').optional(),
  by: byWhom('Who did it:').optional(),
  permit: id('Permit behind it.', 'bp-26-0101').optional(),
  work: id(
    'The work item it was part of: it is then told there, and not counted twice.',
    'kitchen-floor',
  ).optional(),
  kept: flag('Left as found.').default(false),
  ...knownBy,
});
