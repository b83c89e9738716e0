/** Money, rows and rules as a packet says them. Used in the house file alone. */
import type { House } from '../facts/house.js';
import { printMoney } from '../facts/money.js';
import { nameOfPlace } from '../facts/place-name.js';
import { type Places, printDecimal } from '../facts/print-decimal.js';
import { runsOf } from '../facts/row-runs.js';
import type { MoneyRule } from '../tally/money/money-tally.js';
import type { Rich, Run } from './packet.js';
import { link, rich, runsInWords, say, soft, upperFirst } from './rich.js';

/** Cents as dollars; what can't be told is said so. */
export const moneyWords = (cents: number | undefined): string =>
  cents === undefined ? 'not known' : printMoney(cents);

/** Anchor of a row of the cost sheet. */
export const costAnchor = (row: number): string => `cost-${row}`;
/** Anchor of a rule, in the list at the end of the money pages. */
export const ruleAnchor = (id: string): string => `rule-${id}`;

/** More runs of rows than these are counted rather than listed. */
const MOST_RUNS = 60;

/** "4, 7–12", each leading to its row. Rows are ascending. */
export function rowsRuns(rows: readonly number[], anchor: (row: number) => string = costAnchor): Rich {
  const spans = runsOf(rows);
  const runs = spans
    .slice(0, MOST_RUNS)
    .flatMap(([first, last], index): Run[] => [
      ...(index === 0 ? [] : [say(', ')]),
      link(first === last ? String(first) : `${first}–${last}`, anchor(first)),
    ]);
  const more = spans.length - MOST_RUNS;
  return more > 0 ? [...runs, say(` and more: ${rows.length} rows`)] : runs;
}

/** The rules by number, each leading to its words: "rules 3 and 7". */
export function rulesRuns(ids: readonly string[], rules: readonly MoneyRule[]): Rich {
  const numbered = ids.flatMap((id) => {
    const at = rules.findIndex((rule) => rule.id === id);
    return at === -1 ? [] : [{ number: at + 1, id }];
  });
  return runsInWords(
    numbered
      .sort((a, b) => a.number - b.number)
      .map(({ number, id }) => link(String(number), ruleAnchor(id))),
  );
}

/** A room, level, structure, system or work item by the name that the packet gives it. */
export function placeWords(house: House, id: string | undefined): string {
  if (id === undefined) return 'Whole house';
  const system = house.systems.find((one) => one.id === id);
  if (system !== undefined) return upperFirst(system.name ?? system.is);
  const work = house.work.find((one) => one.id === id);
  if (work !== undefined) return upperFirst(work.what);
  return upperFirst(nameOfPlace(house, id));
}

/** Thousandths of a mile as miles: 18400 → "18.4". */
export const milesWords = (thousandths: number): string => printDecimal(thousandths, 3);
/** Hundredths of an hour as hours: 950 → "9.5". */
export const hoursWords = (hundredths: number): string => printDecimal(hundredths, 2);

/** The same in a column, all with as many decimals as the one with most needs: "21.0" above "18.4". */
export function inColumn(wholes: readonly number[], places: Places): (whole: number) => string {
  const most = Math.max(0, ...wholes.map((whole) => decimalsOf(printDecimal(whole, places))));
  return (whole) => {
    const words = printDecimal(whole, places);
    const have = decimalsOf(words);
    return `${words}${have === 0 && most > 0 ? '.' : ''}${'0'.repeat(most - have)}`;
  };
}

const decimalsOf = (words: string): number => words.split('.')[1]?.length ?? 0;

/** " Rules 3 and 7." behind a sentence; nothing where no rule is behind it. */
export function ruledBy(ids: readonly string[], rules: readonly MoneyRule[]): Rich {
  const behind = rulesRuns(ids, rules);
  if (behind.length === 0) return [];
  return [soft(behind.length === 1 ? ' Rule ' : ' Rules '), ...behind, soft('.')];
}

/** A remark with the rules behind it. */
export const withRules = (text: string, ids: readonly string[], rules: readonly MoneyRule[]): Rich =>
  rich(text, ...ruledBy(ids, rules));
