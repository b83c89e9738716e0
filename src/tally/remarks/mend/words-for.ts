/** The words that could stand in place of a finding's stretch, by the rule that it breaks. */
import type { Item } from '../items/items.js';
import type { Finding, Known } from '../items/known.js';
import { dateWords } from './mend-dates.js';
import { figureWords } from './mend-figures.js';
import { kindWords } from './mend-kinds.js';
import { newnessWords } from './mend-newness.js';
import { conveyWords, otherWords, permitWords, placeWords, whoWords } from './mend-people.js';
import type { Stretch } from './stretch.js';

/** Best first. */
export function wordsFor(known: Known, stretch: Stretch, finding: Finding, items: readonly Item[]): string[] {
  const { rule, instead, verdict, facts } = finding;
  const isWide = verdict === 'wider';
  if (rule.startsWith('newness.')) return newnessWords(known, stretch, rule, items, isWide);
  if (/^date\.(?:year|age|within|ago)$/.test(rule)) return dateWords(stretch, items);
  if (rule.startsWith('kind.')) return kindWords(stretch, rule, items, isWide);
  if (/^(?:date\.built$|count\.|size\.(?:living-area|lot|rating|ceiling|feet)$|dues$)/.test(rule))
    return instead === undefined ? [] : figureWords(stretch, rule, instead);
  if (rule.startsWith('who.')) return whoWords(stretch, items, isWide);
  if (rule === 'permit') {
    const all = /\b(?:all|every|everything)\b/i.test(stretch.says);
    const permits = known.house.permits.filter(
      (_permit, at) => all || facts.some(({ path }) => path[0] === 'permits' && path[1] === at),
    );
    return permitWords(stretch, all, permits);
  }
  if (rule.startsWith('conveys.')) return conveyWords(stretch, isWide);
  if (rule === 'place') {
    const rooms = facts.flatMap(({ path }) =>
      path[0] === 'rooms' && path.length === 2 ? [Number(path[1])] : [],
    );
    return placeWords(known, stretch, rooms, items);
  }
  if (rule === 'other-kind') return instead === undefined ? [] : otherWords(stretch, instead);
  return [];
}
