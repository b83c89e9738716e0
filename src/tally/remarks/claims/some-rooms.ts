/** "Two bedrooms share a bath", "down the hall are two bedrooms": some of the rooms are counted, and not all. */
import type { Judgement, Known } from '../items/known.js';
import { levelMeant, type PlaceMeant } from '../items/places.js';
import { sinceLast } from '../words/cut-at.js';

/** Behind the rooms: what is said of these, and of no others. */
const SAID_OF_THESE =
  /^\s*(?:[/,&+]\s*\d(?:\.\d)?\s*(?:full |half )?ba\w*\s*)?((each|both|all)\s+)?(share|have|has|get|got|face|enjoy|overlook|occupy|open|retain|keep|kept|received|do|did|come|are (on|in|up|down|at|off|upstairs|carpeted|painted)|is (on|in|up|down|at|off|upstairs)|(on|up|down|off|at|above|below|under)\b|upstairs|downstairs)/i;
/** Before the rooms: a part of the house. */
const IN_ONE_PART =
  /\b(down the hall|the hall|hallway|(this|same|one|other|that|opposite|north|south|east|west|far|quiet|private|front|back|rear) (floor|level|side|end|wing|of the house)|here|tucked|at the (back|rear|front|end)|just (off|past|beyond|inside)|past the|off the|beyond|behind|across the|around the|to the (left|right|rear|back))\b[^.;!?]{0,40}$/i;
/** "A home with two bedrooms with closets" counts all of them. */
/** A level that the sentence is about. */
const ON_A_LEVEL =
  /\b(?:(?:main|upper|first|second|ground|top|1st|2nd)[\s-](?:level|floor|story|storey)|upstairs|on main)\b[^.;!?]{0,36}$/i;
const UPPER = /^(upper|second|top|2nd|upstairs)\b/i;
const COUNTS_ALL =
  /\b(home|house|it|this|property|ranch|cottage)\s+(has|offers|features|boasts|with|includes)\s*$/i;

const OF_THEM = /^\s*of (the|its|these|those|our)\b/i;

export function countsSomeOnly(text: string, from: number, to: number): boolean {
  const before = sinceLast(text.slice(Math.max(0, from - 70), from), /[.;!?\n]/);
  if (IN_ONE_PART.test(before)) return true;
  return SAID_OF_THESE.test(text.slice(to, to + 24)) && !COUNTS_ALL.test(before);
}

/** The level that the words before a count speak of: "Upstairs are three bedrooms". */
export function levelSaid({ house }: Known, text: string, from: number): PlaceMeant | undefined {
  const before = sinceLast(text.slice(Math.max(0, from - 70), from), /[.;!?\n]/);
  const said = ON_A_LEVEL.exec(before);
  if (said === null || house.house.storeys === 'one') return undefined;
  const place = levelMeant(house, UPPER.test(said[0]) ? 'upper' : 'main');
  return place.ids.length > 0 ? place : undefined;
}

export const isOfThem = (text: string, to: number): boolean => OF_THEM.test(text.slice(to, to + 12));

/** Of a part of the rooms: so where some level has just as many; else nothing is told. */
export function partBacked({ house }: Known, claimed: number, judgement: Judgement): Judgement | undefined {
  const perLevel = new Map<string, number>();
  for (const { use, level } of house.rooms)
    if (use === 'bedroom') perLevel.set(level, (perLevel.get(level) ?? 0) + 1);
  return [...perLevel.values()].includes(claimed)
    ? { ...judgement, verdict: 'backed', because: 'one level of the folder has so many', instead: undefined }
    : undefined;
}
