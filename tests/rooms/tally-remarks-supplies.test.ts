/** Supplies, laundry, levels that are served, and what is known and not mended, held against small houses. */
import { describe, expect, it } from 'vitest';
import { findingsOf, type House, rowsOf } from './remarks-told.js';

const MAIN = { id: 'main', name: 'Main level', grade: 'above', size: "40' x 25'", ceiling: "8'" } as const;
const UPPER = { id: 'upper', name: 'Upper level', grade: 'above', size: "40' x 25'" } as const;
const CELLAR = { id: 'cellar', name: 'Cellar', grade: 'below', size: "20' x 25'", ceiling: "7'" } as const;

const HOUSES: readonly House[] = [
  [
    'cars on the street only',
    { house: { parking: 'on the street only' } },
    `
Off-street parking.
  contradicted | Off-street parking | other-kind | the folder says that cars are parked on the street | street parking ← parking: on the street only
No off-street parking.
`,
  ],
  [
    'two sheds without power, and a sunroom without heat',
    {
      levels: [MAIN],
      structures: [
        { id: 'shed', is: 'shed', name: 'Tool shed', note: 'no power' },
        { id: 'old', is: 'shed', name: 'Old shed', note: 'no power' },
      ],
      rooms: [{ id: 'sunroom', name: 'Sunroom', level: 'main', use: 'sunroom', heated: 'no' }],
    },
    `
Shed with power.
  contradicted | Shed with power | supply | the folder says that it has none ← Tool shed: no power
A powered shed.
  contradicted | powered shed | supply | the folder says that it has none ← Tool shed: no power
Shed with no power.
  backed | Shed | there | the folder tells of it ← Tool shed: shed, attached; Old shed: shed, attached
Shed could have power.
  backed | Shed | there | the folder tells of it ← Tool shed: shed, attached; Old shed: shed, attached
Heated sunroom.
  contradicted | Heated sunroom | supply | the folder says that it has none ← Sunroom: not heated
Powered sunroom.
  no-fact | sunroom | not-told | the folder tells of no sunroom
Sunroom with heat and power
  contradicted | Sunroom with heat | supply | the folder says that it has none ← Sunroom: not heated
Workshop with power.
  contradicted | Workshop with power | supply | the folder says that it has none ← Tool shed: no power
Bright shop, powered
Heated porch.
  no-fact | porch | not-told | the folder tells of no porch
`,
  ],
  [
    'washer and dryer in a shed',
    {
      levels: [MAIN],
      structures: [{ id: 'shed', is: 'shed', name: 'Tool shed' }],
      systems: [
        { id: 'w', is: 'washer', name: 'Washer', where: 'shed' },
        { id: 'd', is: 'dryer', name: 'Dryer', where: 'shed' },
      ],
    },
    `
Indoor laundry.
  contradicted | Indoor laundry | place | the folder says that it is not in the house ← Washer: in the tool shed; Dryer: in the tool shed
No indoor laundry.
  no-fact | indoor laundry | not-there | the folder tells of none, and does not say that there is none
Laundry off the kitchen
  contradicted | Laundry off the kitchen | place | the folder says that it is not in the house ← Washer: in the tool shed; Dryer: in the tool shed
`,
  ],
  [
    'a washer in a shed and a dryer in the kitchen',
    {
      levels: [MAIN],
      rooms: [{ id: 'kitchen', level: 'main', use: 'kitchen' }],
      structures: [{ id: 'shed', is: 'shed', name: 'Tool shed' }],
      systems: [
        { id: 'w', is: 'washer', name: 'Washer', where: 'shed' },
        { id: 'd', is: 'dryer', name: 'Dryer', where: 'kitchen' },
      ],
    },
    `
Indoor laundry.
`,
  ],
  [
    'a bench that goes',
    { conveys: [{ what: 'bench', stays: 'no' }] },
    `
Everything stays.
  contradicted | Everything stays | conveys.goes | the folder lists what goes ← bench: goes
Everything conveys, minus the bench.
  backed | minus the bench | conveys.goes | the folder says that it goes ← bench: goes
Everything stays except the bench.
  backed | except the bench | conveys.goes | the folder says that it goes ← bench: goes
No exclusions.
  contradicted | No exclusions | conveys.goes | the folder lists what goes ← bench: goes
Exclusions: none
  contradicted | Exclusions: none | conveys.goes | the folder lists what goes ← bench: goes
`,
  ],
  [
    'a bench that stays',
    { conveys: [{ what: 'bench', stays: 'yes' }] },
    `
No exclusions.
`,
  ],
  [
    'an attached house',
    { house: { kind: 'attached' } },
    `
Detached home.
  contradicted | Detached | house.kind | the folder says attached house ← kind: attached
Mobile home.
  contradicted | Mobile home | house.kind | the folder says attached house ← kind: attached
A townhouse.
`,
  ],
  [
    'an apartment',
    { house: { kind: 'apartment-style' } },
    `
Detached home.
  contradicted | Detached | house.kind | the folder says apartment ← kind: apartment-style
`,
  ],
  [
    'a manufactured home',
    { house: { kind: 'manufactured' } },
    `
Mobile home.
`,
  ],
  [
    'a heat pump for the main level',
    {
      levels: [MAIN, UPPER],
      systems: [{ id: 'hp', is: 'heat pump', name: 'Heat pump', serves: 'main level' }],
    },
    `
Heat pump serves all levels.
  backed | Heat pump | kind.heating-kind | the folder says so ← Heat pump
  wider | Heat pump | all.levels | the folder tells of none on upper level ← Heat pump
Whole-house heat pump
  backed | heat pump | kind.heating-kind | the folder says so ← Heat pump
  wider | heat pump | all.levels | the folder tells of none on upper level ← Heat pump
`,
  ],
  [
    'a heat pump for the main level and the entire rest',
    {
      levels: [MAIN, UPPER],
      systems: [{ id: 'hp', is: 'heat pump', name: 'Heat pump', serves: 'main level and the entire rest' }],
    },
    `
Heat pump serves all levels.
  backed | Heat pump | kind.heating-kind | the folder says so ← Heat pump
`,
  ],
  [
    'two heat pumps, of which one serves nobody knows what',
    {
      levels: [MAIN, UPPER],
      systems: [
        { id: 'hp', is: 'heat pump', name: 'Heat pump', serves: 'main level' },
        { id: 'hp2', is: 'heat pump', name: 'Second heat pump' },
      ],
    },
    `
Heat pump serves all levels.
  backed | Heat pump | kind.heating-kind | the folder says so ← Heat pump; Second heat pump: heat pump
`,
  ],
  [
    'a level with a bracket in its name',
    {
      levels: [{ ...MAIN, name: '(main level' }, UPPER],
      systems: [{ id: 'hp', is: 'heat pump', name: 'Heat pump', serves: 'upper level' }],
    },
    `
Heat pump serves all levels.
  backed | Heat pump | kind.heating-kind | the folder says so ← Heat pump
  wider | Heat pump | all.levels | the folder tells of none on (main level ← Heat pump
`,
  ],
  [
    'outlets of two prongs in a bedroom',
    {
      levels: [MAIN],
      rooms: [
        { id: 'kitchen', level: 'main', use: 'kitchen' },
        { id: 'b1', name: 'North bedroom', level: 'main', use: 'bedroom' },
      ],
      conditions: [{ what: 'two-prong outlets', where: 'b1' }],
    },
    `
Grounded outlets throughout.
  contradicted | Grounded outlets | condition.grounded | the folder lists what speaks against it ← known and not mended: two-prong outlets
No grounded outlets.
Grounded outlets in the kitchen.
  no-fact | Grounded outlets | condition.grounded | the folder says nothing of it
Grounded outlets in the bedrooms.
  contradicted | Grounded outlets | condition.grounded | the folder lists what speaks against it ← known and not mended: two-prong outlets
New outlets.
  contradicted | New outlets | condition.grounded | the folder lists what speaks against it ← known and not mended: two-prong outlets
New outlets in the kitchen.
  no-fact | New outlets | not-told | the folder tells of no receptacles there
Without new outlets.
  no-fact | outlets | not-there | the folder tells of none, and does not say that there is none
`,
  ],
  [
    'nothing wrong with the outlets',
    {},
    `
Grounded outlets.
  no-fact | Grounded outlets | condition.grounded | the folder says nothing of it
`,
  ],
  [
    'a damper and a crack, known and not mended',
    {
      levels: [MAIN, CELLAR],
      rooms: [
        { id: 'mech', name: 'Mechanical room', level: 'cellar', use: 'mechanical' },
        { id: 'den', level: 'main', use: 'other' },
        { id: 'kitchen', level: 'main', use: 'kitchen' },
      ],
      conditions: [
        { what: 'damper does not close fully', where: 'mech' },
        { what: 'crack in the hearth', where: 'den' },
        { what: '!!' },
      ],
    },
    `
Damper closes fully.
  contradicted | Damper closes | condition.listed | the folder lists it as known and not mended ← known and not mended: damper does not close fully
Damper in the kitchen closes fully.
Damper upstairs closes fully.
The mechanical room damper closes.
  contradicted | damper closes | condition.listed | the folder lists it as known and not mended ← known and not mended: damper does not close fully
The mechanical room damper is dry.
  contradicted | mechanical room damper is dry | condition.dry | the folder lists what speaks against it ← known and not mended: damper does not close fully
The crack in the hearth was repaired.
  contradicted | crack in the hearth was repaired | condition.listed | the folder lists it as known and not mended ← known and not mended: crack in the hearth
`,
  ],
];

describe.each(HOUSES)('supplies and conditions: %s', (_name, spec, table) => {
  it.each(rowsOf(table))('%s', (draft, told) => {
    expect(findingsOf(spec, draft)).toEqual(told);
  });
});
