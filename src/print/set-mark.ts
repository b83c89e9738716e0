/** The evidence margin: a mark beside the first line of what it speaks for. */
import type { EvidenceMark, Rich } from '../packet/packet.js';
import type { Box } from './box.js';
import type { Composer, Owner } from './composer.js';
import { lineBox, rule } from './composer.js';
import type { SetLine } from './set-text.js';
import { setText } from './set-text.js';
import type { Slab } from './slab.js';
import { slab } from './slab.js';
import type { TypeStyle } from './type-styles.js';
import { baselineOf } from './type-styles.js';

/** The shape and the blank after it; the words hang from here. */
const SHAPE_PT = 4.6;
const HANG_PT = 8.6;
/** The hairline between gutter and margin stands this far before the margin. */
const RULE_OFFSET_PT = 9;

export interface SetMark {
  readonly standing: EvidenceMark['standing'];
  readonly lines: readonly SetLine[];
  readonly style: TypeStyle;
}

function richOfMark(mark: EvidenceMark): Rich {
  const word = { text: mark.word, manner: 'strong' as const };
  const detail = mark.detail.some((run) => run.text.trim() !== '') ? mark.detail : [];
  return detail.length === 0 ? [word] : [word, { text: ' · ' }, ...detail];
}

/** Breaks a mark's words to the margin's width. */
export function setMark(composer: Composer, mark: EvidenceMark): SetMark {
  const style = composer.styles.mark;
  const lines = setText(composer.setter, richOfMark(mark), style, composer.paper.marginPt - HANG_PT);
  return { standing: mark.standing, lines, style };
}

export function markHeightPt(mark: SetMark, beside: TypeStyle): number {
  return markTopPt(mark, beside) + mark.lines.length * mark.style.leadingPt;
}

/** From the top of the text's first line to the mark's first: both stand on one baseline. */
function markTopPt(mark: SetMark, beside: TypeStyle): number {
  return Math.max(0, baselineOf(beside) - baselineOf(mark.style));
}

/** The boxes of a mark whose text begins at `y`, in the style `beside`. */
export function markBoxes(
  composer: Composer,
  mark: SetMark,
  y: number,
  beside: TypeStyle,
  owner: Owner,
): Box[] {
  const left = composer.paper.marginLeftPt - composer.paper.leftPt;
  const top = y + markTopPt(mark, beside);
  const baseline = top + baselineOf(mark.style);
  const shape: Box = {
    kind: 'shape',
    standing: mark.standing,
    x: left,
    // Centred on the small letters' height.
    y: baseline - mark.style.sizePt * 0.245 - SHAPE_PT / 2,
    width: SHAPE_PT,
    height: SHAPE_PT,
    block: owner.block,
    tags: [],
  };
  return [shape, ...markLineBoxes(composer, mark, 0, mark.lines.length, top, owner)];
}

function markLineBoxes(
  composer: Composer,
  mark: SetMark,
  from: number,
  to: number,
  top: number,
  owner: Owner,
): Box[] {
  const x = composer.paper.marginLeftPt - composer.paper.leftPt + HANG_PT;
  const width = composer.paper.marginPt - HANG_PT;
  return mark.lines
    .slice(from, to)
    .map((line, i) => lineBox(line, mark.style, { x, y: top + i * mark.style.leadingPt, width }, owner));
}

/** The hairline that ties a mark to the height of its text. */
export function marginRule(composer: Composer, y: number, height: number, block: string): Box {
  const x = composer.paper.marginLeftPt - composer.paper.leftPt - RULE_OFFSET_PT;
  return rule(x, y, 0.5, height, 'line', block);
}

/** Who the mark of a text belongs to: a paragraph of its own, after the text's. */
function markOwner(owner: Owner): Owner {
  const last = owner.tags.at(-1);
  const key = `${last?.key ?? owner.block}/mark`;
  return { block: owner.block, tags: [...owner.tags.slice(0, -1), { type: 'P', key }] };
}

/** Texts up to this many lines are never broken over a page. */
const WHOLE_LINES = 5;

/**
 * Lines of text with a mark beside the first: slabs as tall as the taller of the two.
 *
 * Short texts stay whole. Long ones may break after the mark has ended, with two lines at least on each side; a
 * mark so long that it would fill a page goes on beside and below its text.
 */
export function besideMark(
  composer: Composer,
  lines: readonly SetLine[],
  style: TypeStyle,
  indentPt: number,
  mark: EvidenceMark | undefined,
  owner: Owner,
): Slab[] {
  const placed = mark === undefined ? undefined : setMark(composer, mark);
  const markHeight = placed === undefined ? 0 : markHeightPt(placed, style);
  const frame = composer.paper.bottomPt - composer.paper.topPt;
  if (placed !== undefined && markHeight > frame / 2) {
    return longMark(composer, lines, style, indentPt, placed, owner);
  }
  const textHeight = lines.length * style.leadingPt;
  const first = firstStrip(lines.length, style, markHeight);
  const height = first === lines.length ? Math.max(textHeight, markHeight) : first * style.leadingPt;
  const boxes = stripBoxes(composer, lines.slice(0, first), style, indentPt, owner);
  if (placed !== undefined) {
    boxes.push(...markBoxes(composer, placed, 0, style, markOwner(owner)));
    boxes.push(marginRule(composer, 1.5, height - 3, owner.block));
  }
  const rest = lines.slice(first).map((line, i) =>
    slab(style.leadingPt, stripBoxes(composer, [line], style, indentPt, owner), {
      // The last two lines stay together.
      keepNext: first + i === lines.length - 2,
    }),
  );
  return [slab(height, boxes), ...rest];
}

/** How many lines stand in the first, unbroken strip. */
function firstStrip(count: number, style: TypeStyle, markHeightPt: number): number {
  if (count <= WHOLE_LINES) return count;
  const beside = Math.max(2, Math.ceil(markHeightPt / style.leadingPt));
  return beside >= count - 1 ? count : beside;
}

function stripBoxes(
  composer: Composer,
  lines: readonly SetLine[],
  style: TypeStyle,
  indentPt: number,
  owner: Owner,
): Box[] {
  const width = composer.paper.textPt - indentPt;
  return lines.map((line, i) => lineBox(line, style, { x: indentPt, y: i * style.leadingPt, width }, owner));
}

function longMark(
  composer: Composer,
  lines: readonly SetLine[],
  style: TypeStyle,
  indentPt: number,
  mark: SetMark,
  owner: Owner,
): Slab[] {
  const mine = markOwner(owner);
  const beside = Math.min(lines.length, WHOLE_LINES);
  const height = beside * style.leadingPt;
  const fit = Math.max(1, Math.floor((height - markTopPt(mark, style)) / mark.style.leadingPt));
  const opening = { ...mark, lines: mark.lines.slice(0, fit) };
  const first = slab(Math.max(height, markHeightPt(opening, style)), [
    ...stripBoxes(composer, lines.slice(0, beside), style, indentPt, owner),
    ...markBoxes(composer, opening, 0, style, mine),
  ]);
  const text = lines
    .slice(beside)
    .map((line) => slab(style.leadingPt, stripBoxes(composer, [line], style, indentPt, owner)));
  const rest = mark.lines
    .slice(fit)
    .map((_, i) => slab(mark.style.leadingPt, markLineBoxes(composer, mark, fit + i, fit + i + 1, 0, mine)));
  return [first, ...text, ...rest];
}
