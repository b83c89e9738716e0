/** What must not be in any plan of pages: boxes outside the text area, lines that run into each other. */
import type { Drawing } from '../../src/packet/packet.js';
import type { Box, Plan, TextBox } from '../../src/print/box.js';
import { LETTER_STYLES } from '../../src/print/drawing-styles.js';
import { type Letters, normaliseText } from '../../src/print/letters.js';

/** Rounding of lengths, in points. */
const NEAR = 0.01;
/** An ascender may stand this much above the first line's box. */
const ABOVE = 0.75;

const isFurniture = (box: Box): boolean => box.block === 'head' || box.block === 'foot';
const isText = (box: Box): box is TextBox => box.kind === 'text';

const shown = (box: Box): string =>
  `${box.kind} of ${box.block}${isText(box) ? ` “${box.text.slice(0, 40)}”` : ''}`;

/** Boxes that leave the text area, or, of running heads and feet, the sheet's width between the margins. */
export function boxesOutside({ paper, pages }: Plan): string[] {
  return pages.flatMap((page) =>
    page.boxes
      .filter(
        (box) =>
          box.x < paper.leftPt - NEAR ||
          box.x + box.width > paper.leftPt + paper.fullPt + NEAR ||
          (!isFurniture(box) &&
            (box.y < paper.topPt - ABOVE || box.y + box.height > paper.bottomPt + NEAR)) ||
          box.y < 0 ||
          box.y + box.height > paper.heightPt,
      )
      .map((box) => `page ${page.number}: ${shown(box)}`),
  );
}

/** Pairs of lines of text that lie over each other. */
export function collisions({ pages }: Plan): string[] {
  return pages.flatMap((page) => {
    const boxes = page.boxes.filter(isText);
    return boxes.flatMap((a, index) =>
      boxes
        .slice(index + 1)
        .filter(
          (b) =>
            a.x < b.x + b.width - NEAR &&
            b.x < a.x + a.width - NEAR &&
            a.y < b.y + b.height - NEAR &&
            b.y < a.y + a.height - NEAR,
        )
        .map((b) => `page ${page.number}: ${shown(a)} and ${shown(b)}`),
    );
  });
}

/** Spans that reach further than their box says: painted words that no box accounts for. */
export function spansOutside({ pages }: Plan): string[] {
  return pages.flatMap((page) =>
    page.boxes
      .filter(isText)
      .filter((box) =>
        box.spans.some((span) => span.xPt < -NEAR || span.xPt + span.widthPt > box.width + 0.5),
      )
      .map((box) => `page ${page.number}: ${shown(box)}`),
  );
}

/** Letters of drawings that leave their drawing. */
export function letteringOutside({ pages }: Plan, letters: Letters): string[] {
  return pages.flatMap((page) =>
    page.boxes.flatMap((box) =>
      box.kind !== 'drawing'
        ? []
        : letteringBeyond(box.drawing, letters).map((text) => `page ${page.number}, ${box.block}: ${text}`),
    ),
  );
}

function letteringBeyond({ width, height, shapes }: Drawing, letters: Letters): string[] {
  return shapes.flatMap((shape) => {
    if (shape.kind !== 'text') return [];
    const { face, sizePt } = LETTER_STYLES[shape.style];
    const long = (letters.shape(face, 'tabular', normaliseText(shape.text)).width * sizePt) / 1000;
    const before = shape.anchor === 'start' ? 0 : shape.anchor === 'middle' ? long / 2 : long;
    const turned = shape.turn === 90 || shape.turn === -90;
    const [along, limit] = turned ? [shape.at[1], height] : [shape.at[0], width];
    const [from, to] =
      shape.turn === -90
        ? [along - (long - before), along + before]
        : [along - before, along - before + long];
    // Half a point: the drawing is made from widths that are rounded.
    return from < -0.5 || to > limit + 0.5
      ? [`“${shape.text.slice(0, 40)}” from ${from} to ${to} of ${limit}`]
      : [];
  });
}
