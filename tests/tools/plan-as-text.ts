/** A plan of pages as lines of text: where each box stands, of which block, with which words. Points, from the top left. */
import type { Box, Plan } from '../../src/print/box.js';

const at = (value: number): string => value.toFixed(1).padStart(6);

export function planAsText(plan: Plan): string {
  const pages = plan.pages.map((page) =>
    [`page ${page.number}`, ...page.boxes.map(boxAsText)].map((line) => line.trimEnd()).join('\n'),
  );
  return `${pages.join('\n\n')}\n`;
}

function boxAsText(box: Box): string {
  const place = `${at(box.x)} ${at(box.y)} ${at(box.width)} ${at(box.height)}`;
  return `${place}  ${box.kind.padEnd(7)} ${box.block.padEnd(24)} ${shownBy(box)}`;
}

/** Control and direction marks are written as numbers, so that a diff can be read. */
const plain = (text: string): string =>
  text.replace(
    /[\p{Cc}\p{Cf}\u00AD\u2028\u2029]/gu,
    (sign) => `\\u${(sign.codePointAt(0) ?? 0).toString(16).padStart(4, '0')}`,
  );

function shownBy(box: Box): string {
  switch (box.kind) {
    case 'text':
      return `${box.spans[0]?.sizePt ?? 0} ${plain(box.text)}`;
    case 'rule':
      return box.ink;
    case 'shape':
      return box.standing;
    case 'frame':
      return [box.openTop ? 'open at the top' : '', box.openBottom ? 'open at the bottom' : ''].join(' ');
    case 'picture':
      return box.photo;
    case 'drawing':
      return `${box.drawing.shapes.length} shapes, scale ${box.scale.toFixed(3)}`;
    case 'field':
      return `${box.sizePt} ${box.name}, ${plain(box.label)}: ${plain(box.hint)}`;
  }
}
