/**
 * The rooms of src/ import what DEVELOPERS.md lets them, and nothing else.
 *
 * The first half holds the project to the table; the second shows, on made-up files, that every rule can fail.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { ASKS, type Ask, findBreaches, type Rules, readRoomTable } from './tools/room-rules.js';

const root = fileURLToPath(new URL('..', import.meta.url));

const HOMES: Rules['homes'] = {
  '@11ty/eleventy': { files: ['src/web/run-eleventy.ts'], why: 'one file of web knows Eleventy' },
  nunjucks: { files: ['src/web/configure-site.ts'], why: 'templates are set up in one place' },
  'pdf-lib': {
    files: ['src/print/pdf-store.ts'],
    why: 'one file of print knows the PDF library',
  },
  'tex-linebreak': { files: ['src/print/lines.ts'], why: 'lines are broken in one place' },
  fontkit: {
    files: ['src/print/faces.ts', 'src/print/fontkit-types.d.ts'],
    why: 'one file of print reads typefaces',
  },
  harfbuzzjs: { files: ['src/print/faces.ts'], why: 'words are shaped in one place' },
  'js-yaml': {
    files: ['src/intake/yaml.ts', 'src/tally/read-table.ts'],
    why: 'YAML is read at two doors: the house folder and the published tables',
  },
  'csv-parse': { files: ['src/intake/csv-cells.ts'], why: 'one file reads what spreadsheets save as text' },
  'read-excel-file': { files: ['src/intake/workbook-cells.ts'], why: 'one file opens workbooks' },
  '@hyzyla/pdfium': {
    files: ['src/intake/paper-worker.ts'],
    why: 'papers are drawn in a thread of their own',
  },
  yauzl: {
    files: ['src/intake/workbook-parts.ts', 'src/archive/read-bag-zip.ts'],
    why: 'a ZIP is opened part by part at two doors: a workbook that comes in, a bag that comes back',
  },
  yazl: { files: ['src/archive/bag-pack.ts'], why: 'bags are packed in one place' },
  'modern-tar': {
    files: ['src/archive/bag-pack.ts', 'src/archive/read-bag-tar.ts'],
    why: 'tars are written and read in one place each',
  },
  'age-encryption': { files: ['src/archive/age-file.ts'], why: 'one file seals and opens' },
  sharp: { files: ['src/intake/*.ts'], why: 'pictures are opened where a folder is read' },
  exifreader: { files: ['src/intake/camera.ts'], why: 'one file reads what cameras write' },
  'libheif-js': { files: ['src/intake/heic-worker.ts'], why: 'HEIC is decoded in a thread of its own' },
  tinypool: {
    files: ['src/intake/decode-heic.ts', 'src/intake/heic-worker.ts', 'src/build-beside.ts'],
    why: 'threads and processes are started and answered in one place each',
  },
  'geographiclib-geodesic': {
    files: ['src/tally/photo-distance.ts'],
    why: 'distances are measured in one place',
  },
  zod: {
    files: [
      'src/facts/**',
      'src/tally/tables/*.ts',
      'src/tally/read-table.ts',
      'src/tally/published-lives.ts',
      'src/packet/facts-file.ts',
      'src/packet/ledger-json.ts',
    ],
    why: 'what is checked is the words of a house, the published tables, and data that leave with their schema or come back',
  },
  'fastest-levenshtein': { files: ['src/facts/nearest-word.ts'], why: 'only misspelt words are compared' },
  'temporal-polyfill': { files: ['src/facts/age.ts', 'src/tally/*.ts'], why: 'dates are counted there' },
  'polyclip-ts': { files: ['src/tally/clipping.ts'], why: 'shapes are cut in one place' },
  qrcode: { files: ['src/packet/draw-qr.ts'], why: 'codes to scan are drawn in one place' },
  minisearch: {
    files: ['src/packet/answers/find-entries.ts'],
    why: 'one file searches, for the terminal and for the pages',
  },
  'ical-generator': { files: ['src/packet/calendar.ts'], why: 'one file writes the calendar' },
  'csv-stringify': { files: ['src/packet/ledger-csv.ts'], why: 'one file writes rows as CSV' },
  'write-excel-file': { files: ['src/archive/write-workbook.ts'], why: 'workbooks are packed in one place' },
  fflate: { files: ['src/archive/write-workbook.ts'], why: 'the parts of a workbook are packed again there' },
  commander: { files: ['src/cli.ts'], why: 'the front door alone reads command lines' },
  chokidar: { files: ['src/command-serve.ts'], why: 'only the preview follows edits' },
  'yocto-spinner': { files: ['src/terminal.ts'], why: 'only the terminal moves' },
};

const MACHINE: Rules['machine'] = {
  'node:fs': {
    files: [
      'src/intake/*.ts',
      'src/archive/*.ts',
      // These read what ships with the program (tables, typefaces, templates) or pictures made ready by intake.
      'src/tally/read-table.ts',
      'src/print/faces.ts',
      'src/print/write-pdf.ts',
      'src/web/configure-site.ts',
      'src/web/site-assets.ts',
      // What the system says of a process stands in a file.
      'src/diagnostics/is-running.ts',
    ],
    why: 'a house is read by intake and kept by archive',
  },
  'node:path': {
    files: ['src/intake/*.ts', 'src/archive/*.ts', 'src/web/*.ts'],
    why: 'only these rooms know files',
  },
  'node:url': {
    files: ['src/web/site-assets.ts', 'src/intake/decode-heic.ts'],
    why: 'templates and the code of a thread are found beside the program',
  },
  'node:module': {
    files: ['src/intake/decode-heic.ts', 'src/intake/heic-worker.ts'],
    why: 'an optional package may not be there',
  },
  'node:crypto': {
    files: [
      'src/intake/*.ts',
      'src/archive/*.ts',
      'src/packet/calendar.ts',
      'src/packet/digest.ts',
      'src/packet/facts-file.ts',
      'src/print/write-fonts.ts',
      'src/print/write-pdf.ts',
    ],
    why: 'digests are made where something is named by its content',
  },
  'node:buffer': { files: ['src/intake/*.ts'], why: 'bytes become text where a folder is read' },
  'node:stream': { files: ['src/archive/bag-pack.ts'], why: 'a packer hands on a stream' },
  'node:worker_threads': {
    files: ['src/intake/draw-pages.ts', 'src/intake/paper-worker.ts'],
    why: 'what draws papers has no limit of its own, and a thread can be ended',
  },
  'node:os': { files: ['src/intake/develop-photos.ts'], why: 'photos are developed on all processors' },
  'node:zlib': {
    files: [
      'src/print/*.ts',
      'src/archive/*.ts',
      'src/intake/colour-profile.ts',
      'src/intake/pdf-unfolds.ts',
    ],
    why: 'only files, the profile of a PNG and papers are packed',
  },
};

const NO_CLOCK = 'ask for the as-of date, never the clock';
const NO_DICE = 'the same folder gives the same bytes';
const TELL = 'return a diagnostic; the report prints it';
const nowhere = (why: string) => ({ files: [], why });

const QUESTIONS: Rules['asks'] = {
  'Date.now': nowhere(NO_CLOCK),
  'new Date()': nowhere(NO_CLOCK),
  'Date()': nowhere(NO_CLOCK),
  'performance.now': nowhere(NO_CLOCK),
  'Math.random': nowhere(NO_DICE),
  randomBytes: nowhere(NO_DICE),
  // Two builds at once must not share a half-made folder; its name never reaches an output.
  randomUUID: { files: ['src/intake/photo-cache.ts'], why: NO_DICE },
  'fetch()': nowhere('nothing is asked from another host'),
  'process.env': nowhere('settings come by the front door'),
  'process.cwd': nowhere('paths come by the front door'),
  // The decoder of HEIC talks to the console; its thread silences it.
  console: { files: ['src/intake/heic-worker.ts'], why: TELL },
};

function sourceFiles(): Map<string, string> {
  const files = readdirSync(`${root}src`, { recursive: true, withFileTypes: true }).filter((one) =>
    one.isFile(),
  );
  return new Map(
    files.map((one) => {
      const full = `${one.parentPath}/${one.name}`.replaceAll('\\', '/');
      return [full.slice(full.lastIndexOf('/src/') + 1), readFileSync(full, 'utf8')];
    }),
  );
}

describe('the project', () => {
  it('imports only what the table of DEVELOPERS.md and the homes of packages allow', () => {
    const rooms = readRoomTable(readFileSync(`${root}DEVELOPERS.md`, 'utf8'));
    expect(findBreaches(sourceFiles(), { rooms, homes: HOMES, machine: MACHINE, asks: QUESTIONS })).toEqual(
      [],
    );
  });

  it('has a home for every package it depends on, and no home for one it does not', () => {
    const { dependencies, optionalDependencies } = JSON.parse(
      readFileSync(`${root}package.json`, 'utf8'),
    ) as Record<'dependencies' | 'optionalDependencies', Record<string, string>>;
    expect(Object.keys(HOMES).sort()).toEqual(
      Object.keys({ ...dependencies, ...optionalDependencies }).sort(),
    );
  });
});

const TABLE = `
Before.

| room | takes | gives | never | may import |
|---|---|---|---|---|
| diagnostics | – | what is wrong | – | – |
| facts | – | words | computes | diagnostics |
| web | a packet | pages | decides | facts, diagnostics |

After.
`;

const RULES: Rules = {
  rooms: readRoomTable(TABLE),
  homes: {
    saw: { files: ['src/web/cut.ts'], why: 'one file cuts' },
    '@a/b': { files: ['src/facts/**'], why: 'x' },
  },
  machine: { 'node:fs': { files: ['src/web/*.ts'], why: 'web reads' } },
  asks: QUESTIONS,
};

const CLEAN = {
  'src/build.ts': "import { page } from './web/page.js';\nimport fs from 'node:child_process';\n",
  'src/diagnostics/code.ts': 'export const code = 1;\n',
  'src/facts/house.ts': "import { code } from '../diagnostics/code.js';\nimport { b } from '@a/b/c';\n",
  'src/web/page.ts': "import type { House } from '../facts/house.js';\nimport { x } from './cut.js';\n",
  'src/web/cut.ts': "import saw from 'saw';\nimport { readFile } from 'node:fs/promises';\n",
};

const breaches = (changes: Record<string, string> = {}): string[] =>
  findBreaches(new Map(Object.entries({ ...CLEAN, ...changes })), RULES);

describe('the table of rooms', () => {
  it('is read row by row, a dash being nothing', () => {
    expect([...RULES.rooms].map(([room, may]) => [room, [...may]])).toEqual([
      ['diagnostics', []],
      ['facts', ['diagnostics']],
      ['web', ['facts', 'diagnostics']],
    ]);
  });

  it('must be there, hold rooms, and name only rooms', () => {
    expect(() => readRoomTable('no table\n| room | takes |\n')).toThrow('no table headed');
    expect(() => readRoomTable(TABLE.split('\n').slice(0, 5).join('\n'))).toThrow('no rows');
    expect(() => readRoomTable(TABLE.replace('facts, diagnostics', 'fact'))).toThrow('no room of the table');
  });
});

describe('the check', () => {
  it('is quiet on files that keep to the rules', () => {
    expect(breaches()).toEqual([]);
  });

  it('fails on seeing no file at all, also where there are only other files', () => {
    expect(findBreaches(new Map(), RULES)).toEqual(['no source file was seen']);
    expect(findBreaches(new Map([['README.md', '# x']]), RULES)).toEqual(['no source file was seen']);
  });

  it('fails on a room without files and on a folder that is no room', () => {
    const { 'src/diagnostics/code.ts': _gone, ...rest } = CLEAN;
    expect(findBreaches(new Map(Object.entries(rest)), RULES)).toEqual(['diagnostics: a room without files']);
    expect(breaches({ 'src/attic/box.ts': '' })).toEqual([
      'src/attic/box.ts lies in attic, which is no room',
    ]);
  });

  it.each([
    ["import { page } from '../web/page.js';", 'facts may not import web: src/facts/bad.ts'],
    ["import type { Page } from '../web/page.js';", 'facts may not import web: src/facts/bad.ts'],
    ["export * from '../web/page.js';", 'facts may not import web: src/facts/bad.ts'],
    ["const p = await import('../web/page.js');", 'facts may not import web: src/facts/bad.ts'],
    ["type P = import('../web/page.js').Page;", 'facts may not import web: src/facts/bad.ts'],
    ["const p = require('../web/page.js');", 'facts may not import web: src/facts/bad.ts'],
    ["import {\n  page,\n} from\n  '../web/page.js';", 'facts may not import web: src/facts/bad.ts'],
    ["import '../build.js';", 'src/facts/bad.ts imports src/build.js: a room does not know the walk'],
    ["import '../../tests/x.js';", 'src/facts/bad.ts imports tests/x.js, outside src/'],
    ['await import(name);', 'src/facts/bad.ts imports something whose name is worked out as it runs'],
    ["import saw from 'saw';", 'src/facts/bad.ts imports saw: one file cuts'],
    ["import saw from 'saw/lib/blade.js';", 'src/facts/bad.ts imports saw: one file cuts'],
    ["import drill from 'drill';", 'src/facts/bad.ts imports drill, which has no home'],
    ["import fs from 'node:fs';", 'src/facts/bad.ts imports node:fs: web reads'],
    ["import http from 'node:http';", 'src/facts/bad.ts imports node:http: no room needs it'],
  ])('sees %s', (text, expected) => {
    expect(breaches({ 'src/facts/bad.ts': text })).toEqual([expected]);
  });

  it('takes no comment and no string for an import', () => {
    const text = "// import '../web/page.js'\nexport const a = \"import x from '../web/page.js'\";\n";
    expect(breaches({ 'src/facts/good.ts': text })).toEqual([]);
  });

  it.each([
    'src/facts/index.ts',
    'src/facts/utils.ts',
    'src/facts/utils/x.ts',
    'src/util.ts',
    'src/web/helpers.ts',
  ])('refuses the name %s', (file) => {
    expect(breaches({ [file]: '' })).toEqual([expect.stringContaining('is a drawer, not a name')]);
  });

  const ASKING: Record<Ask, string> = {
    'Date.now': 'const t = Date.now();',
    'new Date()': 'const d = new Date();',
    'Date()': 'const s = Date();',
    'Math.random': 'const r = globalThis.Math.random();',
    randomUUID: 'const u = crypto.randomUUID();',
    randomBytes: 'const b = randomBytes(4);',
    'performance.now': 'const p = performance.now();',
    'fetch()': "await fetch('x');",
    'process.env': 'const e = process.env.HOME;',
    'process.cwd': 'const c = process.cwd();',
    console: "console.log('x');",
  };

  it.each(ASKS)('sees a room ask for %s, and lets the front door', (ask) => {
    expect(breaches({ 'src/facts/bad.ts': ASKING[ask] })).toEqual([
      `src/facts/bad.ts asks for ${ask}: ${QUESTIONS[ask].why}`,
    ]);
    expect(breaches({ 'src/cli.ts': ASKING[ask] })).toEqual([]);
  });

  it('lets a date be made from a date that was handed in', () => {
    expect(breaches({ 'src/facts/good.ts': "const d = new Date('2026-04-11');" })).toEqual([]);
  });
});
