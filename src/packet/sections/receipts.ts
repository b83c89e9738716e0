/** Each paper with the rows that rest on it, its picture and its digest. The house file's alone. */
import type { Document } from '../../facts/house.js';
import type { CostRow, PaperFile } from '../../facts/ledger.js';
import { printMoney } from '../../facts/money.js';
import { groupThousands } from '../../facts/written-number.js';
import type { MoneyTally } from '../../tally/money/money-tally.js';
import { columns } from '../columns.js';
import type { Context, PhotoOnDisk } from '../context.js';
import { isoDate } from '../date-words.js';
import { holdsPrices } from '../edition-house.js';
import { costAnchor, plateAnchor } from '../money-words.js';
import type { Block, Rich, Section, ShownPhoto } from '../packet.js';
import { counted, link, rich, soft, upperFirst, verbatim } from '../rich.js';
import { MOST_ROWS, whatWords } from './costs.js';

export function receipts(context: Context, money: MoneyTally): Section {
  const { costs, papers } = money.ledger;
  const byPaper = new Map<string, CostRow[]>();
  for (const row of costs)
    if (row.receipt !== undefined) byPaper.set(row.receipt, [...(byPaper.get(row.receipt) ?? []), row]);
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
          `${upperFirst(counted(told.length, 'paper'))}, each with the rows that name it. The digest is the SHA-256 of the file as it lies in documents/: whoever has file and digest can tell whether one was changed.`,
        ),
      },
      ...told.flatMap((document) =>
        costs.length > MOST_ROWS
          ? []
          : paper(context, document, byPaper.get(document.id) ?? [], papers.get(document.id)),
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
): Block[] {
  const id = plateAnchor(document.id);
  const sum = rows.reduce((all, { cents }) => all + cents, 0);
  const plates = context.plates.get(document.id);
  return [
    { kind: 'heading', id, level: 3, text: upperFirst(document.what) },
    ...(rows.length === 0
      ? [
          {
            kind: 'paragraph',
            id: `${id}-no-row`,
            size: 'body',
            text: rich('No row of the cost sheet names it.'),
          } satisfies Block,
        ]
      : [
          {
            kind: 'table',
            id: `${id}-rows`,
            caption: '',
            columns: columns(
              ['Row', 8, 'right'],
              ['Date', 20],
              ['Paid to, for what', 50],
              ['Amount', 22, 'right'],
            ),
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
              ...(rows.length === 1 && document.total === undefined
                ? []
                : [
                    {
                      id: `${id}-sum`,
                      cells: [
                        rich('Sum'),
                        rich(''),
                        rich(
                          document.total !== undefined &&
                            soft(`the paper says ${printMoney(document.total)}`),
                        ),
                        rich(printMoney(sum)),
                      ],
                      weight: 'total' as const,
                    },
                  ]),
            ],
            note: fileWords(document, file),
            ...(plates?.pages[0] === undefined
              ? {}
              : { plate: plateOf(id, document, plates.pages, plates.file, 0) }),
          } satisfies Block,
        ]),
    ...(rows.length === 0 ? fileParagraph(id, document, file) : []),
    ...furtherPages(id, document, plates?.pages ?? [], plates?.file ?? '', rows.length === 0 ? 0 : 1),
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
function fileWords({ kept }: Document, file: PaperFile | undefined): Rich {
  if (file === undefined)
    return rich(
      kept === undefined
        ? 'No file of it is in the folder.'
        : `No file of it is in the folder; kept: ${kept}.`,
    );
  return rich(
    verbatim(`documents/${file.file}`),
    `, ${groupThousands(file.bytes)} bytes, SHA-256 `,
    verbatim(file.sha256),
  );
}

const fileParagraph = (id: string, document: Document, file: PaperFile | undefined): Block[] => [
  { kind: 'paragraph', id: `${id}-file`, size: 'small', text: fileWords(document, file) },
];

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
