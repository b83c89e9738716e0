/**
 * Where the lettering of a drawing really comes out: measured with the typefaces that print it, not with the packet's
 * own table of widths.
 */
import type { Drawing, Shape, XY } from '../../src/packet/packet.js';
import { LETTER_STYLES } from '../../src/print/drawing-styles.js';
import { loadFaces } from '../../src/print/faces.js';

export interface Box {
  readonly text: string;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

const faces = loadFaces();

/** Width in points of one line as print shapes it. */
export function printedWidth(text: string, style: keyof typeof LETTER_STYLES): number {
  const { face, sizePt } = LETTER_STYLES[style];
  const units = faces[face].shape(text, 'tabular').reduce((sum, glyph) => sum + glyph.advance, 0);
  return (units * sizePt) / 1000;
}

/** From the top of the capitals to the foot of a comma, roughly: shares of the type size. */
const ABOVE = 0.68;
const BELOW = 0.15;

export function textBoxes(drawing: Drawing): Box[] {
  return drawing.shapes.flatMap((shape) => (shape.kind === 'text' ? [boxOf(shape)] : []));
}

function boxOf(shape: Extract<Shape, { kind: 'text' }>): Box {
  const width = printedWidth(shape.text, shape.style);
  const { sizePt } = LETTER_STYLES[shape.style];
  const before = { start: 0, middle: width / 2, end: width }[shape.anchor];
  const [x, y] = shape.at;
  const { text } = shape;
  if (shape.turn === -90)
    return {
      text,
      left: x - ABOVE * sizePt,
      right: x + BELOW * sizePt,
      top: y - width + before,
      bottom: y + before,
    };
  return {
    text,
    left: x - before,
    right: x - before + width,
    top: y - ABOVE * sizePt,
    bottom: y + BELOW * sizePt,
  };
}

const meet = (a: Box, b: Box): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

/** Pairs of texts that lie over each other. */
export function overlaps(drawing: Drawing): string[] {
  const boxes = textBoxes(drawing);
  return boxes.flatMap((a, index) =>
    boxes.slice(index + 1).flatMap((b) => (meet(a, b) ? [`${a.text} over ${b.text}`] : [])),
  );
}

/** Texts and signs that leave the drawing by more than a point. */
export function outside(drawing: Drawing): string[] {
  const signs = drawing.shapes.flatMap((shape): Box[] =>
    shape.kind === 'circle'
      ? [
          {
            text: 'sign',
            left: shape.at[0] - shape.radius,
            right: shape.at[0] + shape.radius,
            top: shape.at[1] - shape.radius,
            bottom: shape.at[1] + shape.radius,
          },
        ]
      : [],
  );
  return [...textBoxes(drawing), ...signs]
    .filter(
      (box) =>
        box.left < -1 || box.top < -1 || box.right > drawing.width + 1 || box.bottom > drawing.height + 1,
    )
    .map((box) => box.text);
}

/** Texts that a wall or a line runs through, so that they are neither in one room nor beside the plan. Hatching is none. */
export function crossed(drawing: Drawing): string[] {
  const walls = drawing.shapes.flatMap((shape): [XY, XY][] => {
    if (shape.kind === 'line') return shape.ink === 'line' ? [] : [[shape.from, shape.to]];
    if (shape.kind !== 'path') return [];
    return shape.points.map((point, index) => [point, shape.points[(index + 1) % shape.points.length] as XY]);
  });
  return textBoxes(drawing)
    .filter((box) => walls.some(([a, b]) => steps(a, b).some((at) => holds(box, at))))
    .map((box) => box.text);
}

const steps = (a: XY, b: XY): XY[] => {
  const count = Math.max(1, Math.ceil(Math.hypot(b[0] - a[0], b[1] - a[1])));
  return Array.from({ length: count + 1 }, (_, i) => [
    a[0] + ((b[0] - a[0]) * i) / count,
    a[1] + ((b[1] - a[1]) * i) / count,
  ]);
};

const holds = (box: Box, [x, y]: XY): boolean =>
  x > box.left + 0.2 && x < box.right - 0.2 && y > box.top + 0.2 && y < box.bottom - 0.2;

/** Everything lettered in a drawing, in order, with blanks between. */
export const lettering = (drawing: Drawing): string =>
  textBoxes(drawing)
    .map((box) => box.text)
    .join(' ');
