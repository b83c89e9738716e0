/** Which rows of a bank stand in the costs already, typed by hand. */

import type { KnownCost } from './intake/bank-costs.js';
import { daysBetween } from './intake/bank-day.js';
import type { BankRow } from './intake/bank-rows.js';
import { alike, namesNobody, sameName } from './intake/bank-text.js';
import type { SeenRow } from './intake/seen-rows.js';

/** A card books a payment some days late; a check is cashed later still. */
const NEAR_DAYS = 3;
const CHECK_DAYS = 14;

export interface LookAlike {
  readonly cost: KnownCost;
  /** sure: the payee fits. maybe: the bank’s text names nobody. */
  readonly how: 'sure' | 'maybe';
}

/** Rows of the costs that no row of a bank stands for yet. */
export class OpenCosts {
  private readonly byCents = new Map<number, KnownCost[]>();

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
      (row, cost) => daysBetween(cost.date, row.date) <= NEAR_DAYS && fits(row, cost),
      (row, cost) =>
        row.became === 'in-costs' && daysBetween(cost.date, row.date) <= CHECK_DAYS && fits(row, cost),
    ];
    for (const round of rounds)
      open = open.filter((row) => {
        const cost = this.byCents.get(row.cents)?.find((one) => round(row, one));
        if (cost === undefined) return true;
        this.take(cost);
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
      const far = daysBetween(cost.date, row.date);
      const isAlike = sameName(payee, cost.payee) || alike(row.text, cost.payee);
      if (far > within || !(isAlike || bare)) continue;
      const how = isAlike && far <= NEAR_DAYS ? 'sure' : 'maybe';
      const isBetter =
        best === undefined ||
        (how === 'sure' && best.how === 'maybe') ||
        (how === best.how && far < daysBetween(best.cost.date, row.date));
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
