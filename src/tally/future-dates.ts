/** Dates after the as-of day: the packet would tell as done what has not happened. */
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import type { FactPath } from '../diagnostics/fact-path.js';
import type { HouseDate } from '../facts/date.js';
import type { Finish, House } from '../facts/house.js';

/**
 * An error for each date that lies wholly after `asOf` (YYYY-MM-DD) and can only be of the past. When it is to be
 * listed, when care is due and when a warranty ends may lie ahead.
 */
export function checkFutureDates(house: House, asOf: string): Diagnostic[] {
  return pastDates(house).flatMap(([date, path]) =>
    date?.earliest !== undefined && date.earliest > asOf ? [inFuture(path, date.earliest, asOf)] : [],
  );
}

/** `day`: the first that the date can be, YYYY-MM-DD. */
export function inFuture(path: FactPath, day: string, asOf: string): Diagnostic {
  return {
    code: 'tally.future',
    severity: 'error',
    path,
    message: `this date lies after the day the packet is made for (${asOf})`,
    hints: [
      'check the year; what is only planned is left out until it is done',
      `build for that day:  --as-of ${day}`,
    ],
  };
}

type Dated = readonly [date: HouseDate | undefined, path: FactPath];

function pastDates(house: House): Dated[] {
  const finishes = (top: 'rooms' | 'structures'): Dated[] =>
    house[top].flatMap((home, at) =>
      home.finishes.flatMap((finish: Finish, index): Dated[] => [
        [finish.done, [top, at, 'finishes', index, 'done']],
        [finish.sealed, [top, at, 'finishes', index, 'sealed']],
      ]),
    );
  return [
    [house.house.built.value, ['house', 'built']],
    [house.house.bought, ['house', 'bought']],
    [house.measured?.date, ['measured', 'date']],
    [house.record?.date, ['record', 'date']],
    [house.lead?.['pamphlet-given'], ['lead', 'pamphlet-given']],
    [house.duties?.contract, ['duties', 'contract']],
    ...finishes('rooms'),
    ...finishes('structures'),
    ...house.systems.flatMap((system, at): Dated[] => [
      [system.made?.value, ['systems', at, 'made']],
      [system.installed?.value, ['systems', at, 'installed']],
      [system.serviced, ['systems', at, 'serviced']],
    ]),
    ...house.alarms.flatMap((alarm, at): Dated[] => [
      [alarm.made?.value, ['alarms', at, 'made']],
      [alarm.installed, ['alarms', at, 'installed']],
    ]),
    ...house.work.flatMap((item, at): Dated[] => [
      [item.started, ['work', at, 'started']],
      [item.done, ['work', at, 'done']],
    ]),
    ...house.permits.flatMap((permit, at): Dated[] => [
      [permit.issued, ['permits', at, 'issued']],
      [permit.final, ['permits', at, 'final']],
    ]),
    ...house.documents.map((paper, at): Dated => [paper.date, ['documents', at, 'date']]),
    ...Object.entries(house.photos).map(([id, photo]): Dated => [photo.taken, ['photos', id, 'taken']]),
    ...(house.duties?.given ?? []).map(({ on }, at): Dated => [on, ['duties', 'given', at, 'on']]),
    ...house.dues.map((due, at): Dated => [due.since, ['dues', at, 'since']]),
    ...corrections(house, []),
  ];
}

/** Every fact in its long form may say when it was corrected, wherever it stands. */
function corrections(value: unknown, path: FactPath): Dated[] {
  if (Array.isArray(value)) return value.flatMap((item, at) => corrections(item, [...path, at]));
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([word, inner]): Dated[] =>
    word === 'corrected'
      ? [[inner as HouseDate | undefined, [...path, word]]]
      : corrections(inner, [...path, word]),
  );
}
