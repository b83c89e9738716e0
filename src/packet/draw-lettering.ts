/** Lettering as shapes of a drawing. All lengths are points. */
import { tidy } from './draw-tidy.js';
import { letteringBaseline, letteringHeight } from './letter-widths.js';
import type { Shape, XY } from './packet.js';

type Lettering = Extract<Shape, { kind: 'text' }>;

/** One line, its baseline at a point. Left out: soft ticks about a middle. */
export const lettering = (
  text: string,
  [x, y]: XY,
  manner: Partial<Pick<Lettering, 'style' | 'ink' | 'anchor' | 'turn'>> = {},
): Lettering => ({
  kind: 'text',
  at: [tidy(x), tidy(y)],
  text,
  style: 'tick',
  ink: 'soft',
  anchor: 'middle',
  ...manner,
});

/** Lines one below the other, the first one's upper edge at a point. */
export function setLines(
  lines: readonly string[],
  [x, top]: XY,
  manner: Pick<Lettering, 'style' | 'ink' | 'anchor'>,
): Shape[] {
  const height = letteringHeight(manner.style);
  return lines.map((text, index) =>
    lettering(text, [x, top + height * index + letteringBaseline(manner.style)], manner),
  );
}
