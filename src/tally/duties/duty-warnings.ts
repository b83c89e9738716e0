/** What the owner is told of duties: what is due and not recorded, and which fact would say whether a rule applies. */
import type { Diagnostic } from '../../diagnostics/diagnostic.js';
import { printDate } from '../../facts/date.js';
import type { House } from '../../facts/house.js';
import { nearestWord } from '../../facts/nearest-word.js';
import { listWords } from '../area-words.js';
import type { Moment } from '../tables/duties.js';
import { closingOf } from './contract-day.js';
import type { Duty, NamedFact } from './duty.js';
import { leadInFolder } from './lead-record.js';

/** `asOf`: YYYY-MM-DD. Nothing is asked of a house that is not offered or sold yet. */
export function dutyWarnings(duties: readonly Duty[], house: House, asOf: string): Diagnostic[] {
  return [
    ...unknownDuties(duties, house),
    ...twoClosings(house),
    ...(isOffered(house, asOf)
      ? [...notRecorded(duties, house, asOf), ...tooLate(duties), ...soonOffered(duties), ...notKnown(duties)]
      : []),
  ];
}

const isOffered = (house: House, asOf: string): boolean =>
  [house.house.listed, house.duties?.contract, closingOf(house)].some(
    (date) => date?.earliest !== undefined && date.earliest <= asOf,
  );

function unknownDuties(duties: readonly Duty[], house: House): Diagnostic[] {
  const ids = duties.map(({ rule }) => rule.id);
  return (house.duties?.given ?? []).flatMap(({ duty }, index): Diagnostic[] => {
    if (ids.includes(duty)) return [];
    const near = nearestWord(duty, ids);
    return [
      {
        code: 'tally.duty',
        severity: 'warning',
        path: ['duties', 'given', index, 'duty'],
        message: `no rule for ${house.house.address.state} has the name “${duty}”, so nothing is recorded by it`,
        hints: [near === undefined ? `use one of: ${ids.join(', ')}` : `perhaps  duty: ${near}`],
      },
    ];
  });
}

function twoClosings(house: House): Diagnostic[] {
  const [here, there] = [house.duties?.closing, house.money?.sale?.closed];
  if (here === undefined || there === undefined || here.written === there.written) return [];
  return [
    {
      code: 'tally.duty',
      severity: 'warning',
      path: ['duties', 'closing'],
      message: `the closing is ${printDate(here)} here and ${printDate(there)} under money: sale:, and this one is counted`,
      hints: ['correct one of them, or take this one out: the other is read as well'],
    },
  ];
}

/** What is due before a contract is told as soon as the house is offered, all in one line. */
function notRecorded(duties: readonly Duty[], house: House, asOf: string): Diagnostic[] {
  const open = duties.filter(({ result }) => result === 'applies');
  const passed = open.filter(({ record }) => record.state === 'missing');
  const waiting = open.filter(({ record }) => record.state === 'not recorded');
  const by = (...moments: readonly Moment[]): Duty[] =>
    waiting.filter(({ rule }) => rule.due !== undefined && moments.includes(rule.due.by));
  const listed = house.house.listed;
  const offered = `the house is offered${listed === undefined ? '' : ` (listed ${printDate(listed)})`}`;
  const contract = house.duties?.contract;
  const contracted = contract?.earliest !== undefined && contract.earliest <= asOf;
  return [
    ...oneLine(house, passed, `${saleWords(house, asOf)}, and nothing is recorded of`, asOf),
    ...oneLine(
      house,
      by('before-contract', 'at-contract', 'by-offer'),
      `${offered}, and nothing is recorded of what is due before a contract:`,
      asOf,
    ),
    ...oneLine(
      house,
      contracted ? by('once-offered', 'once-contracted') : by('once-offered'),
      `${contracted ? `the contract was signed ${printDate(contract)}` : offered}, and nothing is recorded of what is asked from then on, before the closing:`,
      asOf,
    ),
  ];
}

function saleWords(house: House, asOf: string): string {
  const contract = house.duties?.contract;
  if (contract?.latest !== undefined && contract.latest <= asOf)
    return `the contract was signed ${printDate(contract)}`;
  const closing = closingOf(house);
  // What is due days before a closing may be late before it.
  return closing?.latest !== undefined && closing.latest <= asOf
    ? `the sale closed ${printDate(closing)}`
    : 'the day has passed';
}

function oneLine(house: House, open: readonly Duty[], words: string, asOf: string): Diagnostic[] {
  const [first] = open;
  if (first === undefined) return [];
  const item = `{ duty: ${first.rule.id}, on: ${asOf} }`;
  const line =
    house.duties === undefined
      ? `add  duties: { given: [${item}] }`
      : house.duties.given.length === 0
        ? `add under duties:  given: [${item}]`
        : `add under duties: given:  - ${item}`;
  return [
    {
      code: 'tally.duty',
      severity: 'warning',
      path: ['duties', 'given'],
      message: `${words} ${listWords(open.map(({ rule }) => rule.id))}`,
      hints: [
        `if it was done, ${line}  with its day${open.length > 1 ? ', and a line for each of the others' : ''}`,
        ...(open.some(({ rule }) => leadInFolder(house, rule.id) !== undefined)
          ? ['what stands under lead: is there to be told; that the buyer was told is recorded under given:']
          : []),
        'see what each asks under “What a law asks of this sale” in the edition  file',
      ],
    },
  ];
}

function tooLate(duties: readonly Duty[]): Diagnostic[] {
  return duties.flatMap(({ rule, record: { told } }): Diagnostic[] =>
    told?.after === undefined
      ? []
      : [
          {
            code: 'tally.duty',
            severity: 'warning',
            path: told.path,
            message: `${rule.id} is recorded for ${printDate(told.on)}, and it was due ${told.after}`,
            hints: [
              'correct the day, if it is wrong',
              ...(rule.late === undefined ? [] : [`what the law says of that: ${rule.late}`]),
            ],
          },
        ],
  );
}

/** An owner’s own permit and an offer within the time a state names. */
function soonOffered(duties: readonly Duty[]): Diagnostic[] {
  return duties.flatMap(({ rule, result, because }): Diagnostic[] => {
    const fact = because.find((one) => one.fact === 'months-from-owner-build-to-offer');
    if (result !== 'applies' || fact === undefined) return [];
    return [
      {
        code: 'tally.duty',
        severity: 'warning',
        path: fact.path,
        message: `${rule.id}: an owner’s own permit, and the house offered within a year of its completion: ${fact.words}`,
        hints: [
          'ask a lawyer or the licensing board what that means here; it is presumed, not decided',
          'correct  final:  or  taken-by:  if one is wrong',
        ],
      },
    ];
  });
}

/** Each missing fact once, with the rules that hang on it. */
function notKnown(duties: readonly Duty[]): Diagnostic[] {
  const open = new Map<string, { fact: NamedFact; ids: string[] }>();
  for (const { rule, missing } of duties)
    for (const fact of missing) {
      const key = JSON.stringify(fact.path);
      const known = open.get(key) ?? { fact, ids: [] };
      if (!known.ids.includes(rule.id)) known.ids.push(rule.id);
      open.set(key, known);
    }
  return [...open.values()].map(({ fact, ids }) => ({
    code: 'tally.duty',
    severity: 'note',
    path: fact.path,
    message: `${fact.asks} is not known, and ${listWords(ids)} ${ids.length === 1 ? 'depends' : 'depend'} on it`,
    hints: [`add  ${fact.hint}  or what is so`],
  }));
}
