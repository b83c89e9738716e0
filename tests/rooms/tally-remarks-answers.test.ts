/** Set phrases that an answer of the folder settles, held against small houses: what is told, and what is left alone. */
import { describe, expect, it } from 'vitest';
import { findingsOf, type House, rowsOf } from './remarks-told.js';

const HOUSES: readonly House[] = [
  [
    'assessments that are planned',
    { answers: [{ ask: 'Are special assessments planned?', answer: 'Yes, $500 in 2027.' }] },
    `
No special assessments.
  contradicted | No special assessments | answer | an answer in the folder says what is so ← Are special assessments planned? Yes, $500 in 2027.
`,
  ],
  [
    'no assessments',
    { answers: [{ ask: 'Are special assessments planned?', answer: 'No.' }] },
    `
No special assessments.
  backed | No special assessments | answer | an answer in the folder says what is so ← Are special assessments planned? No.
`,
  ],
  [
    'assessments not known',
    { answers: [{ ask: 'Are special assessments planned?', answer: 'not known' }] },
    `
No special assessments.
  no-fact | No special assessments | answer | the folder does not know it ← Are special assessments planned? not known
`,
  ],
  [
    'nothing answered',
    {},
    `
There is no flood zone here.
  no-fact | no flood zone | flood-zone | the folder says nothing of it; the federal flood map does
No special assessments.
  no-fact | No special assessments | answer | the folder does not know it
Our dog loved the yard.
Flood zone X.
  no-fact | Flood zone | flood-zone | the folder says nothing of it; the federal flood map does
No open permits.
  no-fact | No open permits | permit | how all permits stand is not known
Termite bond current.
`,
  ],
  [
    'no engineer asked',
    { answers: [{ ask: 'Has an engineer looked at the slab?', answer: 'No engineer was ever asked.' }] },
    `
An engineer approved the slab.
  contradicted | An engineer approved the slab | answer | an answer in the folder says that this was not done ← Has an engineer looked at the slab? No engineer was ever asked.
An engineer approved the roof.
No engineer approved the slab.
  no-fact | slab | not-told | the folder tells of no foundation
`,
  ],
  [
    'a treatment of 2019',
    { answers: [{ ask: 'Was the house treated for termites?', answer: 'Treated in 2019.' }] },
    `
Roof of 2020, termites treated in 2022.
  no-fact | Roof | not-told | the folder tells of no roof
  contradicted | termites treated in 2022 | answer | an answer in the folder gives another year ← Was the house treated for termites? Treated in 2019.
and treated for termites in 2019
  backed | treated for termites in 2019 | answer | an answer in the folder says so ← Was the house treated for termites? Treated in 2019.
Treated for ants in 2022.
Termites were treated.
`,
  ],
  [
    'two dogs',
    { answers: [{ ask: 'Have pets lived here?', answer: 'Two dogs.' }] },
    `
No pets.
  contradicted | No pets | condition.no-pets | an answer in the folder says otherwise ← Have pets lived here? Two dogs.
Our dog loved the yard.
  backed | Our dog | condition.no-pets | an answer in the folder says so ← Have pets lived here? Two dogs.
`,
  ],
  [
    'pets by a plain yes',
    { answers: [{ ask: 'Have pets lived here?', answer: 'Yes, since 2019.' }] },
    `
No pets ever.
  contradicted | No pets ever | condition.no-pets | an answer in the folder says otherwise ← Have pets lived here? Yes, since 2019.
Our dog loved it.
  backed | Our dog | condition.no-pets | an answer in the folder says so ← Have pets lived here? Yes, since 2019.
`,
  ],
  [
    'no pets',
    { answers: [{ ask: 'Have pets lived here?', answer: 'No; before 2019 not known.' }] },
    `
No pets ever.
  no-fact | No pets ever | condition.no-pets | the folder knows it of the last years only ← Have pets lived here? No; before 2019 not known.
Our dog loved it.
  contradicted | Our dog | condition.no-pets | an answer in the folder says that there were none ← Have pets lived here? No; before 2019 not known.
`,
  ],
  [
    'no gas',
    { answers: [{ ask: 'Is there gas?', answer: 'No.' }] },
    `
Utilities: public water and gas.
  contradicted | gas | answer | an answer in the folder says that there is no gas ← Is there gas? No.
Heated by gas.
  contradicted | gas | answer | an answer in the folder says that there is no gas ← Is there gas? No.
Propane.
  contradicted | Propane | answer | an answer in the folder says that there is no gas ← Is there gas? No.
Fuel: no gas.
Free of gas heat.
  no-fact | heat | not-there | the folder tells of none, and does not say that there is none
`,
  ],
  [
    'a chimney that was not swept',
    { answers: [{ ask: 'Has the chimney been swept?', answer: 'No.' }] },
    `
Chimney swept last winter.
  no-fact | Chimney | not-told | the folder tells of no chimney
  contradicted | swept | answer | an answer in the folder says that this was not done ← Has the chimney been swept? No.
Chimney inspected.
  no-fact | Chimney | not-told | the folder tells of no chimney
Chimney never swept.
  no-fact | Chimney | not-told | the folder tells of no chimney
Flue swept, chimney new.
  no-fact | Flue | not-told | the folder tells of no chimney
  contradicted | swept | answer | an answer in the folder says that this was not done ← Has the chimney been swept? No.
  no-fact | chimney | not-told | the folder tells of no chimney
Furnace cleaned.
  no-fact | Furnace | not-told | the folder tells of no furnace
`,
  ],
  [
    'a chimney that nobody looked at',
    { answers: [{ ask: 'Has anyone looked at the chimney?', answer: 'No, never.' }] },
    `
Chimney inspected in 2024.
  no-fact | Chimney | not-told | the folder tells of no chimney
  contradicted | inspected | answer | an answer in the folder says that this was not done ← Has anyone looked at the chimney? No, never.
New roof, chimney inspected
  no-fact | New roof | not-told | the folder tells of no roof
  no-fact | chimney | not-told | the folder tells of no chimney
  contradicted | inspected | answer | an answer in the folder says that this was not done ← Has anyone looked at the chimney? No, never.
`,
  ],
  [
    'zone X',
    {
      answers: [
        { ask: 'Is it in a flood zone?', answer: 'Zone X.' },
        { ask: 'Is flood insurance required?', answer: 'not known' },
      ],
    },
    `
Flood zone AE.
  contradicted | Flood zone AE | answer | an answer in the folder says what is so ← Is it in a flood zone? Zone X.
Flood zone X.
  backed | Flood zone X | answer | an answer in the folder says so ← Is it in a flood zone? Zone X.
flood zone: zone a
  no-fact | flood zone | flood-zone | the folder says nothing of it; the federal flood map does
Not in a flood zone.
  backed | Not in a flood zone | answer | an answer in the folder says so ← Is it in a flood zone? Zone X.
`,
  ],
  [
    'a flood zone, and insurance that nobody asks for',
    {
      answers: [
        { ask: 'Is it in a flood zone?', answer: 'Yes.' },
        { ask: 'Is flood insurance required?', answer: 'No one requires it.' },
      ],
    },
    `
Flood zone X.
  contradicted | Flood zone X | answer | an answer in the folder says what is so ← Is it in a flood zone? Yes.
Flood zone AE.
  backed | Flood zone AE | answer | an answer in the folder says so ← Is it in a flood zone? Yes.
Not in a flood zone.
  contradicted | Not in a flood zone | answer | an answer in the folder says what is so ← Is it in a flood zone? Yes.
No flood insurance required.
  backed | No flood insurance required | answer | an answer in the folder says so ← Is flood insurance required? No one requires it.
`,
  ],
  [
    'no flood zone, and insurance that the lender asks for',
    {
      answers: [
        { ask: 'Is it in a flood zone?', answer: 'No.' },
        { ask: 'Is flood insurance required?', answer: 'The lender asks for it.' },
      ],
    },
    `
Flood zone X.
  backed | Flood zone X | answer | an answer in the folder says so ← Is it in a flood zone? No.
Flood zone AE.
  contradicted | Flood zone AE | answer | an answer in the folder says what is so ← Is it in a flood zone? No.
Outside the flood zone.
  backed | Outside the flood zone | answer | an answer in the folder says so ← Is it in a flood zone? No.
No flood insurance required.
  contradicted | No flood insurance required | answer | an answer in the folder says what is so ← Is flood insurance required? The lender asks for it.
`,
  ],
  [
    'flood answers that leave it open',
    {
      answers: [
        { ask: 'Is it in a flood zone?', answer: 'Ask the county.' },
        { ask: 'Is flood insurance required?', answer: 'Ask your agent.' },
      ],
    },
    `
Flood zone X.
  no-fact | Flood zone | flood-zone | the folder says nothing of it; the federal flood map does
No flood insurance required.
  no-fact | No flood | condition.dry | the folder says nothing of it
`,
  ],
  [
    'a bond that ran out',
    { answers: [{ ask: 'Is there a termite bond?', answer: 'The bond ran out in 2024.' }] },
    `
Termite bond current.
  contradicted | bond current | answer | the folder says: Is there a termite bond? The bond ran out in 2024. ← Is there a termite bond? The bond ran out in 2024.
Current termite bond.
  contradicted | Current termite bond | answer | the folder says: Is there a termite bond? The bond ran out in 2024. ← Is there a termite bond? The bond ran out in 2024.
Termite bond is not current
The bond is still not valid
The policy is current.
No current termite bond.
`,
  ],
  [
    'a bond that runs',
    { answers: [{ ask: 'Is there a termite bond?', answer: 'Yes.' }] },
    `
Termite bond current.
`,
  ],
];

describe.each(HOUSES)('answers: %s', (_name, spec, table) => {
  it.each(rowsOf(table))('%s', (draft, told) => {
    expect(findingsOf(spec, draft)).toEqual(told);
  });
});
