/** What a mileage log lacks. Source: `mileage-log` in tables/mileage.yaml. */
import type { Diagnostic } from '../../diagnostics/diagnostic.js';
import type { Money } from '../../facts/house.js';
import type { Trip } from '../../facts/ledger.js';
import { groupThousands } from '../../facts/written-number.js';
import { yearOf } from './day-number.js';
import { groupBy } from './group-by.js';
import type { MileSpan } from './money-tally.js';

export function mileWarnings(
  trips: readonly Trip[],
  spans: readonly MileSpan[],
  odometer: Money['odometer'],
): Diagnostic[] {
  return [
    ...spans.flatMap((span) => (span.rate === undefined ? [noRate(span)] : [])),
    ...trips.flatMap(emptyCells),
    ...odometerWarnings(trips, odometer),
  ];
}

const warning = (path: Diagnostic['path'], message: string, hints: readonly string[]): Diagnostic => ({
  code: 'tally.miles',
  severity: 'warning',
  ...(path === undefined ? {} : { path }),
  message,
  hints,
});

const noRate = ({ from, rows }: MileSpan): Diagnostic =>
  warning(
    ['miles', rows[0] ?? 1, 'date'],
    `no rate is known for trips in ${from.slice(0, 4)}, so their miles come to no money`,
    ['check the year; if it is right, ask your preparer for the rate'],
  );

function emptyCells(trip: Trip): Diagnostic[] {
  return [
    ...(trip.to.trim() === ''
      ? [warning(['miles', trip.row, 'to'], 'this trip has no destination', ['write where it went'])]
      : []),
    ...(trip.purpose.trim() === ''
      ? [warning(['miles', trip.row, 'purpose'], 'this trip has no purpose', ['write what it was for'])]
      : []),
    ...(trip.thousandths <= 0
      ? [
          warning(['miles', trip.row, 'miles'], 'this trip has no miles', [
            'write how far it was, there and back',
          ]),
        ]
      : []),
  ];
}

function odometerWarnings(trips: readonly Trip[], odometer: Money['odometer']): Diagnostic[] {
  const groups = groupBy(trips, ({ date, vehicle }) => `${yearOf(date)} ${vehicleKey(vehicle)}`);
  const missing = [...groups.values()].flatMap((own) => {
    const first = own[0];
    if (first === undefined) return [];
    const year = yearOf(first.date);
    const at = odometer.findIndex(
      (one) =>
        one.year === year &&
        (one.vehicle === undefined || vehicleKey(one.vehicle) === vehicleKey(first.vehicle)),
    );
    const reading = odometer[at];
    if (reading === undefined) return [noReading(first, year)];
    const driven = own.reduce((sum, trip) => sum + trip.thousandths, 0);
    return reading.end >= reading.start && driven > (reading.end - reading.start) * 1000
      ? [tooFar(at, year, reading, driven)]
      : [];
  });
  return [...missing, ...odometer.flatMap(backwards)];
}

const vehicleKey = (vehicle: string | undefined): string =>
  (vehicle ?? '').toLowerCase().replace(/\s+/g, ' ').trim();

function noReading({ row, vehicle }: Trip, year: number): Diagnostic {
  const which = vehicle === undefined ? '' : ` of “${vehicle}”`;
  return warning(
    ['miles', row, 'date'],
    `there is no odometer reading${which} for ${year}, which a mileage log should have`,
    [
      `write under money: odometer:  - { year: ${year}, ${vehicle === undefined ? '' : `vehicle: ${vehicle}, `}start: 48210, end: 60114 }  with your own readings`,
    ],
  );
}

const tooFar = (
  at: number,
  year: number,
  { start, end }: Money['odometer'][number],
  driven: number,
): Diagnostic =>
  warning(
    ['money', 'odometer', at, 'end'],
    `the trips of ${year} add up to more miles (${groupThousands(Math.ceil(driven / 1000))}) than the odometer ran (${groupThousands(end - start)})`,
    ['check the readings and the miles of the trips'],
  );

const backwards = ({ start, end }: Money['odometer'][number], at: number): Diagnostic[] =>
  end >= start
    ? []
    : [
        warning(
          ['money', 'odometer', at, 'end'],
          'the odometer stands lower at the end of the year than at its beginning',
          ['check both readings'],
        ),
      ];
