/**
 * What nothing uses: files, exports, dependencies. `npm run check:unused` fails where there is any.
 *
 * It looks twice. The first look takes tests and tools for users as well, and finds each `export` that no other file
 * needs. The second, `--production`, sees the program alone: what only its own tests use is dead in it.
 */
const production = process.argv.includes('--production');

export default {
  // An exclamation mark: belongs to the program, so the second look begins there, too.
  entry: [
    // The command, and what `exports` of package.json opens to other programs.
    'src/{cli,build}.ts!',
    'src/facts/house.ts!',
    'src/packet/packet.ts!',
    // Started by path, in a process or a thread of their own.
    'src/build-worker.ts!',
    'src/intake/heic-worker.ts!',
    'src/intake/paper-worker.ts!',
    // Run in a page.
    'src/web/browser/{pair,search}.ts!',
    // Eleventy's own command, and what it asks of a compiled program.
    '.eleventy.js!',
    'src/web/configure-site.ts!',
    // What the end of a compile and the tables of the README are made with.
    'src/facts/{json-schema,field-table}.ts!',
    // Started by hand.
    'tests/tools/{accept,write}-*.mjs',
    'tests/scenes/*/papers.mjs',
    // Started by path.
    'tests/bench/paper-{pdfkit,print}.mjs',
  ],
  project: ['src/**/*.ts!', 'tests/**/*.{ts,mjs}'],
  // Its plugin runs .eleventy.js, which wants a date and a compiled program.
  eleventy: false,
  ignoreDependencies: [
    // Eleventy loads it. It is pinned here, since src/web/compile-once.ts reaches into what that gives it.
    'nunjucks',
    // tests/tools/copy-data.mjs copies the typefaces, by names that stand in a list.
    ...(production ? [] : ['source-sans', 'source-serif']),
  ],
  // The first look asks whether the word `export` is needed, the second only whether something is.
  ignoreExportsUsedInFile: production,
  // Programs of the system are no packages; tests/tools/prepare.mjs names those that checks compare with.
  exclude: ['binaries'],
  treatConfigHintsAsErrors: true,
};
