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
import { bundleSearch } from './bundle-search.mjs';

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

// The tables of remarks are long and read with every start, so their contents are laid down as JSON, and the lexicon
// cut and sorted, in the place of `src/tally/tables/made.ts`. That is emptied first: what an earlier build laid down
// must not be read for the YAML.
const made = at('dist/tally/tables/made.js');
writeFileSync(made, 'export const madeTable = () => undefined;\n');
const { remarkThings, remarkClasses, remarkWords } = await import(
  pathToFileURL(at('dist/tally/tables/remarks.js')).href
);
const { packLexicon } = await import(pathToFileURL(at('dist/tally/remarks/words/pack-lexicon.js')).href);
const contents = {
  'remarks-things': { things: remarkThings() },
  'remarks-classes': remarkClasses(),
  'remarks-words': remarkWords(),
  'remarks-lexicon': packLexicon(),
};
const texts = Object.entries(contents).map(([name, value]) => [name, JSON.stringify(value)]);
writeFileSync(
  made,
  `const TEXTS = ${JSON.stringify(Object.fromEntries(texts))};
export const madeTable = (name) => (Object.hasOwn(TEXTS, name) ? JSON.parse(TEXTS[name]) : undefined);
`,
);

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
chmodSync(at('dist/cli.js'), 0o755);
