/**
 * The facts of a house as a flat list of things, each with what a listing text may say of it: what it is, of what,
 * where, since when, by whom, under which permit, whether it stays. The same lexicon reads the facts and the text.
 */

import type { FactPath } from '../../../diagnostics/fact-path.js';
import type { HouseDate } from '../../../facts/date.js';
import type { House, Permit, System } from '../../../facts/house.js';
import { literally } from '../../../facts/literally.js';
import { nameOf, nameOfPlace } from '../../../facts/place-name.js';
import { type Deed, PUT_IN } from '../../improvements.js';
import { isThere } from '../../still-there.js';
import { type Who, whoDid } from '../../who.js';
import { belongsTo } from '../words/taxonomy.js';
import { meaningOf, sensesIn } from './item-meaning.js';
import { ofFinish, ofIdentity, ofLevels, ofStructure, ofWork } from './items-of-places.js';

export interface Item {
  readonly path: FactPath;
  readonly kind: 'system' | 'finish' | 'work' | 'structure' | 'alarm' | 'identity';
  /** As the report names it: "Roof, house"; "floor of the kitchen". */
  readonly label: string;
  /** What it is, in the folder's words. */
  readonly what: string;
  readonly things: readonly string[];
  readonly classes: readonly { readonly group: string; readonly id: string }[];
  /** Ids of rooms, levels and structures. */
  readonly where: readonly string[];
  readonly made: HouseDate | undefined;
  /** When the deed was done: put in, painted, repaired. */
  readonly done: HouseDate | undefined;
  readonly deed: Deed | undefined;
  readonly kept: boolean;
  readonly secondHand: boolean;
  readonly who: Who;
  readonly permit: Permit | undefined;
  readonly serviced: HouseDate | undefined;
  readonly conveys: 'yes' | 'no' | 'not known' | undefined;
  readonly capacity: string | undefined;
  readonly evidence: readonly string[];
  /** Everything that the folder says of it, for words that no table knows. */
  readonly words: string;
}

export const SECOND_HAND =
  /\bold (brick|stone|paver|slate|timber|beam|board|tile|cobble)s?\b|second-?hand|\bused\b|refurbished|salvaged|reclaimed/i;

export function itemsOf(house: House): Item[] {
  return [
    ...house.systems.flatMap((system, index) => (isThere(system) ? [ofSystem(house, system, index)] : [])),
    ...house.rooms.flatMap((room, at) =>
      room.finishes.map((finish, index) => ofFinish(house, finish, room, ['rooms', at, 'finishes', index])),
    ),
    ...house.structures.flatMap((structure, at) => [
      ofStructure(house, structure, at),
      ...structure.finishes.map((finish, index) =>
        ofFinish(house, finish, structure, ['structures', at, 'finishes', index]),
      ),
    ]),
    ...house.work.map((item, index) => ofWork(house, item, index)),
    ...house.alarms.map(
      (alarm, index): Item => ({
        ...blank(house),
        path: ['alarms', index],
        kind: 'alarm',
        label: `alarm, ${nameOfPlace(house, alarm.where).toLowerCase()}`,
        what: alarm.is === 'both' ? 'smoke and carbon monoxide alarm' : `${alarm.is} alarm`,
        things: ['alarm'],
        classes: [],
        where: [alarm.where],
        made: alarm.made?.value,
        done: alarm.installed,
        deed: alarm.installed === undefined ? undefined : 'new',
        kept: alarm.installed === undefined,
        evidence: alarm.evidence,
        words: `${alarm.is} alarm ${alarm.note ?? ''}`,
      }),
    ),
    ...ofIdentity(house),
    ...ofLevels(house),
  ];
}

function ofSystem(house: House, system: System, index: number): Item {
  const installed = system.installed?.value;
  const bought = house.house.bought?.earliest;
  const here = installed?.earliest !== undefined && bought !== undefined && installed.earliest >= bought;
  const deed =
    system.did ?? (system.kept ? undefined : here || bought === undefined ? 'replaced' : undefined);
  const what = [system.is, system.material, system.fuel].filter(Boolean).join(', ');
  // Who put it in, and under which permit, may be told by the work alone.
  const putIn = house.work.find(({ systems, did }) => systems.includes(system.id) && putsIn(did));
  return {
    path: ['systems', index],
    kind: 'system',
    label: system.name ?? system.is,
    what: system.is,
    ...systemMeaning(system, what),
    where: [...(system.where === undefined ? [] : [system.where]), ...served(house, system.serves)],
    made: system.made?.value,
    done: installed,
    deed: system.kept ? system.did : installed === undefined ? system.did : (deed ?? 'replaced'),
    kept: system.kept,
    secondHand: SECOND_HAND.test([system.made?.from, system.from, system.note].join(' ')),
    who: whoDid(house, system.by ?? (system.kept ? undefined : putIn?.by)),
    permit: permitOf(house, system.permit ?? (system.kept ? undefined : putIn?.permit)),
    serviced: system.serviced,
    conveys: system.conveys,
    capacity: system.capacity?.value,
    evidence: [...system.evidence, ...(system.installed?.evidence ?? []), ...(system.made?.evidence ?? [])],
    words: [what, system.name, system.serves, system.note, system.capacity?.value].join(' '),
  };
}

const TO_SEWER = /\b(?:to|into) the (?:\w+ )?sewer\b|\b(?:sewer|lateral)\b/i;

/** By what it is; by its name only where that says nothing: "ducts" that are named "Ducts in the roof space". */
function systemMeaning(system: System, what: string): Pick<Item, 'things' | 'classes'> {
  const name = system.name ?? '';
  const read = meaningOf(system.is, what);
  // A heat pump without ducts blows through none: it leaves no room for "forced air".
  const plain = /ductless|mini-?split/i.test(`${system.is} ${name}`)
    ? { ...read, classes: read.classes.filter(({ id }) => id !== 'heat-pump-kind') }
    : read;
  if (plain.things.length === 0) return meaningOf(name, what);
  // "Windows of the front, double-pane": what the name says and the rest leaves open.
  const named = meaningOf('', name, plain.things).classes.filter(
    ({ group }) => !plain.classes.some((one) => one.group === group),
  );
  // "exterior door" that is named "Front door": the closer of the two.
  const closer = sensesIn(name).flatMap(({ tag, id }) =>
    tag === 'thing' && !plain.things.includes(id) && plain.things.some((one) => belongsTo(id, one))
      ? [id]
      : [],
  );
  // "Pipe to the public sewer": a drain that is the sewer line.
  if (plain.things.includes('drain-pipe') && TO_SEWER.test(name)) closer.push('sewer-line');
  return { things: [...new Set([...plain.things, ...closer])], classes: [...plain.classes, ...named] };
}

/** "kitchen, bath, water heater": the rooms among what a system serves. */
function served(house: House, serves: string | undefined): string[] {
  if (serves === undefined) return [];
  const words = serves.toLowerCase();
  return [...house.rooms, ...house.levels, ...house.structures]
    .filter((place) => new RegExp(`\\b${literally(nameOf(place).toLowerCase())}\\b`).test(words))
    .map(({ id }) => id);
}

export const blank = (
  house: House,
): Omit<Item, 'path' | 'kind' | 'label' | 'what' | 'things' | 'classes' | 'words'> => ({
  where: [],
  made: undefined,
  done: undefined,
  deed: undefined,
  kept: false,
  secondHand: false,
  who: whoDid(house, undefined),
  permit: undefined,
  serviced: undefined,
  conveys: undefined,
  capacity: undefined,
  evidence: [],
});

export const permitOf = (house: House, id: string | undefined): Permit | undefined =>
  id === undefined ? undefined : house.permits.find((one) => one.id === id);

/** Whether the deed leaves the thing as new as its date. */
export const putsIn = (deed: Deed | undefined): boolean => deed !== undefined && PUT_IN.includes(deed);
