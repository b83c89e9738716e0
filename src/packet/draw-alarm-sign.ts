/**
 * Signs for alarms on a plan. They are this project's own and no standard's: a round sign with the letter of what the
 * alarm warns of, and a broken one with the word "none" where an alarm is looked for and none is recorded.
 */
import type { LegendEntry } from './draw-footer.js';
import { lettering } from './draw-lettering.js';
import type { Laid, Piece } from './draw-stack.js';
import { tidy } from './draw-tidy.js';
import { letteringHeight, letteringWidth } from './letter-widths.js';
import type { Shape } from './packet.js';

export interface AlarmSign {
  readonly warns: 'smoke' | 'carbon-monoxide' | 'both';
  readonly recorded: boolean;
  /** It is past its date: it hangs there and may not warn. */
  readonly past: boolean;
}

const LETTERS = { smoke: 'S', 'carbon-monoxide': 'C', both: 'SC' } as const;

/** Points. */
const RADIUS = 5.5;
const BESIDE = 4;
const AIR = 2;

/** What stands below a sign, if anything. */
const wordOf = ({ recorded, past }: AlarmSign): string => (recorded ? (past ? 'past date' : '') : 'none');

const widthOf = (sign: AlarmSign): number =>
  Math.max(2 * RADIUS + 1, letteringWidth(wordOf(sign), 'unknown'));

/** A sign with its word, its upper edge at `top`. */
function drawSign(sign: AlarmSign, centre: number, top: number): Shape[] {
  const [x, y] = [tidy(centre), tidy(top + RADIUS + 0.5)];
  const word = wordOf(sign);
  return [
    {
      kind: 'circle',
      at: [x, y],
      radius: RADIUS,
      fill: 'paper',
      ...(sign.recorded ? { ink: 'ink', pen: 'medium' } : { ink: 'accent', pen: 'dashed' }),
    },
    lettering(LETTERS[sign.warns], [x, y + 2.4], { ink: sign.recorded ? 'ink' : 'soft' }),
    ...(word === '' ? [] : [lettering(word, [x, top + 2 * RADIUS + 7], { style: 'unknown', ink: 'ink' })]),
  ];
}

/** Signs side by side. */
export function signRow(signs: readonly AlarmSign[]): Piece {
  const width = signs.reduce((sum, sign) => sum + widthOf(sign), BESIDE * (signs.length - 1));
  const word = signs.some((sign) => wordOf(sign) !== '') ? letteringHeight('unknown') : 0;
  return (widest): Laid | undefined =>
    width > widest
      ? undefined
      : {
          width,
          height: 2 * RADIUS + 1 + word + AIR,
          draw: (centre, top) => {
            let x = centre - width / 2;
            return signs.flatMap((sign) => {
              const shapes = drawSign(sign, x + widthOf(sign) / 2, top + AIR);
              x += widthOf(sign) + BESIDE;
              return shapes;
            });
          },
        };
}

/** One sign and what it means, for a legend or a line below a plan. */
export function signEntry(sign: AlarmSign, words: string): LegendEntry {
  return {
    words,
    width: 2 * RADIUS + 1,
    draw: (left, middle) =>
      drawSign({ ...sign, past: false }, left + RADIUS + 0.5, middle - RADIUS - 0.5).slice(0, 2),
  };
}
