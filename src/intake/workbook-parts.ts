/**
 * A look into a workbook before it is read: whether it unfolds into more than any house needs, and which of its cells
 * hold a formula that failed. The reader of cells takes those for empty, and an empty cell is another fact.
 */
import yauzl from 'yauzl';
import { MOST_COLUMNS, MOST_ROWS } from './sheet-rows.js';

interface FailedCell {
  readonly row: number;
  /** From 0. */
  readonly column: number;
  /** Such as #DIV/0!; empty for a formula that was never worked out. */
  readonly sign: string;
}

export type WorkbookParts =
  | { readonly failed: ReadonlyMap<string, readonly FailedCell[]> }
  | { readonly why: 'too big' | 'broken' };

const MOST_UNFOLDED = 64_000_000;
/** Parts of one workbook: a few for each sheet, and its pictures. */
const MOST_PARTS = 2_000;

export async function lookIntoWorkbook(bytes: Buffer): Promise<WorkbookParts> {
  const parts = await readParts(bytes).catch(() => undefined);
  if (parts === undefined) return { why: 'broken' };
  if (parts === 'too big') return { why: 'too big' };
  const failed = new Map<string, FailedCell[]>();
  const targets = new Map(
    [...(parts.get('xl/_rels/workbook.xml.rels') ?? '').matchAll(/<Relationship\b[^>]*>/g)].map(
      ({ 0: tag }) => [attribute(tag, 'Id'), attribute(tag, 'Target').replace(/^\/?(?:xl\/)?/, 'xl/')],
    ),
  );
  for (const { 0: tag } of (parts.get('xl/workbook.xml') ?? '').matchAll(/<sheet\b[^>]*>/g)) {
    const xml = parts.get(targets.get(attribute(tag, 'r:id')) ?? '') ?? '';
    if (isTooLarge(xml)) return { why: 'too big' };
    failed.set(attribute(tag, 'name'), failedCells(xml));
  }
  return { failed };
}

const attribute = (tag: string, name: string): string =>
  unescaped(new RegExp(`\\s${name}\\s*=\\s*(?:"([^"]*)"|'([^']*)')`).exec(tag)?.slice(1).join('') ?? '');

const SIGNS: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', apos: "'" };
const unescaped = (text: string): string =>
  text.replace(/&(amp|lt|gt|quot|apos);/g, (_all, name) => SIGNS[name] ?? '');

/** The XML parts that tell of sheets, by name. */
async function readParts(bytes: Buffer): Promise<Map<string, string> | 'too big'> {
  const zip = await yauzl.fromBufferPromise(bytes);
  const parts = new Map<string, string>();
  if (zip.entryCount > MOST_PARTS) return 'too big';
  let unfolded = 0;
  for await (const entry of zip.eachEntry()) {
    unfolded += entry.uncompressedSize;
    if (unfolded > MOST_UNFOLDED) return 'too big';
    if (!/^xl\/(?:workbook\.xml|_rels\/workbook\.xml\.rels|worksheets\/[^/]+\.xml)$/.test(entry.fileName))
      continue;
    const chunks: Buffer[] = [];
    for await (const chunk of await zip.openReadStreamPromise(entry)) chunks.push(chunk as Buffer);
    parts.set(entry.fileName, Buffer.concat(chunks).toString('utf8'));
  }
  return parts;
}

function isTooLarge(xml: string): boolean {
  // Rows are filled up to the last column, so one stray value far to the right would unfold into millions of cells.
  for (const { 1: letters } of xml.matchAll(/<c\s[^>]*?r="([A-Z]{2,3})\d+"[^>/]*>/g))
    if (columnNumber(letters ?? '') >= MOST_COLUMNS) return true;
  const last = xml.lastIndexOf('<row ');
  const numbered = last < 0 ? 0 : Number(/\sr="(\d+)"/.exec(xml.slice(last, last + 200))?.[1] ?? 0);
  return numbered > MOST_ROWS;
}

/** A is 0, AA is 26. */
function columnNumber(letters: string): number {
  let sum = 0;
  for (const letter of letters) sum = sum * 26 + letter.charCodeAt(0) - 64;
  return sum - 1;
}

function failedCells(xml: string): FailedCell[] {
  const cells: FailedCell[] = [];
  const add = (tag: string, sign: string): void => {
    const [, letters = '', row = ''] = /r="([A-Z]+)(\d+)"/.exec(tag) ?? [];
    cells.push({ row: Number(row), column: columnNumber(letters), sign });
  };
  if (xml.includes('t="e"'))
    for (const [tag, inner = ''] of xml.matchAll(/<c\s[^>]*t="e"[^>]*>(.*?)<\/c>/gs))
      add(tag, unescaped(/<v>([^<]*)<\/v>/.exec(inner)?.[1] ?? '#ERROR!'));
  // A formula without its result: the program that wrote it did not reckon.
  for (const [tag] of xml.matchAll(/<c\s[^>]*>(?:<f\b[^>]*>[^<]*<\/f>|<f\b[^>]*\/>)(?:<v\s*\/>)?<\/c>/g))
    add(tag, '');
  return cells;
}
