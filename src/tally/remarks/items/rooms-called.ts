/** Rooms by what an agent calls them: "the hall bath", "the secondary bath", "the guest bedroom", "the smaller bath". */
import type { House } from '../../../facts/house.js';
import { nameOf } from '../../../facts/place-name.js';

/** Words for the room of the owners. */
const FIRST = /\b(primary|master|owner'?s?'?|principal|en ?suite|suite|big|bigger|large|larger|largest)\b/i;
/** Words for any room of the kind but that one. */
const OTHER =
  /\b(hall|hallway|secondary|guests?'?|kids?'?|children'?s|common|family|spare|additional|shared|small|smaller|smallest|other)\b/i;
const SECOND = /\b(second|2nd|remaining|rear)\s*(full |updated |remodeled |renovated )?$/i;
const PRIMARY = /primary|master|owner|suite/i;

/** Ids of the rooms of a use that words such as "secondary" mean; none where the folder leaves that open. */
export function roomsCalled(house: House, use: string, words: string): string[] {
  const word = words.toLowerCase();
  const said = word.split(/[^a-z0-9']+/);
  const rooms = house.rooms.filter((room) => room.use === use);
  const named = rooms.filter((room) => {
    const [first = ''] = nameOf(room).toLowerCase().split(' ');
    return first.length > 3 && first !== use && said.some((one) => one.startsWith(first));
  });
  if (named.length > 0) return named.map(({ id }) => id);
  const primary = rooms.filter((room) => PRIMARY.test(nameOf(room)));
  if (primary.length === 0) return [];
  if (FIRST.test(word)) return primary.map(({ id }) => id);
  const rest = rooms.filter((room) => !primary.includes(room));
  const whole = rest.filter((room) => room.bath !== 'half');
  // "The second bath" of two is the one that is not the owners'.
  const second = use === 'bath' && rest.length === 1 && SECOND.test(word);
  if (!OTHER.test(word) && !second) return [];
  return (whole.length > 0 ? whole : rest).map(({ id }) => id);
}
