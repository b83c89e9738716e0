/**
 * What `tsc` leaves behind: the pages' own script, which runs in a browser and so has a configuration of its own;
 * tables as YAML, typefaces from their npm packages, the JSON Schema.
 * Runs after every compile; everything lands in dist/, which is what the package ships.
 */
import { execFileSync } from 'node:child_process';
import { chmodSync, copyFileSync, mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { bundleProgram } from './bundle-program.mjs';
import { bundleSearch } from './bundle-search.mjs';
import { makeTables } from './make-tables.mjs';

const root = fileURLToPath(new URL('../../', import.meta.url));
const at = (...parts) => path.join(root, ...parts);
const packageFolder = (name) => path.dirname(createRequire(import.meta.url).resolve(`${name}/package.json`));

const compiler = path.join(packageFolder('typescript'), 'bin/tsc');
execFileSync(process.execPath, [compiler, '-p', at('src/web/browser')], { stdio: 'inherit' });
await bundleSearch(
  at('dist/packet/answers/find-entries.js'),
  at('dist/browser/search-engine.js'),
  at('node_modules/minisearch/LICENSE.txt'),
);

for (const file of readdirSync(at('src/tally/tables'), { recursive: true })) {
  if (!file.endsWith('.yaml')) continue;
  mkdirSync(path.dirname(at('dist/tally/tables', file)), { recursive: true });
  copyFileSync(at('src/tally/tables', file), at('dist/tally/tables', file));
}

await makeTables(at('dist'));

mkdirSync(at('dist/fonts'), { recursive: true });
for (const [name, family] of [
  ['source-serif', 'SourceSerif4'],
  ['source-sans', 'SourceSans3'],
]) {
  const folder = packageFolder(name);
  for (const cut of ['Regular', 'It', 'Semibold']) {
    copyFileSync(path.join(folder, 'TTF', `${family}-${cut}.ttf`), at('dist/fonts', `${family}-${cut}.ttf`));
    copyFileSync(
      path.join(folder, 'WOFF2/TTF', `${family}-${cut}.ttf.woff2`),
      at('dist/fonts', `${family}-${cut}.woff2`),
    );
  }
  copyFileSync(path.join(folder, 'LICENSE.md'), at('dist/fonts', `OFL-${family}.txt`));
}

const { fileJsonSchema } = await import(pathToFileURL(at('dist/facts/json-schema.js')).href);
writeFileSync(at('dist/house.schema.json'), `${JSON.stringify(fileJsonSchema(), null, 2)}\n`);
await bundleProgram(at('dist'));
chmodSync(at('dist/cli.js'), 0o755);
