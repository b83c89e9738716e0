/** What a mileage log lacks. Source: `mileage-log` in tables/mileage.yaml. */

import type { Diagnostic } from '../../diagnostics/diagnostic.js';
import type { FactPath } from '../../diagnostics/fact-path.js';
import { printDate } from '../../facts/date.js';
import { yearOf } from '../../facts/day-number.js';
import type { Money } from '../../facts/house.js';
import type { Trip } from '../../facts/ledger.js';
import { nameKey } from '../../facts/name-key.js';
import { typedInYaml } from '../../facts/typed-in-yaml.js';
import { groupThousands } from '../../facts/written-number.js';
import { groupBy } from './group-by.js';
import type { MileSpan } from './money-tally.js';

export function mileWarnings(
  trips: readonly Trip[],
  spans: readonly MileSpan[],
  odometer: Money['odometer'],
  bought: string | undefined,
): Diagnostic[] {
  return [
    ...earlyTrips(trips, bought),
    ...spans.flatMap((span) => (span.rate === undefined ? [noRate(span)] : [])),
    ...odometerWarnings(trips, odometer),
  ];
}

const warning = (path: FactPath, message: string, hints: readonly string[]): Diagnostic => ({
  code: 'tally.miles',
  severity: 'warning',
  path,
  message,
  hints,
});

/** To look at a house before buying it is driving for it too; whether it counts is not for the program to say. */
function earlyTrips(trips: readonly Trip[], bought: string | undefined): Diagnostic[] {
  const early = bought === undefined ? [] : trips.filter(({ date }) => date < bought);
  const [first] = early.toSorted((a, b) => a.row - b.row);
  if (first === undefined) return [];
  const count = early.length === 1 ? '1 trip' : `${early.length} trips`;
  return [
    {
      code: 'tally.miles',
      severity: 'note',
      path: ['miles', first.row, 'date'],
      message: `${count} before the purchase (${bought}) ${early.length === 1 ? 'is' : 'are'} in the miles`,
      hints: ['ask your preparer whether they count; the sheet adds them up with the others'],
    },
  ];
}

const noRate = ({ from, rows }: MileSpan): Diagnostic =>
  warning(
    ['miles', ...rows.slice(0, 1), 'date'],
    `no rate is known for trips in ${from.slice(0, 4)}, so their miles come to no money`,
    ['check the year; if it is right, ask your preparer for the rate'],
  );

function odometerWarnings(trips: readonly Trip[], odometer: Money['odometer']): Diagnostic[] {
  const groups = groupBy(trips, ({ date, vehicle }) => `${yearOf(date)} ${vehicleKey(vehicle)}`);
  const missing = [...groups.values()].flatMap((own) => {
    const [first] = own;
    const year = yearOf(first.date);
    const at = odometer.findIndex(
      (one) =>
        one.year === year &&
        (one.vehicle === undefined || vehicleKey(one.vehicle) === vehicleKey(first.vehicle)),
    );
    const reading = odometer[at];
    if (reading === undefined) return [noReading(first, year)];
    const driven = own
      .filter(({ date }) => reading.read?.latest === undefined || date <= reading.read.latest)
      .reduce((sum, trip) => sum + trip.thousandths, 0);
    return reading.end >= reading.start && driven > (reading.end - reading.start) * 1000
      ? [tooFar(at, year, reading, driven)]
      : [];
  });
  return [...missing, ...odometer.flatMap(backwards)];
}

const vehicleKey = (vehicle: string | undefined): string => nameKey(vehicle ?? '');

function noReading({ row, vehicle }: Trip, year: number): Diagnostic {
  const which = vehicle === undefined ? '' : ` of “${vehicle}”`;
  return warning(
    ['miles', row, 'date'],
    `there is no odometer reading${which} for ${year}, which a mileage log should have`,
    [
      `write under money: odometer:  - { year: ${year}, ${vehicle === undefined ? '' : `vehicle: ${typedInYaml(vehicle, true)}, `}start: 48210, end: 60114 }  with your own readings`,
    ],
  );
}

const tooFar = (
  at: number,
  year: number,
  { start, end, read }: Money['odometer'][number],
  driven: number,
): Diagnostic =>
  warning(
    ['money', 'odometer', at, 'end'],
    `the trips of ${year}${read === undefined ? '' : `, to the reading of ${printDate(read)},`} add up to more miles (${groupThousands(Math.ceil(driven / 1000))}) than the odometer ran (${groupThousands(end - start)})`,
    ['check the readings and the miles of the trips'],
  );

const backwards = ({ start, end, read }: Money['odometer'][number], at: number): Diagnostic[] =>
  end >= start
    ? []
    : [
        warning(
          ['money', 'odometer', at, 'end'],
          `the odometer stands lower ${read === undefined ? 'at the end of the year' : `at its reading of ${printDate(read)}`} than at ${read === undefined ? 'its beginning' : 'the beginning of the year'}`,
          ['check both readings'],
        ),
      ];
