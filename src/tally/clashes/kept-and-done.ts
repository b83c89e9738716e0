/** What is said to be left as found, and to have been put in or changed. */
import type { Diagnostic } from '../../diagnostics/diagnostic.js';
import type { FactPath } from '../../diagnostics/fact-path.js';
import { type HouseDate, printDate } from '../../facts/date.js';
import type { Finish, House } from '../../facts/house.js';
import { nameOf } from '../../facts/place-name.js';
import { type Deed, PUT_IN } from '../improvements.js';
import { systemName } from '../system-name.js';
import { type ClashSources, clashOf, surelyBefore } from './clash.js';

interface KeptThing {
  readonly name: string;
  readonly path: FactPath;
  readonly did: Deed | undefined;
  readonly word: 'done' | 'installed';
  readonly date: HouseDate | undefined;
  /** Id of the work item that tells of it. */
  readonly work: string | undefined;
}

export function keptAndDone({ house }: ClashSources): Diagnostic[] {
  const { bought } = house.house;
  return keptThings(house).flatMap((thing): Diagnostic[] => {
    const path: FactPath = [...thing.path, 'kept'];
    if (thing.did !== undefined && (PUT_IN.includes(thing.did) || thing.did === 'removed'))
      return [
        clashOf({
          severity: 'error',
          path,
          beside: [...thing.path, 'did'],
          message: `${thing.name} is kept as found, and it is “${thing.did}”`,
          hints: ['if it was left as found, take out  did:', 'if it was changed, take out  kept:'],
        }),
      ];
    if (bought !== undefined && thing.date !== undefined && surelyBefore(bought, thing.date))
      return [
        clashOf({
          severity: 'warning',
          path,
          beside: [...thing.path, thing.word],
          message: `${thing.name} is kept as found, and its date (${printDate(thing.date)}) is after you bought the house (${printDate(bought)})`,
          hints: [
            'if it is new since, take out  kept:',
            thing.word === 'installed'
              ? 'if that day is when it was last worked on, write it as  serviced:'
              : `correct  ${thing.word}: ${thing.date.written}`,
          ],
        }),
      ];
    return inNewWork(thing, house);
  });
}

/** A finish that is kept and stands under work that is told as new. */
function inNewWork(thing: KeptThing, house: House): Diagnostic[] {
  const at = house.work.findIndex(({ id }) => id === thing.work);
  const item = house.work[at];
  if (item === undefined || !['new', 'replaced'].includes(item.did)) return [];
  return [
    clashOf({
      severity: 'warning',
      path: [...thing.path, 'kept'],
      beside: ['work', at, 'did'],
      message: `${thing.name} is kept as found, and it stands under “${item.what}”, which is “${item.did}”`,
      hints: ['if it was left as found, take out  work:', 'if it was changed, take out  kept:'],
    }),
  ];
}

function keptThings(house: House): KeptThing[] {
  return [
    ...house.systems.flatMap((system, at): KeptThing[] =>
      system.kept
        ? [
            {
              name: `“${systemName(system)}”`,
              path: ['systems', at],
              did: system.did,
              word: 'installed',
              date: system.installed?.value,
              work: undefined,
            },
          ]
        : [],
    ),
    ...(['rooms', 'structures'] as const).flatMap((top) =>
      house[top].flatMap((home, at) =>
        home.finishes.flatMap((finish: Finish, index): KeptThing[] =>
          finish.kept
            ? [
                {
                  name: `“${finish.what}” (${finish.on}, ${nameOf(home)})`,
                  path: [top, at, 'finishes', index],
                  did: finish.did,
                  word: 'done',
                  date: finish.done,
                  work: finish.work,
                },
              ]
            : [],
        ),
      ),
    ),
  ];
}
