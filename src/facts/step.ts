/**
 * One step of a walk around a level's outline, in compass words: `east 34'`, or `east 3' north 4'` along a
 * slanted wall. An outline is the list of its steps, back to where it began.
 */
import { FOOT, type Length, readLength } from './length.js';
import { bad, good, type Read } from './read.js';
import { LONGEST_TEXT } from './written-number.js';

/** How far a step goes, in units of 0.1 µm. */
export interface Step {
  /** East is positive, west negative. */
  readonly east: number;
  /** North is positive, south negative. */
  readonly north: number;
  /** The kind of tape the step was read from; an outline must close in this unit. */
  readonly reading: Length['reading'];
  /** The text as its author wrote it, without blanks around it. */
  readonly written: string;
}

const EXAMPLE = `write a compass word and a length, for example east 34'`;
const SLANTED = `write both parts of the slanted wall, for example east 3' north 4'`;

const COMPASS = /(?<![a-z])(?:north|south|east|west|[nsew])(?![a-z])/gi;
const BETWEEN = /(?<![a-z])(?:(?:north|south)[\s-]*(?:east|west)|[ns][\s-]*[ew])(?![a-z])/i;

/** One leg: along a single axis. */
interface Leg {
  readonly axis: 'east' | 'north';
  readonly sign: 1 | -1;
  readonly length: Length;
}

/**
 * Reads one step. The words are north, south, east, west or their first letters; directions in between are
 * given by their two parts.
 *
 * Refuses a step without a compass word, `north-east` and the like, two parts along the same axis, and two parts
 * that were read in different units.
 */
export function readStep(text: string): Read<Step> {
  const written = text.trim();
  if (written === '') return bad('there is no step', EXAMPLE);
  if (written.length > LONGEST_TEXT) return bad('this is too long for one step', EXAMPLE);
  const between = BETWEEN.exec(written);
  if (between) return bad(`“${between[0]}” does not say how far each way`, SLANTED);
  const words = [...written.matchAll(COMPASS)];
  const [first, second] = words;
  if (!first) return bad('a step needs a compass word: north, south, east or west', EXAMPLE);
  if (first.index > 0) return bad('a step begins with its compass word', EXAMPLE);
  if (words.length > 2) return bad('a step has one compass word, or two along a slanted wall', SLANTED);

  const leg = readLeg(first[0], written.slice(first[0].length, second?.index));
  if (!leg.ok || !second) return leg.ok ? good({ ...alongOne(leg.value), written }) : leg;
  const other = readLeg(second[0], written.slice(second.index + second[0].length));
  return other.ok ? slanted(leg.value, other.value, written) : other;
}

function readLeg(word: string, distance: string): Read<Leg> {
  const length = readLength(distance.replace(/,\s*$/, ''));
  if (!length.ok) return bad(`${word}: ${length.problem}`, length.hint);
  const letter = word.charAt(0).toLowerCase();
  return good({
    axis: letter === 'e' || letter === 'w' ? 'east' : 'north',
    sign: letter === 'e' || letter === 'n' ? 1 : -1,
    length: length.value,
  });
}

function alongOne(leg: Leg): Omit<Step, 'written'> {
  const distance = leg.sign * leg.length.units;
  const reading = leg.length.reading;
  return leg.axis === 'east' ? { east: distance, north: 0, reading } : { east: 0, north: distance, reading };
}

function slanted(one: Leg, other: Leg, written: string): Read<Step> {
  if (one.axis === other.axis) {
    return bad('both parts of this step lie along the same line', 'write one step for each wall');
  }
  const reading = commonReading(one.length, other.length);
  if (!reading) return bad('the two parts of this step are read in different units', SLANTED);
  const a = alongOne(one);
  const b = alongOne(other);
  return good({ east: a.east + b.east, north: a.north + b.north, reading, written });
}

/** Whole feet go with either kind of foot tape; otherwise the readings must be the same. */
function commonReading(a: Length, b: Length): Length['reading'] | undefined {
  if (a.reading === b.reading) return a.reading;
  const readings = [a.reading, b.reading];
  if (readings.includes('metric')) return undefined;
  const inches = a.reading === 'inches' ? a : b;
  return inches.units % FOOT === 0 ? 'tenths' : undefined;
}
