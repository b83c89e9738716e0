/** Manners of setting: which face, how large, on what leading, in which ink, with which figures. */
import type { InkName } from './inks.js';

export type FaceName = 'serif' | 'serif-italic' | 'serif-semibold' | 'sans' | 'sans-italic' | 'sans-semibold';

/** Old-style in running text, lining elsewhere; tabular where numbers stand under one another. */
export type Figures = 'old-style' | 'lining' | 'tabular';

export interface TypeStyle {
  readonly face: FaceName;
  readonly sizePt: number;
  readonly leadingPt: number;
  readonly ink: InkName;
  readonly figures: Figures;
  /** Links look like the text around them: in contents, where everything is one. */
  readonly quiet?: boolean;
}

export type StyleName =
  | 'edition'
  | 'reader'
  | 'houseName'
  | 'place'
  | 'factLabel'
  | 'factValue'
  | 'contents'
  | 'contentsTitle'
  | 'section'
  | 'heading3'
  | 'heading4'
  | 'lead'
  | 'body'
  | 'small'
  | 'mark'
  | 'markWord'
  | 'tableCaption'
  | 'tableHead'
  | 'cell'
  | 'note'
  | 'recordTitle'
  | 'entryLabel'
  | 'entryValue'
  | 'caption'
  | 'contact'
  | 'noticeTitle'
  | 'noticeText'
  | 'ask'
  | 'furniture';

export type StyleSheet = Record<StyleName, TypeStyle>;

function style(face: FaceName, sizePt: number, leadingPt: number, ink: InkName, figures: Figures): TypeStyle {
  return { face, sizePt, leadingPt, ink, figures };
}

const AIRY: StyleSheet = {
  edition: style('sans-semibold', 10, 13, 'accent', 'lining'),
  reader: style('sans', 10, 13, 'soft', 'lining'),
  houseName: style('serif-semibold', 29, 32, 'ink', 'old-style'),
  place: style('serif', 12, 16.5, 'soft', 'old-style'),
  factLabel: style('sans', 8, 10.5, 'soft', 'lining'),
  factValue: style('sans', 10, 12.25, 'ink', 'lining'),
  contents: { ...style('serif', 10, 13, 'ink', 'old-style'), quiet: true },
  contentsTitle: style('sans-semibold', 9.25, 13, 'soft', 'lining'),
  section: style('serif-semibold', 18, 23, 'ink', 'old-style'),
  heading3: style('sans-semibold', 10.75, 13, 'ink', 'lining'),
  heading4: style('serif-italic', 10.25, 13, 'ink', 'old-style'),
  lead: style('serif', 12.5, 17, 'ink', 'old-style'),
  body: style('serif', 10, 13, 'ink', 'old-style'),
  small: style('serif', 8.75, 11.25, 'soft', 'old-style'),
  mark: style('sans', 7.75, 9.5, 'soft', 'lining'),
  markWord: style('sans-semibold', 7.75, 9.5, 'ink', 'lining'),
  tableCaption: style('sans-semibold', 9.25, 13, 'ink', 'lining'),
  tableHead: style('sans', 8, 10, 'soft', 'tabular'),
  cell: style('sans', 8.5, 10.75, 'ink', 'tabular'),
  note: style('sans', 8, 10.25, 'soft', 'lining'),
  recordTitle: style('sans-semibold', 9.25, 12.5, 'ink', 'lining'),
  entryLabel: style('sans', 8, 11, 'soft', 'lining'),
  entryValue: style('sans', 8.5, 11, 'ink', 'lining'),
  caption: style('sans', 8.25, 10.25, 'soft', 'lining'),
  contact: style('sans', 7, 8.5, 'soft', 'lining'),
  noticeTitle: style('serif-semibold', 11.5, 16, 'ink', 'old-style'),
  noticeText: style('serif', 9.75, 12.75, 'ink', 'old-style'),
  ask: style('serif-semibold', 10, 13, 'ink', 'old-style'),
  furniture: style('sans', 8, 10, 'soft', 'lining'),
};

const DENSE: StyleSheet = {
  ...AIRY,
  edition: style('sans-semibold', 9, 10.75, 'accent', 'lining'),
  reader: style('sans', 9, 10.75, 'soft', 'lining'),
  houseName: style('serif-semibold', 22, 25, 'ink', 'old-style'),
  place: style('serif', 10, 13, 'soft', 'old-style'),
  factLabel: style('sans', 7.25, 9, 'soft', 'lining'),
  factValue: style('sans', 8.75, 10.75, 'ink', 'lining'),
  section: style('serif-semibold', 13, 16, 'ink', 'old-style'),
  heading3: style('sans-semibold', 8.75, 10.5, 'ink', 'lining'),
  heading4: style('serif-italic', 8.75, 10.5, 'ink', 'old-style'),
  lead: style('serif', 9.75, 12.5, 'ink', 'old-style'),
  body: style('serif', 8.5, 10.5, 'ink', 'old-style'),
  small: style('serif', 7.75, 9.5, 'soft', 'old-style'),
  mark: style('sans', 7, 8.75, 'soft', 'lining'),
  markWord: style('sans-semibold', 7, 8.75, 'ink', 'lining'),
  tableCaption: style('sans-semibold', 8.25, 10.75, 'ink', 'lining'),
  tableHead: style('sans', 7.25, 9, 'soft', 'tabular'),
  cell: style('sans', 7.75, 9.5, 'ink', 'tabular'),
  note: style('sans', 7.25, 9, 'soft', 'lining'),
  recordTitle: style('sans-semibold', 8.25, 10.75, 'ink', 'lining'),
  entryLabel: style('sans', 7.25, 9.75, 'soft', 'lining'),
  entryValue: style('sans', 7.75, 9.75, 'ink', 'lining'),
  caption: style('sans', 7.25, 9, 'soft', 'lining'),
  contact: style('sans', 6.75, 8.25, 'soft', 'lining'),
  noticeTitle: style('serif-semibold', 9.5, 13, 'ink', 'old-style'),
  noticeText: style('serif', 8.5, 10.5, 'ink', 'old-style'),
  ask: style('serif-semibold', 8.5, 10.5, 'ink', 'old-style'),
  furniture: style('sans', 7.25, 9, 'soft', 'lining'),
};

/** The style sheet of an edition; the dense one is for the agent's few pages. */
export function styleSheet(dense: boolean): StyleSheet {
  return dense ? DENSE : AIRY;
}

/** From the top of a line to its baseline, in points: the type stands in the middle of its leading. */
export function baselineOf(of: { readonly sizePt: number; readonly leadingPt: number }): number {
  return (of.leadingPt - of.sizePt) / 2 + 0.79 * of.sizePt;
}

const FAMILY: Record<FaceName, { strong: FaceName; emphasis: FaceName }> = {
  serif: { strong: 'serif-semibold', emphasis: 'serif-italic' },
  'serif-italic': { strong: 'serif-semibold', emphasis: 'serif' },
  'serif-semibold': { strong: 'serif-semibold', emphasis: 'serif-italic' },
  sans: { strong: 'sans-semibold', emphasis: 'sans-italic' },
  'sans-italic': { strong: 'sans-semibold', emphasis: 'sans' },
  'sans-semibold': { strong: 'sans-semibold', emphasis: 'sans-italic' },
};

/** The style of a run inside a text set in `base`. */
export function styleForManner(
  base: TypeStyle,
  manner: 'strong' | 'emphasis' | 'soft' | undefined,
): TypeStyle {
  if (manner === undefined) return base;
  if (manner === 'soft') return { ...base, ink: 'soft' };
  return { ...base, face: FAMILY[base.face][manner], ink: manner === 'strong' ? 'ink' : base.ink };
}
