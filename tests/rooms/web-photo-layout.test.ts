/**
 * Photos and the slider in a real Chromium, from a disk and offline. Skipped by name where there is no Chromium.
 * What axe says of these pages is in tests/outside/axe-chromium.
 */
import { cp, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { type Browser, type BrowserContextOptions, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { renderWeb } from '../../src/web/render-web.js';
import { BROWSER_ARGS, findBrowser, NO_BROWSER } from '../tools/find-browser.js';
import { writtenToDisk } from './rendered-sample.js';
import { photoSheet, samplePacket, samplePictures, sampleSheet } from './sample-packet.js';

const executablePath = findBrowser();
const reason = executablePath === undefined ? ` (skipped: ${NO_BROWSER})` : '';

interface Rect {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

describe.skipIf(executablePath === undefined)(`in Chromium${reason}`, () => {
  let browser: Browser;
  const folders = { file: '', buyer: '', agent: '' };

  beforeAll(async () => {
    browser = await chromium.launch({ executablePath, args: BROWSER_ARGS });
    const pictures = await samplePictures();
    const written = async (packet: typeof photoSheet) =>
      writtenToDisk(await renderWeb(packet, pictures, undefined));
    folders.file = await written(photoSheet);
    folders.buyer = await written(samplePacket);
    folders.agent = await written(sampleSheet);
  });

  afterAll(() => browser?.close());

  /** Opens a page in a window of its own; anything the browser complains of is an error. */
  async function opened(
    file: string,
    width: number,
    options: BrowserContextOptions = {},
    prepare: (page: Page) => Promise<void> = async () => {},
  ): Promise<Page> {
    const context = await browser.newContext({ offline: true, viewport: { width, height: 900 }, ...options });
    const page = await context.newPage();
    page.on('console', (message) => {
      throw new Error(message.text());
    });
    await prepare(page);
    await page.goto(pathToFileURL(file).href);
    return page;
  }

  const index = (): string => join(folders.file, 'index.html');

  async function rectOf(page: Page, selector: string): Promise<Rect> {
    const rect = await page.locator(selector).first().boundingBox();
    if (rect === null) throw new Error(`${selector} is not shown`);
    return rect;
  }

  const clips = (page: Page): Promise<string[]> =>
    page.evaluate("[...document.querySelectorAll('.half img')].map((one) => getComputedStyle(one).clipPath)");

  describe('the slider', () => {
    test('moves by keyboard, says where it is in words, and the photos follow', async () => {
      const page = await opened(index(), 1280);
      const slider = page.getByRole('slider');
      expect(await slider.getAttribute('aria-label')).toContain('before');
      await slider.focus();
      const press = async (key: string) => {
        await page.keyboard.press(key);
        return [await slider.inputValue(), await slider.getAttribute('aria-valuetext')];
      };
      expect(await slider.inputValue()).toBe('50');
      expect(await press('ArrowRight')).toEqual(['51', '51 percent before, 49 percent after']);
      expect(await press('ArrowLeft')).toEqual(['50', '50 percent before, 50 percent after']);
      const middle = await clips(page);
      expect(await press('PageUp')).toEqual(['60', '60 percent before, 40 percent after']);
      expect(await clips(page)).not.toEqual(middle);
      expect(await press('End')).toEqual(['100', 'only before is seen']);
      const [all, none] = await clips(page);
      expect(all).toBe('inset(0px 0% 0px 0px)');
      expect(none).toMatch(/^inset\(0px 0px 0px calc\(100% /);
      expect(await page.getByText('After', { exact: true }).isVisible()).toBe(false);
      expect(await press('Home')).toEqual(['0', 'only after is seen']);
      expect(await page.getByText('After', { exact: true }).isVisible()).toBe(true);
      expect(await page.getByText('Before', { exact: true }).isVisible()).toBe(false);
      await page.context().close();
    });

    test('shows its focus, and has a band of 44 pixels to be taken by', async () => {
      const page = await opened(index(), 390);
      const outline = () =>
        page.evaluate<string>("getComputedStyle(document.querySelector('.cursor')).outlineStyle");
      expect(await outline()).toBe('none');
      await page.getByRole('slider').focus();
      await page.keyboard.press('ArrowRight');
      expect(await outline()).toBe('solid');
      const [input, rail, cursor, photo] = [
        await rectOf(page, '.rail input'),
        await rectOf(page, '.rail'),
        await rectOf(page, '.cursor'),
        await rectOf(page, '.half img'),
      ];
      expect(input.height).toBeGreaterThanOrEqual(44);
      expect(rail.width).toBeCloseTo(photo.width, 0);
      expect(cursor.x + cursor.width / 2).toBeCloseTo(photo.x + photo.width * 0.51, 0);
      expect(cursor.x + cursor.width).toBeLessThan(390);
      await page.context().close();
    });

    test.each([
      ['on its scale', '.rail', 0.75, 22],
      ['on a photo', '.half + .half img', 0.75, 100],
      ['in the slit between the photos', '.half + .half img', 0.5, 100],
    ])('is dragged by pointer %s', async (_, selector, across, down) => {
      const page = await opened(index(), 1280);
      await page.evaluate("document.querySelector('.when').scrollIntoView()");
      const photo = await rectOf(page, '.half img');
      const from = await rectOf(page, selector);
      const slider = page.getByRole('slider');
      await page.mouse.move(from.x + from.width * across, from.y + down);
      await page.mouse.down();
      await page.mouse.move(photo.x + photo.width * 0.5, from.y + down, { steps: 4 });
      await page.mouse.move(photo.x + photo.width * 0.2, from.y + down, { steps: 4 });
      expect(await slider.inputValue()).toBe('20');
      await page.mouse.move(photo.x - 300, from.y + down, { steps: 4 });
      expect(await slider.inputValue()).toBe('0');
      await page.mouse.up();
      await page.mouse.move(photo.x + photo.width * 0.9, from.y + down);
      expect(await slider.inputValue()).toBe('0');
      expect(page.url()).toBe(pathToFileURL(index()).href);
      // The drag is over: the link of the photo that is seen can still be followed by keyboard.
      await page.locator('.half a').last().press('Enter');
      await page.waitForURL(/\.jpg$/);
      await page.context().close();
    });

    test('is dragged by finger on the photos, and lets a finger scroll the page', async () => {
      const page = await opened(index(), 390, { hasTouch: true, isMobile: true });
      await page.evaluate("document.querySelector('.when').scrollIntoView()");
      const photo = await rectOf(page, '.half img');
      const session = await page.context().newCDPSession(page);
      const swipe = async (from: readonly [number, number], to: readonly [number, number]) => {
        const at = (share: number) => [
          { x: from[0] + (to[0] - from[0]) * share, y: from[1] + (to[1] - from[1]) * share },
        ];
        await session.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: at(0) });
        for (const share of [0.25, 0.5, 0.75, 1])
          await session.send('Input.dispatchTouchEvent', { type: 'touchMove', touchPoints: at(share) });
        await session.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
      };
      const middle = photo.x + photo.width / 2;
      const before = await page.evaluate<number>('scrollY');
      await swipe([middle, photo.y + 90], [photo.x + photo.width * 0.8, photo.y + 95]);
      expect(await page.getByRole('slider').inputValue()).toBe('80');
      expect(await page.evaluate('scrollY')).toBe(before);
      await swipe([middle, photo.y + 200], [middle, photo.y + 40]);
      await expect.poll(() => page.evaluate<number>('scrollY')).toBeGreaterThan(before + 50);
      expect(await page.getByRole('slider').inputValue()).toBe('80');
      await page.context().close();
    });

    test('leaves a press on a photo what it is: a way to the whole photo, of the one that is seen there', async () => {
      for (const [share, which] of [
        [0.2, 0],
        [0.8, 1],
      ] as const) {
        const page = await opened(index(), 1280);
        const photo = await rectOf(page, '.half img');
        const links = await page.locator('.half a').evaluateAll((all) => all.map(String));
        await page.mouse.click(photo.x + photo.width * share, photo.y + 150);
        await page.waitForURL(/\.jpg$/);
        expect(page.url()).toBe(links[which]);
        await page.context().close();
      }
    });

    test('gives way to the plain pair and comes back, by keyboard', async () => {
      const page = await opened(index(), 1280);
      await page.getByRole('button', { name: 'Put side by side' }).press('Enter');
      expect(await page.getByRole('slider').count()).toBe(0);
      const [before, after] = [await rectOf(page, '.half img'), await rectOf(page, '.half + .half img')];
      expect(after.x).toBeGreaterThan(before.x + before.width);
      expect([after.y, after.width, after.height]).toEqual([before.y, before.width, before.height]);
      expect(await clips(page)).toEqual(['none', 'none']);
      await page.getByRole('button', { name: 'Lay one over the other' }).press('Enter');
      expect(await page.getByRole('slider').count()).toBe(1);
      await page.context().close();
    });

    test('is seen in forced colours', async () => {
      const page = await opened(index(), 1280, { forcedColors: 'active' });
      const border = await page.evaluate<string>(
        "getComputedStyle(document.querySelector('.cursor')).borderTopStyle",
      );
      expect(border).toBe('solid');
      expect((await rectOf(page, '.cursor')).height).toBeGreaterThan(20);
      const drawn = await page.evaluate<string[]>(
        "['.scale', '.cursor'].map((one) => getComputedStyle(document.querySelector(one)).backgroundImage)",
      );
      for (const image of drawn) expect(image).toContain('gradient');
      await page.context().close();
    });

    test('moves nothing by itself', async () => {
      const page = await opened(index(), 1280);
      const moving = await page.evaluate<string[]>(
        `[...document.querySelectorAll('.pair, .pair *')].flatMap((one) => {
          const { transitionDuration, animationName } = getComputedStyle(one);
          return transitionDuration === '0s' && animationName === 'none' ? [] : [one.className];
        })`,
      );
      expect(moving).toEqual([]);
      await page.context().close();
    });
  });

  describe('without scripts', () => {
    test.each([1280, 390])('the plain pair shows and nothing is there to press, at %i px', async (width) => {
      const page = await opened(index(), width, { javaScriptEnabled: false });
      expect(await page.locator('.pair :is(button, input)').count()).toBe(0);
      const [before, after] = [await rectOf(page, '.half img'), await rectOf(page, '.half + .half img')];
      expect([after.width, after.height]).toEqual([before.width, before.height]);
      if (width === 1280) expect(after.x).toBeGreaterThan(before.x + before.width);
      else expect(after.y).toBeGreaterThan(before.y + before.height);
      for (const word of ['Before', 'After'])
        expect(await page.getByText(word, { exact: true }).isVisible()).toBe(true);
      expect(before.width / before.height).toBeCloseTo(1.333, 2);
      await page.context().close();
    });

    test('and on paper the plain pair is printed, though scripts ran', async () => {
      const page = await opened(index(), 1280);
      await page.emulateMedia({ media: 'print' });
      expect(await page.getByRole('slider').count()).toBe(0);
      expect(await page.locator('.choice').isVisible()).toBe(false);
      const [before, after] = [await rectOf(page, '.half img'), await rectOf(page, '.half + .half img')];
      expect(after.x).toBeGreaterThan(before.x + before.width);
      expect(await clips(page)).toEqual(['none', 'none']);
      await page.context().close();
    });
  });

  const BOXES = `[...document.querySelectorAll('main *')].map((one) => {
    const { x, y, width, height } = one.getBoundingClientRect();
    return [one.localName + '.' + one.className, x, y + scrollY, width, height];
  })`;

  describe('nothing moves', () => {
    test.each([
      [1280, 'index.html'],
      [390, 'index.html'],
      [1280, 'all-photos.html'],
      [390, 'all-photos.html'],
    ])('while pictures come, at %i px on %s', async (width, name) => {
      let release = (): void => {};
      const held = new Promise<void>((resolve) => {
        release = resolve;
      });
      let asked = 0;
      const page = await opened(join(folders.file, name), width, {}, async (fresh) => {
        await fresh.route(/\.(avif|jpg)$/, async (route) => {
          asked += 1;
          await held;
          await route.continue();
        });
        await fresh.addInitScript(
          "globalThis.shift = 0; new PerformanceObserver((list) => { for (const one of list.getEntries()) globalThis.shift += one.value; }).observe({ type: 'layout-shift', buffered: true });",
        );
        // The load event would wait for the pictures.
        fresh.setDefaultNavigationTimeout(30_000);
        const go = fresh.goto.bind(fresh);
        fresh.goto = (url) => go(url, { waitUntil: 'domcontentloaded' });
      });
      await page.evaluate('document.fonts.ready.then(() => {})');
      await page.evaluate("for (const one of document.images) one.loading = 'eager'");
      await page.waitForTimeout(200);
      expect(asked).toBeGreaterThan(4);
      expect(await page.evaluate('[...document.images].some((one) => one.complete)')).toBe(false);
      // What fonts and the script did before is not the pictures' doing.
      await page.evaluate('globalThis.shift = 0');
      const empty = await page.evaluate(BOXES);
      release();
      await page.evaluate('Promise.all([...document.images].map((one) => one.decode())).then(() => {})');
      expect(await page.evaluate(BOXES)).toEqual(empty);
      expect(await page.evaluate('globalThis.shift')).toBe(0);
      await page.context().close();
    });

    test.each([1280, 390])('when the script comes, below the pair, at %i px', async (width) => {
      const without = await mkdtemp(join(tmpdir(), 'no-script-'));
      await cp(folders.file, without, { recursive: true });
      await rm(join(without, 'assets/pair.js'));
      const context = await browser.newContext({ offline: true, viewport: { width, height: 900 } });
      const bare = await context.newPage();
      await bare.goto(pathToFileURL(join(without, 'index.html')).href);
      const page = await opened(index(), width);
      expect(await bare.locator('.rail').count()).toBe(0);
      expect(await page.locator('.rail').count()).toBe(1);
      const [below, same] = [await rectOf(bare, '#after-pair'), await rectOf(page, '#after-pair')];
      // A hundredth of a letter is lost in rounding.
      expect(Math.abs(same.y - below.y)).toBeLessThan(0.25);
      await context.close();
      await page.context().close();
    });
  });

  test('sizes say how wide each photo is shown, at every width', async () => {
    const MEASURE = `Promise.all([...document.images].map(async (one) => {
      one.loading = 'eager';
      await one.decode();
      const { width, height } = one.getBoundingClientRect();
      const ratio = one.getAttribute('width') / one.getAttribute('height');
      return { said: one.naturalWidth, shown: Math.max(width, height * ratio), file: one.currentSrc, sizes: one.sizes };
    }))`;
    let measured = 0;
    for (const file of [
      index(),
      join(folders.buyer, 'what-was-done.html'),
      join(folders.agent, 'index.html'),
    ]) {
      for (const width of [390, 800, 1280]) {
        const page = await opened(file, width);
        const found =
          await page.evaluate<{ said: number; shown: number; file: string; sizes: string }[]>(MEASURE);
        for (const { said, shown, file: chosen, sizes } of found) {
          expect(said / shown, `${file} at ${width}: ${sizes} for ${shown}`).toBeGreaterThan(0.95);
          expect(said / shown, `${file} at ${width}: ${sizes} for ${shown}`).toBeLessThan(1.06);
          expect(chosen).toMatch(/\.avif$/);
          measured += 1;
        }
        await page.context().close();
      }
    }
    expect(measured).toBeGreaterThan(40);
  });

  test('photos are shown whole outside pairs, and a panorama over the full measure', async () => {
    const page = await opened(index(), 1280);
    const shapes = await page.evaluate<[number, number][]>(
      `[...document.querySelectorAll('.photo img, .photos img')].map((one) => [
        one.getAttribute('width') / one.getAttribute('height'),
        one.getBoundingClientRect().width / one.getBoundingClientRect().height,
      ])`,
    );
    expect(shapes).toHaveLength(7);
    for (const [own, shown] of shapes) expect(shown / own).toBeCloseTo(1, 2);
    const [pano, main] = [await rectOf(page, '#pano img'), await rectOf(page, 'main')];
    expect(pano.width).toBeCloseTo(main.width, 0);
    await page.context().close();
  });

  test('a contact sheet has six columns at a desk, and two or three on a phone', async () => {
    const columns = async (width: number): Promise<number> => {
      const page = await opened(join(folders.file, 'all-photos.html'), width);
      const tops = await page.evaluate<number[]>(
        "[...document.querySelectorAll('.contact figure')].map((one) => one.getBoundingClientRect().top)",
      );
      await page.context().close();
      return tops.filter((top) => top === tops[0]).length;
    };
    expect([await columns(1280), await columns(390), await columns(320)]).toEqual([6, 3, 2]);
  });

  test('the few pixels are behind each picture until it is there', async () => {
    const page = await opened(index(), 1280, {}, async (fresh) => {
      await fresh.route(/\.(avif|jpg)$/, () => {});
      const go = fresh.goto.bind(fresh);
      fresh.goto = (url) => go(url, { waitUntil: 'domcontentloaded' });
    });
    await page.waitForTimeout(300);
    const photo = await rectOf(page, '#pano img');
    const shot = await page.screenshot({ fullPage: true });
    const { default: sharp } = await import('sharp');
    const patch = {
      left: Math.round(photo.x + photo.width / 2),
      top: Math.round(photo.y + photo.height * 0.9),
      width: 8,
      height: 8,
    };
    const { channels } = await sharp(await sharp(shot).extract(patch).toBuffer()).stats();
    // The hill of the drawn panorama, #5f6f62, mixed with some sky; the empty frame is near white.
    for (const channel of channels.slice(0, 3)) expect(channel.mean).toBeLessThan(190);
    await page.context().close();
  });
});
