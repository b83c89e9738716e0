/**
 * The search of the pages as one plain script: what `sillplate ask` uses in Node, with MiniSearch in it. Pages are read
 * from a disk, where modules don't load. Runs after every compile.
 */
import { readFileSync } from 'node:fs';
import { rolldown } from 'rolldown';

/** `from`: the compiled module; `to`: the script; `licence`: MiniSearch's, which goes with every copy. All are paths. */
export async function bundleSearch(from, to, licence) {
  const bundle = await rolldown({ input: from, logLevel: 'silent' });
  await bundle.write({
    file: to,
    format: 'iife',
    name: 'sillplateSearch',
    minify: true,
    sourcemap: false,
    banner: `/*! With MiniSearch inside.\n\n${readFileSync(licence, 'utf8').trim()} */`,
  });
  await bundle.close();
}
