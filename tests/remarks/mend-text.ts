/**
 * What becomes of a draft whose reader does as the report says: every proposed wording put in place of its underlined
 * stretch, from behind to the front, and the whole of it checked again.
 */
import type { Finding } from '../../src/tally/remarks/items/known.js';

export interface Put {
  /** Offsets in the mended text. */
  readonly from: number;
  readonly to: number;
  readonly finding: Finding;
}

export const isWrong = ({ verdict }: Finding): boolean => verdict === 'contradicted' || verdict === 'wider';

export function mendText(
  text: string,
  findings: readonly Finding[],
): { readonly text: string; readonly put: Put[] } {
  let mended = text;
  let edge = text.length;
  let put: Put[] = [];
  for (const finding of findings.filter(isWrong).sort((a, b) => b.from - a.from || b.to - a.to)) {
    const { from, to, instead } = finding;
    if (instead === undefined || to > edge) continue;
    mended = mended.slice(0, from) + instead + mended.slice(to);
    const more = instead.length - (to - from);
    put = put.map((one) => ({ ...one, from: one.from + more, to: one.to + more }));
    put.push({ from, to: from + instead.length, finding });
    edge = from;
  }
  return { text: mended, put };
}

/** Of what was put in, what is marked again. */
export const markedAgain = (put: readonly Put[], again: readonly Finding[]): Put[] =>
  put.filter((one) =>
    again.some((finding) => isWrong(finding) && finding.from < one.to && one.from < finding.to),
  );
