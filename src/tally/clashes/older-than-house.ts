/** What is older than the house that it is in. */
import type { Diagnostic } from '../../diagnostics/diagnostic.js';
import { addYears } from '../../facts/age.js';
import { type HouseDate, printDate } from '../../facts/date.js';
import { systemName } from '../system-name.js';
import { type ClashSources, clashOf, surelyBefore } from './clash.js';
import { type DatedDeed, datedDeeds, wasDone } from './dated-deeds.js';

/** What is put into a house as it comes from its maker, or made in place. Doors, sashes and tubs are bought second-hand, appliances mostly so. */
const COMES_NEW =
  /^(roof|wiring|supply pipes|drain pipes|ducts|gutters|electrical panel|furnace|boiler|heat pump|air conditioner|air handler|water heater)\b/i;

const SECOND_HAND = /second[- ]hand|\bused\b|salvag|reclaim|moved here|from (another|an older) house/i;

/** A maker’s stock may be this much older than the house. Common practice, no source. */
const STOCK_YEARS = 2;

export function olderThanHouse({ house, ages }: ClashSources): Diagnostic[] {
  const built = house.house.built.value;
  if (built === undefined) return [];
  const apart = new Set(house.structures.filter((one) => !one.attached).map(({ id }) => id));
  // A garage that stands apart, and what hangs in it, may be older than the house.
  const inHouse = (where: readonly string[]): boolean =>
    where.length === 0 || where.some((id) => !apart.has(id));
  const done = datedDeeds(house).filter((deed) => inHouse(deed.where) && surelyBefore(deed.date, built));
  return [
    ...done.map((deed) => doneBefore(deed, built)),
    ...ages.flatMap(({ system, path, date, basis }) => {
      const from = built.earliest;
      if (basis === 'installed' || date?.latest === undefined || from === undefined) return [];
      if (date.uncertain || built.uncertain || date.latest >= addYears(from, -STOCK_YEARS)) return [];
      if (!COMES_NEW.test(system.is) || !inHouse(system.where === undefined ? [] : [system.where])) return [];
      // A day before the house was built is said where it was put in.
      if (surelyBefore(system.installed?.value, built)) return [];
      if (SECOND_HAND.test([system.note, system.made?.note, system.made?.from].join(' '))) return [];
      return [
        clashOf({
          severity: 'warning',
          path: [...path, basis === 'label' ? 'label' : 'made'],
          beside: ['house', 'built'],
          message: `“${systemName(system)}” was made (${printDate(date)}) long before the house was built (${printDate(built)})`,
          hints: [
            basis === 'label'
              ? 'read the label again, and how its date is read:  reads:'
              : 'read the label again, and correct  made:',
            'if it came second-hand, say so beside it:  note: second-hand',
            'if the house is older, correct  built:  under house:',
          ],
        }),
      ];
    }),
  ];
}

function doneBefore(deed: DatedDeed, built: HouseDate): Diagnostic {
  return clashOf({
    severity: 'error',
    path: [...deed.path, deed.word],
    beside: ['house', 'built'],
    message: `${deed.name} ${wasDone(deed)} (${printDate(deed.date)}) before the house was built (${printDate(built)})`,
    hints: [
      `check the year, and correct  ${deed.word}: ${deed.date.written}`,
      'if the house is older, correct  built:  under house:',
      ...(deed.kind === 'system' ? ['if it stood elsewhere before, write that year as  made:'] : []),
    ],
  });
}
