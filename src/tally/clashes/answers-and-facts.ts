/** “How old is the roof?”, answered with another year than the roof’s own entry gives. */
import type { Diagnostic } from '../../diagnostics/diagnostic.js';
import { type HouseDate, mayBeOneDay, printDate } from '../../facts/date.js';
import type { System } from '../../facts/house.js';
import { isThere } from '../still-there.js';
import { systemName } from '../system-name.js';
import { type ClashSources, clashOf } from './clash.js';

const ASKS =
  /^(?:how old (?:is|are)|when (?:was|were)|what year (?:is|was|are|were)|age of) (?:the |your )?([a-z][a-z ]*?)(?: (?:installed|put in|put on|replaced|made|laid|new|from))?\s*\?*$/i;

/** An answer that begins with what was done to the thing itself; a later sentence may be about a part of it. */
const BEGINS =
  /^(?:(?:it|they|the [a-z ]+) (?:is|are|was|were) )?(?:from |of |in |new |laid|installed|made|put|replaced)\b/i;

export function answersAndFacts({ house }: ClashSources): Diagnostic[] {
  return house.answers.flatMap(({ ask, answer }, index): Diagnostic[] => {
    const thing = ASKS.exec(ask.trim())?.[1]?.toLowerCase();
    const [sentence = ''] = (answer.value ?? '').split(/(?<=[.;])\s/);
    const years = [...sentence.matchAll(/\b(1[6-9]|20|21)\d\d\b/g)].map(([year]) => year);
    const [year] = years;
    if (thing === undefined || year === undefined || years.length !== 1 || !BEGINS.test(sentence)) return [];
    // “Before 2005” and “about 2016” are no one year.
    if (/\b(about|around|before|after|or|between|since|perhaps|probably)\b|~|\?/i.test(sentence)) return [];
    const dated = house.systems.flatMap((system, at) =>
      isCalled(system, thing) ? [datesOf(system, at)] : [],
    );
    // One whose dates nobody knows may be the one that is meant.
    if (dated.some((dates) => dates.length === 0)) return [];
    const known = dated.flat();
    const [shown] = known;
    if (shown === undefined || known.some(({ date }) => mayBeIn(date, year))) return [];
    return [
      clashOf({
        severity: 'error',
        path: ['answers', index, 'answer'],
        beside: ['systems', shown.at, shown.word],
        message: `“${ask}” is answered with ${year}, and “${shown.name}” was ${shown.word} (${printDate(shown.date)})`,
        hints: ['correct the answer', `if the answer is right, correct  ${shown.word}:  there`],
      }),
    ];
  });
}

/** “roof” is what stands first in `is: roof, clay tile`; “heater” alone may be several things. */
const isCalled = (system: System, thing: string): boolean =>
  isThere(system) &&
  [system.is.split(',')[0], system.name].some((name) => name?.trim().toLowerCase() === thing);

/** One date of a system. */
interface Stated {
  readonly name: string;
  readonly at: number;
  readonly word: 'installed' | 'made';
  readonly date: HouseDate;
}

function datesOf(system: System, at: number): Stated[] {
  return (['installed', 'made'] as const).flatMap((word): Stated[] => {
    const date = system[word]?.value;
    return date === undefined ? [] : [{ name: systemName(system), at, word, date }];
  });
}

const mayBeIn = (date: HouseDate, year: string): boolean =>
  date.uncertain || mayBeOneDay(date, { earliest: `${year}-01-01`, latest: `${year}-12-31` });
