/** Where alarms are recorded and where none is, on the plans of all levels: one drawing, small enough for half a page. */
import type { LevelArea } from '../tally/area.js';
import { type AlarmSpot, alarmSpots, withoutLevel } from './alarm-spots.js';
import { alarmWords } from './alarm-words.js';
import type { Context } from './context.js';
import { type AlarmLevel, alarmSheet } from './draw-alarm-sheet.js';
import { type AlarmSign, signEntry } from './draw-alarm-sign.js';
import type { LegendEntry } from './draw-footer.js';
import { anyScale, largestScale, type Scale, scaleWords } from './draw-scale.js';
import type { DrawingBlock } from './packet.js';
import { lowerFirst, rich, upperFirst } from './rich.js';
import { shortly } from './shortly.js';

/** Widest the sheet may be on paper, and on a small phone, in points. */
const WIDE = 494;
const NARROW = 250;

/** Half a page, and most of one, in points, of a sheet that can be read: one is rather higher than too small for that. */
const HEIGHTS = [330, 520];
const LEAST_PER_FOOT = 3;

/** A larger scale would only spread the signs. */
const LARGEST_PER_FOOT = 6.75;

interface ShownLevel {
  readonly level: LevelArea;
  readonly drawn: AlarmLevel;
  /** All that the plan and the lines below it show. */
  readonly spots: readonly AlarmSpot[];
}

/** Nothing where no level with an alarm, or a place for one, has an outline and rooms on it, or where one is too large to be seen. */
export function alarmPlan(context: Context): DrawingBlock[] {
  const spots = alarmSpots(context);
  const shown = context.tally.areas.levels.flatMap((level) => shownLevel(context, level, spots) ?? []);
  if (shown.length === 0) return [];
  const sheet = alarmSheet(
    shown.map(({ drawn }) => drawn),
    legendOf(shown.flatMap((one) => one.spots)),
  );
  const fits =
    (widest: number, highest = Number.POSITIVE_INFINITY) =>
    (perFoot: number) =>
      sheet.fits(perFoot, widest, highest);
  const scale = scaleOf((highest) => fits(WIDE, highest));
  const narrow = scale && anyScale(fits(NARROW), scale.perFoot);
  if (scale === undefined || narrow === undefined) return [];
  const elsewhere = spots.filter((spot) => shown.every((one) => !one.spots.includes(spot)));
  return [
    {
      kind: 'drawing',
      id: 'drawn-alarms',
      drawing: sheet.draw(scale.perFoot, WIDE),
      narrow: sheet.draw(narrow, NARROW),
      alt: altText(shown),
      caption: rich(
        `Alarms and places where one is looked for, by rooms and levels as recorded. ${scaleWords(scale)}. A sign tells the room, not the spot in it. Whether an alarm works is not known from this; local code and the fire service govern.`,
        elsewhere.length === 0 ? undefined : ` On no plan: ${elsewhere.map(spotWords).join('; ')}.`,
      ),
    },
  ];
}

/** The largest that can be read on half a page, else on most of one, else any. */
function scaleOf(within: (highest?: number) => (perFoot: number) => boolean): Scale | undefined {
  for (const height of HEIGHTS) {
    const fits = within(height);
    const scale = largestScale((perFoot) => perFoot >= LEAST_PER_FOOT && fits(perFoot), LARGEST_PER_FOOT);
    if (scale !== undefined) return scale;
  }
  return largestScale(within(), LARGEST_PER_FOOT);
}

function shownLevel(context: Context, level: LevelArea, spots: readonly AlarmSpot[]): ShownLevel | undefined {
  if (level.corners === undefined || level.rooms.length === 0) return undefined;
  const onIt = new Set([
    level.id,
    ...context.house.rooms.filter((room) => room.level === level.id).map((room) => room.id),
  ]);
  const here = spots.filter((spot) => onIt.has(spot.at));
  if (here.length === 0) return undefined;
  const placed = new Set(level.rooms.map((room) => room.id));
  return {
    level,
    spots: here,
    drawn: {
      name: shortly(level.name),
      outline: level.corners,
      reading: level.reading,
      rooms: level.rooms.map(({ id, name, corners, spot }) => ({
        name: shortly(name),
        corners,
        spot,
        signs: here.filter((one) => one.at === id).map((one) => one.sign),
      })),
      notes: here
        .filter((one) => !placed.has(one.at))
        .map(({ words, sign }) => ({ words: shortly(withoutLevel(words, level.name)), sign })),
    },
  };
}

/** "Smoke and carbon monoxide", "smoke, none recorded". */
const signWords = ({ warns, recorded, past }: AlarmSign): string =>
  `${alarmWords({ is: warns })}${recorded ? ' recorded' : ', none recorded'}${past ? ', past its date' : ''}`;

const spotWords = ({ words, sign }: AlarmSpot): string => `${lowerFirst(words)} (${signWords(sign)})`;

/** The kinds that occur, recorded ones first. */
function legendOf(spots: readonly AlarmSpot[]): LegendEntry[] {
  const kinds = (['smoke', 'carbon-monoxide', 'both'] as const).filter((warns) =>
    spots.some(({ sign }) => sign.recorded && sign.warns === warns),
  );
  const none = (['smoke', 'carbon-monoxide'] as const).filter((warns) =>
    spots.some(({ sign }) => !sign.recorded && sign.warns === warns),
  );
  return [
    ...kinds.map((warns) =>
      signEntry(
        { warns, recorded: true, past: false },
        `${upperFirst(alarmWords({ is: warns }))} alarm, recorded`,
      ),
    ),
    ...none.map((warns) =>
      signEntry(
        { warns, recorded: false, past: false },
        `${upperFirst(alarmWords({ is: warns }))} alarm looked for, none recorded`,
      ),
    ),
  ];
}

function altText(shown: readonly ShownLevel[]): string {
  const told = shown.map(({ level, spots }) => {
    const words = spots.map(
      ({ words: place, sign }) => `${withoutLevel(place, level.name)}: ${signWords(sign)}`,
    );
    return `${level.name}. ${words.join('; ')}.`;
  });
  return `Plans of the levels with signs for alarms, drawn to scale with north up. ${told.join(' ')}`;
}
