/** Until when papers are kept. Sources: tables/retention.yaml, and the lead papers of tables/lead-asbestos.yaml. */
import { addYears } from '../../facts/age.js';
import { dayWords } from '../../facts/date-moment.js';
import type { House } from '../../facts/house.js';
import { leadJobs } from '../lead-jobs.js';
import { disclosureKeptThrough, targetOf } from '../lead-notes.js';
import { leadAsbestosRules } from '../tables/lead-asbestos.js';
import { retentionRules } from '../tables/retention.js';
import type { Books } from './books.js';
import { incomeReturnDue, informationReturnDue } from './business-day.js';
import type { Retention } from './money-tally.js';
import { sellsOf } from './payee-names.js';
import type { PayeeFinding } from './payee-years.js';

/** A leap day rolls forward to March 1, the safe side for keeping. */
const keepThrough = (from: string, years: number): string => addYears(from, years, 'later');

export function listRetention(books: Books, findings: readonly PayeeFinding[]): Retention[] {
  return [
    ...propertyPapers(books),
    withoutEnd(),
    ...employmentPapers(books, findings),
    ...leadPapers(books),
    ...payerCopies(books, findings),
  ];
}

/** The day from which papers of the house are counted, YYYY-MM-DD: due date, or filing where that was later. */
function returnDay(saleYear: number, filed: string | undefined): string {
  const due = incomeReturnDue(saleYear);
  return filed !== undefined && filed > due ? filed : due;
}

function propertyPapers({ sale, money }: Books): Retention[] {
  const filed = money['return-filed']?.latest;
  const from = sale && returnDay(sale.year, filed);
  const words =
    sale === undefined || from === undefined
      ? 'the return for the year of sale; the house is not sold, so the count has not begun'
      : from === filed
        ? `the filing of the return for ${sale.year}, ${dayWords(from)}`
        : `the due date of the return for ${sale.year}, ${dayWords(from)}`;
  const [least, ...safer] = retentionRules()['property-papers'].figures.years;
  const choices = safer.map(
    (years) => `${years} years${from === undefined ? '' : `, to ${dayWords(keepThrough(from, years))}`}`,
  );
  return [
    {
      id: 'property-papers',
      what: `Papers on purchase, work and sale; the safer choices are ${choices.join(from === undefined ? ' and ' : ', and ')}`,
      kept: from === undefined ? 'not begun' : 'through',
      through: from && keepThrough(from, least),
      from: words,
      years: least,
      rules: ['property-papers', 'return-due-in-april', 'time-limits'],
    },
  ];
}

const withoutEnd = (): Retention => ({
  id: 'no-return',
  what: 'The same papers, where no return was filed or it was false',
  kept: 'for good',
  through: undefined,
  from: 'nothing: such a return can be questioned at any time',
  years: undefined,
  rules: ['time-limits'],
});

function employmentPapers({ money }: Books, findings: readonly PayeeFinding[]): Retention[] {
  const wages = findings.some(({ known }) => sellsOf(known) === 'wages');
  if (money.employees !== 'yes' && !wages) return [];
  return [
    {
      id: 'employment-papers',
      what: 'Papers on wages and their taxes',
      kept: 'not begun',
      through: undefined,
      from: 'the day the tax was due or paid, the later one, which the folder doesn’t tell',
      years: retentionRules()['employment-papers'].figures.years,
      rules: ['employment-papers'],
    },
  ];
}

function leadPapers({ house, sale }: Books): Retention[] {
  const { target, because } = targetOf(house);
  if (target === 'no') return [];
  const rules = leadAsbestosRules();
  return [
    {
      id: 'lead-disclosure',
      what: 'Signed lead disclosure of the sale',
      kept: sale === undefined ? 'not begun' : 'through',
      through: sale && disclosureKeptThrough(sale.day),
      from: sale
        ? `the closing of the sale, ${dayWords(sale.day)}`
        : `the closing of the sale; the house is not sold, so the count has not begun. ${because}`,
      years: rules.leadDisclosureKept.figures.years,
      rules: ['lead-disclosure-kept'],
    },
    ...renovationPapers(house),
  ];
}

/**
 * Records of lead-safe work. They begin with a job that was more than minor repair, or with the certified firm's; then
 * the last of all work on record that disturbed paint counts, since its records lie with the others.
 */
function renovationPapers(house: House): Retention[] {
  const rules = leadAsbestosRules();
  const firm = house.lead?.firm;
  const byFirm = house.work.filter(({ by }) => firm !== undefined && by === firm);
  const jobs = leadJobs(house, rules);
  if (byFirm.length === 0 && jobs.every(({ verdict }) => verdict === 'minor')) return [];
  const work = [...new Set([...jobs.flatMap(({ items }) => items), ...byFirm])];
  const open = work.filter(({ done }) => done?.latest === undefined);
  const dated = work
    .flatMap(({ what, done }) => (done?.latest === undefined ? [] : [{ what, day: done.latest }]))
    .sort((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : 0));
  const last = dated.at(-1);
  const years = rules.leadRecordsKept.figures.years;
  const known = last !== undefined && open.length === 0;
  return [
    {
      id: 'lead-renovation',
      what: 'Records of lead-safe renovation',
      kept: known ? 'through' : 'not begun',
      through: known ? keepThrough(last.day, years) : undefined,
      from: known
        ? `the end of the last work on record that disturbed paint or was the lead firm’s: ${last.what}, ${dayWords(last.day)}`
        : `the end of the work that disturbed paint, which the folder doesn’t tell for ${open.map(({ what }) => what).join(', ')}`,
      years,
      rules: ['lead-records-kept'],
    },
  ];
}

function payerCopies({ money }: Books, findings: readonly PayeeFinding[]): Retention[] {
  const { years, yearsIfTaxKeptBack } = retentionRules()['payer-copies'].figures;
  const withheld = money['backup-withheld'];
  const kept = withheld === 'no' ? years : yearsIfTaxKeptBack;
  const why =
    withheld === 'no'
      ? ''
      : withheld === 'yes'
        ? '; tax was kept back'
        : `; ${years} years if no tax was kept back, which isn’t written under money: backup-withheld:`;
  const open = findings.filter(({ year }) => year.verdict === 'report' || year.verdict === 'undecided');
  const calendar = [...new Set(open.map(({ year }) => year.year))].sort((a, b) => a - b);
  return calendar.map((year) => {
    const sure = open.some((one) => one.year.year === year && one.year.verdict === 'report');
    const due = informationReturnDue(year);
    return {
      id: `payer-copies-${year}`,
      what: `Payer’s copies of information returns for ${year}, and taxpayer forms${sure ? '' : ', if a return is filed'}`,
      kept: 'through',
      through: keepThrough(due, kept),
      from: `the due date of the return, ${dayWords(due)}${why}`,
      years: kept,
      rules: ['payer-copies', 'return-due'],
    };
  });
}
