/** Set phrases of owners, permits and of the only one, held against small houses. */
import { describe, expect, it } from 'vitest';
import { findingsOf, type House, rowsOf } from './remarks-told.js';

const MAIN = { id: 'main', name: 'Main level', grade: 'above', size: "40' x 25'", ceiling: "8'" } as const;

const HOUSES: readonly House[] = [
  [
    'bought in May 2006, offered in June 2026',
    { house: { bought: '2006-05', listed: '2026-06' } },
    `
First time on the market in 20 years.
  backed | First time on the market in 20 years | owners.since | the folder says so ← bought May 2006
First time on the market in two decades.
  backed | First time on the market in two decades | owners.since | the folder says so ← bought May 2006
First time on the market in 40 years.
  contradicted | First time on the market in 40 years | owners.since | the folder says bought May 2006 ← bought May 2006
First time on the market in two generations.
Sellers bought it in 2006.
  backed | bought it in 2006 | owners.since | the folder says so ← bought May 2006
Sellers bought it in 2009.
  contradicted | bought it in 2009 | owners.since | the folder says bought May 2006 ← bought May 2006
The range was purchased in 2012.
  no-fact | range | not-told | the folder tells of no range
`,
  ],
  [
    'bought a year after it was built',
    { house: { bought: '1949' } },
    `
One-owner home.
  no-fact | One-owner home | owners.first | it was bought soon after it was built; the folder does not say that nobody came between ← bought 1949; built 1948
`,
  ],
  [
    'not known when it was bought',
    {},
    `
One-owner home.
  no-fact | One-owner home | owners.first | the folder does not say who owned it before
Sellers bought it in 2006.
First time on the market in 20 years.
`,
  ],
  [
    'bought in 2006 or before',
    { house: { bought: '../2006' } },
    `
Sellers bought it in 2004.
  backed | bought it in 2004 | owners.since | the folder says so ← bought 2006 or before
Sellers bought it in 2008.
  contradicted | bought it in 2008 | owners.since | the folder says bought 2006 or before ← bought 2006 or before
One-owner home.
  no-fact | One-owner home | owners.first | the folder does not say who owned it before ← bought 2006 or before
First time on the market in 20 years.
`,
  ],
  [
    'bought in 2006 or after, and not known when it was built',
    { house: { bought: '2006/..', built: 'not known' } },
    `
Sellers bought it in 2004.
  contradicted | bought it in 2004 | owners.since | the folder says bought 2006 or after ← bought 2006 or after
Sellers bought it in 2008.
  backed | bought it in 2008 | owners.since | the folder says so ← bought 2006 or after
One-owner home.
  no-fact | One-owner home | owners.first | the folder does not say who owned it before ← bought 2006 or after
`,
  ],
  [
    'a closed permit',
    { permits: [{ id: 'p', what: 'deck', state: 'final' }] },
    `
No open permits.
  backed | No open permits | permit | the permits that the folder lists are closed ← permit, deck: closed
No unpermitted work.
  backed | No unpermitted work | permit | the permits that the folder lists are closed ← permit, deck: closed
All permits closed.
  backed | All permits closed | permit | the permits that the folder lists are closed ← permit, deck: closed
Open permits? None
  backed | Open permits? None | permit | the permits that the folder lists are closed ← permit, deck: closed
`,
  ],
  [
    'a permit of which nobody knows',
    { permits: [{ id: 'p', what: 'deck', state: 'not-known' }] },
    `
No open permits.
  no-fact | No open permits | permit | how all permits stand is not known
`,
  ],
  [
    'work that the office has no permit for',
    { permits: [{ id: 'p', what: 'deck', state: 'none-found' }] },
    `
No unpermitted work.
  contradicted | No unpermitted work | permit | the folder lists a permit that is not closed, or work without one ← permit, deck: the office found no permit
`,
  ],
  [
    'an open permit of a deck, and an electrician of the panel',
    {
      people: [{ id: 'e', name: 'E', trade: 'electrician' }],
      permits: [
        { id: 'p', what: 'deck', state: 'open' },
        { id: 'p2', what: 'fence', state: 'final' },
      ],
      systems: [{ id: 'panel', is: 'panel', name: 'Panel', did: 'new', by: 'e' }],
    },
    `
The electrician only did the panel.
  backed | electrician | who.professional | the folder names one ← electrician: licence not stated
The electrician only did the lights.
  contradicted | The electrician only did the lights | who.only | the folder names the same trade for other things too ← Panel: new, when is not known
The plumber only did the sink.
Someone only did the sink.
Only the fence lacks a permit.
  contradicted | Only the fence lacks a permit | permit | the folder lists another permit that is not closed, or other work without one ← permit, deck: the permit is still open
Only the deck lacks a permit.
  contradicted | deck lacks a permit | permit | the folder says: the permit is still open ← permit, deck: the permit is still open
Only the bench lacks a permit.
  contradicted | permit | permit | not all: the permit is still open ← permit, deck: the permit is still open; permit, fence: closed
Only the fence has no door.
  no-fact | fence | not-told | the folder tells of no fence
  no-fact | door | not-there | the folder tells of none, and does not say that there is none
The only open permit is for the fence.
  contradicted | only open permit is for the fence | permit | the folder lists another permit that is not closed, or other work without one ← permit, deck: the permit is still open
Street parking by permit.
with permit
  contradicted | with permit | permit | not all: the permit is still open ← permit, deck: the permit is still open; permit, fence: closed
`,
  ],
  [
    'a bath that was left as found',
    {
      levels: [MAIN],
      rooms: [
        {
          id: 'b1',
          name: 'Bath',
          level: 'main',
          use: 'bath',
          finishes: [
            { on: 'floor', what: 'tile', kept: true },
            { on: 'walls', what: 'tile', kept: true },
          ],
        },
      ],
    },
    `
Neither bath was left as it was.
  contradicted | Neither bath was left as it was | newness.untouched | the folder says of one that it was left as found ← Bath: left as found
No room untouched.
  contradicted | No room untouched | newness.untouched | the folder says of one that it was left as found ← Bath: left as found
No kitchen was left alone.
  no-fact | kitchen | not-there | the folder tells of none, and does not say that there is none
`,
  ],
];

describe.each(HOUSES)('owners and permits: %s', (_name, spec, table) => {
  it.each(rowsOf(table))('%s', (draft, told) => {
    expect(findingsOf(spec, draft)).toEqual(told);
  });
});
