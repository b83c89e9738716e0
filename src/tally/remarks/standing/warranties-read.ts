/** Warranties: how long they run and whether they move to the buyer, held against those that the folder lists. */
import { sensesIn } from '../items/item-meaning.js';
import type { FactSaid, Judgement, Known } from '../items/known.js';
import { belongsTo } from '../words/taxonomy.js';
import { matches, type SetPhrase } from './set-phrases.js';

const WARRANTY =
  /\b(?:(?:(?:fully|full|remaining|manufacturer[’']?s?|workmanship|limited|long|an?|the)\s+){0,4}(?:(non-?\s?transferr?able|transferr?able)\s+)?(?:([\d]{1,2}|two|three|five|ten|fifteen|twenty|twenty-five|thirty|fifty)[- ]years?\s+)?(?:(?:parts|labor|workmanship|roof|manufacturer[’']?s?|limited|(non-?\s?transferr?able|transferr?able))\s+){0,3}warrant(?:y|ies))\b(?:\s+(?:that |which )?((?:does not|doesn[’']t|do not|don[’']t|won[’']t|will not) (?:transfer|convey|move)|(?:transfers?|conveys?|moves? to|goes to|passes to)\b))?(?:[^.;]{0,50}?\b(?:through|thru|until|till|to|good to|expires in|into|expires?|ends?(?: in)?)\s+(?:\w+ )?((?:19|20)\d\d))?/gi;

const NUMBERS: Readonly<Record<string, number>> = {
  two: 2,
  three: 3,
  five: 5,
  ten: 10,
  fifteen: 15,
  twenty: 20,
  'twenty-five': 25,
  thirty: 30,
  fifty: 50,
};

interface Listed {
  readonly fact: FactSaid;
  readonly things: readonly string[];
  readonly years: number | undefined;
  readonly until: string | undefined;
  readonly moves: string;
}

export function warrantiesRead(known: Known, sentence: string): SetPhrase[] {
  if (!/warrant/i.test(sentence) || /\bhome warrant/i.test(sentence)) return [];
  const listed = warrantiesOf(known);
  return matches(WARRANTY, sentence).flatMap((found) => {
    const claim = {
      moves: movesSaid(`${found[1] ?? ''}${found[3] ?? ''} ${found[4] ?? ''}`),
      years: found[2] === undefined ? undefined : (NUMBERS[found[2].toLowerCase()] ?? Number(found[2])),
      until: found[5],
    };
    if (claim.moves === undefined && claim.years === undefined && claim.until === undefined) return [];
    const things = sensesIn(sentence).flatMap(({ tag, id }) =>
      tag === 'thing' && id !== 'house' && id !== 'work' ? [id] : [],
    );
    const own = listed.filter((one) =>
      one.things.some((thing) => things.some((id) => belongsTo(thing, id) || belongsTo(id, thing))),
    );
    return [
      {
        from: found.index,
        to: found.index + found[0].trimEnd().length,
        judgement: judge(things.length > 0 ? own : listed, claim),
      },
    ];
  });
}

const movesSaid = (words: string): 'yes' | 'no' | undefined =>
  /\bnon|not|n[’']t/i.test(words) ? 'no' : /transfer|convey|move|goes|pass/i.test(words) ? 'yes' : undefined;

function warrantiesOf({ house }: Known): Listed[] {
  const of = (
    holder: { readonly warranty?: unknown },
    words: string,
    path: readonly (string | number)[],
    since: string | undefined,
  ): Listed[] =>
    [holder.warranty ?? []].flat().map((one) => {
      const {
        years,
        until,
        'moves-to-buyer': moves,
      } = one as {
        years?: number;
        until?: { latest?: string };
        'moves-to-buyer': string;
      };
      return {
        fact: {
          path: [...path],
          words: `warranty, ${words}${years === undefined ? '' : `: ${years} years`}${until?.latest === undefined ? '' : `: until ${until.latest.slice(0, 4)}`}${MOVES[moves] ?? ''}`,
          evidence: [],
        },
        things: sensesIn(words).flatMap(({ tag, id }) => (tag === 'thing' ? [id] : [])),
        years: years ?? yearsBetween(since, until?.latest),
        until: until?.latest?.slice(0, 4) ?? endOf(years, since),
        moves,
      };
    });
  return [
    ...house.systems.flatMap((one, at) =>
      of(one, one.name ?? one.is, ['systems', at, 'warranty'], one.installed?.value?.latest),
    ),
    ...house.work.flatMap((one, at) => of(one, one.what, ['work', at, 'warranty'], one.done?.latest)),
  ];
}

/** "Ten-year warranty", of what was done in 2025 and is under warranty until 2035. */
const yearsBetween = (since: string | undefined, until: string | undefined): number | undefined =>
  since === undefined || until === undefined
    ? undefined
    : Math.round(Number(until.slice(0, 4)) - Number(since.slice(0, 4)));

/** A warranty of so many years runs from the day it was put in. */
const endOf = (years: number | undefined, since: string | undefined): string | undefined =>
  years === undefined || since === undefined ? undefined : String(Number(since.slice(0, 4)) + years);

const MOVES: Readonly<Record<string, string>> = {
  yes: ', moves to the buyer',
  no: ', does not move to the buyer',
};

/** How one warranty answers to a part of the claim. */
type Says = boolean | undefined;

function judge(
  listed: readonly Listed[],
  claim: {
    readonly moves: 'yes' | 'no' | undefined;
    readonly years: number | undefined;
    readonly until: string | undefined;
  },
): Judgement {
  const facts = listed.slice(0, 3).map(({ fact }) => fact);
  const answers = listed.map((one) => {
    const parts: Says[] = [
      claim.moves === undefined ? true : one.moves === 'not known' ? undefined : one.moves === claim.moves,
      claim.years === undefined ? true : one.years === undefined ? undefined : one.years === claim.years,
      claim.until === undefined ? true : one.until === undefined ? undefined : one.until === claim.until,
    ];
    return parts.includes(false) ? false : parts.includes(undefined) ? undefined : true;
  });
  const rule = 'warranty';
  if (answers.includes(true))
    return { verdict: 'backed', rule, because: 'the folder lists that warranty', facts };
  if (answers.length > 0 && answers.every((one) => one === false))
    return {
      verdict: 'contradicted',
      rule,
      because: 'the folder lists another warranty',
      facts,
    };
  return { verdict: 'no-fact', rule, because: 'the folder lists no such warranty, or leaves it open', facts };
}
