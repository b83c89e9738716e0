/** What the owner reads of two facts that can't both be true, word for word, and where a fact gives no ground for it. */
import { describe, expect, it } from 'vitest';
import { printFactPath } from '../../src/diagnostics/fact-path.js';
import type { Cameras } from '../../src/facts/camera.js';
import { deriveTally } from '../../src/tally/tally.js';
import { houseFrom, type PartialSpec } from './house-from.js';

const AS_OF = '2026-11-20';
const LEVEL = { id: 'main', name: 'Main level', grade: 'above', size: `40' x 26'`, ceiling: `8'` } as const;
const WINDOW = { 'clear-width': '32"', 'clear-height': '30"', sill: '28"' } as const;

/** `severity path × path of the other fact`, then the message. */
const told = (spec: PartialSpec, cameras?: Cameras): string[][] =>
  deriveTally(houseFrom(spec), AS_OF, cameras)
    .diagnostics.filter(({ code }) => code === 'tally.clash')
    .map(({ severity, path = [], beside = [], message }) => [
      `${severity} ${printFactPath(path)} × ${printFactPath(beside)}`,
      message,
    ]);

type Clash = readonly [what: string, spec: PartialSpec, places: string, message: string];

const answers = (ask: string, answer: string): PartialSpec['answers'] => [{ ask, answer }];

describe('of one thing told twice', () => {
  it.each<Clash>([
    [
      'an answer of another year than the only date of a furnace, the year it was made',
      {
        systems: [{ id: 'f', is: 'furnace, gas', made: 1998 }],
        answers: answers('How old is the furnace?', 'Made in 2005.'),
      },
      'error answers[0].answer × systems[0].made',
      '“How old is the furnace?” is answered with 2005, and “furnace, gas” was made (1998)',
    ],
    [
      'an answer of a year before the first that a roof can be of',
      {
        systems: [{ id: 'r', is: 'roof, slate', name: 'Roof', installed: '2015/..' }],
        answers: answers('How old is the roof?', 'Laid in 2014.'),
      },
      'error answers[0].answer × systems[0].installed',
      '“How old is the roof?” is answered with 2014, and “Roof” was installed (2015 or after)',
    ],
    [
      'an answer of a year after the last that a roof can be of',
      {
        systems: [{ id: 'r', is: 'roof, slate', installed: '../2010' }],
        answers: answers('How old is the roof?', 'Laid in 2014.'),
      },
      'error answers[0].answer × systems[0].installed',
      '“How old is the roof?” is answered with 2014, and “roof, slate” was installed (2010 or before)',
    ],
    [
      'a gas furnace that burns oil',
      { systems: [{ id: 'f', is: 'furnace, gas', fuel: 'oil' }] },
      'error systems[0].fuel × systems[0].is',
      'the fuel of “furnace, gas” is “oil”',
    ],
    [
      'heat without anything that heats',
      {
        levels: [LEVEL],
        rooms: [{ id: 'hall', level: 'main', use: 'hall', heated: 'yes' }],
        systems: [{ id: 'f', is: 'furnace, gas', did: 'removed' }],
      },
      'warning rooms[0].heated × systems[0].did',
      'Hall is heated, and “furnace, gas” was removed, with no other heat among the systems',
    ],
    [
      'a garage for two cars that holds three by its name',
      {
        house: { parking: 'two-car garage' },
        structures: [{ id: 'g', is: 'garage', name: '3-car garage' }],
      },
      'error house.parking × structures[0]',
      'parking is “two-car garage”, and “3-car garage” is for 3 cars',
    ],
    [
      'a lot in square feet, smaller than a level that was drawn',
      {
        house: { lot: '800 sq ft' },
        levels: [
          {
            id: 'main',
            name: 'Main level',
            grade: 'above',
            outline: [`east 40'`, `north 26'`, `west 40'`, `south 26'`],
          },
        ],
      },
      'error house.lot × levels[0].outline',
      'the lot (800 sq ft) is smaller than Main level (1,040 sq ft)',
    ],
    [
      'a bedroom that was drawn, with too little floor',
      {
        levels: [LEVEL],
        rooms: [
          {
            id: 'bed',
            level: 'main',
            use: 'bedroom',
            outline: [`east 8'`, `north 8'`, `west 8'`, `south 8'`],
            windows: [WINDOW],
          },
        ],
      },
      'warning rooms[0].use × rooms[0].outline',
      'Bed is counted as a bedroom, and it has 64 sq ft; for new work a model code asks 70 sq ft of a room to sleep in (International Residential Code, R304.1 and R304.2)',
    ],
    [
      'one thing that stays by one entry and goes by the other',
      {
        conveys: [
          { what: 'mirror', stays: 'yes' },
          { what: 'the mirror', stays: 'yes' },
          { what: 'bench', stays: 'no' },
          { what: 'Bench', stays: 'yes' },
        ],
      },
      'error conveys[3].stays × conveys[2].stays',
      '“Bench” stands twice in the list of what stays: once no, once yes',
    ],
    [
      'a range that stays by the list and goes by its own entry',
      {
        systems: [{ id: 'r', is: 'range', conveys: false }],
        conveys: [{ what: 'range', stays: 'yes' }],
      },
      'error conveys[0].stays × systems[0].conveys',
      'by the list of what stays, “range” stays; by its own entry, “range” goes',
    ],
    [
      'a washer that goes by the list and stays by its own entry',
      {
        systems: [{ id: 'w', is: 'washer', name: 'Washer', conveys: true }],
        conveys: [{ what: 'washer', stays: 'no' }],
      },
      'error conveys[0].stays × systems[0].conveys',
      'by the list of what stays, “washer” goes; by its own entry, “Washer” stays',
    ],
    [
      'upkeep of a thing that was taken out, beside upkeep of one that is there',
      {
        systems: [
          { id: 'pump', is: 'sump pump', did: 'removed' },
          { id: 'f', is: 'furnace' },
        ],
        care: [
          { what: 'change the filter', for: 'f', every: '3 months' },
          { what: 'pour water in', for: 'pump', every: '1 year' },
        ],
      },
      'error care[1].for × systems[0].did',
      'the next owner is to “pour water in”, and “sump pump”, which that is for, was removed',
    ],
  ])('%s', (_, spec, places, message) => {
    expect(told(spec)).toEqual([[places, message]]);
  });
});

describe('of days', () => {
  it.each<Clash>([
    [
      'a floor laid before the house was built',
      {
        house: { built: 2001 },
        levels: [LEVEL],
        rooms: [
          { id: 'hall', level: 'main', use: 'hall', finishes: [{ on: 'floor', what: 'oak', done: 1999 }] },
        ],
      },
      'error rooms[0].finishes[0].done × house.built',
      '“oak” (floor, Hall) was done (1999) before the house was built (2001)',
    ],
    [
      'a furnace in the house whose label is older than the house',
      {
        house: { built: 2001 },
        levels: [LEVEL],
        rooms: [{ id: 'hall', level: 'main', use: 'hall' }],
        systems: [
          {
            id: 'f',
            is: 'furnace',
            where: 'hall',
            label: { serial: '9412X', reads: 'YYWW at 1' },
          },
        ],
      },
      'warning systems[0].label × house.built',
      '“furnace” was made (between 21 March 1994 and 27 March 1994) long before the house was built (2001)',
    ],
    [
      'the family’s work before the purchase',
      {
        house: { bought: '2026-02-17' },
        work: [{ id: 'a', what: 'rail', did: 'new', done: 2024, by: 'family' }],
      },
      'warning work[0].done × house.bought',
      '“rail” was done by your family (2024) before you bought the house (17 February 2026)',
    ],
    [
      'hired work before the purchase',
      {
        house: { bought: '2026-02-17' },
        people: [{ id: 'alder', name: 'Alder Roofing' }],
        work: [{ id: 'a', what: 'roof', did: 'new', done: 2024, by: 'alder' }],
      },
      'warning work[0].done × house.bought',
      '“roof” was done by Alder Roofing (2024) before you bought the house (17 February 2026)',
    ],
    [
      'a thing kept as found that came after the purchase',
      {
        house: { bought: '2026-02-17' },
        systems: [{ id: 'f', is: 'furnace', kept: true, installed: '2026-04-09' }],
      },
      'warning systems[0].kept × systems[0].installed',
      '“furnace” is kept as found, and its date (9 April 2026) is after you bought the house (17 February 2026)',
    ],
    [
      'a permit that was not found and has its day',
      { permits: [{ id: 'p', what: 'rail', state: 'none-found', issued: '2026-03-01' }] },
      'error permits[0].state × permits[0].issued',
      'the permit for “rail” is “none-found”, and it has a date of issue (1 March 2026)',
    ],
    [
      'a report that is older than what it is to show, beside one without a date',
      {
        systems: [{ id: 'f', is: 'furnace', installed: { is: '2026-04-09', evidence: ['old', 'undated'] } }],
        documents: [
          { id: 'undated', what: 'letter of the fitter', kind: 'letter' },
          { id: 'old', what: 'report of the fitter', kind: 'report', date: '2025-12-01' },
        ],
      },
      'warning systems[0].installed × documents[1].date',
      '“furnace” was installed (9 April 2026), and the paper that is to show it, “report of the fitter”, is older (1 December 2025)',
    ],
  ])('%s', (_, spec, places, message) => {
    expect(told(spec)).toEqual([[places, message]]);
  });

  it('say what becomes of work between the offer and the sale, and of a photo by the camera’s clock', () => {
    const hints = (spec: PartialSpec, cameras?: Cameras): readonly string[] =>
      deriveTally(houseFrom(spec), AS_OF, cameras).diagnostics.find(({ code }) => code === 'tally.clash')
        ?.hints ?? [];
    const late = (sale: PartialSpec): PartialSpec => ({
      ...sale,
      house: { bought: '2026-02-17', listed: '2026-06-20' },
      work: [{ id: 'a', what: 'rail', did: 'new', done: '2026-07-02', by: 'owner' }],
    });
    expect(hints(late({}))[0]).toBe('give the agent a new sheet');
    expect(hints(late({ money: { role: 'dealer', sale: { closed: '2026-08-14', price: '1.00' } } }))[0]).toBe(
      'see that the buyer was told',
    );

    const shown: PartialSpec = {
      systems: [{ id: 'hood', is: 'range hood', installed: '2026-05-13', evidence: ['IMG_1'] }],
      photos: { IMG_1: { shows: 'range hood', when: 'after' } },
    };
    const cameras: Cameras = new Map([['IMG_1', { takenAt: '2026-03-02T10:00:00', spot: undefined }]]);
    expect(told(shown, cameras)).toEqual([
      [
        'warning systems[0].installed × photos.IMG_1',
        '“range hood” was installed (13 May 2026), and the photo that is to show it, IMG_1, was taken before (2 March 2026, by the camera)',
      ],
    ]);
    expect(hints(shown, cameras)[2]).toBe(
      'if the camera’s clock was wrong, add  taken:  with the right day to IMG_1 under photos:',
    );
  });
});

describe('what gives no ground', () => {
  it.each<[string, PartialSpec]>([
    [
      'an answer that names both sewer and tank',
      {
        house: { sewer: 'public' },
        answers: answers('Is it on a sewer or a septic tank?', 'Septic tank beside the city sewer.'),
      },
    ],
    [
      'an answer that names neither sewer nor tank',
      { house: { sewer: 'public' }, answers: answers('Is it on a sewer or a septic tank?', 'Ask me.') },
    ],
    [
      'no answer to a question of dues, and none of lead',
      {
        dues: [{ to: 'Orchard Association', amount: '40.00', per: 'month' }],
        lead: { known: 'none known' },
        answers: answers('Are there any association dues?', 'not known'),
      },
    ],
    [
      'an answer about a thing that is in no list, or whose date nobody knows',
      {
        systems: [{ id: 'f', is: 'furnace' }],
        answers: [
          { ask: 'How old is the furnace?', answer: 'Made in 2005.' },
          { ask: 'How old is the boiler?', answer: 'Made in 2005.' },
        ],
      },
    ],
    [
      'an old furnace in a house of which no year is known',
      { house: { built: 'not known' }, systems: [{ id: 'f', is: 'furnace', made: 1950 }] },
    ],
    [
      'a furnace from before the house, of which that was said already',
      {
        house: { built: 2001, bought: '2026-02-17' },
        systems: [{ id: 'f', is: 'furnace', made: 1990, kept: true, note: 'second-hand' }],
      },
    ],
  ])('%s', (_, spec) => {
    expect(told(spec)).toEqual([]);
  });

  it('is told once where a furnace was made and put in before the house was built', () => {
    const spec: PartialSpec = {
      house: { built: 2001 },
      systems: [{ id: 'f', is: 'furnace', made: 1990, installed: 1991 }],
    };
    expect(told(spec).map(([places]) => places)).toEqual(['error systems[0].installed × house.built']);
  });
});
