/**
 * A plan: pages of placed boxes, as plain data.
 *
 * Everything that is painted is a box that knows its block and its part in the document's structure. Lengths are
 * points from the sheet's top left corner, y growing downwards; text is final.
 */
import type { Drawing } from '../packet/packet.js';
import type { InkName } from './inks.js';
import type { Paper } from './paper.js';
import type { FaceName, Figures } from './type-styles.js';

/** One step on the way from the document down to a paragraph, a cell, a figure. */
interface Tag {
  /** Structure type of ISO 32000-1, 14.8.4: `Sect`, `H2`, `P`, `TD`, … */
  readonly type: string;
  /** Which one among its parent's children. The same key again, on any page, is the same element. */
  readonly key: string;
  /** Alternative text of a figure. */
  readonly alt?: string;
  /** Read after its siblings, wherever on the sheet it stands beside them. */
  readonly last?: true;
  /** Of a table's heading cell. */
  readonly scope?: 'Column' | 'Row';
  /** What to write on a line that is no field in the file (ISO 32000-1, 14.8.5.6). */
  readonly inInk?: string;
}

/** Way to the element a box belongs to; empty for what is only furniture (rules, running heads). */
export type TagPath = readonly Tag[];

/** A stretch of one line in one manner. */
export interface Span {
  /** From the box's left edge. */
  readonly xPt: number;
  /** Without a blank at the end. */
  readonly widthPt: number;
  /** Ends with a blank where the line was broken at one: a reader by ear or by copy needs it. */
  readonly text: string;
  readonly face: FaceName;
  readonly sizePt: number;
  readonly ink: InkName;
  readonly figures: Figures;
  /** Anchor this stretch leads to. */
  readonly to?: string;
  /** Links in running text have a line under them. */
  readonly underlined?: boolean;
}

interface BoxBase {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  /** Id of the block, or `title`, `contents`, `head`, `foot`, `standing`. */
  readonly block: string;
  readonly tags: TagPath;
}

/** One line of text. */
export interface TextBox extends BoxBase {
  readonly kind: 'text';
  /** From the box's top to its baseline. */
  readonly baseline: number;
  readonly text: string;
  readonly spans: readonly Span[];
}

/** A thin line or a plain area, filled. */
export interface RuleBox extends BoxBase {
  readonly kind: 'rule';
  readonly ink: InkName;
}

/** The shape before an evidence mark's word: full, half or empty. */
interface ShapeBox extends BoxBase {
  readonly kind: 'shape';
  readonly standing: 'documented' | 'owner' | 'not-known';
}

/** The outline of a notice, open where it goes on over a page's edge. */
export interface FrameBox extends BoxBase {
  readonly kind: 'frame';
  readonly openTop: boolean;
  readonly openBottom: boolean;
}

/** A photo, covering its box; what stands over is clipped evenly at both sides. */
export interface PictureBox extends BoxBase {
  readonly kind: 'picture';
  readonly photo: string;
}

/** A drawing at its scale. */
export interface DrawingBox extends BoxBase {
  readonly kind: 'drawing';
  readonly drawing: Drawing;
  readonly scale: number;
}

/** A field to type into. Nothing is painted for it: its label and its line are boxes of their own. */
export interface FieldBox extends BoxBase {
  readonly kind: 'field';
  /** Unique in the document. */
  readonly name: string;
  readonly label: string;
  /** What goes in here, for those who don't see the label. */
  readonly hint: string;
  /** Size of what is typed. */
  readonly sizePt: number;
}

export type Box = TextBox | RuleBox | ShapeBox | FrameBox | PictureBox | DrawingBox | FieldBox;

export interface PlannedPage {
  /** Counted from 1. */
  readonly number: number;
  /** In reading order. */
  readonly boxes: readonly Box[];
}

/** Where an id is found. */
export interface Anchor {
  readonly id: string;
  readonly page: number;
  readonly y: number;
}

export interface OutlineEntry {
  readonly title: string;
  /** Anchor it leads to. */
  readonly to: string;
  readonly children: readonly OutlineEntry[];
}

export interface Plan {
  readonly paper: Paper;
  readonly pages: readonly PlannedPage[];
  readonly anchors: readonly Anchor[];
  readonly outline: readonly OutlineEntry[];
  /** Characters that no face has, each once. */
  readonly missing: readonly string[];
}
