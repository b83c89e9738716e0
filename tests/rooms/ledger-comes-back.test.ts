/** A house's rows, written as CSV and read again by the program's own reader, are the same rows. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, describe, expect, it } from 'vitest';
import { readHouse } from '../../src/intake/read-house.js';
import { readLedger } from '../../src/intake/read-ledger.js';
import { costsCsv, hoursCsv, milesCsv } from '../../src/packet/ledger-csv.js';

const content = fileURLToPath(new URL('../../content/', import.meta.url));

const made: string[] = [];
afterEach(() => {
  for (const folder of made.splice(0)) rmSync(folder, { recursive: true, force: true });
});

describe('rows that were written as CSV', () => {
  it.each(['quarry-road', 'larkspur-court'])('of %s come back', async (name) => {
    const { found } = await readHouse(path.join(content, name), `content/${name}`, { ledger: true });
    if (found?.ledger === undefined) throw new Error(`${name} has no ledger`);
    const { costs, trips, hours } = found.ledger;
    expect(costs.length).toBeGreaterThan(20);
    expect(trips.length).toBeGreaterThan(3);
    expect(hours.length).toBeGreaterThan(3);
    const folder = mkdtempSync(path.join(tmpdir(), 'ledger-'));
    made.push(folder);
    writeFileSync(path.join(folder, 'costs.csv'), costsCsv(costs));
    writeFileSync(path.join(folder, 'miles.csv'), milesCsv(trips));
    writeFileSync(path.join(folder, 'hours.csv'), hoursCsv(hours));
    const back = await readLedger(folder, 'back', found.house);
    expect(back.ledger.costs).toEqual(costs);
    expect(back.ledger.trips).toEqual(trips);
    expect(back.ledger.hours).toEqual(hours);
    expect(back.diagnostics.filter(({ severity }) => severity === 'error')).toEqual([]);
  });
});
