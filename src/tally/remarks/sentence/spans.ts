/** Which characters of a sentence each claim underlines. */
import type { Told } from '../claims/claim-case.js';
import type { Judgement } from '../items/known.js';
import type { Phrase } from './phrase.js';

/** Which characters each claim underlines: its word, with the thing where the two stand together. */
export function spansOf(
  phrase: Phrase,
  told: readonly Told[],
  text: string,
): { from: number; to: number; judgement: Judgement }[] {
  const starts = told.flatMap(({ attributes }) =>
    attributes.filter(({ before, shared }) => before && !shared).map(({ from }) => from),
  );
  const lastBefore = Math.max(...starts, -1);
  const anyBefore = starts.length > 0;
  let behind = false;
  return told.map(({ judgement, attributes }) => {
    const own = attributes.filter(({ shared }) => !shared);
    if (own.length === 0) {
      // What was shared from behind stands there; what was shared from before is told at the thing.
      const [one] = attributes;
      return one !== undefined && !one.before && one.kind !== 'convey'
        ? { from: one.from, to: one.to, judgement }
        : { from: phrase.from, to: phrase.to, judgement };
    }
    let from = Math.min(...own.map((one) => one.from));
    let to = Math.max(...own.map((one) => one.to));
    if (
      own.some((one) => one.before && one.from === lastBefore && one.kind !== 'who' && one.kind !== 'permit')
    )
      to = Math.max(to, phrase.to);
    else if (own.every(({ before }) => !before) && !anyBefore && !behind) {
      behind = true;
      const near = own.some(({ kind }) => kind === 'number' || kind === 'word') ? 3 : 24;
      if (from > phrase.to && !/[,;—–]/.test(text.slice(phrase.to, from)) && from - phrase.to < near)
        from = phrase.from;
    }
    return { from, to, judgement };
  });
}
