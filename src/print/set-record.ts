/** Records: what one thing is, as labels and values. */
import type { RecordBlock } from '../packet/packet.js';
import type { Box, TagPath } from './box.js';
import type { Composer } from './composer.js';
import { plainRich, rule, textColumn } from './composer.js';
import { marginRule, markBoxes, markHeightPt, setMark } from './set-mark.js';
import { extentOf } from './set-text.js';
import type { Slab } from './slab.js';
import { asBlock, moved, slab } from './slab.js';
import { baselineOf } from './type-styles.js';

/** Records taller than this share of a page may be broken between entries. */
const WHOLE_SHARE = 0.5;

/** Between the two columns of entries, and between a label and its value. */
const COLUMN_GAP_PT = 16;
const LABEL_GAP_PT = 8;

/** A label column is at least this wide, and at most this share of what it stands in. */
const LABEL_LEAST_PT = 40;
const LABEL_MOST = 0.42;

interface EntryColumns {
  /** From the left edge of an entry to its value. */
  readonly valuePt: number;
  readonly halfPt: number;
  readonly fullPt: number;
}

type Entry = RecordBlock['entries'][number];

/** Entries two in a row where both are short; a long one has a row of its own. */
export function setRecord(composer: Composer, block: RecordBlock, tags: TagPath): Slab[] {
  const { recordTitle, entryLabel, entryValue } = composer.styles;
  const { paper } = composer;
  const within = [...tags, { type: 'Div', key: block.id }];
  const listTags = [...within, { type: 'L', key: 'entries' }];
  const titleOwner = { block: block.id, tags: [...within, { type: 'P', key: 'title' }] };
  const titleAt = { x: 0, y: 0, width: paper.textPt };
  const title = textColumn(composer, block.title, recordTitle, titleAt, titleOwner);
  const head: Box[] = [...title.boxes, rule(0, title.heightPt + 1, paper.textPt, 0.4, 'line', block.id)];
  const slabs: Slab[] = [{ ...slab(title.heightPt + 3, head), keepNext: true }];
  const halfPt = (paper.textPt - COLUMN_GAP_PT) / 2;
  const widest = Math.max(
    LABEL_LEAST_PT,
    ...composer.recordLabels.map(
      (label) => extentOf(composer.setter, plainRich(label), entryLabel).naturalPt,
    ),
  );
  const valuePt = Math.min(widest, halfPt * LABEL_MOST) + LABEL_GAP_PT;
  const columns: EntryColumns = { valuePt, halfPt, fullPt: paper.textPt };
  const short = (entry: Entry): boolean =>
    extentOf(composer.setter, entry.value, entryValue).naturalPt <= halfPt - valuePt;
  for (let i = 0; i < block.entries.length; ) {
    const [entry, next] = [block.entries[i], block.entries[i + 1]];
    if (entry === undefined) break;
    const both = next !== undefined && short(entry) && short(next);
    slabs.push(...entryRow(composer, block, both ? [entry, next] : [entry], columns, listTags));
    i += both ? 2 : 1;
  }
  return finish(composer, block, within, slabs);
}

function entryRow(
  composer: Composer,
  block: RecordBlock,
  entries: readonly Entry[],
  columns: EntryColumns,
  listTags: TagPath,
): Slab[] {
  const { entryLabel, entryValue } = composer.styles;
  const wide = entries.length > 1 ? columns.halfPt : columns.fullPt;
  let height = 0;
  const boxes = entries.flatMap((entry, i) => {
    const x = i * (columns.halfPt + COLUMN_GAP_PT);
    const entryTags = [...listTags, { type: 'LI', key: entry.id }];
    const label = textColumn(
      composer,
      plainRich(entry.label),
      entryLabel,
      {
        x,
        y: baselineOf(entryValue) - baselineOf(entryLabel),
        width: columns.valuePt - LABEL_GAP_PT,
      },
      { block: block.id, tags: [...entryTags, { type: 'Lbl', key: 'label' }] },
    );
    const value = textColumn(
      composer,
      entry.value,
      entryValue,
      { x: x + columns.valuePt, y: 0, width: wide - columns.valuePt },
      { block: block.id, tags: [...entryTags, { type: 'LBody', key: 'value' }] },
    );
    height = Math.max(height, label.heightPt, value.heightPt);
    return [...label.boxes, ...value.boxes];
  });
  const row = slab(height + 0.75, boxes, { anchors: entries.map((entry) => entry.id) });
  return height < (composer.paper.bottomPt - composer.paper.topPt) * WHOLE_SHARE
    ? [row]
    : linesOf(row, entryValue.leadingPt);
}

/** An entry too long to stand whole, line by line: it goes on over the page's edge as a text does. */
function linesOf(row: Slab, leadingPt: number): Slab[] {
  const count = Math.ceil(row.heightPt / leadingPt);
  return Array.from({ length: count }, (_, line): Slab => {
    const top = line * leadingPt;
    const boxes = row.boxes
      .filter((box) => Math.floor((box.y + box.height / 2) / leadingPt) === line)
      .map((box) => moved(box, 0, -top));
    const keepNext = line < count - 1 && (line < 2 || line === count - 2);
    return {
      ...slab(leadingPt, boxes, { keepNext, anchors: line === 0 ? row.anchors : [] }),
      inner: line > 0,
    };
  });
}

/** Adds the mark, keeps the record together if it fits, and gives it air. */
function finish(composer: Composer, block: RecordBlock, within: TagPath, slabs: Slab[]): Slab[] {
  const { recordTitle } = composer.styles;
  let height = slabs.reduce((sum, each) => sum + each.heightPt, 0);
  const first = slabs[0];
  if (block.mark !== undefined && first !== undefined) {
    const mark = setMark(composer, block.mark);
    const reach = markHeightPt(mark, recordTitle);
    // It hangs beside the title and is read after what it is about.
    const owner = { block: block.id, tags: [...within, { type: 'P', key: 'mark', last: true as const }] };
    const tall = Math.max(height, reach);
    // A short record grows to its mark.
    if (reach > height) slabs.push(slab(reach - height, []));
    height = tall;
    const last = slabs.length - 1;
    const boxes = markBoxes(composer, mark, 0, recordTitle, owner);
    slabs[0] = {
      ...first,
      boxes: [...first.boxes, ...boxes, marginRule(composer, 1.5, reach - 1.5, block.id)],
      reachPt: reach,
    };
    // The mark hangs beside the entries, so they can't part before it ends.
    let down = 0;
    for (let i = 0; i < last && down < reach; i++) {
      const each = slabs[i];
      if (each === undefined) break;
      down += each.heightPt;
      if (down < reach) slabs[i] = { ...each, keepNext: true };
    }
  }
  const whole = height < (composer.paper.bottomPt - composer.paper.topPt) * WHOLE_SHARE;
  const kept = whole
    ? slabs.map((each, i) => ({ ...each, keepNext: each.keepNext || i < slabs.length - 1 }))
    : slabs;
  return asBlock(kept, {
    beforePt: composer.spaces.record,
    afterPt: composer.spaces.record,
    anchors: [block.id],
  });
}
