/** Kitchens and baths with what was put in or redone, and floors by what they are. */
import type { Finish, Room } from '../../facts/house.js';
import { nameOf } from '../../facts/place-name.js';
import { deedOf, PUT_IN } from '../../tally/improvements.js';
import { withArticle } from './as-listed.js';
import { backedDeed, type DraftRules } from './backing.js';
import { type DraftUnit, joining, type Piece, wordsOfPieces } from './draft-unit.js';
import { finishName, floorName } from './finish-names.js';
import { permitPieces, unpermitted } from './permit-words.js';
import { deedWords } from './when.js';

export interface FinishUnits {
  readonly units: readonly DraftUnit[];
  /** Ids of the work items whose outcome is told in them. */
  readonly told: ReadonlySet<string>;
}

const RANKS: Partial<Record<Finish['on'], number>> = {
  counter: 8,
  cabinets: 9,
  floor: 10,
  shower: 10,
  backsplash: 17,
  vanity: 17,
  tub: 19,
  sink: 20,
};

const DEEDS_TOLD = ['new', 'replaced', 'added', 'refinished', 'repaired', 'painted'];

export function finishUnits(rules: DraftRules): FinishUnits {
  const units: DraftUnit[] = [];
  const told = new Set<string>();
  const floors = new Map<string, Floors>();
  for (const [roomIndex, room] of rules.context.house.rooms.entries()) {
    const added = unpermitted(rules, room.id, 'the room');
    const inRoom = room.use === 'kitchen' || room.use === 'bath';
    for (const [index, finish] of room.finishes.entries()) {
      const name = inRoom ? finishName(finish) : floorName(finish);
      const did = deedOf(finish);
      if (name === undefined || did === undefined || !DEEDS_TOLD.includes(did)) continue;
      const tail = deedWords(rules.context, PUT_IN.includes(did) ? 'new' : did, finish.done);
      const path = ['rooms', roomIndex, 'finishes', index];
      const backing = backedDeed(rules, finish, `${nameOf(room)}: ${name}`, path);
      const aside = permitsOf(rules, finish);
      if (tail === undefined || backing === undefined || aside === undefined || added === undefined) continue;
      if (finish.work !== undefined) told.add(finish.work);
      if (inRoom) units.push(roomUnit(room, finish, { text: name, backing }, tail, aside));
      else addFloor(floors, room, finish, { text: name, backing }, tail, added);
    }
  }
  return { units: [...units, ...[...floors.values()].map(floorUnit)], told };
}

/** The permits of the work that a finish was part of. Undefined: one has to be told and may not be. */
function permitsOf(rules: DraftRules, finish: Finish): readonly Piece[] | undefined {
  const work = rules.context.house.work.find((item) => item.id === finish.work);
  const own = permitPieces(rules, finish.permit);
  const other = permitPieces(rules, work?.permit);
  return own === undefined || other === undefined ? undefined : [...own, ...other];
}

const roomUnit = (
  room: Room,
  finish: Finish,
  piece: Piece,
  tail: string,
  aside: readonly Piece[],
): DraftUnit => ({
  sentence: room.use === 'kitchen' ? 'kitchen' : 'baths',
  part: room.use === 'kitchen' ? 'kitchen' : nameOf(room),
  rank: (RANKS[finish.on] ?? 20) + (room.use === 'bath' ? 2 : 0),
  pieces: [piece],
  tail,
  aside,
});

/** The same floor in several rooms is one: "oak strip floors in the living room and hall refinished in 2026". */
interface Floors {
  readonly name: Piece;
  readonly tail: string;
  /** What stands of the room's permit. */
  readonly aside: readonly Piece[];
  readonly rooms: Piece[];
  /** Of wood or tile: asked before carpet and vinyl. */
  readonly hard: boolean;
  /** In closets alone. */
  minor: boolean;
}

function addFloor(
  floors: Map<string, Floors>,
  room: Room,
  finish: Finish,
  name: Piece,
  tail: string,
  aside: readonly Piece[],
): void {
  const key = `${name.text} ${tail} ${wordsOfPieces(aside)}`;
  const one: Floors = floors.get(key) ?? {
    name,
    tail,
    aside: aside.slice(0, 1),
    rooms: [],
    hard: !/carpet|vinyl/i.test(finish.what),
    minor: true,
  };
  one.rooms.push({ ...name, text: nameOf(room).toLowerCase() });
  if (room.use !== 'closet') one.minor = false;
  floors.set(key, one);
}

const floorUnit = ({ name, tail, aside, rooms, hard, minor }: Floors): DraftUnit => ({
  sentence: 'floors',
  rank: minor ? 33 : hard || rooms.length > 2 ? 11 : 16,
  pieces: [
    // One room has one floor.
    rooms.length === 1 ? { ...name, text: name.text.replace(/ floors$/, ' floor') } : name,
    joining(' in '),
    ...rooms.flatMap((room, index) => [
      ...(index === 0 ? [] : [joining(index === rooms.length - 1 ? ' and ' : ', ')]),
      index === 0 ? { ...room, text: withArticle(room.text) } : room,
    ]),
  ],
  tail,
  aside,
});
