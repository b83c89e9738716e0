/** Stretches of text and evidence marks as a template prints them: links resolved, every field present. */
import type { EvidenceMark, Rich } from '../packet/packet.js';
import type { LinkBook } from './links.js';

export interface RunView {
  readonly text: string;
  readonly manner: 'plain' | 'strong' | 'emphasis' | 'soft';
  /** Where it leads, or null. */
  readonly href: string | null;
}

export interface MarkView {
  /** Class of the small square: full, half or empty. */
  readonly standing: EvidenceMark['standing'];
  readonly word: string;
  /** May be empty: then no separator is printed either. */
  readonly detail: readonly RunView[];
}

/** Throws on a link to an id that the packet hasn't. */
export function richView(rich: Rich, links: LinkBook): readonly RunView[] {
  return rich
    .filter((run) => run.text !== '')
    .map((run) => ({
      text: run.text,
      manner: run.manner ?? 'plain',
      href: run.to === undefined ? null : links.hrefOf(run.to),
    }));
}

export function markView(mark: EvidenceMark, links: LinkBook): MarkView {
  return { standing: mark.standing, word: mark.word, detail: richView(mark.detail, links) };
}

export function markOrNull(mark: EvidenceMark | undefined, links: LinkBook): MarkView | null {
  return mark === undefined ? null : markView(mark, links);
}
