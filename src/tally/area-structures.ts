/** Garages, open structures and outbuildings: lines of their own, never part of the house's finished area. */
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import { wholeSquareFeet } from '../facts/floor-area.js';
import type { House, Structure } from '../facts/house.js';
import { nameOf } from '../facts/place-name.js';
import type { OpenReading, StructureArea, StructureLines } from './area-answer.js';
import type { RoomFloor } from './area-rooms.js';
import { shapeOf } from './level-outline.js';

export interface StructuresAnswer {
  readonly lines: StructureLines;
  /** Finished structures, which count with the disconnected area of the house. */
  readonly disconnected: readonly StructureArea[];
  readonly readings: readonly OpenReading[];
  readonly diagnostics: readonly Diagnostic[];
}

type Line = keyof StructureLines | 'disconnected';

/** Measures every structure, and adds the rooms of levels that are used as a garage or a sunroom without heat. */
export function sumStructures(house: House, rooms: readonly RoomFloor[]): StructuresAnswer {
  const found: Record<Line, StructureArea[]> = {
    garage: [],
    open: [],
    'not-all-year': [],
    outbuildings: [],
    disconnected: [],
  };
  const readings: OpenReading[] = [];
  const diagnostics: Diagnostic[] = [];
  for (const [index, structure] of house.structures.entries()) {
    const name = nameOf(structure);
    const answer = shapeOf(structure, [0, 0], name, ['structures', index]);
    diagnostics.push(...answer.diagnostics);
    const line = lineOf(structure);
    const measured = structureArea(structure.id, name, answer.shape?.area);
    found[line].push(measured);
    if (line === 'disconnected' && structure.attached && measured.squareFeet !== undefined)
      readings.push(attachedReading(name, measured.squareFeet));
  }
  for (const room of rooms)
    if (room.alsoOn !== undefined)
      found[room.alsoOn].push(structureArea(room.room.id, room.name, room.floor));
  const { disconnected, ...lines } = found;
  return { lines, disconnected, readings, diagnostics };
}

function structureArea(id: string, name: string, area: bigint | undefined): StructureArea {
  return { id, name, area, squareFeet: area === undefined ? undefined : wholeSquareFeet(area) };
}

function lineOf(structure: Structure): Line {
  switch (structure.is) {
    case 'garage':
      return 'garage';
    case 'carport':
    case 'deck':
    case 'patio':
    case 'balcony':
      return 'open';
    case 'porch':
      return structure.finished ? 'disconnected' : 'open';
    case 'sunroom':
      return structure.finished ? 'disconnected' : 'not-all-year';
    default:
      return structure.finished ? 'disconnected' : 'outbuildings';
  }
}

/** Nothing in the folder says that finished space leads into it, so it isn't counted; it may be. */
function attachedReading(name: string, counts: number): OpenReading {
  return {
    room: name,
    words: `Finished, usable all year and attached. It counts as finished area (${counts} sq ft) only if finished space of the house leads into it; then it belongs in the outline or the parts of its level. Here it is stated apart.`,
    countedIfPass: counts,
    countedIfFail: 0,
    used: 'fail',
  };
}
