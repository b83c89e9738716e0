/** Tables: columns sized by what stands in them, hairlines, a head that comes again, marks in the margin. */
import type { Rich, ShownPhoto, TableBlock, TableRow } from '../packet/packet.js';
import type { Box, TagPath } from './box.js';
import { columnWidths } from './column-widths.js';
import type { Composer, Owner } from './composer.js';
import { lineBox, plainRich, rule, textColumn } from './composer.js';
import { PageCursor } from './page-cursor.js';
import { aspectOf, CAPTION_GAP_PT, captionColumn, pictureBoxes } from './set-figure.js';
import { markBoxes, markHeightPt, setMark } from './set-mark.js';
import { extentOf, type SetLine, setText } from './set-text.js';
import type { Slab } from './slab.js';
import { asBlock, moved, slab } from './slab.js';
import type { TypeStyle } from './type-styles.js';

interface Layout {
  readonly widthPt: number;
  readonly columns: readonly {
    readonly x: number;
    readonly width: number;
    readonly align: 'left' | 'right';
  }[];
  readonly padPt: number;
  readonly withMarks: boolean;
}

/** Between two columns. */
const GAP_PT = 11;

/**
 * The width that nearly all cells of a column need. In a long table one long cell in ten may be broken, rather than
 * hold a wide column open for the whole table.
 */
function usualWidth(widths: readonly number[]): number {
  const sorted = [...widths].sort((a, b) => a - b);
  return sorted[Math.ceil(sorted.length * (sorted.length < 8 ? 1 : 0.9)) - 1] ?? 0;
}

function layoutOf(composer: Composer, block: TableBlock): Layout {
  const { cell, tableHead } = composer.styles;
  const extents = block.columns.map((column, i) => {
    const head = extentOf(composer.setter, plainRich(column.title), tableHead);
    const cells = block.rows.map((row) => extentOf(composer.setter, row.cells[i] ?? [], cell));
    return {
      naturalPt: Math.max(head.naturalPt, usualWidth(cells.map((extent) => extent.naturalPt))),
      narrowestPt: Math.max(head.narrowestPt, ...cells.map((extent) => extent.narrowestPt)),
      weight: column.weight,
      stretches: column.align === 'left',
      cellsPt: [head.naturalPt, ...cells.map((extent) => extent.naturalPt)],
    };
  });
  const gaps = GAP_PT * Math.max(0, extents.length - 1);
  const natural = extents.reduce((sum, extent) => sum + extent.naturalPt, gaps);
  const withMarks = block.rows.some((row) => row.mark !== undefined);
  const { textPt, fullPt } = composer.paper;
  // Only a table that leaves the margin empty may use it.
  const widthPt = !withMarks && natural > textPt ? fullPt : textPt;
  const widths = columnWidths(extents, widthPt - gaps);
  let x = 0;
  const columns = block.columns.map((column, i) => {
    const width = widths[i] ?? 0;
    const placed = { x, width, align: column.align };
    x += width + GAP_PT;
    return placed;
  });
  return { widthPt, columns, padPt: composer.spaces.rowPad, withMarks };
}

/** A hairline below a row, and its continuation under the row's mark. */
function rowRules(
  composer: Composer,
  layout: Layout,
  y: number,
  thickness: number,
  ink: 'line' | 'ink',
  block: string,
): Box[] {
  const rules: Box[] = [rule(0, y, layout.widthPt, thickness, ink, block)];
  if (layout.withMarks) {
    const x = composer.paper.marginLeftPt - composer.paper.leftPt;
    rules.push(rule(x, y, composer.paper.marginPt, thickness, ink, block));
  }
  return rules;
}

/**
 * An empty cell is a cell all the same: a line without words, so that every row of the structure has as many (PDF/UA-1,
 * 7.5).
 */
const inElement = (lines: readonly SetLine[]): readonly SetLine[] =>
  lines.length > 0 ? lines : [{ text: '', widthPt: 0, spans: [] }];

function setHead(composer: Composer, block: TableBlock, layout: Layout, tags: TagPath | undefined): Slab {
  const style = composer.styles.tableHead;
  const set = block.columns.map((column, i) =>
    setText(composer.setter, plainRich(column.title), style, layout.columns[i]?.width ?? 0),
  );
  const lines = Math.max(1, ...set.map((column) => column.length));
  const height = lines * style.leadingPt + layout.padPt * 1.5;
  const boxes = set.flatMap((column, i) => {
    const at = layout.columns[i];
    if (at === undefined) return [];
    const owner: Owner = {
      block: block.id,
      // A head that comes again on the next page is furniture there.
      tags:
        tags === undefined
          ? []
          : [...tags, { type: 'TR', key: 'head' }, { type: 'TH', key: `${i}`, scope: 'Column' }],
    };
    // Heads stand on the rule: short ones go down beside long ones.
    const top = (lines - column.length) * style.leadingPt;
    return inElement(column).map((line, j) =>
      lineBox(line, style, { x: at.x, y: top + j * style.leadingPt, width: at.width }, owner, at.align),
    );
  });
  return {
    ...slab(height, [...boxes, ...rowRules(composer, layout, height - 0.7, 0.7, 'ink', block.id)]),
    keepNext: true,
  };
}

function cellTags(tags: TagPath, row: TableRow, column: number): TagPath {
  const rowTag = { type: 'TR', key: row.id };
  return column === 0
    ? [...tags, rowTag, { type: 'TH', key: '0', scope: 'Row' }]
    : [...tags, rowTag, { type: 'TD', key: `${column}` }];
}

function setRow(composer: Composer, block: TableBlock, row: TableRow, layout: Layout, tags: TagPath): Slab[] {
  const style = composer.styles.cell;
  const cells = layout.columns.map((column, i) =>
    setText(composer.setter, row.cells[i] ?? [], style, column.width),
  );
  const mark = row.mark === undefined ? undefined : setMark(composer, row.mark);
  const lineCount = Math.max(1, ...cells.map((cell) => cell.length));
  const content = Math.max(lineCount * style.leadingPt, mark === undefined ? 0 : markHeightPt(mark, style));
  const frame = composer.paper.bottomPt - composer.paper.topPt;
  if (content > frame * 0.8) return setTallRow(composer, block, row, layout, tags, cells, lineCount);
  const boxes = layout.columns.flatMap((column, i) => {
    const owner = { block: block.id, tags: cellTags(tags, row, i) };
    return inElement(cells[i] ?? []).map((line, j) =>
      lineBox(
        line,
        style,
        { x: column.x, y: layout.padPt + j * style.leadingPt, width: column.width },
        owner,
        column.align,
      ),
    );
  });
  if (mark !== undefined) {
    const path = [...cellTags(tags, row, layout.columns.length - 1), { type: 'P', key: 'mark' }];
    boxes.push(
      ...(markBoxes(composer, mark, layout.padPt, style, { block: block.id, tags: path }) as typeof boxes),
    );
  }
  const height = content + layout.padPt * 2;
  const above = row.weight === 'total' ? rowRules(composer, layout, -0.7, 0.7, 'ink', block.id) : [];
  const below = rowRules(composer, layout, height - 0.4, 0.4, 'line', block.id);
  return [slab(height, [...above, ...boxes, ...below], { anchors: [row.id] })];
}

/** A row taller than a page: one slab a line, so that it can go on. */
function setTallRow(
  composer: Composer,
  block: TableBlock,
  row: TableRow,
  layout: Layout,
  tags: TagPath,
  cells: readonly (readonly Parameters<typeof lineBox>[0][])[],
  lineCount: number,
): Slab[] {
  const style: TypeStyle = composer.styles.cell;
  const mark = row.mark === undefined ? undefined : setMark(composer, row.mark);
  const slabs: Slab[] = [];
  for (let j = 0; j < lineCount; j++) {
    const boxes: Box[] = layout.columns.flatMap((column, i) => {
      const line = inElement(cells[i] ?? [])[j];
      if (line === undefined) return [];
      const owner = { block: block.id, tags: cellTags(tags, row, i) };
      return [lineBox(line, style, { x: column.x, y: 0, width: column.width }, owner, column.align)];
    });
    const last = j === lineCount - 1;
    if (last) boxes.push(...rowRules(composer, layout, style.leadingPt + 3, 0.4, 'line', block.id));
    slabs.push(slab(style.leadingPt + (last ? 3.4 : 0), boxes));
  }
  const first = slabs[0];
  if (mark !== undefined && first !== undefined) {
    const path = [...cellTags(tags, row, layout.columns.length - 1), { type: 'P', key: 'mark' }];
    const boxes = markBoxes(composer, mark, 0, style, { block: block.id, tags: path });
    slabs[0] = { ...first, boxes: [...first.boxes, ...boxes], reachPt: markHeightPt(mark, style) };
  }
  return asBlock(slabs, { anchors: [row.id] });
}

/** The table, and at its right the paper that its rows rest on: one slab, so that both stay together. */
export function setTable(composer: Composer, block: TableBlock, tags: TagPath): Slab[] {
  return block.plate === undefined
    ? setRows(composer, block, tags)
    : setPlated(composer, block, block.plate, tags);
}

/** A paper's picture is this much of the measure wide, and no taller than this share of a sheet. */
const PLATE = { share: 0.46, tallest: 0.42 };

function setPlated(composer: Composer, block: TableBlock, plate: ShownPhoto, tags: TagPath): Slab[] {
  const { paper, spaces } = composer;
  const frame = paper.bottomPt - paper.topPt;
  const aspect = aspectOf(composer, plate.photo);
  const width = Math.min(paper.fullPt * PLATE.share, (frame * PLATE.tallest) / aspect);
  const height = width * aspect;
  const pictureAt = (x: number): { boxes: Box[]; heightPt: number } => {
    const place = { block: block.id, tags, key: plate.id };
    const picture = pictureBoxes(composer, plate.photo, { x, y: 0, width, height }, place);
    const under = { x, y: height + CAPTION_GAP_PT, width };
    const caption = captionColumn(composer, plate.caption, under, place);
    const outline = outlineBoxes({ x, width, height }, block.id);
    // Over the picture, whose own paper is white to its edge.
    return { boxes: [...picture, ...outline, ...caption.boxes], heightPt: height + caption.heightPt };
  };
  const left = paper.fullPt - width - PLATE_GAP_PT;
  const narrow = { ...composer, paper: { ...paper, textPt: left, fullPt: left } };
  const cursor = new PageCursor(paper);
  const boxes: Box[] = [];
  const anchors: string[] = [];
  for (const each of setRows(narrow, block, tags)) {
    const { top } = cursor.advance(each);
    boxes.push(...each.boxes.map((box) => moved(box, 0, top)));
    anchors.push(...each.anchors);
  }
  const spaced = { beforePt: spaces.figure, afterPt: spaces.table * 1.5 };
  if (cursor.y > frame * 0.9) {
    // Rows without end go on over the pages, and the picture comes behind them.
    const picture = pictureAt(0);
    return [
      ...setRows(composer, block, tags),
      slab(picture.heightPt, picture.boxes, { ...spaced, anchors: [plate.id] }),
    ];
  }
  const picture = pictureAt(left + PLATE_GAP_PT);
  return [
    slab(Math.max(picture.heightPt, cursor.y), [...boxes, ...picture.boxes], {
      ...spaced,
      anchors: [...anchors, plate.id],
    }),
  ];
}

const PLATE_GAP_PT = 14;

/** A hairline around a white paper on white paper. */
function outlineBoxes(
  { x: from, width, height }: { readonly x: number; readonly width: number; readonly height: number },
  block: string,
): Box[] {
  const line = (x: number, y: number, wide: number, high: number): Box => ({
    kind: 'rule',
    ink: 'line',
    x: from + x,
    y,
    width: wide,
    height: high,
    block,
    tags: [],
  });
  return [
    line(0, 0, width, 0.4),
    line(0, height, width, 0.4),
    line(0, 0, 0.4, height),
    line(width, 0, 0.4, height),
  ];
}

/** More rows than these would leave too much of the sheet before them white. */
const MOST_TOGETHER = 14;

/** Caption, head, rows, note. The head comes again where a page opens with a row. */
function setRows(composer: Composer, block: TableBlock, tags: TagPath): Slab[] {
  const layout = layoutOf(composer, block);
  const tableTags = [...tags, { type: 'Table', key: block.id }];
  const { tableCaption, note } = composer.styles;
  const slabs: Slab[] = [];
  if (block.caption !== '') {
    const owner = { block: block.id, tags: [...tableTags, { type: 'Caption', key: 'caption' }] };
    const at = { x: 0, y: 0, width: layout.widthPt };
    const caption = textColumn(composer, plainRich(block.caption), tableCaption, at, owner);
    slabs.push({ ...slab(caption.heightPt + 2, caption.boxes), keepNext: true });
  }
  slabs.push(setHead(composer, block, layout, tableTags));
  const resume = [setHead(composer, block, layout, undefined)];
  const together = block.together === true && block.rows.length <= MOST_TOGETHER;
  block.rows.forEach((row, i) => {
    const next = block.rows[i + 1];
    // The first two rows stay with the head, the last two with each other, a sum with the row before it, a remark
    // with the last row: a single row on a page looks lost.
    const lastTwo = i === block.rows.length - 2;
    const keepNext =
      next === undefined
        ? block.note !== undefined
        : together || i === 0 || lastTwo || next.weight === 'total';
    const set = setRow(composer, block, row, layout, tableTags).map((each) => ({ ...each, resume }));
    slabs.push(...(keepNext ? asBlock(set, { keepNext: true }) : set));
  });
  if (block.note !== undefined) slabs.push(...setNote(composer, block, block.note, note, layout, tags));
  return asBlock(slabs, {
    beforePt: composer.spaces.table,
    afterPt: composer.spaces.table,
    anchors: [block.id],
  });
}

function setNote(
  composer: Composer,
  block: TableBlock,
  text: Rich,
  style: TypeStyle,
  layout: Layout,
  tags: TagPath,
): Slab[] {
  const owner = { block: block.id, tags: [...tags, { type: 'P', key: `${block.id}/note` }] };
  // A remark as wide as the sheet would have lines too long to follow.
  const width = Math.min(layout.widthPt, composer.paper.textPt * 1.15);
  const column = textColumn(composer, text, style, { x: 0, y: composer.unitPt * 0.5, width }, owner);
  return [slab(column.heightPt + composer.unitPt * 0.5, column.boxes)];
}
