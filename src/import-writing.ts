/**
 * Decisions go to the disk: the columns, then the rows and the list of what was seen, all read anew before. What each
 * file was when this run of the program first wrote into it stays as a copy in `imports/`.
 */
import { addRows, aloneInImports, type Copies, dropNote, leftOver, putSheet } from './archive/append-rows.js';
import { ChangedMeanwhile } from './archive/put-file.js';
import type { Diagnostic } from './diagnostics/diagnostic.js';
import { visible } from './diagnostics/report.js';
import { asInert } from './facts/inert-text.js';
import { COST_COLUMNS, type CostColumn } from './facts/ledger.js';
import type { HouseFolder } from './find-houses.js';
import type { Decision, NewRow } from './import-decision.js';
import { importDiskTrouble } from './import-disk-trouble.js';
import type { FoundHeadings } from './intake/bank-columns.js';
import { type CostSheet, readCostSheet, readPasteSheet } from './intake/bank-costs.js';
import { amountIn, dayIn, newLayout, rowIn, type SheetLayout } from './intake/bank-layout.js';
import {
  COLUMNS_FILE,
  type Mapping,
  mappingLines,
  readMapping,
  withMapping,
} from './intake/bank-mappings.js';
import {
  BECAME,
  numberedKey,
  readSeen,
  SEEN_FILE,
  type SeenFile,
  type SeenRow,
  withSeen,
} from './intake/seen-rows.js';

const PASTE_FILE = 'imports/new-rows.csv';
export const targetOf = (costs: CostSheet): string => (costs.kind === 'xlsx' ? PASTE_FILE : costs.name);

/** The note of a killed import is a file like any other. */
export const isSeenRow = (row: SeenRow): boolean =>
  typeof row === 'object' &&
  row !== null &&
  [row.date, row.text, row.reference, row.payee].every((one) => typeof one === 'string') &&
  /^\d{4}-\d{2}-\d{2}$/.test(row.date) &&
  Number.isSafeInteger(row.cents) &&
  Number.isSafeInteger(row.nth) &&
  BECAME.includes(row.became);

interface WrittenRows {
  readonly firstRow: number;
  readonly decisions: readonly Decision[];
  /** What the sheet has no column for. */
  readonly told: readonly string[];
}

type Written = WrittenRows | { readonly diagnostic: Diagnostic };

/** How often it is tried again when an editor saves the sheet at the same moment. */
const MOST_TRIES = 3;

export async function write(
  house: HouseFolder,
  head: FoundHeadings,
  mapping: Mapping,
  decisions: readonly Decision[],
  copies: Copies,
): Promise<Written> {
  const { folder, shown } = house;
  try {
    return await aloneInImports(folder, async (): Promise<Written> => {
      const unkept = await keepMapping(house, head, mapping, copies);
      let placed: WrittenRows | undefined;
      for (let tries = 1; ; tries += 1) {
        try {
          const now = await writeRows(house, decisions, copies, (rows) => {
            placed = rows;
          });
          // Of a second try, the rows may stand there since the first.
          const done = placed ?? now;
          return { ...done, told: [...(unkept === undefined ? [] : [unkept]), ...done.told] };
        } catch (thrown) {
          if (!(thrown instanceof ChangedMeanwhile) || tries >= MOST_TRIES) throw thrown;
        }
      }
    });
  } catch (thrown) {
    if (thrown instanceof Unplaced) return { diagnostic: thrown.diagnostic };
    if (thrown instanceof ChangedMeanwhile)
      return {
        diagnostic: {
          code: 'cli.import',
          severity: 'error',
          file: `${shown}/${thrown.message}`,
          message: `${shown}/${thrown.message} is being changed by another program, and is left as it is`,
          hints: ['close it there, and type the same command again'],
        },
      };
    return { diagnostic: importDiskTrouble(thrown, shown) };
  }
}

/** Rows that the sheet can't take. */
class Unplaced extends Error {
  readonly diagnostic: Diagnostic;
  constructor(diagnostic: Diagnostic) {
    super(diagnostic.message);
    this.diagnostic = diagnostic;
  }
}

/** The mapping goes first: it is true whatever happens to the rows. Answers with what is to be told if it can't be kept. */
async function keepMapping(
  { folder, shown }: HouseFolder,
  head: FoundHeadings,
  mapping: Mapping,
  copies: Copies,
): Promise<string | undefined> {
  // Another import may have settled the same columns while this one asked.
  const stored = await readMapping(folder, shown, head);
  if (stored.mapping !== undefined) return undefined;
  const next = stored.diagnostics.length > 0 ? undefined : withMapping(stored.bytes, head, mapping);
  if (next === undefined)
    return `${shown}/${COLUMNS_FILE} can’t be written into; to be asked no more, add below  files:\n${visibleLines(mappingLines(head, mapping))}`;
  await putSheet(folder, COLUMNS_FILE, stored.bytes, next, copies);
  return undefined;
}

const visibleLines = (text: string): string => text.split('\n').map(visible).join('\n');

/** Reads both files anew: the questions may have taken an hour. */
async function writeRows(
  { folder, shown }: HouseFolder,
  all: readonly Decision[],
  copies: Copies,
  placed: (rows: WrittenRows) => void,
): Promise<WrittenRows> {
  const left = (await leftOver<SeenRow>(folder)) ?? [];
  let seen = await readSeen(folder, shown);
  if (seen.diagnostics[0] !== undefined) throw new Unplaced(seen.diagnostics[0]);
  if (left.length > 0) seen = await putSeen(folder, shown, seen, left.filter(isSeenRow), copies);
  await dropNote(folder);
  // Another import may have come first.
  const known = new Set(seen.rows.map(numberedKey));
  const decisions = all.filter(({ row }) => !known.has(numberedKey(row)));
  if (decisions.length === 0) return { firstRow: 0, decisions, told: [] };
  const entries = decisions.map(({ row, became, payee }): SeenRow => ({ ...seenKey(row), became, payee }));
  const costs = await readCostSheet(folder, shown);
  if (costs.diagnostics[0] !== undefined) throw new Unplaced(costs.diagnostics[0]);
  const added = decisions.flatMap(({ cost }) => (cost === undefined ? [] : [cost]));
  if (added.length === 0) {
    await putSeen(folder, shown, seen, entries, copies);
    return { firstRow: 0, decisions, told: [] };
  }
  const target = costs.kind === 'xlsx' ? await pasteSheet(folder, costs) : costs;
  if (target.diagnostics[0] !== undefined) throw new Unplaced(target.diagnostics[0]);
  const layout = target.layout ?? newLayout(target.columns.length > 0 ? target.columns : COST_COLUMNS);
  const isNew = target.layout === undefined;
  const rows = added.map((cost) => rowIn(layout, costCells(cost, layout))).join('');
  const heading = isNew ? headingLine(layout) : '';
  const before = isNew ? markOf(target.bytes) : (target.bytes ?? NO_BYTES);
  const result = { firstRow: layout.rows + 1, decisions, told: withoutColumn(added, layout, target.name) };
  await addRows(
    folder,
    {
      sheet: target.name,
      was: target.bytes,
      next: Buffer.concat([before, Buffer.from(`${heading}${layout.isClosed ? '' : layout.lineEnd}${rows}`)]),
      added: rows,
      seen: entries,
    },
    async () => {
      placed(result);
      await putSeen(folder, shown, seen, entries, copies);
    },
    copies,
  );
  return result;
}

const NO_BYTES = Buffer.alloc(0);
const UTF8_MARK = Buffer.from('\uFEFF');

/** Of a file that holds blank lines alone: they go, so that the headings are row 1; a mark of UTF-8 stays. */
const markOf = (bytes: Buffer | undefined): Buffer =>
  bytes?.subarray(0, UTF8_MARK.length).equals(UTF8_MARK) === true ? UTF8_MARK : NO_BYTES;

/** What was said of rows and has no column in the sheet. The bank's text stands in imports/seen.csv all the same. */
function withoutColumn(
  added: readonly NonNullable<Decision['cost']>[],
  { at, rows }: SheetLayout<CostColumn>,
  name: string,
): string[] {
  return (['place', 'paid'] as const).flatMap((column) => {
    const lost = added.flatMap((cost, index) =>
      cost[column] === undefined || at.has(column) ? [] : [`row ${rows + 1 + index} ${cost[column]}`],
    );
    if (lost.length === 0) return [];
    const some = `${lost.slice(0, 12).join(', ')}${lost.length > 12 ? ', …' : ''}`;
    return [`${name} has no column headed ${column}, so this is not written: ${some}\n`];
  });
}

const seenKey = ({
  date,
  cents,
  text,
  reference,
  nth,
}: NewRow): Pick<SeenRow, 'date' | 'cents' | 'text' | 'reference' | 'nth'> => ({
  date,
  cents,
  text,
  reference,
  nth,
});

async function putSeen(
  folder: string,
  shown: string,
  file: SeenFile,
  rows: readonly SeenRow[],
  copies: Copies,
): Promise<SeenFile> {
  await putSheet(folder, SEEN_FILE, file.bytes, withSeen(file, rows), copies);
  return readSeen(folder, shown);
}

/** The file that rows for a workbook are pasted from, in the workbook's own columns. */
async function pasteSheet(folder: string, costs: CostSheet): Promise<CostSheet> {
  const found = await readPasteSheet(folder, PASTE_FILE);
  return { ...found, columns: costs.columns };
}

const headingLine = (layout: SheetLayout<CostColumn>): string =>
  rowIn(
    layout,
    Object.fromEntries([...layout.at.keys()].map((column) => [column, column])) as Record<CostColumn, string>,
  );

function costCells(
  cost: NonNullable<Decision['cost']>,
  { manner }: SheetLayout<CostColumn>,
): Partial<Record<CostColumn, string>> {
  return {
    date: dayIn(manner, cost.date),
    payee: asInert(cost.payee),
    what: asInert(cost.what),
    amount: amountIn(manner, cost.cents),
    bucket: cost.bucket ?? '',
    place: cost.place ?? '',
    paid: cost.paid ?? '',
    note: asInert(cost.note),
  };
}
