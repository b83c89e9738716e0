/** What applies to a role beside its figures: tests by year, elections, what is open. Never advice. */

import type { Bucket, Role } from '../../facts/bucket.js';
import { yearOf } from '../../facts/day-number.js';
import { printMoney } from '../../facts/money.js';
import { printDecimal } from '../../facts/print-decimal.js';
import { groupThousands } from '../../facts/written-number.js';
import { basisRules } from '../tables/basis.js';
import { type Books, rowsIn, sumRows, taxYearOf } from './books.js';
import { groupBy } from './group-by.js';
import { splitRepairs } from './repairs-in-basis.js';
import type { RoleSheet, SheetNote } from './role-figures.js';
import { isDeMinimis, smallBuilding } from './safe-harbours.js';
import { testSmallBusiness } from './small-business.js';

const DECIDES = 'The preparer decides.';

export function roleNotes(books: Books, sheet: RoleSheet): SheetNote[] {
  return [
    statedNote(books, sheet.role),
    ownLabourNote(books),
    ...(sheet.role === 'dealer' ? dealerNotes(books) : []),
    ...(sheet.role === 'main-home' ? [homeNote()] : []),
    ...(sheet.role === 'rental' ? rentalNotes(books, sheet) : []),
    toolsNote(books, sheet.role),
    holdingNote(sheet.role),
  ];
}

function statedNote({ money }: Books, role: Role): SheetNote {
  const text =
    money.role === role
      ? 'The owner states this role; the program never decides it.'
      : money.role === undefined
        ? 'No role is stated under money: role:. This sheet shows what would follow from this one.'
        : 'Not the role the owner states; shown so that the difference can be seen.';
  return { id: 'stated', text: `${text} Not tax advice.`, rules: ['role-is-stated', 'forms-by-role'] };
}

function ownLabourNote({ ledger }: Books): SheetNote {
  const hundredths = ledger.hours.reduce((sum, one) => sum + one.hundredths, 0);
  const hours =
    hundredths === 0
      ? ''
      : ` The ${printDecimal(hundredths, 2)} hours on record are in none of these figures.`;
  return { id: 'own-labour', text: `Unpaid work is no cost.${hours}`, rules: ['own-labour'] };
}

function dealerNotes(books: Books): SheetNote[] {
  const { rateHundredthsOfPercent: rate, netHundredthsOfPercent: net } =
    basisRules()['self-employment'].figures;
  return [
    ...smallBusinessNotes(books),
    {
      id: 'inventory-method',
      text: `Small businesses have a choice of method for stock; the cost of a house is taken only when it is sold. ${DECIDES}`,
      rules: ['inventory-method'],
    },
    {
      id: 'self-employment',
      text: `Profit of a dealer goes to Schedule SE as well: ${printPercent(rate)} on ${printPercent(net)} of the net. No tax is worked out here. ${DECIDES}`,
      rules: ['self-employment'],
    },
    {
      id: 'no-exchange',
      text: `Neither a like-kind exchange nor the instalment method is open to a dealer. ${DECIDES}`,
      rules: ['no-exchange-for-dealers'],
    },
  ];
}

function smallBusinessNotes(books: Books): SheetNote[] {
  const receipts = new Map(books.money['gross-receipts'].map(({ year, amount }) => [year, amount]));
  return taxYears(books).map((year) => {
    const test = testSmallBusiness(year, receipts);
    return {
      id: `small-business-${year}`,
      text: `Tax year ${year}, small-business test: ${smallBusinessWords(test)} ${DECIDES}`,
      rules: ['small-business-test'],
    };
  });
}

function smallBusinessWords({
  year,
  average,
  limit,
  passes,
  missing,
}: ReturnType<typeof testSmallBusiness>): string {
  if (average === undefined)
    return `undecided, since gross receipts of ${listYears(missing)} are not written under money: gross-receipts:.`;
  const mean = `receipts of ${year - 3} to ${year - 1} average ${printMoney(average)}`;
  if (limit === undefined || passes === undefined)
    return `undecided; ${mean}, and no amount is known for ${year}.`;
  return passes
    ? `passed; ${mean}, no more than ${printMoney(limit)}, if it is no tax shelter.`
    : `not passed; ${mean}, more than ${printMoney(limit)}.`;
}

/** Years from purchase to sale or as-of day, and those of rows; at most the last ten. */
function taxYears(books: Books): number[] {
  const end = books.sale?.year ?? yearOf(books.asOf);
  const start = books.costs.reduce(
    (least, row) => Math.min(least, taxYearOf(row)),
    books.bought === undefined ? end : Math.min(end, yearOf(books.bought)),
  );
  const first = Math.max(start, end - 9);
  return Array.from({ length: end - first + 1 }, (_, at) => first + at);
}

function homeNote(): SheetNote {
  const { singleDollars, jointDollars, useYears, windowYears } = basisRules()['main-home-exclusion'].figures;
  return {
    id: 'exclusion',
    text: `Up to $${groupThousands(singleDollars)} of gain, or $${groupThousands(jointDollars)} on a joint return, can be left out of income after ${useYears} of ${windowYears} years as the main home. Nothing is left out of the gain above. ${DECIDES}`,
    rules: ['main-home-exclusion'],
  };
}

function rentalNotes(books: Books, sheet: RoleSheet): SheetNote[] {
  return [
    {
      id: 'rents',
      text: `Rents received are not in this folder: its sheets hold what was paid, and Schedule E begins with them. Depreciation on Form 4562 is not worked out here. ${DECIDES}`,
      rules: ['forms-by-role', 'separate-accounts'],
    },
    ...smallBusinessNotes(books),
    ...smallBuildingNotes(books, sheet),
  ];
}

function smallBuildingNotes(books: Books, { building }: RoleSheet): SheetNote[] {
  const service = books.money.rental?.['in-service']?.earliest;
  const { receiptsDollars } = basisRules()['small-building'].figures;
  const also = `It also takes average receipts up to $${groupThousands(receiptsDollars)} and an election. ${DECIDES}`;
  const note = (id: string, text: string): SheetNote => ({ id, text, rules: ['small-building'] });
  if (service === undefined || building === undefined || building < 0)
    return [
      note(
        'small-building',
        `Election for a small building: undecided, since ${service === undefined ? 'the day it was ready to be let is not written under money: rental: in-service:' : 'the land is not split off under money: land:'}. ${also}`,
      ),
    ];
  const work = rowsIn(books, 'repair', 'improvement', 'restoration', 'rebate');
  const early = work.filter((row) => row.bucket !== 'repair' && row.date < service);
  const earlier = sumRows([...early, ...splitRepairs(books, 'rental').counted]).cents;
  const cost = building + earlier;
  const yearly = books.costs.flatMap((row) => {
    const words = YEARLY[row.bucket];
    return words === undefined || taxYearOf(row) < yearOf(service) ? [] : [{ ...row, words }];
  });
  return [...groupBy(yearly, taxYearOf)]
    .sort(([a], [b]) => a - b)
    .map(([year, rows]) => {
      const counted = [...groupBy(rows, ({ words }) => words)]
        .map(([words, own]) => `${words} ${printMoney(sumRows(own).cents)}`)
        .join(', ');
      const spent = sumRows(rows).cents;
      const since = sumRows(rows.filter(({ date }) => date >= service)).cents;
      const { cap, verdict } = smallBuilding(cost, Math.max(0, spent));
      const alone = smallBuilding(cost, Math.max(0, since)).verdict;
      const before =
        since === spent
          ? ''
          : ` Of that ${printMoney(spent - since)} was paid before it was ready to be let${alone === verdict ? '' : `; without it the sum is ${alone} the cap`}.`;
      return note(
        `small-building-${year}`,
        `Tax year ${year}, election for a small building: ${counted}, together ${printMoney(spent)}, are ${verdict === 'building too dear' ? 'outside, the building having cost too much' : `${verdict} the cap of ${printMoney(cap)}`}; the building cost ${printMoney(cost)} before depreciation.${before} Insurance payments are not taken off. ${also}`,
      );
    });
}

/** What is counted against the cap, in words. */
const YEARLY: Partial<Record<Bucket, string>> = {
  repair: 'repairs',
  improvement: 'improvements',
  restoration: 'restoration',
  rebate: 'rebates',
  upkeep: 'lawn and cleaning',
};

function toolsNote(books: Books, role: Role): SheetNote {
  const tools = rowsIn(books, 'tool').filter(({ cents }) => cents > 0);
  const small = tools.filter(({ cents }) => isDeMinimis(cents)).length;
  const { dollars } = basisRules()['de-minimis'].figures;
  const limit = `$${groupThousands(dollars)}`;
  const house =
    role === 'dealer'
      ? 'A house held for sale is stock and stays outside, whatever an item cost.'
      : 'Land stays outside, and so does a house that is, or will be, stock.';
  const count =
    tools.length === 0
      ? ''
      : ` Payments for tools: ${tools.length}; of these no more than ${limit}: ${small}.`;
  return {
    id: 'de-minimis',
    text: `Election for things up to ${limit} by invoice or item: for tools and office things. ${house}${count} ${DECIDES}`,
    rules: ['de-minimis'],
  };
}

const holdingNote = (role: Role): SheetNote => ({
  id: 'holding',
  text: `Costs of holding the house stand apart and are in no sum. ${role === 'investor' ? 'An investor may be able to add some by election. ' : ''}${DECIDES}`,
  rules: ['holding-apart'],
});

/** 1530 → "15.3 %". */
const printPercent = (hundredths: number): string => `${printDecimal(hundredths, 2)} %`;

function listYears(years: readonly number[]): string {
  return years.length < 2 ? years.join('') : `${years.slice(0, -1).join(', ')} and ${years.at(-1)}`;
}
