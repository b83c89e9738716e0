import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';

// The program names commands behind `npx` where npx started it; tests say the same however they were started.
delete process.env.npm_lifecycle_event;

/** Pure code: no process, no browser, no folder of its own. A file that is not named here is a careful one. */
const FAST = [
  'tests/rooms/{facts,tally,packet,diagnostics}-*.test.ts',
  'tests/rooms/print-{letters,lines,plan,sides}.test.ts',
  'tests/outside/{ages,calendar,dates,lead,measuring,quantities,safety,schema}-*.test.ts',
  'tests/outside/areas-d3-polygon.test.ts',
  'tests/properties/packets.test.ts',
  'tests/architecture.test.ts',
  'tests/docs.test.ts',
];

/**
 * May share a process, with the program loaded once for all of them: they change nothing in it, nothing of the process, and
 * write into folders of their own. What mocks, sets a time zone or measures memory is a careful one.
 */
const TOGETHER = [
  'tests/{diagnostics,houses}.test.ts',
  'tests/outside/{advertising,bag,duties}-*.test.ts',
  'tests/outside/{areas-shapely,csv-papaparse,irs-examples,journal-hledger,private-files}.test.ts',
  'tests/outside/{lengths-gnu-units,listing-fields-reso,pdf-form,pdf-qpdf,pdf-text,search-chromium}.test.ts',
  'tests/outside/{shaping-two-libraries,sheet-libreoffice,workbook-libreoffice}.test.ts',
  'tests/properties/{clashes,drawings,remarks-draft,withheld}.test.ts',
  'tests/rooms/archive-{bag-manifest,bag-mutated,bag-sealed,output-place,write-tree}.test.ts',
  'tests/rooms/cli-{archive,ask,costs-import,new,remarks,serve}.test.ts',
  'tests/rooms/{deliveries,demo-ledgers,ledger-comes-back,remarks-own-words,report,search-entries}.test.ts',
  'tests/rooms/intake-{bank,cover,edit-yaml,ledger,ledger-*,paper-plates,pasted-hints}.test.ts',
  'tests/rooms/print-{bad-input,bindings,character-map,file,form,photos}.test.ts',
  'tests/rooms/web-{by-hand,drawings,links,pages,pair-access,panorama,photo-layout,photos,site}.test.ts',
];

/** Only look at houses that were built once for all of them. */
const BUILT = [
  'tests/outside/{axe-chromium,html-validate,packet-values,pages-and-links,photos-exiftool,page-pictures}.test.ts',
  'tests/outside/{pdf-attachments,pdf-reading-order,pdf-verapdf,qr-jsqr}.test.ts',
];

export default defineConfig({
  test: {
    reporters: ['default', './tests/tools/no-silent-skips.ts'],
    // Both cores of a small machine; by itself vitest leaves one to its own process, which has little to do.
    maxWorkers: Math.max(2, availableParallelism() - 1),
    coverage: {
      // Every branch of what is worked out is taken by a pure test: `npm test` runs those first, and counts.
      include: ['src/tally/**/*.ts'],
      thresholds: { branches: 100 },
      reporter: ['text-summary', 'html', 'json'],
    },
    projects: [
      {
        test: {
          name: 'fast',
          include: FAST,
          pool: 'threads',
          isolate: false,
          testTimeout: 20_000,
        },
      },
      {
        test: {
          name: 'careful',
          include: ['tests/**/*.test.ts'],
          exclude: [...FAST, ...TOGETHER, ...BUILT],
          pool: 'forks',
          isolate: true,
          testTimeout: 120_000,
          hookTimeout: 120_000,
        },
      },
      {
        test: {
          name: 'together',
          include: TOGETHER,
          pool: 'forks',
          isolate: false,
          testTimeout: 120_000,
          hookTimeout: 120_000,
        },
      },
      {
        test: {
          name: 'built',
          include: BUILT,
          pool: 'forks',
          isolate: false,
          globalSetup: ['tests/tools/build-houses.ts'],
          testTimeout: 240_000,
          hookTimeout: 240_000,
        },
      },
    ],
  },
});
