/** "Bedroom 3 is the largest of the bedrooms": the rank of a room among its like, by the sides that the folder gives. */
import { nameOf } from '../../../facts/place-name.js';
import type { Known } from '../items/known.js';
import { roomArea } from '../items/room-areas.js';
import { judged } from '../judge/judged.js';
import { matches, type SetPhrase } from './set-phrases.js';

const NUMBER = '(?:one|two|three|four|five|[1-6])';
const ORDINAL = '(?:first|second|third|fourth|fifth|[1-5](?:st|nd|rd|th))';
const ROOM = '(?:bed(?:room)?|br|bath(?:room)?|ba)';

/** A room that is called by its number or by a word, with its rank behind. */
const RANKED = new RegExp(
  String.raw`\b(?:(${ROOM}) ?#?(${NUMBER})|(${ORDINAL}) (${ROOM})|(primary|master|owner['’]?s|hall|guest|main) (${ROOM}))\b[^.;,!?\n]{0,24}?\b(?:is|being|as|has|offers|was)\b[^.;,!?\n]{0,20}?\b(largest|biggest|roomiest|most spacious|smallest|tiniest|coziest)\b(?: (?:of|in|among)\b[^.;,!?\n]{0,30}| ${ROOM}s?)?`,
  'gi',
);

const BY_WORD: Readonly<Record<string, number>> = {
  one: 1,
  two: 2,
  three: 3,
  four: 4,
  five: 5,
  first: 1,
  second: 2,
  third: 3,
  fourth: 4,
  fifth: 5,
};

export function rankedRooms({ house }: Known, sentence: string): SetPhrase[] {
  if (!/larg|bigg|room|spac|small|tini|cozi/i.test(sentence)) return [];
  return matches(RANKED, sentence).flatMap((found) => {
    const [words, one = '', number = '', ordinal = '', other = '', called, third = '', rank = ''] = found;
    // One of the three ways of calling it, and nothing of the other two.
    const use = /^bath|^ba$/i.test(one + other + third) ? 'bath' : 'bedroom';
    const said = (number + ordinal).toLowerCase();
    const which = BY_WORD[said] ?? Number(said.replace(/\D/g, ''));
    const rooms = house.rooms.filter((room) => room.use === use);
    const meant = rooms.filter((room) => {
      const name = nameOf(room).toLowerCase();
      if (called === undefined)
        return new RegExp(`\\b${which}\\b`).test(`${name} ${room.id.replaceAll('-', ' ')}`);
      return /primary|master|owner|main/i.test(called)
        ? /primary|master|owner|main|suite/.test(name)
        : name.includes(called.toLowerCase());
    });
    const sized = rooms.flatMap((room) => {
      const feet = roomArea(room);
      return feet === undefined ? [] : [{ room, feet }];
    });
    const own = sized.find(({ room }) => room === meant[0]);
    if (meant.length !== 1 || own === undefined || sized.length < rooms.length || rooms.length < 2) return [];
    const small = /small|tini|cozi/i.test(rank);
    const fits = sized.every(({ feet }) => (small ? own.feet <= feet : own.feet >= feet));
    const told = sized.map(({ room, feet }) => `${nameOf(room)}: ${Math.round(feet)} sq ft`).join('; ');
    return [
      {
        from: found.index,
        to: found.index + words.trimEnd().length,
        judgement: judged(
          fits,
          'size.compared',
          `the folder says ${told}`,
          [{ path: ['rooms'], words: told, evidence: [] }],
          told,
        ),
      },
    ];
  });
}
