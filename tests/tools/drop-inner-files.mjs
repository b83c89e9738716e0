/**
 * Takes away what no user of the package can reach: of some 740 type declarations there are 85 left, and of as many
 * compiled files those that `bundle-program.mjs` made of them. Runs between a compile and `npm pack`; a compile brings
 * the others back.
 */
import { existsSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { DOORS } from './bundle-program.mjs';

const root = fileURLToPath(new URL('../../', import.meta.url));
const { exports: opened } = JSON.parse(readFileSync(path.join(root, 'package.json'), 'utf8'));

const reached = new Set();
for (const { types } of Object.values(opened)) if (types !== undefined) follow(path.join(root, types));

const dist = path.join(root, 'dist');
const doors = new Set(DOORS.map((door) => path.join(dist, `${door}.js`)));
for (const name of readdirSync(dist, { recursive: true })) {
  const file = path.join(dist, name);
  const isInner = file.endsWith('.js')
    ? !/^(parts|browser)[\\/]/.test(name) && !doors.has(file)
    : file.endsWith('.d.ts') && !reached.has(file);
  if (isInner) rmSync(file);
}

/** What a declaration takes from another, by `import … from`, `export … from` or `import('…').Name`. */
function follow(file) {
  if (reached.has(file)) return;
  reached.add(file);
  for (const [, from] of readFileSync(file, 'utf8').matchAll(
    /(?:from |import\(|import )['"](\.[^'"]+)['"]/g,
  )) {
    const next = path.resolve(path.dirname(file), from).replace(/\.js$/, '.d.ts');
    if (!existsSync(next))
      throw new Error(`${path.relative(root, file)} takes types from ${from}, which has none`);
    follow(next);
  }
}
