/**
 * Makes the photos of a folder ready with the compiled program, in a process of its own that can be killed.
 *
 *   node tests/tools/develop-in-process.mjs PHOTOS CACHE [and-wait]
 *
 * With `and-wait` it does not end by itself. Prints a line for every step, and at last one line of JSON: each photo's files and their digests.
 */
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { developPhotos } from '../../dist/intake/develop-photos.js';
import { lookAtPhoto } from '../../dist/intake/look-at-photo.js';

const [, , folder, cache, andWait] = process.argv;
const orders = [];
for (const name of readdirSync(folder).sort()) {
  const { file } = await lookAtPhoto({ id: name, name, original: path.join(folder, name), huge: false });
  orders.push({ file, hide: [[0.1, 0.1, 0.2, 0.2]], use: 'full' });
}
const say = (line) => process.stdout.write(`${line}\n`);
const { pictures, failed, diagnostics } = await developPhotos(orders, {
  cache,
  shownCache: 'cache',
  program: 'test',
  onPhoto: (name, done) => say(`photo ${done} ${name}`),
});
const digest = (file) => createHash('sha256').update(readFileSync(file)).digest('hex');
const made = [...pictures].sort().map(([id, { sizes, tiny }]) => ({
  id,
  tiny,
  files: sizes.flatMap(({ jpeg, avif }) => [digest(jpeg.file), digest(avif.file)]),
}));
say(JSON.stringify({ made, failed: [...failed], diagnostics }));
if (andWait !== undefined) setInterval(() => undefined, 1000);
