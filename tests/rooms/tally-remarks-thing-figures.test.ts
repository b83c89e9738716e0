/** Counts, dates, extents and ratings of things, held against small houses. */
import { describe, expect, it } from 'vitest';
import { findingsOf, type House, rowsOf } from './remarks-told.js';

const MAIN = { id: 'main', name: 'Main level', grade: 'above', size: "40' x 25'", ceiling: "8'" } as const;

const HOUSES: readonly House[] = [
  [
    'fans by room, wall units by a work, and a furnace with an air conditioner',
    {
      systems: [
        { id: 'fans', is: 'ceiling fan, electric', name: 'Ceiling fans, living room, den' },
        { id: 'fan', is: 'ceiling fan', name: 'Ceiling fan, kitchen' },
        { id: 'mini', is: 'mini-splits, ductless', name: 'Ductless units, bedrooms' },
        { id: 'f', is: 'furnace, gas', name: 'Furnace' },
        { id: 'ac', is: 'air conditioner', name: 'Air conditioner' },
      ],
      work: [{ id: 'w', what: 'mini-splits', did: 'new', how: '14 wall units hung', systems: ['mini'] }],
    },
    `
three ceiling fans
  backed | three ceiling fans | count.things | the folder tells of 3 ceiling fans ← Ceiling fans, living room, den: ceiling fan, electric; Ceiling fan, kitchen
four ceiling fans
  contradicted | four ceiling fans | count.things | the folder tells of 3 ceiling fans | 3 ceiling fans ← Ceiling fans, living room, den: ceiling fan, electric; Ceiling fan, kitchen
14 mini-split units
  backed | mini-split units | there | the folder tells of it ← Ductless units, bedrooms: mini-splits
two HVAC units
three HVAC units
two fireplaces
  no-fact | two fireplaces | not-told | the folder tells of no fireplace
`,
  ],
  [
    'windows that are counted',
    {
      levels: [MAIN],
      rooms: [
        {
          id: 'kitchen',
          level: 'main',
          use: 'kitchen',
          finishes: [{ on: 'windows', what: 'eight windows, wood' }],
        },
      ],
      work: [
        { id: 'w1', what: 'windows of the back, seven', did: 'replaced' },
        { id: 'w2', what: 'fireplace in the den', did: 'cleaned' },
      ],
    },
    `
eight windows
  backed | eight windows | count.things | the folder tells of 8 windows ← windows of the kitchen: eight windows, wood
seven windows
  backed | seven windows | count.things | the folder tells of 7 windows ← windows of the back, seven: replaced, when is not known
three windows
Nine windows
  contradicted | Nine windows | count.things | the folder tells of 8 windows | 8 windows ← windows of the kitchen: eight windows, wood
14 windows
  contradicted | 14 windows | count.things | the folder tells of 8 windows | 8 windows ← windows of the kitchen: eight windows, wood
two fireplaces
  backed | fireplaces | there | the folder tells of it ← fireplace in the den: cleaned, when is not known
`,
  ],
  [
    'windows that are counted in figures',
    {
      levels: [MAIN],
      rooms: [
        {
          id: 'kitchen',
          level: 'main',
          use: 'kitchen',
          finishes: [{ on: 'windows', what: '12 windows, wood' }],
        },
      ],
    },
    `
twelve windows
  backed | twelve windows | count.things | the folder tells of 12 windows ← windows of the kitchen: 12 windows, wood
13 windows
  contradicted | 13 windows | count.things | the folder tells of 12 windows | 12 windows ← windows of the kitchen: 12 windows, wood
`,
  ],
  [
    'a vanity with two sinks',
    {
      levels: [MAIN],
      rooms: [
        {
          id: 'bath',
          level: 'main',
          use: 'bath',
          bath: 'full',
          finishes: [{ on: 'vanity', what: 'vanity, 2 sinks' }],
        },
      ],
    },
    `
double vanity
  backed | double vanity | count.things | the folder tells of 2 basins ← vanity of the bath: 2 sinks
bath with three sinks
  contradicted | three sinks | count.things | the folder tells of 2 basins | 2 basins ← vanity of the bath: 2 sinks
single vanity
  contradicted | single vanity | count.things | the folder tells of 2 basins | 2 basins ← vanity of the bath: 2 sinks
`,
  ],
  [
    'two bowls, and no vanity',
    {
      levels: [MAIN],
      rooms: [
        {
          id: 'bath',
          level: 'main',
          use: 'bath',
          bath: 'full',
          finishes: [{ on: 'counter', what: 'marble with two bowls' }],
        },
      ],
    },
    `
double vanity
  no-fact | double vanity | not-told | the folder tells of no vanity
`,
  ],
  [
    'a vanity, and nothing said of its basins',
    {
      levels: [MAIN],
      rooms: [
        {
          id: 'bath',
          level: 'main',
          use: 'bath',
          bath: 'full',
          finishes: [{ on: 'vanity', what: 'vanity, oak' }],
        },
      ],
    },
    `
single vanity
double vanity
one sink in the bath
a 48-inch vanity
`,
  ],
  [
    'a roof of 2020 or before',
    { systems: [{ id: 'roof', is: 'roof, shingle', name: 'Roof', installed: '../2020' }] },
    `
A roof from 1925.
  contradicted | 1925 | date.year | the folder says 2020 or before ← Roof: shingle; put in 2020 or before
A roof from 1985.
  backed | 1985 | date.year | its date is that ← Roof: shingle; put in 2020 or before
A roof from 2023.
  contradicted | 2023 | date.year | the folder says 2020 or before ← Roof: shingle; put in 2020 or before
roof replaced in May 2019
  backed | roof replaced in May 2019 | date.year | its date is that ← Roof: shingle; put in 2020 or before
The roof is over ten years old.
  backed | ten years old | date.age | its date is that ← Roof: shingle; put in 2020 or before
The roof was replaced within the last ten years.
  no-fact | replaced within the last ten years | date.within | the folder gives a span of years that leaves it open ← Roof: shingle; put in 2020 or before
`,
  ],
  [
    'a roof of 2015 or after',
    { systems: [{ id: 'roof', is: 'roof, shingle', name: 'Roof', installed: '2015/..' }] },
    `
A roof from 2013.
  contradicted | 2013 | date.year | the folder says 2015 or after ← Roof: shingle; put in 2015 or after
A roof from 2019.
  backed | 2019 | date.year | its date is that ← Roof: shingle; put in 2015 or after
roof replaced in May 2019
  backed | roof replaced in May 2019 | date.year | its date is that ← Roof: shingle; put in 2015 or after
The roof is five years old.
  backed | five years old | date.age | its date is that ← Roof: shingle; put in 2015 or after
The roof is 20 years old.
  contradicted | 20 years old | date.age | the folder says 2015 or after ← Roof: shingle; put in 2015 or after
The roof is over 25 years old.
  contradicted | 25 years old | date.age | the folder says 2015 or after ← Roof: shingle; put in 2015 or after
The roof was replaced within the last three years.
  no-fact | replaced within the last three years | date.within | the folder gives a span of years that leaves it open ← Roof: shingle; put in 2015 or after
roof replaced within the last 15 years
  backed | roof replaced within the last 15 years | date.within | its date is that ← Roof: shingle; put in 2015 or after
`,
  ],
  [
    'a pool of which the deck tells the sides',
    { structures: [{ id: 'deck', is: 'deck', note: 'around the pool, which is 28 by 14 ft' }] },
    `
a pool of 28 x 14
  backed | 28 x 14 | size.extent | the folder says 28 by 14 ft ← deck: attached
`,
  ],
  [
    'a pool of one depth',
    { structures: [{ id: 'deck', is: 'deck', note: 'the pool is 28 by 14 ft, 5 ft deep' }] },
    `
The pool is 28 x 14.
  backed | 28 x 14 | size.extent | the folder says 28 by 14 ft ← deck: attached
The pool is 14 by 30 feet
  contradicted | 14 by 30 feet | size.extent | the folder says 28 by 14 ft | 28 by 14 ft ← deck: attached
a pool with a depth of up to nine feet
  contradicted | nine feet | size.extent | the folder says 5 ft deep | 5 ft deep ← deck: attached
a pool 5 feet deep
  backed | pool 5 feet | size.extent | the folder says 5 ft deep ← deck: attached
`,
  ],
  [
    'a pool with sides and no depth',
    { structures: [{ id: 'deck', is: 'deck', name: 'Pool deck', note: 'the pool is 28 by 14 ft' }] },
    `
a pool with a depth of up to nine feet
  no-fact | pool | not-told | the folder tells of no pool
`,
  ],
  [
    'a deep well',
    { house: { water: 'well, 1,240 ft deep' } },
    `
a 1,240-foot well
  no-fact | 1,240-foot | size.living-area | the folder holds no size
a 300-foot well
  contradicted | 300-foot well | size.feet | the folder says 1240 ft | 1240 ft ← water: well, 1,240 ft deep
`,
  ],
  [
    'ratings in words and on labels',
    {
      systems: [
        { id: 'wh', is: 'water heater, tank', name: 'Water heater, 50 gallon' },
        { id: 'panel', is: 'panel', name: 'Panel', capacity: '150 A' },
        {
          id: 'ac',
          is: 'air conditioner',
          name: 'Air conditioner',
          note: 'a 3 ton unit beside one of 2 tons',
        },
      ],
    },
    `
50-gallon water heater
  backed | 50-gallon water heater | size.rating | the folder says so ← Water heater, 50 gallon: tank
40-gallon water heater
  contradicted | 40-gallon water heater | size.rating | the folder says 50 gallon | 50 gallon ← Water heater, 50 gallon: tank
80,000 BTU water heater
  no-fact | 80,000 BTU water heater | size.rating | the folder does not give that rating
200 amp panel
  contradicted | 200 amp panel | size.rating | the folder says 150 A | 150 A ← Panel: 150 A
150 amp panel
  backed | 150 amp panel | size.rating | the folder says 150 A ← Panel: 150 A
3-ton air conditioner
  backed | 3-ton air conditioner | size.rating | the folder says so ← Air conditioner
4-ton air conditioner
  no-fact | 4-ton air conditioner | size.rating | the folder does not give that rating
2-ton air conditioner
  backed | 2-ton air conditioner | size.rating | the folder says so ← Air conditioner
`,
  ],
  [
    'a rating beside a year',
    { systems: [{ id: 'ac', is: 'air conditioner', name: 'Air conditioner', note: 'a 3 ton unit of 2019' }] },
    `
3-ton air conditioner
  backed | 3-ton air conditioner | size.rating | the folder says so ← Air conditioner
4-ton air conditioner
  contradicted | 4-ton air conditioner | size.rating | the folder says 3 ton | 3 ton ← Air conditioner
`,
  ],
];

describe.each(HOUSES)('figures of things: %s', (_name, spec, table) => {
  it.each(rowsOf(table))('%s', (draft, told) => {
    expect(findingsOf(spec, draft)).toEqual(told);
  });
});
