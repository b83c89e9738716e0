/** Levels, rooms and structures: where things are and how big. */
import { z } from 'zod';
import { fact, knownBy } from '../fact.js';
import {
  choice,
  count,
  date,
  flag,
  floorArea,
  id,
  length,
  name,
  size,
  step,
  text,
  yesNo,
} from '../field-kinds.js';
import { finish } from './finish.js';

/** `measured:` who measured the house, when and how. */
export const measured = z.strictObject({
  by: text('Who measured: owner, or a person’s id or name.', 'owner'),
  date: date('When.', '2026-06-14').optional(),
  method: choice(
    ['ansi-z765-2021', 'inside-only', 'plans', 'other'],
    'How. ansi-z765-2021: at the outside faces, by that standard, wholly.',
    'ansi-z765-2021',
  ),
  estimated: z
    .array(text('What was not measured directly.', 'west wall, behind the hedge'))
    .default([])
    .describe('What was not measured directly, and why.'),
  'inside-seen': flag('Whether the inside was seen when measuring.').default(true),
  ...knownBy,
});

/** `record:` the public record's figure, to be compared and never averaged. */
export const publicRecord = z.strictObject({
  area: floorArea('Living area in the public record.', '1,410 sq ft'),
  source: text('Which record.', 'county card').optional(),
  date: date('Date of the record, or of its last change.', '2019').optional(),
  ...knownBy,
});

const outline = z
  .array(step('One wall: a compass word and a length.', `east 34'`))
  .min(3)
  .max(300)
  .describe(
    "The walls in order, from a corner back to it: east, north, west, south. A slanted wall is two words: east 3' north 4'.",
  );

const at = z
  .array(step('Way from the level’s first corner.', `east 12'`))
  .max(4)
  .optional()
  .describe(
    'Where its south-west corner (or the first corner of its outline) lies, walked from the level’s first corner to inside faces.',
  );

const wall = z.string().trim().min(1).meta({
  description: 'Wall thickness to add, "none", or "party 8 in" for half of a shared wall.',
  kind: 'wall',
  example: '6"',
});

/** A ceiling that slopes, as measured areas or as a section through the room. */
const slopedCeiling = z
  .strictObject({
    'at-7-ft': size('Floor where the ceiling is 7 ft or higher.', `9' x 30'`).optional(),
    'at-5-ft': size(
      'Floor where the ceiling is 5 ft or higher, the part at 7 ft included.',
      `13' x 30'`,
    ).optional(),
    highest: length('Height of the highest, flat part.', `7'`).optional(),
    flat: length('Width of the part at that height, across the slope.', `3'`).optional(),
    lowest: length(
      'Height where the slope meets the wall; left out: it comes down to the floor.',
      `4'`,
    ).optional(),
    pitch: z
      .string()
      .regex(/^\d{1,3}\s*(in|\/|:)\s*\d{1,3}$/)
      .optional()
      .meta({
        description: 'Rise in run of the slope; 12 in 12 is 45 degrees.',
        kind: 'pitch',
        example: '12 in 12',
      }),
    sides: count('How many sides slope: 1 or 2.', '2').optional(),
    length: length('Length of the room along the slope’s foot.', `30'`).optional(),
  })
  .describe('Either at-7-ft and at-5-ft as taped, or the section: highest, flat, pitch, sides, length.');

const ceiling = z
  .union([length('Height of a flat ceiling.', `8'`), slopedCeiling])
  .optional()
  .describe('Ceiling height; or, if it slopes, how.')
  .meta({ kind: 'length or slope', example: `8'` });

const opening = z.strictObject({
  what: text('What the hole in this floor is.', 'stair down to the cellar'),
  size: size('Size of the hole in this floor.', `3' x 10'`),
  treads: size(
    'Floor that stair treads and landings cover within it; leave out for an open well.',
    `3' x 10'`,
  ).optional(),
});

/** `levels:` one floor of the house. */
export const level = z.strictObject({
  id: id('Short name other facts refer to.', 'main'),
  name: name('Name as printed.', 'Main level'),
  grade: choice(
    ['above', 'below'],
    'above: all of it lies above the ground outside. below: any part of it lies below.',
    'above',
  ),
  floor: length('Height of its floor above the main floor, if it is a split.', `4'`).optional(),
  finish: choice(
    ['finished', 'unfinished'],
    'What the level is unless a room says otherwise.',
    'finished',
  ).default('finished'),
  connected: flag(
    'Whether finished space joins it to the rest of the house. no: reached from outside or through unfinished space.',
  ).default(true),
  outline: outline.optional(),
  size: size('Instead of an outline: a plain rectangle.', `40' x 26'`).optional(),
  parts: z
    .array(
      z.strictObject({
        what: text('What this part is.', 'bay'),
        size: size('Its size.', `8' x 4'`),
        ceiling: length('Its ceiling height, if it differs.', `6'8"`).optional(),
        floor: flag(
          'Whether it has a floor on this level. A window seat or an outside chimney has none.',
        ).default(true),
      }),
    )
    .optional()
    .describe('Rectangles added to the outline or size: bays, bump-outs.'),
  measured: choice(['outside', 'inside'], 'Which faces the outline or size was taken at.', 'outside').default(
    'outside',
  ),
  walls: z
    .strictObject({
      all: wall.optional(),
      north: wall.optional(),
      east: wall.optional(),
      south: wall.optional(),
      west: wall.optional(),
    })
    .optional()
    .describe(
      'For a level measured inside: what to add on each side to reach the outside face or the middle of a shared wall.',
    ),
  ceiling: length('Ceiling height unless a room says otherwise.', `8'`).optional(),
  openings: z.array(opening).default([]).describe('Holes in this floor: stairs down, open wells.'),
  ...knownBy,
});

const ROOM_USES = [
  'kitchen',
  'dining',
  'living',
  'family',
  'bedroom',
  'bath',
  'hall',
  'stair',
  'entry',
  'office',
  'laundry',
  'utility',
  'mechanical',
  'storage',
  'closet',
  'workshop',
  'recreation',
  'sunroom',
  'garage',
  'attic',
  'other',
] as const;

const windowField = z.strictObject({
  name: text('Which window.', 'north window').optional(),
  'clear-width': length('Width that is really open when it is open.', `20"`).optional(),
  'clear-height': length('Height that is really open.', `41"`).optional(),
  sill: length('Height of the sill above the floor.', `44"`).optional(),
  'at-grade': flag('Whether the ground outside is level with it (a grade-floor opening).').default(false),
  ...knownBy,
});

/** `rooms:` one room with its finishes. */
export const room = z.strictObject({
  id: id('Short name other facts refer to.', 'kitchen'),
  name: name('Name as printed. Left out: made from the id.', 'Kitchen').optional(),
  level: id('The level it is on.', 'main'),
  use: choice(ROOM_USES, 'What it is used as; counts bedrooms and baths.', 'kitchen'),
  bath: choice(
    ['full', 'three-quarter', 'half'],
    'For a bath: full has a tub, three-quarter a shower, half neither.',
    'full',
  ).optional(),
  size: size('Inside, east–west by north–south.', `11'6" x 12'`).optional(),
  outline: outline.optional(),
  at,
  finish: choice(['finished', 'unfinished'], 'If it differs from its level.', 'finished').optional(),
  ceiling,
  low: z
    .array(
      z.strictObject({
        what: text('Beam, duct or soffit.', 'duct'),
        size: size('Floor below it.', `2' x 12'`),
        clear: length('Height below it.', `6'4"`),
      }),
    )
    .default([])
    .describe('Beams, ducts and soffits that hang lower than the ceiling.'),
  heated: yesNo('Whether it has permanent heat.').optional(),
  'sleeping-area': text(
    'Name of the group of bedrooms it belongs to; bedrooms without one on the same level are one group.',
    'upstairs',
  ).optional(),
  doors: count('Doors in its walls, for paint.', '1').optional(),
  windows: z.array(windowField).default([]).describe('Its windows.'),
  finishes: z.array(finish).default([]).describe('What its floor, walls and fixed parts are finished with.'),
  ...knownBy,
});

/** `structures:` what is not a level of the house. */
export const structure = z.strictObject({
  id: id('Short name other facts refer to.', 'garage'),
  name: name('Name as printed. Left out: made from the id.', 'Garage').optional(),
  is: choice(
    ['garage', 'carport', 'porch', 'deck', 'patio', 'balcony', 'sunroom', 'shed', 'workshop', 'guest-house'],
    'What it is.',
    'garage',
  ),
  attached: flag('Whether it joins the house.').default(true),
  'opens-into-house': flag('For a garage: whether a door leads from it into the house.').optional(),
  finished: flag('Whether it is finished like the house and usable all year.').default(false),
  size: size('Outside size.', `12' x 22'`).optional(),
  outline: outline.optional(),
  finishes: z.array(finish).default([]).describe('What it is finished with.'),
  ...knownBy,
});

/** `stairs:` what was counted and taped on a flight. */
export const stair = z.strictObject({
  id: id('Short name other facts refer to.', 'cellar-stair'),
  name: name('Name as printed.', 'Cellar stair').optional(),
  risers: count('Number of risers.', '9'),
  'highest-riser': length('Highest riser.', `7 3/4"`).optional(),
  'lowest-riser': length('Lowest riser.', `7 1/2"`).optional(),
  tread: length('Shallowest tread.', `10"`).optional(),
  width: length('Clear width.', `36"`).optional(),
  headroom: length('Least headroom.', `6'8"`).optional(),
  handrail: yesNo('Whether it has a handrail.'),
  'rail-height': length('Height of the rail above the nosings.', `36"`).optional(),
  ...knownBy,
});

/** `guards:` a drop somebody could fall over. */
export const guard = z.strictObject({
  what: text('Where.', 'front porch, east side'),
  drop: length('Height of the surface above the ground or floor below.', `34"`),
  guard: yesNo('Whether there is a guard.'),
  height: length('Height of the guard.', `36"`).optional(),
  gap: length('Widest gap in it.', `4"`).optional(),
  ...knownBy,
});

export const poolBarrier = z.strictObject({
  what: text('Which side or part.', 'garden fence, north'),
  height: length('Height on the outside.', `60"`).optional(),
  'gap-below': length('Gap below it.', `3"`).optional(),
  'widest-gap': length('Widest opening in it.', `3 1/2"`).optional(),
  gate: yesNo('Whether it has a gate.').optional(),
  'closes-itself': yesNo('Whether the gate closes and latches by itself.').optional(),
  'opens-outward': yesNo('Whether the gate opens away from the pool.').optional(),
  'latch-height': length('Height of the latch release.', `54"`).optional(),
  ...knownBy,
});

export const alarm = z.strictObject({
  id: id('Short name, if other facts refer to it.', 'smoke-hall').optional(),
  is: choice(['smoke', 'carbon-monoxide', 'both'], 'What it warns of.', 'smoke'),
  where: id('The room it hangs in.', 'hall'),
  made: fact(date('', '2026-01'), 'Date of manufacture printed on it.', '2026-01').optional(),
  'replace-by': date('End-of-life date printed on it.', '2033-01').optional(),
  power: choice(
    ['battery', 'sealed-battery', 'house', 'house-with-battery'],
    'What powers it.',
    'sealed-battery',
  ).optional(),
  installed: date('When it was put up.', '2026-05-20').optional(),
  ...knownBy,
});
