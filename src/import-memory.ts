/**
 * What is proposed for a row of a bank: payee, bucket and place by what was chosen before, in this house and the houses
 * beside it. Nothing is made up: where nothing was chosen, the bank's own text stands for the payee and there is no bucket.
 */
import { BUCKET_NAMES, type Bucket } from './facts/bucket.js';
import { nameKey } from './facts/name-key.js';
import type { KnownCost } from './intake/bank-costs.js';
import type { BankRow } from './intake/bank-rows.js';
import { holdsName, namesNobody, plainText, sameStem, stemOf } from './intake/bank-text.js';
import type { SeenRow } from './intake/seen-rows.js';

export interface Proposal {
  readonly payee: string;
  /** The payee was chosen for such a text before, or stands in a cost sheet. */
  readonly isKnown: boolean;
  /** The one used most for the payee; of several the latest. */
  readonly bucket: Bucket | undefined;
  /** What the proposed bucket rests on; undefined without one. */
  readonly history: History | undefined;
  /** Where every row of the payee in this house has the same place. */
  readonly place: string | undefined;
  /** latest: the last such payment was not of this house. always: none ever was. */
  readonly notThisHouse: 'latest' | 'always' | undefined;
}

/** The rows of a payee that have a bucket, in this house and those beside it. */
export interface History {
  /** Too many of them have another bucket for the proposed one to be taken over unasked. */
  readonly isMixed: boolean;
  /** Every bucket of the payee and its rows, the proposed one first. */
  readonly buckets: readonly { readonly bucket: Bucket; readonly rows: number }[];
  /** Houses with rows of the proposed bucket, this house first, then those with most: how many, and of how many. */
  readonly houses: readonly {
    /** Undefined: this house. */
    readonly house: string | undefined;
    readonly rows: number;
    readonly of: number;
  }[];
}

/** A bucket is taken over unasked if this many hundredths of the payee’s rows have it. */
const TAKEN_OVER_FROM = 80;

interface Used {
  count: number;
  latest: string;
  /** Rows by house; undefined: this house. */
  readonly houses: Map<string | undefined, number>;
}

interface Chosen {
  readonly payee: string;
  readonly date: string;
}

export class PayeeMemory {
  private readonly buckets = new Map<string, Map<Bucket, Used>>();
  private readonly places = new Map<string, Set<string | undefined>>();
  /** Names as they are written, the latest spelling of each. */
  private readonly names = new Map<string, Chosen>();
  private readonly byText = new Map<string, Chosen>();
  private readonly fates = new Map<string, { latest: string; isThis: boolean; ever: boolean }>();
  private readonly held = new Map<string, string | undefined>();

  /** A row of a cost sheet; one without a bucket tells nothing yet. `house`: the one beside this that it is of. */
  addCost({ payee, bucket, date, place }: Omit<KnownCost, 'row' | 'what' | 'cents'>, house?: string): void {
    // A row that an import left open may still bear the bank's text instead of a name.
    if (bucket === undefined) return;
    const key = nameKey(payee);
    if (!this.names.has(key)) this.held.clear();
    keepLatest(this.names, key, { payee, date });
    if (house === undefined) this.places.set(key, (this.places.get(key) ?? new Set()).add(place));
    const used = this.buckets.get(key) ?? new Map<Bucket, Used>();
    this.buckets.set(key, used);
    const one = used.get(bucket) ?? { count: 0, latest: '', houses: new Map() };
    used.set(bucket, one);
    one.count += 1;
    if (date > one.latest) one.latest = date;
    one.houses.set(house, (one.houses.get(house) ?? 0) + 1);
  }

  /** A row that was imported once. */
  addSeen(
    { text, payee, date, became }: Pick<SeenRow, 'text' | 'payee' | 'date' | 'became'>,
    own: boolean,
  ): void {
    const keys = textKeys(text);
    if (payee !== '') for (const key of keys) keepLatest(this.byText, key, { payee, date });
    if (!own || became === 'left-out') return;
    const isThis = became !== 'not-this-house';
    for (const key of keys) {
      const fate = this.fates.get(key);
      if (fate === undefined) this.fates.set(key, { latest: date, isThis, ever: isThis });
      else {
        fate.ever ||= isThis;
        if (date >= fate.latest) [fate.latest, fate.isThis] = [date, isThis];
      }
    }
  }

  propose({ text }: Pick<BankRow, 'text'>): Proposal {
    const known = this.payeeOf(text);
    const fate = textKeys(text)
      .map((key) => this.fates.get(key))
      .find((one) => one !== undefined);
    const notThisHouse = fate === undefined || fate.isThis ? undefined : fate.ever ? 'latest' : 'always';
    return { ...this.about(known ?? text), isKnown: known !== undefined, notThisHouse };
  }

  /** What is known of a payee by name. */
  about(payee: string): Pick<Proposal, 'payee' | 'bucket' | 'history' | 'place'> {
    const key = nameKey(payee);
    const places = [...(this.places.get(key) ?? [])];
    const used = mostUsedFirst(this.buckets.get(key));
    return {
      payee,
      bucket: used[0]?.[0],
      history: historyOf(used),
      place: places.length === 1 ? places[0] : undefined,
    };
  }

  /** The name as it was written before, if only capitals and signs differ. */
  spelling(payee: string): string {
    return this.names.get(nameKey(payee))?.payee ?? payee;
  }

  private payeeOf(text: string): string | undefined {
    for (const key of textKeys(text)) {
      const chosen = this.byText.get(key);
      if (chosen !== undefined) return chosen.payee;
    }
    if (namesNobody(text)) return undefined;
    const same = this.names.get(nameKey(text));
    if (same !== undefined) return same.payee;
    const stem = stemOf(text);
    if (!this.held.has(stem)) this.held.set(stem, this.longestHeld(text));
    return this.held.get(stem);
  }

  private longestHeld(text: string): string | undefined {
    let best: string | undefined;
    for (const { payee } of this.names.values())
      if (
        holdsName(text, payee) &&
        (best === undefined || payee.length > best.length || (payee.length === best.length && payee < best))
      )
        best = payee;
    return best;
  }
}

/** The text itself, then its words without numbers; none where it names nobody. */
function textKeys(text: string): string[] {
  if (namesNobody(text)) return [];
  const stem = stemOf(text);
  return sameStem(stem, `${stem} 1`)
    ? [`text ${plainText(text)}`, `stem ${stem}`]
    : [`text ${plainText(text)}`];
}

function keepLatest(map: Map<string, Chosen>, key: string, one: Chosen): void {
  const before = map.get(key);
  // Of one day the name that comes first in the alphabet, so that the order of the rows does not matter.
  if (
    before === undefined ||
    one.date > before.date ||
    (one.date === before.date && one.payee < before.payee)
  )
    map.set(key, one);
}

function mostUsedFirst(used: ReadonlyMap<Bucket, Used> | undefined): [Bucket, Used][] {
  const all = [...(used ?? [])];
  all.sort(
    ([a, one], [b, other]) =>
      other.count - one.count ||
      (one.latest === other.latest
        ? BUCKET_NAMES.indexOf(a) - BUCKET_NAMES.indexOf(b)
        : one.latest > other.latest
          ? -1
          : 1),
  );
  return all;
}

function historyOf(used: readonly [Bucket, Used][]): History | undefined {
  const most = used[0]?.[1];
  if (most === undefined) return undefined;
  const rowsIn = (house: string | undefined): number =>
    used.reduce((sum, [, { houses }]) => sum + (houses.get(house) ?? 0), 0);
  const all = used.reduce((sum, [, { count }]) => sum + count, 0);
  return {
    isMixed: most.count * 100 < all * TAKEN_OVER_FROM,
    buckets: used.map(([bucket, { count }]) => ({ bucket, rows: count })),
    houses: [...most.houses]
      .map(([house, rows]) => ({ house, rows, of: rowsIn(house) }))
      .sort((a, b) =>
        a.house === undefined || b.house === undefined
          ? Number(b.house === undefined) - Number(a.house === undefined)
          : b.rows - a.rows || (a.house < b.house ? -1 : 1),
      ),
  };
}
