/**
 * What of dist/ no user of the package can reach: of some 740 type declarations all but 85, and of as many compiled files
 * those that `bundle-program.mjs` put into a few. Tests and timings look into them; the package leaves them out.
 */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { DOORS } from './bundle-program.mjs';

const root = fileURLToPath(new URL('../../', import.meta.url));
const dist = path.join(root, 'dist');

/** Their paths from the project's folder, with forward slashes. */
export function innerFiles() {
  const { exports: opened } = JSON.parse(readFileSync(path.join(root, 'package.json'), 'utf8'));
  const reached = new Set();
  for (const { types } of Object.values(opened))
    if (types !== undefined) follow(path.join(root, types), reached);
  const doors = new Set(DOORS.map((door) => path.join(dist, `${door}.js`)));
  return readdirSync(dist, { recursive: true, encoding: 'utf8' })
    .filter((name) => {
      const file = path.join(dist, name);
      if (name.endsWith('.d.ts')) return !reached.has(file);
      return name.endsWith('.js') && !/^(parts|browser)[\\/]/.test(name) && !doors.has(file);
    })
    .map((name) => path.posix.join('dist', name.split(path.sep).join('/')));
}

/** What a declaration takes from another, by `import … from`, `export … from` or `import('…').Name`. */
function follow(file, reached) {
  if (reached.has(file)) return;
  reached.add(file);
  for (const [, from] of readFileSync(file, 'utf8').matchAll(
    /(?:from |import\(|import )['"](\.[^'"]+)['"]/g,
  )) {
    const next = path.resolve(path.dirname(file), from).replace(/\.js$/, '.d.ts');
    if (!existsSync(next))
      throw new Error(`${path.relative(root, file)} takes types from ${from}, which has none`);
    follow(next, reached);
  }
}
