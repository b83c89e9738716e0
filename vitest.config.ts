import { defineConfig } from 'vitest/config';

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

/** Only look at houses that were built once for all of them. */
const BUILT = ['tests/outside/{packet-values,pages-and-links,photos-exiftool,page-pictures,pdf-attachments,pdf-reading-order,pdf-verapdf,qr-jsqr}.test.ts'];

export default defineConfig({
  test: {
    reporters: ['default', './tests/tools/no-silent-skips.ts'],
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
          exclude: [...FAST, ...BUILT],
          pool: 'forks',
          isolate: true,
          testTimeout: 120_000,
          hookTimeout: 120_000,
        },
      },
      {
        test: {
          name: 'built',
          include: BUILT,
          pool: 'forks',
          isolate: true,
          globalSetup: ['tests/tools/build-houses.ts'],
          testTimeout: 240_000,
          hookTimeout: 120_000,
        },
      },
    ],
  },
});
