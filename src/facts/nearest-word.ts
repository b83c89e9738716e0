import { distance } from 'fastest-levenshtein';

const MOST_WRONG = 3;

/** The word that was most likely meant: at most a third of its letters wrong, and no more than three. */
export function nearestWord(written: string, known: readonly string[]): string | undefined {
  const lower = written.toLowerCase();
  let best: { word: string; far: number } | undefined;
  for (const word of known) {
    // As many letters are wrong at least: a long text is not held against every word.
    if (Math.abs(word.length - written.length) > MOST_WRONG) continue;
    const far = distance(lower, word.toLowerCase());
    if (best === undefined || far < best.far) best = { word, far };
  }
  if (best === undefined) return undefined;
  return best.far <= Math.min(MOST_WRONG, Math.max(1, Math.floor(best.word.length / 3)))
    ? best.word
    : undefined;
}
