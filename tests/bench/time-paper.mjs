/**
 * The PDF, a page, beside headless Chromium printing the HTML pages of the same edition: once started for each
 * packet (with its pages joined into one), once kept running and given page after page.
 */
import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { PDFDocument } from 'pdf-lib';
import { chromium } from 'playwright-core';
import { PUBLISHED, renderPages, renderPdf } from '../../dist/build.js';
import { composed, orderFor } from './demo-houses.mjs';
import { BROWSER, BROWSER_FLAGS } from './find-chromium.mjs';
import { inMs, perPart, runProgram, timeChildren, timeInside } from './measure.mjs';
import { writeOnePage } from './one-page.mjs';

/** A browser takes long; its figures vary little. */
const BROWSER_RUNS = 3;

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
    const site = await renderPages(packet, picturesOf(packet), undefined);
    const joined = await writeOnePage(site, picturesOf(packet), folder);
    rows.push({
      what: `${name}, ${packet.edition.name} edition as PDF, warm: one page (of ${pages})`,
      ours: inMs(ours.clock),
      cpu: ours.cpu === undefined ? '' : inMs(ours.cpu),
      runs,
      beside: await inBrowser(joined, Math.min(runs, BROWSER_RUNS)),
    });
  }
  return rows;
}

/**
 * @param {{ one: string, pages: string[] }} joined
 * @param {number} runs
 */
async function inBrowser({ one, pages }, runs) {
  if (BROWSER === undefined) return 'no Chromium here (set CHROMIUM_PATH)';
  const started = await startedEachTime(BROWSER, one, runs);
  const kept = await keptRunning(BROWSER, pages, runs);
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
  const words = ['--headless', ...BROWSER_FLAGS, profile, '--no-pdf-header-footer', `--print-to-pdf=${pdf}`];
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
  const running = await chromium.launch({ executablePath: browser, args: [...BROWSER_FLAGS] });
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
