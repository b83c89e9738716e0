/** Each paper with the rows that rest on it, its picture and its digest. The house file's alone. */
import type { Document } from '../../facts/house.js';
import type { CostRow, PaperFile } from '../../facts/ledger.js';
import { printMoney } from '../../facts/money.js';
import { groupThousands } from '../../facts/written-number.js';
import type { MoneyTally } from '../../tally/money/money-tally.js';
import { columns } from '../columns.js';
import type { Context, PhotoOnDisk, PlatesOnDisk } from '../context.js';
import { isoDate } from '../date-words.js';
import { holdsPrices } from '../edition-house.js';
import { costAnchor } from '../money-words.js';
import type { Block, Rich, Section, ShownPhoto, TableRow } from '../packet.js';
import { plateAnchor } from '../plate-anchor.js';
import { counted, link, rich, soft, upperFirst, verbatim } from '../rich.js';
import { MOST_ROWS, whatWords } from './costs.js';

export function receipts(context: Context, money: MoneyTally): Section {
  const { costs, papers } = money.ledger;
  const byPaper = new Map<string, CostRow[]>();
  for (const row of costs) {
    if (row.receipt === undefined) continue;
    const own = byPaper.get(row.receipt);
    if (own === undefined) byPaper.set(row.receipt, [row]);
    else own.push(row);
  }
  const told = context.whole.documents.filter((one) => byPaper.has(one.id) || holdsPrices(one));
  const without = costs.filter(({ receipt }) => receipt === undefined);
  return {
    id: 'receipts',
    title: 'Receipts',
    blocks: [
      {
        kind: 'paragraph',
        id: 'receipts-intro',
        size: 'body',
        text: rich(
          `${told.length === 0 ? 'No row names a paper, and no receipt or invoice is listed.' : `${upperFirst(counted(told.length, 'paper'))}, each with the rows that name it.`} The digest is the SHA-256 of the file as it lies in documents/: whoever has file and digest can tell whether one was changed.`,
        ),
      },
      ...told.flatMap((document) =>
        paper(
          context,
          document,
          byPaper.get(document.id) ?? [],
          papers.get(document.id),
          costs.length > MOST_ROWS,
        ),
      ),
      ...withoutReceipt(without),
    ],
  };
}

function paper(
  context: Context,
  document: Document,
  rows: readonly CostRow[],
  file: PaperFile | undefined,
  many: boolean,
): Block[] {
  const id = plateAnchor(context, document.id);
  const plates = context.plates.get(document.id);
  const heading: Block = { kind: 'heading', id, level: 3, text: upperFirst(document.what) };
  const pages = (from: number): Block[] =>
    furtherPages(id, document, plates?.pages ?? [], plates?.file ?? '', from);
  const about = fileWords(document, file, plates);
  if (rows.length === 0 || many)
    return [
      heading,
      { kind: 'paragraph', id: `${id}-rows`, size: 'body', text: rich(rowsInShort(rows, document)) },
      { kind: 'paragraph', id: `${id}-file`, size: 'small', text: about },
      ...pages(0),
    ];
  return [
    heading,
    {
      kind: 'table',
      id: `${id}-rows`,
      caption: '',
      columns: columns(['Row', 8, 'right'], ['Date', 20], ['Paid to, for what', 50], ['Amount', 22, 'right']),
      rows: [
        ...rows.map((row) => ({
          id: `${id}-row-${row.row}`,
          cells: [
            rich(link(String(row.row), costAnchor(row.row))),
            rich(isoDate(row.date)),
            whatWords(row),
            rich(printMoney(row.cents)),
          ],
        })),
        ...sumRow(id, rows, document),
      ],
      note: about,
      ...(plates?.pages[0] === undefined
        ? {}
        : { plate: plateOf(id, document, plates.pages, plates.file, 0) }),
    },
    ...pages(1),
  ];
}

const sumOf = (rows: readonly CostRow[]): number => rows.reduce((all, { cents }) => all + cents, 0);

function rowsInShort(rows: readonly CostRow[], { total }: Document): string {
  if (rows.length === 0) return 'No row of the cost sheet names it.';
  const says = total === undefined ? '' : `; the paper says ${printMoney(total)}`;
  return `${upperFirst(counted(rows.length, 'row'))} of ledger.csv, ${printMoney(sumOf(rows))} in all${says}.`;
}

/** A single row, of a paper that states no total, is its own sum. */
function sumRow(id: string, rows: readonly CostRow[], { total }: Document): TableRow[] {
  if (rows.length === 1 && total === undefined) return [];
  return [
    {
      id: `${id}-sum`,
      cells: [
        rich('Sum'),
        rich(''),
        rich(total !== undefined && soft(`the paper says ${printMoney(total)}`)),
        rich(printMoney(sumOf(rows))),
      ],
      weight: 'total',
    },
  ];
}

/** Where a paper lies beside the pages of the house file. */
export const paperPath = (file: string): string => `papers/${file}`;

const pageWords = ({ what }: Document, pages: readonly PhotoOnDisk[], index: number): string =>
  pages.length === 1 ? upperFirst(what) : `${upperFirst(what)}, page ${index + 1}`;

function plateOf(
  id: string,
  document: Document,
  pages: readonly PhotoOnDisk[],
  file: string,
  index: number,
): ShownPhoto {
  return {
    id: `${id}-page-${index + 1}`,
    photo: pages[index]?.id ?? '',
    caption: rich(pageWords(document, pages, index)),
    original: { name: file, path: paperPath(file) },
  };
}

/** Pages that don't stand beside the rows. */
function furtherPages(
  id: string,
  document: Document,
  pages: readonly PhotoOnDisk[],
  file: string,
  from: number,
): Block[] {
  if (pages.length <= from) return [];
  const photos = pages.map((_, index) => plateOf(id, document, pages, file, index)).slice(from);
  return [{ kind: 'photos', form: 'row', id: `${id}-pages`, photos }];
}

/** Where the file is and its digest. */
function fileWords({ kept }: Document, file: PaperFile | undefined, plates: PlatesOnDisk | undefined): Rich {
  if (file === undefined)
    return rich(
      kept === undefined
        ? 'No file of it is in the folder.'
        : `No file of it is in the folder; kept: ${kept}.`,
    );
  return rich(
    verbatim(`documents/${file.file}`),
    `, ${groupThousands(file.bytes)} bytes, SHA-256 `,
    // In parts, so that it breaks where a reader's eye can go on.
    verbatim(file.sha256.replace(/.{16}(?=.)/gu, '$& ')),
    ...copyWords(plates),
  );
}

/** Where the copy is looked into, of a paper that isn't shown whole. */
function copyWords(plates: PlatesOnDisk | undefined): Rich {
  if (plates === undefined || (plates.pages.length > 0 && plates.of <= plates.pages.length)) return [];
  const copy = verbatim(paperPath(plates.file));
  return plates.pages.length === 0
    ? rich('. It can’t be shown here; a copy of the file lies in ', copy)
    : rich(`. Shown are ${plates.pages.length} of its ${plates.of} pages; the whole of it lies in `, copy);
}

function withoutReceipt(rows: readonly CostRow[]): Block[] {
  if (rows.length === 0) return [];
  return [
    { kind: 'heading', id: 'receipts-missing', level: 3, text: 'Rows without a receipt' },
    {
      kind: 'table',
      id: 'receipts-missing-rows',
      caption: '',
      columns: columns(['Row', 8, 'right'], ['Date', 20], ['Paid to, for what', 50], ['Amount', 22, 'right']),
      rows: rows.slice(0, MOST_ROWS).map((row) => ({
        id: `no-receipt-${row.row}`,
        cells: [
          rich(link(String(row.row), costAnchor(row.row))),
          rich(isoDate(row.date)),
          whatWords(row),
          rich(printMoney(row.cents)),
        ],
      })),
      note: rich(
        'A bank’s statement can show that something was paid, and not what for. The shop can often print the receipt again.',
      ),
    },
  ];
}
