/** The title block, the contents, and the sentence of standing. */
import type { KeyFact, Packet } from '../packet/packet.js';
import type { Box, TagPath } from './box.js';
import type { Composer, Owner } from './composer.js';
import { lineBox, plainRich, rule, textColumn } from './composer.js';
import { extentOf, setText } from './set-text.js';
import type { Slab } from './slab.js';
import { asBlock, slab } from './slab.js';
import { baselineOf } from './type-styles.js';

/** Facts stand in rows over the full measure; five or six look better as two rows of three. */
function factColumns(count: number): number {
  if (count <= 4) return Math.max(1, count);
  return count <= 6 ? 3 : 4;
}

const FACT_GAP_PT = 14;

/** The date and the digest are facts too, and every title block has them. */
function titleFacts(packet: Packet): KeyFact[] {
  return [
    ...packet.keyFacts,
    { id: 'as-of', label: 'Facts as of', value: packet.asOfText },
    { id: 'digest', label: 'Digest', value: packet.digest },
  ];
}

/** Edition, house, place, facts. */
export function setTitle(composer: Composer, packet: Packet): Slab[] {
  const { styles, paper, unitPt } = composer;
  const width = paper.fullPt;
  const owner = (type: string, key: string): Owner => ({
    block: 'title',
    tags: [{ type, key: `title/${key}` }],
  });
  const boxes: Box[] = [rule(0, 0, width, 2, 'ink', 'title')];
  let y = unitPt * 2;
  const add = (text: string, style: Composer['styles']['place'], type: string, key: string): void => {
    const column = textColumn(composer, plainRich(text), style, { x: 0, y, width }, owner(type, key));
    boxes.push(...column.boxes);
    y += column.heightPt;
  };
  const edition = setEdition(composer, packet, y);
  boxes.push(...edition.boxes);
  y += edition.heightPt;
  y += unitPt * 0.5;
  add(packet.house.name, styles.houseName, 'H1', 'house');
  y += unitPt * 0.5;
  add(packet.house.place, styles.place, 'P', 'place');
  y += unitPt * 2.5;
  boxes.push(rule(0, y, width, 0.4, 'line', 'title'));
  y += unitPt * 1.5;
  const facts = setFacts(composer, titleFacts(packet), y);
  boxes.push(...facts.boxes);
  y += facts.heightPt + unitPt * 0.5;
  boxes.push(rule(0, y, width, 0.4, 'line', 'title'));
  return [slab(y + 0.4, boxes, { afterPt: unitPt * 3 })];
}

/** The edition's title at the left and its reader at the right, below it where both don't fit on one line. */
function setEdition(composer: Composer, packet: Packet, y: number): { boxes: Box[]; heightPt: number } {
  const { styles, paper } = composer;
  const at = { x: 0, y, width: paper.fullPt };
  const title = plainRich(packet.edition.title);
  const reader = plainRich(packet.edition.reader);
  const owner = (key: string): Owner => ({ block: 'title', tags: [{ type: 'P', key: `title/${key}` }] });
  const left = textColumn(composer, title, styles.edition, at, owner('edition'));
  const used =
    extentOf(composer.setter, title, styles.edition).naturalPt +
    extentOf(composer.setter, reader, styles.reader).naturalPt;
  if (used + FACT_GAP_PT <= paper.fullPt) {
    const right = textColumn(composer, reader, styles.reader, at, owner('reader'), 'right');
    return { boxes: [...left.boxes, ...right.boxes], heightPt: left.heightPt };
  }
  const below = { ...at, y: y + left.heightPt };
  const second = textColumn(composer, reader, styles.reader, below, owner('reader'));
  return { boxes: [...left.boxes, ...second.boxes], heightPt: left.heightPt + second.heightPt };
}

function setFacts(
  composer: Composer,
  facts: readonly KeyFact[],
  top: number,
): { boxes: Box[]; heightPt: number } {
  const { factLabel, factValue } = composer.styles;
  const columns = factColumns(facts.length);
  const width = (composer.paper.fullPt - FACT_GAP_PT * (columns - 1)) / columns;
  const boxes: Box[] = [];
  let y = top;
  for (let i = 0; i < facts.length; i += columns) {
    let tallest = 0;
    facts.slice(i, i + columns).forEach((fact, j) => {
      const x = j * (width + FACT_GAP_PT);
      const owner = (part: string): Owner => ({
        block: 'title',
        tags: [{ type: 'P', key: `title/fact/${fact.id}/${part}` }],
      });
      const label = textColumn(composer, plainRich(fact.label), factLabel, { x, y, width }, owner('label'));
      const valueAt = { x, y: y + label.heightPt, width };
      const value = textColumn(composer, plainRich(fact.value), factValue, valueAt, owner('value'));
      boxes.push(...label.boxes, ...value.boxes);
      tallest = Math.max(tallest, label.heightPt + value.heightPt);
    });
    y += tallest + composer.unitPt;
  }
  return { boxes, heightPt: y - top };
}

/** The sections with the pages they begin on; a section whose page is not known yet has none. */
export function setContents(
  composer: Composer,
  packet: Packet,
  pageOf: (section: string) => number | undefined,
): Slab[] {
  const { styles, paper, unitPt } = composer;
  const tags: TagPath = [{ type: 'TOC', key: 'contents' }];
  const titleOwner = { block: 'contents', tags: [{ type: 'P', key: 'contents/title' }] };
  const at = { x: 0, y: 0, width: paper.textPt };
  const title = textColumn(composer, plainRich('Contents'), styles.contentsTitle, at, titleOwner);
  const slabs: Slab[] = [{ ...slab(title.heightPt + unitPt * 0.5, title.boxes), keepNext: true }];
  const numberPt = unitPt * 4;
  const pad = unitPt * 0.5;
  for (const section of packet.sections) {
    // Two references, or a reader by ear would hear the title and the number as one word.
    const ownerOf = (part: string): Owner => ({
      block: 'contents',
      tags: [...tags, { type: 'TOCI', key: section.id }, { type: 'Reference', key: part }],
    });
    const rich = [{ text: section.title, to: section.id }];
    const column = textColumn(
      composer,
      rich,
      styles.contents,
      { x: 0, y: pad, width: paper.textPt - numberPt },
      ownerOf('title'),
    );
    const page = pageOf(section.id);
    const number = setText(
      composer.setter,
      [{ text: page === undefined ? '0' : `${page}`, to: section.id }],
      { ...styles.contents, figures: 'tabular' },
      numberPt,
    );
    const height = column.heightPt + pad * 2;
    const numberAt = {
      x: paper.textPt - numberPt,
      y: pad + column.heightPt - styles.contents.leadingPt,
      width: numberPt,
    };
    slabs.push(
      slab(height, [
        rule(0, 0, paper.textPt, 0.4, 'line', 'contents'),
        ...column.boxes,
        ...number.map((line) => lineBox(line, styles.contents, numberAt, ownerOf('page'), 'right')),
      ]),
    );
  }
  return asBlock(slabs, { beforePt: unitPt * 3, afterPt: unitPt * 3, anchors: ['contents'] });
}

/** The standing sentence, small, in the margin beside the contents or under the title block. */
export function setStandingSmall(composer: Composer, packet: Packet, place: 'margin' | 'measure'): Slab {
  const { paper, unitPt } = composer;
  const style = composer.styles.note;
  const owner = { block: 'standing', tags: [{ type: 'P', key: 'title/standing' }] };
  const at =
    place === 'margin'
      ? {
          x: paper.marginLeftPt - paper.leftPt,
          // On one baseline with the word above the contents.
          y: baselineOf(composer.styles.contentsTitle) - baselineOf(style),
          width: paper.marginPt,
        }
      : { x: 0, y: 0, width: paper.fullPt };
  const column = textColumn(composer, plainRich(packet.standing), style, at, owner);
  return slab(column.heightPt, column.boxes, { beforePt: unitPt, afterPt: unitPt * 2 });
}

/** The standing sentence as the packet's last words. */
export function setStandingLast(composer: Composer, packet: Packet): Slab[] {
  const { paper, unitPt } = composer;
  const owner = { block: 'standing', tags: [{ type: 'P', key: 'end/standing' }] };
  const top = unitPt * 1.5;
  const at = { x: 0, y: top, width: paper.textPt };
  const column = textColumn(composer, plainRich(packet.standing), composer.styles.small, at, owner);
  const line = rule(0, 0, paper.fullPt, 0.6, 'ink', 'standing');
  return [slab(top + column.heightPt, [line, ...column.boxes], { beforePt: unitPt * 3 })];
}
