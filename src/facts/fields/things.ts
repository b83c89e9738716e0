/** Systems and appliances, work, conditions: what there is, what was done, what was left. */
import { z } from 'zod';
import { fact, knownBy } from '../fact.js';
import { choice, date, flag, floorArea, id, length, name, quantity, text, yesNo } from '../field-kinds.js';
import { byWhom, DEEDS } from './finish.js';

const warranty = z.strictObject({
  of: text('What is covered.', 'tank').optional(),
  until: date('Last day or month it runs.', '2032-04').optional(),
  years: z.number().positive().max(100).optional().meta({
    description: 'Or: its length in years, counted from installation.',
    kind: 'number',
    example: '6',
  }),
  'moves-to-buyer': yesNo('Whether it moves to the next owner.').default('not known'),
  terms: text('Terms worth knowing.', 'needs registration within 60 days').optional(),
});

/** `systems:` a system or appliance with its age. */
export const system = z.strictObject({
  id: id('Short name other facts refer to.', 'water-heater'),
  is: name('What it is, most general word first.', 'water heater, tank, electric'),
  name: name('Name as printed, if not the same.', 'Water heater').optional(),
  where: id('Room, level or structure it stands in.', 'cellar').optional(),
  made: fact(date('', '2026-01'), 'When it was made.', '2026-01').optional(),
  label: z
    .strictObject({
      serial: text(
        'Serial number on the label, in quotes. Printed in the care book and house file only.',
        '"X26020417"',
      ),
      reads: text(
        'How to read the date in it, given by you: letters YY or YYYY for the year, WW week, MM month, and where they stand.',
        'YYWW at 2',
      ).optional(),
    })
    .optional()
    .describe('A label that holds the date of manufacture.'),
  installed: fact(date('', '2026-04-11'), 'When it was put in.', '2026-04-11').optional(),
  did: choice(
    DEEDS,
    'What was done with it. Left out: replaced if installed after you bought, else nothing.',
    'replaced',
  ).optional(),
  by: byWhom('Who put it in:').optional(),
  permit: id('Permit behind it.', 'pl-26-0182').optional(),
  fuel: choice(
    ['electric', 'gas', 'propane', 'oil', 'wood', 'solar', 'none'],
    'What it runs on. Anything that burns asks for carbon monoxide alarms.',
    'electric',
  ).optional(),
  capacity: fact(text('', '50 gal'), 'Capacity or rating as on the label.', '50 gal').optional(),
  model: text('Model, in quotes. Printed in the care book and house file only.', '"E50-2"').optional(),
  material: text('Material.', 'copper').optional(),
  serves: text('What it serves.', 'whole house').optional(),
  warranty: z
    .union([warranty, z.array(warranty)])
    .optional()
    .describe('One warranty, or a list of them.'),
  serviced: date('Last serviced.', '2026-05-02').optional(),
  manual: id('Document with the manual.', 'wh-manual').optional(),
  'set-to': quantity(['F', '°F'], 'For a water heater: the temperature it is set to.', '120 F').optional(),
  'mixing-valve': yesNo('For a water heater: whether a mixing valve tempers the water.').optional(),
  'relief-pipe': z
    .strictObject({
      diameter: length('Pipe diameter.', `3/4"`),
      'ends-above-floor': length('How far its end is above the floor or pan.', `4"`).optional(),
      threaded: yesNo('Whether its end is threaded.').optional(),
      valve: yesNo('Whether there is a valve or tee in it.').optional(),
      ...knownBy,
    })
    .optional()
    .describe('For a water heater: the pipe from the relief valve.'),
  'anti-tip': yesNo('For a range: whether the anti-tip bracket holds it.').optional(),
  kept: flag('Left as found.').default(false),
  conveys: yesNo('Whether it stays with the house.').optional(),
  ...knownBy,
});

/** `work:` one thing that was done. */
export const workItem = z.strictObject({
  id: id('Short name other facts refer to.', 'cellar-rail'),
  what: text('What was worked on.', 'handrail, cellar stair'),
  did: choice(DEEDS, 'What was done.', 'new'),
  how: text(
    'What exactly, in a sentence.',
    'on the wall side, full length, returned at both ends',
  ).optional(),
  where: z.array(id('Room, level, stair or structure.', 'cellar-stair')).default([]).describe('Where.'),
  systems: z
    .array(id('System it belongs to.', 'panel'))
    .default([])
    .describe('Systems it belongs to; they are not listed twice.'),
  why: text('Why.', 'nine risers had none').optional(),
  trade: text('Trade it belongs to.', 'carpentry').optional(),
  safety: flag('Done for safety.').default(false),
  structural: flag('Walls moved, area added, or structure changed.').default(false),
  'fixtures-moved': flag('Plumbing or gas fixtures moved.').default(false),
  'paint-disturbed': floorArea(
    'Painted surface disturbed in one room; asked for houses built before 1978.',
    '4 sq ft',
  ).optional(),
  'windows-replaced': flag('Painted windows replaced; asked for houses built before 1978.').default(false),
  started: date('When it began, if it took long.', '2026-04').optional(),
  done: date('When it was done.', '2026-05-12').optional(),
  by: byWhom('Who did it:').optional(),
  permit: id('Permit behind it.', 'el-26-0214').optional(),
  photos: z
    .strictObject({
      before: id('Photo before.', 'IMG_0412').optional(),
      during: z
        .array(id('Photo during the work.', 'IMG_0600'))
        .default([])
        .describe('Photos during the work.'),
      after: id('Photo after.', 'IMG_0988').optional(),
    })
    .optional()
    .describe('Its photos.'),
  warranty: warranty.optional(),
  ...knownBy,
});

/** `conditions:` known and not mended, said plainly. */
export const condition = z.strictObject({
  what: text('What is so.', 'garage door opener does not run'),
  where: id('Room, level or structure.', 'garage').optional(),
  since: text('Since when.', 'as bought').optional(),
  photos: z.array(id('Photo of it.', 'IMG_0500')).default([]).describe('Photos of it.'),
  ...knownBy,
});
