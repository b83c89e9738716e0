/**
 * Takes the changed reports of the gallery over as the expected ones. Look at them first:
 *
 *   npx vitest run tests/diagnostics.test.ts
 *   node tests/tools/accept-diagnostics.mjs            all that differ
 *   node tests/tools/accept-diagnostics.mjs facts.date  only those whose name begins so
 */
import { readdirSync, renameSync, rmSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const gallery = fileURLToPath(new URL('../diagnostics/', import.meta.url));
const [only = ''] = process.argv.slice(2);
let taken = 0;
for (const file of readdirSync(gallery, { recursive: true, encoding: 'utf8' }).sort()) {
  const name = file.split(path.sep).join('/');
  if (!name.endsWith('/expected-changed/expected.txt') || !name.startsWith(only)) continue;
  const folder = path.dirname(path.join(gallery, file));
  renameSync(path.join(gallery, file), path.join(folder, '..', 'expected.txt'));
  rmSync(folder, { recursive: true });
  process.stdout.write(`${path.posix.join(name, '..', '..')}\n`);
  taken += 1;
}
process.stdout.write(taken === 0 ? 'nothing has changed\n' : `${taken} taken over\n`);
