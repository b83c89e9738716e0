import type { TableColumn } from './packet.js';

/** Title, share of the width and, for numbers, `right`. */
export type ColumnWords = readonly [title: string, weight: number, align?: 'left' | 'right'];

/** The columns of a table, written in one line each. */
export function columns(...words: readonly ColumnWords[]): TableColumn[] {
  return words.map(([title, weight, align = 'left']) => ({ title, weight, align }));
}
