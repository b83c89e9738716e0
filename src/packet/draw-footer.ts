/** What stands below a plan: its scale bar, north, and what its signs and grounds mean. All lengths are points. */
import { FOOT, METRE } from '../facts/length.js';
import type { Reading } from '../tally/area-words.js';
import { lettering } from './draw-lettering.js';
import { inRows } from './draw-rows.js';
import { tidy } from './draw-tidy.js';
import { letteringWidth } from './letter-widths.js';
import type { Shape, XY } from './packet.js';

/** One sign or ground, and its meaning in words. */
export interface LegendEntry {
  readonly words: string;
  readonly width: number;
  /** Its shapes, from a left edge about a middle line. */
  readonly draw: (left: number, middle: number) => readonly Shape[];
}

/** The scale bar with its numbers, and the arrow beside it. */
const BAR_ROW = 29;
const LEGEND_ROW = 16;
const BETWEEN_ENTRIES = 16;
const BESIDE_SIGN = 4;

const entryWidth = ({ words, width }: LegendEntry): number =>
  width + BESIDE_SIGN + letteringWidth(words, 'tick');

/** The narrowest footer that holds each of its parts. */
export const leastFooterWidth = (legend: readonly LegendEntry[]): number =>
  Math.max(BAR_AND_NORTH, ...legend.map(entryWidth));

export const footerHeight = (width: number, legend: readonly LegendEntry[]): number =>
  BAR_ROW + LEGEND_ROW * legendRows(width, legend).length;

const legendRows = (width: number, legend: readonly LegendEntry[]): LegendEntry[][] =>
  inRows(legend, width, BETWEEN_ENTRIES, entryWidth);

export function drawFooter(
  at: { readonly left: number; readonly top: number; readonly width: number },
  perFoot: number,
  reading: Reading,
  legend: readonly LegendEntry[],
): Shape[] {
  const rows = legendRows(at.width, legend);
  return [
    ...scaleBar([at.left, at.top + 15], perFoot, reading),
    ...north([at.left + at.width - 4, at.top + 15]),
    ...rows.flatMap((row, index) => legendRow(row, at.left, at.top + BAR_ROW + LEGEND_ROW * (index + 0.5))),
  ];
}

function legendRow(row: readonly LegendEntry[], left: number, middle: number): Shape[] {
  let x = left;
  return row.flatMap((entry) => {
    const shapes = [
      ...entry.draw(x, middle),
      lettering(entry.words, [x + entry.width + BESIDE_SIGN, middle + 2.5], { anchor: 'start' }),
    ];
    x += entryWidth(entry) + BETWEEN_ENTRIES;
    return shapes;
  });
}

/** Points of the longest bar that stays under these. */
const LONGEST_BAR = 120;
const BAR_AND_NORTH = LONGEST_BAR + 40;

const BAR_LENGTHS = [10, 5, 2, 1];

/** The longest round length that is drawn short enough; of a plan too large for all of them, the longest of those. */
function barOf(perFoot: number, reading: Reading): { readonly points: number; readonly words: string } {
  const [per, unit] = reading === 'metric' ? [(perFoot * METRE) / FOOT, 'm'] : [perFoot, 'ft'];
  const lengths = per * 10 < LONGEST_BAR / 4 ? [100, 50, 20, ...BAR_LENGTHS] : BAR_LENGTHS;
  const length = lengths.find((one) => one * per <= LONGEST_BAR) ?? 1;
  return { points: length * per, words: `${length} ${unit}` };
}

function scaleBar([x, y]: XY, perFoot: number, reading: Reading): Shape[] {
  const bar = barOf(perFoot, reading);
  const from = tidy(x + 2);
  const end = tidy(from + bar.points);
  const line = (a: XY, b: XY): Shape => ({ kind: 'line', from: a, to: b, pen: 'thin', ink: 'soft' });
  return [
    line([from, tidy(y)], [end, tidy(y)]),
    line([from, tidy(y - 3)], [from, tidy(y + 3)]),
    line([end, tidy(y - 3)], [end, tidy(y + 3)]),
    lettering('0', [from - 2, y + 11], { anchor: 'start' }),
    lettering(bar.words, [end, y + 11]),
  ];
}

function north([x, y]: XY): Shape[] {
  return [
    { kind: 'line', from: [tidy(x), tidy(y + 3)], to: [tidy(x), tidy(y - 11)], pen: 'thin', ink: 'soft' },
    {
      kind: 'path',
      points: [
        [tidy(x - 3), tidy(y - 5)],
        [tidy(x), tidy(y - 11)],
        [tidy(x + 3), tidy(y - 5)],
      ],
      closed: false,
      pen: 'thin',
      ink: 'soft',
      fill: 'none',
    },
    lettering('N', [x, y + 11]),
  ];
}
