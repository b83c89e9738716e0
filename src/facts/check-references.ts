/** Ids: each given once, each that is used defined. */
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import type { FactPath } from '../diagnostics/fact-path.js';
import type { House } from './house.js';
import { nearestWord } from './nearest-word.js';

/** Things that share one set of ids, since other facts may name any of them in the same place. */
type Family = 'person' | 'place' | 'paper' | 'system' | 'work' | 'anything';

interface Named {
  readonly id: string;
  readonly path: FactPath;
  readonly what: string;
}

const FAMILY_WORDS: Record<Family, string> = {
  person: 'person under people:',
  place: 'level, room, stair or structure',
  paper: 'document, permit or photo',
  system: 'system under systems:',
  work: 'work item',
  anything: 'system, room, level, stair or structure',
};

/** Words that stand for somebody without an entry under `people`. */
export const NAMELESS = ['owner', 'family', 'not-known'] as const;

export function checkReferences(house: House): Diagnostic[] {
  const named = collect(house);
  const known = new Map<Family, string[]>(
    [...named].map(([family, list]) => [family, list.map((n) => n.id)]),
  );
  known.set('anything', [...(known.get('system') ?? []), ...(known.get('place') ?? [])]);
  return [...[...named.values()].flatMap(twice), ...uses(house).flatMap((use) => undefinedUse(use, known))];
}

function collect(house: House): Map<Family, Named[]> {
  const list = (top: string, items: readonly { id?: string | undefined }[], what: string): Named[] =>
    items.flatMap((item, index) =>
      item.id === undefined ? [] : [{ id: item.id, path: [top, index, 'id'], what }],
    );
  return new Map<Family, Named[]>([
    ['person', list('people', house.people, 'a person')],
    [
      'place',
      [
        ...list('levels', house.levels, 'a level'),
        ...list('structures', house.structures, 'a structure'),
        ...list('rooms', house.rooms, 'a room'),
        ...list('stairs', house.stairs, 'a stair'),
      ],
    ],
    [
      'paper',
      [
        ...list('permits', house.permits, 'a permit'),
        ...list('documents', house.documents, 'a document'),
        ...Object.keys(house.photos).map((id) => ({ id, path: ['photos', id], what: 'a photo' })),
      ],
    ],
    ['system', list('systems', house.systems, 'a system')],
    ['work', list('work', house.work, 'a work item')],
  ]);
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
        message: `“${item.id}” is already the id of ${earlier.what}`,
        hints: [`give this one its own id, for example  id: ${item.id}-2`],
      },
    ];
  });
}

interface Use {
  readonly family: Family;
  readonly id: string;
  readonly path: FactPath;
}

/** Walks everything that names something else. Evidence, `by`, `permit` and photos mean the same wherever they stand. */
function uses(house: House): Use[] {
  const found: Use[] = [];
  const add = (family: Family, id: unknown, path: FactPath): void => {
    if (typeof id === 'string') found.push({ family, id, path });
  };
  const addAll = (family: Family, ids: readonly unknown[] | undefined, path: FactPath): void => {
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
      else if (key === 'by' && path[0] !== 'measured') {
        if (!(NAMELESS as readonly string[]).includes(String(inner))) add('person', inner, here);
      } else walk(inner, here);
    }
  };
  walk(house, []);
  for (const [at, room] of house.rooms.entries()) add('place', room.level, ['rooms', at, 'level']);
  for (const [at, alarm] of house.alarms.entries()) add('place', alarm.where, ['alarms', at, 'where']);
  for (const [at, system] of house.systems.entries()) add('place', system.where, ['systems', at, 'where']);
  for (const [at, task] of house.care.entries()) add('anything', task.for, ['care', at, 'for']);
  for (const [at, item] of house.conditions.entries()) {
    add('place', item.where, ['conditions', at, 'where']);
    addAll('paper', item.photos, ['conditions', at, 'photos']);
  }
  for (const [at, item] of house.work.entries()) {
    const here: FactPath = ['work', at];
    addAll('place', item.where, [...here, 'where']);
    addAll('system', item.systems, [...here, 'systems']);
    add('paper', item.photos?.before, [...here, 'photos', 'before']);
    add('paper', item.photos?.after, [...here, 'photos', 'after']);
    addAll('paper', item.photos?.during, [...here, 'photos', 'during']);
  }
  for (const [id, photo] of Object.entries(house.photos)) add('place', photo.where, ['photos', id, 'where']);
  addAll('paper', house.lead?.reports, ['lead', 'reports']);
  add('person', house.lead?.firm, ['lead', 'firm']);
  return found;
}

function undefinedUse(use: Use, known: ReadonlyMap<Family, readonly string[]>): Diagnostic[] {
  const ids = known.get(use.family) ?? [];
  if (ids.includes(use.id)) return [];
  const near = nearestWord(use.id, use.family === 'person' ? [...ids, ...NAMELESS] : ids);
  return [
    {
      code: 'facts.id-unknown',
      severity: 'error',
      path: use.path,
      message: `no ${FAMILY_WORDS[use.family]} has the id “${use.id}”`,
      hints: [
        ...(near === undefined ? [] : [`perhaps  ${near}`]),
        use.family === 'paper'
          ? `add it under documents:, for example  - { id: ${use.id}, what: receipt, kind: receipt }`
          : `define it, or use one of: ${shorten(use.family === 'person' ? [...NAMELESS, ...ids] : ids)}`,
      ],
    },
  ];
}

const shorten = (ids: readonly string[]): string =>
  ids.length === 0 ? '(there are none yet)' : `${ids.slice(0, 12).join(', ')}${ids.length > 12 ? ', …' : ''}`;
