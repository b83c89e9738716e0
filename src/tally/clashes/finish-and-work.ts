/** A finish whose own day doesn’t fit that of the work it stands under. */
import type { Diagnostic } from '../../diagnostics/diagnostic.js';
import type { FactPath } from '../../diagnostics/fact-path.js';
import { addDays } from '../../facts/age.js';
import { printDate } from '../../facts/date.js';
import type { Finish, House } from '../../facts/house.js';
import { nameOf } from '../../facts/place-name.js';
import { whoDid } from '../who.js';
import { type ClashSources, clashOf, surelyBefore } from './clash.js';
import { EARLIER_OWNER } from './owner-and-dates.js';

/** Work drags on, and a finish may be dried, cured or touched up later. */
const DAYS = 92;

export function finishAndWork({ house }: ClashSources): Diagnostic[] {
  return (['rooms', 'structures'] as const).flatMap((top) =>
    house[top].flatMap((home, at) =>
      home.finishes.flatMap((finish: Finish, index) =>
        besideWork(house, finish, nameOf(home), [top, at, 'finishes', index]),
      ),
    ),
  );
}

function besideWork(house: House, finish: Finish, where: string, path: FactPath): Diagnostic[] {
  const at = house.work.findIndex(({ id }) => id === finish.work);
  const item = house.work[at];
  const { done } = finish;
  if (item === undefined || done === undefined || item.done === undefined || finish.kept) return [];
  const name = `“${finish.what}” (${finish.on}, ${where})`;
  const hints = [
    `correct  done: ${done.written}  or  done: ${item.done.written}`,
    'if it belongs to other work, take out  work:  here, or name that one',
  ];
  const { bought } = house.house;
  const who = whoDid(house, finish.by ?? item.by);
  const said = [finish.from, finish.note, item.from, item.note].join(' ').toLowerCase();
  // Work that is itself older than the purchase is told at the work.
  const ours = (who.kind === 'owner' || who.kind === 'family') && !surelyBefore(item.done, bought);
  if (ours && surelyBefore(done, bought) && bought !== undefined && !EARLIER_OWNER.test(said))
    return [
      clashOf({
        severity: 'warning',
        path: [...path, 'done'],
        beside: ['house', 'bought'],
        message: `${name} was done by ${who.kind === 'owner' ? 'you' : 'your family'} (${printDate(done)}) before you bought the house (${printDate(bought)})`,
        hints: [
          `correct  done: ${done.written}`,
          'if it was there, write  kept: true  in place of  done:  and  by:',
        ],
      }),
    ];
  return isFar(finish, item)
    ? [
        clashOf({
          severity: 'warning',
          path: [...path, 'done'],
          beside: ['work', at, 'done'],
          message: `${name} is of ${printDate(done)}, and the work it stands under, “${item.what}”, of ${printDate(item.done)}`,
          hints,
        }),
      ]
    : [];
}

/** Wholly more than three months before the work began, or after it was done. */
function isFar({ done }: Finish, item: House['work'][number]): boolean {
  if (done === undefined || done.uncertain || item.done?.uncertain || item.started?.uncertain) return false;
  const first = (item.started ?? item.done)?.earliest;
  const last = item.done?.latest;
  return (
    (done.latest !== undefined && first !== undefined && done.latest < addDays(first, -DAYS)) ||
    (done.earliest !== undefined && last !== undefined && done.earliest > addDays(last, DAYS))
  );
}
