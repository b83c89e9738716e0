/**
 * What a work item says in a draft: its own words, or fewer. "Walls and ceilings" were not all painted, nor all alarms
 * replaced, so that the rooms are named, or the things themselves.
 */
import type { Finish, House, Room, WorkItem } from '../../facts/house.js';
import { nameOf } from '../../facts/place-name.js';
import { deedOf, PUT_IN } from '../../tally/improvements.js';
import { asListed, withArticle } from './as-listed.js';

export interface WorkSubject {
  /** "smoke and carbon monoxide alarms". */
  readonly text: string;
  /** Behind what was done and when: "in the hall, bedroom 1 and landing". Empty: nothing has to be added. */
  readonly where: string;
}

/** Things of which a house has several, in most rooms one. */
const IN_EVERY_ROOM =
  /\b(walls?|ceilings?|trim|baseboards?|doors|windows|floors|alarms?|detectors?|lights?|receptacles?|outlets?|switches|fixtures|closets?)\b/i;

/** Surfaces of a room that are painted, with the word for several of them. */
const PAINTED: Partial<Record<Finish['on'], string>> = { walls: 'walls', ceiling: 'ceilings', trim: 'trim' };

/** Empty: it can't be told without saying more than is known. */
export function subjectsOf(house: House, item: WorkItem): readonly WorkSubject[] {
  if (item.did === 'painted') {
    const surfaces = paintedSurfaces(house, item);
    if (surfaces.length > 0) return surfaces;
  }
  const things = thingsPutIn(house, item);
  if (things !== undefined) return [{ text: things, where: '' }];
  const text = asListed(house, item.what);
  if (!IN_EVERY_ROOM.test(item.what) || namesAPlace(house, item)) return [{ text, where: '' }];
  const rooms = house.rooms.filter((room) => item.where.includes(room.id) && !keepsSome(room, item.what));
  if (rooms.length > 0) return [{ text, where: inRooms(rooms) }];
  // Where only a level is named, one room that kept its walls makes "walls" too much.
  return house.rooms.some((room) => keepsSome(room, item.what)) ? [] : [{ text, where: '' }];
}

/** "walls in the living room, entry and hall", "ceilings in the living room": as its finishes tell it. */
function paintedSurfaces(house: House, item: WorkItem): WorkSubject[] {
  const found = Object.entries(PAINTED).flatMap(([on, words]) => {
    const rooms = house.rooms.filter((room) =>
      room.finishes.some(
        (finish) => finish.on === on && finish.work === item.id && deedOf(finish) === 'painted',
      ),
    );
    return rooms.length === 0 ? [] : [{ words, where: inRooms(rooms) }];
  });
  const places = [...new Set(found.map(({ where }) => where))];
  return places.map((where) => ({
    text: listed(found.filter((one) => one.where === where).map(({ words }) => words)),
    where,
  }));
}

/** "Lights, receptacles and bath fan" as the systems that were put in: which lights, and which receptacles. */
function thingsPutIn(house: House, item: WorkItem): string | undefined {
  if (!PUT_IN.includes(item.did) || !IN_EVERY_ROOM.test(item.what)) return undefined;
  const systems = house.systems.filter(({ id }) => item.systems.includes(id));
  const own = systems.filter(({ kept, name }) => !kept && name !== undefined);
  if (own.length === 0 || own.length < item.systems.length) return undefined;
  return listed(own.map(({ name = '' }) => bracketed(house, name)));
}

/** In a list, what says where stands in brackets: its commas are no members. */
function bracketed(house: House, name: string): string {
  const [head = '', ...rest] = name.split(/,\s*/u);
  if (rest.length < 2) return asListed(house, name);
  return `${head.charAt(0).toLowerCase()}${head.slice(1)} (${rest.join(', ')})`;
}

/** "Siding and doors of the garage": the words say where already. */
function namesAPlace(house: House, { what, where }: WorkItem): boolean {
  const words = what.toLowerCase();
  const places = [...house.rooms, ...house.structures, ...house.stairs];
  return (
    places.some((one) => where.includes(one.id) && words.includes(nameOf(one).toLowerCase())) ||
    /\b(front|back|rear|side|garage|cellar|basement|pool|porch)\b/.test(words)
  );
}

/** Whether something that the words name was left in the room as it was found. */
const keepsSome = (room: Room, words: string): boolean =>
  room.finishes.some(
    (finish) => finish.kept && new RegExp(`\\b${finish.on.replace(/s$/, '')}s?\\b`, 'i').test(words),
  );

function inRooms(rooms: readonly Room[]): string {
  const names = rooms.map((room) => nameOf(room).toLowerCase());
  return `in ${listed(names.map((name, index) => (index === 0 ? withArticle(name) : name)))}`;
}

/** "a", "a and b", "a, b and c". */
const listed = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
