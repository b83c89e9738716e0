/**
 * Pairs of dates that can only stand one way round.
 *
 * A pair is wrong only if it is wrong whatever the dates leave open: "2026" and "2026-03" may be in order. That a
 * system was made before it was installed is checked where its age is worked out, since its label may say when.
 */

import type { Diagnostic } from '../diagnostics/diagnostic.js';
import type { FactPath } from '../diagnostics/fact-path.js';
import { type HouseDate, printDate } from '../facts/date.js';
import type { House, Warranty } from '../facts/house.js';
import { nameOfPlace } from '../facts/place-name.js';
import { systemName } from './system-name.js';

/** Two dates of which the first can't be after the second. */
interface Pair {
  /** The word of the first in the folder, its date, and what happened then: "bought". */
  readonly first: readonly [word: string, date: HouseDate | undefined, deed: string];
  readonly second: readonly [word: string, date: HouseDate | undefined, deed: string];
  /** What they are about. */
  readonly what: string;
  /** Path of the fact that is marked, and whether that is the first or the second of the two. */
  readonly path: FactPath;
  readonly marked: 'first' | 'second';
}

export function checkDateOrder(house: House): Diagnostic[] {
  return pairs(house).flatMap((pair) => {
    const [{ 1: first }, { 1: second }] = [pair.first, pair.second];
    if (first?.earliest === undefined || second?.latest === undefined) return [];
    return first.earliest > second.latest ? [wrongWayRound(pair, first, second)] : [];
  });
}

function wrongWayRound(
  { first, second, what, path, marked }: Pair,
  from: HouseDate,
  to: HouseDate,
): Diagnostic {
  const atFirst = marked === 'first';
  const [here, there] = atFirst ? [first, second] : [second, first];
  return {
    code: 'tally.date-order',
    severity: 'error',
    path,
    message: `${what} can’t have been ${first[2]} (${printDate(from)}) after it was ${second[2]} (${printDate(to)})`,
    hints: [
      `write  ${here[0]}: ${(atFirst ? to : from).written}  or ${atFirst ? 'earlier' : 'later'}`,
      `if that is right, correct  ${there[0]}: ${(atFirst ? from : to).written}`,
    ],
  };
}

function pairs(house: House): Pair[] {
  const { bought, listed } = house.house;
  const closed = house.money?.sale?.closed;
  const closing =
    house.duties?.closing === undefined
      ? (['closed', closed] as const)
      : (['closing', house.duties.closing] as const);
  return [
    {
      first: ['bought', bought, 'bought'],
      second: ['listed', listed, 'listed'],
      what: 'the house',
      path: ['house', 'listed'],
      marked: 'second',
    },
    {
      first: ['bought', bought, 'bought'],
      second: ['closed', closed, 'sold'],
      what: 'the house',
      path: ['money', 'sale', 'closed'],
      marked: 'second',
    },
    {
      first: ['listed', listed, 'offered'],
      second: ['closed', closed, 'sold'],
      what: 'the house',
      path: ['money', 'sale', 'closed'],
      marked: 'second',
    },
    {
      first: ['bought', bought, 'bought'],
      second: ['contract', house.duties?.contract, 'sold by contract'],
      what: 'the house',
      path: ['duties', 'contract'],
      marked: 'second',
    },
    {
      first: ['contract', house.duties?.contract, 'sold by contract'],
      second: [...closing, 'handed over at the closing'],
      what: 'the house',
      path: ['duties', 'contract'],
      marked: 'first',
    },
    ...house.alarms.flatMap((alarm, index): Pair[] => {
      const made: Pair['first'] = ['made', alarm.made?.value, 'made'];
      const what = `the alarm of ${nameOfPlace(house, alarm.where)}`;
      return [
        {
          first: made,
          second: ['installed', alarm.installed, 'put up'],
          what,
          path: ['alarms', index, 'installed'],
          marked: 'second',
        },
        {
          first: made,
          second: ['replace-by', alarm['replace-by'], 'at the end of its life'],
          what,
          path: ['alarms', index, 'replace-by'],
          marked: 'second',
        },
      ];
    }),
    ...house.systems.map(
      (system, index): Pair => ({
        first: ['made', system.made?.value, 'made'],
        second: ['serviced', system.serviced, 'serviced'],
        what: `“${systemName(system)}”`,
        path: ['systems', index, 'serviced'],
        marked: 'second',
      }),
    ),
    ...house.systems.flatMap((system, index): Pair[] => {
      const start =
        system.installed?.value === undefined
          ? (['made', system.made?.value, 'made'] as const)
          : (['installed', system.installed.value, 'installed'] as const);
      return warrantyPairs(system.warranty, start, systemName(system), ['systems', index, 'warranty']);
    }),
    ...house.work.flatMap((item, index): Pair[] => [
      {
        first: ['started', item.started, 'begun'],
        second: ['done', item.done, 'done'],
        what: `“${item.what}”`,
        path: ['work', index, 'started'],
        marked: 'first',
      },
      ...warrantyPairs(item.warranty, ['done', item.done, 'done'], item.what, ['work', index, 'warranty']),
    ]),
    ...house.permits.map(
      (permit, index): Pair => ({
        first: ['issued', permit.issued, 'issued'],
        second: ['final', permit.final, 'closed by its final inspection'],
        what: `the permit for “${permit.what}”`,
        path: ['permits', index, 'final'],
        marked: 'second',
      }),
    ),
  ];
}

function warrantyPairs(
  written: Warranty | readonly Warranty[] | undefined,
  first: Pair['first'],
  name: string,
  path: FactPath,
): Pair[] {
  return [written ?? []].flat().map(
    (warranty: Warranty, index): Pair => ({
      first,
      second: ['until', warranty.until, 'out of warranty'],
      what: warranty.of === undefined ? `“${name}”` : `“${name}” (${warranty.of})`,
      path: [...path, ...(Array.isArray(written) ? [index] : []), 'until'],
      marked: 'second',
    }),
  );
}
