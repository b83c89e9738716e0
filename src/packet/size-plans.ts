/** Each level to scale, with outside dimensions, room names and sizes, and the area class that a room's floor belongs to. */
import {
  AREA_CLASS_NAMES,
  AREA_CLASSES,
  type AreaClass,
  type LevelArea,
  type PlacedRoom,
} from '../tally/area.js';
import type { Context } from './context.js';
import { type Ground, swatch } from './draw-ground.js';
import type { PlanLevel, PlanRoom } from './draw-plan.js';
import { type RoomWords, words } from './draw-stack.js';
import { drawLevels, type LevelPlan } from './level-plans.js';
import type { Block, Rich } from './packet.js';
import { lowerFirst, rich } from './rich.js';

/** Highest a plan may be on the smaller of the two papers, in points. */
const HIGHEST = 500;

/** Points a foot at most, where no level has a room on it: bare outlines need no page each. */
const BARE_PER_FOOT = 6.75;

/** One plan for each level with an outline, all to one scale. `highest` in points. */
export function sizePlans(context: Context, shown = context.tally.areas.levels, highest = HIGHEST): Block[] {
  const levels = shown.flatMap((level) => planLevel(level) ?? []);
  return drawLevels(
    levels.map(({ plan }) => plan),
    { highest, ...(levels.every(({ plan }) => plan.rooms.length === 0) ? { atMost: BARE_PER_FOOT } : {}) },
  ).map((plan, index) => planBlock((levels[index] as Measured).level, plan));
}

interface Measured {
  readonly level: LevelArea;
  readonly plan: PlanLevel;
}

function planLevel(level: LevelArea): Measured | undefined {
  if (level.corners === undefined) return undefined;
  const { corners: outline, reading } = level;
  return {
    level,
    plan: {
      outline,
      reading,
      rooms: level.rooms.map(planRoom),
      ground: GROUNDS[level.ownClass],
      legend: groundsOn(level).map((name) => swatch(GROUNDS[name], GROUND_WORDS[name])),
      dimensions: true,
    },
  };
}

/** Rooms that no class counts, since they aren't for use all year, have a ground of their own. */
type GroundName = AreaClass | 'no-class';

const groundOf = ({ areaClass }: PlacedRoom): GroundName => areaClass ?? 'no-class';

const GROUNDS: Record<GroundName, Ground> = {
  'above-finished': { fill: 'paper' },
  'below-finished': { fill: 'paper', hatch: 'level' },
  'non-standard': { fill: 'paper', hatch: 'falling' },
  disconnected: { fill: 'paper', hatch: 'crossed' },
  unfinished: { fill: 'wash', hatch: 'rising' },
  'garage-and-open': { fill: 'wash', hatch: 'crossed' },
  'no-class': { fill: 'wash', hatch: 'falling' },
};

/** As in the table of classes, which has garages on a line of their own. */
const GROUND_WORDS: Record<GroundName, string> = {
  ...AREA_CLASS_NAMES,
  'garage-and-open': 'Garage',
  'no-class': 'Enclosed, not for all-year use',
};

function groundsOn(level: LevelArea): GroundName[] {
  const shown = level.rooms.length === 0 ? [level.ownClass] : level.rooms.map(groundOf);
  return [...AREA_CLASSES, 'no-class' as const].filter((name) => shown.includes(name));
}

function planRoom(room: PlacedRoom): PlanRoom {
  const size = words(room.sizeWords, 'tick', 'soft', 1);
  // The greatest width and depth of a bent room is too long a line to be read from the side.
  const plain = room.corners.length === 4;
  return {
    corners: room.corners,
    spot: room.spot,
    ground: GROUNDS[groundOf(room)],
    says: (number) => {
      // A room that the caption numbers for the other form bears its number here as well.
      const name = words(number === undefined ? room.name : `${number} ${room.name}`, 'small', 'ink', 2);
      const both: RoomWords = { pieces: [name, size], turns: plain };
      return [both, { pieces: [name], turns: true }];
    },
  };
}

function planBlock(level: LevelArea, plan: LevelPlan): Block {
  const key = plan.numbered.map((position, index) => `${index + 1} ${level.rooms[position]?.name ?? ''}`);
  return {
    kind: 'drawing',
    id: `plan-${level.id}`,
    drawing: plan.drawing,
    narrow: plan.narrow,
    alt: altText(level),
    caption: caption(level, plan, key),
  };
}

function caption(level: LevelArea, { scale, lacksDimensions }: LevelPlan, key: readonly string[]): Rich {
  const split = level.rooms.some((room) => room.split)
    ? ' A room is shown by where its floor is counted; parts of it that are counted elsewhere stand in the sum.'
    : undefined;
  return rich(
    `${level.name}. ${scale}; outside dimensions${lacksDimensions ? ', those of some short walls left out' : ''}; drawn from the facts, not surveyed.`,
    split,
    key.length === 0 ? undefined : ` ${key.join(', ')}.`,
  );
}

function altText(level: LevelArea): string {
  const rooms = level.rooms.map(
    (room) => `${room.name} ${room.sizeWords}, ${lowerFirst(GROUND_WORDS[groundOf(room)])}`,
  );
  const all =
    rooms.length === 0
      ? `none placed; the level is ${lowerFirst(GROUND_WORDS[level.ownClass])}`
      : rooms.join('; ');
  return `Floor plan of ${level.name}, drawn to scale with north up. Rooms: ${all}.`;
}
