/**
 * What was paid, driven and worked, as files for other programs: CSV, a journal, JSON with its schema, a workbook.
 *
 * The house file's alone. The same house gives the same files, whatever day it is and whoever makes them.
 */
import { costsCsv, hoursCsv, milesCsv } from './ledger-csv.js';
import { journalText } from './ledger-journal.js';
import { type LedgerFileOrder, ledgerJson, ledgerSchemaJson, SCHEMA_NAME } from './ledger-json.js';
import { ledgerWorkbook } from './ledger-workbook.js';
import type { PacketExport } from './packet.js';

const CSV = 'text/csv';
const JSON_TYPE = 'application/json';
const XLSX = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet';

/** The files, in the order in which they are listed; none for a house without a row or a sale. */
export function ledgerExports(order: LedgerFileOrder): PacketExport[] {
  const { folder, house, money } = order;
  const { costs, trips, hours } = money.ledger;
  if (costs.length + trips.length + hours.length === 0 && money.sale === undefined) return [];
  const rows: PacketExport[] = [
    { file: 'ledger.csv', title: 'Costs, row by row (CSV)', mediaType: CSV, text: costsCsv(costs) },
  ];
  if (trips.length > 0)
    rows.push({
      file: 'miles.csv',
      title: 'Miles, trip by trip (CSV)',
      mediaType: CSV,
      text: milesCsv(trips),
    });
  if (hours.length > 0)
    rows.push({ file: 'hours.csv', title: 'Hours, row by row (CSV)', mediaType: CSV, text: hoursCsv(hours) });
  return [
    ...rows,
    {
      file: `${folder}.journal`,
      title: 'Costs in double entry (plain-text journal)',
      mediaType: 'text/plain',
      text: journalText(folder, house, costs, money.sale),
    },
    {
      file: 'ledger.json',
      title: 'Costs and all that was worked out from them, for programs (JSON)',
      mediaType: JSON_TYPE,
      text: ledgerJson(order),
    },
    {
      file: SCHEMA_NAME,
      title: 'What every word of ledger.json means (JSON Schema)',
      mediaType: 'application/schema+json',
      text: ledgerSchemaJson(),
    },
    {
      file: 'ledger.xlsx',
      title: 'Costs, worksheet, payees and dates as a workbook (XLSX)',
      mediaType: XLSX,
      workbook: () => ledgerWorkbook(house, money),
    },
  ];
}
