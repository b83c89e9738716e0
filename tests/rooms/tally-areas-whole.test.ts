/**
 * All that is worked out of four houses' sizes, line by line, as text: each figure with its lines, rules, readings and
 * remarks. The figures were checked by hand when the text was accepted; here nothing may change unseen. After a change
 * that is meant: `ACCEPT=1 npx vitest run tests/rooms/tally-areas-whole.test.ts`, and look at the difference.
 */

import { expect, it } from 'vitest';
import { areasAsText } from './areas-as-text.js';
import { heldText } from './held-text.js';
import { main, measure, type Plain } from './measured-house.js';

const room = (id: string, level: string, more: Plain = {}): Plain => ({ id, level, use: 'living', ...more });
const cape = main({ id: 'attic', name: 'Attic', ceiling: undefined, size: `41' x 26'` });

/** In feet: a cape with a walk-out cellar, a garage in it, a bay, a stair, rooms beneath a slope, a record that holds more. */
const SLOPES = () =>
  measure({
    measured: { by: 'surveyor', date: '2026-04-02', method: 'ansi-z765-2021', estimated: ['the north wall'] },
    people: [{ id: 'surveyor', name: 'Hollow Surveys' }],
    levels: [
      main({
        id: 'cellar',
        name: 'Cellar',
        grade: 'below',
        size: `40' x 26'`,
        ceiling: `6'11"`,
      }),
      main({
        outline: [`east 40'`, `north 26'`, `west 28'`, `north 6'6"`, `west 12'`, `south 32'6"`],
        parts: [
          { what: 'bay', size: `8' x 2'3"` },
          { what: 'window seat', size: `5' x 1'6"`, floor: false },
          { what: 'low nook', size: `4' x 3'`, ceiling: `6'8"` },
        ],
        openings: [
          { what: 'stair to the cellar', size: `3' x 11'`, treads: `3' x 9'` },
          { what: 'open well', size: `4' x 5'` },
        ],
      }),
      { ...cape, openings: [{ what: 'stair', size: `3' x 10'`, treads: `3' x 10'` }] },
    ],
    rooms: [
      room('recreation', 'cellar', { use: 'recreation', size: `20' x 12'`, ceiling: `7'` }),
      room('boiler', 'cellar', { use: 'mechanical', size: `10' x 9'6"`, finish: 'unfinished' }),
      room('car-bay', 'cellar', { use: 'garage', size: `12' x 20'` }),
      room('great', 'main', {
        size: `14' x 25'`,
        at: [`east 6"`, `north 6"`],
        low: [
          { what: 'beam', size: `14' x 1'`, clear: `6'4"` },
          { what: 'duct', size: `6' x 1'6"`, clear: `6'3"` },
        ],
      }),
      room('sun', 'main', { use: 'sunroom', size: `11' x 6'`, heated: 'no' }),
      room('sewing', 'main', { size: `8' x 9'`, heated: 'no', ceiling: `9'` }),
      room('loft', 'attic', {
        size: `17' x 25'`,
        ceiling: { 'at-7-ft': `9' x 25'`, 'at-5-ft': `13' x 25'` },
      }),
      room('study', 'attic', {
        size: `12' x 25'`,
        ceiling: { 'at-7-ft': `5'3" x 25'`, 'at-5-ft': `9' x 25'` },
      }),
      room('store', 'attic', {
        size: `10' x 25'`,
        ceiling: { 'at-7-ft': `2' x 25'`, 'at-5-ft': `6' x 25'` },
      }),
    ],
    structures: [
      { id: 'deck', is: 'deck', size: `12' x 10'3"` },
      { id: 'shed', is: 'shed', size: `8' x 10'` },
      {
        id: 'cottage',
        name: 'Cottage',
        is: 'guest-house',
        size: `16' x 20'`,
        finished: true,
        attached: false,
      },
      { id: 'porch', is: 'porch', size: `6' x 12'`, finished: true, attached: true },
      { id: 'carport', is: 'carport' },
    ],
    record: { area: '1,700 sq ft', source: 'county card', date: '2019-03' },
    work: [{ id: 'dormer', what: 'shed dormer', did: 'added', structural: true, done: '2021-05' }],
  });

/** In metres: taken inside with walls and a shared one, a section below two slopes, a beam at the metric limit. */
const METRIC = () =>
  measure(
    {
      measured: { by: 'owner', method: 'inside-only', 'inside-seen': true },
      levels: [
        main({
          ceiling: '2.40 m',
          measured: 'inside',
          size: '10.20 m x 7.60 m',
          walls: { all: '0.30 m', west: 'party 0.25 m' },
          openings: [{ what: 'stair', size: '0.90 m x 3.00 m', treads: '0.90 m x 2.50 m' }],
        }),
        main({
          id: 'attic',
          name: 'Attic',
          ceiling: undefined,
          measured: 'inside',
          size: '10.20 m x 7.60 m',
          walls: { all: '0.30 m', west: 'party 0.25 m' },
        }),
      ],
      rooms: [
        room('kitchen', 'main', {
          size: '4.00 m x 5.00 m',
          low: [
            { what: 'beam', size: '4.00 m x 0.30 m', clear: '1.93 m' },
            { what: 'duct', size: '0.50 m x 5.00 m', clear: '1.92 m' },
          ],
        }),
        room('pantry', 'main', { size: '2.00 m x 1.50 m', ceiling: '2.12 m' }),
        room('attic', 'attic', {
          size: '10.20 m x 7.60 m',
          ceiling: { highest: '2.13 m', flat: '4.00 m', pitch: '61 in 90', sides: 2, length: '10.20 m' },
        }),
      ],
      record: { area: '131 m2' },
    },
    'attached',
  );

/** A split house: floors near each other in a chain, one of them below grade; inside sizes; a wing that isn't joined. */
const SPLIT = () =>
  measure({
    measured: { by: 'Hollow Surveys', date: '2025', method: 'plans', 'inside-seen': false },
    levels: [
      main({ id: 'top', name: 'Top', floor: `8'`, finish: 'unfinished', size: `20' x 15'` }),
      main({ size: `20' x 30'` }),
      main({ id: 'step', name: 'Step', floor: `1'6"`, size: `20' x 10'` }),
      main({ id: 'garden', name: 'Garden level', grade: 'below', floor: `3'`, size: `20' x 20'` }),
      main({ id: 'wing', name: 'Wing', floor: `5'`, connected: false }),
    ],
    rooms: [
      room('hall', 'main', { size: `10' x 10'`, at: [`east 6"`, `north 6"`] }),
      room('den', 'main', { size: `9' x 8'`, at: [`east 10'`, `north 6"`] }),
      room('nursery', 'top', { size: `10' x 9'6"`, finish: 'finished' }),
      room('wing-room', 'wing', { size: `12' x 11'` }),
      room('wing-store', 'wing', { use: 'storage', size: `5' x 4'`, finish: 'unfinished' }),
      room('wing-bath', 'wing', { use: 'bath', heated: 'no' }),
    ],
    record: { area: '807 sq ft', source: 'county card' },
  });

/** Drawn in tenths and with mistakes: an outline that stays open, one that crosses, rooms that leave their level. */
const BROKEN = () =>
  measure({
    measured: { by: 'owner', date: '2026-06-14', method: 'ansi-z765-2021' },
    levels: [
      main({ outline: ['east 30.5 ft', 'north 20.3 ft', 'west 30.4 ft', 'south 20.3 ft'] }),
      main({
        id: 'upper',
        name: 'Upper level',
        outline: [`east 20'`, `north 20'`, `west 10'`, `south 25'`, `west 10'`, `north 5'`],
      }),
      main({
        id: 'wing',
        name: 'Wing',
        measured: 'inside',
        outline: [`east 12'`, `north 9'`, `west 12' south 9'`],
        walls: { south: '6"', east: 'none' },
      }),
      main({ id: 'den', name: 'Den level', size: `14' x 11'`, walls: { all: '6"' } }),
      main({ id: 'nook', name: 'Nook', size: `5' x 5'` }),
    ],
    rooms: [
      room('corner', 'den', { size: `5' x 4'`, at: [`east 10'`, `north 8'`] }),
      room('long', 'den', { size: `15' x 2'`, at: [`south 1'`] }),
      room('box', 'den', { size: `3' x 2'`, at: [`east 11'`, `north 9'`] }),
      room('play', 'nook', { size: `7' x 8'`, finish: 'unfinished' }),
    ],
    record: { area: '160 sq ft' },
  });

it.each([
  ['slopes', SLOPES],
  ['metric', METRIC],
  ['split', SPLIT],
  ['broken', BROKEN],
] as const)('the areas of the house “%s” are as they were', (name, make) => {
  const { areas, diagnostics } = make();
  const text = areasAsText(areas, diagnostics);
  expect(text).toBe(heldText(`areas-whole/${name}.txt`, text));
});
