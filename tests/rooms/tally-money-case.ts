/** A house with made rows, worked out: what the tests of the money tally look at. */
import type { Diagnostic } from '../../src/diagnostics/diagnostic.js';
import type { Role } from '../../src/facts/bucket.js';
import type { House } from '../../src/facts/house.js';
import { type CostRow, EMPTY_LEDGER, type HoursRow, type Trip } from '../../src/facts/ledger.js';
import { deriveAreas } from '../../src/tally/area.js';
import { listImprovements } from '../../src/tally/improvements.js';
import { deriveMoney } from '../../src/tally/money/derive-money.js';
import type { MoneyTally, SheetLine, Worksheet } from '../../src/tally/money/money-tally.js';
import { houseFrom, type PartialSpec } from './house-from.js';

export type CostWords = Partial<CostRow> & Pick<CostRow, 'cents' | 'bucket'>;

/** A row with only what the test is about; numbers count from 2, as in a sheet. */
export const costRows = (words: readonly CostWords[]): CostRow[] =>
  words.map((one, at) => ({
    row: at + 2,
    date: '2026-03-01',
    payee: `Payee ${at}`,
    what: `thing ${at}`,
    salesTax: undefined,
    place: undefined,
    paid: 'check',
    receipt: undefined,
    taxYear: undefined,
    note: undefined,
    ...one,
  }));

export const trips = (words: readonly (Partial<Trip> & Pick<Trip, 'date' | 'thousandths'>)[]): Trip[] =>
  words.map((one, at) => ({
    row: at + 2,
    from: 'home',
    to: 'the house',
    purpose: 'work',
    tolls: 0,
    vehicle: undefined,
    ...one,
  }));

export const hoursRows = (words: readonly (Partial<HoursRow> & Pick<HoursRow, 'hundredths'>)[]): HoursRow[] =>
  words.map((one, at) => ({
    row: at + 2,
    date: '2026-03-01',
    who: 'owner',
    what: `work ${at}`,
    place: undefined,
    ...one,
  }));

export interface Worked {
  readonly house: House;
  readonly money: MoneyTally;
  readonly diagnostics: readonly Diagnostic[];
}

export function workOut(
  spec: PartialSpec,
  sheets: {
    readonly costs?: readonly CostRow[];
    readonly trips?: readonly Trip[];
    readonly hours?: readonly HoursRow[];
  },
  asOf = '2026-11-20',
): Worked {
  const house = houseFrom(spec);
  const ledger = {
    ...EMPTY_LEDGER,
    costs: sheets.costs ?? [],
    trips: sheets.trips ?? [],
    hours: sheets.hours ?? [],
    sheets: { costs: sheets.costs && 'costs.csv', miles: undefined, hours: undefined },
  };
  const { areas } = deriveAreas(house);
  return {
    house,
    ...deriveMoney({ house, ledger, areas, improvements: listImprovements(house).done, asOf }),
  };
}

export function sheetOf(money: MoneyTally, role: Role): Worksheet {
  const sheet = money.worksheets.find((one) => one.role === role);
  if (sheet === undefined) throw new Error(`there is no sheet for ${role}`);
  return sheet;
}

/** The line with that id; a test that names none fails. */
export function lineOf(money: MoneyTally, role: Role, id: string): SheetLine {
  const lines = sheetOf(money, role).parts.flatMap((part) => part.lines);
  const found = lines.find((line) => line.id === id);
  if (found === undefined)
    throw new Error(
      `the sheet for ${role} has no line ${id}, only ${lines.map((line) => line.id).join(', ')}`,
    );
  return found;
}

export const centsOf = (money: MoneyTally, role: Role, id: string): number | undefined =>
  lineOf(money, role, id).cents;

export const told = (list: readonly Diagnostic[], code: string): string[] =>
  list
    .filter((one) => one.code === code)
    .map((one) => `${one.severity} ${(one.path ?? []).join('.')} ${one.message}`);
