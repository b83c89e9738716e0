/**
 * A dealer's house: cost of goods sold, year by year, and what is left apart for the preparer to place.
 *
 * Source: `cost-of-goods-sold` and `gross-profit-lines` in tables/basis.yaml. Lines 37 to 39 are divided by what a
 * payee sells, as the note on them says; only line 36 and the sum of 36 to 39 follow from the rule.
 */
import { BUCKETS, type Bucket, HOLDING } from '../../facts/bucket.js';
import { yearOf } from '../../facts/day-number.js';
import type { CostRow } from '../../facts/ledger.js';
import { printMoney } from '../../facts/money.js';
import { afterSaleNote, joinNotes } from './after-sale.js';
import { type Books, rowsIn, sumRows, taxYearOf } from './books.js';
import { DIVIDED, type GoodsLine, goodsLineOf, kindsWords } from './goods-lines.js';
import { groupBy } from './group-by.js';
import type { Sale, SheetLine, WorksheetPart } from './money-tally.js';
import type { RoleSheet } from './role-figures.js';
import { sellerTaxLines } from './seller-tax.js';
import { sheetDates } from './sheet-dates.js';
import { saleDayFact, salePriceFact } from './sheet-facts.js';
import { figureLine, rowsLine, sumLines, totalLine } from './sheet-line.js';

/** What becomes cost of the house, repairs included. */
const DEALER_COST: readonly Bucket[] = [
  'purchase',
  'purchase-closing-in-basis',
  'property-tax-taken-over',
  'assessment',
  'improvement',
  'restoration',
  'repair',
  'rebate',
];

const APART: readonly Bucket[] = ['selling', ...HOLDING, 'tool', 'purchase-closing-out', 'insurance-payment'];

/** Empty years of a house that is held for long are not all printed. */
const MOST_EMPTY_YEARS = 30;

export function dealerSheet(books: Books): RoleSheet {
  const cost = rowsIn(books, ...DEALER_COST);
  const byYear = groupBy(cost, taxYearOf);
  const bill = books.byBucket.has('property-tax-taken-over') ? [] : sellerTaxLines(books);
  const apart = groupBy(rowsIn(books, ...APART), taxYearOf);
  const years = dealerYears(books, [...byYear.keys(), ...apart.keys()], bill.length > 0);
  const parts: WorksheetPart[] = [];
  let stock = 0;
  let sold = 0;
  for (const year of years) {
    const { lines, end, goods } = goodsYear({
      books,
      year,
      stock,
      rows: groupBy(byYear.get(year) ?? [], (row) => goodsLineOf(books, row)),
      bill: year === billYear(books, years) ? bill : [],
    });
    stock = end;
    sold += goods;
    parts.push({ id: `goods-${year}`, title: `Tax year ${year}: cost of goods sold`, year, lines });
    if (books.sale?.year === year)
      parts.push({
        id: `sale-${year}`,
        title: `Tax year ${year}: the sale`,
        year,
        lines: saleLines(books.sale, goods),
      });
    const rest = apart.get(year) ?? [];
    if (rest.length > 0)
      parts.push({
        id: `apart-${year}`,
        title: `Tax year ${year}: for the preparer to place`,
        year,
        lines: apartLines(rest, year),
      });
  }
  const total = sumRows(cost).cents + sumLines(bill);
  const insured = sumRows(rowsIn(books, 'insurance-payment')).cents;
  const other = insured === 0 ? undefined : total + insured;
  const { sale } = books;
  const gain = sale && {
    cents: sale.price - total,
    other: other === undefined ? undefined : sale.price - other,
  };
  parts.push({
    id: 'all-years',
    title: 'All years together',
    lines: allYears(books, { total, other, sold, stock }),
  });
  return {
    role: 'dealer',
    title: 'Dealer: the house as stock',
    form: 'Schedule C, Part III (cost of goods sold), with Schedule SE',
    dates: sheetDates(books, 'dealer'),
    parts,
    basis: { cents: total, other },
    gain,
    building: undefined,
  };
}

/** From the first year with a row to the year of sale, or the as-of year; years with later rows too. */
function dealerYears(books: Books, withRows: readonly number[], hasBill: boolean): number[] {
  const end = books.sale?.year ?? yearOf(books.asOf);
  const bought = books.bought === undefined ? [] : [yearOf(books.bought)];
  const started = withRows.length === 0 || hasBill ? [...withRows, ...bought] : withRows;
  const start = started.reduce((least, year) => Math.min(least, year), end);
  const years = new Set([...withRows, start, ...(hasBill ? bought : [])]);
  for (let year = Math.max(start, end - MOST_EMPTY_YEARS); year <= end; year += 1) years.add(year);
  return [...years].sort((a, b) => a - b);
}

/** A bill under `money: property-tax:` has no row; it counts in the year of the purchase. */
const billYear = (books: Books, years: readonly number[]): number | undefined =>
  books.bought === undefined ? years[0] : yearOf(books.bought);

function goodsYear({
  books,
  year,
  stock,
  rows,
  bill,
}: {
  books: Books;
  year: number;
  stock: number;
  rows: ReadonlyMap<GoodsLine, readonly CostRow[]>;
  bill: readonly SheetLine[];
}): { lines: SheetLine[]; end: number; goods: number } {
  const rules = ['cost-of-goods-sold'] as const;
  const id = (line: string): string => `y${year}-${line}`;
  const of = (line: GoodsLine): readonly CostRow[] => rows.get(line) ?? [];
  const added = sumLines(bill);
  const other = of('39');
  const before = [
    figureLine(id('35'), 'Stock at the beginning of the year', stock, { rules, formLine: '35' }),
    rowsLine(id('36'), 'Purchases: the price of the house', of('36'), {
      rules: ['cost-of-goods-sold', 'cost-when-bought'],
      formLine: '36',
    }),
    rowsLine(id('37'), 'Labor: services that were paid for; the owner’s own is not in it', of('37'), {
      rules: ['cost-of-goods-sold', 'own-labour', 'work-before-use'],
      formLine: '37',
      note: joinNotes(DIVIDED, afterSaleNote(books, of('37'))),
    }),
    rowsLine(id('38'), 'Materials and supplies', of('38'), {
      rules: ['cost-of-goods-sold', 'work-before-use'],
      formLine: '38',
      note: afterSaleNote(books, of('38')),
    }),
    {
      ...rowsLine(id('39'), 'Other costs, costs of closing in basis included', other, {
        rules: ['cost-of-goods-sold', 'closing-in-basis', 'work-before-use'],
        formLine: '39',
        facts: bill.flatMap(({ facts }) => facts),
        note: joinNotes(
          kindsWords(books, other),
          bill.length === 0
            ? undefined
            : `with property tax by days, ${printMoney(added)}: ${bill.map(({ note }) => note).join('; ')}`,
          afterSaleNote(books, other),
        ),
      }),
      cents: sumRows(other).cents + added,
    },
  ];
  const all = sumLines(before);
  const soldBy = books.sale !== undefined && books.sale.year <= year;
  const end = soldBy ? 0 : all;
  const late = books.sale !== undefined && books.sale.year < year;
  const lines = [
    ...before,
    figureLine(id('40'), 'Sum of 35 to 39', all, { rules, formLine: '40' }),
    figureLine(id('41'), 'Stock at the end of the year', end, {
      rules,
      formLine: '41',
      facts: books.sale === undefined ? [] : [saleDayFact(books.sale)],
      note: soldBy
        ? undefined
        : yearOf(books.asOf) === year && books.sale === undefined
          ? `if it is still unsold on December 31, ${year}; counted to the as-of day`
          : 'unsold on December 31, so the cost waits',
    }),
    totalLine(id('42'), 'Cost of goods sold', all - end, {
      rules,
      formLine: '42',
      note: late ? 'paid after the year of sale; the preparer decides in which year it counts' : undefined,
    }),
  ];
  return { lines, end, goods: all - end };
}

function saleLines(sale: Sale, goods: number): SheetLine[] {
  const { price, year } = sale;
  const rules = ['gross-profit-lines'] as const;
  return [
    figureLine(`y${year}-1`, 'Gross receipts: the sale price', price, {
      rules,
      formLine: '1',
      facts: [salePriceFact(sale), saleDayFact(sale)],
      note: sale.sure ? undefined : 'the folder names no single day; the last possible one decides the year',
    }),
    figureLine(`y${year}-4`, 'Cost of goods sold, from line 42', 0 - goods, { rules, formLine: '4' }),
    totalLine(`y${year}-5`, 'Gross profit', price - goods, {
      rules,
      formLine: '5',
      note: 'before costs of selling and holding, which stand apart',
    }),
  ];
}

function apartLines(rows: readonly CostRow[], year: number): SheetLine[] {
  const groups = groupBy(rows, ({ bucket }) => bucket);
  return APART.flatMap((bucket) => {
    const these = groups.get(bucket);
    return these === undefined
      ? []
      : [
          rowsLine(`y${year}-${bucket}`, BUCKETS[bucket].title, these, {
            rules: apartRules(bucket),
            note: apartNote(bucket),
          }),
        ];
  });
}

function apartRules(bucket: Bucket) {
  if (HOLDING.includes(bucket)) return ['holding-apart'] as const;
  if (bucket === 'tool') return ['de-minimis'] as const;
  if (bucket === 'insurance-payment') return ['what-moves-basis'] as const;
  return bucket === 'selling' ? (['gross-profit-lines'] as const) : (['closing-outside-basis'] as const);
}

function apartNote(bucket: Bucket): string | undefined {
  if (bucket === 'insurance-payment')
    return 'open: income, or less cost; not in the lines above, and both sums stand under “All years together”';
  return HOLDING.includes(bucket) ? 'open: inside or outside cost; not in the lines above' : undefined;
}

function allYears(
  books: Books,
  { total, other, sold, stock }: { total: number; other: number | undefined; sold: number; stock: number },
): SheetLine[] {
  const { sale } = books;
  const rules = ['cost-of-goods-sold'] as const;
  const open = (now: number, then: number | undefined, what: string): string | undefined =>
    then === undefined
      ? undefined
      : `open: ${printMoney(now)} leaves insurance payments out; if they lower the cost, ${what} is ${printMoney(then)}. The preparer decides`;
  const cost = totalLine('cost', 'Cost of the house, all years', total, {
    rules: ['cost-of-goods-sold', 'what-moves-basis'],
    note: open(total, other, 'it'),
  });
  if (sale === undefined)
    return [cost, figureLine('waiting', 'Of which waits for the year of sale', stock, { rules })];
  const profit = sale.price - sold;
  return [
    cost,
    figureLine('receipts', 'Gross receipts', sale.price, {
      rules: ['gross-profit-lines'],
      facts: [salePriceFact(sale)],
    }),
    totalLine('gross-profit', 'Gross profit, all years', profit, {
      rules: ['gross-profit-lines'],
      note: open(profit, other === undefined ? undefined : sale.price - other, 'the profit'),
    }),
  ];
}
