/** "New construction", "a brand-new home", "newer build": the house itself is said to be new. */
import { printDate } from '../../../facts/date.js';
import type { Known } from '../items/known.js';
import { judged } from '../judge/judged.js';
import type { Find } from '../read-sentence.js';
import type { Unit } from '../words/units.js';
import { boundsOf } from './beside.js';

const NEW_HOUSE =
  /(?<!\b(?:your|like|as|their|a family's|dream)[\s-])\b(brand[\s-]new|newly[\s-]built|newly[\s-]constructed|new|newer|newish|recent)[\s-]+(construction|build|(?:home|house|townhome|townhouse|condo)(?=\s*(?:[.,!;–—]|$|with|on|in|at|built|features|offers|has|boasts)))/gi;
/** "a new home" is the buyer's, whatever its age; only these words say it of the building. */
const OF_THE_BUYER = /^new$/i;
const NEARBY = /\b(nearby|near|down the street|next door|across|surrounded|area|neighborhood|no|not|than)\b/i;

/** Years that a house stays new, and newer. */
const NEW_YEARS = 2;
const NEWER_YEARS = 12;

export function houseNewness(known: Known, text: string, units: readonly Unit[], find: Find): void {
  const [from, to] = boundsOf(units);
  const words = text.slice(from, to);
  if (!/construction|build|home|house|condo/i.test(words)) return;
  const { built } = known.house.house;
  // "1950 or after" leaves it open.
  if (built.value?.latest === undefined) return;
  const age = Number(known.offered.slice(0, 4)) - Number(built.value.latest.slice(0, 4));
  const year = printDate(built.value);
  for (const match of words.matchAll(NEW_HOUSE)) {
    const [all, how = '', what = ''] = match;
    if (OF_THE_BUYER.test(how) && !/^(construction|build)$/i.test(what)) continue;
    const around = words.slice(Math.max(0, match.index - 30), match.index + all.length + 20);
    const start = from + match.index;
    const isAside = units.some((unit) => unit.from <= start && start < unit.to && unit.aside !== undefined);
    if (isAside || NEARBY.test(around)) continue;
    const years = /^(newer|newish|recent)$/i.test(how) ? NEWER_YEARS : NEW_YEARS;
    find(
      from + match.index,
      from + match.index + all.length,
      judged(
        age <= years,
        'date.built',
        `the folder says ${year}`,
        [{ path: ['house', 'built'], words: `built ${year}`, evidence: built.evidence }],
        `built ${year}`,
      ),
    );
  }
}
