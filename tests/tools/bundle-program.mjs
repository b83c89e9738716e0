/**
 * Puts the compiled program into a few files. A start of seven hundred small ones takes longer than anything it then does;
 * on a machine that has not read them before, several times as long. Libraries stay what they are: packages beside it.
 *
 * What is started or imported from outside keeps its name in dist/; the rest lies in dist/parts/. The small files stay in
 * a checkout, where tests and timings look into single rooms, and are not packed.
 */
import path from 'node:path';
import { rolldown } from 'rolldown';

/** What is started or imported from outside, by path in dist/, without the ending. */
export const DOORS = [
  'cli',
  'build',
  'build-worker',
  'intake/heic-worker',
  'intake/paper-worker',
  // For .eleventy.js, by which Eleventy's own command can show a house's pages.
  'web/configure-site',
  'facts/house',
  'packet/packet',
];

/**
 * Where a file of the program lies was written for the place it has in dist/; in a bundle it would lie elsewhere.
 *
 * @param {string} dist
 * @returns {import('rolldown').Plugin}
 */
const placesAsCompiled = (dist) => ({
  name: 'places-as-compiled',
  resolveId: (id) => (id === 'compiled-place' ? '\0compiled-place' : null),
  load: (id) =>
    id === '\0compiled-place'
      ? `import { createRequire } from 'node:module';
import { pathToFileURL } from 'node:url';
const root = pathToFileURL(createRequire(import.meta.url).resolve('sillplate/package.json'));
export const compiledPlace = (file) => new URL(\`dist/\${file}\`, root).href;
`
      : null,
  transform: (code, id) => {
    if (!code.includes('import.meta.url') || id.startsWith('\0')) return null;
    const file = path.relative(dist, id).split(path.sep).join('/');
    return {
      code: `import { compiledPlace } from 'compiled-place';\n${code.replaceAll('import.meta.url', `compiledPlace(${JSON.stringify(file)})`)}`,
    };
  },
});

/** @param {string} dist the compiled program; its doors are written over */
export async function bundleProgram(dist) {
  const bundle = await rolldown({
    input: Object.fromEntries(DOORS.map((door) => [door, path.join(dist, `${door}.js`)])),
    platform: 'node',
    external: (id) => !id.startsWith('.') && !path.isAbsolute(id) && !id.includes('compiled-place'),
    plugins: [placesAsCompiled(dist)],
    logLevel: 'warn',
  });
  await bundle.write({
    dir: dist,
    format: 'esm',
    entryFileNames: '[name].js',
    chunkFileNames: 'parts/[name].js',
    cleanDir: false,
  });
  await bundle.close();
}
