/**
 * Independent check: axe-core 4 (MPL-2.0) in a real Chromium on every page of the samples, from a disk, offline,
 * light and dark, at a desk and on a phone. Skipped by name where there is no Chromium.
 */
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { renderWeb } from '../../src/web/render-web.js';
import { htmlOf, writtenToDisk } from '../rooms/rendered-sample.js';
import { samplePacket, samplePictures, sampleSheet, wideSheet } from '../rooms/sample-packet.js';
import { BROWSER_ARGS, findBrowser, NO_BROWSER } from '../tools/find-browser.js';

const RUN = {
  // It would fetch the style sheet once more by script, which the pages' policy forbids.
  preload: false,
  runOnly: { type: 'tag', values: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'] },
};
const SCREENS = (['light', 'dark'] as const).flatMap((scheme) =>
  [1280, 390].map((width) => ({ scheme, width })),
);
const LONG = 120_000;

const executablePath = findBrowser();
const reason = executablePath === undefined ? ` (skipped: ${NO_BROWSER})` : '';

interface AxeResults {
  readonly violations: { id: string; nodes: { html: string; failureSummary: string }[] }[];
}

describe.skipIf(executablePath === undefined)(`in Chromium${reason}`, () => {
  let browser: Browser;
  let axe: string;
  const files: string[] = [];

  beforeAll(async () => {
    browser = await chromium.launch({ executablePath, args: BROWSER_ARGS });
    axe = await readFile(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
    const pictures = await samplePictures();
    for (const packet of [samplePacket, sampleSheet, wideSheet]) {
      const output = await renderWeb(packet, pictures, { file: 'packet.pdf', pages: 2 });
      const folder = await writtenToDisk(output);
      for (const name of htmlOf(output).keys()) files.push(join(folder, name));
    }
  }, LONG);

  afterAll(() => browser?.close());

  /** Opens each page in turn; any request that is not for a file, and any that fails, is an error. */
  async function eachPage(
    context: BrowserContext,
    check: (page: Page, file: string) => Promise<void>,
  ): Promise<void> {
    const page = await context.newPage();
    const wrong: string[] = [];
    page.on('request', (request) => {
      if (!/^(file|data):/.test(request.url())) wrong.push(`left the disk: ${request.url()}`);
    });
    page.on('requestfailed', (request) => wrong.push(`failed: ${request.url()}`));
    page.on('console', (message) => wrong.push(`said: ${message.text()}`));
    expect(files).toHaveLength(samplePacket.sections.length + 2);
    for (const file of files) {
      await page.goto(pathToFileURL(file).href);
      await page.evaluate('document.fonts.ready');
      await check(page, file);
    }
    expect(wrong).toEqual([]);
    await context.close();
  }

  test.each(SCREENS)(
    'axe finds nothing: $scheme, $width px',
    async ({ scheme, width }) => {
      const context = await browser.newContext({
        offline: true,
        colorScheme: scheme,
        viewport: { width, height: 900 },
      });
      await eachPage(context, async (page, file) => {
        // Given to the page by the debugger, which the page's own policy does not bind.
        await page.evaluate(axe);
        const { violations } = await page.evaluate<AxeResults>(`axe.run(document, ${JSON.stringify(RUN)})`);
        const found = violations.flatMap((v) =>
          v.nodes.map((node) => `${file} ${v.id}: ${node.html} ${node.failureSummary}`),
        );
        expect(found).toEqual([]);
      });
    },
    LONG,
  );

  test.each([320, 740, 900, 1280])(
    'nothing is wider than a window of %i px',
    async (width) => {
      const context = await browser.newContext({ offline: true, viewport: { width, height: 640 } });
      await eachPage(context, async (page, file) => {
        expect(await page.evaluate('document.documentElement.scrollWidth'), file).toBeLessThanOrEqual(width);
      });
    },
    LONG,
  );

  test(
    'the style sheet and the fonts load under the page’s own policy',
    async () => {
      const context = await browser.newContext({ offline: true, viewport: { width: 1280, height: 900 } });
      await eachPage(context, async (page, file) => {
        expect(await page.evaluate('getComputedStyle(document.body).maxWidth'), file).not.toBe('none');
        const loaded = await page.evaluate("[...document.fonts].filter((f) => f.status === 'loaded').length");
        expect(loaded, file).toBeGreaterThanOrEqual(3);
      });
    },
    LONG,
  );

  test(
    'the contents are in reach of keyboard and screen reader at both widths',
    async () => {
      for (const width of [1280, 390]) {
        const context = await browser.newContext({ offline: true, viewport: { width, height: 900 } });
        const page = await context.newPage();
        await page.goto(pathToFileURL(files[1] ?? '').href);
        if (width === 390) await page.getByText('Contents').click();
        const link = page.getByRole('navigation', { name: 'Sections' }).getByRole('link', { name: 'Safety' });
        await link.focus();
        expect(await link.isVisible(), `${width} px`).toBe(true);
        await page.keyboard.press('Enter');
        await page.waitForURL(/safety\.html#safety$/);
        await context.close();
      }
    },
    LONG,
  );

  test(
    'of a drawing made twice one is shown and one is spoken',
    async () => {
      for (const [width, shown] of [
        [1280, 'drawn-wide'],
        [390, 'drawn-narrow'],
      ] as const) {
        const context = await browser.newContext({ offline: true, viewport: { width, height: 900 } });
        const page = await context.newPage();
        await page.goto(pathToFileURL(files.find((file) => file.endsWith('ages.html')) ?? '').href);
        const pictures = page.getByRole('img');
        expect(await pictures.count()).toBe(1);
        expect(await pictures.first().getAttribute('class')).toContain(shown);
        await context.close();
      }
    },
    LONG,
  );
});
