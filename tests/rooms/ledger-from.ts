/** Ledgers for tests, through the same door as a written one: files in a folder that is gone afterwards. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { type Located, locate } from '../../src/diagnostics/report.js';
import type { House } from '../../src/facts/house.js';
import type { Ledger } from '../../src/facts/ledger.js';
import { readLedger } from '../../src/intake/read-ledger.js';
import { houseFrom } from './house-from.js';

/** A house with something of everything that a row can name. */
export const rowHouse = (): House =>
  houseFrom({
    levels: [{ id: 'main', name: 'Main level', grade: 'above' }],
    structures: [{ id: 'garage', is: 'garage' }],
    rooms: [
      { id: 'kitchen', level: 'main', use: 'kitchen' },
      { id: 'hall', level: 'main', use: 'hall' },
    ],
    systems: [{ id: 'furnace', is: 'furnace' }],
    work: [{ id: 'hall-floor', what: 'floor of the hall', did: 'new' }],
    documents: [
      { id: 'receipt-031', what: 'paint', kind: 'receipt', file: 'receipt-031.pdf' },
      { id: 'receipt-032', what: 'plank', kind: 'receipt' },
      { id: 'deed', what: 'deed', kind: 'record' },
    ],
  });

export interface LedgerFrom {
  readonly ledger: Ledger;
  readonly located: readonly Located[];
  /** `severity code file:line:column message`, one line each; the place is left out where there is none. */
  readonly said: readonly string[];
  readonly hints: readonly string[];
}

/** `files`: name in the house folder → what stands in it. */
export async function ledgerFrom(
  files: Readonly<Record<string, string | Uint8Array>>,
  house: House = rowHouse(),
): Promise<LedgerFrom> {
  const folder = mkdtempSync(path.join(tmpdir(), 'sillplate-ledger-'));
  try {
    for (const [name, bytes] of Object.entries(files)) writeFileSync(path.join(folder, name), bytes);
    const { ledger, diagnostics, places } = await readLedger(folder, 'house', house);
    const located = locate(diagnostics, places);
    return {
      ledger,
      located,
      said: located.map(
        ({ diagnostic: { severity, code, message, file }, place }) =>
          `${severity} ${code} ${place === undefined ? file : `${place.file}:${place.line}:${place.column}`} ${message}`,
      ),
      hints: located.flatMap(({ diagnostic }) => diagnostic.hints),
    };
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** Rows under the usual headings of a list. */
export const costs = (...rows: readonly string[]): Record<string, string> => ({
  'costs.csv': ['date,payee,what,amount,bucket,place,paid,receipt,tax year,sales tax,note', ...rows, ''].join(
    '\n',
  ),
});
export const miles = (...rows: readonly string[]): Record<string, string> => ({
  'miles.csv': ['date,from,to,purpose,miles,tolls,vehicle,note', ...rows, ''].join('\n'),
});
export const hours = (...rows: readonly string[]): Record<string, string> => ({
  'hours.csv': ['date,who,what,place,hours,note', ...rows, ''].join('\n'),
});
