/**
 * Makes photos ready in a process of its own, as a build does before it loads anything else: first without a cache, then
 * with it. Prints milliseconds, processor time and the most memory held, as JSON.
 *
 *   node tests/bench/photo-process.mjs CACHE PHOTO…
 */
import { readFileSync, rmSync } from 'node:fs';
import { developPhotos } from '../../dist/intake/develop-photos.js';
import { ordersFor } from './phone-photos.mjs';

const [, , cache = '', ...originals] = process.argv;
const orders = await ordersFor(originals);
rmSync(cache, { recursive: true, force: true });

async function develop() {
  const before = process.cpuUsage();
  const started = performance.now();
  const { pictures } = await developPhotos(orders, { cache, shownCache: 'cache', program: 'bench' });
  const clock = performance.now() - started;
  const { user, system } = process.cpuUsage(before);
  if (pictures.size !== orders.length)
    throw new Error(`${orders.length - pictures.size} photos were not made`);
  return { clock, cpu: (user + system) / 1000 };
}

const cold = await develop();
const warm = await develop();
// Linux hands the most memory that a parent held on to its children in getrusage; this is the process's own (man 5 proc).
const status = readFileSync('/proc/self/status', 'utf8');
const peakMb = Number(/^VmHWM:\s+(\d+) kB$/m.exec(status)?.[1]) / 1024;
process.stdout.write(JSON.stringify({ cold, warm, peakMb }));
