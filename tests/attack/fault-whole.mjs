/** Whether bags and deliveries agree with their own digests, as `verify` and `deliveries` look at them. */
import { existsSync, readdirSync } from 'node:fs';
import path from 'node:path';
import { openBag } from '../../dist/archive/open-bag.js';
import { verifyBag } from '../../dist/archive/verify-bag.js';
import { lookAtDelivery } from '../../dist/archive/verify-delivery.js';
import { HOUSE, houseIn } from './fault-house.mjs';

/** What is not whole, in words; undefined if all is. @param {string} home @returns {Promise<string | undefined>} */
export async function verifyAll(home) {
  const bags = path.join(home, 'archive', HOUSE);
  for (const name of namesIn(bags)) {
    const report = await verifyBag(await openBag(path.join(bags, name)), name);
    if (report.verdict !== 'whole') return `the bag ${name} is ${report.verdict}`;
  }
  const deliveries = path.join(houseIn(home), 'deliveries');
  for (const name of namesIn(deliveries)) {
    const { differs } = await lookAtDelivery(path.join(deliveries, name));
    if (differs.length > 0) return `the delivery ${name} differs from its digests`;
  }
  return undefined;
}

/** @param {string} folder */
const namesIn = (folder) =>
  existsSync(folder) ? readdirSync(folder).filter((name) => !name.startsWith('.')) : [];
