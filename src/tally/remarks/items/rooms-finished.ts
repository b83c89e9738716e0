import type { House, Room } from '../../../facts/house.js';

/** Whether a room counts as finished: it says so, or neither it nor its level says otherwise. */
export function isFinishedRoom(house: House, room: Room): boolean {
  const level = house.levels.find(({ id }) => id === room.level);
  return room.finish === 'finished' || (room.finish !== 'unfinished' && level?.finish !== 'unfinished');
}
