/**
 * A look into a workbook before it is read: whether it unfolds into more than any house needs, and which of its cells
 * hold a formula that failed. The reader of cells takes those for empty, and an empty cell is another fact.
 */
import yauzl from 'yauzl';
import { MOST_CELLS, MOST_COLUMNS, MOST_ROWS } from './sheet-rows.js';

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

/** Characters and cells of all sheets together. */
export const MOST_UNFOLDED = 64_000_000;
/** Parts of one workbook: a few for each sheet, and its pictures. */
const MOST_PARTS = 2_000;

export async function lookIntoWorkbook(bytes: Buffer): Promise<WorkbookParts> {
  const parts = await readParts(bytes).catch(() => undefined);
  if (parts === undefined) return { why: 'broken' };
  if (parts === 'too big') return { why: 'too big' };
  if ([...parts.values()].some(isTorn)) return { why: 'broken' };
  const failed = new Map<string, FailedCell[]>();
  const targets = new Map(
    tagsOf(parts.get('xl/_rels/workbook.xml.rels') ?? '', 'Relationship').map(({ tag }) => [
      attribute(tag, 'Id'),
      attribute(tag, 'Target').replace(/^\/?(?:xl\/)?/, 'xl/'),
    ]),
  );
  const sheets = tagsOf(parts.get('xl/workbook.xml') ?? '', 'sheet');
  if (sheets.length > MOST_PARTS) return { why: 'too big' };
  // Several sheets may name one part, and each is read by itself.
  let [leftCells, leftSigns] = [MOST_CELLS, MOST_UNFOLDED];
  for (const { tag } of sheets) {
    const xml = parts.get(targets.get(attribute(tag, 'r:id')) ?? '') ?? '';
    leftSigns -= xml.length;
    if (leftSigns < 0) return { why: 'too big' };
    const cells = tagsOf(xml, 'c');
    leftCells -= cells.length;
    if (leftCells < 0 || isTooLarge(xml, cells)) return { why: 'too big' };
    failed.set(attribute(tag, 'name'), failedCells(xml, cells));
  }
  return { failed };
}

interface Tag {
  /** From its bracket to the other one. */
  readonly tag: string;
  readonly start: number;
  /** Behind its closing bracket. */
  readonly end: number;
}

/**
 * The opening tags of one name. Read by hand, each sign once: a pattern would begin anew at each `<` of a part that
 * closes none of its tags.
 */
function tagsOf(xml: string, name: string): Tag[] {
  const tags: Tag[] = [];
  const opening = `<${name}`;
  for (let start = xml.indexOf(opening); start >= 0; ) {
    const close = xml.indexOf('>', start);
    if (close < 0) break;
    const end = close + 1;
    if (/[\s/>]/.test(xml.charAt(start + opening.length)))
      tags.push({ tag: xml.slice(start, end), start, end });
    start = xml.indexOf(opening, end);
  }
  return tags;
}

const attribute = (tag: string, name: string): string =>
  unescaped(new RegExp(`\\s${name}\\s*=\\s*(?:"([^"]*)"|'([^']*)')`).exec(tag)?.slice(1).join('') ?? '');

const SIGNS: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', apos: "'" };
const unescaped = (text: string): string =>
  text.replace(/&(amp|lt|gt|quot|apos);/g, (_all, name) => SIGNS[name] ?? '');

/** No tag of a workbook has as many signs. */
const LONGEST_TAG = 100_000;

/** Whether a tag is never closed, or has another one within: what reads the cells may then never come to an end. */
function isTorn(xml: string): boolean {
  for (let at = xml.indexOf('<'); at >= 0; ) {
    const [, end] = UNREAD.find(([begin]) => xml.startsWith(begin, at)) ?? ['<', '>'];
    const close = xml.indexOf(end, at);
    const next = xml.indexOf('<', end === '>' ? at + 1 : close);
    if (close < 0 || (end === '>' && close - at > LONGEST_TAG)) return true;
    if (next >= 0 && next < close) return true;
    at = next;
  }
  return false;
}

/** What may hold any signs, with its end. */
const UNREAD = [
  ['<!--', '-->'],
  ['<![CDATA[', ']]>'],
] as const;

/** The XML parts that tell of sheets and of the texts in them, by name. */
async function readParts(bytes: Buffer): Promise<Map<string, string> | 'too big'> {
  const zip = await yauzl.fromBufferPromise(bytes);
  const parts = new Map<string, string>();
  if (zip.entryCount > MOST_PARTS) return 'too big';
  let unfolded = 0;
  for await (const entry of zip.eachEntry()) {
    unfolded += entry.uncompressedSize;
    if (unfolded > MOST_UNFOLDED) return 'too big';
    if (!/^xl\/(?:[^/]+\.xml|_rels\/workbook\.xml\.rels|worksheets\/[^/]+\.xml)$/.test(entry.fileName))
      continue;
    const chunks: Buffer[] = [];
    for await (const chunk of await zip.openReadStreamPromise(entry)) chunks.push(chunk as Buffer);
    parts.set(entry.fileName, Buffer.concat(chunks).toString('utf8'));
  }
  return parts;
}

function isTooLarge(xml: string, cells: readonly Tag[]): boolean {
  // Rows are filled up to the last column, so one stray value far to the right would unfold into millions of cells.
  for (const { tag } of cells) {
    const letters = tag.endsWith('/>') ? undefined : /\sr="([A-Z]{2,3})\d+"/.exec(tag)?.[1];
    if (letters !== undefined && columnNumber(letters) >= MOST_COLUMNS) return true;
  }
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

function failedCells(xml: string, tags: readonly Tag[]): FailedCell[] {
  const cells: FailedCell[] = [];
  const add = (tag: string, sign: string): void => {
    const [, letters = '', row = ''] = /r="([A-Z]+)(\d+)"/.exec(tag) ?? [];
    cells.push({ row: Number(row), column: columnNumber(letters), sign });
  };
  for (const [index, { tag, end }] of tags.entries()) {
    if (tag.endsWith('/>')) continue;
    const inner = xml.slice(end, tags[index + 1]?.start ?? xml.length);
    if (tag.includes('t="e"')) add(tag, unescaped(/<v>([^<]*)<\/v>/.exec(inner)?.[1] ?? '#ERROR!'));
    // A formula without its result: the program that wrote it did not reckon.
    else if (/^(?:<f(?:\s[^>]*)?>[^<]*<\/f>|<f\b[^>]*\/>)(?:<v\s*\/>)?<\/c>/.test(inner)) add(tag, '');
  }
  return cells;
}
