/** Permits beside the work that names them, and beside their own state. */
import type { Diagnostic } from '../../diagnostics/diagnostic.js';
import { printDate } from '../../facts/date.js';
import type { House, Permit } from '../../facts/house.js';
import { type ClashSources, clashOf, surelyBefore } from './clash.js';
import { type DatedDeed, datedDeeds, wasDone } from './dated-deeds.js';

export function permitsAndWork({ house }: ClashSources): Diagnostic[] {
  return [
    ...house.permits.flatMap(stateAndDates),
    ...datedDeeds(house).flatMap((deed) => besidePermit(deed, house)),
    ...house.work.flatMap((item, index) => {
      const at = house.permits.findIndex(({ id }) => id === item.permit);
      const permit = house.permits[at];
      if (permit === undefined) return [];
      const systems = house.systems.filter(({ id }) => item.systems.includes(id)).map((one) => one.is);
      const told = [item.what, item.how, item.trade, ...systems].join(' ');
      return isForOther(permit.what, told)
        ? [
            clashOf({
              severity: 'note',
              path: ['work', index, 'permit'],
              beside: ['permits', at, 'what'],
              message: `“${item.what}” names the permit for “${permit.what}”, which is of another trade`,
              hints: [
                'name the permit that was got for this work, or take  permit:  out',
                'if it covers this work as well, say so in its  what:',
              ],
            }),
          ]
        : [];
    }),
  ];
}

/** A permit whose state says that it isn't closed, or isn't there, and whose dates say that it is. */
function stateAndDates(permit: Permit, index: number): Diagnostic[] {
  const { state, issued, final, number } = permit;
  const of = (word: string, message: string, hints: readonly string[]): Diagnostic[] => [
    clashOf({
      severity: 'error',
      path: ['permits', index, 'state'],
      beside: ['permits', index, word],
      message,
      hints,
    }),
  ];
  const name = `the permit for “${permit.what}”`;
  if (final !== undefined && state !== 'final')
    return of('final', `${name} is “${state}”, and it has a final inspection (${printDate(final)})`, [
      'if it was closed, write  state: final',
      'if it was not, take out  final:',
    ]);
  if (state !== 'none-found') return [];
  if (issued !== undefined)
    return of('issued', `${name} is “none-found”, and it has a date of issue (${printDate(issued)})`, [
      'if there is one, write how it stands:  state: final  or  state: open',
      'if the office has none, take out  issued:',
    ]);
  if (number !== undefined)
    return of('number', `${name} is “none-found”, and it has the number ${number}`, [
      'if there is one, write how it stands:  state: final  or  state: open',
      'if the office has none, take out  number:',
    ]);
  return [];
}

const AFTERWARDS = /\b(after|afterwards|later|retroactive)\b/i;

function besidePermit(deed: DatedDeed, house: House): Diagnostic[] {
  const at = house.permits.findIndex(({ id }) => id === deed.permit);
  const permit = house.permits[at];
  // Who left a thing as found names the permit of an earlier owner; its dates say nothing of it.
  if (permit === undefined || deed.kept) return [];
  const { issued, final } = permit;
  const day = `${deed.name} ${wasDone(deed)} (${printDate(deed.date)})`;
  if (final !== undefined && surelyBefore(final, deed.date))
    return [
      clashOf({
        severity: 'warning',
        path: [...deed.path, deed.word],
        beside: ['permits', at, 'final'],
        message: `${day} after its permit, “${permit.what}”, had been closed (${printDate(final)})`,
        hints: [
          `correct  ${deed.word}: ${deed.date.written}  or  final: ${final.written}`,
          'if the permit was for the part before, name it there only, and take  permit:  out here',
        ],
      }),
    ];
  const knows = AFTERWARDS.test([permit.note, permit.from].join(' '));
  if (issued !== undefined && surelyBefore(deed.date, issued) && !knows)
    return [
      clashOf({
        severity: 'warning',
        path: [...deed.path, deed.word],
        beside: ['permits', at, 'issued'],
        message: `${day} before its permit, “${permit.what}”, was issued (${printDate(issued)})`,
        hints: [
          `correct  ${deed.word}: ${deed.date.written}  or  issued: ${issued.written}`,
          'if the permit was got afterwards, say so under the permit:  note: issued after the work',
        ],
      }),
    ];
  return [];
}

/** Trades that an office gives permits of their own for, by words that belong to no other. */
const OWN_PERMITS: readonly RegExp[] = [
  /\b(roof\w*|shingles?|underlayment)\b/i,
  /\b(electric\w*|circuits?|wiring|receptacles?|panel|alarms?|lights?)\b/i,
  /\b(plumb\w*|pipes?|drains?|water (heater|lines?)|sewer)\b/i,
  /\b(pool|spa)\b/i,
  /\b(furnace|boiler|heat pump|air condition\w*|ducts?)\b/i,
];

/** Only where each of the two is of one such trade and of no other. */
function isForOther(permit: string, work: string): boolean {
  const tradesOf = (words: string): number[] =>
    OWN_PERMITS.flatMap((pattern, at) => (pattern.test(words) ? [at] : []));
  const [asked, done] = [tradesOf(permit), tradesOf(work)];
  return (
    asked.length === 1 &&
    done.length === 1 &&
    asked[0] !== done[0] &&
    !/\b(house|home|whole|remodel\w*|renovation|alterations?|addition)\b/i.test(permit)
  );
}
