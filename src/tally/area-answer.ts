/**
 * The words of the area answer: what `deriveAreas` hands on. Lengths are whole numbers of 0.1 µm, areas bigints
 * of (0.1 µm)², and a square-foot figure is rounded once, from its finished sum, halves up.
 */
import type { Reading } from './area-words.js';
import type { Point } from './corners.js';

/** The figures that are stated apart and never added into one. */
export type AreaClass =
  | 'above-finished'
  | 'below-finished'
  | 'non-standard'
  | 'disconnected'
  | 'unfinished'
  | 'garage-and-open';

export const AREA_CLASSES: readonly AreaClass[] = [
  'above-finished',
  'below-finished',
  'non-standard',
  'disconnected',
  'unfinished',
  'garage-and-open',
];

/** How each class is named in print. */
export const AREA_CLASS_NAMES: Record<AreaClass, string> = {
  'above-finished': 'Finished, above grade',
  'below-finished': 'Finished, below grade',
  'non-standard': 'Finished, but with a ceiling too low to count',
  disconnected: 'Finished, but not joined to the house by finished space',
  unfinished: 'Unfinished',
  'garage-and-open': 'Garage and open structures',
};

/** One line of a level's sum. All lines of a level add up to what is left in the level's own class. */
export interface AreaLine {
  /** What is added or taken off, with its dimensions: "Main level, outside faces, 34′ 0″ × 26′ 6″". */
  readonly what: string;
  /** Signed, (0.1 µm)²; 0 for a thing that is named only to say that it doesn't count. */
  readonly area: bigint;
  /** Where a part that is taken off goes; undefined for what is added, and for what belongs to no class. */
  readonly into: AreaClass | undefined;
  /** Why, in this project's words. */
  readonly rule: string;
}

/** A room whose place on its level is known, for the plan. */
export interface PlacedRoom {
  readonly id: string;
  readonly name: string;
  /** Inside faces, in the level's coordinates: east and north of the level's first corner. */
  readonly corners: readonly Point[];
  /** "11′ 6″ × 12′ 0″"; for an outline the greatest width and depth, said so. */
  readonly sizeWords: string;
  /** The unit its lengths were read in, to print them in. */
  readonly reading: Reading;
  /** A point well inside, for its name on a drawing. */
  readonly spot: Point;
  /** Where its floor belongs; undefined: to no class, since it isn't for use all year. */
  readonly areaClass: AreaClass | undefined;
  /** Parts of its floor go elsewhere than the rest of it. */
  readonly split: boolean;
}

export interface LevelArea {
  readonly id: string;
  readonly name: string;
  readonly grade: 'above' | 'below';
  /**
   * outside: taken at the outside faces · grown-from-inside: taken inside, walls added · rooms-only: inside
   * floors of the rooms added up, or an inside outline whose walls aren't known · none: not known.
   */
  readonly basis: 'outside' | 'grown-from-inside' | 'rooms-only' | 'none';
  /** The figure lacks something that wasn't measured; the declaration says what. */
  readonly estimate: boolean;
  /** The outline that was added up, for the plan: outside faces, or inside ones if the walls aren't known. */
  readonly corners: readonly Point[] | undefined;
  /** The unit to print its lengths in: that of its outline or size, else the one its rooms were read in. */
  readonly reading: Reading;
  readonly rooms: readonly PlacedRoom[];
  /** The whole level with every part that has a floor, before anything is taken off; undefined if not known. */
  readonly gross: bigint | undefined;
  /** The sum as it is to be shown; empty if the area isn't known. */
  readonly lines: readonly AreaLine[];
  /** The class of what is left after all lines. */
  readonly ownClass: AreaClass;
  readonly byClass: Readonly<Record<AreaClass, bigint>>;
}

export interface ClassArea {
  readonly area: bigint;
  /** Rounded once, half up. */
  readonly squareFeet: number;
  /** To a tenth, half up; only if every length was read in metric units. */
  readonly squareMetres: number | undefined;
}

/** A garage, porch, deck, shed …; area undefined: not measured. */
export interface StructureArea {
  readonly id: string;
  readonly name: string;
  readonly area: bigint | undefined;
  readonly squareFeet: number | undefined;
}

/** Structures, in lines that are never added to each other. */
export interface StructureLines {
  /** Garages, and rooms of a level that are used as one. */
  readonly garage: readonly StructureArea[];
  /** Porches, decks, patios, balconies, carports. */
  readonly open: readonly StructureArea[];
  /** Enclosed but not usable all year: sunrooms, and rooms of a level used as one without heat. */
  readonly 'not-all-year': readonly StructureArea[];
  /** Unfinished sheds, workshops and guest houses. */
  readonly outbuildings: readonly StructureArea[];
}

/** A rule that can be read two ways, with both results; print both, never one alone. */
export interface OpenReading {
  /** Name of the room, level or structure. */
  readonly room: string;
  readonly words: string;
  /** Whole square feet that count on the wider reading. */
  readonly countedIfPass: number;
  /** Whole square feet that count on the narrower reading. */
  readonly countedIfFail: 0;
  /** Which of the two the class figures use, as `words` says: by the rule that is quoted, else the smaller one. */
  readonly used: 'pass' | 'fail';
}

export interface RecordComparison {
  /** What the public record says, in whole square feet. */
  readonly squareFeet: number;
  readonly source: string | undefined;
  /** Finished area above grade less the record's figure; undefined if nothing was measured. */
  readonly difference: number | undefined;
  readonly words: string;
  /** What may explain the difference, from the facts of the folder only; each a sentence. */
  readonly causes: readonly string[];
}

export interface Areas {
  /** In the folder's order, lowest first. */
  readonly levels: readonly LevelArea[];
  /** `garage-and-open` is the sum of `structures.garage` and `structures.open`; print those lines, not the sum. */
  readonly byClass: Readonly<Record<AreaClass, ClassArea>>;
  readonly structures: StructureLines;
  /** Some level's figure is an estimate. */
  readonly estimate: boolean;
  /** The method may be named beside the figures. */
  readonly toStandard: boolean;
  /** The sentences that are printed beside the figures. */
  readonly declaration: readonly string[];
  readonly readings: readonly OpenReading[];
  readonly record: RecordComparison | undefined;
  /** Inside floor of each room whose size is known, by room id, (0.1 µm)². */
  readonly roomFloors: ReadonlyMap<string, bigint>;
  /** By room id, 0.1 µm; the height is that of a flat ceiling, the room's own or its level's. */
  readonly roomWalls: ReadonlyMap<
    string,
    { readonly perimeter: number; readonly height: number | undefined }
  >;
}
