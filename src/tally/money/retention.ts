/** Until when papers are kept. Sources: tables/retention.yaml, and the lead papers of tables/lead-asbestos.yaml. */
import { addYears } from '../../facts/age.js';
import { dayWords } from '../../facts/date-moment.js';
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
export function returnDay(saleYear: number, filed: string | undefined): string {
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
  return retentionRules()['property-papers'].figures.years.map((years, at) => ({
    id: `property-papers-${years}`,
    what: `Papers on purchase, work and sale${at === 0 ? ', the least' : `, the safer choice of ${years} years`}`,
    through: from && keepThrough(from, years),
    from: words,
    years,
    rules: ['property-papers', 'return-due-in-april', 'time-limits'],
  }));
}

const withoutEnd = (): Retention => ({
  id: 'no-return',
  what: 'The same papers, where no return was filed or it was false',
  through: undefined,
  from: 'there is no end',
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
  const jobs = leadJobs(house, rules).filter(({ verdict }) => verdict !== 'minor');
  const ends = jobs.map(({ keepRecordsThrough }) => keepRecordsThrough);
  const through = ends.includes(undefined) ? undefined : ends.toSorted().at(-1);
  return [
    {
      id: 'lead-disclosure',
      what: 'Signed lead disclosure of the sale',
      through: sale && disclosureKeptThrough(sale.day),
      from: sale
        ? `the closing of the sale, ${dayWords(sale.day)}`
        : `the closing of the sale; the house is not sold, so the count has not begun. ${because}`,
      years: rules.leadDisclosureKept.figures.years,
      rules: ['lead-disclosure-kept'],
    },
    ...(jobs.length === 0
      ? []
      : [
          {
            id: 'lead-renovation',
            what: 'Records of lead-safe renovation',
            through,
            from:
              through === undefined
                ? 'the end of the work that disturbed paint, which the folder doesn’t tell for all of it'
                : 'the end of the last work that disturbed paint',
            years: rules.leadRecordsKept.figures.years,
            rules: ['lead-records-kept'],
          },
        ]),
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
      through: keepThrough(due, kept),
      from: `the due date of the return, ${dayWords(due)}${why}`,
      years: kept,
      rules: ['payer-copies', 'return-due'],
    };
  });
}
