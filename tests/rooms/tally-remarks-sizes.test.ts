/** Sizes of the house and of its rooms that a draft gives, held against small houses. */
import { describe, expect, it } from 'vitest';
import { findingsOf, type House, rowsOf } from './remarks-told.js';

const MAIN = { id: 'main', name: 'Main level', grade: 'above', size: "40' x 25'", ceiling: "8'" } as const;
const CELLAR = { id: 'cellar', name: 'Cellar', grade: 'below', size: "20' x 25'", ceiling: "7'" } as const;

const HOUSES: readonly House[] = [
  [
    'neither record nor room sizes',
    {
      levels: [MAIN],
      rooms: [
        { id: 'kitchen', level: 'main', use: 'kitchen' },
        { id: 'bath', level: 'main', use: 'bath' },
      ],
    },
    `
Larger than the county says.
The kitchen is larger than the bathroom.
1,000 sq ft
  backed | 1,000 sq ft | size.living-area | the folder says 1,000 sq ft ← 1,000 sq ft finished above grade
10 x 12 kitchen
  no-fact | 10 x 12 kitchen | size.room | the folder does not give that size
kitchen of 120 sq ft
  no-fact | 120 sq ft | size.room | the folder does not give that size
Three levels of finished space
  contradicted | Three levels of finished space | count.levels | the folder lists 1 finished level | 1 finished level ← 1 finished level: Main level
Two levels of living space
  no-fact | Two levels | count.storeys | the folder does not say how many storeys
`,
  ],
  [
    'a record of 974 sq ft beside 1,000 measured',
    {
      levels: [MAIN],
      record: { area: '974 sq ft' },
      rooms: [
        { id: 'kitchen', level: 'main', use: 'kitchen', size: "10' x 12'" },
        { id: 'bath', level: 'main', use: 'bath', bath: 'full', size: "5' x 8'" },
        { id: 'b1', level: 'main', use: 'bedroom' },
        { id: 'b2', level: 'main', use: 'bedroom' },
      ],
    },
    `
Larger than the county says, by about 25 square feet.
  backed | Larger than the county | size.compared | the folder says 1,000 sq ft, and the record 974 sq ft ← 1,000 sq ft finished above grade; 974 sq ft by the record
  backed | by about 25 sq | size.compared | the folder says 1,000 sq ft, and the record 974 sq ft ← 1,000 sq ft finished above grade; 974 sq ft by the record
Larger than the county says, by about 90 square feet.
  backed | Larger than the county | size.compared | the folder says 1,000 sq ft, and the record 974 sq ft ← 1,000 sq ft finished above grade; 974 sq ft by the record
  contradicted | by about 90 sq | size.compared | the folder says 1,000 sq ft, and the record 974 sq ft | 1,000 sq ft ← 1,000 sq ft finished above grade; 974 sq ft by the record
Larger than the county says, by 26 square feet.
  backed | Larger than the county | size.compared | the folder says 1,000 sq ft, and the record 974 sq ft ← 1,000 sq ft finished above grade; 974 sq ft by the record
  backed | by 26 sq | size.compared | the folder says 1,000 sq ft, and the record 974 sq ft ← 1,000 sq ft finished above grade; 974 sq ft by the record
Larger than the county says, by 80 square feet.
  backed | Larger than the county | size.compared | the folder says 1,000 sq ft, and the record 974 sq ft ← 1,000 sq ft finished above grade; 974 sq ft by the record
  contradicted | by 80 sq | size.compared | the folder says 1,000 sq ft, and the record 974 sq ft | 1,000 sq ft ← 1,000 sq ft finished above grade; 974 sq ft by the record
Larger than the county says, by over 20 square feet.
  backed | Larger than the county | size.compared | the folder says 1,000 sq ft, and the record 974 sq ft ← 1,000 sq ft finished above grade; 974 sq ft by the record
  backed | by over 20 sq | size.compared | the folder says 1,000 sq ft, and the record 974 sq ft ← 1,000 sq ft finished above grade; 974 sq ft by the record
Smaller than the county says.
  contradicted | Smaller than the county | size.compared | the folder says 1,000 sq ft, and the record 974 sq ft | 1,000 sq ft ← 1,000 sq ft finished above grade; 974 sq ft by the record
more bedrooms than baths
  backed | more bedrooms than baths | count.compared | the folder lists 2 bedrooms and 1 bath ← 2 bedrooms and 1 bath
fewer bedrooms than baths
  contradicted | fewer bedrooms than baths | count.compared | the folder lists 2 bedrooms and 1 bath | 2 bedrooms and 1 bath ← 2 bedrooms and 1 bath
Fewer baths than bedrooms
  backed | Fewer baths than bedrooms | count.compared | the folder lists 2 bedrooms and 1 bath ← 2 bedrooms and 1 bath
more baths than bathrooms
The kitchen is larger than the bathroom.
  backed | kitchen is larger than the bathroom | size.compared | the folder says Kitchen: 120 sq ft; Bath: 40 sq ft ← Kitchen: 120 sq ft; Bath: 40 sq ft
The bathroom is larger than the kitchen.
  contradicted | bathroom is larger than the kitchen | size.compared | the folder says Bath: 40 sq ft; Kitchen: 120 sq ft | Bath: 40 sq ft; Kitchen: 120 sq ft ← Bath: 40 sq ft; Kitchen: 120 sq ft
10 x 12 kitchen
  backed | 10 x 12 kitchen | size.room | the folder says Kitchen: 10 by 12 ft ← Kitchen: 10 by 12 ft
12 x 14 kitchen
  contradicted | 12 x 14 kitchen | size.room | the folder says Kitchen: 10 by 12 ft | Kitchen: 10 by 12 ft ← Kitchen: 10 by 12 ft
10 x 14 kitchen
  contradicted | 10 x 14 kitchen | size.room | the folder says Kitchen: 10 by 12 ft | Kitchen: 10 by 12 ft ← Kitchen: 10 by 12 ft
`,
  ],
  [
    'no rooms and no sizes',
    {},
    `
more bedrooms than baths
Three bedrooms.
  no-fact | Three bedrooms | count.bedrooms | the folder lists no rooms
Two baths.
  no-fact | Two baths | count.baths | the folder lists no rooms
Two storeys.
  no-fact | Two storeys | count.storeys | the folder does not say how many storeys
three living areas
1,500 sq ft
  no-fact | 1,500 sq ft | size.living-area | the folder holds no size
1,500 sq ft per county
  no-fact | 1,500 sq ft | size.living-area | the folder holds no public record of the size
9-foot ceilings
  no-fact | 9-foot ceilings | size.ceiling | the folder gives no height
`,
  ],
  [
    'a public record, and nothing measured',
    { record: { area: '1,100 sq ft', source: 'county card' } },
    `
1,100 sq ft
  backed | 1,100 sq ft | size.living-area | the record says 1,100 sq ft ← 1,100 sq ft by the county card
1,500 sq ft
  contradicted | 1,500 sq ft | size.living-area | the record says 1,100 sq ft ← 1,100 sq ft by the county card
1,200 sq ft per county
  contradicted | 1,200 sq ft | size.living-area | the record says 1,100 sq ft | 1,100 sq ft per the county card ← 1,100 sq ft by the county card
`,
  ],
  [
    '1,000 sq ft above and 500 finished below, measured by a firm',
    {
      levels: [MAIN, CELLAR],
      measured: { by: 'Acme Survey', method: 'plans' },
      record: { area: '1,100 sq ft' },
    },
    `
1,000 sq ft
  backed | 1,000 sq ft | size.living-area | the folder says 1,000 sq ft ← 1,000 sq ft finished above grade, 500 sq ft finished below, measured by Acme Survey
1,500 sq ft
  backed | 1,500 sq ft | size.living-area | the folder says 1,000 sq ft ← 1,000 sq ft finished above grade, 500 sq ft finished below, measured by Acme Survey
1,100 sq ft
  contradicted | 1,100 sq ft | size.living-area | the folder says 1,000 sq ft; the figure is the public record’s | 1,000 sq ft ← 1,000 sq ft finished above grade, 500 sq ft finished below, measured by Acme Survey; 1,100 sq ft by the public record
1,300 sq ft
  contradicted | 1,300 sq ft | size.living-area | the folder says 1,000 sq ft | 1,000 sq ft ← 1,000 sq ft finished above grade, 500 sq ft finished below, measured by Acme Survey; 1,100 sq ft by the public record
1,200 sq ft per county
  contradicted | 1,200 sq ft | size.living-area | the record says 1,100 sq ft | 1,100 sq ft per the public record ← 1,100 sq ft by the public record
1,000 sq ft above grade
  backed | 1,000 sq ft | size.living-area | the folder says 1,000 sq ft ← 1,000 sq ft finished above grade, 500 sq ft finished below, measured by Acme Survey
1,500 sq ft above grade
  contradicted | 1,500 sq ft | size.living-area | the folder says 1,000 sq ft | 1,000 sq ft ← 1,000 sq ft finished above grade, 500 sq ft finished below, measured by Acme Survey; 1,100 sq ft by the public record
over 1,400 sq ft
  backed | over 1,400 sq ft | size.living-area | the folder says 1,000 sq ft ← 1,000 sq ft finished above grade, 500 sq ft finished below, measured by Acme Survey
over 1,600 sq ft
  contradicted | over 1,600 sq ft | size.living-area | the folder says 1,000 sq ft | 1,000 sq ft ← 1,000 sq ft finished above grade, 500 sq ft finished below, measured by Acme Survey; 1,100 sq ft by the public record
main level of 1,000 sq ft
  backed | 1,000 sq ft | size.living-area | the folder says 1,000 sq ft ← 1,000 sq ft finished above grade, 500 sq ft finished below, measured by Acme Survey
main level has 700 square feet
  contradicted | 700 square feet | size.living-area | the folder says 1,000 sq ft | 1,000 sq ft ← 1,000 sq ft finished above grade, 500 sq ft finished below, measured by Acme Survey; 1,100 sq ft by the public record
`,
  ],
  [
    'a cellar that is not finished, measured by the owner',
    { levels: [MAIN, { ...CELLAR, finish: 'unfinished' }], measured: { by: 'owner', method: 'plans' } },
    `
1,500 sq ft
  contradicted | 1,500 sq ft | size.living-area | the folder says 1,000 sq ft | 1,000 sq ft ← 1,000 sq ft finished above grade, measured by the owner
1,500 sq ft under roof
  backed | 1,500 sq ft | size.living-area | the folder says 1,000 sq ft ← 1,000 sq ft finished above grade, measured by the owner
2,000 sq ft under roof
  contradicted | 2,000 sq ft | size.living-area | the folder says 1,000 sq ft | 1,000 sq ft ← 1,000 sq ft finished above grade, measured by the owner
7-foot ceiling in the basement
  backed | 7-foot ceiling | size.ceiling | the folder gives that height ← Cellar: 7 ft
  backed | basement | there | the folder tells of it ← Cellar: level below ground, unfinished
500 sq ft brand new freshly painted unfinished basement
  backed | 500 sq ft | size.living-area | the folder says 500 sq ft ← 1,000 sq ft finished above grade, measured by the owner
  no-fact | brand new | newness.new | the folder does not say when or whether that was done
  no-fact | freshly painted | newness.painted | the folder does not say when or whether that was done
  backed | unfinished basement | kind.finished-state | the folder says so ← Cellar: level below ground, unfinished
700 sq ft brand new freshly painted unfinished basement
  contradicted | 700 sq ft | size.living-area | the folder says 500 sq ft | 500 sq ft ← 1,000 sq ft finished above grade, measured by the owner
  no-fact | brand new | newness.new | the folder does not say when or whether that was done
  no-fact | freshly painted | newness.painted | the folder does not say when or whether that was done
  backed | unfinished basement | kind.finished-state | the folder says so ← Cellar: level below ground, unfinished
`,
  ],
  [
    'a kitchen with a ceiling of its own',
    {
      levels: [MAIN],
      rooms: [
        { id: 'kitchen', level: 'main', use: 'kitchen', ceiling: "9'" },
        { id: 'bath', level: 'main', use: 'bath' },
      ],
    },
    `
9-foot ceilings
  backed | 9-foot ceilings | size.ceiling | the folder gives that height ← Main level: 8 ft; Kitchen: 9 ft
9-foot ceilings throughout
  wider | 9-foot ceilings | size.ceiling | so in some, but not in all | Main level: 8 ft; Kitchen: 9 ft ← Main level: 8 ft; Kitchen: 9 ft
8-foot ceiling in the bath
  backed | 8-foot ceiling | size.ceiling | the folder gives that height ← Main level: 8 ft
10-foot ceilings
  contradicted | 10-foot ceilings | size.ceiling | the folder gives other heights | Main level: 8 ft; Kitchen: 9 ft ← Main level: 8 ft; Kitchen: 9 ft
5 x 8 bath
  no-fact | 5 x 8 bath | size.room | the folder does not give that size
bath of 40 sq ft
  no-fact | 40 sq ft | size.room | the folder does not give that size
`,
  ],
];

describe.each(HOUSES)('sizes: %s', (_name, spec, table) => {
  it.each(rowsOf(table))('%s', (draft, told) => {
    expect(findingsOf(spec, draft)).toEqual(told);
  });
});
