/** A drawing's shapes as PDF vectors. Inside, y grows downwards as in the drawing; letters are turned back. */
import type { Fill, Ink, Pen, Shape, XY } from '../packet/packet.js';
import type { DrawingBox } from './box.js';
import { DASH_PT, LETTER_STYLES, PENS } from './drawing-styles.js';
import { normaliseText } from './letters.js';
import { numeral } from './numeral.js';
import type { Canvas } from './paint.js';

/** Control points this share of the radius away make a circle of four curves, wrong by 0.03 % of the radius. */
const ROUND = 0.5523;

function point([x, y]: XY): string {
  return `${numeral(x)} ${numeral(y)}`;
}

function setPen(canvas: Canvas, pen: Pen, ink: Ink): void {
  canvas.stroke(ink);
  canvas.op(`${PENS[pen]} w`);
  canvas.op(pen === 'dashed' ? `[${DASH_PT.join(' ')}] 0 d` : '[] 0 d');
}

/** Fills, strokes or both the path that stands ready. */
function finishPath(
  canvas: Canvas,
  path: string,
  fill: Fill,
  pen: Pen | undefined,
  ink: Ink | undefined,
): void {
  const strokes = pen !== undefined;
  if (strokes) setPen(canvas, pen, ink ?? 'ink');
  if (fill !== 'none') canvas.fill(fill);
  if (fill === 'none' && !strokes) return;
  canvas.op(`${path} ${fill === 'none' ? 'S' : strokes ? 'B' : 'f'}`);
}

function circlePath([x, y]: XY, r: number): string {
  const k = r * ROUND;
  const curve = (...points: XY[]): string => `${points.map(point).join(' ')} c`;
  return [
    `${point([x + r, y])} m`,
    curve([x + r, y + k], [x + k, y + r], [x, y + r]),
    curve([x - k, y + r], [x - r, y + k], [x - r, y]),
    curve([x - r, y - k], [x - k, y - r], [x, y - r]),
    curve([x + k, y - r], [x + r, y - k], [x + r, y]),
    'h',
  ].join(' ');
}

function paintLettering(canvas: Canvas, shape: Extract<Shape, { kind: 'text' }>): void {
  const style = LETTER_STYLES[shape.style];
  const text = normaliseText(shape.text)
    .replace(/\u00A0/gu, ' ')
    .replace(/\u2011/gu, '-');
  const blank = canvas.letters.blank(style.face);
  const units = text
    .split(' ')
    .reduce(
      (sum, word, i) =>
        sum +
        (i > 0 ? blank : 0) +
        (word === '' ? 0 : canvas.letters.shape(style.face, style.figures, word).width),
      0,
    );
  const width = (units * style.sizePt) / 1000;
  const back = shape.anchor === 'start' ? 0 : shape.anchor === 'middle' ? width / 2 : width;
  const [cos, sin] = shape.turn === 90 ? [0, 1] : shape.turn === -90 ? [0, -1] : [1, 0];
  const at: XY = [shape.at[0] - back * cos, shape.at[1] - back * sin];
  canvas.fill(shape.ink);
  canvas.op('BT');
  canvas.op(`${cos} ${sin} ${sin} ${-cos} ${point(at)} Tm`);
  // A blank at the end keeps labels apart for who listens or copies.
  canvas.show(style.face, style.figures, style.sizePt, `${text} `);
  canvas.op('ET');
}

function paintShape(canvas: Canvas, shape: Shape): void {
  switch (shape.kind) {
    case 'line':
      setPen(canvas, shape.pen, shape.ink);
      canvas.op(`${point(shape.from)} m ${point(shape.to)} l S`);
      return;
    case 'path': {
      const [first, ...rest] = shape.points;
      if (first === undefined) return;
      const path = [`${point(first)} m`, ...rest.map((each) => `${point(each)} l`)];
      if (shape.closed) path.push('h');
      finishPath(canvas, path.join(' '), shape.fill, shape.pen, shape.ink);
      return;
    }
    case 'circle':
      finishPath(canvas, circlePath(shape.at, shape.radius), shape.fill, shape.pen, shape.ink);
      return;
    case 'text':
      paintLettering(canvas, shape);
  }
}

export function paintDrawing(canvas: Canvas, box: DrawingBox, pageHeight: number): void {
  const s = numeral(box.scale);
  canvas.save();
  canvas.op(`${s} 0 0 ${box.scale === 0 ? '0' : `-${s}`} ${point([box.x, pageHeight - box.y])} cm`);
  for (const shape of box.drawing.shapes) paintShape(canvas, shape);
  canvas.restore();
}
