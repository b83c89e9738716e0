/** The adjusted basis, divided between land and building as far as the facts divide it. */

import type { HeldBasis, Reduction } from './adjusted-basis.js';
import type { Books } from './books.js';
import type { LandSplit } from './land-split.js';
import type { SheetLine, WorksheetPart } from './money-tally.js';
import { figureLine, sumLines, totalLine } from './sheet-line.js';

/** Reductions that are the building's alone; the others are not divided. */
const OF_BUILDING: readonly Reduction['what'][] = [
  'depreciation',
  'section-179',
  'casualty-loss',
  'energy-credit',
  'energy-subsidy',
];

/** Building, land and what nobody divided; the three add up to the adjusted basis. */
export function landPart(
  { money }: Books,
  { raised, lowered, adjusted }: HeldBasis,
  land: LandSplit,
): WorksheetPart {
  const rules = ['land-and-building'] as const;
  const ofBuilding = (line: SheetLine): boolean => {
    const at = /^reduction-(\d+)$/.exec(line.id)?.[1];
    if (at === undefined) return line.id !== 'assessment';
    const what = money.reductions[Number(at) - 1]?.what;
    return what !== undefined && OF_BUILDING.includes(what);
  };
  const moved = [...raised, ...lowered];
  const building = land.building + sumLines(moved.filter(ofBuilding));
  const undivided = moved.filter((line) => !ofBuilding(line));
  return {
    id: 'land-and-building',
    title: 'Land and building',
    lines: [
      figureLine('building-cost', 'Building: share of the cost of buying', land.building, {
        rules,
        facts: land.facts,
        note: land.words,
      }),
      figureLine('building', 'Building: adjusted basis', building, {
        rules: ['land-and-building', 'adjusted-basis'],
        note: 'with improvements, restoration and repairs that count, less rebates, insurance payments and reductions of the building',
      }),
      figureLine('land', 'Land', land.land, { rules, facts: land.facts, note: land.words }),
      ...(undivided.length === 0
        ? []
        : [
            {
              ...figureLine('undivided', 'Not divided between the two', sumLines(undivided), {
                rules: ['local-assessments', 'land-and-building'],
                facts: undivided.flatMap(({ facts }) => facts),
                note: `${undivided.map(({ label }) => label).join(', ')}: land or building is for the preparer to decide`,
              }),
              rows: undivided.flatMap(({ rows }) => rows).sort((a, b) => a - b),
            },
          ]),
      totalLine('land-and-building', 'Land and building', adjusted.cents, { rules: ['adjusted-basis'] }),
    ],
  };
}
