/**
 * One packet as PDF, made by this program and by three others, in one run.
 *
 * Everyone is given the same words, tables, drawings and photos, the photos as the very JPEG bytes that our PDF holds:
 *
 * - Chromium and WeasyPrint the web packet's own pages joined into one, under its style sheet (`one-page.mjs`);
 *   WeasyPrint, which knows no grid, also four rules that set photos side by side, as they stand elsewhere.
 * - pdfkit the packet itself, set by a script as one would write it (`paper-pdfkit.mjs`).
 *
 * Runs take turns, so that a busy minute falls on all of them. Memory is measured in runs of its own, and what poppler
 * and veraPDF say of the files is asked once, outside all timings.
 */
import { execFileSync, spawnSync } from 'node:child_process';
import { readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { chromium } from 'playwright-core';
import { pdfNameOf, renderPages, renderPdf } from '../../dist/build.js';
import { AS_OF, composed, orderFor, PROGRAM } from './demo-houses.mjs';
import { BROWSER, BROWSER_FLAGS } from './find-chromium.mjs';
import { pdfinfo, veraPdf } from './judge-pdf.mjs';
import { inMs, runProgram, spread, timeChildren, timeInside } from './measure.mjs';
import { writeOnePage } from './one-page.mjs';
import { PHOTOS, writePaperHouse } from './paper-house.mjs';
import { peakOfTree } from './tree-memory.mjs';

const HOUSE = 'paper-house';
const EDITION = 'buyer';

/** WeasyPrint 57 to 66 set a grid's parts below each other. */
const NO_GRID = `.half { display: inline-block !important; width: 49% !important }
.contact figure, .photos figure { display: inline-block !important; width: 18.5% !important; margin: 0 0.3% !important }
.known { display: block !important }
svg { max-width: 100% }
`;

/**
 * One way to the PDF: a command, and perhaps the same within a process that keeps running.
 * @typedef {{ readonly name: string, readonly command: readonly [program: string, ...words: string[]],
 *   readonly pdf: string, readonly within?: () => Promise<import('./measure.mjs').Spread> }} Contestant
 */

/** @typedef {Contestant & { readonly clock: number[], readonly cpu: number[] }} Timed */

/**
 * @param {string} base
 * @param {number} runs
 * @returns {Promise<import('./table.mjs').Row[]>}
 */
export async function comparePaper(base, runs) {
  const { contestants, absent } = await invite(base, runs);
  /** @type {Timed[]} */
  const timed = contestants.map((one) => ({ ...one, clock: [], cpu: [] }));
  // The first round finds everything cold and isn't counted.
  for (let round = 0; round <= runs; round += 1)
    for (const { command, clock, cpu } of timed) {
      const took = await timeChildren(1, () => runProgram(command[0], command.slice(1)));
      if (round === 0) continue;
      clock.push(took.clock.median);
      if (took.cpu !== undefined) cpu.push(took.cpu.median);
    }
  const judged = veraPdf(contestants.map(({ pdf }) => pdf));
  const all = [];
  for (const one of timed) all.push(await resultOf(one, judged));
  const theirs = all.filter(({ name }) => !name.startsWith('sillplate'));
  const chrome = theirs.find(({ name }) => name.startsWith('Chromium'));
  const packet = `the same packet as PDF (a made house, ${EDITION} edition, ${PHOTOS} photos), taking turns`;
  return all
    .filter((one) => !theirs.includes(one))
    .flatMap(({ name, whole, cpu, within, file }) => {
      const beside = theirs.map(
        (one) =>
          `${one.name}: ${inMs(one.whole)}${one.cpu === undefined ? '' : `, processor ${inMs(one.cpu)}`}, ours is ${ratio(whole.median, one.whole.median)} of it (of the least ${ratio(whole.least, one.whole.least)}), ${one.file}`,
      );
      const row = {
        what: `${packet}: ${name}, whole process; ${file}`,
        ours: inMs(whole),
        cpu: cpu === undefined ? '' : inMs(cpu),
        runs,
        beside: [...beside, ...absent].join('; '),
        aim:
          within === undefined
            ? ''
            : 'at most 0.4 of Chromium; the smallest file; under 6 MB; both standards met',
      };
      if (within === undefined) return [row];
      return [
        row,
        {
          what: `${packet}: ${name}, within a process that keeps running`,
          ours: `${inMs(within)}${chrome === undefined ? '' : `, ${ratio(within.median, chrome.whole.median)} of Chromium’s whole process`}`,
          runs,
          beside: theirs
            .flatMap((one) => (one.within === undefined ? [] : [`${one.name}: ${inMs(one.within)}`]))
            .join('; '),
          aim: 'at most 0.15 of Chromium’s whole process, under 300 ms',
        },
      ];
    });
}

/**
 * What came of one of them, with what is said of its file in one line.
 * @param {Timed} one
 * @param {ReturnType<typeof veraPdf>} judged
 */
async function resultOf({ name, command, pdf, within, clock, cpu }, judged) {
  const peaks = [];
  for (let run = 0; run < 3; run += 1) peaks.push(await peakOfTree(command[0], command.slice(1)));
  const held = peaks.filter((peak) => peak !== undefined);
  const inside = await within?.();
  const info = pdfinfo(pdf);
  const said = judged?.get(pdf);
  const file = [
    ...(held.length === 0 ? [] : [`at most ${Math.round(spread(held).median)} MB held`]),
    `a file of ${(statSync(pdf).size / 1e6).toFixed(2)} MB`,
    ...(info === undefined ? [] : [`${info.pages} pages`, info.tagged ? 'tagged' : 'not tagged']),
    ...(said === undefined ? [] : [`PDF/A-3b ${verdict(said['3b'])}`, `PDF/UA-1 ${verdict(said.ua1)}`]),
  ];
  return {
    name,
    whole: spread(clock),
    cpu: cpu.length === 0 ? undefined : spread(cpu),
    within: inside,
    file: file.join(', '),
  };
}

const ratio = (/** @type {number} */ part, /** @type {number} */ whole) => (part / whole).toFixed(2);
const verdict = (/** @type {number} */ failed) =>
  failed === 0 ? 'passes' : `${failed} rule${failed === 1 ? ' fails' : 's fail'}`;

/**
 * Makes the house, its pages and its packet ready for everyone.
 * @param {string} base holds content/ with the demo houses
 * @param {number} runs
 * @returns {Promise<{ contestants: Contestant[], absent: string[] }>}
 */
async function invite(base, runs) {
  const content = path.join(base, 'content');
  const scenes = readdirSync(content).map((name) => path.join(content, name, 'photos'));
  const apart = path.join(base, 'paper');
  await writePaperHouse(path.join(apart, 'content', HOUSE), scenes);
  const { packets, picturesOf } = await composed(orderFor(apart, HOUSE, [EDITION]));
  const packet = packets[0];
  if (packet === undefined) throw new Error('nothing was composed');
  const pictures = picturesOf(packet);
  const page = await writeOnePage(
    await renderPages(packet, pictures, undefined),
    pictures,
    path.join(apart, 'web'),
  );
  const job = path.join(apart, 'job.json');
  const photos = Object.fromEntries([...pictures].map(([id, { print }]) => [id, print.file]));
  const fonts = fileURLToPath(new URL('../../dist/fonts', import.meta.url));
  writeFileSync(job, JSON.stringify({ packet, photos, fonts }));
  const script = (/** @type {string} */ name) => fileURLToPath(new URL(name, import.meta.url));
  const to = (/** @type {string} */ name) => path.join(apart, `${name}.pdf`);
  const out = path.join(apart, 'out');
  const build = ['build', HOUSE, '--content', path.join(apart, 'content'), '--out', out, '--as-of', AS_OF];
  const kit = [script('paper-pdfkit.mjs'), job, to('pdfkit')];
  /** @type {Contestant[]} */
  const contestants = [
    {
      name: 'sillplate build, with web pages and exports',
      command: [process.execPath, PROGRAM, ...build, '--edition', EDITION],
      pdf: path.join(out, HOUSE, EDITION, pdfNameOf(packet)),
    },
    {
      name: 'sillplate, the PDF alone',
      command: [process.execPath, script('paper-print.mjs'), apart, HOUSE, EDITION, to('alone')],
      pdf: to('alone'),
      within: async () => {
        const print = () => renderPdf(packet, pictures, 'letter');
        await timeInside(5, print);
        return (await timeInside(runs, print)).clock;
      },
    },
  ];
  const absent = [];
  if (BROWSER === undefined) absent.push('Chromium: not here (set CHROMIUM_PATH)');
  else contestants.push(chromiumFor(BROWSER, page.one, to('chromium'), path.join(apart, 'profile'), runs));
  const weasy = versionOf('weasyprint');
  if (weasy === undefined) absent.push('WeasyPrint: not here (Debian: weasyprint)');
  else {
    const sheet = path.join(apart, 'no-grid.css');
    writeFileSync(sheet, NO_GRID);
    contestants.push({
      name: weasy,
      command: ['weasyprint', '-q', '-s', sheet, page.one, to('weasyprint')],
      pdf: to('weasyprint'),
    });
  }
  contestants.push({
    name: `pdfkit ${installed('pdfkit')}`,
    command: [process.execPath, ...kit],
    pdf: to('pdfkit'),
    within: async () =>
      spread(JSON.parse(execFileSync(process.execPath, [...kit, String(runs)], { encoding: 'utf8' }))),
  });
  return { contestants, absent };
}

/**
 * @param {string} browser
 * @param {string} page
 * @param {string} pdf
 * @param {string} profile
 * @param {number} runs
 * @returns {Contestant}
 */
function chromiumFor(browser, page, pdf, profile, runs) {
  const address = pathToFileURL(page).href;
  const version = /\d+/.exec(versionOf(browser) ?? '')?.[0] ?? '';
  const words = ['--headless', ...BROWSER_FLAGS, `--user-data-dir=${profile}`, '--no-pdf-header-footer'];
  return {
    name: `Chromium ${version}, headless`,
    command: [browser, ...words, `--print-to-pdf=${pdf}`, address],
    pdf,
    within: async () => {
      const running = await chromium.launch({ executablePath: browser, args: [...BROWSER_FLAGS] });
      try {
        const tab = await running.newPage();
        const print = async () => {
          await tab.goto(address);
          await tab.pdf({ preferCSSPageSize: true, printBackground: true, tagged: true });
        };
        await timeInside(2, print);
        return (await timeInside(runs, print)).clock;
      } finally {
        await running.close();
      }
    },
  };
}

/**
 * What a program says of its version, in one line.
 * @param {string} program
 */
function versionOf(program) {
  const run = spawnSync(program, ['--version'], { encoding: 'utf8' });
  if (run.error !== undefined || run.status !== 0) return undefined;
  return run.stdout.trim().split('\n')[0]?.replace(' version', '');
}

/**
 * @param {string} name a package that the tests use
 * @returns {string}
 */
const installed = (name) => {
  const ours = readFileSync(new URL('../../package.json', import.meta.url), 'utf8');
  return JSON.parse(ours).devDependencies[name] ?? '';
};
