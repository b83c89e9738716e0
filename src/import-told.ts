/** What became of how many rows of a bank's file, in words. */
import { visible } from './diagnostics/report.js';
import { printMoney } from './facts/money.js';
import type { ImportResult } from './import-bank.js';
import type { Decision } from './import-decision.js';

/** More rows than these are not told one by one. */
const MOST_TOLD = 12;

export function importTold(result: ImportResult): string {
  const { decisions, sheetRows, isDry, sheet, bank, seenBefore, notAsked, passedOver } = result;
  const of = (became: Decision['became']): Decision[] => decisions.filter((one) => one.became === became);
  const added = of('added');
  const rowOf = (decision: Decision): number => sheetRows.get(decision) ?? 0;
  const open = added.filter(({ cost }) => cost?.bucket === undefined);
  const maybe = added.filter(({ alike }) => alike !== undefined);
  const sheetName = visible(sheet);
  const list: [count: number, words: string, details: readonly string[]][] = [
    [
      added.length,
      `${isDry ? 'would be added' : 'added'} to ${sheetName}${isDry || added.length === 0 ? '' : `, ${rowRange(added.map(rowOf))}`}`,
      isDry
        ? added.map(
            (one) =>
              `${rowWords(one)}  →  ${visible(one.cost?.payee ?? '')}, ${one.cost?.bucket ?? 'no bucket'}`,
          )
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
    lines.push(...shortened(details).map((line) => `${' '.repeat(width + 4)}${line}`));
  }
  if (isDry) lines.push('', 'Nothing is written (--dry-run).');
  else lines.push(...whatNext(result, open, maybe, rowOf));
  return `${lines.join('\n')}\n`;
}

function whatNext(
  { pasteInto, sheet, house, decisions }: ImportResult,
  open: readonly Decision[],
  maybe: readonly Decision[],
  rowOf: (decision: Decision) => number,
): string[] {
  const lines: string[] = [];
  if (open.length > 0)
    lines.push(
      `Without a bucket: ${rowRange(open.map(rowOf))}. Nobody like them was paid before; write what they were for.`,
    );
  for (const one of maybe.slice(0, MOST_TOLD))
    lines.push(
      `Row ${rowOf(one)} may be the same payment as row ${one.alike?.cost.row} (${visible(one.alike?.cost.payee ?? '')}): if so, take one out.`,
    );
  if (maybe.length > MOST_TOLD)
    lines.push(`… and ${maybe.length - MOST_TOLD} more that may stand there already.`);
  if (decisions.some(({ became }) => became === 'left-out' || became === 'not-this-house'))
    lines.push(
      `What was left out stands in ${visible(house)}/imports/seen.csv; take its row out there, and it is offered again.`,
    );
  if (decisions.some(({ became }) => became === 'added'))
    lines.push(
      pasteInto === undefined
        ? `Next:  sillplate check ${visible(house)}`
        : `Paste the rows of ${visible(sheet)} below those of ${visible(pasteInto)}, and delete the file; or save ${visible(pasteInto)} as costs.csv, and rows are added by themselves.`,
    );
  return lines.length === 0 ? [] : ['', ...lines];
}

const rowWords = ({ row }: Decision): string =>
  `${row.date}  ${visible(row.text)}  ${printMoney(Math.abs(row.cents))}${row.cents < 0 ? ' came in' : ''}`;

const shortened = (lines: readonly string[]): string[] =>
  lines.length <= MOST_TOLD
    ? [...lines]
    : [...lines.slice(0, MOST_TOLD - 1), `… and ${lines.length - MOST_TOLD + 1} more`];

/** "row 31", "rows 31 to 34", "rows 31, 33, 40 to 42". */
function rowRange(rows: readonly number[]): string {
  const ranges: [from: number, to: number][] = [];
  for (const row of rows) {
    const last = ranges.at(-1);
    if (last !== undefined && row === last[1] + 1) last[1] = row;
    else ranges.push([row, row]);
  }
  const words = ranges.map(([from, to]) =>
    from === to ? `${from}` : to === from + 1 ? `${from}, ${to}` : `${from} to ${to}`,
  );
  return `${rows.length === 1 ? 'row' : 'rows'} ${words.join(', ')}`;
}
