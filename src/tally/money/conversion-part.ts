/** A home that became a rental, from the facts of its folder. The arithmetic stands in `converted-home.ts`. */
import { yearOf } from '../../facts/day-number.js';
import type { CostRow } from '../../facts/ledger.js';
import type { HeldBasis, Reduction } from './adjusted-basis.js';
import { type Books, rowsIn, sumRows } from './books.js';
import { type Conversion, type ConversionBasis, conversionBasis } from './converted-home.js';
import type { LandSplit } from './land-split.js';
import type { SheetLine, WorksheetPart } from './money-tally.js';
import { inServiceFacts, marketValueFacts } from './sheet-facts.js';
import { figureLine } from './sheet-line.js';

/** Reductions that only begin once a house is let. */
const AFTER_CHANGE: readonly Reduction['what'][] = ['depreciation', 'section-179'];

/** The figures of `home-turned-rental`; a text where something is missing for them. */
export function convertBasis(books: Books, sums: HeldBasis): ConversionBasis | string {
  const { rental } = books.money;
  const [buildingValue, landValue] = [rental?.['market-value-building'], rental?.['market-value-land']];
  if (sums.land === undefined) return 'not worked out: it takes the land split off, under money: land:';
  if (buildingValue === undefined || landValue === undefined)
    return 'not worked out: it takes what building and land were worth on the day of the change, under money: rental:';
  const service = rental?.['in-service'];
  if (service?.earliest === undefined)
    return 'not worked out: it takes the day it was ready to be let, under money: rental: in-service:';
  return conversionBasis({
    ...changeDay(books, sums, sums.land, service.earliest),
    buildingValue,
    landValue,
  });
}

function changeDay(
  books: Books,
  sums: HeldBasis,
  land: LandSplit,
  service: string,
): Pick<Conversion, 'building' | 'land' | 'later'> {
  const work: readonly CostRow[] = [
    ...rowsIn(books, 'assessment', 'improvement', 'restoration', 'rebate', 'insurance-payment'),
    ...sums.repairs.counted,
  ];
  const early = sumRows(work.filter(({ date }) => date < service)).cents;
  const reduced = books.money.reductions
    .filter(({ what, year }) => !AFTER_CHANGE.includes(what) && (year ?? 0) <= yearOf(service))
    .reduce((sum, { amount }) => sum + amount, 0);
  const building = land.building + early - reduced;
  return { building, land: land.land, later: sums.adjusted.cents - building - land.land };
}

export function conversionPart(
  books: Books,
  land: LandSplit | undefined,
  conversion: ConversionBasis | string | undefined,
): WorksheetPart {
  const facts = [...inServiceFacts(books), ...marketValueFacts(books), ...(land?.facts ?? [])];
  const known = typeof conversion === 'object' ? conversion : undefined;
  const missing = typeof conversion === 'string' ? conversion : undefined;
  const line = (id: string, label: string, cents: number | undefined, note: string): SheetLine =>
    figureLine(id, label, cents, {
      rules: ['home-turned-rental'],
      facts,
      note: missing ?? note,
    });
  return {
    id: 'home-turned-rental',
    title: 'A home that became a rental',
    lines: [
      line(
        'depreciation-basis',
        'Building: basis for depreciation',
        known?.depreciation,
        'the lower of adjusted basis and market value on the day of the change; assessments counted with the building, and reductions of the year of the change, other than depreciation, as before it',
      ),
      line('basis-for-gain', 'Basis for a gain', known?.forGain, 'the adjusted basis'),
      line(
        'basis-for-loss',
        'Basis for a loss',
        known?.forLoss,
        'from the lower of the two, with what moved it afterwards',
      ),
    ],
  };
}
