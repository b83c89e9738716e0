/** What every block's composition is given, and the few moves that all of them make. */
import type { Pictures, Rich } from '../packet/packet.js';
import type { Box, RuleBox, TagPath, TextBox } from './box.js';
import type { InkName } from './inks.js';
import type { Paper } from './paper.js';
import type { SetLine, Typesetter } from './set-text.js';
import { setText } from './set-text.js';
import type { Spaces } from './spaces.js';
import type { StyleSheet, TypeStyle } from './type-styles.js';
import { baselineOf } from './type-styles.js';

export interface Composer {
  readonly paper: Paper;
  readonly styles: StyleSheet;
  readonly setter: Typesetter;
  readonly pictures: Pictures;
  /** Alternative text of a photo. */
  readonly altOf: (photo: string) => string;
  /** Half a line step: the unit of all vertical space. */
  readonly unitPt: number;
  /** White space between blocks. */
  readonly spaces: Spaces;
  /** An edition of few pages: smaller type, smaller pictures. */
  readonly dense: boolean;
  /** Labels of all records of the packet: their values stand on one line down the whole of it. */
  readonly recordLabels: readonly string[];
  /** The tallest that a photo may be, in points. */
  readonly tallestPhotoPt: number;
}

/** Who a box belongs to. */
export interface Owner {
  readonly block: string;
  readonly tags: TagPath;
}

export function plainRich(text: string): Rich {
  return [{ text }];
}

/** One set line as a box; `align` places it in the width. */
export function lineBox(
  line: SetLine,
  style: TypeStyle,
  at: { readonly x: number; readonly y: number; readonly width: number },
  owner: Owner,
  align: 'left' | 'right' = 'left',
): TextBox {
  const x = align === 'right' ? at.x + at.width - line.widthPt : at.x;
  return {
    kind: 'text',
    x,
    y: at.y,
    width: line.widthPt,
    height: style.leadingPt,
    baseline: baselineOf(style),
    text: line.text,
    spans: line.spans,
    ...owner,
  };
}

/** A column of lines from a top downwards, with its height. */
export function textColumn(
  composer: Composer,
  rich: Rich,
  style: TypeStyle,
  at: { readonly x: number; readonly y: number; readonly width: number },
  owner: Owner,
  align: 'left' | 'right' = 'left',
): { readonly boxes: Box[]; readonly heightPt: number } {
  const lines = setText(composer.setter, rich, style, at.width);
  return {
    boxes: lines.map((line, i) =>
      lineBox(line, style, { ...at, y: at.y + i * style.leadingPt }, owner, align),
    ),
    heightPt: lines.length * style.leadingPt,
  };
}

/** A hairline or another straight rule; always furniture, never content. */
export function rule(
  x: number,
  y: number,
  width: number,
  height: number,
  ink: InkName,
  block: string,
): RuleBox {
  return { kind: 'rule', x, y, width, height, ink, block, tags: [] };
}
