/**
 * The slider of a pair for those who use keyboard, touch exploration or a screen reader, in a real Chromium: what the
 * browser tells assistive software is asked of the browser itself. Skipped by name where there is no Chromium.
 * How the slider moves is in web-photo-layout; what axe says of it is in tests/outside/axe-chromium.
 */
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { type Browser, type BrowserContextOptions, chromium, type Page } from 'playwright-core';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Packet } from '../../src/packet/packet.js';
import { renderWeb } from '../../src/web/render-web.js';
import { BROWSER_ARGS, findBrowser, NO_BROWSER } from '../tools/find-browser.js';
import { writtenToDisk } from './rendered-sample.js';
import { photoSheet, samplePictures } from './sample-packet.js';

const executablePath = findBrowser();
const reason = executablePath === undefined ? ` (skipped: ${NO_BROWSER})` : '';

const CAPTIONS = ['Before · after. The cellar stair.', 'Before · after. The hall.'];
const PICTURES = { PAIR_A: 'the first', PAIR_B: 'the second' };

const twoPairs: Packet = {
  ...photoSheet,
  // Without a search box above the pairs.
  arrangement: 'one-page',
  photos: photoSheet.photos.map((photo) => {
    const alt = PICTURES[photo.id as keyof typeof PICTURES];
    return alt === undefined ? photo : { ...photo, alt };
  }),
  sections: [
    {
      id: 'pairs',
      title: 'Pairs',
      blocks: CAPTIONS.map((text, index) => ({
        kind: 'pair',
        id: `pair-${index}`,
        before: 'PAIR_A',
        after: 'PAIR_B',
        aspect: 1.333,
        caption: [{ text }],
      })),
    },
  ],
};

interface Told {
  readonly role: string;
  readonly name: string;
}

describe.skipIf(executablePath === undefined)(`in Chromium${reason}`, () => {
  let browser: Browser;
  let file = '';

  beforeAll(async () => {
    browser = await chromium.launch({ executablePath, args: BROWSER_ARGS });
    const folder = await writtenToDisk(await renderWeb(twoPairs, await samplePictures(), undefined));
    file = join(folder, 'index.html');
  });

  afterAll(() => browser?.close());

  async function opened(options: BrowserContextOptions = {}): Promise<Page> {
    const context = await browser.newContext({
      offline: true,
      viewport: { width: 1280, height: 900 },
      ...options,
    });
    const page = await context.newPage();
    page.on('console', (message) => {
      throw new Error(message.text());
    });
    await page.goto(pathToFileURL(file).href);
    return page;
  }

  /** Everything of these roles that the browser tells assistive software, in page order. */
  async function told(page: Page, ...roles: string[]): Promise<Told[]> {
    const session = await page.context().newCDPSession(page);
    const { nodes } = await session.send('Accessibility.getFullAXTree');
    await session.detach();
    return nodes
      .filter((node) => !node.ignored)
      .map((node) => ({ role: String(node.role?.value), name: String(node.name?.value) }))
      .filter((node) => roles.includes(node.role));
  }

  const names = async (page: Page, role: string): Promise<string[]> =>
    (await told(page, role)).map((one) => one.name);

  /** What of the first pair has the focus, or where else it is. */
  const focused = (page: Page): Promise<string> =>
    page.evaluate<string>(`(() => {
      const at = document.activeElement;
      if (!document.querySelector('.pair').contains(at)) return at.localName + ' elsewhere';
      return at.closest('.half')?.querySelector('.when').textContent ?? at.localName;
    })()`);

  const moveTo = async (page: Page, key: 'Home' | 'End'): Promise<void> => {
    await page.getByRole('slider').first().press(key);
  };

  /** The stops of the first pair that the Tab key makes, from the top of the page. */
  async function stops(page: Page): Promise<string[]> {
    await page.evaluate("document.activeElement.blur(); document.querySelector('.pair').scrollIntoView()");
    await page.evaluate('getSelection().collapse(document.querySelector("main"), 0)');
    const found: string[] = [];
    for (let presses = 0; presses < 12; presses += 1) {
      await page.keyboard.press('Tab');
      const at = await focused(page);
      if (!at.endsWith('elsewhere')) found.push(at);
      else if (found.length > 0) return found;
    }
    return found;
  }

  describe('at either end', () => {
    test('only the photo that is seen can be reached by keyboard', async () => {
      const page = await opened();
      expect(await stops(page)).toEqual(['Before', 'After', 'input', 'button']);
      await moveTo(page, 'Home');
      expect(await stops(page)).toEqual(['After', 'input', 'button']);
      await moveTo(page, 'End');
      expect(await stops(page)).toEqual(['Before', 'input', 'button']);
      await page.getByRole('slider').first().press('ArrowLeft');
      expect(await stops(page)).toEqual(['Before', 'After', 'input', 'button']);
      await page.context().close();
    });

    test('only the photo that is seen is read out, with its word', async () => {
      const page = await opened();
      const firstPair = async (): Promise<string[]> => {
        const all = await told(page, 'image', 'StaticText', 'slider');
        const end = all.findIndex((one) => one.role === 'slider');
        return all
          .slice(0, end)
          .map((one) => one.name)
          .filter((name) => /^(Before|After|the (first|second))$/.test(name));
      };
      expect(await firstPair()).toEqual(['Before', 'the first', 'After', 'the second']);
      await moveTo(page, 'Home');
      expect(await firstPair()).toEqual(['After', 'the second']);
      await moveTo(page, 'End');
      expect(await firstPair()).toEqual(['Before', 'the first']);
      await page.context().close();
    });

    test('side by side and on paper both are there again', async () => {
      const page = await opened();
      await moveTo(page, 'Home');
      const hidden = (): Promise<number> =>
        page.evaluate<number>(
          "[...document.querySelectorAll('.half, .half *')].filter((one) => getComputedStyle(one).visibility !== 'visible').length",
        );
      expect(await hidden()).toBeGreaterThan(3);
      await page.emulateMedia({ media: 'print' });
      expect(await hidden()).toBe(0);
      await page.emulateMedia({ media: 'screen' });
      await page.getByRole('button').first().press('Enter');
      expect(await hidden()).toBe(0);
      expect(await stops(page)).toEqual(['Before', 'After', 'button']);
      await page.context().close();
    });
  });

  describe('the focus is never lost', () => {
    test.each([
      ['Before', 0.2, -0.1, '0'],
      ['After', 0.8, 1.1, '100'],
    ])('when a drag that began on the photo %s hides it', async (pressed, from, to, value) => {
      const page = await opened();
      const photo = await page.locator('.half img').first().boundingBox();
      if (photo === null) throw new Error('the photo is not shown');
      const { x, y, width } = photo;
      await page.mouse.move(x + width * from, y + 60);
      await page.mouse.down();
      expect(await focused(page)).toBe(pressed);
      await page.mouse.move(x + width * to, y + 60, { steps: 5 });
      await page.mouse.up();
      expect(await page.getByRole('slider').first().inputValue()).toBe(value);
      expect(await focused(page)).toBe('input');
      await page.context().close();
    });

    test('when assistive software moves the slider or presses the button while the focus is elsewhere', async () => {
      const page = await opened();
      const first = page.locator('.half a').first();
      await first.focus();
      await page.evaluate(
        "(() => { const one = document.querySelector('.rail input'); one.value = '0'; one.dispatchEvent(new Event('input', { bubbles: true })); })()",
      );
      expect(await focused(page)).toBe('input');
      await page.evaluate("document.querySelector('.choice').click()");
      expect(await focused(page)).toBe('button');
      await first.focus();
      await page.evaluate("document.querySelector('.choice').click()");
      expect(await focused(page)).toBe('input');
      await page.context().close();
    });
  });

  /** Leftmost and rightmost changed column of a strip across the photos, in CSS pixels from the photo's left edge. */
  async function changed(page: Page, strip: Strip, before: Buffer): Promise<[number, number]> {
    const after = await sharp(await page.screenshot({ clip: strip }))
      .removeAlpha()
      .raw()
      .toBuffer();
    const columns = new Set<number>();
    for (let i = 0; i < after.length; i += 1)
      if (after[i] !== before[i]) columns.add(Math.floor(i / 3) % strip.width);
    return [Math.min(...columns) - MARGIN, Math.max(...columns) - MARGIN];
  }

  const MARGIN = 12;
  interface Strip {
    readonly x: number;
    readonly y: number;
    readonly width: number;
    readonly height: number;
  }

  test.each([
    ['light', {}],
    ['dark', { colorScheme: 'dark' as const }],
    ['forced colours', { forcedColors: 'active' as const }],
  ])('the ring goes round that part of the photo that is seen, in %s', async (_, options) => {
    const page = await opened(options);
    const photo = await page.locator('.half img').first().boundingBox();
    if (photo === null) throw new Error('the photo is not shown');
    await page.evaluate("for (const one of document.images) one.loading = 'eager'");
    await page.evaluate('Promise.all([...document.images].map((one) => one.decode())).then(() => {})');
    const strip: Strip = {
      x: Math.round(photo.x) - MARGIN,
      y: Math.round(photo.y) + 100,
      width: Math.round(photo.width) + 2 * MARGIN,
      height: 4,
    };
    for (const [seam, keys] of [
      [50, 0],
      [60, 1],
      [90, 3],
    ] as const) {
      for (
        let i = 0;
        i < keys && (await page.getByRole('slider').first().inputValue()) !== String(seam);
        i += 1
      )
        await page.getByRole('slider').first().press('PageUp');
      expect(await page.getByRole('slider').first().inputValue()).toBe(String(seam));
      await page.evaluate('document.activeElement.blur()');
      const plain = await sharp(await page.screenshot({ clip: strip }))
        .removeAlpha()
        .raw()
        .toBuffer();
      const at = (photo.width * seam) / 100;
      const ringOf = async (which: number): Promise<[number, number]> => {
        await page.locator('.half a').nth(which).focus();
        return changed(page, strip, plain);
      };
      const before = await ringOf(0);
      const after = await ringOf(1);
      // Two pixels of ring, three of paper, one of rounding.
      expect(Math.abs(before[0] + 5), `${before} at ${seam}`).toBeLessThanOrEqual(1);
      expect(Math.abs(before[1] - at - 5), `${before} at ${seam}`).toBeLessThanOrEqual(2);
      expect(Math.abs(after[0] - at + 5), `${after} at ${seam}`).toBeLessThanOrEqual(2);
      expect(Math.abs(after[1] - photo.width - 5), `${after} at ${seam}`).toBeLessThanOrEqual(2);
    }
    await page.context().close();
  });

  test('every control says whose pair it moves', async () => {
    const page = await opened();
    const pressed = page.getByRole('button').nth(1);
    const sliders = await names(page, 'slider');
    expect(sliders).toEqual(
      CAPTIONS.map((words) => `Line between before, on its left, and after, on its right ${words}`),
    );
    expect(await names(page, 'button')).toEqual(CAPTIONS.map((words) => `Put side by side ${words}`));
    // Newer browsers no longer name a figure by its caption: both are told, and the caption is read as text.
    expect(await told(page, 'figure')).toHaveLength(2);
    expect(await told(page, 'Figcaption')).toHaveLength(2);
    await pressed.press('Enter');
    expect(await names(page, 'button')).toEqual([
      `Put side by side ${CAPTIONS[0]}`,
      `Lay one over the other ${CAPTIONS[1]}`,
    ]);
    const ids = await page.evaluate<string[]>("[...document.querySelectorAll('[id]')].map((one) => one.id)");
    expect(new Set(ids).size).toBe(ids.length);
    await page.context().close();
  });

  describe('on a phone', () => {
    const PHONE = { viewport: { width: 390, height: 900 }, hasTouch: true, isMobile: true };

    test('the slider is what a finger finds, anywhere on its rail', async () => {
      const page = await opened(PHONE);
      const found = await page.evaluate<string[]>(`(() => {
        const rail = document.querySelector('.rail');
        rail.scrollIntoView({ block: 'center' });
        const { left, top, width, height } = rail.getBoundingClientRect();
        return [0.01, 0.25, 0.5, 0.75, 0.99].flatMap((across) => [0.05, 0.5, 0.95].map((down) =>
          document.elementFromPoint(left + width * across, top + height * down).localName));
      })()`);
      expect(found).toEqual(Array(15).fill('input'));
      await page.context().close();
    });

    test('a finger on the rail moves the line to where it is, and can scroll the page from there', async () => {
      const page = await opened(PHONE);
      await page.evaluate("document.querySelector('.rail').scrollIntoView({ block: 'center' })");
      const rail = await page.locator('.rail').first().boundingBox();
      if (rail === null) throw new Error('the rail is not shown');
      const session = await page.context().newCDPSession(page);
      const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', ...points: { x: number; y: number }[]) =>
        session.send('Input.dispatchTouchEvent', { type, touchPoints: points });
      const y = rail.y + rail.height / 2;
      const at = (share: number) => ({ x: rail.x + rail.width * share, y });
      const line = () =>
        page.evaluate<number>("Number(document.querySelector('.pair').style.getPropertyValue('--seam'))");
      await touch('touchStart', at(0.3));
      for (const share of [0.4, 0.55, 0.715]) {
        await touch('touchMove', at(share));
        // The finger's own place, whichever of page and browser reads it: no more than a pixel off.
        await expect.poll(async () => Math.abs((await line()) - share * 100) * rail.width).toBeLessThan(150);
      }
      await touch('touchEnd');
      expect(await page.getByRole('slider').first().getAttribute('aria-valuetext')).toMatch(/^7[12] percent/);
      const scrolled = await page.evaluate<number>('scrollY');
      await touch('touchStart', at(0.7));
      for (const up of [20, 60, 120]) await touch('touchMove', { x: at(0.7).x, y: y - up });
      await touch('touchEnd');
      // Asked from here: the page's own policy lets nothing be evaluated in it a second time.
      await expect.poll(() => page.evaluate<number>('scrollY')).toBeGreaterThan(scrolled + 50);
      await page.context().close();
    });
  });

  test('with letters twice as large, everything of the pair stays in the window and in one column', async () => {
    // A window of 1280 pixels at 200 percent, and one with the reader's own large letters.
    for (const [width, letters] of [
      [640, '100%'],
      [640, '212%'],
      [320, '212%'],
    ] as const) {
      const page = await opened({ viewport: { width, height: 450 } });
      await page.evaluate(`document.documentElement.style.fontSize = '${letters}'`);
      const rects = await page.evaluate<number[][]>(
        `['.when', '.half + .half .when', '.half img', '.rail', '.choice', 'figcaption'].map((part) => {
          const { left, right, top, bottom } = document.querySelector('.pair ' + part).getBoundingClientRect();
          return [left, right, top, bottom];
        })`,
      );
      const [before, after, photo, rail, choice, caption] = rects;
      for (const [left = -1, right = Infinity] of rects) {
        expect(left).toBeGreaterThanOrEqual(0);
        expect(right).toBeLessThanOrEqual(width);
      }
      expect(after?.[2]).toBe(before?.[2]);
      for (const [above, below] of [
        [before, photo],
        [photo, rail],
        [rail, choice],
        [choice, caption],
      ])
        expect(below?.[2] ?? 0).toBeGreaterThanOrEqual((above?.[3] ?? Infinity) - 0.5);
      expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(width);
      await page.context().close();
    }
  });
});
