/**
 * Old materials that may hold asbestos, found by their names among finishes, work, systems and siding.
 *
 * Says what to ask about; never that a material holds asbestos, or that a house is free of it.
 */
import type { FactPath } from '../diagnostics/fact-path.js';
import type { HouseDate } from '../facts/date.js';
import type { House, WorkItem } from '../facts/house.js';
import { nameOf, nameOfPlace } from '../facts/place-name.js';
import { capital } from './area-words.js';
import { PUT_IN } from './improvements.js';
import type { LeadAsbestosRules } from './tables/lead-asbestos.js';

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

/** Materials of the federal list, most particular first. */
const MATERIALS: readonly (readonly [string, RegExp])[] = [
  [
    'vinyl or asphalt floor tile',
    /\b(vinyl|asphalt)([ -](asbestos|composition))?( floor)? tiles?\b|\btiles?, (vinyl|asphalt)\b/,
  ],
  ['sheet vinyl', /\bsheet vinyl|vinyl,? sheet\b/],
  ['flooring adhesive', /\bmastic\b|\b(cutback|black) adhesive\b/],
  [
    'textured ceiling or wall',
    /popcorn|\btextured? (ceilings?|paint|walls?)|\b(ceiling|wall) texture|sprayed ceiling|acoustic ceiling/,
  ],
  ['vermiculite', /vermiculite/],
  [
    'pipe or furnace wrap',
    /\b(pipe|duct|furnace|boiler)s?,? (wrap|wrapping|wrapped|lagging|insulation|covering)\b/,
  ],
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

export function asbestosCautions(house: House, rules: LeadAsbestosRules): AsbestosCaution[] {
  const { asbestosPlaces, asbestosPresumed } = rules;
  const year = asbestosPresumed.figures.installedThroughYear;
  const tests = house.documents.filter((paper) => paper.kind === 'report' && /asbestos/i.test(paper.what));
  const source = [asbestosPlaces, asbestosPresumed]
    .map((rule) => `${rule.source.title}${rule.read === 'from memory' ? ' (from memory)' : ''}`)
    .join('; ');
  return mentions(house).flatMap((mention) => {
    const material = MATERIALS.find(([, pattern]) => pattern.test(mention.text))?.[0];
    // What was put in at an unknown time, or by some day, may be as old as the house.
    const put = mention.put?.earliest ?? house.house.built.value?.earliest;
    if (material === undefined || (put !== undefined && put > `${year}-12-31`)) return [];
    const test = tests.length === 0 ? 'no test on file' : 'a test report is on file';
    return [
      {
        id: mention.id,
        path: mention.path,
        material,
        where: mention.where,
        state: mention.state,
        words: `${capital(material)} ${mention.state}: ${test}`,
        caution: asbestosPlaces.caution,
        source,
        // The reports are named beside it by editions that may name them.
        evidence: [...mention.evidence, ...tests.map(({ id }) => id)],
      },
    ];
  });
}

function mentions(house: House): Mention[] {
  const lower = (...words: readonly (string | undefined)[]): string => words.join(' ').toLowerCase();
  const stateOf = (did: WorkItem['did']): AsbestosCaution['state'] =>
    did === 'removed' ? 'removed' : 'worked on';
  const finishes = (top: 'rooms' | 'structures'): Mention[] =>
    house[top].flatMap((home, at) =>
      home.finishes.flatMap((item, index): Mention[] => {
        const asFound = item.kept || (item.did === undefined && item.done === undefined);
        const made = asFound || PUT_IN.includes(item.did ?? 'new');
        const base = {
          id: `finish-${home.id}-${index}`,
          path: [top, at, 'finishes', index],
          where: nameOf(home),
          evidence: item.evidence,
        };
        const textured = item.on === 'ceiling' && /texture/i.test(item.what) ? 'textured ceiling' : '';
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
        where:
          item.where.length === 0 ? undefined : item.where.map((at) => nameOfPlace(house, at)).join(', '),
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
        where: item.where === undefined ? undefined : nameOfPlace(house, item.where),
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
