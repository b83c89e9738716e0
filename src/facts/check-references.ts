/** Ids: each given once, each that is used defined. */
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import type { FactPath } from '../diagnostics/fact-path.js';
import { valueAt } from './explain-issue.js';
import { wordsAt } from './field-at.js';
import type { House } from './house.js';
import { nearestWord } from './nearest-word.js';

type Kind =
  | 'person'
  | 'level'
  | 'structure'
  | 'room'
  | 'stair'
  | 'permit'
  | 'document'
  | 'photo'
  | 'system'
  | 'work item';

/** What a fact may name in one place. */
interface Family {
  /** After "no … has the id". */
  readonly words: string;
  readonly kinds: readonly Kind[];
}

const PLACES = ['level', 'room', 'stair', 'structure'] as const;
const PAPERS = ['document', 'permit', 'photo'] as const;
const FAMILIES = {
  person: { words: 'person under people:', kinds: ['person'] },
  level: { words: 'level', kinds: ['level'] },
  place: { words: 'level, room, stair or structure', kinds: PLACES },
  paper: { words: 'document, permit or photo', kinds: PAPERS },
  photo: { words: 'photo', kinds: ['photo'] },
  system: { words: 'system under systems:', kinds: ['system'] },
  work: { words: 'item under work:', kinds: ['work item'] },
  anything: { words: 'system, room, level, stair or structure', kinds: ['system', ...PLACES] },
} as const satisfies Record<string, Family>;

/** Ids are shared where one place in the facts may name any of these. */
const SHARED: readonly (readonly Kind[])[] = [['person'], PLACES, PAPERS, ['system'], ['work item']];

const HOME: readonly (readonly [word: string, kind: Kind])[] = [
  ['people', 'person'],
  ['levels', 'level'],
  ['structures', 'structure'],
  ['rooms', 'room'],
  ['stairs', 'stair'],
  ['permits', 'permit'],
  ['documents', 'document'],
  ['systems', 'system'],
  ['work', 'work item'],
  ['photos', 'photo'],
];

/** Words that stand for somebody without an entry under `people`. */
const NAMELESS = ['owner', 'family', 'not-known'] as const;

interface Named {
  readonly kind: Kind;
  readonly id: string;
  readonly path: FactPath;
}

/**
 * `written` is what the house was checked from: a thing that was cut away for an error of its own is still there
 * for those that name it. `doubled` are the words at the top of which one list was read and another left out.
 */
export function checkReferences(
  house: House,
  written: unknown = house,
  doubled: readonly string[] = [],
): Diagnostic[] {
  const own = collect(house);
  const known = knownIds([...own, ...collect(written)]);
  const hidden = hiddenKinds(written, doubled);
  return [
    ...SHARED.flatMap((kinds) => twice(own.filter((one) => kinds.includes(one.kind)))),
    ...uses(house)
      .filter(({ family }) => !FAMILIES[family].kinds.some((kind) => hidden.has(kind)))
      .flatMap((use) => undefinedUse(use, known)),
  ];
}

/**
 * Kinds of things of which some are there and not seen, for a mistake that is told where it stands: a list below a
 * misspelt word or one written twice, an item without its id. That nothing has some id is not said of them.
 */
function hiddenKinds(written: unknown, doubled: readonly string[]): ReadonlySet<Kind> {
  const words = wordsAt([]);
  const top = typeof written === 'object' && written !== null ? Object.keys(written) : [];
  const misspelt = top.flatMap((word) =>
    words.includes(word) || typeof valueAt(written, [word]) !== 'object'
      ? []
      : (nearestWord(word, words) ?? []),
  );
  const hidden = HOME.filter(
    ([word]) =>
      doubled.includes(word) || misspelt.includes(word) || hasNamelessItem(valueAt(written, [word])),
  );
  return new Set(hidden.map(([, kind]) => kind));
}

const hasNamelessItem = (list: unknown): boolean =>
  Array.isArray(list) &&
  list.some((item) => typeof item === 'object' && item !== null && !Object.hasOwn(item, 'id'));

/** Whatever has an id, in a checked house or in what was written. */
function collect(house: unknown): Named[] {
  const lists = HOME.flatMap(([word, kind]) => {
    const list = valueAt(house, [word]);
    if (!Array.isArray(list)) return [];
    return list.flatMap((_item, index): Named[] => {
      const path = [word, index, 'id'];
      const id = valueAt(house, path);
      return typeof id === 'string' || typeof id === 'number' ? [{ kind, id: String(id), path }] : [];
    });
  });
  const photos = valueAt(house, ['photos']);
  const ids = typeof photos === 'object' && photos !== null ? Object.keys(photos) : [];
  return [...lists, ...ids.map((id): Named => ({ kind: 'photo', id, path: ['photos', id] }))];
}

function twice(list: readonly Named[]): Diagnostic[] {
  const first = new Map<string, Named>();
  return list.flatMap((item): Diagnostic[] => {
    const earlier = first.get(item.id);
    if (earlier === undefined) {
      first.set(item.id, item);
      return [];
    }
    return [
      {
        code: 'facts.id-twice',
        severity: 'error',
        path: item.path,
        message: `“${item.id}” is already the id of a ${earlier.kind}`,
        hints: [`give this one its own id, for example  id: ${item.id}-2`],
      },
    ];
  });
}

interface Use {
  readonly family: keyof typeof FAMILIES;
  readonly id: string;
  readonly path: FactPath;
}

/** Walks everything that names something else. Evidence, `by`, `permit` and photos mean the same wherever they stand. */
function uses(house: House): Use[] {
  const found: Use[] = [];
  const add = (family: Use['family'], id: unknown, path: FactPath): void => {
    if (typeof id === 'string') found.push({ family, id, path });
  };
  const addAll = (family: Use['family'], ids: readonly unknown[] | undefined, path: FactPath): void => {
    for (const [at, id] of (ids ?? []).entries()) add(family, id, [...path, at]);
  };
  const walk = (value: unknown, path: FactPath): void => {
    if (Array.isArray(value)) {
      for (const [at, item] of value.entries()) walk(item, [...path, at]);
      return;
    }
    if (typeof value !== 'object' || value === null) return;
    for (const [key, inner] of Object.entries(value)) {
      const here = [...path, key];
      if (key === 'evidence' && Array.isArray(inner)) addAll('paper', inner, here);
      else if (key === 'permit' || key === 'manual') add('paper', inner, here);
      else if (key === 'work' && here.includes('finishes')) add('work', inner, here);
      else if (key === 'person' && path[0] === 'money') add('person', inner, here);
      else if (key === 'by' && path[0] !== 'measured') {
        if (!(NAMELESS as readonly string[]).includes(String(inner))) add('person', inner, here);
      } else walk(inner, here);
    }
  };
  walk(house, []);
  for (const [at, room] of house.rooms.entries()) add('level', room.level, ['rooms', at, 'level']);
  for (const [at, alarm] of house.alarms.entries()) add('place', alarm.where, ['alarms', at, 'where']);
  for (const [at, system] of house.systems.entries()) add('place', system.where, ['systems', at, 'where']);
  for (const [at, task] of house.care.entries()) add('anything', task.for, ['care', at, 'for']);
  for (const [at, item] of house.conditions.entries()) {
    add('place', item.where, ['conditions', at, 'where']);
    addAll('photo', item.photos, ['conditions', at, 'photos']);
  }
  for (const [at, item] of house.work.entries()) {
    const here: FactPath = ['work', at];
    addAll('place', item.where, [...here, 'where']);
    addAll('system', item.systems, [...here, 'systems']);
    add('photo', item.photos?.before, [...here, 'photos', 'before']);
    add('photo', item.photos?.after, [...here, 'photos', 'after']);
    addAll('photo', item.photos?.during, [...here, 'photos', 'during']);
  }
  for (const [id, photo] of Object.entries(house.photos)) add('place', photo.where, ['photos', id, 'where']);
  addAll('paper', house.lead?.reports, ['lead', 'reports']);
  add('person', house.lead?.firm, ['lead', 'firm']);
  return found;
}

/** Beyond this many unknown ids the cause is another, and looking for the nearest of each takes time. */
const MOST_SUGGESTIONS = 200;

interface Ids {
  readonly all: ReadonlySet<string>;
  /** As many as are told, and one that tells that there are more. */
  readonly some: readonly string[];
}

const MOST_TOLD = 12;

/** What has an id, made ready for many questions. */
interface Known {
  readonly of: (family: Use['family']) => Ids;
  /** The first thing that has the id. */
  readonly first: (id: string) => Named | undefined;
  /** The id that is likely meant. */
  readonly nearest: (id: string, ids: Iterable<string>, nameless: readonly string[]) => string | undefined;
}

function knownIds(named: readonly Named[]): Known {
  const families = new Map<Use['family'], Ids>();
  const first = new Map([...named].reverse().map((one) => [one.id, one]));
  let asked = 0;
  return {
    of: (family) => {
      const { kinds }: Family = FAMILIES[family];
      const known = families.get(family);
      if (known !== undefined) return known;
      const all = new Set(named.filter(({ kind }) => kinds.includes(kind)).map(({ id }) => id));
      const ids = { all, some: [...all].slice(0, MOST_TOLD + 1) };
      families.set(family, ids);
      return ids;
    },
    first: (id) => first.get(id),
    nearest: (id, ids, nameless) =>
      ++asked > MOST_SUGGESTIONS ? undefined : nearestWord(id, [...ids, ...nameless]),
  };
}

function undefinedUse(use: Use, known: Known): Diagnostic[] {
  const family: Family = FAMILIES[use.family];
  const { all, some } = known.of(use.family);
  if (all.has(use.id)) return [];
  const nameless = use.family === 'person' ? NAMELESS : [];
  const near = known.nearest(use.id, all, nameless);
  const other = known.first(use.id);
  return [
    {
      code: 'facts.id-unknown',
      severity: 'error',
      path: use.path,
      message: `no ${family.words} has the id “${use.id}”${other === undefined ? '' : `; it is that of a ${other.kind}`}`,
      hints: [...(near === undefined ? [] : [`perhaps  ${near}`]), wayOut(use, [...nameless, ...some])],
    },
  ];
}

function wayOut(use: Use, ids: readonly string[]): string {
  if (use.family === 'paper')
    return `add it under documents:, for example  - { id: ${use.id}, what: receipt, kind: receipt }`;
  if (use.family === 'photo')
    return `add it under photos:, for example  ${use.id}: { shows: kitchen, alt: A kitchen with pale cabinets. }`;
  if (ids.length === 0) return 'define it first; there is none yet';
  return `define it, or use one of: ${ids.slice(0, MOST_TOLD).join(', ')}${ids.length > MOST_TOLD ? ', …' : ''}`;
}
