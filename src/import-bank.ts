/**
 * A bank's file goes into the costs of a house: the walk.
 *
 * Reads the file, says what it understood, leaves out what was seen before, decides about each new row (with the writer,
 * or by history alone), and writes each answer as it is given, so that a closed window costs one row. Start reading at `importBank`.
 */
import path from 'node:path';
import { type Copies, dropLeftOfImports } from './archive/append-rows.js';
import type { Diagnostic } from './diagnostics/diagnostic.js';
import { checkHouse } from './facts/check-house.js';
import type { HouseFolder } from './find-houses.js';
import { type ImportOptions, settleColumns, tellHead } from './import-columns.js';
import { decideRows } from './import-deciding.js';
import type { Decision } from './import-decision.js';
import { readKnown } from './import-known.js';
import type { Asker } from './import-questions.js';
import { write } from './import-writing.js';
import { findHeadings } from './intake/bank-columns.js';
import { readBankFile } from './intake/bank-file.js';
import { readMapping } from './intake/bank-mappings.js';
import type { BankRows } from './intake/bank-rows.js';
import { placeReader } from './intake/cell-words.js';
import { readFacts } from './intake/read-facts.js';

export interface Imported {
  readonly diagnostics: readonly Diagnostic[];
  /** Undefined if nothing was decided. */
  readonly result: ImportResult | undefined;
}

export interface ImportResult {
  readonly house: string;
  /** The bank's file, as the writer typed it. */
  readonly bank: string;
  /** The file that rows were added to, as the writer would type it. */
  readonly sheet: string;
  /** Rows go into a file to paste from, since the costs are this workbook. */
  readonly pasteInto: string | undefined;
  /** What the sheet was before lies there, as the writer would type it; undefined where nothing was written over. */
  readonly copy: string | undefined;
  readonly isDry: boolean;
  readonly decisions: readonly Decision[];
  /** Number of the row in `sheet` that an added one has; empty where nothing is written. */
  readonly sheetRows: ReadonlyMap<Decision, number>;
  readonly seenBefore: number;
  /** New rows that were not asked about, since the writer stopped. */
  readonly notAsked: number;
  readonly passedOver: BankRows['passedOver'];
}

const failed = (...diagnostics: readonly Diagnostic[]): Imported => ({ diagnostics, result: undefined });

/**
 * `asker` is undefined where nobody is asked. `say` prints what is told on the way. Nothing is written with an error, or
 * where the writer ends the questions before the columns are settled.
 */
export async function importBank(
  bank: { readonly file: string; readonly shown: string },
  house: HouseFolder,
  options: ImportOptions,
  asker: Asker | undefined,
  say: (text: string) => void,
): Promise<Imported> {
  const { sheet, diagnostics } = await readBankFile(bank.file, bank.shown);
  if (sheet === undefined || diagnostics.length > 0) return failed(...diagnostics);
  const head = findHeadings(sheet.rows);
  tellHead(sheet, head, bank.shown, say);
  const facts = await readFacts(house.folder, house.shown);
  if (!('spec' in facts)) return failed(...facts.diagnostics);
  const stored = await readMapping(house.folder, house.shown, head);
  if (stored.diagnostics.length > 0) return failed(...stored.diagnostics);
  const settled = await settleColumns(sheet, head, bank.shown, stored, options, asker, say);
  if ('diagnostics' in settled) return failed(...settled.diagnostics);
  const { mapping, rows } = settled;

  const known = await readKnown(house);
  if (known.diagnostics.length > 0) return failed(...known.diagnostics);
  const { house: checked } = checkHouse(facts.spec, facts.written);
  // An order that was only assumed is not kept: it would be taken for said, and a later file refused by it.
  const days = rows.daysAreAssumed ? undefined : (rows.days ?? mapping.columns.days);
  const sheetRows = new Map<Decision, number>();
  const told = new Set<string>();
  const kept = new Set<Decision>();
  const copies: Copies = new Map();
  /** Puts decisions to the disk. Answers with what went wrong. */
  const keep = async (decisions: readonly Decision[]): Promise<Diagnostic | undefined> => {
    if (options.dryRun) return undefined;
    const written = await write(
      house,
      head,
      { ...mapping, columns: { ...mapping.columns, days } },
      decisions,
      copies,
    );
    if ('diagnostic' in written) return written.diagnostic;
    for (const [index, one] of written.decisions.filter(({ cost }) => cost !== undefined).entries())
      sheetRows.set(one, written.firstRow + index);
    for (const one of written.told) told.add(one);
    for (const one of written.decisions) kept.add(one);
    return undefined;
  };
  const decided = await decideRows(
    rows,
    known,
    mapping.paid,
    checked && placeReader(checked, facts.spec),
    asker,
    keep,
  );
  if (kept.size === 0 && !options.dryRun) await dropLeftOfImports(house.folder);
  for (const one of told) say(one);
  const decisions = decided.decisions.filter((one) => options.dryRun || kept.has(one));
  if (decided.trouble !== undefined && decisions.length === 0) return failed(decided.trouble);
  const copy = copies.get(known.target);
  const result: ImportResult = {
    house: house.shown,
    bank: bank.shown,
    sheet: path.posix.join(house.shown, known.target),
    pasteInto: known.costs.kind === 'xlsx' ? known.costs.name : undefined,
    copy: copy === undefined ? undefined : path.posix.join(house.shown, copy),
    isDry: options.dryRun,
    decisions,
    sheetRows,
    // Another import of the same rows may have come first.
    seenBefore: decided.seenBefore + decided.decisions.length - decisions.length,
    notAsked: decided.notAsked,
    passedOver: rows.passedOver,
  };
  return { diagnostics: decided.trouble === undefined ? [] : [decided.trouble], result };
}
