/** Ways out of a bedroom or a basement: the window that comes nearest to an escape opening. */
import { SQUARE_FOOT, SQUARE_INCH } from '../facts/floor-area.js';
import type { House, Level, Room, RoomWindow } from '../facts/house.js';
import { type Length, printLength } from '../facts/length.js';
import { nameOf } from '../facts/place-name.js';
import { shapeOf } from './level-outline.js';
import { all, atLeast, atMost, inOneLine, judged, type Observation, observe, taped } from './observation.js';
import { type SafetyRules, safetyRules } from './tables/safety.js';

export function observeEscapeOpenings(house: House): Observation[] {
  const { escapeOpening, escapeBasement } = safetyRules();
  const bedrooms = house.rooms.flatMap((room, index) =>
    room.use === 'bedroom'
      ? [
          wayOut(escapeOpening, room.windows, 'no window recorded', {
            id: `escape-${room.id}`,
            path: ['rooms', index, 'windows'],
            what: nameOf(room),
          }),
        ]
      : [],
  );
  const basements = house.levels.flatMap((level, index) => {
    const rooms = house.rooms.filter((room) => room.level === level.id);
    if (!needsOwnWayOut(level, rooms)) return [];
    const windows = rooms.flatMap((room) => room.windows);
    return [
      wayOut(escapeBasement, windows, 'no window or door to escape by recorded', {
        id: `escape-${level.id}`,
        path: ['levels', index],
        what: `${level.name}, from anywhere on it`,
      }),
    ];
  });
  return [...bedrooms, ...basements];
}

/** Bedrooms of a basement have their own openings, which serve the rest of it; one small plant room is left out. */
function needsOwnWayOut(level: Level, rooms: readonly Room[]): boolean {
  if (level.grade !== 'below' || rooms.some((room) => room.use === 'bedroom')) return false;
  const limit = BigInt(safetyRules().escapeBasement.figures.mechanicalUpToSquareFeet) * SQUARE_FOOT;
  const area = shapeOf(level, [0, 0], level.name, []).shape?.area;
  const onlyMechanical = rooms.length > 0 && rooms.every((room) => room.use === 'mechanical');
  return !(onlyMechanical && area !== undefined && area <= limit);
}

function wayOut(
  rule: SafetyRules['escapeOpening'] | SafetyRules['escapeBasement'],
  windows: readonly RoomWindow[],
  none: string,
  base: Pick<Observation, 'id' | 'path' | 'what'>,
): Observation {
  const rules = safetyRules();
  const measured = windows.map((window) => ({ window, ok: escapeHolds(window, rules) }));
  const best =
    measured.find((one) => one.ok === true) ?? measured.find((one) => one.ok === undefined) ?? measured[0];
  return observe({ ...base, topic: 'escape opening', evidence: best?.window.evidence ?? [] }, rule, {
    observed: best === undefined ? none : escapeWords(best.window),
    figure: escapeFigure(rules),
    stands: judged(best?.ok),
  });
}

/** Exact: compared in tenths of a square inch, never in decimal square feet. */
function escapeHolds(window: RoomWindow, rules: SafetyRules): boolean | undefined {
  const width = window['clear-width'];
  const height = window['clear-height'];
  const { figures } = rules.escapeOpening;
  const asked = BigInt(
    window['at-grade'] ? figures.minTenthsOfSquareInchAtGrade : figures.minTenthsOfSquareInch,
  );
  const area =
    width === undefined || height === undefined
      ? undefined
      : BigInt(width.units) * BigInt(height.units) * 10n >= asked * SQUARE_INCH;
  return all(
    area,
    taped(width, (length) => atLeast(length, figures.minWidthInches)),
    taped(height, (length) => atLeast(length, figures.minHeightInches)),
    taped(window.sill, (length) => atMost(length, rules.escapeSill.figures.maxSillInches)),
  );
}

function escapeFigure({ escapeOpening: { figures }, escapeSill }: SafetyRules): string {
  // For the eye only: 8,208 tenths of a square inch are 820.8, and 5.7 square feet.
  const limit = (tenths: number): string => `${tenths / 10} sq in (${tenths / 1440} sq ft)`;
  return `clear opening ${limit(figures.minTenthsOfSquareInch)}, at ground level ${limit(figures.minTenthsOfSquareInchAtGrade)}; ${figures.minHeightInches} in high and ${figures.minWidthInches} in wide at least; sill ${escapeSill.figures.maxSillInches} in above the floor at most`;
}

function escapeWords(window: RoomWindow): string {
  const width = window['clear-width'];
  const height = window['clear-height'];
  return inOneLine(
    window.name,
    width === undefined || height === undefined
      ? 'clear opening not measured'
      : `${printLength(width)} wide and ${printLength(height)} high clear, ${squareInches(width, height)} sq in`,
    window.sill === undefined ? 'sill not measured' : `sill ${printLength(window.sill)} above the floor`,
    window['at-grade'] && 'at ground level',
  );
}

/** Cut, not rounded, to a tenth: an opening is never shown larger than it is. */
function squareInches(width: Length, height: Length): string {
  const tenths = (BigInt(width.units) * BigInt(height.units) * 10n) / SQUARE_INCH;
  return `${tenths / 10n}${tenths % 10n === 0n ? '' : `.${tenths % 10n}`}`;
}
