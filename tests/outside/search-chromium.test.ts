/**
 * The search box in a real Chromium, from a disk and offline: it finds what `sillplate ask` finds, in the same order; it is
 * used by keyboard alone; axe-core 4 (MPL-2.0) finds nothing while it is open; without scripts there is nothing of it.
 * Skipped by name where there is no Chromium.
 */
import { rm } from 'node:fs/promises';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { type Browser, type BrowserContextOptions, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openSearch } from '../../src/packet/answers/find-entries.js';
import { searchDataOf } from '../../src/packet/answers/search-entries.js';
import { composePacket } from '../../src/packet/compose.js';
import type { Packet } from '../../src/packet/packet.js';
import { renderWeb } from '../../src/web/render-web.js';
import { demoOrder, SPOKEN } from '../rooms/ask-house.js';
import { packetOf } from '../rooms/packet-of.js';
import { writtenToDisk } from '../rooms/rendered-sample.js';
import { axeFinds, wakeAxe } from '../tools/axe.js';
import { BROWSER_ARGS, findBrowser, NO_BROWSER } from '../tools/find-browser.js';

const executablePath = findBrowser();
const reason = executablePath === undefined ? ` (skipped: ${NO_BROWSER})` : '';
const HOUSES = ['quarry-road', 'larkspur-court'] as const;
/** As many as the box shows. */
const SHOWN = 8;

const EVIL = '</script><img src=x onerror="document.title=1"> \u2028 <b>crack</b>';

describe.skipIf(executablePath === undefined)(`the search box in Chromium${reason}`, () => {
  let browser: Browser;
  const packets = new Map<string, Packet>();
  const folders = new Map<string, string>();

  beforeAll(async () => {
    browser = await chromium.launch({ executablePath, args: BROWSER_ARGS });
    // Without photos: they are no part of this.
    for (const house of HOUSES)
      packets.set(house, composePacket({ ...(await demoOrder(house)), photos: new Map() }));
    packets.set('care', composePacket({ ...(await demoOrder('quarry-road', 'care')), photos: new Map() }));
    packets.set('evil', packetOf({ conditions: [{ what: `wall ${EVIL}` }] }));
    packets.set('sheet', packetOf({}, 'agent'));
    for (const [name, packet] of packets)
      folders.set(name, await writtenToDisk(await renderWeb(packet, new Map(), undefined)));
  });

  afterAll(() => browser?.close());

  const said: string[] = [];

  async function opened(
    name: string,
    file = 'index.html',
    options: BrowserContextOptions = {},
  ): Promise<Page> {
    const context = await browser.newContext({
      offline: true,
      viewport: { width: 1280, height: 900 },
      ...options,
    });
    const page = await context.newPage();
    said.length = 0;
    page.on('console', (message) => said.push(message.text()));
    page.on('pageerror', (error) => said.push(error.message));
    page.on('request', (request) => {
      if (!/^(file|data):/.test(request.url())) said.push(`left the disk: ${request.url()}`);
    });
    await page.goto(pathToFileURL(join(folders.get(name) ?? '', file)).href);
    return page;
  }

  const field = (page: Page) => page.getByRole('searchbox', { name: 'Ask this packet' });
  const titles = (page: Page) => page.locator('.search li a').allTextContents();

  async function ask(page: Page, asked: string): Promise<void> {
    await field(page).fill('');
    await field(page).fill(asked);
    await page
      .getByRole('status')
      .getByText(/found|fits|loaded/)
      .waitFor();
  }

  test.each(HOUSES)('finds what the terminal finds, in the same order: %s', async (house) => {
    const packet = packets.get(house) as Packet;
    const { entries, words } = searchDataOf(packet);
    const find = openSearch(entries, words);
    const page = await opened(house);
    expect(SPOKEN.length).toBeGreaterThanOrEqual(40);
    for (const [asked] of SPOKEN) {
      await ask(page, asked);
      const expected = find(asked)
        .slice(0, SHOWN)
        .map(({ entry }) => entry.title);
      expect(expected.length, asked).toBeGreaterThan(0);
      expect(await titles(page), asked).toEqual(expected);
    }
    expect(said).toEqual([]);
    await page.context().close();
  });

  test('fetches nothing until someone goes to it', async () => {
    const page = await opened('quarry-road');
    const fetched = (): Promise<string[]> =>
      page.evaluate("[...document.scripts].map((one) => one.getAttribute('src'))");
    expect(await fetched()).toEqual(['assets/search.js']);
    await field(page).focus();
    expect(await fetched()).toEqual(['assets/search.js', 'assets/search-engine.js', 'search-data.js']);
    await ask(page, 'roof');
    expect((await fetched()).length).toBe(3);
    await page.context().close();
  });

  test('is used by keyboard alone, across pages', async () => {
    const page = await opened('quarry-road', 'size.html');
    for (let presses = 0; presses < 8; presses += 1) {
      await page.keyboard.press('Tab');
      if ((await page.evaluate('document.activeElement.id')) === 'search-field') break;
    }
    await page.keyboard.type('how old is the heater');
    await page.locator('.search li a').first().waitFor();
    const focused = (): Promise<string> => page.evaluate('document.activeElement.textContent');
    await page.keyboard.press('ArrowDown');
    expect(await focused()).toBe('How old is the water heater?');
    await page.keyboard.press('ArrowDown');
    expect(await focused()).not.toBe('How old is the water heater?');
    await page.keyboard.press('ArrowUp');
    await page.keyboard.press('ArrowUp');
    expect(await page.evaluate<string>('document.activeElement.id')).toBe('search-field');
    await page.keyboard.press('Escape');
    expect(await titles(page)).toEqual([]);
    expect(await field(page).inputValue()).toBe('how old is the heater');
    await page.keyboard.press('Enter');
    await page.locator('.search li a').first().waitFor();
    await expect.poll(() => page.evaluate<string>('document.activeElement.localName')).toBe('a');
    await page.keyboard.press('Enter');
    await page.waitForURL(/questions\.html#question-water-heater-age$/);
    expect(said).toEqual([]);
    await page.context().close();
  });

  test('makes way when it leads to a place on the same page', async () => {
    const page = await opened('quarry-road', 'questions.html');
    await ask(page, 'termites');
    await page.locator('.search li a').first().click();
    expect(await titles(page)).toEqual([]);
    expect(new URL(page.url()).hash).toBe('#question-pests');
    const top = await page.evaluate<number>(
      "document.getElementById('question-pests').getBoundingClientRect().top",
    );
    expect(top).toBeLessThan(900);
    await page.context().close();
  });

  test('says so where nothing fits, and leads to what is not known', async () => {
    const page = await opened('quarry-road', 'papers.html');
    await ask(page, 'zebra opera');
    expect(await page.getByRole('status').textContent()).toContain('Nothing in this packet fits that.');
    await page.getByRole('link', { name: 'What is not known, and whom to ask' }).click();
    await page.waitForURL(/questions\.html#questions-open$/);
    await page.context().close();
    // A care book has no such table, and offers none.
    const care = await opened('care');
    await ask(care, 'zebra opera');
    expect(await care.getByRole('status').textContent()).toBe('Nothing in this packet fits that. ');
    await ask(care, 'furnace filter');
    expect((await titles(care)).length).toBeGreaterThan(0);
    await care.context().close();
  });

  test('axe finds nothing while it is open, light and dark, at a desk and on a phone', async () => {
    const page = await opened('quarry-road', 'questions.html');
    await wakeAxe(page);
    for (const asked of ['how old is the heater', 'zebra opera'])
      for (const width of [1280, 390, 320]) {
        await page.setViewportSize({ width, height: 900 });
        await ask(page, asked);
        expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(width);
        for (const colorScheme of ['light', 'dark'] as const) {
          await page.emulateMedia({ colorScheme });
          expect(await axeFinds(page), `${asked} at ${width} px, ${colorScheme}`).toEqual([]);
        }
      }
    await page.context().close();
  });

  test('is not there without scripts, nor on a sheet of one page', async () => {
    const plain = await opened('quarry-road', 'questions.html', { javaScriptEnabled: false });
    const full = await opened('quarry-road', 'questions.html');
    expect(await plain.locator('.search, [role=search], input').count()).toBe(0);
    expect(await plain.locator('main').textContent()).toBe(await full.locator('main').textContent());
    expect(await full.locator('form[role=search]').count()).toBe(1);
    await plain.context().close();
    await full.context().close();
    const sheet = await opened('sheet');
    expect(await sheet.locator('script, [role=search]').count()).toBe(0);
    await sheet.context().close();
  });

  test('shows markup in a fact as the letters it is', async () => {
    const page = await opened('evil');
    const title = await page.title();
    await ask(page, 'wall crack');
    expect((await page.locator('.search li').allTextContents()).join('')).toContain('<img src=x');
    expect(await page.locator('.search img, .search b').count()).toBe(0);
    expect(await page.title()).toBe(title);
    expect(said).toEqual([]);
    await page.context().close();
  });

  test('says so where its data are gone', async () => {
    const folder = await writtenToDisk(await renderWeb(packets.get('evil') as Packet, new Map(), undefined));
    folders.set('gone', folder);
    await rm(join(folder, 'search-data.js'));
    const page = await opened('gone');
    await ask(page, 'wall');
    expect(await page.getByRole('status').textContent()).toBe('The search could not be loaded.');
    await page.context().close();
  });
});
