/** Two answers to whether a thing stays with the house, and things that were taken out and are still counted on. */
import type { Diagnostic } from '../../diagnostics/diagnostic.js';
import type { House, System } from '../../facts/house.js';
import { nameKey } from '../../facts/name-key.js';
import { groupBy } from '../money/group-by.js';
import { isThere } from '../still-there.js';
import { systemName } from '../system-name.js';
import { type ClashSources, clashOf } from './clash.js';

export function staysAndGoes({ house }: ClashSources): Diagnostic[] {
  return [...twoEntries(house), ...systemAndEntry(house), ...takenOut(house)];
}

const isPlain = (stays: string | undefined): boolean => stays === 'yes' || stays === 'no';

function twoEntries({ conveys }: House): Diagnostic[] {
  const firsts = new Map<string, number>();
  return conveys.flatMap((one, at) => {
    const key = keyOf(one.what);
    const first = firsts.get(key) ?? at;
    firsts.set(key, first);
    const earlier = conveys[first];
    if (earlier === undefined || !isPlain(one.stays) || !isPlain(earlier.stays)) return [];
    if (earlier.stays === one.stays) return [];
    return [
      clashOf({
        severity: 'error',
        path: ['conveys', at, 'stays'],
        beside: ['conveys', first, 'stays'],
        message: `“${one.what}” stands twice in the list of what stays: once ${earlier.stays}, once ${one.stays}`,
        hints: ['delete the one that is wrong', 'if they are two things, tell them apart in  what:'],
      }),
    ];
  });
}

/** A thing that the list names by a system’s own name. A general word that fits several systems means none for sure. */
function systemAndEntry(house: House): Diagnostic[] {
  const named = house.systems.flatMap((system, index) =>
    [...new Set(namesOf(system))].map((name) => ({ name, system, index })),
  );
  const byName = groupBy(named, ({ name }) => name);
  return house.conveys.flatMap((entry, at) => {
    const systems = byName.get(keyOf(entry.what)) ?? [];
    const [only] = systems;
    if (systems.length !== 1 || only === undefined || !isThere(only.system)) return [];
    const { system, index } = only;
    if (!isPlain(entry.stays) || !isPlain(system.conveys) || system.conveys === entry.stays) return [];
    return [
      clashOf({
        severity: 'error',
        path: ['conveys', at, 'stays'],
        beside: ['systems', index, 'conveys'],
        message: `by the list of what stays, “${entry.what}” ${entry.stays === 'yes' ? 'stays' : 'goes'}; by its own entry, “${systemName(system)}” ${system.conveys === 'yes' ? 'stays' : 'goes'}`,
        hints: [
          `write the same in both:  stays: ${system.conveys}  here, or  conveys: ${entry.stays}  there`,
          'one of the two is enough; the list is for what is no system',
        ],
      }),
    ];
  });
}

const keyOf = (words: string): string => nameKey(words).replace(/^(the|a|an) /, '');

const namesOf = (system: System): string[] =>
  [system.name, system.is, system.is.split(',')[0]].flatMap((name) =>
    name === undefined ? [] : [keyOf(name)],
  );

function takenOut(house: House): Diagnostic[] {
  return house.systems.flatMap((system, index): Diagnostic[] => {
    if (isThere(system)) return [];
    const name = `“${systemName(system)}”`;
    const beside = ['systems', index, 'did'] as const;
    return [
      ...(system.conveys === 'yes'
        ? [
            clashOf({
              severity: 'error',
              path: ['systems', index, 'conveys'],
              beside,
              message: `${name} was removed, and it is to stay with the house`,
              hints: ['if it was taken out, take out  conveys:', 'if it is there, take out  did: removed'],
            }),
          ]
        : []),
      ...house.care.flatMap((task, at) =>
        task.for === system.id
          ? [
              clashOf({
                severity: 'error',
                path: ['care', at, 'for'],
                beside,
                message: `the next owner is to “${task.what}”, and ${name}, which that is for, was removed`,
                hints: [
                  'delete the task, or name in  for:  what took its place',
                  'if it is there, take out  did: removed',
                ],
              }),
            ]
          : [],
      ),
    ];
  });
}
