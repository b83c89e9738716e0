/** A lot that is smaller than a floor of the house on it. */
import type { Diagnostic } from '../../diagnostics/diagnostic.js';
import { wholeSquareFeet } from '../../facts/floor-area.js';
import { groupThousands } from '../../facts/written-number.js';
import { type ClashSources, clashOf } from './clash.js';

/** Floors of an apartment may lie on no lot of their own. */
export function lotAndFootprint({ house, areas }: ClashSources): Diagnostic[] {
  const lot = house.house.lot?.value;
  if (lot === undefined || house.house.kind === 'apartment-style') return [];
  const measured = house.levels.flatMap((level, index) => {
    const area = areas.levels.find(({ id }) => id === level.id)?.gross;
    return area === undefined ? [] : [{ level, index, area }];
  });
  // The largest says it for all.
  const [first] = measured.toSorted((a, b) => Number(b.area - a.area));
  if (first === undefined || first.area <= lot.area) return [];
  const feet = (area: bigint): string => `${groupThousands(wholeSquareFeet(area))} sq ft`;
  const word = first.level.outline === undefined ? 'size' : 'outline';
  return [
    clashOf({
      severity: 'error',
      path: ['house', 'lot'],
      beside: ['levels', first.index, word],
      message: `the lot (${lot.written}${/ft/.test(lot.written) ? '' : `, ${feet(lot.area)}`}) is smaller than ${first.level.name} (${feet(first.area)})`,
      hints: [
        'check the unit of  lot: , for example  0.21 acre  or  8,712 sq ft',
        `check  ${word}:  of the level`,
      ],
    }),
  ];
}
