/** Several houses made at once, each in one of a few processes that go on to the next. */
import { fileURLToPath } from 'node:url';
import { Tinypool } from 'tinypool';
import type { HouseMade } from './build-worker.js';
import type { HouseOrder } from './house-order.js';

const WORKER = fileURLToPath(new URL('./build-worker.js', import.meta.url));

/**
 * Gives what came of each order, in the order of the orders, whichever ends first. `jobs` processes at most; an order
 * holds nothing that can't be sent to one.
 */
export async function* buildBeside(
  orders: readonly HouseOrder[],
  jobs: number,
  onEnd: () => void,
): AsyncGenerator<HouseMade> {
  const pool = new Tinypool({
    filename: WORKER,
    runtime: 'child_process',
    minThreads: Math.min(jobs, orders.length),
    maxThreads: Math.min(jobs, orders.length),
    // Glibc keeps what each thread of a photo's making has given back: with one arena for all it is half of that.
    env: { ...process.env, MALLOC_ARENA_MAX: '1' },
  });
  const ended = orders.map(async (order) => {
    const made = (await pool.run(order)) as HouseMade;
    onEnd();
    return made;
  });
  // Each is waited for in its turn; one that fails meanwhile must not end the program unseen.
  for (const one of ended) one.catch(() => undefined);
  try {
    for (const one of ended) yield await one;
  } finally {
    await pool.destroy();
  }
}
