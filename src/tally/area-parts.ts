/** The lines of a level for its bays and bump-outs, the holes in its floor, and the floor under stairs. */
import { wholeSquareFeet } from '../facts/floor-area.js';
import type { Level } from '../facts/house.js';
import { printSize } from '../facts/size.js';
import type { AreaClass, AreaLine, OpenReading } from './area-answer.js';
import { finishedClass, lowCeilingRule } from './area-rooms.js';
import { areaWords, capital } from './area-words.js';
import { isUnder } from './ceiling.js';
import { sizeArea } from './level-outline.js';

type Part = NonNullable<Level['parts']>[number];

/** A part’s lines, and what it adds to the gross area. */
export function partLines(
  level: Level,
  part: Part,
  own: AreaClass,
  roomsOnly: boolean,
): { added: bigint; lines: AreaLine[] } {
  const what = `${capital(part.what)}, ${printSize(part.size)}`;
  const none = (rule: string) => ({ added: 0n, lines: [{ what, area: 0n, into: undefined, rule }] });
  if (!part.floor) return none('Not counted: it has no floor on this level.');
  if (roomsOnly) return none('Not added: this level is the sum of its rooms, which may hold it already.');
  const area = sizeArea(part.size);
  const added: AreaLine = {
    what,
    area,
    into: undefined,
    rule: 'It has a floor on this level, so it belongs to it.',
  };
  if (part.ceiling === undefined || level.finish === 'unfinished') return { added: area, lines: [added] };
  const into = isUnder(part.ceiling, 'full') ? 'non-standard' : finishedClass(level);
  if (into === own) return { added: area, lines: [added] };
  const rule =
    into === 'non-standard' ? lowCeilingRule(part.ceiling) : 'Its own ceiling is high enough to count.';
  return { added: area, lines: [added, { what, area: -area, into, rule }] };
}

/** Gross less opening, and the treads in it back again, up to the opening’s size. */
export function openingLine(opening: Level['openings'][number], roomsOnly: boolean): AreaLine {
  const hole = sizeArea(opening.size);
  const treads = opening.treads === undefined ? 0n : sizeArea(opening.treads);
  const what = `${capital(opening.what)}, opening ${printSize(opening.size)}`;
  if (roomsOnly) {
    const rule = 'Not taken off: this level is the sum of its rooms, and a hole is part of none of them.';
    return { what, area: 0n, into: undefined, rule };
  }
  if (treads === 0n) {
    const rule = 'An opening to the floor below is not counted. It belongs to no class.';
    return { what, area: -hole, into: undefined, rule };
  }
  if (treads >= hole) {
    const rule =
      'Its treads and landings fill it, and belong to the floor they go down from: nothing is taken off.';
    return { what, area: 0n, into: undefined, rule };
  }
  return {
    what,
    area: treads - hole,
    into: undefined,
    rule: `Treads and landings (${areaWords(treads)}) belong to the floor they go down from; the rest of the opening is not counted and belongs to no class.`,
  };
}

interface UnderStairs {
  readonly lines: readonly AreaLine[];
  readonly readings: readonly OpenReading[];
}
export const NO_STAIRS: UnderStairs = { lines: [], readings: [] };

/**
 * The floor under stairs belongs to the lower level whatever its height, so it alone counts on a level whose ceiling
 * is too low. It is taken to be as large as the treads that the level above counts.
 */
export function underStairs(level: Level, above: Level | undefined): UnderStairs {
  const into = finishedClass(level);
  const lines: AreaLine[] = (above?.openings ?? []).flatMap((opening) => {
    if (opening.treads === undefined) return [];
    const smaller = sizeArea(opening.treads) < sizeArea(opening.size) ? opening.treads : opening.size;
    return [
      {
        what: `Under the stairs (${opening.what}), ${printSize(smaller)}`,
        area: -sizeArea(smaller),
        into,
        rule: 'The floor under stairs belongs to the lower level regardless of its height; taken as large as the treads above it.',
      },
    ];
  });
  if (lines.length === 0) return NO_STAIRS;
  const counts = wholeSquareFeet(lines.reduce((sum, line) => sum - line.area, 0n));
  return {
    lines,
    readings: [
      {
        room: level.name,
        words: `The ceiling is too low to count, but the floor under the stairs counts regardless of height: ${counts} sq ft by that rule, none if the ceiling rule goes before it. The figures here use ${counts}.`,
        countedIfPass: counts,
        countedIfFail: 0,
        used: 'pass',
      },
    ],
  };
}
