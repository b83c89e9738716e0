/** How large a room or a structure is, by the folder's sides or outline. */
import { SQUARE_FOOT } from '../../../facts/floor-area.js';
import type { House } from '../../../facts/house.js';
import { FOOT } from '../../../facts/length.js';
import { areaOf, walk } from '../../measuring.js';

type Sized = House['rooms'][number] | House['structures'][number];

/** Square feet within its walls; undefined where the folder gives none, or an outline that doesn't close. */
export function roomArea(one: Sized): number | undefined {
  if (one.size !== undefined) return (one.size.width.units / FOOT) * (one.size.depth.units / FOOT);
  if (!('outline' in one) || one.outline === undefined) return undefined;
  const { corners, gap } = walk([0, 0], one.outline);
  if (corners.length < 3 || gap.east !== 0 || gap.north !== 0) return undefined;
  return Number((areaOf(corners) * 100n) / SQUARE_FOOT) / 100;
}
