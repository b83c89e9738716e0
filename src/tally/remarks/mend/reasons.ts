/** Why a claim does not hold, by what is in its way: "left as found: cabinet boxes; of 2009: furnace". */
import { answerOf } from '../items/answer-of.js';
import type { Item } from '../items/items.js';
import type { Finding, Known } from '../items/known.js';
import { untilFirst } from '../words/cut-at.js';
import { hindrance, listed, nameOf, otherDeed, yearsOf } from './state.js';

/** Undefined: the judge's own words say enough. */
export function reasonOf(known: Known, finding: Finding, items: readonly Item[]): string | undefined {
  const { rule, verdict } = finding;
  if (rule.startsWith('newness.')) return ofNewness(known, rule.replace('newness.', ''), items);
  if (rule.startsWith('kind.'))
    return verdict === 'wider' || /not in all|otherwise than/.test(finding.because)
      ? ofKind(items)
      : undefined;
  if (rule.startsWith('who.'))
    return verdict === 'wider' || /not of all/.test(finding.because) ? ofFacts(finding) : undefined;
  if (rule.startsWith('date.') && /another deed/.test(finding.because)) return ofDeed(items);
  if (rule.startsWith('condition.') && rule !== 'condition.out-of-use') return ofCondition(finding);
  if (rule === 'permit' && /^(?:not all|the folder says: )/.test(finding.because)) return ofPermits(finding);
  return undefined;
}

const OLD_AFTER_FIVE_YEARS = /^(?:newer|recently|updated)$/;
const MOST_GROUPS = 3;

function ofNewness(known: Known, word: string, items: readonly Item[]): string | undefined {
  const answers = items.map((item) => ({ item, answer: answerOf(known, item, word) }));
  const groups = new Map<string, string[]>();
  for (const { item, answer } of answers) {
    if (answer === 'yes') continue;
    const why = hindrance(item);
    const isOld = OLD_AFTER_FIVE_YEARS.test(word) && why.startsWith('of ');
    const told =
      isOld && answer !== 'unknown'
        ? `${why}, older than ${answer === 'stretched' ? 'five' : 'ten'} years`
        : why;
    groups.set(told, [...(groups.get(told) ?? []), nameOf(item)]);
  }
  if (groups.size === 0) return undefined;
  // Service of what has another date adds nothing.
  if (groups.size > 1) for (const why of groups.keys()) if (why.startsWith('only ')) groups.delete(why);
  return [...groups]
    .slice(0, MOST_GROUPS)
    .map(([why, names]) => `${why}: ${listed(names)}`)
    .join('; ');
}

/** "kitchen floor: vinyl plank; bath floor: hexagon mosaic tile" */
function ofKind(items: readonly Item[]): string | undefined {
  const told = items.slice(0, 2).flatMap((item) => {
    const [first = item.what, ...rest] = item.what.split(', ');
    // A system's own kind names it already; what it is of comes behind.
    const what = item.kind === 'system' && rest.length > 0 ? rest.slice(0, 2).join(', ') : first;
    return what === nameOf(item) ? [] : [`${nameOf(item)}: ${what}`];
  });
  return told.length === 0 ? undefined : `the folder says ${told.join('; ')}`;
}

/** "the permit is still open: front steps, rail and porch guard; the office found no permit: garage" */
function ofPermits({ facts }: Finding): string | undefined {
  const told = facts.flatMap(({ words }) => {
    const [, what = '', state = ''] = /^permit(?: [\w-]*\d[\w-]*)?, (.+): ([^:]+)$/.exec(words) ?? [];
    return what === '' || /^closed/.test(state) ? [] : [`${state}: ${what}`];
  });
  return told.length === 0 ? undefined : told.slice(0, 3).join('; ');
}

const ofFacts = ({ facts }: Finding): string | undefined =>
  facts.length === 0
    ? undefined
    : facts
        .slice(0, 2)
        .map(({ words }) => words)
        .join('; ');

function ofDeed(items: readonly Item[]): string | undefined {
  const item = items.find((one) => otherDeed(one) !== undefined);
  if (item === undefined) return undefined;
  return `${nameOf(item)}: ${otherDeed(item)}${item.done === undefined ? '' : ` in ${yearsOf(item.done)}`}`;
}

/** The first thing that speaks against it, without the question that it answers. */
function ofCondition({ verdict, facts: [first] }: Finding): string | undefined {
  if (verdict !== 'contradicted' || first === undefined) return undefined;
  const words = first.words.replace(/^known and not mended: /, '').replace(/^[^?]*\?\s*/, '');
  return `the folder lists: ${untilFirst(words, /(?!^)[.;]/)}`;
}
