/** What is lacking where somebody can be hurt: lead, alarms, stairs, a pool, a range that can tip. */

import { nameOf } from '../facts/place-name.js';
import { addItem, addLine, BUYER, freeId, type Gap, type GapSources, rankOf, SALE } from './gap.js';
import { targetOf } from './lead-notes.js';
import { isRange } from './observed-range.js';
import { systemName } from './system-name.js';

export function safetyGaps(sources: GapSources): Gap[] {
  return [
    ...leadUnsaid(sources),
    ...poolUnwatched(sources),
    ...alarmsUnrecorded(sources),
    ...stairsUncounted(sources),
    ...handrailsUnknown(sources),
    ...bracketsUnknown(sources),
  ];
}

function leadUnsaid({ house }: GapSources): Gap[] {
  if (house.lead !== undefined || targetOf(house).target === 'no') return [];
  return [
    {
      path: ['lead'],
      audiences: BUYER,
      lacks: 'what you know of lead paint is not said, and federal law asks it of a house built before 1978',
      hint: `${addLine('lead: { known: not known }')}  or in its place what you know, where, and from whom`,
      rank: rankOf('lead'),
    },
  ];
}

function poolUnwatched({ house }: GapSources): Gap[] {
  const named = house.systems.some((system) => system.did !== 'removed' && /\bpool\b/i.test(system.is));
  if (house.pool === undefined ? !named : house.pool.barriers.length > 0) return [];
  const barriers = `barriers: [{ what: fence all round, height: 60", gate: not known }]`;
  return [
    {
      path: ['pool'],
      audiences: SALE,
      lacks: 'there is a pool, and nothing says what stands around it',
      hint: addLine(house.pool === undefined ? `pool: { ${barriers} }` : barriers),
      rank: rankOf('pool'),
    },
  ];
}

function alarmsUnrecorded({ house, alarms, asOf }: GapSources): Gap[] {
  const join = {
    storey: 'on ',
    'outside bedrooms': '',
    bedroom: 'in ',
    'burning appliance in bedroom': 'in ',
  };
  return alarms.places.flatMap((place): Gap[] => {
    if (place.recorded.length > 0) return [];
    const at = house.rooms.findIndex((room) => room.id === place.at);
    const kind = place.warns === 'smoke' ? 'smoke' : 'carbon monoxide';
    const item = `{ is: ${place.warns}, where: ${place.nameable}, made: ${asOf.slice(0, 7)} }`;
    return [
      {
        path: at < 0 ? ['alarms'] : ['rooms', at],
        audiences: BUYER,
        lacks: `no ${kind} alarm is recorded ${join[place.why]}${place.where}`,
        hint: `if one hangs there, ${addItem('alarms', item)}`,
        rank: rankOf('alarm'),
      },
    ];
  });
}

/** Holes in the floors that are stairs, against the flights that were counted. */
function stairsUncounted({ house }: GapSources): Gap[] {
  const openings = house.levels.flatMap((level) =>
    level.openings.filter((opening) => opening.treads !== undefined || /\bstairs?\b/i.test(opening.what)),
  );
  if (house.stairs.length >= openings.length) return [];
  const lacks =
    house.stairs.length === 0
      ? `whether there is a handrail is not said: ${openings.map((opening) => opening.what).join('; ')}`
      : `${openings.length} stairs lead from level to level, and ${house.stairs.length} of them ${house.stairs.length === 1 ? 'is' : 'are'} under stairs:`;
  return [
    {
      path: ['stairs'],
      audiences: BUYER,
      lacks,
      hint: `count the risers, then ${addItem('stairs', `{ id: ${freeId(house, 'stair')}, risers: 13, handrail: yes }`)}`,
      rank: rankOf('stair'),
    },
  ];
}

function handrailsUnknown({ house }: GapSources): Gap[] {
  return house.stairs.flatMap((stair, index): Gap[] =>
    stair.handrail === 'not known'
      ? [
          {
            path: ['stairs', index, 'handrail'],
            audiences: BUYER,
            lacks: `whether ${nameOf(stair)} has a handrail is not known`,
            hint: 'look, then write  handrail: yes  or  handrail: no',
            rank: rankOf('stair', 1),
          },
        ]
      : [],
  );
}

function bracketsUnknown({ house }: GapSources): Gap[] {
  return house.systems.flatMap((system, index): Gap[] => {
    const unanswered = system['anti-tip'] === undefined || system['anti-tip'] === 'not known';
    if (!isRange(system) || !unanswered || system.conveys === 'no') return [];
    return [
      {
        path: ['systems', index],
        audiences: BUYER,
        lacks: `whether a bracket keeps “${systemName(system)}” from tipping is not said`,
        hint: 'look behind its foot, then add  anti-tip: yes  or  anti-tip: no',
        rank: rankOf('range'),
      },
    ];
  });
}
