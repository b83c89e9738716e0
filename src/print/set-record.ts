/** Records: what one thing is, as label and value in two columns. */
import type { RecordBlock } from '../packet/packet.js';
import type { Box, TagPath } from './box.js';
import type { Composer } from './composer.js';
import { plainRich, rule, textColumn } from './composer.js';
import { marginRule, markBoxes, markHeightPt, setMark } from './set-mark.js';
import { extentOf } from './set-text.js';
import type { Slab } from './slab.js';
import { asBlock, slab } from './slab.js';
import { baselineOf } from './type-styles.js';

/** Records taller than this share of a page may be broken between entries. */
const WHOLE_SHARE = 0.5;

export function setRecord(composer: Composer, block: RecordBlock, tags: TagPath): Slab[] {
  const { recordTitle, entryLabel, entryValue } = composer.styles;
  const { paper, unitPt } = composer;
  const listTags = [...tags, { type: 'L', key: block.id }];
  const titleOwner = { block: block.id, tags: [...tags, { type: 'P', key: `${block.id}/title` }] };
  const title = textColumn(
    composer,
    block.title,
    recordTitle,
    { x: 0, y: 0, width: paper.textPt },
    titleOwner,
  );
  const head: Box[] = [...title.boxes, rule(0, title.heightPt + 1.5, paper.textPt, 0.4, 'line', block.id)];
  const slabs: Slab[] = [{ ...slab(title.heightPt + unitPt * 0.5, head), keepNext: true }];

  const widestLabel = Math.max(
    0,
    ...block.entries.map((entry) => extentOf(composer.setter, plainRich(entry.label), entryLabel).naturalPt),
  );
  const labelPt = Math.min(Math.max(widestLabel, 62), paper.textPt * 0.34);
  const valueX = labelPt + unitPt * 2;
  for (const entry of block.entries) {
    const entryTags = [...listTags, { type: 'LI', key: entry.id }];
    const label = textColumn(
      composer,
      plainRich(entry.label),
      entryLabel,
      { x: 0, y: 1 + baselineOf(entryValue) - baselineOf(entryLabel), width: labelPt },
      { block: block.id, tags: [...entryTags, { type: 'Lbl', key: 'label' }] },
    );
    const value = textColumn(
      composer,
      entry.value,
      entryValue,
      { x: valueX, y: 1, width: paper.textPt - valueX },
      { block: block.id, tags: [...entryTags, { type: 'LBody', key: 'value' }] },
    );
    const height = Math.max(label.heightPt, value.heightPt) + 2;
    slabs.push(slab(height, [...label.boxes, ...value.boxes], { anchors: [entry.id] }));
  }
  return finish(composer, block, tags, slabs);
}

/** Adds the mark, keeps the record together if it fits, and gives it air. */
function finish(composer: Composer, block: RecordBlock, tags: TagPath, slabs: Slab[]): Slab[] {
  const { recordTitle } = composer.styles;
  let height = slabs.reduce((sum, each) => sum + each.heightPt, 0);
  const first = slabs[0];
  if (block.mark !== undefined && first !== undefined) {
    const mark = setMark(composer, block.mark);
    const reach = markHeightPt(mark, recordTitle);
    const owner = { block: block.id, tags: [...tags, { type: 'P', key: `${block.id}/mark` }] };
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
    beforePt: composer.unitPt * 2,
    afterPt: composer.unitPt * 2,
    anchors: [block.id],
  });
}
