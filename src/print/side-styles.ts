/** Type and white space of the sheet with two sides: larger than a packet's where it is read from a table. */
import { type Spaces, spacesOf } from './spaces.js';
import { type StyleName, type StyleSheet, styleSheet, type TypeStyle } from './type-styles.js';

/** Marks and feet are looked up, not read from afar: they keep their size. */
const FIXED: readonly StyleName[] = ['mark', 'markWord', 'furniture', 'edition', 'reader', 'place', 'note'];

type Size = Pick<TypeStyle, 'sizePt' | 'leadingPt'>;
/** The sheet's face, whatever the size of its text. */
const NAME: Size = { sizePt: 34, leadingPt: 37 };
const SECTION: Size = { sizePt: 15, leadingPt: 19 };
/** Key facts, which are read at arm's length. */
const KEY_FACT: Size = { sizePt: 12.5, leadingPt: 15.5 };

/** `type`: 1 is the usual size of a packet's text. */
export function sideStyles(type: number): StyleSheet {
  const usual = styleSheet(false);
  const base: StyleSheet = { ...usual, section: { ...usual.section, ...SECTION } };
  const sized = Object.entries(base).map(([name, style]) => [
    name,
    FIXED.includes(name as StyleName) ? style : scale(style, type),
  ]);
  return { ...Object.fromEntries(sized), houseName: { ...base.houseName, ...NAME } } as StyleSheet;
}

/** The styles with a table's cells in large type, whatever the size of the text around it. */
export function withLargeCells(styles: StyleSheet): StyleSheet {
  return { ...styles, cell: { ...styles.cell, ...KEY_FACT, face: 'serif', figures: 'lining' } };
}

const scale = (style: TypeStyle, by: number): TypeStyle => ({
  ...style,
  sizePt: style.sizePt * by,
  leadingPt: style.leadingPt * by,
});

/** `air`: 1 is what the type asks for at least. */
export function sideSpaces(type: number, air: number): Spaces {
  const spaces = Object.entries(spacesOf(true)).map(([name, points]) => [name, points * type * air]);
  return Object.fromEntries(spaces) as unknown as Spaces;
}
