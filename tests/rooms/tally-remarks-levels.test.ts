/** Ranks, warranties, levels and lists of baths that no phrase has, held against small houses. */
import { describe, expect, it } from 'vitest';
import { findingsOf, type House, rowsOf } from './remarks-told.js';

const MAIN = { id: 'main', name: 'Main level', grade: 'above', size: "40' x 25'", ceiling: "8'" } as const;
const BEDROOMS = [
  { id: 'north', name: 'Bedroom 1', level: 'main', use: 'bedroom', size: "10' x 10'" },
  { id: 'south', name: 'Bedroom 2', level: 'main', use: 'bedroom', size: "9' x 9'" },
  { id: 'east', name: 'Bedroom 3', level: 'main', use: 'bedroom', size: "12' x 12'" },
] as const;

const HOUSES: readonly House[] = [
  [
    'bedrooms and baths with their sides',
    {
      levels: [MAIN],
      rooms: [
        ...BEDROOMS,
        { id: 'ba1', name: 'Primary bath', level: 'main', use: 'bath', size: "5' x 8'" },
        { id: 'ba2', name: 'Hall bath', level: 'main', use: 'bath', size: "4' x 6'" },
      ],
    },
    `
Bedroom 3 is the largest.
  backed | Bedroom 3 is the largest | size.compared | the folder says Bedroom 1: 100 sq ft; Bedroom 2: 81 sq ft; Bedroom 3: 144 sq ft ← Bedroom 1: 100 sq ft; Bedroom 2: 81 sq ft; Bedroom 3: 144 sq ft
The second bedroom is the smallest.
  backed | second bedroom is the smallest | size.compared | the folder says Bedroom 1: 100 sq ft; Bedroom 2: 81 sq ft; Bedroom 3: 144 sq ft ← Bedroom 1: 100 sq ft; Bedroom 2: 81 sq ft; Bedroom 3: 144 sq ft
1st bedroom is the largest bedroom
  contradicted | 1st bedroom is the largest bedroom | size.compared | the folder says Bedroom 1: 100 sq ft; Bedroom 2: 81 sq ft; Bedroom 3: 144 sq ft | Bedroom 1: 100 sq ft; Bedroom 2: 81 sq ft; Bedroom 3: 144 sq ft ← Bedroom 1: 100 sq ft; Bedroom 2: 81 sq ft; Bedroom 3: 144 sq ft
Bedroom three is the smallest of the bedrooms
  contradicted | Bedroom three is the smallest of the bedrooms | size.compared | the folder says Bedroom 1: 100 sq ft; Bedroom 2: 81 sq ft; Bedroom 3: 144 sq ft | Bedroom 1: 100 sq ft; Bedroom 2: 81 sq ft; Bedroom 3: 144 sq ft ← Bedroom 1: 100 sq ft; Bedroom 2: 81 sq ft; Bedroom 3: 144 sq ft
The hall bath is the biggest bath.
  contradicted | hall bath is the biggest bath | size.compared | the folder says Primary bath: 40 sq ft; Hall bath: 24 sq ft | Primary bath: 40 sq ft; Hall bath: 24 sq ft ← Primary bath: 40 sq ft; Hall bath: 24 sq ft
The master bath is the largest.
  backed | master bath is the largest | size.compared | the folder says Primary bath: 40 sq ft; Hall bath: 24 sq ft ← Primary bath: 40 sq ft; Hall bath: 24 sq ft
Bath 7 is the largest.
  no-fact | Bath | not-told | the folder tells of no bath
`,
  ],
  [
    'a bedroom whose sides are not known',
    {
      levels: [MAIN],
      rooms: [
        { id: 'north', name: 'Bedroom 1', level: 'main', use: 'bedroom', size: "10' x 10'" },
        { id: 'south', name: 'Bedroom 2', level: 'main', use: 'bedroom' },
      ],
    },
    `
Bedroom 1 is the largest.
  no-fact | Bedroom | not-told | the folder tells of no bedroom
Bedroom 2 is the largest.
  no-fact | Bedroom | not-told | the folder tells of no bedroom
`,
  ],
  [
    'insulation with a value',
    { systems: [{ id: 'i', is: 'insulation, cellulose', name: 'Attic insulation, R-49' }] },
    `
Attic blown to R-49.
  no-fact | Attic | not-told | the folder tells of no attic
  backed | R-49 | size.rating | the folder says so ← Attic insulation, R-49: insulation, cellulose
Attic insulated to R-38.
  no-fact | insulated | not-told | the folder tells of no insulation there
  contradicted | R-38 | size.rating | the folder says: Attic insulation, R-49: insulation, cellulose ← Attic insulation, R-49: insulation, cellulose
Insulation of R-49.
  backed | R-49 | size.rating | the folder says so ← Attic insulation, R-49: insulation, cellulose
`,
  ],
  [
    'no insulation told of',
    {},
    `
Attic blown to R-49.
  no-fact | Attic | not-told | the folder tells of no attic
`,
  ],
  [
    'one storey',
    { house: { storeys: 'one' }, levels: [MAIN] },
    `
Upstairs windows.
  contradicted | Upstairs windows | count.storeys | the folder says one storey | single-storey ← storeys: one
  contradicted | windows | place | the folder tells of one storey, and of nothing above it ← storeys: one
Upstairs could be windows.
  opinion | Upstairs could be windows | aside | it offers or imagines, and claims nothing
No upstairs.
Upstairs in the clubhouse
No stairs.
  backed | No stairs | count.storeys | the folder says one storey ← storeys: one storey
three up and one down
  contradicted | three up and one down | count.storeys | the folder says one storey | single-storey ← storeys: one
`,
  ],
  [
    'two storeys',
    { house: { storeys: 'two' }, levels: [MAIN] },
    `
No stairs.
  contradicted | No stairs | count.storeys | the folder says two storeys | two storeys ← storeys: two storeys
Imagine no stairs.
  opinion | Imagine no stairs | aside | it offers or imagines, and claims nothing
upstairs windows
Storeys: 2
  backed | Storeys: 2 | count.storeys | the folder says two storeys ← storeys: two storeys
Story count: three
  contradicted | Story count: three | count.storeys | the folder says two storeys | two storeys ← storeys: two storeys
`,
  ],
  [
    'a full and a half bath, half an acre',
    {
      house: { lot: '0.5 acre' },
      levels: [MAIN],
      rooms: [
        ...BEDROOMS,
        { id: 'ba', level: 'main', use: 'bath', bath: 'full' },
        { id: 'ba2', level: 'main', use: 'bath', bath: 'half' },
      ],
    },
    `
Overlooking half an acre.
  backed | half an acre | size.lot | the folder says 0.5 acre ← lot: 0.5 acre
3/1.5 home
  backed | 3/1.5 | count.baths | the folder lists 1 full bath and 1 half bath ← 1 full bath and 1 half bath: Ba, Ba2
3/2 home
  contradicted | 3/2 | count.baths | the folder lists 1 full bath and 1 half bath | 1 full bath and 1 half bath ← 1 full bath and 1 half bath: Ba, Ba2
1 full and 1 half bath
  backed | 1 full | count.baths | the folder lists 1 full bath and 1 half bath ← 1 full bath and 1 half bath: Ba, Ba2
  backed | 1 half bath | count.baths | the folder lists 1 full bath and 1 half bath ← 1 full bath and 1 half bath: Ba, Ba2
Baths: one full
  backed | one full | count.baths | the folder lists 1 full bath and 1 half bath ← 1 full bath and 1 half bath: Ba, Ba2
Baths: two full
  contradicted | two full | count.baths | the folder lists 1 full bath and 1 half bath | 1 full bath and 1 half bath ← 1 full bath and 1 half bath: Ba, Ba2
Total baths 2
  backed | Total baths 2 | count.baths | the folder lists 1 full bath and 1 half bath ← 1 full bath and 1 half bath: Ba, Ba2
Number of baths: 1.5
  backed | Number of baths: 1.5 | count.baths | the folder lists 1 full bath and 1 half bath ← 1 full bath and 1 half bath: Ba, Ba2
Baths count: 2
  backed | Baths count: 2 | count.baths | the folder lists 1 full bath and 1 half bath ← 1 full bath and 1 half bath: Ba, Ba2
Total bathrooms three
  contradicted | Total bathrooms three | count.baths | the folder lists 1 full bath and 1 half bath | 1 full bath and 1 half bath ← 1 full bath and 1 half bath: Ba, Ba2
`,
  ],
  [
    'warranties',
    {
      systems: [
        {
          id: 'r',
          is: 'roof, shingle',
          name: 'Roof',
          installed: '2020',
          warranty: { years: 20, 'moves-to-buyer': 'no' },
        },
        { id: 'wh', is: 'water heater', name: 'Water heater', warranty: { 'moves-to-buyer': 'not known' } },
      ],
    },
    `
Roof with a 20-year warranty.
  backed | a 20-year warranty | warranty | the folder lists that warranty ← warranty, Roof: 20 years, does not move to the buyer
Roof with a transferable warranty.
  contradicted | a transferable warranty | warranty | the folder lists another warranty ← warranty, Roof: 20 years, does not move to the buyer
Roof with a non-transferable warranty.
  backed | a non-transferable warranty | warranty | the folder lists that warranty ← warranty, Roof: 20 years, does not move to the buyer
Roof warranty through 2040
  backed | Roof warranty through 2040 | warranty | the folder lists that warranty ← warranty, Roof: 20 years, does not move to the buyer
Roof warranty through 2030
  contradicted | Roof warranty through 2030 | warranty | the folder lists another warranty ← warranty, Roof: 20 years, does not move to the buyer
Water heater with a ten-year warranty.
  no-fact | a ten-year warranty | warranty | the folder lists no such warranty, or leaves it open ← warranty, Water heater
Water heater warranty through 2030
  no-fact | warranty through 2030 | warranty | the folder lists no such warranty, or leaves it open ← warranty, Water heater
Water heater with a transferable warranty.
  no-fact | a transferable warranty | warranty | the folder lists no such warranty, or leaves it open ← warranty, Water heater
Boiler with a ten-year warranty.
  no-fact | Boiler | not-told | the folder tells of no boiler
  no-fact | a ten-year warranty | warranty | the folder lists no such warranty, or leaves it open
Roof with a warranty that does not transfer
  backed | a warranty that does not transfer | warranty | the folder lists that warranty ← warranty, Roof: 20 years, does not move to the buyer
`,
  ],
];

describe.each(HOUSES)('rooms and levels: %s', (_name, spec, table) => {
  it.each(rowsOf(table))('%s', (draft, told) => {
    expect(findingsOf(spec, draft)).toEqual(told);
  });
});
