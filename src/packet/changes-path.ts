import type { FactPath } from '../diagnostics/fact-path.js';
import type { House } from '../facts/house.js';

/** Where in the house stands what a statement with this id is about; undefined where it is drawn from many facts. */
export function factPathOf(id: string, house: House): FactPath | undefined {
  for (const [shape, find] of SHAPES) {
    const named = shape.exec(id);
    const path = named === null ? undefined : find(house, named[1] ?? '', Number(named[2] ?? 0));
    if (path !== undefined) return path;
  }
  return undefined;
}

type Find = (house: House, id: string, at: number) => FactPath | undefined;

const within = (list: readonly { readonly id: string }[], word: string, id: string): FactPath | undefined => {
  const at = list.findIndex((one) => one.id === id);
  return at < 0 ? undefined : [word, at];
};

const counted = (list: readonly unknown[], word: string, number: string): FactPath | undefined =>
  Number(number) >= 1 && Number(number) <= list.length ? [word, Number(number) - 1] : undefined;

const finish: Find = (house, id, at) => {
  const home = within(house.rooms, 'rooms', id) ?? within(house.structures, 'structures', id);
  return home === undefined ? undefined : [...home, 'finishes', at];
};

/** Ids as sections give them; the first that leads to something counts. */
const SHAPES: readonly (readonly [RegExp, Find])[] = [
  [/^(?:short-lot)$/u, ({ house }) => (house.lot === undefined ? undefined : ['house', 'lot'])],
  [/^(?:key-built)$/u, () => ['house', 'built']],
  [/^(?:done|safety|improvement|renewed)-work-(.+)$/u, (house, id) => within(house.work, 'work', id)],
  [
    /^(?:kept-|done-|improvement-|safety-|renewed-)?(?:system|age|equipment|conveys)-(.+)$/u,
    (house, id) => within(house.systems, 'systems', id),
  ],
  [/^equipment-(.+)-\d+$/u, (house, id) => within(house.systems, 'systems', id)],
  [/^(?:kept-|improvement-)?finish-(.+)-(\d+)$/u, finish],
  [
    /^room-(.+)-size$/u,
    (house, id) => within(house.rooms, 'rooms', id) ?? within(house.structures, 'structures', id),
  ],
  [
    /^paper-(.+)$/u,
    (house, id) => within(house.permits, 'permits', id) ?? within(house.documents, 'documents', id),
  ],
  [/^person-(.+)$/u, (house, id) => within(house.people, 'people', id)],
  [/^condition-(\d+)$/u, (house, n) => counted(house.conditions, 'conditions', n)],
  [/^question-(\d+)$/u, (house, n) => counted(house.answers, 'answers', n)],
  [/^conveys-(\d+)$/u, (house, n) => counted(house.conveys, 'conveys', n)],
  [/^dues-(\d+)$/u, (house, n) => counted(house.dues, 'dues', n)],
];
