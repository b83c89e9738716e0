/** Counts of bedrooms and baths. */
import { nameOf } from '../../../facts/place-name.js';
import type { Judgement, Known } from '../items/known.js';
import type { PlaceMeant } from '../items/places.js';
import { judged, plural, unknown } from './judged.js';

export function judgeBedrooms(known: Known, claimed: number, places: readonly PlaceMeant[]): Judgement {
  const rule = 'count.bedrooms';
  const all = known.house.rooms.filter((room) => room.use === 'bedroom');
  if (known.house.rooms.length === 0) return unknown(rule, 'the folder lists no rooms');
  const rooms =
    places.length === 0 ? all : all.filter(({ id }) => places.some(({ ids }) => ids.includes(id)));
  const where = places.length === 0 ? '' : `, ${places.map(({ label }) => label).join(', ')}`;
  const words = `${plural(rooms.length, 'bedroom', 'bedrooms')}${where}: ${rooms.map(nameOf).join(', ')}`;
  return judged(
    rooms.length === claimed,
    rule,
    `the folder lists ${plural(rooms.length, 'bedroom', 'bedrooms')}${where}`,
    [{ path: ['rooms'], words, evidence: [] }],
    plural(rooms.length, 'bedroom', 'bedrooms'),
  );
}

export type BathKind = 'any' | 'full' | 'half' | 'three-quarter' | 'rooms';

export function judgeBaths(
  known: Known,
  claimed: number,
  kind: BathKind,
  places: readonly PlaceMeant[],
): Judgement {
  const rule = 'count.baths';
  const all = known.house.rooms.filter((room) => room.use === 'bath');
  if (known.house.rooms.length === 0) return unknown(rule, 'the folder lists no rooms');
  const rooms =
    places.length === 0 ? all : all.filter(({ id }) => places.some(({ ids }) => ids.includes(id)));
  const of = (wanted: string | undefined): number => rooms.filter(({ bath }) => bath === wanted).length;
  const [full, three, half, open] = [of('full'), of('three-quarter'), of('half'), of(undefined)];
  const parts = [
    ...(full > 0 ? [plural(full, 'full bath', 'full baths')] : []),
    ...(three > 0 ? [plural(three, 'three-quarter bath', 'three-quarter baths')] : []),
    ...(half > 0 ? [plural(half, 'half bath', 'half baths')] : []),
    ...(open > 0 ? [`${plural(open, 'bath', 'baths')} of no stated kind`] : []),
  ].join(' and ');
  const facts = [
    {
      path: ['rooms'],
      words: parts === '' ? 'no bath' : `${parts}: ${rooms.map(nameOf).join(', ')}`,
      evidence: [],
    },
  ];
  const fits = {
    // One of no stated kind may be any.
    full: claimed >= full && claimed <= full + open,
    half: claimed >= half && claimed <= half + open,
    'three-quarter': claimed >= three && claimed <= three + open,
    rooms: claimed === rooms.length,
    any: anyFits(claimed, full + three, half, open, three),
  }[kind];
  return judged(fits, rule, `the folder lists ${parts === '' ? 'none' : parts}`, facts, parts);
}

/** Halves count as halves: one full and one half bath are one and a half, and no "two baths". */
const anyFits = (claimed: number, whole: number, half: number, open: number, three: number): boolean => {
  for (let halves = 0; halves <= open; halves++) {
    if (claimed === whole + open - halves + (half + halves) * 0.5) return true;
    if (three > 0 && claimed === whole + open - halves - three * 0.25 + (half + halves) * 0.5) return true;
    // "2.1 baths": two full, one half, as some lists write it.
    if (Math.abs(claimed - (whole + open - halves + (half + halves) / 10)) < 1e-9) return true;
  }
  return false;
};
