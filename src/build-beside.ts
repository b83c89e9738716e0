/** Several houses made at once, each in one of a few processes that go on to the next. */
import { fileURLToPath } from 'node:url';
import { Tinypool } from 'tinypool';
import type { HouseMade } from './build-worker.js';
import type { Diagnostic } from './diagnostics/diagnostic.js';
import { NOWHERE } from './diagnostics/place.js';
import { locate } from './diagnostics/report.js';
import { typedHouse } from './find-houses.js';
import type { HouseOrder } from './house-order.js';

const WORKER = fileURLToPath(new URL('./build-worker.js', import.meta.url));

/** A process that dies, or meets a mistake of ours, takes its house with it and no other. */
const broken = ({ shown }: HouseOrder, { message }: Error): Diagnostic => ({
  code: 'bug.internal',
  severity: 'error',
  file: shown,
  message: `the process that made this house ended (${message}); nothing of it was written`,
  hints: [`to see why, make it by itself:  sillplate build ${typedHouse(shown)}`],
});

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
    try {
      return (await pool.run(order)) as HouseMade;
    } catch (thrown) {
      return { located: locate([broken(order, thrown as Error)], NOWHERE), made: [] };
    } finally {
      onEnd();
    }
  });
  try {
    // What was told is let go.
    for (let one = ended.shift(); one !== undefined; one = ended.shift()) yield await one;
  } finally {
    await pool.destroy();
  }
}
