/** Which rooms, levels and structures a text means: "the kitchen", "upstairs", "the primary bath". */
import type { House, Room } from '../../../facts/house.js';
import { nameOf } from '../../../facts/place-name.js';
import { thing } from '../words/taxonomy.js';

export interface PlaceMeant {
  /** As the report names it. */
  readonly label: string;
  /** Ids of rooms, levels and structures; empty where the folder has none of the kind. */
  readonly ids: readonly string[];
}

/** Rooms that are meant by the name of the first of them; undefined for none. */
export function placeOfRooms(rooms: readonly Room[]): PlaceMeant | undefined {
  const [first] = rooms;
  return first === undefined
    ? undefined
    : { label: nameOf(first).toLowerCase(), ids: rooms.map(({ id }) => id) };
}

export const inOnePlace = (where: readonly string[], place: PlaceMeant): boolean =>
  where.some((id) => place.ids.includes(id));

const LEVELS = {
  below: 'below ground',
  main: 'the main level',
  down: 'downstairs',
  upper: 'upstairs',
  bedrooms: 'the level of the bedrooms',
} as const;

/** A word for levels; "inside" and "outside" are words of place as well, and name none. */
export type LevelWord = keyof typeof LEVELS;

export const isLevelWord = (id: string): id is LevelWord => Object.hasOwn(LEVELS, id);

/** "main": the level one walks into; "upper": what lies above it. */
export function levelMeant(house: House, id: LevelWord): PlaceMeant {
  const above = house.levels.filter(({ grade }) => grade === 'above');
  const first =
    house.house.storeys === 'one'
      ? above
      : [above.find((level) => /main|first|ground/i.test(nameOf(level))) ?? above[0]].filter(
          (one) => one !== undefined,
        );
  const below = house.levels.filter(({ grade }) => grade === 'below');
  const levels = {
    below,
    main: first,
    down: [...first, ...below],
    upper: above.filter((level) => !first.includes(level)),
    bedrooms: house.levels.filter((level) =>
      house.rooms.some((room) => room.use === 'bedroom' && room.level === level.id),
    ),
  }[id].map((level) => level.id);
  return { label: LEVELS[id], ids: withRooms(house, levels) };
}

const withRooms = (house: House, levels: readonly string[]): string[] => [
  ...levels,
  ...house.rooms.filter(({ level }) => levels.includes(level)).map(({ id }) => id),
  ...house.stairs.filter(({ id }) => levels.includes(id)).map(({ id }) => id),
];

const PRIMARY = /primary|master|owner|main bed|suite/i;

/** Rooms that a thing of the tables means. */
export function placeMeant(
  house: House,
  id: string,
  ordinal?: number,
  qualifiers: readonly string[] = [],
): PlaceMeant {
  const { label, room, level, structure } = thing(id);
  if (id === 'house') return { label, ids: [...house.levels, ...house.rooms].map((one) => one.id) };
  if (level === 'below') return { ...levelMeant(house, 'below'), label };
  if (structure !== undefined) {
    const own = house.structures.filter((one) => one.is === structure);
    // Called so, and built as something else: "Sunroom" of a closed-in porch, or among the rooms.
    const called = new RegExp(`\\b${structure}\\b`, 'i');
    const places =
      own.length > 0 ? own : [...house.structures, ...house.rooms].filter((one) => called.test(nameOf(one)));
    const ids = places.map((one) => one.id);
    return {
      label,
      ids: [
        ...ids,
        ...house.stairs.filter(({ id }) => ids.some((one) => id.startsWith(one))).map(({ id }) => id),
      ],
    };
  }
  if (id === 'pantry')
    return { label, ids: house.rooms.filter((one) => /pantry/i.test(nameOf(one))).map((one) => one.id) };
  if (room === undefined) return { label, ids: [] };
  const own = house.rooms.filter(
    (one) => (one.use === room || (room === 'family' && one.use === 'recreation')) && isMeant(one, id),
  );
  // Where no room is named the primary one, any of them may be.
  const rooms =
    own.length === 0 && id === 'primary-bedroom' ? house.rooms.filter((one) => one.use === room) : own;
  const named =
    qualifiers.length === 0
      ? []
      : rooms.filter((one) => qualifiers.some((word) => nameOf(one).toLowerCase().includes(word)));
  const called = placeOfRooms(named);
  if (called !== undefined) return called;
  const numbered =
    ordinal === undefined
      ? []
      : rooms.filter((one) => nameOf(one).includes(String(ordinal)) || one.id.endsWith(String(ordinal)));
  return { label, ids: (numbered.length > 0 ? numbered : rooms).map((one) => one.id) };
}

function isMeant(room: Room, id: string): boolean {
  if (id === 'half-bath') return room.bath === 'half';
  if (id === 'primary-bath' || id === 'primary-bedroom') return PRIMARY.test(nameOf(room));
  return true;
}
