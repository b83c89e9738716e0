/** Which rows of a bank stand in the costs already, typed by hand. */
import { daysBetween } from './facts/day-number.js';
import type { KnownCost } from './intake/bank-costs.js';
import type { BankRow } from './intake/bank-rows.js';
import { alike, namesNobody, sameName } from './intake/bank-text.js';
import { keyOf, numberedKey, type SeenRow } from './intake/seen-rows.js';

/** A card books a payment some days late; a check is cashed later still. */
const NEAR_DAYS = 3;
const CHECK_DAYS = 14;
const daysApart = (a: string, b: string): number => Math.abs(daysBetween(a, b));

export interface LookAlike {
  readonly cost: KnownCost;
  /**
   * sure: the payee fits. maybe: the bank’s text names nobody. other-text: it came from a bank before, on that day with
   * those cents, and with another text.
   */
  readonly how: 'sure' | 'maybe' | 'other-text';
}

/** A row that was imported before, of the same day and cents and with another text. */
export interface SeenTwin {
  readonly seen: SeenRow;
  /** Row of the costs that it became; undefined where it was left out, or the row is gone. */
  readonly cost: KnownCost | undefined;
}

/** Rows that were imported before and do not stand in the file at hand: one that does is a payment of its own. */
export class SeenTwins {
  private readonly byDay = new Map<string, SeenTwin[]>();

  constructor(
    seen: readonly SeenRow[],
    costOf: ReadonlyMap<SeenRow, KnownCost>,
    isInFile: (key: string) => boolean,
  ) {
    for (const row of seen) {
      if (isInFile(numberedKey(row))) continue;
      const key = dayAndCents(row);
      this.byDay.set(key, [...(this.byDay.get(key) ?? []), { seen: row, cost: costOf.get(row) }]);
    }
  }

  /** Those that may be the same payment: one whose words are alike first, one that became a row of the costs before one that did not. */
  find(row: BankRow): SeenTwin | undefined {
    const others = (this.byDay.get(dayAndCents(row)) ?? []).filter(({ seen }) => keyOf(seen) !== keyOf(row));
    return (
      others.find(({ seen }) => alike(row.text, seen.text)) ??
      others.find(({ cost }) => cost !== undefined) ??
      others[0]
    );
  }

  /** It stands for one row, and not for the next as well. */
  take(twin: SeenTwin): void {
    const key = dayAndCents(twin.seen);
    this.byDay.set(
      key,
      (this.byDay.get(key) ?? []).filter((one) => one !== twin),
    );
  }
}

const dayAndCents = ({ date, cents }: Pick<BankRow, 'date' | 'cents'>): string => `${date} ${cents}`;

/** Rows of the costs that no row of a bank stands for yet. */
export class OpenCosts {
  private readonly byCents = new Map<number, KnownCost[]>();
  /** What rows that were imported before have become. */
  readonly claimed = new Map<SeenRow, KnownCost>();

  constructor(costs: readonly KnownCost[]) {
    for (const cost of costs) {
      const same = this.byCents.get(cost.cents);
      if (same === undefined) this.byCents.set(cost.cents, [cost]);
      else same.push(cost);
    }
  }

  /**
   * Takes out the rows that stand for what was imported before: first those that fit wholly, so that none takes the
   * place of another. Answers with the payee that the writer has given to a text since.
   */
  claimSeen(seen: readonly SeenRow[]): { readonly row: SeenRow; readonly payee: string }[] {
    const renamed: { row: SeenRow; payee: string }[] = [];
    let open = seen.filter(({ became }) => became === 'added' || became === 'in-costs');
    const fits = (row: SeenRow, { payee }: KnownCost): boolean =>
      (row.payee !== '' && sameName(row.payee, payee)) || alike(row.text, payee);
    const rounds: readonly ((row: SeenRow, cost: KnownCost) => boolean)[] = [
      (row, cost) => cost.date === row.date && sameName(cost.payee, row.payee === '' ? row.text : row.payee),
      (row, cost) => cost.date === row.date && fits(row, cost),
      (row, cost) => cost.date === row.date,
      (row, cost) => daysApart(cost.date, row.date) <= NEAR_DAYS && fits(row, cost),
      (row, cost) =>
        row.became === 'in-costs' && daysApart(cost.date, row.date) <= CHECK_DAYS && fits(row, cost),
    ];
    for (const round of rounds)
      open = open.filter((row) => {
        const cost = this.byCents.get(row.cents)?.find((one) => round(row, one));
        if (cost === undefined) return true;
        this.take(cost);
        this.claimed.set(row, cost);
        if (row.payee === '' && !sameName(cost.payee, row.text)) renamed.push({ row, payee: cost.payee });
        return false;
      });
    return renamed;
  }

  /** The row that may be this one: the same cents, some days apart, the payee alike; the nearest of several. */
  find(row: BankRow, payee: string): LookAlike | undefined {
    const same = this.byCents.get(row.cents) ?? [];
    const bare = namesNobody(row.text);
    const within = row.paid === 'check' ? CHECK_DAYS : NEAR_DAYS;
    let best: LookAlike | undefined;
    for (const cost of same) {
      const far = daysApart(cost.date, row.date);
      const isAlike = sameName(payee, cost.payee) || alike(row.text, cost.payee);
      if (far > within || !(isAlike || bare)) continue;
      const how = isAlike && far <= NEAR_DAYS ? 'sure' : 'maybe';
      const isBetter =
        best === undefined ||
        (how === 'sure' && best.how === 'maybe') ||
        (how === best.how && far < daysApart(best.cost.date, row.date));
      if (isBetter) best = { cost, how };
    }
    return best;
  }

  take(cost: KnownCost): void {
    const same = this.byCents.get(cost.cents) ?? [];
    const at = same.indexOf(cost);
    if (at >= 0) same.splice(at, 1);
  }
}
