/** What is lacking of floors, paint, tile and the like, for the buyer and for touching up. */
import type { FactPath } from '../diagnostics/fact-path.js';
import type { Finish, House, Room } from '../facts/house.js';
import { nameOf } from '../facts/place-name.js';
import { addItem, addLine, EVERYONE, type Gap, type GapSources, rankOf } from './gap.js';

export function finishGaps({ house, asOf }: GapSources): Gap[] {
  const inRooms = house.rooms.flatMap((room, index) => {
    const path: FactPath = ['rooms', index];
    return [...floorUnsaid(house, room, path), ...eachFinish(room, path, asOf)];
  });
  const inStructures = house.structures.flatMap((structure, index) =>
    eachFinish(structure, ['structures', index], asOf),
  );
  return [...inRooms, ...inStructures];
}

const WITHOUT_FLOOR: readonly Room['use'][] = ['closet', 'storage', 'mechanical', 'attic', 'garage', 'stair'];

function floorUnsaid(house: House, room: Room, path: FactPath): Gap[] {
  const level = house.levels.find((one) => one.id === room.level);
  const unfinished = (room.finish ?? level?.finish) === 'unfinished';
  if (unfinished || WITHOUT_FLOOR.includes(room.use)) return [];
  if (room.finishes.some((finish) => finish.on === 'floor')) return [];
  return [
    {
      path,
      audiences: EVERYONE,
      lacks: `the floor of ${nameOf(room)} is not described`,
      hint: addItem('its finishes', '{ on: floor, what: oak strip, kept: yes }'),
      rank: rankOf('floor'),
    },
  ];
}

function eachFinish(
  home: Parameters<typeof nameOf>[0] & { readonly finishes: readonly Finish[] },
  path: FactPath,
  asOf: string,
): Gap[] {
  return home.finishes.flatMap((finish, index) => {
    if (finish.kept || finish.did === 'removed') return [];
    const here: FactPath = [...path, 'finishes', index];
    const name = nameOf(home);
    return [
      ...dateUnsaid(finish, name, here, asOf),
      ...paintUnsaid(finish, name, here),
      ...lotUnsaid(finish, name, here),
    ];
  });
}

function dateUnsaid(finish: Finish, home: string, path: FactPath, asOf: string): Gap[] {
  if (finish.done !== undefined) return [];
  return [
    {
      path,
      audiences: EVERYONE,
      lacks: `when the ${finish.on} of ${home} was done is not said`,
      hint: addLine(`done: ${asOf.slice(0, 7)}`, 'kept: yes'),
      rank: rankOf('when a finish was done'),
    },
  ];
}

/** What a paint shop asks for, with a line to type. */
const ON_THE_LID = {
  colour: 'colour: oat',
  code: 'code: "X-104"',
  base: 'base: white base',
  sheen: 'sheen: eggshell',
} as const;

function paintUnsaid(finish: Finish, home: string, path: FactPath): Gap[] {
  const words = Object.keys(ON_THE_LID) as (keyof typeof ON_THE_LID)[];
  const missing = /(?<!un)paint/i.test(finish.what) ? words.filter((word) => finish[word] === undefined) : [];
  const [first] = missing;
  if (first === undefined) return [];
  return [
    {
      path,
      audiences: ['care'],
      lacks: `the paint on the ${finish.on} of ${home} lacks its ${missing.join(', ')}; name and code alone do not fix a colour`,
      hint: `read it off the lid, for example  ${ON_THE_LID[first]}`,
      rank: rankOf('paint'),
    },
  ];
}

function lotUnsaid(finish: Finish, home: string, path: FactPath): Gap[] {
  if (finish.lot !== undefined || !/tile|plank|carpet|laminate/i.test(finish.what)) return [];
  return [
    {
      path,
      audiences: ['care'],
      lacks: `the lot of the ${finish.on} of ${home} is not recorded`,
      hint: 'read it off the box, for example  lot: "A2219"',
      rank: rankOf('lot'),
    },
  ];
}
