/** Where on a plan each recorded alarm hangs, and where one is looked for and none is recorded. */
import type { Alarm } from '../facts/house.js';
import type { AlarmPlace } from '../tally/alarms.js';
import { type Context, placeName } from './context.js';
import type { AlarmSign } from './draw-alarm-sign.js';
import { upperFirst } from './rich.js';

export interface AlarmSpot {
  /** A room, level, stair or structure. */
  readonly at: string;
  /** The place in words: "Bedroom 1", "Outside the bedrooms, Main level", "Main level, room not named". */
  readonly words: string;
  readonly sign: AlarmSign;
}

export function alarmSpots(context: Context): AlarmSpot[] {
  const { places, others, ends } = context.tally.alarms;
  const recorded = [...new Set([...places.flatMap((place) => place.recorded), ...others])];
  const past = (alarm: Alarm): boolean => ends.some((end) => end.alarm === alarm && end.due === true);
  return [
    ...recorded.map((alarm) => ({
      at: alarm.where,
      words: isLevel(context, alarm.where)
        ? `${placeName(context, alarm.where)}, room not named`
        : placeName(context, alarm.where),
      sign: { warns: alarm.is, recorded: true, past: past(alarm) },
    })),
    ...places.filter((place) => place.recorded.length === 0).map((place) => missing(context, place)),
  ];
}

const isLevel = ({ house }: Context, id: string): boolean => house.levels.some((level) => level.id === id);

function missing(context: Context, place: AlarmPlace): AlarmSpot {
  const anyRoom = place.why === 'storey' && isLevel(context, place.at);
  return {
    at: place.at,
    words: anyRoom ? `${place.where}, in any room` : upperFirst(place.where),
    sign: { warns: place.warns, recorded: false, past: false },
  };
}

/** Below a level's own plan its name needs no saying. */
export function withoutLevel(words: string, level: string): string {
  return words.endsWith(`, ${level}`) ? words.slice(0, -level.length - 2) : words;
}
