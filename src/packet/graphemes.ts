const CLUSTERS = new Intl.Segmenter('en', { granularity: 'grapheme' });

/** A text's characters as a reader counts them: a letter with its accents is one, and so is a family of emoji. */
export const graphemesOf = (text: string): string[] =>
  Array.from(CLUSTERS.segment(text), ({ segment }) => segment);
