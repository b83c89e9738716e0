/**
 * A house that is held: adjusted basis, land and building, and the gain when it is sold.
 *
 * Source: `adjusted-basis`, `what-moves-basis` and the rules that each line cites in tables/basis.yaml. Repairs that
 * the facts leave open are not added; the notes tell the sum with them.
 */
import type { CostRow } from '../../facts/ledger.js';
import { printMoney } from '../../facts/money.js';
import { addBasis, type HeldBasis, type Holder } from './adjusted-basis.js';
import { apartParts } from './apart-parts.js';
import { type Books, rowsIn, sumRows, taxYearOf } from './books.js';
import { conversionPart, convertBasis } from './conversion-part.js';
import { type ConversionBasis, convertedGain } from './converted-home.js';
import { gainOf } from './gain.js';
import { groupBy } from './group-by.js';
import { improvementGroups } from './improvement-groups.js';
import { landPart } from './land-part.js';
import type { Sale, SheetLine, WorksheetPart } from './money-tally.js';
import type { OpenFigure, RoleSheet } from './role-figures.js';
import { sheetDates } from './sheet-dates.js';
import { saleDayFact, salePriceFact } from './sheet-facts.js';
import { figureLine, rowsLine, sumLines, totalLine } from './sheet-line.js';

const TITLES: Record<Holder, { readonly title: string; readonly form: string }> = {
  investor: { title: 'Investor: adjusted basis', form: 'Form 8949 and Schedule D' },
  'main-home': {
    title: 'Main home: adjusted basis',
    form: 'Form 8949 and Schedule D, where the sale has to be reported',
  },
  rental: {
    title: 'Rental: adjusted basis',
    form: 'Schedule E and Form 4562 while it is let, Form 4797 when it is sold',
  },
};

export function basisSheet(books: Books, role: Holder): RoleSheet {
  const sums = addBasis(books, role);
  const changed = role === 'rental' && books.money.rental?.['from-home'] === 'yes';
  const conversion = changed ? convertBasis(books, sums) : undefined;
  const converted = typeof conversion === 'object' ? conversion : undefined;
  const sold = books.sale && saleOf(books, books.sale, sums, converted);
  return {
    role,
    ...TITLES[role],
    dates: sheetDates(books, role),
    parts: [
      firstPart(sums),
      ...(sums.raised.length === 0
        ? []
        : [
            {
              id: 'raised',
              title: 'What raises the basis',
              lines: [...sums.raised, sumOf('raised-sum', 'Raised by', sums.raised)],
            },
          ]),
      ...(sums.lowered.length === 0
        ? []
        : [
            {
              id: 'lowered',
              title: 'What lowers the basis',
              lines: [...sums.lowered, sumOf('lowered-sum', 'Lowered by', sums.lowered)],
            },
          ]),
      adjustedPart(sums),
      ...(sums.land === undefined ? [] : [landPart(books, sums, sums.land)]),
      ...(changed ? [conversionPart(books, sums.land, conversion)] : []),
      ...(sold === undefined ? [] : [sold.part]),
      ...(role === 'rental' ? improvementGroups(books, sums.repairs) : []),
      ...apartParts(books, role, sums.repairs),
    ],
    basis: sums.adjusted,
    gain: sold?.gain,
    building: sums.land?.building,
  };
}

const sumOf = (id: string, label: string, lines: readonly SheetLine[]): SheetLine =>
  totalLine(id, label, sumLines(lines), { rules: ['what-moves-basis'] });

const firstPart = ({ first, firstCost }: HeldBasis): WorksheetPart => ({
  id: 'first-cost',
  title: 'Cost of buying',
  lines: [...first, totalLine('first-cost', 'Cost of buying', firstCost, { rules: ['cost-when-bought'] })],
});

function adjustedPart({ adjusted, repairs }: HeldBasis): WorksheetPart {
  const open = sumRows(repairs.open).cents;
  return {
    id: 'adjusted',
    title: 'Adjusted basis',
    lines: [
      ...(repairs.open.length === 0
        ? []
        : [
            {
              ...rowsLine('repair-open', 'Repairs that are open, not added', repairs.open, {
                rules: repairs.rules,
                note: `${repairs.why}; without them the basis is ${printMoney(adjusted.cents)}, with them ${printMoney(adjusted.cents + open)}. The preparer decides`,
              }),
            },
          ]),
      totalLine('adjusted-basis', 'Adjusted basis', adjusted.cents, {
        rules: ['adjusted-basis'],
        note:
          adjusted.other === undefined
            ? undefined
            : `or ${printMoney(adjusted.other)} with the repairs that are open`,
      }),
    ],
  };
}

/** One line for each tax year; one alone keeps its plain name. */
function sellingLines(selling: readonly CostRow[]): SheetLine[] {
  const rules = ['gain-on-sale'] as const;
  const line = (id: string, label: string, rows: readonly CostRow[]): SheetLine => ({
    ...rowsLine(id, label, rows, { rules }),
    cents: 0 - sumRows(rows).cents,
  });
  const years = [...groupBy(selling, taxYearOf)].sort(([a], [b]) => a - b);
  return years.length < 2
    ? [line('selling', 'Costs of selling', selling)]
    : years.map(([year, rows]) => line(`selling-${year}`, `Costs of selling, tax year ${year}`, rows));
}

/** The sale of a holder's house; `converted`: it is measured as a home that became a rental. */
function saleOf(
  books: Books,
  sale: Sale,
  { adjusted }: HeldBasis,
  converted: ConversionBasis | undefined,
): { readonly gain: OpenFigure; readonly part: WorksheetPart } {
  const { price } = sale;
  const selling = rowsIn(books, 'selling');
  const cost = sumRows(selling).cents;
  const at = (basis: number): number => gainOf(price, cost, basis);
  const gain: OpenFigure = converted
    ? { cents: convertedGain(price - cost, converted), other: undefined }
    : { cents: at(adjusted.cents), other: adjusted.other === undefined ? undefined : at(adjusted.other) };
  const rules = ['gain-on-sale'] as const;
  const facts = [salePriceFact(sale), saleDayFact(sale)];
  const basis = converted
    ? ({ label: 'Basis for gain or loss', rule: 'home-turned-rental' } as const)
    : ({ label: 'Adjusted basis', rule: 'adjusted-basis' } as const);
  const lines = [
    figureLine('price', 'Sale price', price, { rules, facts }),
    ...sellingLines(selling),
    totalLine('realised', 'What the sale brought', price - cost, { rules }),
    // What lies between the two: one basis, or of a home that became a rental the one that was used.
    figureLine('less-basis', basis.label, gain.cents - (price - cost), { rules: [basis.rule] }),
    totalLine('gain', gain.cents < 0 ? 'Loss' : 'Gain', gain.cents, {
      rules,
      facts,
      note: converted
        ? 'a gain is measured from the one basis and a loss from the other; between them there is neither'
        : openGain(gain),
    }),
  ];
  return { gain, part: { id: 'sale', title: 'Gain or loss on the sale', lines } };
}

const openGain = ({ cents, other }: OpenFigure): string | undefined =>
  other === undefined
    ? undefined
    : `open: ${printMoney(cents)} without the repairs that are open, ${printMoney(other)} with them. The preparer decides`;
