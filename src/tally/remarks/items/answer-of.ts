/**
 * How one fact answers to a word about age or a deed.
 *
 * What the words may mean is this project's own reading, beside the one published figure (the Federal Trade
 * Commission's six months for "new", told by the report as a note): new is what was new within two years before the
 * offer and was not second-hand; newer and recent, within five years; from five to ten it stretches the word.
 */
import type { Deed } from '../../improvements.js';
import { type Item, putsIn } from './items.js';
import type { Known } from './known.js';
import { monthsBefore } from './months.js';

const NEW_MONTHS = 24;
export const NEWER_MONTHS = 60;
const STRETCHED_MONTHS = 120;

export type Answer = 'yes' | 'no' | 'stretched' | 'unknown';

/** How one fact answers to a word of the newness table. */
export function answerOf(known: Known, item: Item, word: string): Answer {
  switch (word) {
    case 'new':
      return isNew(known, item);
    case 'newer':
      return isNewer(known, item);
    case 'replaced':
      return isReplaced(known, item);
    case 'updated':
      return isUpdated(known, item);
    case 'remade':
      return isRemade(known, item);
    case 'refaced':
      return isRefaced(item);
    case 'refinished':
      return ofDeed(item, (deed) => deed === 'refinished' || deed === 'repaired' || deed === 'painted', 'no');
    case 'painted':
      return ofDeed(
        item,
        (deed) => deed === 'painted' || PAINTED.test(`${item.words} ${item.what}`),
        item.kind === 'finish' && !/wall|ceiling|trim|siding/.test(item.things.join()) ? 'unknown' : 'no',
      );
    case 'repaired':
      return isPaintOn(item)
        ? 'unknown'
        : ofDeed(item, (deed) => deed === 'repaired' || putsIn(deed) || deed === 'refinished', 'no');
    case 'serviced':
      return ofDeed(item, (deed) => deed === 'serviced' || deed === 'cleaned', 'unknown');
    case 'original':
      return isOld(known, item);
    case 'young':
      return isYoung(known, item);
    case 'untouched':
      return isUntouched(item);
    case 'discarded':
      return isDiscarded(item);
    case 'old':
      return item.kept ? 'yes' : 'unknown';
    default:
      return 'unknown';
  }
}

const PAINTED = /paint|spray|lacquer|stain(ed|s)\b/i;

function ofDeed(item: Item, fits: (deed: Deed) => boolean, otherwise: Answer): Answer {
  if (item.deed !== undefined && fits(item.deed)) return 'yes';
  if (item.kept || item.deed !== undefined) return otherwise;
  return 'unknown';
}

/** Cabinets with new fronts on old boxes. */
function isRefaced(item: Item): Answer {
  if (item.deed === undefined) return item.kept ? 'no' : 'unknown';
  const fronts = /\b(front|door|reface)/i.test(`${item.what} ${item.words}`);
  if (item.deed === 'painted') return fronts && /new/i.test(item.words) ? 'yes' : 'no';
  return fronts ? 'yes' : putsIn(item.deed) ? 'no' : 'unknown';
}

/** A repair whose account says that parts were changed. */
const TOLD_AS_REPLACED = /\b(replac|new\b|chang(ed|ing))/i;

/** What stands since the house was built was never replaced; what came later was. */
function isReplaced(known: Known, item: Item): Answer {
  if (item.deed === 'repaired' && TOLD_AS_REPLACED.test(item.words)) return 'stretched';
  if (item.deed === 'removed') return 'unknown';
  if (item.deed !== undefined && !putsIn(item.deed) && item.deed !== 'moved') return 'no';
  if (!item.kept) return item.deed === undefined ? 'unknown' : 'yes';
  const built = known.house.house.built.value?.latest;
  const since = item.done?.earliest;
  if (since === undefined) {
    const made = item.made?.earliest;
    if (made !== undefined && built !== undefined && monthsBefore(made, built) > 24) return 'yes';
    return item.done === undefined && item.made === undefined ? 'no' : 'unknown';
  }
  return built !== undefined && monthsBefore(since, built) > 24 ? 'yes' : 'no';
}

const LEFT_ALONE =
  /\b((not|never|was not|were not) touched|untouched|left (alone|as found|as it was)|not opened)\b/i;

/** Service leaves a thing as it was; whoever says "never touched" stretches that. */
function isUntouched(item: Item): Answer {
  if (LEFT_ALONE.test(item.words)) return 'yes';
  if (item.deed === 'cleaned' || item.deed === 'serviced') return 'stretched';
  if (item.kept) return 'yes';
  return item.deed === undefined ? 'unknown' : 'no';
}

/** "Thrown out": gone, or another put in its place; what was kept or coated is still there. */
function isDiscarded(item: Item): Answer {
  if (item.kept || item.deed === 'painted' || item.deed === 'refinished' || keepsParts(item)) return 'no';
  return item.deed === 'removed' || putsIn(item.deed) ? 'yes' : 'unknown';
}

const PAINTED_OVER = /^(wall|ceiling|paint)$/;

/** Paint, new or old, on what it says nothing of. */
const isPaintOn = ({ kind, deed, kept, what, things }: Item): boolean =>
  (deed === 'painted' || (kind === 'finish' && kept && /^paint\b/i.test(what))) &&
  things.every((one) => PAINTED_OVER.test(one));

function isNew(known: Known, item: Item): Answer {
  if (item.secondHand) return 'no';
  // Lines that were moved are new where they run; paint says nothing of the board under it.
  if (item.deed === 'moved') return 'unknown';
  if (isPaintOn(item)) return 'unknown';
  if (item.deed !== undefined && !putsIn(item.deed)) return 'no';
  const made = item.made?.latest;
  if (made !== undefined && monthsBefore(known.offered, made) > NEW_MONTHS + 6) return 'no';
  const { done } = item;
  const day = done?.latest ?? made;
  const bought = known.house.house.bought?.earliest;
  // What was there before this owner and was left is new to nobody, unless it was put in months before.
  if (item.kept && day === undefined && isDayNotKnown(known, item))
    return isLongOwned(known) ? 'no' : 'unknown';
  if (item.kept && (day === undefined || (bought !== undefined && monthsBefore(bought, day) > 6)))
    return 'no';
  if (done === undefined)
    return item.kept ? 'no' : made === undefined ? 'unknown' : within(known, made, NEW_MONTHS + 6);
  const latest = done.latest;
  if (latest === undefined) return 'unknown';
  if (item.kept && done.earliest === undefined) return 'no';
  if (item.kept && bought !== undefined && latest >= bought) return 'no';
  return within(known, latest, NEW_MONTHS);
}

/** "installed: not known": asked, and nobody knows; an earlier owner may have put it in new. */
const isDayNotKnown = ({ house }: Known, { kind, path }: Item): boolean => {
  const installed = kind === 'system' ? house.systems[Number(path[1])]?.installed : undefined;
  return installed !== undefined && installed.value === undefined;
};

/** Owners who have had the house for longer than a thing stays new: what they found is not new. */
const isLongOwned = ({ house, offered }: Known): boolean => {
  const bought = house.house.bought?.earliest;
  return bought !== undefined && monthsBefore(offered, bought) > NEW_MONTHS;
};

const within = (known: Known, day: string, months: number): Answer =>
  monthsBefore(known.offered, day) <= months ? 'yes' : 'no';

function isNewer(known: Known, item: Item): Answer {
  if (item.deed !== undefined && !putsIn(item.deed))
    return item.deed === 'refinished' || item.deed === 'painted' ? 'stretched' : 'no';
  const date = item.made ?? item.done;
  const day = date?.latest;
  if (day === undefined) return item.kept ? 'unknown' : item.deed !== undefined ? 'yes' : 'unknown';
  // Of a span the middle.
  const months = (monthsBefore(known.asOf, day) + monthsBefore(known.asOf, date?.earliest ?? day)) / 2;
  return byAge(months);
}

/** "A few years old". */
function isYoung(known: Known, item: Item): Answer {
  const day = (item.made ?? item.done)?.latest;
  if (day === undefined || (item.deed !== undefined && !putsIn(item.deed))) return 'unknown';
  const months = monthsBefore(known.asOf, day);
  return months <= NEWER_MONTHS ? 'yes' : 'no';
}

const byAge = (months: number): Answer =>
  months <= NEWER_MONTHS ? 'yes' : months <= STRETCHED_MONTHS ? 'stretched' : 'no';

function isUpdated(known: Known, item: Item): Answer {
  if (item.deed === 'cleaned' || item.deed === 'serviced') return 'unknown';
  if (item.deed === undefined || item.kept) {
    const day = item.done?.latest ?? item.made?.latest;
    if (day === undefined) return item.kept ? 'no' : 'unknown';
    return byAge(monthsBefore(known.asOf, day));
  }
  const day = item.done?.latest;
  if (day === undefined) return item.who.kind === 'not-known' ? 'unknown' : 'yes';
  return byAge(monthsBefore(known.asOf, day));
}

/** "boards replaced, posts and beams kept" */
const PARTS_KEPT =
  /\b(kept|left (as|in)|as found|reused|re-used|stayed|not touched|untouched|(old|existing|same|first) (boxes|frame|framing|posts|joists|footings|slab|base)|(frame|framing|boxes|posts|joists|footings) of \d{4})\b/i;

/** Whether the account of a deed says that some of the thing was left. */
const keepsParts = ({ words, what }: Item): boolean => PARTS_KEPT.test(`${words} ${what}`);

/** Gutted and rebuilt: what was left, mended or only coated is in the way of that. */
function isRemade(known: Known, item: Item): Answer {
  if (item.kept || (item.kind === 'work' && keepsParts(item))) return 'no';
  if (item.deed === undefined || item.deed === 'cleaned' || item.deed === 'serviced') return 'unknown';
  if (item.deed === 'removed' || item.deed === 'moved') return 'unknown';
  return putsIn(item.deed) ? isUpdated(known, item) : 'no';
}

function isOld(known: Known, item: Item): Answer {
  const built = known.house.house.built.value?.latest;
  // Plaster laid anew is no original plaster; a floor that was sanded is still the old floor.
  if (item.deed === 'refinished' && item.things.includes('pool-surface')) return 'no';
  if (item.deed === 'cleaned' || item.deed === 'serviced') return 'unknown';
  if (item.deed !== undefined && !putsIn(item.deed)) return 'yes';
  const since = (item.done ?? item.made)?.earliest;
  if (since !== undefined && built !== undefined && monthsBefore(since, built) > 36) return 'no';
  if (item.kept) return 'yes';
  return item.deed === undefined ? 'unknown' : 'no';
}
