/**
 * Lead paint and asbestos: whether the federal lead rules reach the house, what its folder records of their
 * duties, which work disturbed how much paint, and which old materials to ask about.
 *
 * Says what was recorded and what to ask; gives no legal advice and calls no house free of either. Start reading
 * at `deriveLead`.
 */
import { Temporal } from 'temporal-polyfill';
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import type { FactPath } from '../diagnostics/fact-path.js';
import { addYears } from '../facts/age.js';
import { type HouseDate, printDate } from '../facts/date.js';
import { SQUARE_FOOT } from '../facts/floor-area.js';
import type { House, WorkItem } from '../facts/house.js';
import { nameOfRoom } from './alarms.js';
import { type LeadAsbestosRules, leadAsbestosRules } from './tables/lead-asbestos.js';
import { tradeOf } from './trades.js';
import { type Who, whoDid } from './who.js';

export interface LeadNotes {
  /** Whether the house is housing the federal lead rules reach. `not known` is treated as yes. */
  readonly target: 'yes' | 'no' | 'not known';
  /** True for `yes` and `not known`: everything below is then filled. */
  readonly treatAsTarget: boolean;
  /** Why, in a sentence. */
  readonly because: string;
  /** What the rules ask of a seller before the buyer is bound, and what the folder records of it. */
  readonly duties: readonly LeadDuty[];
  /** Paint disturbed, by place and thirty days. */
  readonly jobs: readonly LeadJob[];
  /** Work that often disturbs paint and has no figure for it. */
  readonly unrecorded: readonly { readonly item: WorkItem; readonly path: FactPath }[];
  /** To ask about where own hands did more than minor repair; undefined where that isn't so. */
  readonly ask: string | undefined;
  readonly asbestos: readonly AsbestosCaution[];
  readonly diagnostics: readonly Diagnostic[];
}

export interface LeadDuty {
  readonly id: 'pamphlet' | 'disclose-known' | 'records' | 'agents' | 'ten-days' | 'attachment';
  /** What is asked, in our own words. */
  readonly what: string;
  readonly recorded: boolean;
  /** What the folder says of it: "given 22 June 2026", "not recorded in the house folder". */
  readonly words: string;
  /** Ids of the papers behind it. */
  readonly evidence: readonly string[];
}

export interface LeadJob {
  /** "Back bedroom", "Outside: Porch, Porch steps" or "Place not recorded". */
  readonly where: string;
  /** Id of the room, level, stair or structure; undefined for all that is outside, and where no place is recorded. */
  readonly at: string | undefined;
  readonly items: readonly WorkItem[];
  /** Sum of what was recorded, (0.1 µm)². */
  readonly area: bigint;
  /** "7 sq ft in two pieces of work". */
  readonly areaWords: string;
  /** `minor`: at or within the limit. `open`: what was recorded doesn’t settle it. */
  readonly verdict: 'minor' | 'more than minor' | 'open';
  readonly verdictWords: string;
  readonly who: readonly Who[];
  /** "the owner; Ridge Street Painting (recorded as the certified firm)". */
  readonly whoWords: string;
  /** Last day its records are kept at least, YYYY-MM-DD; undefined for minor repair and where no end is known. */
  readonly keepRecordsThrough: string | undefined;
}

export interface AsbestosCaution {
  readonly id: string;
  readonly path: FactPath;
  readonly material: string;
  /** Name of the room or structure, if one is given. */
  readonly where: string | undefined;
  readonly state: 'removed' | 'worked on' | 'left in place';
  /** "Sheet vinyl removed: no test on file". */
  readonly words: string;
  readonly caution: string;
  readonly source: string;
  readonly evidence: readonly string[];
}

/**
 * Records that show how lead-safe renovation was done are kept this many years from its completion: 40 CFR 745.86,
 * quoted on pages for contractors. (The signed attachment's years are in the table.)
 */
const RECORDS_KEPT_YEARS = 3;

export function deriveLead(house: House): LeadNotes {
  const rules = leadAsbestosRules();
  const { target, because } = targetOf(house, rules.targetHousing.figures.builtBeforeYear);
  const treatAsTarget = target !== 'no';
  const found = treatAsTarget ? jobsOf(house, rules) : [];
  const own = found.some(({ job }) => job.verdict !== 'minor' && job.who.some((who) => who.kind !== 'hired'));
  return {
    target,
    treatAsTarget,
    because,
    duties: treatAsTarget ? duties(house, rules) : [],
    jobs: found.map(({ job }) => job),
    unrecorded: treatAsTarget ? unrecordedWork(house) : [],
    ask: own
      ? `Something to ask about: ${rules.leadRenovateToSell.rule} ${rules.leadRenovateToSell.caution}`
      : undefined,
    asbestos: asbestosCautions(house, rules),
    diagnostics: found.flatMap(({ job, path }) => warn(job, path, rules)),
  };
}

/** The signed attachment of a sale completed on `saleDay` (YYYY-MM-DD) is kept through this day at least. */
export function disclosureKeptThrough(saleDay: string): string {
  return addYears(saleDay, leadAsbestosRules().leadDisclosureKept.figures.years, 'later');
}

function targetOf(house: House, year: number): Pick<LeadNotes, 'target' | 'because'> {
  const built = house.house.built.value;
  if (built === undefined)
    return {
      target: 'not known',
      because: `When the house was built is not known; it is treated as built before ${year}.`,
    };
  const when = `Built ${printDate(built)}`;
  if (built.latest !== undefined && built.latest < `${year}-01-01`)
    return { target: 'yes', because: `${when}, before ${year}.` };
  if (built.earliest !== undefined && built.earliest >= `${year}-01-01`)
    return { target: 'no', because: `${when}, not before ${year}.` };
  return {
    target: 'not known',
    because: `${when}, which may be before ${year}; the house is treated as built before it.`,
  };
}

const NOT_RECORDED = 'not recorded in the house folder';

function duties(house: House, rules: LeadAsbestosRules): LeadDuty[] {
  const { lead } = house;
  const given = lead?.['pamphlet-given'];
  const known = lead?.known;
  const reports = lead?.reports ?? [];
  const duty = (
    id: LeadDuty['id'],
    what: string,
    words: string | undefined,
    evidence: readonly string[] = [],
  ): LeadDuty => ({ id, what, recorded: words !== undefined, words: words ?? NOT_RECORDED, evidence });
  const names = reports.map((id) => house.documents.find((paper) => paper.id === id)?.what ?? id);
  return [
    duty(
      'pamphlet',
      `Give the buyer the pamphlet “${rules.leadPamphlet.figures.title}”`,
      given && `given ${printDate(given)}`,
    ),
    duty(
      'disclose-known',
      'Tell the buyer of known lead paint and hazards, where they are, in what condition, and how that is known',
      known && `stated: ${known.value ?? 'not known'}`,
      known?.evidence,
    ),
    duty(
      'records',
      'Hand over the records and reports there are',
      names.length === 0 ? undefined : `on file: ${names.join('; ')}`,
      reports,
    ),
    duty('agents', 'Tell every agent of these duties', undefined),
    duty(
      'ten-days',
      `Allow the buyer ${rules.leadTestPeriod.figures.days} days for a test, or as agreed in writing`,
      undefined,
    ),
    duty(
      'attachment',
      'Attach the signed statement and the Lead Warning Statement to the contract',
      undefined,
    ),
  ];
}

/** One piece of work in one place, with the days on which it may have been going on. */
interface Piece {
  readonly item: WorkItem;
  readonly index: number;
  /** Days since 1970; infinite where the date is open or not known. */
  readonly first: number;
  readonly last: number;
}

/** Where the limit of one job is counted: a room, or all that is outside. */
interface Place {
  readonly at: string | undefined;
  readonly outside: boolean;
}

/** Structures without rooms in them. Anything else has the smaller limit of a room. */
const OUTSIDE = ['porch', 'deck', 'patio', 'balcony', 'carport'];

function jobsOf(house: House, rules: LeadAsbestosRules): { job: LeadJob; path: FactPath }[] {
  const places = new Map<string, { place: Place; pieces: Piece[] }>();
  for (const [index, item] of house.work.entries()) {
    if (item['paint-disturbed'] === undefined && !item['windows-replaced']) continue;
    const piece = pieceOf(item, index);
    for (const place of placesOf(house, item)) {
      const key = place.outside ? 'outside' : `at ${place.at ?? ''}`;
      const known = places.get(key) ?? { place, pieces: [] };
      if (!known.pieces.includes(piece)) known.pieces.push(piece);
      places.set(key, known);
    }
  }
  return [...places.values()].flatMap(({ place, pieces }) =>
    gather(pieces, rules.leadMinorRepair.figures.sameJobDays).map((group) => ({
      job: jobOf(house, place, group, rules),
      path: pathOf(group),
    })),
  );
}

function placesOf(house: House, item: WorkItem): Place[] {
  if (item.where.length === 0) return [{ at: undefined, outside: false }];
  return item.where.map((at) =>
    isOutside(house, item, at) ? { at: undefined, outside: true } : { at, outside: false },
  );
}

/** A stair is outside if the same work names a porch or the like: porch and porch steps. */
function isOutside(house: House, item: WorkItem, at: string): boolean {
  const open = (id: string): boolean =>
    house.structures.some((one) => one.id === id && OUTSIDE.includes(one.is));
  return open(at) || (house.stairs.some((stair) => stair.id === at) && item.where.some(open));
}

function nameOf(house: House, at: string): string {
  const { rooms, levels, stairs, structures } = house;
  return nameOfRoom(
    [...rooms, ...levels, ...stairs, ...structures].find((one) => one.id === at) ?? { id: at },
  );
}

function placeWords(house: House, place: Place, items: readonly WorkItem[]): string {
  if (place.at !== undefined) return nameOf(house, place.at);
  if (!place.outside) return 'Place not recorded';
  const ids = items.flatMap((item) => item.where.filter((at) => isOutside(house, item, at)));
  return `Outside: ${[...new Set(ids)].map((at) => nameOf(house, at)).join(', ')}`;
}

function pieceOf(item: WorkItem, index: number): Piece {
  const from = item.started?.earliest ?? item.done?.earliest;
  const to = item.done?.latest;
  const last = to === undefined ? Number.POSITIVE_INFINITY : dayNumber(to);
  const first = from === undefined ? Number.NEGATIVE_INFINITY : dayNumber(from);
  // A beginning after the end is a slip; the work still was where its end is.
  return { item, index, first: Math.min(first, last), last };
}

const dayNumber = (iso: string): number =>
  Temporal.PlainDate.from('1970-01-01').until(iso, { largestUnit: 'days' }).days;

/**
 * Pieces that lie, or may lie, within `days` of each other. A piece can be in two groups: the rule looks at any
 * thirty days, and does not chain one to the next. A group that is part of another is left out.
 */
function gather(pieces: readonly Piece[], days: number): Piece[][] {
  // The widest group of any stretch is met by letting the stretch begin on some piece's last possible day.
  const groups = pieces
    .map(({ last }) => last)
    .sort((a, b) => a - b)
    .map((begin) => pieces.filter((piece) => piece.last >= begin && piece.first <= begin + days));
  // The piece that a stretch begins with is in no later one, so only an earlier group can hold another.
  return groups.filter(
    (group, at) => !groups.slice(0, at).some((earlier) => group.every((piece) => earlier.includes(piece))),
  );
}

function pathOf(group: readonly Piece[]): FactPath {
  const first = group.find(({ item }) => item['windows-replaced']) ?? group[0];
  return first === undefined
    ? ['work']
    : ['work', first.index, first.item['windows-replaced'] ? 'windows-replaced' : 'paint-disturbed'];
}

function jobOf(house: House, place: Place, group: readonly Piece[], rules: LeadAsbestosRules): LeadJob {
  const items = group.map(({ item }) => item);
  const area = items.reduce((sum, item) => sum + (item['paint-disturbed']?.area ?? 0n), 0n);
  const who = distinct(items.map((item) => whoDid(house, item.by)));
  const { verdict, words } = verdictOf(items, area, place.outside, rules);
  const lasts = group.map(({ item }) => item.done?.latest);
  const end = lasts.includes(undefined) ? undefined : lasts.toSorted().at(-1);
  return {
    where: placeWords(house, place, items),
    at: place.at,
    items,
    area,
    areaWords: areaWords(items, area),
    verdict,
    verdictWords: `${words}${maybe(group, rules.leadMinorRepair.figures.sameJobDays)}`,
    who,
    whoWords: who.map((one) => whoWords(one, house)).join('; '),
    keepRecordsThrough:
      verdict === 'minor' || end === undefined ? undefined : addYears(end, RECORDS_KEPT_YEARS, 'later'),
  };
}

function areaWords(items: readonly WorkItem[], area: bigint): string {
  const missing = items.filter((item) => item['paint-disturbed'] === undefined).length;
  const pieces = items.length === 1 ? '' : ` in ${items.length} pieces of work`;
  if (missing === items.length) return `area not recorded${pieces}`;
  return `${squareFeet(area)} sq ft${pieces}${missing === 0 ? '' : `, ${missing} of them without a figure`}`;
}

/** To a hundredth, rounded up: an area over the limit never prints as the limit. */
function squareFeet(area: bigint): string {
  const hundredths = (area * 100n + SQUARE_FOOT - 1n) / SQUARE_FOOT;
  const places = String(hundredths % 100n)
    .padStart(2, '0')
    .replace(/0+$/, '');
  return places === '' ? `${hundredths / 100n}` : `${hundredths / 100n}.${places}`;
}

function verdictOf(
  items: readonly WorkItem[],
  area: bigint,
  outside: boolean,
  rules: LeadAsbestosRules,
): { verdict: LeadJob['verdict']; words: string } {
  const { insideSquareFeet, outsideSquareFeet } = rules.leadMinorRepair.figures;
  const limit = outside ? outsideSquareFeet : insideSquareFeet;
  const per = outside ? `${limit} sq ft outside` : `${limit} sq ft in a room`;
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

/** Says so where the dates leave open whether the pieces belong to one job. */
function maybe(group: readonly Piece[], days: number): string {
  const spread = Math.max(...group.map(({ last }) => last)) - Math.min(...group.map(({ first }) => first));
  return group.length < 2 || spread <= days
    ? ''
    : `; the dates don’t show whether all of it fell within ${days} days, so it is counted as one job`;
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

function warn(job: LeadJob, path: FactPath, rules: LeadAsbestosRules): Diagnostic[] {
  if (job.verdict === 'minor') return [];
  return [
    {
      code: 'tally.lead',
      severity: 'warning',
      path,
      message: `paint disturbed in a house that counts as built before ${rules.targetHousing.figures.builtBeforeYear}: ${job.where}, ${job.areaWords}; ${job.verdictWords}`,
      hints: [
        'write who did it (by:), name a certified firm under  lead: { firm: … }  and list its records under evidence:',
        'ask the federal agency or the state’s lead programme which rules apply to this work',
      ],
    },
  ];
}

const OFTEN_DISTURBS: readonly WorkItem['did'][] = [
  'replaced',
  'repaired',
  'refinished',
  'painted',
  'moved',
  'removed',
];
const PAINTED_TRADES = [
  'painting',
  'carpentry',
  'windows and doors',
  'structure',
  'kitchen and bath',
  'outside',
];

function unrecordedWork(house: House): LeadNotes['unrecorded'] {
  return house.work.flatMap((item, index) =>
    item['paint-disturbed'] === undefined &&
    !item['windows-replaced'] &&
    OFTEN_DISTURBS.includes(item.did) &&
    PAINTED_TRADES.includes(tradeOf(`${item.what} ${item.how ?? ''}`, item.trade))
      ? [{ item, path: ['work', index] }]
      : [],
  );
}

/** Materials of the federal list, most particular first. */
const MATERIALS: readonly (readonly [string, RegExp])[] = [
  ['vinyl or asphalt floor tile', /\b(vinyl|asphalt)( asbestos)?( floor)? tiles?\b/],
  ['sheet vinyl', /\bsheet vinyl|vinyl sheet\b/],
  ['flooring adhesive', /\bmastic\b|\b(cutback|black) adhesive\b/],
  [
    'textured ceiling or wall',
    /popcorn|\btextured? (ceilings?|paint|walls?)|sprayed ceiling|acoustic ceiling/,
  ],
  ['vermiculite', /vermiculite/],
  ['pipe or furnace wrap', /\b(pipe|duct|furnace|boiler) (wrap|wrapping|lagging|insulation|covering)\b/],
  ['cement siding or roofing', /\bcement[- ](siding|shingles?|board siding|roof(ing)?)\b/],
  ['asbestos', /asbestos/],
];

/** Something written down that may name such a material. */
interface Mention {
  readonly id: string;
  readonly path: FactPath;
  readonly text: string;
  readonly where: string | undefined;
  readonly state: AsbestosCaution['state'];
  /** When the material was put in, if that is said. */
  readonly put: HouseDate | undefined;
  readonly evidence: readonly string[];
}

function asbestosCautions(house: House, rules: LeadAsbestosRules): AsbestosCaution[] {
  const { asbestosPlaces, asbestosPresumed } = rules;
  const year = asbestosPresumed.figures.installedThroughYear;
  const tests = house.documents.filter((paper) => paper.kind === 'report' && /asbestos/i.test(paper.what));
  const source = [asbestosPlaces, asbestosPresumed]
    .map((rule) => `${rule.source.title}${rule.read === 'from memory' ? ' (from memory)' : ''}`)
    .join('; ');
  return mentions(house).flatMap((mention) => {
    const material = MATERIALS.find(([, pattern]) => pattern.test(mention.text))?.[0];
    // What was put in at an unknown time may be as old as the house.
    const put = mention.put ?? house.house.built.value;
    if (material === undefined || (put?.earliest !== undefined && put.earliest > `${year}-12-31`)) return [];
    const test =
      tests.length === 0 ? 'no test on file' : `on file: ${tests.map(({ what }) => what).join('; ')}`;
    return [
      {
        id: mention.id,
        path: mention.path,
        material,
        where: mention.where,
        state: mention.state,
        words: `${material.charAt(0).toUpperCase()}${material.slice(1)} ${mention.state}: ${test}`,
        caution: asbestosPlaces.caution,
        source,
        evidence: mention.evidence,
      },
    ];
  });
}

const JUST_MADE: readonly WorkItem['did'][] = ['new', 'replaced', 'added'];

function mentions(house: House): Mention[] {
  const lower = (...words: readonly (string | undefined)[]): string => words.join(' ').toLowerCase();
  const stateOf = (did: WorkItem['did']): AsbestosCaution['state'] =>
    did === 'removed' ? 'removed' : 'worked on';
  const finishes = (top: 'rooms' | 'structures'): Mention[] =>
    house[top].flatMap((home, at) =>
      home.finishes.flatMap((item, index): Mention[] => {
        const asFound = item.kept || (item.did === undefined && item.done === undefined);
        const made = asFound || JUST_MADE.includes(item.did ?? 'new');
        const base = {
          id: `finish-${home.id}-${index}`,
          path: [top, at, 'finishes', index],
          where: nameOfRoom(home),
          evidence: item.evidence,
        };
        const textured = item.on === 'ceiling' && /textured/i.test(item.what) ? 'textured ceiling' : '';
        return [
          {
            ...base,
            text: lower(textured, item.what),
            state: asFound ? 'left in place' : stateOf(item.did ?? 'new'),
            put: made ? item.done : undefined,
          },
          // What lies below a new floor is older than the floor.
          { ...base, id: `${base.id}-below`, text: lower(item.over), state: 'left in place', put: undefined },
        ];
      }),
    );
  return [
    ...finishes('rooms'),
    ...finishes('structures'),
    ...house.work.map(
      (item, index): Mention => ({
        id: `work-${item.id}`,
        path: ['work', index],
        text: lower(item.what, item.how),
        where: item.where.length === 0 ? undefined : item.where.map((at) => nameOf(house, at)).join(', '),
        state: stateOf(item.did),
        put: item.did === 'new' || item.did === 'added' ? item.done : undefined,
        evidence: item.evidence,
      }),
    ),
    ...house.systems.map(
      (item, index): Mention => ({
        id: `system-${item.id}`,
        path: ['systems', index],
        text: lower(item.is, item.material),
        where: item.where === undefined ? undefined : nameOf(house, item.where),
        state: item.did === 'removed' ? 'removed' : 'left in place',
        put: item.installed?.value,
        evidence: item.evidence,
      }),
    ),
    ...(house.house.exterior?.value === undefined
      ? []
      : [
          {
            id: 'exterior',
            path: ['house', 'exterior'],
            text: lower(house.house.exterior.value),
            where: undefined,
            state: 'left in place',
            put: undefined,
            evidence: house.house.exterior.evidence,
          } as const,
        ]),
  ];
}
