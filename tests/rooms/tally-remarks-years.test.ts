/** The year of the house, and ages beside each other, held against small houses. */
import { describe, expect, it } from 'vitest';
import { findingsOf, type House, rowsOf } from './remarks-told.js';

const MAIN = { id: 'main', name: 'Main level', grade: 'above', size: "40' x 25'", ceiling: "8'" } as const;

const HOUSES: readonly House[] = [
  [
    'built in 1948',
    {},
    `
Built in 1962.
  contradicted | Built in 1962 | date.built | the folder says 1948 | built 1948 ← built 1948
Built back in 1962.
  contradicted | Built back in 1962 | date.built | the folder says 1948 | built 1948 ← built 1948
Garage built back in 1962.
  no-fact | Garage | not-told | the folder tells of no garage
c. 1955
  contradicted | 1955 | date.built | the folder says 1948 | built 1948 ← built 1948
Built c. 1948
  backed | Built c. 1948 | date.built | the folder says 1948 ← built 1948
Year: 1962
  contradicted | 1962 | date.built | the folder says 1948 | built 1948 ← built 1948
Year built: 1962
  contradicted | built: 1962 | date.built | the folder says 1948 | built 1948 ← built 1948
built: 1948
  backed | built: 1948 | date.built | the folder says 1948 ← built 1948
Built by the Joneses in 1992
  contradicted | 1992 | date.built | the folder says 1948 | built 1948 ← built 1948
A 1962 charmer.
  contradicted | 1962 | date.built | the folder says 1948 | built 1948 ← built 1948
Three rooms, 1962 gem.
  contradicted | 1962 | date.built | the folder says 1948 | built 1948 ← built 1948
  opinion | gem | praise | taste, left alone
1962 gem
  contradicted | 1962 | date.built | the folder says 1948 | built 1948 ← built 1948
  opinion | gem | praise | taste, left alone
1962 split-foyer home
  contradicted | 1962 | date.built | the folder says 1948 | built 1948 ← built 1948
  no-fact | split-foyer | count.storeys | the folder does not say how many storeys
1962 unusual house
  contradicted | 1962 | date.built | the folder says 1948 | built 1948 ← built 1948
In 1962 unusual house
house dates from 1962
  contradicted | 1962 | date.built | the folder says 1948 | built 1948 ← built 1948
The pest clearance dates from 2022.
The fence around the garage was built in 2010.
  no-fact | fence | not-told | the folder tells of no fence there
  no-fact | garage | not-told | the folder tells of no garage
At garage level the house was built in 1962.
  no-fact | garage | not-told | the folder tells of no garage
  contradicted | built in 1962 | date.built | the folder says 1948 | built 1948 ← built 1948
This 8-year-old beauty
  contradicted | 8-year-old | date.built | the folder says 1948 | built 1948 ← built 1948
That 8-year-young lovely retreat
  contradicted | 8-year-young | date.built | the folder says 1948 | built 1948 ← built 1948
  opinion | lovely | praise | taste, left alone
A 5-year-old lovely deck
  no-fact | 5-year-old lovely deck | not-told | the folder tells of no deck
The house is less than 20 years old.
  contradicted | 20 years old | date.built | the folder says 1948 | built 1948 ← built 1948
The house is over 20 years old.
  backed | 20 years old | date.built | the folder says 1948 ← built 1948
The house is over 100 years old.
  contradicted | 100 years old | date.built | the folder says 1948 | built 1948 ← built 1948
The house is less than 90 years old.
  backed | 90 years old | date.built | the folder says 1948 ← built 1948
`,
  ],
  [
    'built in 1948, from the county record',
    { house: { built: { is: '1948', from: 'county record' } } },
    `
Built in 1962.
  contradicted | Built in 1962 | date.built | the folder says 1948 | built 1948 ← built 1948, from the county record
`,
  ],
  [
    'built in 1950 or before',
    { house: { built: '../1950' } },
    `
Built in 1900.
  backed | Built in 1900 | date.built | the folder says 1950 or before ← built 1950 or before
Built in 1962.
  contradicted | Built in 1962 | date.built | the folder says 1950 or before | built 1950 or before ← built 1950 or before
A century-old house.
`,
  ],
  [
    'built in 1950 or after',
    { house: { built: '1950/..' } },
    `
Built in 1900.
  contradicted | Built in 1900 | date.built | the folder says 1950 or after | built 1950 or after ← built 1950 or after
Built in 1962.
  backed | Built in 1962 | date.built | the folder says 1950 or after ← built 1950 or after
Newer home with a yard.
`,
  ],
  [
    'built in 2020',
    { house: { built: '2020' } },
    `
Newer home with a yard.
  backed | Newer home | date.built | the folder says 2020 ← built 2020
Brand new home with a yard.
  contradicted | Brand new home | date.built | the folder says 2020 | built 2020 ← built 2020
A new home with a yard.
brand new home nearby
`,
  ],
  [
    'built nobody knows when, with a floor that was kept',
    {
      house: { built: 'not known' },
      levels: [MAIN],
      systems: [{ id: 'range', is: 'range', name: 'Range', made: '2020' }],
      rooms: [
        {
          id: 'kitchen',
          level: 'main',
          use: 'kitchen',
          finishes: [{ on: 'floor', what: 'oak boards', kept: true }],
        },
      ],
    },
    `
Built in 1948.
  no-fact | Built in 1948 | date.built | when it was built is not known
Nothing original remains.
  contradicted | original | newness.original | the folder tells of what was left as found ← floor of the kitchen: oak boards; left as found
Newer home with a yard.
  no-fact | Newer home | newness.newer | the folder does not say when or whether that was done ← floor of the kitchen: oak boards; left as found
A hundred-year-old place.
  backed | old place | newness.old | so says the folder ← floor of the kitchen: oak boards; left as found
The range predates the house.
`,
  ],
  [
    'appliances with their years',
    {
      systems: [
        { id: 'range', is: 'range', name: 'Range', made: '2020' },
        { id: 'fridge', is: 'refrigerator', name: 'Refrigerator', made: '2015/2022' },
        { id: 'dw', is: 'dishwasher', name: 'Dishwasher', made: '2010' },
        { id: 'mw', is: 'microwave', name: 'Microwave', made: '2020' },
        { id: 'wh', is: 'water heater', name: 'Water heater' },
      ],
    },
    `
The range is newer than the refrigerator.
The range is newer than the dishwasher.
  backed | range | date.order | their dates are so ← Range: made 2020; Dishwasher: made 2010
The dishwasher is newer than the range.
  contradicted | dishwasher | date.order | the folder says 2010 and 2020 ← Dishwasher: made 2010; Range: made 2020
The dishwasher predates the range
  backed | dishwasher | date.order | their dates are so ← Dishwasher: made 2010; Range: made 2020
The dishwasher went in after the range
  contradicted | dishwasher | date.order | the folder says 2010 and 2020 ← Dishwasher: made 2010; Range: made 2020
  no-fact | dishwasher went in | newness.replaced | the folder does not say when or whether that was done ← Dishwasher: made 2010
The range is newer than the house.
  backed | range | date.order | their dates are so ← Range: made 2020
The house is newer than the range.
  contradicted | house | date.order | the folder says 1948 and 2020 ← Range: made 2020
The range dates from the same year as the microwave.
  backed | range | date.same | their dates are so ← Range: made 2020; Microwave: made 2020
The water heater is older than the range.
The range is not newer than the dishwasher.
The range is newer than that of the neighbour.
`,
  ],
  [
    'baths of 2010 and 2020',
    {
      levels: [MAIN],
      rooms: [
        {
          id: 'hall-bath',
          name: 'Hall bath',
          level: 'main',
          use: 'bath',
          finishes: [{ on: 'floor', what: 'tile', did: 'new', done: '2010' }],
        },
        {
          id: 'primary-bath',
          name: 'Primary bath',
          level: 'main',
          use: 'bath',
          finishes: [{ on: 'floor', what: 'tile', did: 'new', done: '2020' }],
        },
      ],
    },
    `
The primary bath is newer than the secondary.
  backed | primary bath | date.order | their dates are so ← floor of the primary bath: tile; new 2020; floor of the hall bath: tile; new 2010
The primary bath is older than the guest one.
  contradicted | primary bath | date.order | the folder says 2020 and 2010 ← floor of the primary bath: tile; new 2020; floor of the hall bath: tile; new 2010
The hall bath is newer than the owner’s.
  contradicted | bath | date.order | the folder says 2010 and 2020 ← floor of the hall bath: tile; new 2010; floor of the primary bath: tile; new 2020
The hall bath is newer than most.
`,
  ],
  [
    'a bath left as found, and one of 2020',
    {
      levels: [MAIN],
      rooms: [
        {
          id: 'hall-bath',
          name: 'Hall bath',
          level: 'main',
          use: 'bath',
          finishes: [{ on: 'floor', what: 'tile', kept: true }],
        },
        {
          id: 'primary-bath',
          name: 'Primary bath',
          level: 'main',
          use: 'bath',
          finishes: [{ on: 'floor', what: 'tile', did: 'new', done: '2020' }],
        },
      ],
    },
    `
The primary bath is newer than the hall one.
  no-fact | hall | not-told | the folder tells of no hall
The primary bath is newer than the secondary.
`,
  ],
  [
    'a bath left as found in 2019, and one of 2020',
    {
      house: { bought: '2019' },
      levels: [MAIN],
      rooms: [
        {
          id: 'hall-bath',
          name: 'Hall bath',
          level: 'main',
          use: 'bath',
          finishes: [{ on: 'floor', what: 'tile', kept: true }],
        },
        {
          id: 'primary-bath',
          name: 'Primary bath',
          level: 'main',
          use: 'bath',
          finishes: [{ on: 'floor', what: 'tile', did: 'new', done: '2020' }],
        },
      ],
    },
    `
The primary bath is newer than the secondary.
  backed | primary bath | date.order | their dates are so ← floor of the primary bath: tile; new 2020; floor of the hall bath: tile; left as found
The hall bath is newer than the owner’s.
  contradicted | bath | date.order | the folder says 1948 and 2020 ← floor of the hall bath: tile; left as found; floor of the primary bath: tile; new 2020
`,
  ],
];

describe.each(HOUSES)('years: %s', (_name, spec, table) => {
  it.each(rowsOf(table))('%s', (draft, told) => {
    expect(findingsOf(spec, draft)).toEqual(told);
  });
});
