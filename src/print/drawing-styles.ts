/** Pens and letters of drawings, as packet.ts words them, on paper. */
import { LETTER_SIZES } from '../packet/letter-widths.js';
import type { LetterStyle, Pen } from '../packet/packet.js';
import type { TypeStyle } from './type-styles.js';

/** Line widths in points. */
export const PENS: Record<Pen, number> = { hair: 0.4, thin: 0.7, medium: 1.2, wall: 3, dashed: 0.7 };

/** Stroke and blank of the dashed pen, in points. */
export const DASH_PT: readonly [number, number] = [3, 2.2];

function letters(face: TypeStyle['face'], style: LetterStyle): TypeStyle {
  const sizePt = LETTER_SIZES[style];
  return { face, sizePt, leadingPt: sizePt * 1.25, ink: 'ink', figures: 'tabular' };
}

export const LETTER_STYLES: Record<LetterStyle, TypeStyle> = {
  name: letters('sans', 'name'),
  body: letters('sans', 'body'),
  small: letters('sans', 'small'),
  tick: letters('sans', 'tick'),
  unknown: letters('sans-italic', 'unknown'),
};
