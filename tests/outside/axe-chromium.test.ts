/**
 * Independent check: axe-core 4 (MPL-2.0) in a real Chromium on every page of the samples and every kind of page
 * of the demo houses, from a disk, offline, light and dark, at a desk and on a phone. Skipped by name where
 * there is no Chromium.
 */
import { readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { renderWeb } from '../../src/web/render-web.js';
import { htmlOf, writtenToDisk } from '../rooms/rendered-sample.js';
import { photoSheet, samplePacket, samplePictures, sampleSheet, wideSheet } from '../rooms/sample-packet.js';
import { axeFinds, wakeAxe } from '../tools/axe.js';
import { DEMO_HOUSES, editionsOf, pagesIn } from '../tools/built-houses.js';
import { BROWSER_ARGS, findBrowser, NO_BROWSER } from '../tools/find-browser.js';

const LONG = 240_000;

const executablePath = findBrowser();
const reason = executablePath === undefined ? ` (skipped: ${NO_BROWSER})` : '';

describe.skipIf(executablePath === undefined)(`in Chromium${reason}`, () => {
  let browser: Browser;
  const files: string[] = [];
  const demoFiles: string[] = [];

  beforeAll(async () => {
    browser = await chromium.launch({ executablePath, args: BROWSER_ARGS });
    const pictures = await samplePictures();
    for (const packet of [samplePacket, sampleSheet, wideSheet, photoSheet]) {
      const output = await renderWeb(packet, pictures, { file: 'packet.pdf', pages: 2 });
      const folder = await writtenToDisk(output);
      for (const name of htmlOf(output).keys()) files.push(join(folder, name));
    }
    for (const house of DEMO_HOUSES)
      for (const { folder } of await editionsOf(house))
        for (const name of pagesIn(folder).keys()) demoFiles.push(join(folder, name));
    expect(files).toHaveLength(samplePacket.sections.length + photoSheet.sections.length + 2);
    expect(demoFiles.length).toBeGreaterThan(DEMO_HOUSES.length * 20);
  }, LONG);

  afterAll(() => browser?.close());

  /** Opens each page in turn; any request that is not for a file, and any that fails, is an error. */
  async function eachPage(
    context: BrowserContext,
    pages: readonly string[],
    check: (page: Page, file: string) => Promise<void>,
  ): Promise<void> {
    const page = await context.newPage();
    const wrong: string[] = [];
    page.on('request', (request) => {
      if (!/^(file|data):/.test(request.url())) wrong.push(`left the disk: ${request.url()}`);
    });
    page.on('requestfailed', (request) => wrong.push(`failed: ${request.url()}`));
    page.on('console', (message) => wrong.push(`said: ${message.text()}`));
    for (const file of pages) {
      await page.goto(pathToFileURL(file).href);
      await page.evaluate('document.fonts.ready');
      await check(page, file);
    }
    expect(wrong).toEqual([]);
    await context.close();
  }

  /** One page of each kind, from houses and editions in turn. */
  function demoKinds(): string[] {
    const kinds = new Map<string, string[]>();
    for (const file of demoFiles) {
      const kind = basename(file) === 'index.html' ? frontKind(file) : basename(file);
      kinds.set(kind, [...(kinds.get(kind) ?? []), file]);
    }
    expect(kinds.size).toBeGreaterThan(14);
    return [...kinds.values()].map((same, index) => same[index % same.length] ?? '');
  }

  /** Front pages have one name and an edition each. */
  function frontKind(file: string): string {
    return /class="(edition-\w+)/.exec(readFileSync(file, 'utf8'))?.[1] ?? file;
  }

  async function violations(page: Page, file: string, scheme: 'light' | 'dark'): Promise<string[]> {
    await page.emulateMedia({ colorScheme: scheme });
    const found = await axeFinds(page, scheme === 'dark' ? 'colours' : 'all');
    return found.map((line) => `${file} ${scheme} ${line}`);
  }

  test(
    'axe finds nothing, light and dark, at a desk and on a phone',
    async () => {
      const context = await browser.newContext({ offline: true });
      await eachPage(context, [...files, ...demoKinds()], async (page, file) => {
        await wakeAxe(page);
        for (const width of [1280, 390]) {
          await page.setViewportSize({ width, height: 900 });
          // Colours are those of the scheme at every width, so the dark ones are looked at once.
          for (const scheme of width === 1280 ? (['light', 'dark'] as const) : (['light'] as const))
            expect(await violations(page, `${file} at ${width} px`, scheme)).toEqual([]);
        }
      });
    },
    LONG,
  );

  test(
    'axe finds nothing wherever the line of a pair is, and side by side',
    async () => {
      const file = files.find((one) => /class="pair /.test(readFileSync(one, 'utf8'))) ?? '';
      const context = await browser.newContext({ offline: true });
      await eachPage(context, [file], async (page) => {
        await wakeAxe(page);
        const slider = page.getByRole('slider').first();
        for (const key of ['Home', 'ArrowRight', 'End']) {
          await slider.press(key);
          for (const scheme of ['light', 'dark'] as const)
            expect(await violations(page, `${file} after ${key}`, scheme)).toEqual([]);
        }
        await page.locator('.half a').first().focus();
        expect(await violations(page, `${file} with the focus on a photo`, 'light')).toEqual([]);
        await page.locator('.choice').first().press('Enter');
        expect(await violations(page, `${file} side by side`, 'light')).toEqual([]);
      });
    },
    LONG,
  );

  test(
    'axe is awake in both schemes',
    async () => {
      const context = await browser.newContext({ offline: true });
      const page = await context.newPage();
      const style = 'p { color: light-dark(#eee, #222); background: light-dark(#fff, #111) }';
      await page.setContent(`<style>:root { color-scheme: light dark } ${style}</style><p>faint</p>`);
      await wakeAxe(page);
      for (const scheme of ['light', 'dark'] as const)
        expect((await violations(page, 'faint', scheme)).join()).toContain('color-contrast');
      await context.close();
    },
    LONG,
  );

  test(
    'nothing is wider than its window',
    async () => {
      const context = await browser.newContext({ offline: true });
      await eachPage(context, [...files, ...demoFiles], async (page, file) => {
        for (const width of [320, 740, 900, 1280]) {
          await page.setViewportSize({ width, height: 640 });
          const needed = await page.evaluate('document.documentElement.scrollWidth');
          expect(needed, `${file} at ${width} px`).toBeLessThanOrEqual(width);
        }
      });
    },
    LONG,
  );

  test(
    'the style sheet and the fonts load under the page’s own policy',
    async () => {
      const context = await browser.newContext({ offline: true, viewport: { width: 1280, height: 900 } });
      await eachPage(context, files, async (page, file) => {
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
