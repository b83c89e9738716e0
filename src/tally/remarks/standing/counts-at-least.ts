/** "3+ bedrooms", "four-plus beds": at least so many rooms. */
import { nameOf } from '../../../facts/place-name.js';
import type { Known } from '../items/known.js';
import { matches, type SetPhrase } from './set-phrases.js';

const AT_LEAST =
  /\b(\d|two|three|four|five|six)(?:\s?\+|[\s-]plus|\s+or more)\s*-?\s*(bed(?:room)?s?|bdrms?|brs?|bd|bath(?:room)?s?|ba)\b/gi;
const COUNTS: Readonly<Record<string, number>> = { two: 2, three: 3, four: 4, five: 5, six: 6 };
/** A half bath counts half. */
const HALF = 0.5;

export function countsAtLeast({ house }: Known, sentence: string): SetPhrase[] {
  return matches(AT_LEAST, sentence).map((found) => {
    const [words, count = '', room = ''] = found;
    const wanted = COUNTS[count.toLowerCase()] ?? Number(count);
    const beds = /^(bed|bd|br)/i.test(room);
    const rooms = house.rooms.flatMap((room, index) =>
      room.use === (beds ? 'bedroom' : 'bath') ? [{ room, index }] : [],
    );
    const there = rooms.reduce((sum, { room }) => sum + (!beds && room.bath === 'half' ? HALF : 1), 0);
    const ok = there >= wanted;
    return {
      from: found.index,
      to: found.index + words.length,
      judgement: {
        verdict: ok ? 'backed' : 'contradicted',
        rule: beds ? 'count.bedrooms' : 'count.baths',
        because: `the folder has ${there}`,
        facts: rooms
          .slice(0, 4)
          .map(({ room, index }) => ({ path: ['rooms', index], words: nameOf(room), evidence: [] })),
        instead: ok ? undefined : `${there} ${beds ? 'bedrooms' : 'baths'}`,
      },
    };
  });
}
