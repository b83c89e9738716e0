/** Counts of rooms, cars and levels that a draft gives, held against small houses. */
import { describe, expect, it } from 'vitest';
import { findingsOf, type House, rowsOf } from './remarks-told.js';

const MAIN = { id: 'main', name: 'Main level', grade: 'above', size: "40' x 25'", ceiling: "8'" } as const;

const HOUSES: readonly House[] = [
  [
    'a garage of which nobody says for how many cars',
    { structures: [{ id: 'garage', is: 'garage' }] },
    `
Two-car garage.
  no-fact | Two-car garage | count.cars | the folder does not say for how many cars
`,
  ],
  [
    'a garage for more cars than have a word',
    { house: { parking: 'attached garage, 8 cars' } },
    `
Two-car garage.
  contradicted | Two-car garage | count.cars | the folder says 8 cars | 8-car garage ← parking: attached garage, 8 cars
8-car garage
  backed | 8-car garage | count.cars | the folder says 8 cars ← parking: attached garage, 8 cars
`,
  ],
  [
    'a garage for 2 cars, in figures',
    { house: { parking: 'attached garage, 2 cars, and a carport' } },
    `
Two-car garage.
  backed | Two-car garage | count.cars | the folder says two cars ← parking: attached garage, 2 cars, and a carport
Three-car garage.
  contradicted | Three-car garage | count.cars | the folder says two cars | two-car garage ← parking: attached garage, 2 cars, and a carport
`,
  ],
  [
    'nothing said of cars',
    {},
    `
Two-car garage.
  no-fact | Two-car garage | count.cars | the folder tells of no garage
Two-car carport.
  no-fact | Two-car carport | count.cars | the folder tells of no carport
`,
  ],
  [
    'a drive for two cars, and no garage',
    { house: { parking: 'gravel drive for 2 cars' } },
    `
Parking for two cars in the driveway.
Parking for two cars.
  contradicted | two cars | count.cars | the folder tells of no garage | gravel drive for 2 cars ← parking: gravel drive for 2 cars
`,
  ],
  [
    'a garage for two cars',
    { house: { parking: 'attached garage, two cars' } },
    `
Parking for three cars.
  contradicted | three cars | count.cars | the folder says two cars | two-car garage ← parking: attached garage, two cars
Parking for three in the drive.
parking for three cars in the driveway
One-car garage and parking for three.
  contradicted | One-car garage | count.cars | the folder says two cars | two-car garage ← parking: attached garage, two cars
Garage for one, and parking for three
  backed | Garage | there | the folder tells of it ← parking: attached garage, two cars
  contradicted | one | count.cars | the folder says two cars | two-car garage ← parking: attached garage, two cars
Garage and room for three automobiles.
  backed | Garage | there | the folder tells of it ← parking: attached garage, two cars
  contradicted | three automobiles | count.cars | the folder says two cars | two-car garage ← parking: attached garage, two cars
three roomy garage spaces
  backed | garage spaces | there | the folder tells of it ← parking: attached garage, two cars
garage with two bays
  backed | two bays | count.cars | the folder says two cars ← parking: attached garage, two cars
garage holds three cars
  contradicted | three cars | count.cars | the folder says two cars | two-car garage ← parking: attached garage, two cars
Garage: 3
  backed | Garage | there | the folder tells of it ← parking: attached garage, two cars
  contradicted | 3 | count.cars | the folder says two cars | two-car garage ← parking: attached garage, two cars
triple attached garage
  contradicted | triple | count.cars | the folder says two cars | two-car garage ← parking: attached garage, two cars
  backed | attached garage | kind.attachment | the folder says so ← parking: attached garage, two cars
Garage with three spaces.
  backed | Garage | there | the folder tells of it ← parking: attached garage, two cars
  contradicted | three | count.cars | the folder says two cars | two-car garage ← parking: attached garage, two cars
`,
  ],
  [
    'a loft without a name, and an office',
    {
      levels: [MAIN],
      rooms: [
        { id: 'living', level: 'main', use: 'living' },
        { id: 'loft', level: 'main', use: 'other' },
        { id: 'office', level: 'main', use: 'office' },
        { id: 'nook', level: 'main', use: 'other' },
      ],
    },
    `
three living areas
  backed | three living areas | count.living | the folder lists 1 living area: Living ← 1 living area: Living
four living areas
  contradicted | four living areas | count.living | the folder lists 1 living area: Living | 1 living area ← 1 living area: Living
Two baths
  contradicted | Two baths | count.baths | the folder lists none |  ← no bath
`,
  ],
  [
    'a bath of no stated kind',
    {
      levels: [MAIN],
      rooms: [
        { id: 'b1', level: 'main', use: 'bath', bath: 'full' },
        { id: 'b2', level: 'main', use: 'bath' },
        { id: 'b3', level: 'main', use: 'bath', bath: 'half' },
      ],
    },
    `
2.1 baths
  backed | 2.1 baths | count.baths | the folder lists 1 full bath and 1 half bath and 1 bath of no stated kind ← 1 full bath and 1 half bath and 1 bath of no stated kind: B1, B2, B3
1.2 baths
  backed | 1.2 baths | count.baths | the folder lists 1 full bath and 1 half bath and 1 bath of no stated kind ← 1 full bath and 1 half bath and 1 bath of no stated kind: B1, B2, B3
2.5 baths
  backed | 2.5 baths | count.baths | the folder lists 1 full bath and 1 half bath and 1 bath of no stated kind ← 1 full bath and 1 half bath and 1 bath of no stated kind: B1, B2, B3
2 full baths
  backed | 2 full baths | count.baths | the folder lists 1 full bath and 1 half bath and 1 bath of no stated kind ← 1 full bath and 1 half bath and 1 bath of no stated kind: B1, B2, B3
Three full baths
  contradicted | Three full baths | count.baths | the folder lists 1 full bath and 1 half bath and 1 bath of no stated kind | 1 full bath and 1 half bath and 1 bath of no stated kind ← 1 full bath and 1 half bath and 1 bath of no stated kind: B1, B2, B3
Two half baths
  backed | Two half baths | count.baths | the folder lists 1 full bath and 1 half bath and 1 bath of no stated kind ← 1 full bath and 1 half bath and 1 bath of no stated kind: B1, B2, B3
1.5 baths
  contradicted | 1.5 baths | count.baths | the folder lists 1 full bath and 1 half bath and 1 bath of no stated kind | 1 full bath and 1 half bath and 1 bath of no stated kind ← 1 full bath and 1 half bath and 1 bath of no stated kind: B1, B2, B3
Four baths
  contradicted | Four baths | count.baths | the folder lists 1 full bath and 1 half bath and 1 bath of no stated kind | 1 full bath and 1 half bath and 1 bath of no stated kind ← 1 full bath and 1 half bath and 1 bath of no stated kind: B1, B2, B3
3+ baths
  contradicted | 3+ baths | count.baths | the folder has 2.5 | 2.5 baths ← B1; B2; B3
2+ baths
  backed | 2+ baths | count.baths | the folder has 2.5 ← B1; B2; B3
two or more baths
  backed | two or more baths | count.baths | the folder has 2.5 ← B1; B2; B3
`,
  ],
  [
    'two bedrooms',
    {
      levels: [MAIN],
      rooms: [
        { id: 'b1', name: 'North bedroom', level: 'main', use: 'bedroom' },
        { id: 'b2', level: 'main', use: 'bedroom' },
      ],
    },
    `
2+ bedrooms
  backed | 2+ bedrooms | count.bedrooms | the folder has 2 ← North bedroom; B2
3+ bedrooms
  contradicted | 3+ bedrooms | count.bedrooms | the folder has 2 | 2 bedrooms ← North bedroom; B2
three-plus beds
  contradicted | three-plus beds | count.bedrooms | the folder has 2 | 2 bedrooms ← North bedroom; B2
# of bedrooms: 2
  backed | # of bedrooms: 2 | count.bedrooms | the folder lists 2 bedrooms ← 2 bedrooms: North bedroom, B2
Bedrooms total: three
  contradicted | Bedrooms total: three | count.bedrooms | the folder lists 2 bedrooms | 2 bedrooms ← 2 bedrooms: North bedroom, B2
`,
  ],
  [
    'levels of which no room is told',
    { levels: [MAIN] },
    `
Three levels of finished space
  no-fact | Three levels of finished space | count.levels | the folder lists no rooms
`,
  ],
];

describe.each(HOUSES)('counts of rooms: %s', (_name, spec, table) => {
  it.each(rowsOf(table))('%s', (draft, told) => {
    expect(findingsOf(spec, draft)).toEqual(told);
  });
});
