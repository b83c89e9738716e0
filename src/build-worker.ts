/** One house made in a process of its own; what it says goes back to the front door, and what it worked out does not. */
import { buildHouse, type MadeEdition } from './build.js';
import type { Located } from './diagnostics/report.js';
import type { HouseOrder } from './house-order.js';

/** What can be sent from one process to another. */
export interface HouseMade {
  readonly located: readonly Located[];
  readonly made: readonly MadeEdition[];
}

// Whoever asked for the house is gone, killed perhaps: nobody would hear what came of it, and the next build must not
// meet one that still writes. It ends as if it were killed itself, which the next build is ready for.
process.once('disconnect', () => process.exit(1));
// It may have been gone before this line was reached.
if (process.connected === false) process.exit(1);

export default async function make(order: HouseOrder): Promise<HouseMade> {
  const { located, made } = await buildHouse(order);
  return { located, made };
}
