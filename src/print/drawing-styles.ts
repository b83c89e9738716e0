/** Pens and letters of drawings, as packet.ts words them, on paper. */
import type { LetterStyle, Pen } from '../packet/packet.js';
import type { TypeStyle } from './type-styles.js';

/** Line widths in points. */
export const PENS: Record<Pen, number> = { hair: 0.4, thin: 0.7, medium: 1.2, wall: 3, dashed: 0.7 };

/** Stroke and blank of the dashed pen, in points. */
export const DASH_PT: readonly [number, number] = [3, 2.2];

function letters(face: TypeStyle['face'], sizePt: number): TypeStyle {
  return { face, sizePt, leadingPt: sizePt * 1.25, ink: 'ink', figures: 'tabular' };
}

export const LETTER_STYLES: Record<LetterStyle, TypeStyle> = {
  name: letters('sans', 9.5),
  body: letters('sans', 8.5),
  small: letters('sans', 7.5),
  tick: letters('sans', 7),
  unknown: letters('sans-italic', 7.5),
};
