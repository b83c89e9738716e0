/** The title block, the contents, and the sentence of standing. */
import type { KeyFact, Packet, Section } from '../packet/packet.js';
import type { Box } from './box.js';
import type { Composer, Owner } from './composer.js';
import { lineBox, plainRich, rule, textColumn } from './composer.js';
import { extentOf, setText } from './set-text.js';
import type { Slab } from './slab.js';
import { slab } from './slab.js';
import { baselineOf } from './type-styles.js';

const FACT_GAP_PT = 14;

/** The date and the digest are facts too, and every title block has them. */
function titleFacts(packet: Packet): KeyFact[] {
  return [
    ...packet.keyFacts,
    { id: 'as-of', label: 'Facts as of', value: packet.asOfText, known: true },
    { id: 'digest', label: 'Digest', value: packet.digest, known: true },
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
  let y = unitPt * 1.5;
  const add = (text: string, style: Composer['styles']['place'], type: string, key: string): void => {
    const column = textColumn(composer, plainRich(text), style, { x: 0, y, width }, owner(type, key));
    boxes.push(...column.boxes);
    y += column.heightPt;
  };
  const edition = setEdition(composer, packet, y);
  boxes.push(...edition.boxes);
  y += edition.heightPt;
  y += unitPt * 0.25;
  add(packet.house.name, styles.houseName, 'H1', 'house');
  y += unitPt * 0.25;
  add(packet.house.place, styles.place, 'P', 'place');
  y += unitPt * 1.75;
  boxes.push(rule(0, y, width, 0.4, 'line', 'title'));
  y += unitPt;
  const facts = setFacts(composer, titleFacts(packet), y);
  boxes.push(...facts.boxes);
  y += facts.heightPt;
  boxes.push(rule(0, y, width, 0.4, 'line', 'title'));
  return [slab(y + 0.4, boxes, { afterPt: unitPt * 2 })];
}

/** The edition's title at the left and its reader at the right, below it where both don't fit on one line. */
export function setEdition(
  composer: Composer,
  packet: Packet,
  y: number,
): { boxes: Box[]; heightPt: number } {
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

/** Widths of the facts in one row, or of as many even columns as facts fit into without breaking. */
function factWidths(composer: Composer, facts: readonly KeyFact[]): number[] {
  const { factLabel, factValue } = composer.styles;
  const needs = facts.map((fact) =>
    Math.max(
      extentOf(composer.setter, plainRich(fact.label), factLabel).naturalPt,
      extentOf(composer.setter, plainRich(fact.value), factValue).naturalPt,
    ),
  );
  const full = composer.paper.fullPt;
  const spare = full - needs.reduce((sum, need) => sum + need, 0) - FACT_GAP_PT * (facts.length - 1);
  if (spare >= 0) return needs.map((need) => need + spare / facts.length);
  // Five or six look better as two rows of three.
  const columns = facts.length <= 6 ? 3 : 4;
  return Array.from({ length: columns }, () => (full - FACT_GAP_PT * (columns - 1)) / columns);
}

function setFacts(
  composer: Composer,
  facts: readonly KeyFact[],
  top: number,
): { boxes: Box[]; heightPt: number } {
  const { factLabel, factValue } = composer.styles;
  const widths = factWidths(composer, facts);
  const boxes: Box[] = [];
  let y = top;
  for (let i = 0; i < facts.length; i += widths.length) {
    let tallest = 0;
    let x = 0;
    facts.slice(i, i + widths.length).forEach((fact, j) => {
      const width = widths[j] ?? 0;
      const owner = (part: string): Owner => ({
        block: 'title',
        tags: [{ type: 'P', key: `title/fact/${fact.id}/${part}` }],
      });
      const label = textColumn(composer, plainRich(fact.label), factLabel, { x, y, width }, owner('label'));
      const valueAt = { x, y: y + label.heightPt, width };
      const value = textColumn(composer, plainRich(fact.value), factValue, valueAt, owner('value'));
      boxes.push(...label.boxes, ...value.boxes);
      tallest = Math.max(tallest, label.heightPt + value.heightPt);
      x += width + FACT_GAP_PT;
    });
    y += tallest + composer.unitPt;
  }
  return { boxes, heightPt: y - top };
}

/** Between the two columns of the contents. */
const CONTENTS_GAP_PT = 20;

/**
 * The sections with the pages they begin on, in two columns, and the sentence of standing in the margin beside them.
 * A section whose page is not known yet has a 0, which takes no other height.
 */
export function setContents(
  composer: Composer,
  packet: Packet,
  pageOf: (section: string) => number | undefined,
): Slab {
  const { styles, paper, unitPt } = composer;
  const titleOwner = { block: 'contents', tags: [{ type: 'P', key: 'contents/title' }] };
  const at = { x: 0, y: 0, width: paper.textPt };
  const title = textColumn(composer, plainRich('Contents'), styles.contentsTitle, at, titleOwner);
  const boxes: Box[] = [...title.boxes];
  const width = (paper.textPt - CONTENTS_GAP_PT) / 2;
  const top = title.heightPt + unitPt * 0.5;
  const half = Math.ceil(packet.sections.length / 2);
  let lowest = top;
  for (const [column, sections] of [packet.sections.slice(0, half), packet.sections.slice(half)].entries()) {
    const x = column * (width + CONTENTS_GAP_PT);
    let y = top;
    for (const section of sections) {
      const entry = contentsEntry(composer, section, pageOf(section.id), { x, y, width });
      boxes.push(...entry.boxes);
      y += entry.heightPt;
    }
    if (sections.length > 0) boxes.push(rule(x, y, width, 0.4, 'line', 'contents'));
    lowest = Math.max(lowest, y);
  }
  const standing = setStandingBeside(composer, packet);
  boxes.push(...standing.boxes);
  return slab(Math.max(lowest + 0.4, standing.heightPt), boxes, {
    afterPt: unitPt * 2,
    anchors: ['contents'],
  });
}

function contentsEntry(
  composer: Composer,
  section: Section,
  page: number | undefined,
  at: { readonly x: number; readonly y: number; readonly width: number },
): { boxes: Box[]; heightPt: number } {
  const style = composer.styles.contents;
  const numberPt = style.sizePt * 2.2;
  const pad = 1.5;
  // Two references, or a reader by ear would hear the title and the number as one word.
  const ownerOf = (part: string): Owner => ({
    block: 'contents',
    tags: [
      { type: 'TOC', key: 'contents' },
      { type: 'TOCI', key: section.id },
      { type: 'Reference', key: part },
    ],
  });
  const title = textColumn(
    composer,
    [{ text: section.title, to: section.id }],
    style,
    { x: at.x, y: at.y + pad, width: at.width - numberPt },
    ownerOf('title'),
  );
  const number = setText(
    composer.setter,
    [{ text: page === undefined ? '0' : `${page}`, to: section.id }],
    { ...style, figures: 'tabular' },
    numberPt,
  );
  const numberAt = {
    x: at.x + at.width - numberPt,
    y: at.y + pad + title.heightPt - style.leadingPt,
    width: numberPt,
  };
  return {
    boxes: [
      rule(at.x, at.y, at.width, 0.4, 'line', 'contents'),
      ...title.boxes,
      ...number.map((line) => lineBox(line, style, numberAt, ownerOf('page'), 'right')),
    ],
    heightPt: title.heightPt + pad * 2,
  };
}

/** The standing sentence, small, in the margin beside the contents. */
function setStandingBeside(composer: Composer, packet: Packet): { boxes: Box[]; heightPt: number } {
  const { paper } = composer;
  const style = composer.styles.note;
  const owner = { block: 'standing', tags: [{ type: 'P', key: 'title/standing' }] };
  const at = {
    x: paper.marginLeftPt - paper.leftPt,
    // On one baseline with the word above the contents.
    y: baselineOf(composer.styles.contentsTitle) - baselineOf(style),
    width: paper.marginPt,
  };
  const column = textColumn(composer, plainRich(packet.standing), style, at, owner);
  return { boxes: column.boxes, heightPt: at.y + column.heightPt };
}

/** The standing sentence as the packet's last words. */
export function setStandingLast(composer: Composer, packet: Packet): Slab[] {
  const { paper, unitPt } = composer;
  const owner = { block: 'standing', tags: [{ type: 'P', key: 'end/standing' }] };
  const top = unitPt;
  // A sheet of few pages says it in one line.
  const [style, width] = composer.dense
    ? [composer.styles.note, paper.fullPt]
    : [composer.styles.small, paper.textPt];
  const column = textColumn(composer, plainRich(packet.standing), style, { x: 0, y: top, width }, owner);
  const line = rule(0, 0, paper.fullPt, 0.6, 'ink', 'standing');
  return [slab(top + column.heightPt, [line, ...column.boxes], { beforePt: unitPt * 2.5 })];
}
