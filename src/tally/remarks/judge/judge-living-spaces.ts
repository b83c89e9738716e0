/** "Three living areas": the rooms that one lives in besides bedrooms, baths and the kitchen. */
import type { House } from '../../../facts/house.js';
import { nameOf } from '../../../facts/place-name.js';
import type { Judgement, Known } from '../items/known.js';
import type { PlaceMeant } from '../items/places.js';
import { judged, plural } from './judged.js';

/** Uses that everybody counts, and uses that a generous agent may count too. */
const LIVED_IN = /^(living|family|recreation)$/;
const MAYBE_LIVED_IN = /^(office|sunroom)$/;
const LIVED_IN_BY_NAME = /\b(den|loft|bonus|study|library|media|sitting|great room|studio|game)\b/i;

const roomsOf = (house: House, uses: RegExp): House['rooms'][number][] =>
  house.rooms.filter(({ use }) => uses.test(use));

export const livedIn = ({ house }: Known): PlaceMeant => ({
  label: 'living areas',
  ids: roomsOf(house, LIVED_IN).map(({ id }) => id),
});

export function judgeLivingSpaces(known: Known, claimed: number): Judgement | undefined {
  const { house } = known;
  const sure = roomsOf(house, LIVED_IN);
  if (sure.length === 0) return undefined;
  const named = house.rooms.filter(
    (room) => room.use === 'other' && LIVED_IN_BY_NAME.test(nameOf(room)),
  ).length;
  const most = sure.length + roomsOf(house, MAYBE_LIVED_IN).length + named;
  const words = `${plural(sure.length, 'living area', 'living areas')}: ${sure.map(nameOf).join(', ')}`;
  return judged(
    claimed <= most,
    'count.living',
    `the folder lists ${words}`,
    [{ path: ['rooms'], words, evidence: [] }],
    plural(sure.length, 'living area', 'living areas'),
  );
}
