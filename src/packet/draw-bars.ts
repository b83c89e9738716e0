/**
 * Amounts as bars from one line: a label, a bar to scale, the amount in figures behind it. Where a plan is known, a
 * post stands where the plan ends. All lengths are points.
 */
import { lettering } from './draw-lettering.js';
import { tidy } from './draw-tidy.js';
import { breakAnyhow, letteringWidth } from './letter-widths.js';
import type { Drawing, Shape, XY } from './packet.js';

export interface AmountBar {
  readonly label: string;
  /** In any unit, the same for all bars; below zero is drawn to the left of the line. */
  readonly amount: number;
  /** The amount in words, behind the bar. */
  readonly words: string;
  /** Where a post stands: what was planned. */
  readonly planned?: number;
  /** Set apart from the bars around it by the lighter tone. */
  readonly soft?: boolean;
}

const SHAPES = {
  wide: { width: 495, left: 150, labels: 'beside' },
  narrow: { width: 250, left: 2, labels: 'above' },
} as const;

const BAR = 7;
const LINE = 10;

export function drawBars(bars: readonly AmountBar[], shape: 'wide' | 'narrow'): Drawing {
  const { width, left, labels } = SHAPES[shape];
  const shapes: Shape[] = [];
  const room = Math.max(0, ...bars.map(({ words }) => letteringWidth(words, 'tick'))) + 8;
  const lowest = Math.min(0, ...bars.map(({ amount }) => amount));
  const highest = Math.max(0, ...bars.flatMap(({ amount, planned }) => [amount, planned ?? 0]));
  const span = highest - lowest || 1;
  // The figures stand behind the longer end of every bar, so that room for them is kept on the right alone.
  const x = (amount: number): number => tidy(left + ((width - left - room) * (amount - lowest)) / span);
  let y = 4;
  for (const { label, amount, words, planned, soft } of bars) {
    const lines = breakAnyhow(label, 'body', (labels === 'beside' ? left : width) - 8);
    for (const [index, line] of lines.entries())
      shapes.push(lettering(line, [0, y + 8 + LINE * index], { style: 'body', ink: 'ink', anchor: 'start' }));
    const top = labels === 'beside' ? y + 2 : y + LINE * lines.length + 2;
    const [from, to] = [x(Math.min(0, amount)), x(Math.max(0, amount))];
    // A bar shorter than this could not be seen.
    const end = Math.max(to, from + 0.8);
    const points: XY[] = [
      [from, top],
      [end, top],
      [end, top + BAR],
      [from, top + BAR],
    ];
    shapes.push({ kind: 'path', points, closed: true, fill: soft === true ? 'accent-soft' : 'accent' });
    if (planned !== undefined)
      shapes.push({
        kind: 'line',
        from: [x(planned), top - 2],
        to: [x(planned), top + BAR + 2],
        pen: 'medium',
        ink: 'ink',
      });
    const behind = Math.max(end, planned === undefined ? 0 : x(planned));
    shapes.push(lettering(words, [behind + 4, top + BAR - 0.5], { anchor: 'start', ink: 'ink' }));
    y = labels === 'beside' ? y + Math.max(15, LINE * lines.length + 5) : top + BAR + 7;
  }
  shapes.push({ kind: 'line', from: [x(0), 2], to: [x(0), tidy(y - 2)], pen: 'hair', ink: 'line' });
  return { width, height: tidy(y), shapes };
}
