/** What is to be asked or written about payees whom a return may have to name. */
import type { Diagnostic } from '../../diagnostics/diagnostic.js';
import type { FactPath } from '../../diagnostics/fact-path.js';
import { dayWords } from '../../facts/date-moment.js';
import { printMoney } from '../../facts/money.js';
import { rowsInWords } from '../../facts/row-runs.js';
import { typedInYaml } from '../../facts/typed-in-yaml.js';
import { informationReturnDue } from './business-day.js';
import type { Lack, PayeeFinding } from './payee-years.js';

/** `asOf`: YYYY-MM-DD; a day that has passed by then is told as such. */
export function payeeWarnings(findings: readonly PayeeFinding[], asOf: string): Diagnostic[] {
  return [
    ...businessQuestion(findings.filter(({ lacking }) => lacking.includes('in-business'))),
    ...findings.flatMap((finding): Diagnostic[] => {
      const { year, lacking } = finding;
      if (year.verdict === 'report') return [reportNote(finding, asOf)];
      const own = lacking.filter((lack) => lack !== 'in-business');
      // Until it is said that this is a business, one question stands for all of them.
      if (year.verdict !== 'undecided' || own.length < lacking.length) return [];
      return [undecided({ ...finding, lacking: own })];
    }),
  ];
}

/** One cause, one warning, however many payees it leaves open. */
function businessQuestion(open: readonly PayeeFinding[]): Diagnostic[] {
  if (open.length === 0) return [];
  const names = [...new Set(open.map(({ year }) => year.payee))];
  const shown = names.slice(0, 3).map((name) => `“${name}”`);
  const more = names.length > shown.length ? ` and ${names.length - shown.length} more` : '';
  return [
    {
      code: 'tally.payee',
      severity: 'warning',
      path: ['money', 'in-business'],
      message: `whether a return has to name ${shown.join(', ')}${more} is undecided: it isn’t written whether these bills are paid in the course of a business`,
      hints: ['write under money:  in-business: yes  or  in-business: no'],
    },
  ];
}

/** At the payee's entry, or at the first payment where there is none. */
const pathOf = ({ known, year }: PayeeFinding, word?: string): FactPath =>
  known.index === undefined
    ? ['costs', ...year.rows.slice(0, 1), 'payee']
    : ['money', 'payees', known.index, ...(word === undefined ? [] : [word])];

function reportNote(finding: PayeeFinding, asOf: string): Diagnostic {
  const { payee, year, counted, form, taxpayerForm } = finding.year;
  const due = informationReturnDue(year);
  const what = `${printMoney(counted)} paid to “${payee}” in ${year} may have to go on a Form ${form}, due ${dayWords(due)}${due < asOf ? ', which has passed' : ''}`;
  if (taxpayerForm === 'on-file')
    return {
      code: 'tally.payee',
      severity: 'note',
      path: pathOf(finding),
      message: what,
      hints: ['ask your preparer; their signed taxpayer form is on file'],
    };
  const state = {
    asked: 'has been asked for and isn’t there yet',
    none: 'is missing',
    'not-known': 'may be missing',
  }[taxpayerForm];
  const onFile = 'keep it elsewhere, and write  taxpayer-form: on-file  (never the number)';
  return {
    code: 'tally.payee',
    severity: 'warning',
    path: pathOf(finding, 'taxpayer-form'),
    message: `${what}, and their signed taxpayer form (W-9) ${state}`,
    hints: [
      taxpayerForm === 'asked' ? `once you have it, ${onFile}` : `ask them for a signed Form W-9, ${onFile}`,
    ],
  };
}

function undecided(finding: PayeeFinding): Diagnostic {
  const { payee, year } = finding.year;
  return {
    code: 'tally.payee',
    severity: 'warning',
    path: onlyWay(finding) ? ['costs', ...finding.untold.slice(0, 1), 'paid'] : pathOf(finding),
    message: `whether a return has to name “${payee}” for ${year} is undecided: ${finding.lacking.map((lack) => (isLlc(finding) && lack === 'tax-class' ? LLC : WORDS[lack])).join(', ')}`,
    hints: [whatToWrite(finding)],
  };
}

/** Then the entry says all it should, and the sheet is to be mended. */
const onlyWay = ({ lacking }: PayeeFinding): boolean => lacking.every((lack) => lack === 'way');

const LLC = 'an LLC: line 3 of their form tells how it is taxed';

const isLlc = ({ known }: PayeeFinding): boolean => known.facts?.['tax-class'] === 'llc';

const WORDS: Record<Lack, string> = {
  'in-business': 'it isn’t written whether this is a business',
  sells: 'what they sell isn’t written',
  'tax-class': 'their tax class isn’t known',
  attorney: 'it isn’t known whether they are lawyers',
  way: 'the sheet doesn’t tell how all of it was paid',
  threshold: 'no threshold is known for that year',
};

/** Words of the payee's entry, each with an example and what it can be. */
const ENTRY: Partial<Record<Lack, readonly [example: string, choices: string]>> = {
  sells: ['sells: services', 'sells: services (work, parts included), goods, rent, wages or nothing'],
  'tax-class': [
    'tax-class: individual',
    'tax-class: as on their taxpayer form, for example individual, partnership, c-corporation',
  ],
  attorney: ['attorney: no', 'attorney: yes or no'],
};

/** All that is lacking is to be written, so it is one hint: hints are alternatives. */
function whatToWrite({ known, year, lacking, untold }: PayeeFinding): string {
  const words = lacking.flatMap((lack) => ENTRY[lack] ?? []);
  const examples = words.filter((_word, at) => at % 2 === 0).join(', ');
  const choices = words.filter((_word, at) => at % 2 === 1).join('; ');
  const entry =
    known.facts === undefined ? `- { name: ${typedInYaml(year.payee, true)}, ${examples} }` : examples;
  const where = known.facts === undefined ? 'under money: payees:' : 'in their entry';
  return [
    ...(words.length > 0 ? [`write ${where}  ${entry}  or what else is true of them (${choices})`] : []),
    ...(lacking.includes('way')
      ? [
          `write into the column  paid  of ${rowsInWords(untold)} how it was paid: cash, check, transfer, card, network or loan`,
        ]
      : []),
    ...(lacking.includes('threshold') ? [`ask your preparer for the amount of ${year.year}`] : []),
  ].join('; and ');
}
