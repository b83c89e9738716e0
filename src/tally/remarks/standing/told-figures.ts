/** Figures behind a name: "# of bedrooms: 4", "total bedrooms 4"; and an age in centuries: "a century-old house". */
import { printDate } from '../../../facts/date.js';
import type { Judgement, Known } from '../items/known.js';
import { judgeBaths, judgeBedrooms } from '../judge/judge-rooms.js';
import { judged } from '../judge/judged.js';
import { matches, type SetPhrase } from './set-phrases.js';

const NUMBERS = 'one two three four five six seven eight nine ten'.split(' ');

const COUNTED = new RegExp(
  String.raw`\b(?:(?:number|no\.?|nbr|count|total|total number) of|#(?: of)?|total) ?(bed ?rooms?|beds|brs?|bath ?rooms?|baths|bas?)(?: count)?\s*(?:[:=–-]|is|are)?\s*(\d{1,2}(?:\.\d+)?|${NUMBERS.join('|')})\b|(?<=^|[\s#])#(?: of)? ?(bed ?rooms?|beds|bath ?rooms?|baths)\s*(?:[:=–-]|is|are)?\s*(\d{1,2}(?:\.\d+)?|${NUMBERS.join('|')})\b|\b(bed ?rooms?|beds|bath ?rooms?|baths)(?: count|,? total|,? in total)\s*[:=–-]?\s*(\d{1,2}(?:\.\d+)?|${NUMBERS.join('|')})\b`,
  'gi',
);

const CENTURY =
  /\b(?:(?:over |more than |nearly |almost |about )?(?:a |one )?century[- ]old|century (?:home|house|cottage|farmhouse)|hundred[- ]year[- ]old|centenarian|turn[- ]of[- ]the[- ](?:last[- ])?century)\b(?! (?:oak|tree|maple|pine|elm|pecan|barn|beech|live oak|stone wall|apple))(?: (?:house|home|place|colonial|farmhouse|bungalow|cottage|ranch|victorian|beauty|gem|charmer))?/gi;

export const toldFigures = (known: Known, sentence: string): SetPhrase[] => [
  ...counted(known, sentence),
  ...centuries(known, sentence),
];

function counted(known: Known, sentence: string): SetPhrase[] {
  if (!/#|\b(number|no|nbr|count|total)\b/i.test(sentence)) return [];
  return matches(COUNTED, sentence).flatMap((found) => {
    const [words, ...parts] = found;
    // One of the three ways of saying it, and nothing of the other two.
    const [room = '', figure = ''] = parts.filter((part) => part !== undefined);
    const said = figure.toLowerCase();
    const value = NUMBERS.includes(said) ? NUMBERS.indexOf(said) + 1 : Number(said);
    // A total of baths may count the half ones as one each.
    const byRooms = judgeBaths(known, value, 'rooms', []);
    const baths = byRooms.verdict === 'backed' ? byRooms : judgeBaths(known, value, 'any', []);
    const judgement = /^ba/i.test(room) ? baths : judgeBedrooms(known, value, []);
    return [{ from: found.index, to: found.index + words.length, judgement }];
  });
}

/** Years that a house called so may have. */
const LEAST = 90;
const MOST = 130;

function centuries({ house, asOf }: Known, sentence: string): SetPhrase[] {
  const built = house.house.built.value;
  const year = Number(built?.earliest?.slice(0, 4));
  if (built === undefined || Number.isNaN(year)) return [];
  const age = Number(asOf.slice(0, 4)) - year;
  return matches(CENTURY, sentence).map((found) => {
    const judgement: Judgement = judged(
      age >= LEAST && age <= MOST,
      'date.built',
      `the folder says that it was built ${printDate(built)}`,
      [
        {
          path: ['house', 'built'],
          words: `built ${printDate(built)}`,
          evidence: house.house.built.evidence,
        },
      ],
      `built ${printDate(built)}`,
    );
    return { from: found.index, to: found.index + found[0].length, judgement };
  });
}
