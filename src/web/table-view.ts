/** Tables as a template prints them: how wide, which columns, and what a phone makes of them. */
import type { Rich, TableBlock, TableRow } from '../packet/packet.js';
import type { LinkBook } from './links.js';
import type { ShownView } from './photo-view.js';
import { type MarkView, markOrNull, type RunView, richView } from './rich-view.js';

interface CellView {
  /** Column title, printed beside the value where a table is restacked. */
  readonly label: string;
  readonly text: readonly RunView[];
  /** `left` or `right`, and `breaks` where a word is too long to be kept whole. */
  readonly manner: string;
}

interface RowView {
  readonly id: string;
  readonly heading: CellView;
  readonly cells: readonly CellView[];
  readonly mark: MarkView | null;
  readonly weight: 'normal' | 'total';
}

export interface TableView {
  readonly kind: 'table';
  readonly id: string;
  readonly caption: string;
  /**
   * `table-text` fills the reading column, `table-full` the page; `table-stack` restacks on a phone,
   * `table-keep` stays a table; `table-dense` is set smaller.
   */
  readonly layout: string;
  readonly columns: readonly {
    readonly title: string;
    readonly align: 'left' | 'right';
    readonly width: string;
  }[];
  /** Whether any row says how it is known. */
  readonly marked: boolean;
  readonly rows: readonly RowView[];
  readonly note: readonly RunView[];
  /** The picture that stands beside it, or null. */
  readonly plate: ShownView | null;
  /** Said in place of rows, or empty. */
  readonly nothing: string;
  /** Columns including that of the marks. */
  readonly span: number;
}

/** From this many columns on a table takes the whole width of the page. */
const FULL_WIDTH_FROM = 4;
/** From this many columns on a phone shows each row as a small record. */
const RESTACK_FROM = 3;
/** From this many columns on a table with marks is set smaller, with less room for the marks. */
const DENSE_FROM = 3;
/** Letters up to which a word in a table is never broken; numbers are shorter than that. */
const KEPT_LETTERS = 16;
/** Share of the page left of the marks; the style sheet has the rest as `share-mark`. */
const TEXT_SHARE = 62;
const DENSE_SHARE = 72;

/** Throws when a row has not as many cells as there are columns. */
export function tableView(
  block: TableBlock,
  links: LinkBook,
  nothing: string,
  plate: ShownView | null,
): TableView {
  const marked = block.rows.some((row) => row.mark !== undefined);
  const dense = marked && block.columns.length >= DENSE_FROM;
  const marksBegin = dense ? DENSE_SHARE : TEXT_SHARE;
  return {
    kind: 'table',
    id: block.id,
    caption: block.caption,
    layout: layoutOf(block.columns.length, marked, dense),
    columns: columnsOf(block, marked ? marksBegin : 100),
    marked,
    rows: block.rows.map((row) => rowView(block, row, links)),
    note: richView(block.note ?? [], links),
    plate,
    nothing: block.rows.length === 0 ? nothing : '',
    span: block.columns.length + (marked ? 1 : 0),
  };
}

function layoutOf(columns: number, marked: boolean, dense: boolean): string {
  const width = marked || columns >= FULL_WIDTH_FROM ? 'table-full' : 'table-text';
  const phone = marked || columns >= RESTACK_FROM ? 'table-stack' : 'table-keep';
  return `${width} ${phone}${dense ? ' table-dense' : ''}`;
}

/** Column widths are classes in steps of two in a hundred: the pages' policy allows no style of their own. */
function columnsOf(block: TableBlock, share: number): TableView['columns'] {
  const weights = block.columns.reduce((sum, column) => sum + column.weight, 0);
  return block.columns.map(({ title, align, weight }) => ({
    title,
    align,
    width: `share-${Math.max(2, Math.round((share * weight) / weights / 2) * 2)}`,
  }));
}

function rowView(block: TableBlock, row: TableRow, links: LinkBook): RowView {
  if (row.cells.length !== block.columns.length) {
    throw new Error(`row "${row.id}" has ${row.cells.length} cells for ${block.columns.length} columns`);
  }
  const [heading, ...cells] = block.columns.map((column, index): CellView => {
    const text = row.cells[index] ?? [];
    const manner = hasLongWord(text) ? `${column.align} breaks` : column.align;
    return { label: column.title, text: richView(text, links), manner };
  });
  if (heading === undefined) throw new Error(`table "${block.id}" has no columns`);
  return { id: row.id, heading, cells, mark: markOrNull(row.mark, links), weight: row.weight ?? 'normal' };
}

function hasLongWord(text: Rich): boolean {
  const words = text
    .map((run) => run.text)
    .join('')
    .split(/[\s-]+/);
  return words.some((word) => word.length > KEPT_LETTERS);
}
