/** What became of how many rows of a bank's file, in words. */
import { visible } from './diagnostics/report.js';
import { printMoney } from './facts/money.js';
import { rowsInWords } from './facts/row-runs.js';
import type { ImportResult } from './import-bank.js';
import type { Decision } from './import-decision.js';
import type { History } from './import-memory.js';

/** More rows than these are not told one by one. */
const MOST_TOLD = 12;

export function importTold(result: ImportResult): string {
  const { decisions, sheetRows, isDry, sheet, bank, seenBefore, notAsked, passedOver } = result;
  const of = (became: Decision['became']): Decision[] => decisions.filter((one) => one.became === became);
  const added = of('added');
  const rowOf = (decision: Decision): number => sheetRows.get(decision) ?? 0;
  const open = added.filter(({ cost }) => cost?.bucket === undefined);
  const maybe = added.filter(({ alike, twin }) => alike !== undefined || twin !== undefined);
  const isMaybe = new Set(maybe);
  const sheetName = visible(sheet);
  const list: [count: number, words: string, details: readonly string[]][] = [
    [
      added.length,
      `${isDry ? 'would be added' : 'added'} to ${sheetName}${isDry || added.length === 0 ? '' : `, ${rowsInWords(added.map(rowOf))}`}`,
      isDry
        ? added.flatMap((one) => [
            `${rowWords(one)}  →  ${visible(one.cost?.payee ?? '')}, ${bucketWords(one)}`,
            ...(isMaybe.has(one) ? [`  perhaps the same as ${sameAs(one)}`] : []),
          ])
        : [],
    ],
    [
      of('in-costs').length,
      'in the costs already',
      of('in-costs').map((one) => `${rowWords(one)}  =  row ${one.alike?.cost.row ?? '?'}`),
    ],
    [seenBefore, 'imported before', []],
    [of('not-this-house').length, 'left out: not of this house', of('not-this-house').map(rowWords)],
    [of('left-out').length, 'left out: money that came in', of('left-out').map(rowWords)],
    [passedOver.length, 'passed over: no payments', passedOver.map(({ row, why }) => `row ${row}: ${why}`)],
    [notAsked, 'not asked about; the same command goes on there', []],
  ];
  const told = list.filter(([count]) => count > 0);
  const all = told.reduce((sum, [count]) => sum + count, 0);
  const width = String(all).length + 2;
  const lines = [`${visible(bank)}: ${all} ${all === 1 ? 'row' : 'rows'}`];
  for (const [count, words, details] of told) {
    lines.push(`${String(count).padStart(width)}  ${words}`);
    // What would be added is what a trial run is for: all of it.
    lines.push(
      ...(isDry && words.startsWith('would be added') ? details : shortened(details)).map(
        (line) => `${' '.repeat(width + 4)}${line}`,
      ),
    );
  }
  if (isDry) lines.push('', 'Nothing is written (--dry-run).');
  else lines.push(...whatNext(result, open, maybe, rowOf));
  return `${lines.join('\n')}\n`;
}

function whatNext(
  { pasteInto, sheet, house, copy, decisions }: ImportResult,
  open: readonly Decision[],
  maybe: readonly Decision[],
  rowOf: (decision: Decision) => number,
): string[] {
  const lines: string[] = [];
  const over = decisions.filter(({ cost, history }) => cost?.bucket !== undefined && history !== undefined);
  if (over.length > 0)
    lines.push(
      `Buckets taken over by history; correct what does not hold:`,
      ...over.map((one) => `  row ${rowOf(one)}  ${costWords(one)}  ${bucketWords(one)}`),
      '',
    );
  if (open.length > 0) lines.push(...withoutBucket(open, rowOf));
  for (const one of maybe.slice(0, MOST_TOLD))
    lines.push(
      `Row ${rowOf(one)} is perhaps the same as ${sameAs(one)}: if so, take ${one.alike === undefined ? 'it' : 'one'} out.`,
    );
  if (maybe.length > MOST_TOLD)
    lines.push(`… and ${maybe.length - MOST_TOLD} more that may stand there already.`);
  if (decisions.some(({ became }) => became === 'left-out' || became === 'not-this-house'))
    lines.push(
      `What was left out stands in ${visible(house)}/imports/seen.csv; take its row out there, and it is offered again.`,
    );
  if (copy !== undefined) lines.push(`What ${visible(sheet)} was before lies in ${visible(copy)}.`);
  if (decisions.some(({ became }) => became === 'added'))
    lines.push(
      pasteInto === undefined
        ? `Next:  sillplate check ${visible(house)}`
        : `Paste the rows of ${visible(sheet)} below those of ${visible(pasteInto)}, and delete the file; or save ${visible(pasteInto)} as costs.csv, and rows are added by themselves.`,
    );
  return lines.length === 0 ? [] : ['', ...lines];
}

/** Rows nobody has decided about: those without any history, and by payee those with several buckets. */
function withoutBucket(open: readonly Decision[], rowOf: (decision: Decision) => number): string[] {
  const rowsOf = (some: readonly Decision[]): string => rowsInWords(some.map(rowOf));
  const unknown = open.filter(({ history }) => history === undefined);
  const mixed = new Map<string, Decision[]>();
  for (const one of open)
    if (one.history !== undefined) {
      const payee = one.cost?.payee ?? '';
      const same = mixed.get(payee);
      if (same === undefined) mixed.set(payee, [one]);
      else same.push(one);
    }
  return [
    `Without a bucket: ${rowsOf(open)}. Write what ${open.length === 1 ? 'it was' : 'they were'} for.`,
    ...(unknown.length === 0
      ? []
      : [`  ${rowsOf(unknown)}: nobody like ${unknown.length === 1 ? 'it' : 'them'} was paid before`]),
    ...[...mixed].map(
      ([payee, some]) => `  ${rowsOf(some)}: ${visible(payee)}, ${mixedWords(some[0]?.history)}`,
    ),
    '',
  ];
}

const mixedWords = (history: History | undefined): string =>
  `paid for several things before (${(history?.buckets ?? []).map(({ bucket, rows }) => `${bucket} ${rows}`).join(', ')})`;

/** More houses than these are counted. */
const MOST_HOUSES = 3;

/** "improvement, as in 3 of 3 rows of quarry-road" */
function bucketWords({ cost, history }: Decision): string {
  if (cost?.bucket === undefined)
    return history === undefined ? 'no bucket' : `no bucket: ${mixedWords(history)}`;
  if (history === undefined) return cost.bucket;
  const { houses } = history;
  const from = houses
    .slice(0, MOST_HOUSES)
    .map(
      ({ house, rows, of }, index) =>
        `${rows} of ${of}${index === 0 ? ` ${of === 1 ? 'row' : 'rows'}` : ''} of ${house === undefined ? 'this house' : visible(house)}`,
    );
  const more = houses.length - from.length;
  return `${cost.bucket}, as in ${from.join(', ')}${more > 0 ? ` and ${more} more ${more === 1 ? 'house' : 'houses'}` : ''}`;
}

/** "row 5 (Ridge Street Plumbing)"; of one that stands in no row, what was imported. */
function sameAs({ alike, twin }: Decision): string {
  if (alike !== undefined) return `row ${alike.cost.row} (${visible(alike.cost.payee)})`;
  const seen = twin?.seen;
  return `one that was ${seen?.became === 'added' || seen?.became === 'in-costs' ? 'imported' : 'left out'} before (${visible(seen?.text ?? '')})`;
}

const costWords = ({ row, cost }: Decision): string =>
  `${row.date}  ${visible(cost?.payee ?? '')}  ${printMoney(Math.abs(row.cents))}${row.cents < 0 ? ' came in' : ''}`;

const rowWords = ({ row }: Decision): string =>
  `${row.date}  ${visible(row.text)}  ${printMoney(Math.abs(row.cents))}${row.cents < 0 ? ' came in' : ''}`;

const shortened = (lines: readonly string[]): string[] =>
  lines.length <= MOST_TOLD
    ? [...lines]
    : [...lines.slice(0, MOST_TOLD - 1), `… and ${lines.length - MOST_TOLD + 1} more`];
