import type { Context } from './context.js';

/** Anchor of a paper among the receipts. Numbered, so that no two ids of documents make one anchor. */
export const plateAnchor = ({ whole }: Context, document: string): string =>
  `plate-${whole.documents.findIndex(({ id }) => id === document) + 1}`;
