/** Makes photos ready in a process of its own and prints the most memory it held, in megabytes, and the milliseconds it took. */
import { developPhotos } from '../../dist/intake/develop-photos.js';
import { ordersFor } from './phone-photos.mjs';

const [, , cache = '', ...originals] = process.argv;
const orders = await ordersFor(originals);
const started = performance.now();
const { pictures } = await developPhotos(orders, { cache, shownCache: 'cache', program: 'bench' });
if (pictures.size !== orders.length) throw new Error(`${orders.length - pictures.size} photos were not made`);
const took = performance.now() - started;
process.stdout.write(JSON.stringify({ peakMb: process.resourceUsage().maxRSS / 1024, took }));
