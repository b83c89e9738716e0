/**
 * Words that fit in place of what is wrong in a draft: each is put in and read again, and one that would be marked
 * again is not proposed. Where nothing short is true there is none, and the claim is to be left out.
 */
import type { House } from '../../../facts/house.js';
import type { Item } from '../items/items.js';
import { type Finding, type Known, knownOf } from '../items/known.js';
import { reasonOf } from './reasons.js';
import { type Stretch, stretchOf, widened } from './stretch.js';
import { isWrong, Trial } from './trial.js';
import { wordsFor } from './words-for.js';

/** Characters that the words may have more than those that they replace. */
const MOST_MORE = 28;
/** "All work permitted" gives way to a sentence: which were closed, and which are not. */
const MOST_OF_PERMITS = 75;
/** Where the mended draft would be too long for its listing service: how many more, from the first try on. */
const GROWTHS = [Number.POSITIVE_INFINITY, 30, 15, 6, 0];
/** A draft with more wrong claims than these is to be written anew. */
const MOST_MENDED = 150;

/** The findings with the stretch that words can stand in place of, the words, and the reason by what is in the way. */
export function mendFindings(
  text: string,
  findings: readonly Finding[],
  house: House,
  tally: Known['tally'],
): Finding[] {
  const limit = house.listing?.['remarks-limit'];
  let mended: Finding[] = [];
  for (const growth of GROWTHS) {
    mended = mendedBy(text, findings, house, tally, growth);
    if (limit === undefined || text.length > limit || text.length + growthOf(mended) <= limit) break;
  }
  return mended;
}

const growthOf = (findings: readonly Finding[]): number =>
  findings.reduce(
    (sum, one) =>
      sum + (isWrong(one) && one.instead !== undefined ? one.instead.length - (one.to - one.from) : 0),
    0,
  );

/** From behind to the front, so that each is tried with what was mended behind it. */
function mendedBy(
  text: string,
  findings: readonly Finding[],
  house: House,
  tally: Known['tally'],
  growth: number,
): Finding[] {
  const wrong = findings
    .map((finding, index) => ({ finding, index }))
    .filter(({ finding }) => isWrong(finding))
    .slice(0, MOST_MENDED)
    .sort((a, b) => b.finding.from - a.finding.from || b.finding.to - a.finding.to);
  if (wrong.length === 0) return [...findings];
  const known = knownOf(house, tally);
  const byPath = new Map(known.items.map((item) => [JSON.stringify(item.path), item]));
  const trial = new Trial(text, house, tally);
  // The judges' words don't fit into the sentence: none stays but what was tried.
  const mended = findings.map((one) => (isWrong(one) ? { ...one, instead: undefined } : one));
  const done = new Set<number>();
  const left = (from: number, to: number): number =>
    wrong.filter(({ finding, index }) => finding.from >= from && finding.from < to && !done.has(index))
      .length;
  let edge = text.length;
  for (const { finding, index } of wrong) {
    const stretch = stretchFor(
      text,
      finding,
      wrong.map((one) => one.finding),
    );
    const items = finding.facts.flatMap(({ path }): Item[] => {
      const item = byPath.get(JSON.stringify(path));
      return item === undefined ? [] : [item];
    });
    const most = Math.min(growth, finding.rule === 'permit' ? MOST_OF_PERMITS : MOST_MORE);
    // What overlaps with a stretch that is mended already is mended with it.
    const edit =
      stretch.to > edge
        ? undefined
        : trial.take(stretch, wordsFor(known, stretch, finding, items), left, most);
    if (edit !== undefined) done.add(index);
    const { from, to } = edit ?? stretch;
    edge = Math.min(edge, from);
    mended[index] = {
      ...finding,
      from,
      to,
      says: text.slice(from, to),
      because: reasonOf(known, finding, items) ?? finding.because,
      instead: edit?.put,
    };
  }
  return mended.sort((a, b) => a.from - b.from || a.to - b.to);
}

/** Widened, but not into what another finding has marked. */
function stretchFor(text: string, finding: Finding, all: readonly Finding[]): Stretch {
  const { from, to, rule } = finding;
  const [start, end] = widened(text, from, to, rule);
  const meets = (a: number, b: number): boolean =>
    all.some(
      (other) => other !== finding && other.from < b && a < other.to && !(other.from < to && from < other.to),
    );
  return stretchOf(text, meets(start, from) ? from : start, meets(to, end) ? to : end);
}
