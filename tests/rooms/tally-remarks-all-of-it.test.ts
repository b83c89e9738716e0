/** Everything at once, and who did all the work, held against small houses. */
import { describe, expect, it } from 'vitest';
import { findingsOf, type House, rowsOf } from './remarks-told.js';

const MAIN = { id: 'main', name: 'Main level', grade: 'above', size: "40' x 25'", ceiling: "8'" } as const;

const HOUSES: readonly House[] = [
  [
    'a kitchen with a new counter and an old floor, and a new bath',
    {
      levels: [MAIN],
      rooms: [
        {
          id: 'kitchen',
          level: 'main',
          use: 'kitchen',
          finishes: [
            { on: 'floor', what: 'oak boards', kept: true },
            { on: 'counter', what: 'quartz', did: 'new', done: '2025' },
          ],
        },
        {
          id: 'bath',
          level: 'main',
          use: 'bath',
          finishes: [{ on: 'floor', what: 'tile', did: 'new', done: '2025' }],
        },
      ],
    },
    `
New everything in the kitchen.
  wider | New | newness.new | so of one, but not of all ← floor of the kitchen: oak boards; left as found; counter of the kitchen: quartz; new 2025
New everything in the bath.
  backed | New | newness.new | it was put in new ← floor of the bath: tile; new 2025
Everything is new.
  wider | new | newness.new | so of some, but not of all ← floor of the kitchen: oak boards; left as found; counter of the kitchen: quartz; new 2025; floor of the bath: tile; new 2025
Nothing original remains.
  contradicted | original | newness.original | the folder tells of what was left as found ← floor of the kitchen: oak boards; left as found
`,
  ],
  [
    'all of it new',
    {
      levels: [MAIN],
      rooms: [
        {
          id: 'kitchen',
          level: 'main',
          use: 'kitchen',
          finishes: [{ on: 'floor', what: 'vinyl', did: 'new', done: '2025' }],
        },
      ],
    },
    `
Nothing original remains.
  no-fact | original | newness.original | the folder does not say what was left
Completely renovated in 2025.
  backed | renovated in 2025 | newness.updated | work was done on it ← floor of the kitchen: vinyl; new 2025
Completely renovated in 2020.
  contradicted | renovated in 2020 | date.year | the folder says 2025 ← floor of the kitchen: vinyl; new 2025
`,
  ],
  [
    'nobody who did anything',
    {},
    `
Licensed and insured crews.
  no-fact | Licensed and insured | who.licensed | the folder does not say who did it
Measured by the owner.
Renovated by a licensed contractor.
  no-fact | Renovated | newness.updated | the folder does not say when or whether that was done
  no-fact | licensed contractor | who.licensed | the folder does not say who did it
Handled by a certified firm.
  no-fact | certified firm | who.licensed | the folder does not state a licence
All electric.
  no-fact | All electric | kind.fuel | the folder does not say what anything runs on
`,
  ],
  [
    'a deck by somebody licensed, a fence and a gate by the owner',
    {
      people: [{ id: 'a', name: 'Acme', licence: 'L-1' }],
      work: [
        { id: 'w1', what: 'deck', did: 'new', by: 'a' },
        { id: 'w2', what: 'fence', did: 'new', by: 'owner' },
        { id: 'w3', what: 'gate', did: 'new', by: 'owner' },
      ],
      measured: { by: 'Acme Survey', method: 'plans' },
      systems: [{ id: 'r', is: 'range', fuel: 'electric' }],
    },
    `
Licensed and insured crews.
  contradicted | Licensed and insured | who.licensed | so of some, but not of all ← fence: done by the owner; gate: done by the owner; deck: done by someone hired, licensed by their own word
Measured by the owner.
  contradicted | by the owner | who.measured | the folder says that someone hired measured it ← measured by Acme Survey
Measured by professionals.
  backed | by professionals | who.measured | the folder says that someone hired measured it ← measured by Acme Survey
Renovated by a licensed contractor.
  backed | Renovated | newness.updated | work was done on it ← deck: new, when is not known; fence: new, when is not known; gate: new, when is not known
  wider | licensed contractor | who.licensed | so of some, but not of all ← fence: done by the owner; gate: done by the owner; deck: done by someone hired, licensed by their own word
Handled by a certified firm.
  backed | certified firm | who.licensed | the folder names somebody with a stated licence ← hired: licence stated
A fence was put up, done by a contractor
  backed | fence | there | the folder tells of it ← fence: new, when is not known
  contradicted | by a contractor | who.professional | the folder says done by the owner ← fence: done by the owner
A fence. The gate, and all that was done by a contractor
  backed | fence | there | the folder tells of it ← fence: new, when is not known
  contradicted | by a contractor | who.professional | so of some, but not of all ← fence: done by the owner; gate: done by the owner; deck: done by someone hired, licensed by their own word
The fence, which stands along the whole of the road and the lane, done by a contractor
  backed | fence | there | the folder tells of it ← fence: new, when is not known
All electric.
  backed | All electric | kind.fuel | what the folder tells of is electric ← range
`,
  ],
  [
    'all by somebody licensed, measured by the owner',
    {
      people: [{ id: 'a', name: 'Acme', licence: 'L-1' }],
      work: [{ id: 'w1', what: 'deck', did: 'new', by: 'a' }],
      measured: { by: 'owner', method: 'plans' },
    },
    `
Renovated by a licensed contractor.
  backed | Renovated | newness.updated | work was done on it ← deck: new, when is not known
  backed | licensed contractor | who.licensed | the folder names who did it ← deck: done by someone hired, licensed by their own word
Measured by the owner.
  backed | by the owner | who.measured | the folder says that the owner measured it ← measured by the owner
`,
  ],
  [
    'floors by a tiler and by the owner',
    {
      levels: [MAIN],
      people: [{ id: 'a', name: 'Acme', trade: 'tiler' }],
      rooms: [
        {
          id: 'bath',
          level: 'main',
          use: 'bath',
          finishes: [{ on: 'floor', what: 'tile', did: 'new', by: 'a' }],
        },
        {
          id: 'kitchen',
          level: 'main',
          use: 'kitchen',
          finishes: [
            { on: 'floor', what: 'slate', did: 'new', by: 'owner' },
            { on: 'counter', what: 'quartz', did: 'new', by: 'owner' },
          ],
        },
      ],
    },
    `
The bathroom got a slate floor, laid by a tile contractor.
  no-fact | slate floor | kind.floor-covering | the folder does not say “slate” of it
  backed | laid | newness.replaced | it was put in ← floor of the bath: tile; new, when is not known
  backed | tile contractor | who.professional | the folder names who did it ← floor of the bath: done by a hired tiler, licence not stated
The kitchen got a floor, laid by the owner.
  backed | laid | newness.replaced | it was put in ← floor of the kitchen: slate; new, when is not known
  backed | by the owner | who.owner | the folder names who did it ← floor of the kitchen: done by the owner
The kitchen got a marble floor, laid by the owner.
  contradicted | marble floor | kind.floor-covering | the folder says otherwise than “marble” ← floor of the kitchen: slate; new, when is not known
  backed | laid | newness.replaced | it was put in ← floor of the kitchen: slate; new, when is not known
  backed | by the owner | who.owner | the folder names who did it ← floor of the kitchen: done by the owner
Tile floor, laid by a contractor
  backed | Tile floor | kind.floor-covering | the folder says so ← floor of the bath: tile; new, when is not known; floor of the kitchen: slate; new, when is not known
  backed | laid | newness.replaced | it was put in ← floor of the bath: tile; new, when is not known; floor of the kitchen: slate; new, when is not known
  backed | by a contractor | who.professional | the folder names who did it ← floor of the bath: done by a hired tiler, licence not stated
`,
  ],
  [
    'a roof of the carport by a hired firm',
    {
      people: [{ id: 'a', name: 'Acme', trade: 'roofing company' }],
      structures: [
        {
          id: 'carport',
          is: 'carport',
          name: 'Carport',
          finishes: [{ on: 'other', what: 'metal roof', did: 'new', by: 'a' }],
        },
      ],
    },
    `
The carport got a metal roof, done by a roofing company.
  backed | carport | there | the folder tells of it ← Carport: attached
  backed | metal roof | kind.roof-covering | the folder says so ← metal roof of the carport: new, when is not known
  backed | roofing company | who.professional | the folder names who did it ← metal roof of the carport: done by a hired roofing company, licence not stated
The carport got a slate roof, done by a roofing company.
  backed | carport | there | the folder tells of it ← Carport: attached
  contradicted | slate roof | kind.roof-covering | the folder says otherwise than “slate” ← metal roof of the carport: new, when is not known
  backed | roofing company | who.professional | the folder names who did it ← metal roof of the carport: done by a hired roofing company, licence not stated
The carport got a metal roof, done by the owner.
  backed | carport | there | the folder tells of it ← Carport: attached
  backed | metal roof | kind.roof-covering | the folder says so ← metal roof of the carport: new, when is not known
  contradicted | by the owner | who.owner | the folder says done by a hired roofing company, licence not stated ← metal roof of the carport: done by a hired roofing company, licence not stated
`,
  ],
  [
    'a roof of the carport by nobody knows whom',
    {
      people: [{ id: 'a', name: 'Acme', trade: 'roofing company' }],
      structures: [
        {
          id: 'carport',
          is: 'carport',
          name: 'Carport',
          finishes: [{ on: 'other', what: 'metal roof', did: 'new' }],
        },
      ],
    },
    `
The carport got a metal roof, done by a roofing company.
  backed | carport | there | the folder tells of it ← Carport: attached
  backed | metal roof | kind.roof-covering | the folder says so ← metal roof of the carport: new, when is not known
  backed | roofing company | who.professional | the folder names one ← roofing company: licence not stated
The carport got a metal roof, done by the owner.
  backed | carport | there | the folder tells of it ← Carport: attached
  backed | metal roof | kind.roof-covering | the folder says so ← metal roof of the carport: new, when is not known
  no-fact | by the owner | who.owner | the folder does not say who did it
`,
  ],
];

describe.each(HOUSES)('all of it: %s', (_name, spec, table) => {
  it.each(rowsOf(table))('%s', (draft, told) => {
    expect(findingsOf(spec, draft)).toEqual(told);
  });
});
