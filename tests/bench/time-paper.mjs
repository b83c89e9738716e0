/**
 * The PDF, a page, beside headless Chromium printing the HTML pages of the same edition: once started for each
 * packet (with its pages joined into one), once kept running and given page after page.
 */
import { existsSync, readFileSync } from 'node:fs';
import { copyFile, mkdir, readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { PDFDocument } from 'pdf-lib';
import { chromium } from 'playwright-core';
import { PUBLISHED, renderPages, renderPdf } from '../../dist/build.js';
import { composed, orderFor } from './demo-houses.mjs';
import { inMs, perPart, runProgram, timeChildren, timeInside } from './measure.mjs';

const usual = JSON.parse(readFileSync(new URL('../tools/browser.json', import.meta.url), 'utf8'));
const BROWSER = [process.env.CHROMIUM_PATH ?? '', ...usual.places].find((file) => existsSync(file));
const FLAGS = usual.args;

/** A browser takes long; its figures vary little. */
const BROWSER_RUNS = 3;

/** @typedef {import('../../dist/packet/packet.js').OutputFile} OutputFile */

/**
 * @param {string} base holds content/ with the demo houses
 * @param {string} name
 * @param {number} runs
 * @returns {Promise<import('./table.mjs').Row[]>}
 */
export async function timePaper(base, name, runs) {
  const { packets, picturesOf } = await composed(orderFor(base, name, PUBLISHED));
  const rows = [];
  for (const packet of packets) {
    const print = () => renderPdf(packet, picturesOf(packet), 'letter');
    const { pages } = await print();
    const ours = perPart(await timeInside(runs, print), pages);
    const folder = path.join(base, 'printed', packet.edition.name);
    const files = await toDisk(await renderPages(packet, picturesOf(packet), undefined), folder);
    rows.push({
      what: `${name}, ${packet.edition.name} edition as PDF, warm: one page (of ${pages})`,
      ours: inMs(ours.clock),
      cpu: ours.cpu === undefined ? '' : inMs(ours.cpu),
      runs,
      beside: await inBrowser(files, folder, Math.min(runs, BROWSER_RUNS)),
    });
  }
  return rows;
}

/**
 * @param {readonly string[]} files
 * @param {string} folder
 * @param {number} runs
 */
async function inBrowser(files, folder, runs) {
  if (BROWSER === undefined) return 'no Chromium here (set CHROMIUM_PATH)';
  const joined = path.join(folder, 'joined.html');
  await writeFile(joined, await joinedPage(files));
  const started = await startedEachTime(BROWSER, joined, runs);
  const kept = await keptRunning(BROWSER, files, runs);
  return `Chromium, ${runs} runs: started for the packet ${started}; kept running ${kept}`;
}

/**
 * @param {string} browser
 * @param {string} file
 * @param {number} runs
 */
async function startedEachTime(browser, file, runs) {
  const pdf = `${file}.pdf`;
  const profile = `--user-data-dir=${path.join(path.dirname(file), 'profile')}`;
  const words = ['--headless', ...FLAGS, profile, '--no-pdf-header-footer', `--print-to-pdf=${pdf}`];
  const timing = await timeChildren(runs, () => runProgram(browser, [...words, pathToFileURL(file).href]));
  const pages = await pagesOf(await readFile(pdf));
  const { clock, cpu } = perPart(timing, pages);
  return `${inMs(clock)}${cpu === undefined ? '' : `, processor ${inMs(cpu)}`} a page (of ${pages})`;
}

/**
 * @param {string} browser
 * @param {readonly string[]} files
 * @param {number} runs
 */
async function keptRunning(browser, files, runs) {
  const running = await chromium.launch({ executablePath: browser, args: FLAGS });
  try {
    const tab = await running.newPage();
    let pages = 0;
    const printAll = async () => {
      const made = [];
      for (const file of files) {
        await tab.goto(pathToFileURL(file).href);
        made.push(await tab.pdf({ preferCSSPageSize: true, printBackground: true }));
      }
      return made;
    };
    for (const pdf of await printAll()) pages += await pagesOf(pdf);
    const { clock } = perPart(await timeInside(runs, printAll), pages);
    return `${inMs(clock)} (of ${pages})`;
  } finally {
    await running.close();
  }
}

/** @param {Uint8Array} bytes */
const pagesOf = async (bytes) => (await PDFDocument.load(bytes)).getPageCount();

/**
 * @param {readonly OutputFile[]} files
 * @param {string} folder
 * @returns {Promise<string[]>} the pages
 */
async function toDisk(files, folder) {
  for (const file of files) {
    const to = path.join(folder, file.path);
    await mkdir(path.dirname(to), { recursive: true });
    if ('copyOf' in file) await copyFile(file.copyOf, to);
    else await writeFile(to, 'text' in file ? file.text : file.bytes);
  }
  return files.filter((file) => file.path.endsWith('.html')).map((file) => path.join(folder, file.path));
}

/**
 * All pages in one, since Chromium prints one address each time it is started.
 * @param {readonly string[]} files
 */
async function joinedPage(files) {
  const texts = await Promise.all(files.map((file) => readFile(file, 'utf8')));
  const bodies = texts.map((text) => /<body[^>]*>([\s\S]*)<\/body>/.exec(text)?.[1] ?? '');
  return (texts[0] ?? '').replace(
    /(<body[^>]*>)[\s\S]*(<\/body>)/,
    (_, open, close) => open + bodies.join('') + close,
  );
}
