/**
 * Rows that differ in nothing that is asked of them stand in one queue, and only the first of each is looked at: a list may
 * have sixty thousand equal rows.
 */

/**
 * More queues than these are not looked through: nobody pays one amount to a hundred different names on one day, and
 * holding thousands of rows against thousands takes minutes.
 */
const MOST_LOOKED_AT = 100;

interface Queued<One> {
  readonly one: One;
  /** Its place among all that were added. */
  readonly place: number;
}

interface Queue<One> {
  readonly all: Queued<One>[];
  /** How many of it were taken. */
  taken: number;
}

export class Queues<One> {
  private readonly queues = new Map<string, Queue<One>>();
  private added = 0;

  /** `key` holds all that will be asked of it. */
  add(key: string, one: One): void {
    const queued = { one, place: this.added++ };
    const queue = this.queues.get(key);
    if (queue === undefined) this.queues.set(key, { all: [queued], taken: 0 });
    else queue.all.push(queued);
  }

  /** The first of each queue. */
  *firsts(): Generator<One> {
    for (const { one } of this.queued()) yield one;
  }

  /** Of all that fit, the one that was added first. */
  find(fits: (one: One) => boolean): One | undefined {
    let best: Queued<One> | undefined;
    for (const first of this.queued())
      if ((best === undefined || first.place < best.place) && fits(first.one)) best = first;
    return best?.one;
  }

  private *queued(): Generator<Queued<One>> {
    let looked = 0;
    for (const { all, taken } of this.queues.values()) {
      const first = all[taken];
      if (first !== undefined) yield first;
      looked += 1;
      if (looked >= MOST_LOOKED_AT) return;
    }
  }

  /** It is found no more. Only the first of a queue is taken: no other was ever given out. */
  take(key: string, one: One): void {
    const queue = this.queues.get(key);
    if (queue === undefined || queue.all[queue.taken]?.one !== one) return;
    queue.taken += 1;
    if (queue.taken === queue.all.length) this.queues.delete(key);
  }
}
