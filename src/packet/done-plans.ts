/** What was done, room by room, on a plan of each level: words in the rooms, or a number where they don't fit. */
import type { LevelArea, PlacedRoom } from '../tally/area.js';
import { type Context, placeName } from './context.js';
import { type Ground, swatch } from './draw-ground.js';
import type { PlanLevel, PlanRoom } from './draw-plan.js';
import { type RoomWords, words } from './draw-stack.js';
import { drawLevels, type LevelPlan } from './level-plans.js';
import type { DrawingBlock, Rich, Run } from './packet.js';
import { inWords, link, lowerFirst, rich, runsInWords, say } from './rich.js';
import { deedLines, deedPhrase, placesBeside, type RoomDeeds, roomDeeds } from './room-deeds.js';
import { shortly } from './shortly.js';
import { subjectOf } from './tell.js';

/** Two plans of this height stand on a page of the smaller paper; points. */
const HIGHEST = 420;

/** A larger scale would give the words no more room than they need. */
const LARGEST_PER_FOOT = 9;

const DONE: Ground = { fill: 'wash' };
const PLAIN: Ground = { fill: 'paper' };

const LEGEND = [swatch(DONE, 'Something was done; the words say what'), swatch(PLAIN, 'No work recorded')];

interface DoneLevel {
  readonly level: LevelArea;
  readonly outline: PlanLevel['outline'];
  readonly rooms: readonly { readonly room: PlacedRoom; readonly done: RoomDeeds }[];
}

interface DonePlan {
  readonly level: string;
  readonly block: DrawingBlock;
}

/**
 * One for each level with an outline and something done in a room whose place on it is known. `headings` are the places
 * that have a heading in the section, so that the key can lead there.
 */
export function donePlans(context: Context, headings: ReadonlySet<string>): DonePlan[] {
  const levels = context.tally.areas.levels.flatMap((level) => doneLevel(context, level) ?? []);
  const plans = drawLevels(levels.map(planLevel), { highest: HIGHEST, atMost: LARGEST_PER_FOOT });
  return plans.map((plan, index) => {
    const of = levels[index] as DoneLevel;
    const last = index === plans.length - 1;
    return {
      level: of.level.id,
      block: {
        kind: 'drawing',
        id: `drawn-done-${of.level.id}`,
        drawing: plan.drawing,
        narrow: plan.narrow,
        alt: altText(of),
        caption: [
          ...caption(context, of, plan, headings),
          ...(last ? beside(context, levels, headings) : []),
        ],
      },
    };
  });
}

function doneLevel(context: Context, level: LevelArea): DoneLevel | undefined {
  const rooms = level.rooms.map((room) => ({ room, done: roomDeeds(context, room.id) }));
  if (level.corners === undefined || rooms.every(({ done }) => done.deeds.length === 0)) return undefined;
  return { level, outline: level.corners, rooms };
}

function planLevel({ level, outline, rooms }: DoneLevel): PlanLevel {
  return {
    outline,
    reading: level.reading,
    rooms: rooms.map(planRoom),
    ground: PLAIN,
    legend: rooms.some(({ done }) => done.deeds.length === 0) ? LEGEND : LEGEND.slice(0, 1),
    dimensions: false,
  };
}

function planRoom({ room, done }: DoneLevel['rooms'][number]): PlanRoom {
  const place = { corners: room.corners, spot: room.spot };
  if (done.deeds.length === 0) {
    const name = words(room.name, 'tick', 'soft', 2);
    // A room left plain needs no number: the plan of sizes names it.
    return {
      ...place,
      ground: PLAIN,
      says: () => [
        { pieces: [name], turns: true },
        { pieces: [], turns: false },
      ],
    };
  }
  const list = deedLines(done).map((line) => words(line, 'tick', 'ink'));
  return {
    ...place,
    ground: DONE,
    says: (number): RoomWords[] => {
      const name = words(number === undefined ? room.name : `${number} ${room.name}`, 'small', 'ink', 2);
      const full = { pieces: [name, ...list], turns: true };
      return number === undefined ? [full] : [full, { pieces: [name], turns: true }];
    },
  };
}

function caption(
  context: Context,
  { level, rooms }: DoneLevel,
  { scale, numbered }: LevelPlan,
  headings: ReadonlySet<string>,
): Rich {
  const key = numbered.flatMap((position, index): Run[] => {
    const { room, done } = rooms[position] as DoneLevel['rooms'][number];
    return [say(' '), to(`${index + 1} ${room.name}`, room.id, headings), say(`: ${deedPhrase(done)}.`)];
  });
  const whole = context.tally.improvements.filter((one) => one.where.includes(level.id));
  const wholes = [...new Set(rooms.flatMap(({ done }) => done.wholes))];
  return rich(
    `${level.name}: what was done, room by room. ${scale}.`,
    ...key,
    whole.length === 0
      ? undefined
      : ` Of the level as a whole: ${whole.map((one) => `${shortly(lowerFirst(subjectOf(one)))}, ${one.did}`).join('; ')}.`,
    wholes.length === 0
      ? undefined
      : ` Done in several rooms and named whole in each: ${inWords(wholes.map((one) => shortly(lowerFirst(subjectOf(one)))))}.`,
  );
}

/** A place's heading, or that of the work in several places. */
function to(text: string, place: string, headings: ReadonlySet<string>): Run {
  const key = headings.has(place) ? place : 'several';
  return headings.has(key) ? link(text, `done-${key}`) : say(text);
}

/** Places that no plan shows, by name: the text below has what was done there. */
function beside(context: Context, levels: readonly DoneLevel[], headings: ReadonlySet<string>): Run[] {
  const drawn = new Set(
    levels.flatMap(({ level, rooms }) => [level.id, ...rooms.map(({ room }) => room.id)]),
  );
  const places = placesBeside(context.house, context.tally.improvements, drawn).map((place) =>
    place === ''
      ? to('the whole house', 'house', headings)
      : to(lowerFirst(placeName(context, place)), place, headings),
  );
  return places.length === 0 ? [] : [say(' On no plan, but in the text: '), ...runsInWords(places), say('.')];
}

function altText({ level, rooms }: DoneLevel): string {
  const told = rooms
    .filter(({ done }) => done.deeds.length > 0)
    .map(({ room, done }) => `${room.name}: ${deedPhrase(done)}`);
  const rest = rooms.filter(({ done }) => done.deeds.length === 0).map(({ room }) => room.name);
  const none = rest.length === 0 ? '' : ` No work is recorded in ${inWords(rest)}.`;
  return `Plan of ${level.name}, drawn to scale with north up: what was done in its rooms. ${told.join('. ')}.${none}`;
}
