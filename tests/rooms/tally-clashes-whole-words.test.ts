/**
 * All that is told of made houses whose words contradict each other, line by line, as text; days and costs are in
 * `tally-clashes-whole.test.ts`, where it says how to take over a change.
 */
import { it } from 'vitest';
import { type ClashingHouse, expectWhole } from './clashes-as-text.js';

const LEVEL = {
  id: 'main',
  name: 'Main level',
  grade: 'above',
  size: `40' x 26'`,
  ceiling: `6'10"`,
} as const;
const HALL = { id: 'hall', level: 'main', use: 'hall' } as const;
const WINDOW = { 'clear-width': '32"', 'clear-height': '30"', sill: '28"' } as const;
const LOW = { ...WINDOW, name: 'south window', 'clear-height': '12"' } as const;

const BEDROOMS: ClashingHouse = {
  spec: {
    house: { lot: '0.01 acre' },
    duties: { studio: 'yes' },
    levels: [LEVEL, { id: 'upper', name: 'Upper level', grade: 'above', size: `40' x 30'` }],
    rooms: [
      { id: 'closed', level: 'upper', use: 'bedroom', size: `10' x 11'` },
      { id: 'tight', level: 'upper', use: 'bedroom', size: `10' x 11'`, windows: [LOW] },
      { id: 'small', level: 'upper', use: 'bedroom', size: `8' x 8'`, windows: [WINDOW] },
      {
        id: 'drawn',
        level: 'upper',
        use: 'bedroom',
        outline: [`east 8'`, `north 8'`, `west 8'`, `south 8'`],
        windows: [WINDOW],
      },
      { id: 'narrow', level: 'upper', use: 'bedroom', size: `6'11" x 12'`, windows: [WINDOW] },
      { id: 'shallow', level: 'upper', use: 'bedroom', size: `12' x 6'10"`, windows: [WINDOW] },
      { id: 'low', level: 'upper', use: 'bedroom', size: `10' x 11'`, ceiling: `6'9"`, windows: [WINDOW] },
      { id: 'under', level: 'main', use: 'bedroom', size: `10' x 11'`, windows: [WINDOW] },
      {
        id: 'sloped',
        level: 'upper',
        use: 'bedroom',
        size: `9' x 10'`,
        ceiling: { 'at-7-ft': `4'6" x 10'`, 'at-5-ft': `6'6" x 10'` },
        windows: [WINDOW],
      },
    ],
  },
};

/** The lot in feet, its level drawn; no pool, and one is described. */
const LOT: ClashingHouse = {
  spec: {
    house: { lot: '800 sq ft', parking: 'attached garage, two cars', storeys: 'one' },
    duties: { pool: 'no', association: 'no' },
    pool: {},
    dues: [
      { to: 'lighting district', amount: '20.00', per: 'year' },
      { to: 'Heron Lane Owners', amount: '64.00', per: 'month' },
    ],
    levels: [
      { id: 'main', name: 'Main level', grade: 'above' },
      {
        id: 'upper',
        name: 'Upper level',
        grade: 'above',
        outline: [`east 40'`, `north 26'`, `west 40'`, `south 26'`],
      },
    ],
    structures: [{ id: 'car-barn', is: 'garage', attached: false }],
    rooms: [{ id: 'den', level: 'main', use: 'living', heated: 'yes' }],
    systems: [
      { id: 'furnace', is: 'furnace, gas', fuel: 'oil', did: 'removed' },
      { id: 'dryer', is: 'dryer, electric', name: 'Dryer', fuel: 'gas', label: { serial: 'AB-12' } },
      { id: 'washer', is: 'washer', name: 'Washer', label: { serial: 'ab 12' } },
      { id: 'stove', is: 'stove, wood', fuel: 'none' },
    ],
    answers: [{ ask: 'Are there association dues?', answer: 'None.' }],
  },
};

/** Each of the other forms that exclude those above. */
const POOL: ClashingHouse = {
  spec: {
    house: { parking: 'detached garage' },
    duties: { pool: 'yes' },
    levels: [LEVEL],
    rooms: [{ id: 'bay', level: 'main', use: 'garage' }],
  },
};
const PUMP: ClashingHouse = {
  spec: {
    house: { parking: 'detached garage' },
    duties: { pool: 'no' },
    structures: [{ id: 'garage', is: 'garage', attached: true }],
    systems: [
      { id: 'old-pump', is: 'pool pump', did: 'removed' },
      { id: 'heater', is: 'water heater' },
      { id: 'pump', is: 'pump of the pool' },
    ],
  },
};
const ONE_CAR: ClashingHouse = {
  spec: {
    house: { parking: 'garage, three cars' },
    structures: [{ id: 'garage', is: 'garage', name: 'One-car garage' }],
  },
};
const FOUR_CARS: ClashingHouse = {
  spec: {
    house: { parking: 'two-car garage' },
    levels: [LEVEL],
    rooms: [{ id: 'bay', level: 'main', use: 'garage', note: 'room for 4 cars' }],
  },
};

const ANSWERS: ClashingHouse = {
  spec: {
    house: { sewer: 'public', water: 'private well' },
    systems: [
      { id: 'roof', is: 'roof, slate', name: 'Roof', installed: '2015/..' },
      { id: 'furnace', is: 'furnace, gas', made: 1998 },
    ],
    answers: [
      { ask: 'How old is the roof?', answer: 'Laid in 2014.' },
      { ask: 'What year was the furnace made?', answer: 'In 2005; the filter in 2025.' },
      { ask: 'Is it on a sewer or a septic tank?', answer: 'Septic tank.' },
      { ask: 'Where does the water come from?', answer: 'From the town.' },
    ],
  },
};
const OTHER_ANSWERS: ClashingHouse = {
  spec: {
    house: { sewer: 'septic tank and leach field', water: 'public' },
    answers: [
      { ask: 'Sewer or septic?', answer: 'It is on the public sewer.' },
      { ask: 'Is there a well or town water?', answer: 'A drilled well; tested in 2025.' },
    ],
  },
};

/** A finish, a system and a thing of each kind that is left as found and was not. */
const KEPT: ClashingHouse = {
  spec: {
    house: { bought: '2026-02-17' },
    levels: [LEVEL],
    rooms: [
      {
        ...HALL,
        finishes: [
          { on: 'floor', what: 'oak', kept: true, did: 'added' },
          { on: 'walls', what: 'paint', kept: true, done: '2026-05' },
          { on: 'trim', what: 'varnish', kept: true, work: 'trim' },
          { on: 'doors', what: 'panels', kept: true, did: 'cleaned', done: '2025' },
        ],
      },
    ],
    structures: [
      { id: 'porch', is: 'porch', finishes: [{ on: 'floor', what: 'boards', kept: true, did: 'new' }] },
    ],
    systems: [
      { id: 'range', is: 'range, electric', kept: true, did: 'removed' },
      { id: 'furnace', is: 'furnace', kept: true, installed: '2026-04-09' },
    ],
    work: [
      { id: 'other', what: 'other', did: 'cleaned' },
      { id: 'trim', what: 'trim of the hall', did: 'replaced' },
    ],
  },
};

const STAYS: ClashingHouse = {
  spec: {
    systems: [
      { id: 'range', is: 'range', conveys: false },
      { id: 'washer', is: 'washer', name: 'Washer', conveys: true },
      { id: 'pump', is: 'sump pump', did: 'removed', conveys: true },
    ],
    conveys: [
      { what: 'bench', stays: 'no' },
      { what: 'The bench', stays: 'yes' },
      { what: 'range', stays: 'yes' },
      { what: 'washer', stays: 'no' },
    ],
    care: [{ what: 'pour water in', for: 'pump', every: '1 year' }],
  },
};

const FOUND = 'the paint was tested positive for lead';

/** Lead paint told in every place that is read, and a bare yes. */
const LEAD: ClashingHouse = {
  spec: {
    lead: { known: 'None known.' },
    levels: [LEVEL],
    conditions: [{ what: FOUND, note: `Dry; ${FOUND}; left alone.` }],
    work: [{ id: 'sash', what: FOUND, did: 'repaired', how: FOUND, why: FOUND, note: FOUND }],
    systems: [{ id: 'door', is: 'door, wood', name: FOUND, note: FOUND }],
    rooms: [{ ...HALL, note: FOUND, finishes: [{ on: 'walls', what: FOUND, note: FOUND }] }],
    structures: [
      { id: 'porch', is: 'porch', note: FOUND, finishes: [{ on: 'floor', what: FOUND, note: FOUND }] },
    ],
    documents: [{ id: 'letter', what: FOUND, kind: 'letter' }],
    photos: { P: { shows: FOUND } },
    answers: [
      { ask: 'Is there lead paint?', answer: 'Yes, at the front steps. Ask me.' },
      { ask: 'What is there to know?', answer: `Much. It has known lead paint.` },
    ],
    'private-notes': ['call the firm', FOUND],
  },
};

/** “All new windows” in every place that is read, one thing of each sort that is not. */
const NEW: ClashingHouse = {
  spec: {
    levels: [LEVEL],
    rooms: [
      {
        ...HALL,
        note: 'All new windows.',
        finishes: [
          { on: 'floor', what: 'oak', did: 'refinished' },
          { on: 'trim', what: 'varnish', did: 'repaired' },
          { on: 'windows', what: 'sashes', kept: true },
        ],
      },
    ],
    systems: [
      { id: 'old', is: 'window, wood', kept: true, where: 'hall' },
      { id: 'gone', is: 'window, steel', name: 'all new windows', did: 'removed', note: 'All new windows.' },
    ],
    work: [
      { id: 'a', what: 'all new windows', did: 'new', how: 'all new windows', note: 'Then all new windows.' },
    ],
    answers: [
      { ask: 'What is new?', answer: 'Everything is new.' },
      { ask: 'And the floors?', answer: 'All new flooring.' },
      { ask: 'And the trim?', answer: 'All new trim.' },
      { ask: 'And the doors?', answer: 'not known' },
    ],
    conveys: [{ what: 'all new windows', stays: 'yes', note: 'all new windows' }],
    photos: { P: { shows: 'all new windows', alt: 'All new windows.' } },
  },
};

it('words that contradict each other are told as they were', () => {
  expectWhole('words', {
    bedrooms: BEDROOMS,
    lot: LOT,
    pool: POOL,
    pump: PUMP,
    'one car': ONE_CAR,
    'four cars': FOUR_CARS,
    answers: ANSWERS,
    'other answers': OTHER_ANSWERS,
    kept: KEPT,
    stays: STAYS,
    lead: LEAD,
    new: NEW,
  });
});
