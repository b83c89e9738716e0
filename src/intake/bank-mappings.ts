/**
 * Which column is which in the files of each bank: `imports/columns.yaml` of a house, known by the exact list of
 * headings. Written by the program, and to be corrected by hand.
 */
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import { BANK_WAYS, type PaymentWay } from '../facts/ledger.js';
import { typedInYaml } from '../facts/typed-in-yaml.js';
import {
  type BankColumns,
  COLUMN_WORDS,
  columnsFrom,
  type FoundHeadings,
  type NamedColumns,
  namesOf,
} from './bank-columns.js';
import { readPlainFile } from './read-plain-file.js';
import { safePath } from './safe-path.js';
import { readYaml } from './yaml.js';

export interface Mapping {
  readonly columns: BankColumns;
  /** How it is paid from this account, where that was said. */
  readonly paid: PaymentWay | undefined;
}

export interface MappingsFile {
  /** Undefined if there is no file yet. */
  readonly bytes: Buffer | undefined;
  /** The mapping of the headings that were asked for. */
  readonly mapping: Mapping | undefined;
  readonly diagnostics: readonly Diagnostic[];
}

/** The columns of a thousand banks stay far below this. */
const MOST_BYTES = 2_000_000;

export const COLUMNS_FILE = 'imports/columns.yaml';
type Head = Pick<FoundHeadings, 'headings' | 'width'>;

/** Looks up the mapping of a file's headings. `shown`: the house folder as the writer would type it. */
export async function readMapping(folder: string, shown: string, head: Head): Promise<MappingsFile> {
  const file = `${shown}/${COLUMNS_FILE}`;
  const safe = await safePath(folder, COLUMNS_FILE);
  const nothing = { bytes: undefined, mapping: undefined };
  if (!safe.ok && safe.why === 'closed') return { ...nothing, diagnostics: [closed(file, 'EACCES')] };
  if (!safe.ok)
    return safe.why === 'absent'
      ? { ...nothing, diagnostics: [] }
      : {
          ...nothing,
          diagnostics: [
            {
              code: 'cli.import',
              severity: 'error',
              file,
              message: `${file} is no plain file of this folder`,
              hints: ['move it away'],
            },
          ],
        };
  const bytes = await readPlainFile(safe.absolute, MOST_BYTES).catch(
    (thrown: NodeJS.ErrnoException) => thrown,
  );
  return bytes instanceof Error
    ? { ...nothing, diagnostics: [closed(file, bytes.code)] }
    : mappingFrom(bytes, file, head);
}

/** It is there, and the system does not give its bytes. */
const closed = (file: string, code = 'unknown reason'): Diagnostic => ({
  code: 'cli.import',
  severity: 'error',
  file,
  message: `${file} can’t be read (${code})`,
  hints: ['check who may read it'],
});

const AGAIN = 'correct it, or take the whole entry out: the columns are then asked for again';

export function mappingFrom(bytes: Buffer, file: string, head: Head): MappingsFile {
  const { data, diagnostics, placeOf } = readYaml(bytes.toString('utf8'), file);
  if (diagnostics.length > 0) return { bytes, mapping: undefined, diagnostics };
  const files = Array.isArray(data.files) ? (data.files as unknown[]) : [];
  const index = files.findIndex((one) => isFor(one, head));
  if (index < 0) return { bytes, mapping: undefined, diagnostics: [] };
  const entry = files[index] as Readonly<Record<string, unknown>>;
  const refuse = (word: string, message: string, ...hints: string[]): MappingsFile => {
    const place = placeOf(['files', index, word]) ?? placeOf(['files', index, 'date']);
    return {
      bytes,
      mapping: undefined,
      diagnostics: [
        {
          code: 'cli.import',
          severity: 'error',
          ...(place === undefined ? { file } : { place }),
          message,
          hints: [...hints, AGAIN],
        },
      ],
    };
  };
  const named: NamedColumns = {};
  for (const word of COLUMN_WORDS) {
    const value = entry[word];
    if (value !== undefined && value !== null) named[word] = String(value);
  }
  const read = columnsFrom(named, head);
  if (!read.ok)
    return refuse(
      COLUMN_WORDS.find((word) => read.problem.endsWith(` for ${word}`)) ?? 'date',
      read.problem,
      ...read.hints,
    );
  const paidIs = entry['paid-is'];
  if (paidIs !== 'negative' && paidIs !== 'positive')
    return refuse(
      'paid-is',
      'paid-is says whether what you paid has a minus',
      'write  paid-is: negative  or  paid-is: positive',
    );
  const days = entry.days;
  if (days !== undefined && days !== 'month-first' && days !== 'day-first')
    return refuse(
      'days',
      'days says which comes first in 3/4/2026',
      'write  days: month-first  or  days: day-first',
    );
  const paid = BANK_WAYS.find((way) => way === entry.paid);
  if (entry.paid !== undefined && paid === undefined)
    return refuse('paid', 'this is no way of paying', `write one of: ${BANK_WAYS.join(', ')}`);
  return { bytes, mapping: { columns: { ...read.columns, paidIs, days }, paid }, diagnostics: [] };
}

function isFor(entry: unknown, { headings, width }: Head): boolean {
  if (typeof entry !== 'object' || entry === null) return false;
  const { headings: written, columns } = entry as Readonly<Record<string, unknown>>;
  if (headings === undefined) return written === undefined && Number(columns) === width;
  return (
    Array.isArray(written) &&
    written.length === headings.length &&
    headings.every((one, at) => String(written[at]) === one)
  );
}

const OPENING = `# How the files of your banks and cards are read, one entry for each list of headings.
# Written by  sillplate costs import ; correct what is wrong. Take an entry out, and its columns are asked for again.
#   date, payee, memo, amount   the column's heading, or its number as  column 3
#   debit, credit               instead of amount: what was paid, and what came in
#   sign                        beside amount: the column that says debit or credit
#   paid-is                     negative: what you paid has a minus; positive: it has none
#   paid                        card, check, transfer, cash or network
#   days                        month-first: 3/4/2026 is March 4; day-first: it is April 3
files:
`;

/** The entry of a mapping as it stands in the file. */
export function mappingLines({ headings, width }: Head, { columns, paid }: Mapping): string {
  // A heading that YAML reads as a number or a truth value gets its quotes.
  const value = (text: string): string => {
    const typed = typedInYaml(text, true);
    return typed === text ? JSON.stringify(text) : typed;
  };
  const names = namesOf(columns, headings);
  return [
    headings === undefined ? `  - columns: ${width}` : `  - headings: [${headings.map(value).join(', ')}]`,
    ...COLUMN_WORDS.flatMap((word) =>
      names[word] === undefined ? [] : [`    ${word}: ${value(names[word])}`],
    ),
    `    paid-is: ${columns.paidIs}`,
    ...(paid === undefined ? [] : [`    paid: ${paid}`]),
    ...(columns.days === undefined ? [] : [`    days: ${columns.days}`]),
    '',
  ].join('\n');
}

/** The file with an entry more; undefined where it would not be read back as it was meant. */
export function withMapping(bytes: Buffer | undefined, head: Head, mapping: Mapping): Buffer | undefined {
  const before = bytes?.toString('utf8') ?? '';
  const lineEnd = before.includes('\r\n') ? '\r\n' : '\n';
  const entry = mappingLines(head, mapping).replaceAll('\n', lineEnd);
  const begun = before.trim() === '' ? OPENING : before.endsWith('\n') ? before : before + lineEnd;
  const made = Buffer.from(begun + entry);
  const read = mappingFrom(made, '', head).mapping;
  return JSON.stringify(read) === JSON.stringify(mapping) ? made : undefined;
}
