/**
 * Where alarms are looked for, counted from rooms and levels, and where the record has them.
 * The count says where to look; it is no finding about a code.
 */
import { addYears } from '../facts/age.js';
import type { Alarm, House, Level, Room } from '../facts/house.js';
import { nameOf } from '../facts/place-name.js';
import { askCarbonMonoxide, burns, type CarbonMonoxideQuestion } from './carbon-monoxide.js';
import { safetyRules } from './tables/safety.js';

export interface AlarmPlace {
  readonly warns: 'smoke' | 'carbon-monoxide';
  readonly why: 'bedroom' | 'outside bedrooms' | 'storey' | 'burning appliance in bedroom';
  /** In words: "Bedroom 1", "outside the bedrooms of Upper level". */
  readonly where: string;
  /** The room or level that the place belongs to. */
  readonly at: string;
  /** A place that an alarm for it may name; where none is recorded yet, one that would count. */
  readonly nameable: string;
  /** Alarms recorded for it. */
  readonly recorded: readonly Alarm[];
}

export interface AlarmEnd {
  readonly alarm: Alarm;
  /**
   * The day it is due by its printed date or ten years from manufacture, the earlier; undefined: not known. Where
   * either is on or before some day, the latest that this can be.
   */
  readonly replaceBy: string | undefined;
  readonly basis: 'printed on it' | 'ten years from manufacture' | 'no date read';
  readonly due: boolean | undefined;
}

export interface AlarmPlan {
  readonly places: readonly AlarmPlace[];
  readonly carbonMonoxide: CarbonMonoxideQuestion;
  readonly ends: readonly AlarmEnd[];
  /** Recorded alarms that no place holds: at a stair, say, or for carbon monoxide where none is looked for. */
  readonly others: readonly Alarm[];
}

export function deriveAlarms(house: House, asOf: string): AlarmPlan {
  const groups = sleepingAreas(house);
  const carbonMonoxide = askCarbonMonoxide(house);
  const places = [
    ...smokePlaces(house, groups),
    ...(carbonMonoxide.asked === 'no' ? [] : carbonMonoxidePlaces(house, groups)),
  ];
  return {
    places,
    carbonMonoxide,
    ends: house.alarms.map((alarm) => endOf(alarm, asOf)),
    others: house.alarms.filter((alarm) => !places.some((place) => place.recorded.includes(alarm))),
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

const warnsOf = (alarm: Alarm, what: AlarmPlace['warns']): boolean =>
  alarm.is === what || alarm.is === 'both';

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
function outsideBedrooms(
  house: House,
  area: SleepingArea,
  groups: readonly SleepingArea[],
  warns: AlarmPlace['warns'],
): AlarmPlace {
  const alone = groups.filter((other) => other.level.id === area.level.id).length === 1;
  const near = house.rooms.filter(
    (room) =>
      room.level === area.level.id &&
      room.use !== 'bedroom' &&
      (room['sleeping-area'] === undefined
        ? (alone || area.name === undefined) && PASSED_THROUGH.includes(room.use)
        : room['sleeping-area'] === area.name),
  );
  const places = [...near.map((room) => room.id), ...(alone ? [area.level.id] : [])];
  return {
    warns,
    why: 'outside bedrooms',
    where: outsideWords(area),
    at: area.level.id,
    nameable: places[0] ?? area.level.id,
    recorded: house.alarms.filter((alarm) => warnsOf(alarm, warns) && places.includes(alarm.where)),
  };
}

function inBedroom(
  house: House,
  room: Room,
  warns: AlarmPlace['warns'],
  why: 'bedroom' | 'burning appliance in bedroom',
): AlarmPlace {
  return {
    warns,
    why,
    where: nameOf(room),
    at: room.id,
    nameable: room.id,
    recorded: house.alarms.filter((alarm) => warnsOf(alarm, warns) && alarm.where === room.id),
  };
}

function smokePlaces(house: House, groups: readonly SleepingArea[]): AlarmPlace[] {
  const storeys = house.levels.filter(
    (level) => !groups.some((area) => area.level.id === level.id) && !isUnusedAttic(house, level),
  );
  return [
    ...house.rooms
      .filter((room) => room.use === 'bedroom')
      .map((room) => inBedroom(house, room, 'smoke', 'bedroom')),
    ...groups.map((area) => outsideBedrooms(house, area, groups, 'smoke')),
    ...storeys.map(
      (level): AlarmPlace => ({
        warns: 'smoke',
        why: 'storey',
        where: level.name,
        at: level.id,
        nameable: level.id,
        recorded: house.alarms.filter((alarm) => warnsOf(alarm, 'smoke') && onLevel(house, alarm, level.id)),
      }),
    ),
  ];
}

const outsideWords = (area: SleepingArea): string =>
  area.bedrooms.length === 1
    ? `outside ${nameOf(area.bedrooms[0] as Room)}, ${area.level.name}`
    : `outside the bedrooms${area.name === undefined || area.name.toLowerCase() === area.level.name.toLowerCase() ? '' : ` “${area.name}”`}, ${area.level.name}`;

const onLevel = (house: House, alarm: Alarm, level: string): boolean =>
  alarm.where === level || house.rooms.some((room) => room.id === alarm.where && room.level === level);

/** A storey that is gutted and has no room written down yet is no attic, unless its name says so. */
function isUnusedAttic(house: House, level: Level): boolean {
  const rooms = house.rooms.filter((room) => room.level === level.id);
  return (
    level.grade === 'above' &&
    level.finish === 'unfinished' &&
    (rooms.length === 0 ? /\battic\b/i.test(level.name) : rooms.every((room) => room.use === 'attic'))
  );
}

function carbonMonoxidePlaces(house: House, groups: readonly SleepingArea[]): AlarmPlace[] {
  const withFire = house.rooms.filter(
    (room) =>
      room.use === 'bedroom' &&
      house.systems.some((system) => system.where === room.id && burns(system) === true),
  );
  return [
    ...groups.map((area) => outsideBedrooms(house, area, groups, 'carbon-monoxide')),
    ...withFire.map((room) => inBedroom(house, room, 'carbon-monoxide', 'burning appliance in bedroom')),
  ];
}

function endOf(alarm: Alarm, asOf: string): AlarmEnd {
  const end = alarm['replace-by'];
  const printed = end?.earliest ?? end?.latest;
  const { earliest, latest } = alarm.made?.value ?? {};
  const made = earliest ?? latest;
  // A carbon monoxide alarm has no common life: only the date printed on it counts.
  const counted =
    warnsOf(alarm, 'smoke') && made !== undefined
      ? addYears(made, safetyRules().smokeAlarmAge.figures.maxYears, 'earlier')
      : undefined;
  // ISO dates sort as text, so the first is the earlier one.
  const [replaceBy] = [printed, counted].filter((date) => date !== undefined).sort();
  // "2015 or before": due by that at the latest, and perhaps long since.
  const atLatest =
    (printed !== undefined && end?.earliest === undefined) ||
    (counted !== undefined && earliest === undefined);
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
