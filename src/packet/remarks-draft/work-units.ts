/** Work that is told by itself: what was worked on, what was done, when, and what stands of its permit. */

import type { WorkItem } from '../../facts/house.js';
import { PUT_IN } from '../../tally/improvements.js';
import { type Trade, tradeOf } from '../../tally/trades.js';
import { backedDeed, type DraftRules } from './backing.js';
import { type DraftUnit, joining, type SentenceId } from './draft-unit.js';
import { permitPieces } from './permit-words.js';
import { deedWords, inYear } from './when.js';
import { subjectsOf } from './work-subjects.js';

const SENTENCE_OF: Record<Trade, SentenceId> = {
  roofing: 'roof-and-structure',
  structure: 'roof-and-structure',
  'heating and cooling': 'services',
  plumbing: 'services',
  electrical: 'services',
  'windows and doors': 'outside',
  'kitchen and bath': 'interior',
  flooring: 'interior',
  tile: 'interior',
  carpentry: 'outside',
  pool: 'pool',
  outside: 'outside',
  painting: 'paint',
  appliances: 'interior',
  other: 'interior',
};

const RANK_OF: Record<SentenceId, number> = {
  'roof-and-structure': 14,
  services: 15,
  pool: 14,
  outside: 26,
  interior: 27,
  paint: 28,
  house: 40,
  size: 40,
  systems: 40,
  kitchen: 40,
  baths: 40,
  floors: 40,
  grounds: 40,
  utilities: 40,
  'ground-and-walls': 40,
  association: 40,
  stays: 40,
};

/** Taking away and cleaning say little of what a buyer gets. */
const NOT_TOLD = ['removed', 'cleaned'];

/** Nobody looks for a house by these. */
const SMALL =
  /\b(closer|hinges?|latch|knobs?|handles?|hoses?|dryer vent|weather.?strip\w*|caulk\w*|filters?|batteries|alarm at|screens?)\b/i;

/** `finishesTold`: work whose outcome is told as a finish. `systemsTold`: systems that are told with their year. */
export function workUnits(
  rules: DraftRules,
  finishesTold: ReadonlySet<string>,
  systemsTold: ReadonlySet<string>,
): DraftUnit[] {
  return rules.context.house.work.flatMap((item, index): DraftUnit[] => {
    if (NOT_TOLD.includes(item.did) || SMALL.test(item.what) || finishesTold.has(item.id)) return [];
    const asSystems =
      PUT_IN.includes(item.did) && item.systems.length > 0 && item.systems.every((id) => systemsTold.has(id));
    return asSystems ? [] : unitOf(rules, item, index);
  });
}

function unitOf(rules: DraftRules, item: WorkItem, index: number): DraftUnit[] {
  const trade = tradeOf(`${item.what} ${item.how ?? ''}`, item.trade);
  const done = doneWords(rules, item);
  const backing = backedDeed(rules, item, `Work: ${item.what}`, ['work', index]);
  const permit = permitPieces(rules, item.permit);
  if (done === undefined || backing === undefined || permit === undefined) return [];
  const said = /\bseller\b/i.test(item.from ?? '') ? [joining('per the prior seller')] : [];
  const sentence = SENTENCE_OF[trade];
  const later =
    said.length > 0 && permit.length === 0
      ? 12
      : item.did === 'painted' || item.did === 'serviced' || /\balarms?\b/i.test(item.what)
        ? 14
        : 0;
  return subjectsOf(rules.context.house, item).map(({ text, where }) => ({
    sentence,
    rank: RANK_OF[sentence] + later,
    pieces: [{ text, backing }],
    tail: where === '' ? done : `${done} ${where}`,
    aside: [...permit, ...said],
  }));
}

/** "replaced in 2026"; an addition was not added once more: "from about 2004". */
function doneWords({ context }: DraftRules, item: WorkItem): string | undefined {
  if (item.did === 'added' && /\baddition\b/i.test(item.what)) {
    const when = inYear(item.done);
    return when === undefined ? undefined : `from ${when.replace(/^in /, '')}`;
  }
  return deedWords(context, item.did, item.done);
}
