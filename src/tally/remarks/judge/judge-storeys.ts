/** Storeys, and levels that are finished. */
import type { Identity } from '../../../facts/house.js';
import { nameOf } from '../../../facts/place-name.js';
import type { Judgement, Known } from '../items/known.js';
import { isFinishedRoom } from '../items/rooms-finished.js';
import { judged, plural, unknown } from './judged.js';

const STOREY_WORDS: Readonly<Record<NonNullable<Identity['storeys']>, string>> = {
  one: 'one storey',
  'one-and-a-half': 'one and a half storeys',
  two: 'two storeys',
  'two-and-a-half': 'two and a half storeys',
  three: 'three storeys',
  'split-level': 'split level',
};

export function judgeStoreys(known: Known, claimed: string): Judgement {
  const rule = 'count.storeys';
  const { storeys } = known.house.house;
  if (storeys === undefined) return unknown(rule, 'the folder does not say how many storeys');
  const words = STOREY_WORDS[storeys];
  return judged(
    storeys === claimed,
    rule,
    `the folder says ${words}`,
    [{ path: ['house', 'storeys'], words: `storeys: ${words}`, evidence: [] }],
    storeys === 'one' ? 'single-storey' : words,
  );
}

/** "Three levels of finished space": those with a finished room. */
export function judgeLevels(known: Known, claimed: number): Judgement {
  const rule = 'count.levels';
  const { levels, rooms } = known.house;
  const finished = levels.filter((level) =>
    rooms.some((room) => room.level === level.id && isFinishedRoom(known.house, room)),
  );
  if (finished.length === 0) return unknown(rule, 'the folder lists no rooms');
  const words = plural(finished.length, 'finished level', 'finished levels');
  return judged(
    finished.length === claimed,
    rule,
    `the folder lists ${words}`,
    [{ path: ['levels'], words: `${words}: ${finished.map(nameOf).join(', ')}`, evidence: [] }],
    words,
  );
}
