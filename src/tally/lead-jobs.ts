/**
 * Which work disturbed how much painted surface, added up by place and thirty days.
 *
 * The sums say how much was recorded and on which side of minor repair that is; whether the federal renovation
 * rule reaches a job is for its agency to say. Start reading at `leadJobs`.
 */
import type { FactPath } from '../diagnostics/fact-path.js';
import { addYears } from '../facts/age.js';
import { SQUARE_FOOT } from '../facts/floor-area.js';
import type { House, WorkItem } from '../facts/house.js';
import { type LeadPlace, leadPlaces, placeKey, placeWords } from './lead-places.js';
import type { LeadAsbestosRules } from './tables/lead-asbestos.js';
import { type Who, whoDid } from './who.js';
import { type DatedWork, datedWork, gatherWithin, surelyWithin } from './work-days.js';

export interface LeadJob {
  /** "Back bedroom", "Outside: Porch, Porch steps" or "Place not recorded". */
  readonly where: string;
  /** Id of the room, level, stair or structure; undefined for all that is outside, and where no place is recorded. */
  readonly at: string | undefined;
  /** It is outside, where the limit is larger. */
  readonly outside: boolean;
  /** The fact it is known by. */
  readonly path: FactPath;
  readonly items: readonly WorkItem[];
  /** Sum of what was recorded, (0.1 µm)². */
  readonly area: bigint;
  /** "7 sq ft in 2 pieces of work". */
  readonly areaWords: string;
  /** Minor repair ends at this many square feet here. */
  readonly limitSquareFeet: number;
  /** `minor`: at or within the limit. `open`: what was recorded doesn’t settle it. */
  readonly verdict: 'minor' | 'more than minor' | 'open';
  readonly verdictWords: string;
  readonly who: readonly Who[];
  /** "the owner; Ridge Street Painting (recorded as the certified firm)". */
  readonly whoWords: string;
  /** Last day its records are kept at least, YYYY-MM-DD; undefined for minor repair and where no end is known. */
  readonly keepRecordsThrough: string | undefined;
}

/** The jobs of a house, in the order in which its folder names their places. */
export function leadJobs(house: House, rules: LeadAsbestosRules): LeadJob[] {
  const places = new Map<string, { place: LeadPlace; pieces: DatedWork[] }>();
  for (const [index, item] of house.work.entries()) {
    if (item['paint-disturbed'] === undefined && !item['windows-replaced']) continue;
    const piece = datedWork(item, index);
    for (const place of leadPlaces(house, item)) {
      const known = places.get(placeKey(place)) ?? { place, pieces: [] };
      if (!known.pieces.includes(piece)) known.pieces.push(piece);
      places.set(placeKey(place), known);
    }
  }
  const { sameJobDays } = rules.leadMinorRepair.figures;
  return [...places.values()].flatMap(({ place, pieces }) =>
    gatherWithin(pieces, sameJobDays).map((group) => jobOf(house, place, group, rules)),
  );
}

function jobOf(
  house: House,
  place: LeadPlace,
  group: readonly DatedWork[],
  rules: LeadAsbestosRules,
): LeadJob {
  const { insideSquareFeet, outsideSquareFeet, sameJobDays } = rules.leadMinorRepair.figures;
  const items = group.map(({ item }) => item);
  const area = items.reduce((sum, item) => sum + (item['paint-disturbed']?.area ?? 0n), 0n);
  const who = distinct(items.map((item) => whoDid(house, item.by)));
  const limit = place.outside ? outsideSquareFeet : insideSquareFeet;
  const { verdict, words } = verdictOf(items, area, limit, place.outside);
  const maybe = surelyWithin(group, sameJobDays)
    ? ''
    : `; the dates don’t show whether all of it fell within ${sameJobDays} days, so it is counted as one job`;
  const lasts = group.map(({ item }) => item.done?.latest);
  const end = lasts.includes(undefined) ? undefined : lasts.toSorted().at(-1);
  return {
    where: placeWords(house, place, items),
    at: place.at,
    outside: place.outside,
    path: pathOf(group),
    items,
    area,
    areaWords: areaWords(items, area),
    limitSquareFeet: limit,
    verdict,
    verdictWords: `${words}${maybe}`,
    who,
    whoWords: who.map((one) => whoWords(one, house)).join('; '),
    keepRecordsThrough:
      verdict === 'minor' || end === undefined
        ? undefined
        : addYears(end, rules.leadRecordsKept.figures.years, 'later'),
  };
}

/** Replaced windows settle a job, so their fact comes first. */
function pathOf(group: readonly DatedWork[]): FactPath {
  const { index, item } = group.reduce((first, one) =>
    !first.item['windows-replaced'] && one.item['windows-replaced'] ? one : first,
  );
  return ['work', index, item['windows-replaced'] ? 'windows-replaced' : 'paint-disturbed'];
}

function areaWords(items: readonly WorkItem[], area: bigint): string {
  const missing = items.filter((item) => item['paint-disturbed'] === undefined).length;
  const pieces = items.length === 1 ? '' : ` in ${items.length} pieces of work`;
  if (missing === items.length) return `area not recorded${pieces}`;
  return `${paintedSquareFeet(area)} sq ft${pieces}${missing === 0 ? '' : `, ${missing} of them without a figure`}`;
}

/** To a hundredth, rounded up: an area over the limit never prints as the limit. */
export function paintedSquareFeet(area: bigint): string {
  const hundredths = (area * 100n + SQUARE_FOOT - 1n) / SQUARE_FOOT;
  const places = String(hundredths % 100n)
    .padStart(2, '0')
    .replace(/0+$/, '');
  return places === '' ? `${hundredths / 100n}` : `${hundredths / 100n}.${places}`;
}

function verdictOf(
  items: readonly WorkItem[],
  area: bigint,
  limit: number,
  outside: boolean,
): { verdict: LeadJob['verdict']; words: string } {
  const per = `${limit} sq ft ${outside ? 'outside' : 'in a room'}`;
  if (items.some((item) => item['windows-replaced']))
    return { verdict: 'more than minor', words: 'painted windows replaced, which is never minor repair' };
  if (area > BigInt(limit) * SQUARE_FOOT)
    return { verdict: 'more than minor', words: `more than the minor-repair limit of ${per}` };
  if (items.some((item) => item.did === 'removed' && item.structural))
    return {
      verdict: 'open',
      words:
        'a part of the structure was removed: if that demolished painted surface, it is never minor repair',
    };
  return {
    verdict: 'minor',
    words:
      area === BigInt(limit) * SQUARE_FOOT
        ? `exactly the minor-repair limit of ${per}, which is still within it`
        : `within the minor-repair limit of ${per}`,
  };
}

function distinct(list: readonly Who[]): Who[] {
  const key = (who: Who): string => (who.kind === 'hired' ? `hired ${who.person.id}` : who.kind);
  return [...new Map(list.map((who) => [key(who), who])).values()];
}

function whoWords(who: Who, house: House): string {
  if (who.kind !== 'hired')
    return { owner: 'the owner', family: 'the owner’s family', 'not-known': 'not known' }[who.kind];
  return house.lead?.firm === who.person.id
    ? `${who.person.name} (recorded as the certified firm, as stated)`
    : `${who.person.name} (certification not recorded)`;
}
