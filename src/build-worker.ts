/** One house made in a process of its own; what it says goes back to the front door, and what it worked out does not. */
import { buildHouse, type MadeEdition } from './build.js';
import type { Located } from './diagnostics/report.js';
import type { HouseOrder } from './house-order.js';

/** What can be sent from one process to another. */
export interface HouseMade {
  readonly located: readonly Located[];
  readonly made: readonly MadeEdition[];
}

export default async function make(order: HouseOrder): Promise<HouseMade> {
  const { located, made } = await buildHouse(order);
  return { located, made };
}
