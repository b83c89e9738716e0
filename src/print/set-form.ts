/**
 * Forms: what filling one in means, then lines to write on, each with its label below it.
 *
 * A form stays on one page, so that a signature never stands on a sheet without the words it was given for.
 */
import type { FormBlock } from '../packet/packet.js';
import type { Box, FieldBox, TagPath } from './box.js';
import type { Composer, Owner } from './composer.js';
import { lineBox, plainRich, rule, textColumn } from './composer.js';
import { setText } from './set-text.js';
import type { Slab } from './slab.js';
import { asBlock, slab } from './slab.js';

/** Between two fields of a row. */
const GAP_PT = 14;

/** Shorter than this, a line is too short to write a date on by hand. */
const LEAST_LINE_PT = 80;

/** Room for a hand above a line, in half line steps: 26 points, or 21 on a sheet of few pages. */
const ROOM_UNITS = 4;

/** What is typed stands close to the line, so the field in the file is lower than the room for a hand. */
const FIELD_PT = 17;

const LINE_PT = 0.6;

type Field = FormBlock['fields'][number];

export function setForm(composer: Composer, block: FormBlock, tags: TagPath): Slab[] {
  const { body } = composer.styles;
  const owner: Owner = { block: block.id, tags: [...tags, { type: 'P', key: block.id }] };
  const { textPt } = composer.paper;
  const text = setText(composer.setter, block.text, body, textPt).map((line) =>
    slab(body.leadingPt, [lineBox(line, body, { x: 0, y: 0, width: textPt }, owner)]),
  );
  const measurePt = measureOf(composer, block);
  const rows = rowsOf(block.fields).map((row) => setFields(composer, block, row, measurePt, tags));
  const slabs = [...text, ...rows];
  const kept = slabs.map((each, i) => ({ ...each, keepNext: i < slabs.length - 1 }));
  return asBlock(kept, {
    beforePt: composer.spaces.text,
    afterPt: composer.spaces.text,
    onGrid: true,
    anchors: [block.id],
  });
}

/** Fields side by side as far as their shares go. */
function rowsOf(fields: FormBlock['fields']): Field[][] {
  const rows: Field[][] = [];
  let filled = 1;
  for (const field of fields) {
    // Shares are written with two decimals, and their sums leave dust.
    if (filled + field.share > 1.001) {
      rows.push([]);
      filled = 0;
    }
    rows.at(-1)?.push(field);
    filled += field.share;
  }
  return rows;
}

const widthPt = (field: Field, measurePt: number): number => (measurePt + GAP_PT) * field.share - GAP_PT;

/** A form leaves the evidence margin empty, and uses it where lines in the text column would be too short. */
function measureOf(composer: Composer, block: FormBlock): number {
  const { textPt, fullPt } = composer.paper;
  return block.fields.every((field) => widthPt(field, textPt) >= LEAST_LINE_PT) ? textPt : fullPt;
}

function setFields(
  composer: Composer,
  block: FormBlock,
  row: readonly Field[],
  measurePt: number,
  tags: TagPath,
): Slab {
  const style = composer.styles.factLabel;
  const linePt = composer.unitPt * ROOM_UNITS;
  let x = 0;
  let heightPt = 0;
  const boxes = row.flatMap((field): Box[] => {
    const width = widthPt(field, measurePt);
    const fieldTags = [...tags, { type: 'Div', key: field.id }];
    const labelled: Owner = { block: block.id, tags: [...fieldTags, { type: 'P', key: 'label' }] };
    const labelAt = { x, y: linePt + LINE_PT + 1.4, width };
    const label = textColumn(composer, plainRich(field.label), style, labelAt, labelled);
    heightPt = Math.max(heightPt, labelAt.y + label.heightPt);
    const line = lineOf(composer, block, field, { x, y: linePt, width }, fieldTags);
    x += width + GAP_PT;
    return [...label.boxes, ...line];
  });
  // Whole steps, so that the lines of all rows stand on the grid.
  const steps = Math.ceil(heightPt / composer.unitPt - 0.01);
  return slab(steps * composer.unitPt, boxes, { anchors: row.map((field) => field.id) });
}

/** The line itself. Under a field it is furniture; where there is none, it is what the label speaks of. */
function lineOf(
  composer: Composer,
  block: FormBlock,
  field: Field,
  at: { readonly x: number; readonly y: number; readonly width: number },
  tags: TagPath,
): Box[] {
  const line = rule(at.x, at.y, at.width, LINE_PT, 'ink', block.id);
  if (field.inInk) return [{ ...line, tags: [...tags, { type: 'Form', key: 'line', inInk: field.hint }] }];
  const input: FieldBox = {
    kind: 'field',
    x: at.x,
    y: at.y - FIELD_PT,
    width: at.width,
    height: FIELD_PT,
    name: field.id,
    label: field.label,
    hint: field.hint,
    sizePt: composer.styles.body.sizePt,
    block: block.id,
    tags: [...tags, { type: 'Form', key: 'field' }],
  };
  return [line, input];
}
