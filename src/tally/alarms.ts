/**
 * Where alarms are looked for, counted from rooms and levels, and where the record has them.
 * The count says where to look; it is no finding about a code.
 */
import { addYears } from '../facts/age.js';
import type { Alarm, House, Level, Room, System } from '../facts/house.js';
import { nameOf } from '../facts/place-name.js';
import { safetyRules } from './tables/safety.js';

export interface AlarmPlace {
  readonly warns: 'smoke' | 'carbon-monoxide';
  readonly why: 'bedroom' | 'outside bedrooms' | 'storey' | 'burning appliance in bedroom';
  /** In words: "Bedroom 1", "outside the bedrooms of Upper level". */
  readonly where: string;
  /** The room or level that the place belongs to. */
  readonly at: string;
  /** Alarms recorded for it. */
  readonly recorded: readonly Alarm[];
}

export interface AlarmEnd {
  readonly alarm: Alarm;
  /**
   * The day it is due by its printed date or ten years from manufacture, the earlier; undefined: not known. Where
   * it was made on or before some day, the latest that this can be.
   */
  readonly replaceBy: string | undefined;
  readonly basis: 'printed on it' | 'ten years from manufacture' | 'no date read';
  readonly due: boolean | undefined;
}

export interface AlarmPlan {
  readonly places: readonly AlarmPlace[];
  /** Whether carbon monoxide alarms are looked for, and the facts that say so. */
  readonly carbonMonoxide: {
    readonly asked: 'yes' | 'no' | 'not known';
    readonly because: readonly string[];
  };
  readonly ends: readonly AlarmEnd[];
}

export function deriveAlarms(house: House, asOf: string): AlarmPlan {
  const groups = sleepingAreas(house);
  const carbonMonoxide = whyCarbonMonoxide(house);
  return {
    places: [
      ...smokePlaces(house, groups),
      ...(carbonMonoxide.asked === 'no' ? [] : carbonMonoxidePlaces(house, groups)),
    ],
    carbonMonoxide,
    ends: house.alarms.map((alarm) => endOf(alarm, asOf)),
  };
}

interface SleepingArea {
  readonly level: Level;
  readonly name: string | undefined;
  readonly bedrooms: readonly Room[];
}

/** Bedrooms of one level are one area unless the writer names several. */
function sleepingAreas(house: House): SleepingArea[] {
  return house.levels.flatMap((level) => {
    const bedrooms = house.rooms.filter((room) => room.level === level.id && room.use === 'bedroom');
    const names = [...new Set(bedrooms.map((room) => room['sleeping-area']))];
    return names.map((name) => ({
      level,
      name,
      bedrooms: bedrooms.filter((room) => room['sleeping-area'] === name),
    }));
  });
}

const warnsOfSmoke = (alarm: Alarm): boolean => alarm.is !== 'carbon-monoxide';
const warnsOfGas = (alarm: Alarm): boolean => alarm.is !== 'smoke';

/** Rooms that a bedroom's door may open into. An alarm in a kitchen or cellar workshop is not taken for one outside it. */
const PASSED_THROUGH: readonly Room['use'][] = [
  'hall',
  'stair',
  'entry',
  'living',
  'family',
  'dining',
  'office',
  'recreation',
];

/** Where a level has several groups, only a room that names its group counts for it. */
function alarmsOutside(
  house: House,
  area: SleepingArea,
  groups: readonly SleepingArea[],
  warns: (alarm: Alarm) => boolean,
): Alarm[] {
  const alone = groups.filter((other) => other.level.id === area.level.id).length === 1;
  const near = house.rooms.filter(
    (room) =>
      room.level === area.level.id &&
      room.use !== 'bedroom' &&
      (room['sleeping-area'] === undefined
        ? (alone || area.name === undefined) && PASSED_THROUGH.includes(room.use)
        : room['sleeping-area'] === area.name),
  );
  return house.alarms.filter(
    (alarm) =>
      warns(alarm) &&
      ((alone && alarm.where === area.level.id) || near.some((room) => room.id === alarm.where)),
  );
}

function smokePlaces(house: House, groups: readonly SleepingArea[]): AlarmPlace[] {
  const bedrooms = house.rooms
    .filter((room) => room.use === 'bedroom')
    .map(
      (room): AlarmPlace => ({
        warns: 'smoke',
        why: 'bedroom',
        where: nameOf(room),
        at: room.id,
        recorded: house.alarms.filter((alarm) => warnsOfSmoke(alarm) && alarm.where === room.id),
      }),
    );
  const outside = groups.map(
    (area): AlarmPlace => ({
      warns: 'smoke',
      why: 'outside bedrooms',
      where: outsideWords(area),
      at: area.level.id,
      recorded: alarmsOutside(house, area, groups, warnsOfSmoke),
    }),
  );
  const storeys = house.levels
    .filter((level) => !groups.some((area) => area.level.id === level.id) && !isUnusedAttic(house, level))
    .map(
      (level): AlarmPlace => ({
        warns: 'smoke',
        why: 'storey',
        where: level.name,
        at: level.id,
        recorded: house.alarms.filter((alarm) => warnsOfSmoke(alarm) && onLevel(house, alarm, level.id)),
      }),
    );
  return [...bedrooms, ...outside, ...storeys];
}

const outsideWords = (area: SleepingArea): string =>
  area.bedrooms.length === 1
    ? `outside ${nameOf(area.bedrooms[0] as Room)}, ${area.level.name}`
    : `outside the bedrooms${area.name === undefined ? '' : ` “${area.name}”`}, ${area.level.name}`;

const onLevel = (house: House, alarm: Alarm, level: string): boolean =>
  alarm.where === level || house.rooms.some((room) => room.id === alarm.where && room.level === level);

function isUnusedAttic(house: House, level: Level): boolean {
  const rooms = house.rooms.filter((room) => room.level === level.id);
  return (
    level.grade === 'above' && level.finish === 'unfinished' && rooms.every((room) => room.use === 'attic')
  );
}

const BURNS = ['gas', 'propane', 'oil', 'wood'];
const MAY_BURN = /heater|furnace|boiler|\brange\b(?! *hood)|\boven|cooktop|dryer|fireplace|stove|generator/i;

/** Whether it burns fuel, by what is recorded or, failing that, by its own name: "furnace, gas". */
function burns(system: System): boolean | undefined {
  if (system.did === 'removed') return false;
  if (system.fuel !== undefined) return BURNS.includes(system.fuel);
  if (!MAY_BURN.test(system.is) || /electric|heat pump/i.test(system.is)) return false;
  return /\b(natural gas|gas|propane|oil|wood|pellet)\b/i.test(system.is) ? true : undefined;
}

function whyCarbonMonoxide(house: House): AlarmPlan['carbonMonoxide'] {
  const burning = house.systems.filter((system) => burns(system) === true);
  const garages = house.structures.filter((one) => one.is === 'garage' && one.attached);
  const because = [
    ...burning.map((system) => `${system.is} burns ${system.fuel ?? 'fuel, by its name'}`),
    ...garages
      .filter((garage) => garage['opens-into-house'] === true)
      .map((garage) => `${garage.name ?? 'the garage'} opens into the house`),
  ];
  if (because.length > 0) return { asked: 'yes', because };
  const unsure = [
    ...house.systems
      .filter((system) => burns(system) === undefined)
      .map((system) => `what ${system.is} runs on is not recorded`),
    ...garages
      .filter((garage) => garage['opens-into-house'] === undefined)
      .map((garage) => `whether ${garage.name ?? 'the garage'} opens into the house is not recorded`),
    ...house.rooms
      .filter((room) => room.use === 'garage')
      .map((room) => `whether ${nameOf(room)} opens into the house is not recorded`),
    ...house.rooms
      .filter((room) =>
        room.finishes.some(
          (finish) => finish.on === 'fireplace' && finish.did !== 'removed' && !/electric/i.test(finish.what),
        ),
      )
      .map((room) => `whether the fireplace in ${nameOf(room)} burns anything is not recorded`),
  ];
  return unsure.length > 0
    ? { asked: 'not known', because: unsure }
    : {
        asked: 'no',
        because: ['nothing that burns fuel is recorded, and no garage that opens into the house'],
      };
}

function carbonMonoxidePlaces(house: House, groups: readonly SleepingArea[]): AlarmPlace[] {
  const outside = groups.map(
    (area): AlarmPlace => ({
      warns: 'carbon-monoxide',
      why: 'outside bedrooms',
      where: outsideWords(area),
      at: area.level.id,
      recorded: alarmsOutside(house, area, groups, warnsOfGas),
    }),
  );
  const inBedrooms = house.rooms
    .filter(
      (room) =>
        room.use === 'bedroom' &&
        house.systems.some((system) => system.where === room.id && burns(system) === true),
    )
    .map(
      (room): AlarmPlace => ({
        warns: 'carbon-monoxide',
        why: 'burning appliance in bedroom',
        where: nameOf(room),
        at: room.id,
        recorded: house.alarms.filter((alarm) => warnsOfGas(alarm) && alarm.where === room.id),
      }),
    );
  return [...outside, ...inBedrooms];
}

function endOf(alarm: Alarm, asOf: string): AlarmEnd {
  const printed = alarm['replace-by']?.earliest;
  const { earliest, latest } = alarm.made?.value ?? {};
  const made = earliest ?? latest;
  // A carbon monoxide alarm has no common life: only the date printed on it counts.
  const counted =
    warnsOfSmoke(alarm) && made !== undefined
      ? addYears(made, safetyRules().smokeAlarmAge.figures.maxYears, 'earlier')
      : undefined;
  // ISO dates sort as text, so the first is the earlier one.
  const [replaceBy] = [printed, counted].filter((date) => date !== undefined).sort();
  // "2015 or before": due on that count at the latest, and perhaps long since.
  const atLatest = counted !== undefined && earliest === undefined;
  return {
    alarm,
    replaceBy,
    basis:
      replaceBy === undefined
        ? 'no date read'
        : replaceBy === printed
          ? 'printed on it'
          : 'ten years from manufacture',
    due: replaceBy === undefined ? undefined : asOf >= replaceBy || (atLatest ? undefined : false),
  };
}
