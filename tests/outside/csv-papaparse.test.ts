/**
 * CSV as papaparse understands it: what it writes is read here to the same cells, and what csv-stringify writes of
 * ledgers is parsed by it to the same cells.
 */
import { stringify } from 'csv-stringify/sync';
import fc from 'fast-check';
import papaparse from 'papaparse';
import { describe, expect, it } from 'vitest';
import { readCsv } from '../../src/intake/csv-cells.js';

const cell = fc.oneof(
  fc.string({ unit: 'grapheme', maxLength: 12 }),
  fc.string({
    unit: fc.constantFrom('"', ',', ';', '\t', '\n', '\r', ' ', 'é', '🏠', "'", '='),
    maxLength: 8,
  }),
);

/** A table under headings, which tell the delimiter; NUL is refused by design, a lone half of a sign is no text. */
const table = fc.integer({ min: 2, max: 5 }).chain((width) =>
  fc
    .array(
      fc.array(
        cell.filter((text) => !/[\0\p{Cs}]/u.test(text)),
        { minLength: width, maxLength: width },
      ),
      { maxLength: 6 },
    )
    .map((rows) => [['date', 'payee', 'what', 'amount', 'bucket'].slice(0, width), ...rows]),
);

describe('papaparse', () => {
  it.each([
    [',', '\n'],
    [';', '\r\n'],
    ['\t', '\n'],
    [',', '\r\n'],
  ])('writes %j with %j, and it is read to the same cells', (delimiter, newline) => {
    fc.assert(
      fc.property(table, fc.boolean(), (rows, quotes) => {
        const text = papaparse.unparse(rows, { delimiter, newline, quotes });
        const { sheet, diagnostics } = readCsv(Buffer.from(text), 'costs.csv', 'costs.csv', 'costs');
        expect(diagnostics).toEqual([]);
        expect(sheet?.rows).toEqual(rows);
      }),
      { numRuns: 500, seed: 2_608 },
    );
  });

  it('parses what csv-stringify writes to the same cells, and so is it read here', () => {
    fc.assert(
      fc.property(table, fc.constantFrom(',', ';', '\t'), fc.boolean(), (rows, delimiter, bom) => {
        const text = stringify(rows, { delimiter, bom, record_delimiter: '\r\n', quoted_match: /[\r\n]/ });
        const parsed = papaparse.parse<string[]>(text.replace(/^\uFEFF/, ''), { delimiter, newline: '\r\n' });
        expect(parsed.errors).toEqual([]);
        // It takes the line break behind the last row for a row of its own.
        expect(parsed.data.slice(0, -1)).toEqual(rows);
        expect(readCsv(Buffer.from(text), 'costs.csv', 'costs.csv', 'costs').sheet?.rows).toEqual(rows);
      }),
      { numRuns: 500, seed: 2_608 },
    );
  });
});
