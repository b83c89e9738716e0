/** Writes a drawing as SVG whose pens, inks and letters are classes, so that the style sheet colours both schemes. */
import type { Drawing, Shape, XY } from '../packet/packet.js';

/** Screen pixels a point: 96 to 72 an inch. */
const PX_PER_PT = 4 / 3;

/** Which of two drawings this is: the style sheet shows one of the two. */
export type DrawingRole = 'only' | 'wide' | 'narrow';

/**
 * One `<svg>` element at its natural size, shrinking with its column. Read out as a single picture with `alt`;
 * what is hidden by the style sheet is not read out at all.
 */
export function svgOf(drawing: Drawing, alt: string, role: DrawingRole): string {
  const size = `width="${px(drawing.width)}" height="${px(drawing.height)}"`;
  const box = `viewBox="0 0 ${num(drawing.width)} ${num(drawing.height)}"`;
  const open = `<svg class="drawn drawn-${role}" ${box} ${size} role="img" aria-label="${escapeText(alt)}">`;
  return `${open}${drawing.shapes.map(shapeOf).join('')}</svg>`;
}

function shapeOf(shape: Shape): string {
  switch (shape.kind) {
    case 'line': {
      const ends = `x1="${num(shape.from[0])}" y1="${num(shape.from[1])}" x2="${num(shape.to[0])}" y2="${num(shape.to[1])}"`;
      return `<line class="${strokeOf(shape)}" ${ends}/>`;
    }
    case 'path':
      return `<path class="${strokeOf(shape)} fill-${shape.fill}" d="${pathData(shape.points, shape.closed)}"/>`;
    case 'circle': {
      const place = `cx="${num(shape.at[0])}" cy="${num(shape.at[1])}" r="${num(shape.radius)}"`;
      return `<circle class="${strokeOf(shape)} fill-${shape.fill}" ${place}/>`;
    }
    case 'text':
      return textOf(shape);
  }
}

function textOf(shape: Extract<Shape, { kind: 'text' }>): string {
  const x = num(shape.at[0]);
  const y = num(shape.at[1]);
  const turn = shape.turn ? ` transform="rotate(${shape.turn} ${x} ${y})"` : '';
  const names = `letter-${shape.style} text-${shape.ink} from-${shape.anchor}`;
  return `<text class="${names}" x="${x}" y="${y}"${turn}>${escapeText(shape.text)}</text>`;
}

function strokeOf(shape: { readonly pen?: string; readonly ink?: string }): string {
  if (shape.pen === undefined && shape.ink === undefined) return 'pen-none';
  return `pen-${shape.pen ?? 'thin'} ink-${shape.ink ?? 'ink'}`;
}

function pathData(points: readonly XY[], closed: boolean): string {
  const steps = points.map(([x, y], index) => `${index === 0 ? 'M' : 'L'}${num(x)} ${num(y)}`);
  return steps.join('') + (closed ? 'Z' : '');
}

/** Hundredths of a point are finer than any screen. */
function num(value: number): string {
  return String(Math.round(value * 100) / 100);
}

function px(points: number): string {
  return String(Math.round(points * PX_PER_PT));
}

/** Makes any text inert inside an element or a quoted attribute. */
function escapeText(text: string): string {
  return text
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;')
    .replaceAll("'", '&#39;');
}
