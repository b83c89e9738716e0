/** Which rows of a bank stand in the costs already, typed by hand. */
import { dayNumber } from './facts/day-number.js';
import { Queues } from './import-queues.js';
import type { KnownCost } from './intake/bank-costs.js';
import type { BankRow } from './intake/bank-rows.js';
import { alike, namesNobody, sameName } from './intake/bank-text.js';
import { keyOf, numberedKey, type SeenRow } from './intake/seen-rows.js';

/** A card books a payment some days late; a check is cashed later still. */
const NEAR_DAYS = 3;
const CHECK_DAYS = 14;

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
  /** What it is known by. */
  readonly key: string;
  /** Row of the costs that it became; undefined where it was left out, or the row is gone. */
  readonly cost: KnownCost | undefined;
}

/** Rows that were imported before and do not stand in the file at hand: one that does is a payment of its own. */
export class SeenTwins {
  private readonly byDay = new Map<string, Queues<SeenTwin>>();

  constructor(
    seen: readonly SeenRow[],
    costOf: ReadonlyMap<SeenRow, KnownCost>,
    isInFile: (key: string) => boolean,
  ) {
    for (const row of seen) {
      if (isInFile(numberedKey(row))) continue;
      const twin = { seen: row, cost: costOf.get(row), key: keyOf(row) };
      const day = dayAndCents(row);
      const twins = this.byDay.get(day) ?? new Queues();
      this.byDay.set(day, twins);
      twins.add(twinKey(twin), twin);
    }
  }

  /** Those that may be the same payment: one whose words are alike first, one that became a row of the costs before one that did not. */
  find(row: BankRow): SeenTwin | undefined {
    const twins = this.byDay.get(dayAndCents(row));
    if (twins === undefined) return undefined;
    const key = keyOf(row);
    return (
      twins.find((one) => one.key !== key && alike(row.text, one.seen.text)) ??
      twins.find((one) => one.key !== key && one.cost !== undefined) ??
      twins.find((one) => one.key !== key)
    );
  }

  /** It stands for one row, and not for the next as well. */
  take(twin: SeenTwin): void {
    this.byDay.get(dayAndCents(twin.seen))?.take(twinKey(twin), twin);
  }
}

const dayAndCents = ({ date, cents }: Pick<BankRow, 'date' | 'cents'>): string => `${date} ${cents}`;

/** All that is asked of a twin of one day and so many cents. */
const twinKey = ({ seen, cost }: SeenTwin): string =>
  JSON.stringify([seen.text, seen.reference, cost !== undefined]);

/** Rows of the costs that no row of a bank stands for yet. */
export class OpenCosts {
  /** By cents, then by day; of one day those with one payee in a queue. */
  private readonly byCents = new Map<number, Map<number, Queues<KnownCost>>>();
  /** What rows that were imported before have become. */
  readonly claimed = new Map<SeenRow, KnownCost>();

  constructor(costs: readonly KnownCost[]) {
    for (const cost of costs) {
      const days = this.byCents.get(cost.cents) ?? new Map<number, Queues<KnownCost>>();
      this.byCents.set(cost.cents, days);
      const day = dayNumber(cost.date);
      const same = days.get(day) ?? new Queues();
      days.set(day, same);
      same.add(cost.payee, cost);
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
    const rounds: readonly {
      readonly within: number;
      readonly isMeant?: (row: SeenRow) => boolean;
      readonly fits: (row: SeenRow, cost: KnownCost) => boolean;
    }[] = [
      { within: 0, fits: (row, cost) => sameName(cost.payee, row.payee === '' ? row.text : row.payee) },
      { within: 0, fits },
      { within: 0, fits: () => true },
      { within: NEAR_DAYS, fits },
      { within: CHECK_DAYS, isMeant: ({ became }) => became === 'in-costs', fits },
    ];
    for (const round of rounds)
      open = open.filter((row) => {
        if (round.isMeant?.(row) === false) return true;
        const cost = this.firstNear(row, round.within, (one) => round.fits(row, one));
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
    const bare = namesNobody(row.text);
    const within = row.paid === 'check' ? CHECK_DAYS : NEAR_DAYS;
    let best: Candidate | undefined;
    for (const { far, same } of this.near(row, within))
      for (const cost of same.firsts()) {
        const isAlike = sameName(payee, cost.payee) || alike(row.text, cost.payee);
        if (!(isAlike || bare)) continue;
        const one = { cost, how: isAlike && far <= NEAR_DAYS ? 'sure' : 'maybe', far } as const;
        if (best === undefined || isBetter(one, best)) best = one;
      }
    return best && { cost: best.cost, how: best.how };
  }

  take(cost: KnownCost): void {
    this.byCents.get(cost.cents)?.get(dayNumber(cost.date))?.take(cost.payee, cost);
  }

  /** The uppermost row of the sheet that fits. */
  private firstNear(row: SeenRow, within: number, fits: (cost: KnownCost) => boolean): KnownCost | undefined {
    let first: KnownCost | undefined;
    for (const { same } of this.near(row, within)) {
      const found = same.find(fits);
      if (found !== undefined && (first === undefined || found.row < first.row)) first = found;
    }
    return first;
  }

  private *near(
    { cents, date }: Pick<BankRow, 'cents' | 'date'>,
    within: number,
  ): Generator<{ readonly far: number; readonly same: Queues<KnownCost> }> {
    const days = this.byCents.get(cents);
    if (days === undefined) return;
    const day = dayNumber(date);
    for (let off = -within; off <= within; off += 1) {
      const same = days.get(day + off);
      if (same !== undefined) yield { far: Math.abs(off), same };
    }
  }
}

interface Candidate extends LookAlike {
  /** Days from the bank's row. */
  readonly far: number;
}

/** Sure before perhaps, then the nearer day, then the uppermost row. */
const isBetter = (one: Candidate, other: Candidate): boolean =>
  one.how !== other.how
    ? one.how === 'sure'
    : one.far !== other.far
      ? one.far < other.far
      : one.cost.row < other.cost.row;
