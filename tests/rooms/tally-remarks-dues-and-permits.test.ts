/** Dues, people, permits and what stays, held against small houses. */
import { describe, expect, it } from 'vitest';
import { findingsOf, type House, rowsOf } from './remarks-told.js';

const HOUSES: readonly House[] = [
  [
    'dues of nobody',
    {},
    `
HOA dues of $50 a month.
  no-fact | $50 | dues | the folder lists no dues
No HOA.
  no-fact | HOA | dues | the folder lists no dues, and does not say that there are none
Short-term rentals welcome.
  no-fact | Short-term rentals | lets | the folder says nothing of letting
`,
  ],
  [
    'dues of half a year',
    { dues: [{ to: 'Owners', amount: '600.00', per: 'half-year' }] },
    `
HOA dues of $1,200 a year.
  backed | $1,200 | dues | the folder lists that sum ← Owners: $600.00 a half-year
HOA dues $100 a month
  backed | HOA dues $100 | dues | the folder lists that sum ← Owners: $600.00 a half-year
HOA dues $600 a year
  contradicted | HOA dues $600 | dues | the folder lists another sum | Owners: $600.00 a half-year ← Owners: $600.00 a half-year
No HOA.
  contradicted | HOA | dues | the folder lists dues | Owners: $600.00 a half-year ← Owners: $600.00 a half-year
`,
  ],
  [
    'dues asked once',
    { dues: [{ to: 'Owners', amount: '600.00', per: 'once' }] },
    `
HOA fee of $600.
  backed | $600 | dues | the folder lists that sum ← Owners: $600.00 once
HOA dues $600 a year
  contradicted | HOA dues $600 | dues | the folder lists another sum | Owners: $600.00 once ← Owners: $600.00 once
`,
  ],
  [
    'an answer that there is no association',
    { answers: [{ ask: 'Is there an HOA?', answer: 'No.' }] },
    `
No HOA.
  backed | HOA | dues | an answer in the folder says so ← No.
HOA dues of $50 a month.
  contradicted | $50 | dues | the folder says that there is no association | no association dues ← No.
`,
  ],
  [
    'letting allowed',
    { answers: [{ ask: 'May it be rented?', answer: 'Yes, by the night as well.' }] },
    `
Short-term rentals welcome.
  backed | Short-term rentals | lets | an answer in the folder allows it ← Yes, by the night as well.
`,
  ],
  [
    'letting not known',
    { answers: [{ ask: 'May it be rented?', answer: 'not known' }] },
    `
Short-term rentals welcome.
  no-fact | Short-term rentals | lets | the folder says nothing of letting
`,
  ],
  [
    'people without a trade or a licence',
    {
      people: [
        { id: 'a', name: 'Acme Roofing' },
        { id: 'b', name: 'Bright Electric', trade: 'electrician', licence: 'E-1' },
        { id: 'c', name: 'Carl' },
      ],
      systems: [{ id: 'roof', is: 'roof, shingle', name: 'Roof', installed: '2020', by: 'c' }],
    },
    `
licensed roofer
  no-fact | licensed roofer | who.licensed | the folder does not state a licence ← hired: licence not stated
Licensed electrician.
  backed | Licensed electrician | who.licensed | the folder names one ← electrician: licence stated
a roofer came
  backed | roofer | who.professional | the folder names one ← hired: licence not stated
The roof was done by the owner.
  contradicted | roof was done by the owner | who.owner | the folder says done by someone hired, licence not stated ← Roof: done by someone hired, licence not stated
`,
  ],
  [
    'permits of which one is not known',
    {
      permits: [
        { id: 'p1', what: 'kitchen wiring', state: 'final' },
        { id: 'p2', what: 'kitchen plumbing', state: 'not-known' },
      ],
      work: [
        { id: 'w1', what: 'wiring, kitchen', did: 'new', permit: 'p1' },
        { id: 'w2', what: 'plumbing, kitchen', did: 'new', permit: 'p2' },
      ],
    },
    `
The kitchen wiring was done with a permit.
  backed | wiring was done with a permit | permit | its permit is closed ← permit, kitchen wiring: closed
kitchen permitted
  backed | kitchen permitted | permit | its permit is closed ← permit, kitchen plumbing: whether there is a permit is not known; permit, kitchen wiring: closed
All work done with permits.
  wider | All work done with permits | permit | not all of the work names a permit ← permit, kitchen plumbing: whether there is a permit is not known; permit, kitchen wiring: closed
`,
  ],
  [
    'work of which some names no permit',
    {
      permits: [{ id: 'p1', what: 'kitchen wiring', state: 'final' }],
      work: [
        { id: 'w1', what: 'wiring, kitchen', did: 'new', permit: 'p1' },
        { id: 'w2', what: 'deck boards', did: 'new' },
      ],
    },
    `
All work done with permits.
  wider | All work done with permits | permit | not all of the work names a permit ← permit, kitchen wiring: closed; deck boards: new, when is not known
Everything permitted
  wider | permitted | permit | not all of the work names a permit ← permit, kitchen wiring: closed; deck boards: new, when is not known
`,
  ],
  [
    'what stays and what goes',
    {
      conveys: [
        { what: 'potted citrus', stays: 'yes' },
        { what: 'swing set', stays: 'no' },
        { what: 'sauna', stays: 'not known' },
      ],
      systems: [
        { id: 'w', is: 'washer', name: 'Washer', conveys: 'yes' },
        { id: 'f', is: 'refrigerator', name: 'Refrigerator', conveys: 'no' },
      ],
    },
    `
What stays: washer, potted citrus, swing set.
  backed | washer | conveys.stays | the folder says that it stays ← Washer: stays
  backed | potted | conveys.stays | the folder says that it stays ← potted citrus: stays
  contradicted | swing set | conveys.stays | the folder says that it goes ← swing set: goes
What does not stay: potted citrus, swing set.
  contradicted | potted | conveys.goes | the folder says that it stays ← potted citrus: stays
  backed | swing set | conveys.goes | the folder says that it goes ← swing set: goes
Not included: potted citrus, washer, refrigerator.
  contradicted | potted | conveys.goes | the folder says that it stays ← potted citrus: stays
  contradicted | washer | conveys.goes | the folder says that it stays ← Washer: stays
  backed | refrigerator | conveys.goes | the folder says that it goes ← Refrigerator: goes
Does not include the washer and the refrigerator.
  contradicted | washer | conveys.goes | the folder says that it stays ← Washer: stays
  backed | refrigerator | conveys.goes | the folder says that it goes ← Refrigerator: goes
Sellers are leaving the citrus and the washer.
  backed | Sellers are leaving the citrus and the washer | conveys.stays | the folder says that it stays ← potted citrus: stays
The citrus does not stay.
  contradicted | The citrus does not stay | conveys.goes | the folder says that it stays ← potted citrus: stays
The citrus could stay.
  contradicted | The citrus could stay | conveys.open | the folder has settled it ← potted citrus: stays
The sauna stays.
  no-fact | sauna stays | conveys.stays | whether it stays is not settled ← sauna: not settled
Everything but the citrus stays
  backed | Everything but the citrus stays | conveys.stays | the folder says that it stays ← potted citrus: stays
Negotiable: swing set
  contradicted | swing set | conveys.open | the folder has settled it ← swing set: goes
The citrus stays, and sellers could include the washer.
  backed | The citrus stays | conveys.stays | the folder says that it stays ← potted citrus: stays
  opinion | could include the washer | aside | it offers or imagines, and claims nothing
`,
  ],
];

describe.each(HOUSES)('dues, people and permits: %s', (_name, spec, table) => {
  it.each(rowsOf(table))('%s', (draft, told) => {
    expect(findingsOf(spec, draft)).toEqual(told);
  });
});
