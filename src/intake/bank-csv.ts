/** CSV of an import: read like the sheets of a house, but its rows are no facts and have no path. */
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import { type CsvOptions, type CsvRead, readCsv } from './csv-cells.js';

/** `file`: as the writer would type it. */
export function readPlainCsv(bytes: Buffer, name: string, file: string, options?: CsvOptions): CsvRead {
  return readCsv(bytes, name, file, undefined, options);
}

/** A diagnostic about a file that is no part of the facts. */
export function withoutPath({ path: _none, ...rest }: Diagnostic): Diagnostic {
  return rest;
}
