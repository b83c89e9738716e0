/** Facts of rooms, structures, levels, works and of the whole house as items. */

import type { FactPath } from '../../../diagnostics/fact-path.js';
import type { Finish, House, Structure, WorkItem } from '../../../facts/house.js';
import { nameOf } from '../../../facts/place-name.js';
import { deedOf } from '../../improvements.js';
import { whoDid } from '../../who.js';
import { untilFirst } from '../words/cut-at.js';
import { meaningOf, sensesIn } from './item-meaning.js';
import { blank, type Item, permitOf, SECOND_HAND } from './items.js';
import { isFinishedRoom } from './rooms-finished.js';
import { hasShelter } from './shelters.js';

const SURFACES: Partial<Record<Finish['on'], string>> = {
  floor: 'floor',
  walls: 'wall',
  ceiling: 'ceiling',
  trim: 'trim',
  doors: 'door',
  cabinets: 'cabinet',
  counter: 'counter',
  backsplash: 'backsplash',
  shower: 'shower',
  tub: 'tub',
  vanity: 'vanity',
  sink: 'sink',
  faucet: 'faucet',
  toilet: 'toilet',
  hardware: 'hardware',
  lights: 'light',
  windows: 'window',
  stairs: 'stair',
  fireplace: 'fireplace',
  siding: 'siding',
};

export function ofFinish(
  house: House,
  finish: Finish,
  home: { id: string; name?: string },
  path: FactPath,
): Item {
  const surface = SURFACES[finish.on];
  // Who did it, and under which permit, may be told by the work alone that the finish is of.
  const linked = house.work.find(({ id }) => id !== undefined && id === finish.work);
  const what = [finish.what, finish.product].filter(Boolean).join(', ');
  const given = surface === undefined ? [] : [surface];
  // "glass panel at the shower" is no electrical panel.
  const colours = meaningOf('', finish.colour ?? '', [
    ...given,
    ...meaningOf(finish.what, '', given).things,
  ]).classes.filter(({ group }) => group === 'colour');
  const read = meaningOf(finish.what, what, given);
  const plain = { ...read, things: read.things.filter((id) => id !== 'panel') };
  const meaning = { things: plain.things, classes: [...plain.classes, ...colours] };
  const painted = /\bpaint/i.test(finish.what) || finish.did === 'painted';
  return {
    path,
    kind: 'finish',
    label: `${finish.on === 'other' ? finish.what : finish.on} of the ${nameOf(home).toLowerCase()}`,
    what: [finish.what, finish.colour].filter(Boolean).join(', '),
    things: [
      ...new Set([
        ...meaning.things,
        ...(painted ? ['paint'] : []),
        ...(finish.on === 'vanity' && /\b(basin|sink)/i.test(finish.what) ? ['sink'] : []),
        ...(finish.on === 'doors' && /\b(front|entry|entrance) door/i.test(finish.what)
          ? ['front-door']
          : []),
        ...(finish.on === 'tub' && /\b(shower|surround)/i.test(finish.what) ? ['shower'] : []),
      ]),
    ],
    classes: meaning.classes,
    where: [home.id],
    made: undefined,
    done: finish.done ?? (finish.kept ? undefined : linked?.done),
    deed: deedOf(finish) ?? (finish.kept ? undefined : linked?.did),
    kept: finish.kept,
    secondHand: SECOND_HAND.test([finish.what, finish.from, finish.note].join(' ')),
    who: whoDid(house, finish.by ?? (finish.kept ? undefined : linked?.by)),
    permit: permitOf(house, finish.permit ?? (finish.kept ? undefined : linked?.permit)),
    serviced: undefined,
    conveys: undefined,
    capacity: undefined,
    evidence: finish.evidence,
    words: [what, finish.colour, finish.over, finish.note, finish.sheen].join(' '),
  };
}

/** Whether a patio or a deck has a roof stands in its note. */
const UNDER_SKY = /\b(?:open to the sky|uncovered|unroofed|without a roof|(?<!not )(?:roofed|covered))\b/i;

export function ofStructure(house: House, structure: Structure, index: number): Item {
  const what = [
    structure.is,
    structure.attached ? 'attached' : 'detached',
    structure.finished ? 'finished' : 'unfinished',
    structure.name,
  ].join(', ');
  return {
    ...blank(house),
    path: ['structures', index],
    kind: 'structure',
    label: structure.name ?? structure.is,
    what: `${structure.is}, ${structure.attached ? 'attached' : 'detached'}`,
    ...meaningOf(
      `${structure.name ?? ''}. ${structure.is}`,
      `${what}, ${UNDER_SKY.exec(structure.note ?? '')?.[0] ?? ''}`,
    ),
    where: [structure.id],
    words: [what, structure.note].join(' '),
  };
}

export function ofWork(house: House, item: WorkItem, index: number): Item {
  const systems = house.systems.filter((one) => item.systems.includes(one.id));
  return {
    ...blank(house),
    path: ['work', index],
    kind: 'work',
    label: item.what,
    what: [item.what, item.did].join(', '),
    ...workMeaning(item),
    where: [...item.where, ...systems.flatMap((one) => (one.where === undefined ? [] : [one.where]))],
    done: item.done,
    deed: item.did,
    kept: false,
    who: whoDid(house, item.by),
    permit: permitOf(house, item.permit),
    evidence: item.evidence,
    words: [item.what, item.how, item.why, item.note].join(' '),
  };
}

/** By what the deed was done to; where that says nothing, by all its words: "cracks in the stucco". */
function workMeaning(item: WorkItem): Pick<Item, 'things' | 'classes'> {
  const first = untilFirst(item.what, /,/);
  const bare = sensesIn(first).some(({ tag }) => tag === 'thing') ? undefined : meaningOf(first, item.what);
  if (bare !== undefined && bare.things.length > 0) return bare;
  const plain = meaningOf(item.what.replace(/ (over|above|at|in|under|behind|for) .*/, ''), item.what);
  return plain.things.length > 0 ? plain : meaningOf(item.what, item.what);
}

/** Whether what lies below ground is finished. */
export function ofLevels(house: House): Item[] {
  return house.levels.flatMap((level, index): Item[] => {
    if (level.grade !== 'below') return [];
    const rooms = house.rooms.filter((room) => room.level === level.id);
    const finished = rooms.filter((room) => isFinishedRoom(house, room)).length;
    const state =
      finished === 0
        ? 'unfinished'
        : level.finish !== 'unfinished' && (finished === rooms.length || rooms.length === 0)
          ? 'finished'
          : 'part-finished';
    return [
      {
        ...blank(house),
        path: ['levels', index],
        kind: 'identity',
        label: nameOf(level),
        what: `level below ground, ${state}`,
        things: ['basement'],
        classes: [{ group: 'finished-state', id: state }],
        where: [level.id],
        words: `${nameOf(level)} ${level.note ?? ''}`,
      },
    ];
  });
}

const TRIM_OUTSIDE = /\b(trim|soffits?|fascias?|eaves)\b/i;

/** "Red brick, painted wood trim and soffits": what is said of the trim by itself. */
function ofTrim(item: Item): Item[] {
  const what = item.what
    .split(/[,;]/)
    .find((part) => TRIM_OUTSIDE.test(part))
    ?.trim();
  return what === undefined
    ? []
    : [{ ...item, what, label: 'outside trim', ...meaningOf('', what, ['trim-outside']) }];
}

/** What the head of the folder says of the whole: siding, foundation, water, sewer, parking. */
export function ofIdentity(house: House): Item[] {
  const { exterior, foundation, water, sewer, construction, parking } = house.house;
  const entry = (word: string, thingIds: readonly string[], fact: typeof exterior): Item[] =>
    fact?.value === undefined
      ? []
      : [
          {
            ...blank(house),
            path: ['house', word],
            kind: 'identity',
            label: word,
            what: fact.value,
            ...meaningOf('', fact.value, thingIds),
            kept: false,
            evidence: fact.evidence,
            words: fact.value,
          },
        ];
  return [
    ...entry('exterior', ['siding'], exterior).map((item) => ({
      ...item,
      ...meaningOf('', item.what.replace(/,?[^,]*\btrim\b[^,]*/i, ''), ['siding']),
    })),
    ...entry('exterior', ['trim-outside'], exterior).flatMap((item) => ofTrim(item)),
    ...entry('construction', ['siding'], construction).map((item) => ({
      ...item,
      classes: item.classes.filter(({ id }) => id !== 'wood-siding'),
    })),
    ...entry('construction', ['construction'], construction),
    ...entry(
      'foundation',
      ['foundation', ...(/cellar|basement/i.test(foundation?.value ?? '') ? ['basement'] : [])],
      foundation,
    ),
    ...entry('water', ['water-supply'], water),
    ...entry('sewer', ['sewer'], sewer),
    ...entry(
      'parking',
      [...(['garage', 'carport', 'driveway'] as const).filter((kind) => hasShelter(house, kind))],
      parking,
    ),
  ];
}
