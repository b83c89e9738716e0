/**
 * In a real Chromium: every page of every edition of a house whose every text is markup has no element, attribute, kind of
 * address or comment that plain words haven't; it asks for nothing and says nothing; and its policy stops a script and a
 * remote picture that somebody got into it all the same. The preview's pages likewise. Skipped by name without Chromium.
 */
import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { type Browser, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { serveCommand } from '../../src/command-serve.js';
import { BROWSER_ARGS, findBrowser, NO_BROWSER } from '../tools/find-browser.js';
import { buildHostileHouse, type HostileHouse } from '../tools/hostile-house.js';
import { quietProgress } from '../tools/quiet-progress.js';

const executablePath = findBrowser();
const reason = executablePath === undefined ? ` (skipped: ${NO_BROWSER})` : '';

/** What a page is made of, by kinds; what its words are does not count. Runs in the page. */
const kindsIn = (): string[] => {
  const kinds = new Set<string>();
  for (const element of Array.from(document.querySelectorAll('*'))) {
    kinds.add(element.localName);
    for (const { name, value } of Array.from(element.attributes)) {
      kinds.add(`${element.localName} ${name}`);
      if (/^(href|src|srcset|action|formaction|data|poster|content|style)$/.test(name))
        kinds.add(
          `${element.localName} ${name} ${/^\s*([a-z][a-z0-9+.-]*:|\/\/|#|\/)?/i.exec(value)?.[1] ?? ''}`,
        );
    }
  }
  const comments = document.createTreeWalker(document, NodeFilter.SHOW_COMMENT);
  while (comments.nextNode()) kinds.add('a comment');
  return [...kinds];
};

/** What somebody may have got into a page; the policy is what is left then. Answers with what it stopped. Runs in the page. */
const intrude = async (remote: string): Promise<{ ran: boolean; loaded: boolean; stopped: string[] }> => {
  const stopped: string[] = [];
  document.addEventListener('securitypolicyviolation', (event) => stopped.push(event.effectiveDirective));
  const script = document.createElement('script');
  script.textContent = 'document.documentElement.dataset.ran = "yes"';
  document.body.append(script);
  const button = document.createElement('p');
  button.setAttribute('onclick', 'document.documentElement.dataset.ran = "yes"');
  document.body.append(button);
  button.click();
  const picture = new Image();
  const loaded = new Promise<boolean>((resolve) => {
    picture.onload = () => resolve(true);
    picture.onerror = () => resolve(false);
  });
  picture.src = `${remote}x.png`;
  const frame = document.createElement('iframe');
  frame.src = remote;
  const far = document.createElement('script');
  far.src = `${remote}x.js`;
  document.body.append(picture, frame, far);
  const was = await loaded;
  await new Promise((resolve) => setTimeout(resolve, 60));
  return {
    ran: document.documentElement.dataset.ran === 'yes',
    loaded: was,
    stopped: [...new Set(stopped)].sort(),
  };
};

describe.skipIf(executablePath === undefined)(`pages of hostile words in Chromium${reason}`, () => {
  let root: string;
  let browser: Browser;
  let plain: HostileHouse;
  let markup: HostileHouse;
  /** Another site: whatever it is asked for it was not to be. */
  const asked: string[] = [];
  const other = createServer((request, response) => {
    asked.push(request.url ?? '');
    response
      .writeHead(200, { 'content-type': 'image/svg+xml' })
      .end('<svg xmlns="http://www.w3.org/2000/svg"/>');
  });
  let remote: string;

  beforeAll(async () => {
    root = mkdtempSync(path.join(tmpdir(), 'hostile-pages-'));
    browser = await chromium.launch({ executablePath: executablePath as string, args: BROWSER_ARGS });
    plain = await buildHostileHouse(root, 'plain');
    markup = await buildHostileHouse(root, 'markup');
    await new Promise<void>((resolve) => other.listen(0, '127.0.0.1', resolve));
    remote = `http://127.0.0.1:${(other.address() as AddressInfo).port}/`;
  });

  afterAll(async () => {
    await browser?.close();
    other.close();
    rmSync(root, { recursive: true, force: true });
  });

  const pagesOf = ({ out }: HostileHouse): string[] =>
    readdirSync(out, { recursive: true, encoding: 'utf8' })
      .filter((file) => file.endsWith('.html'))
      .sort();

  /** What the page said, asked for or threw while it was opened. */
  function listened(page: Page): string[] {
    const said: string[] = [];
    page.on('console', (message) => said.push(message.text()));
    page.on('pageerror', (error) => said.push(error.message));
    page.on('dialog', (dialog) => {
      said.push('a dialog');
      void dialog.dismiss();
    });
    page.on('request', (request) => {
      if (!/^(file|data):/.test(request.url())) said.push(`asked for ${request.url()}`);
    });
    return said;
  }

  it('are made of what plain words are made of, and let nothing in', async () => {
    const pages = pagesOf(markup);
    expect(pages).toEqual(pagesOf(plain));
    expect(pages.length).toBeGreaterThan(30);
    const page = await browser.newPage();
    const said = listened(page);
    for (const file of pages) {
      await page.goto(pathToFileURL(path.join(plain.out, file)).href);
      const usual = new Set(await page.evaluate(kindsIn));
      said.length = 0;
      await page.goto(pathToFileURL(path.join(markup.out, file)).href);
      const kinds = await page.evaluate(kindsIn);
      // A long name is set in smaller type.
      expect(
        kinds.filter((kind) => !usual.has(kind) && kind !== 'h1 class'),
        file,
      ).toEqual([]);
      expect(said, file).toEqual([]);
      const { ran, loaded, stopped } = await page.evaluate(intrude, remote);
      expect({ ran, loaded }, file).toEqual({ ran: false, loaded: false });
      expect(stopped, file).toEqual(['frame-src', 'img-src', 'script-src-attr', 'script-src-elem']);
    }
    expect(asked).toEqual([]);
  });

  it('in the preview, too; it follows an edit, and no other site can take its scripts', async () => {
    let stop: () => Promise<void> = async () => undefined;
    let ended: Promise<number> = Promise.resolve(0);
    const address = await new Promise<string>((resolve) => {
      ended = serveCommand(
        [markup.folder],
        { content: 'content', asOf: '2026-11-20', out: path.join(root, 'preview'), port: 0 },
        { out: () => undefined, error: () => undefined, colour: false, progress: quietProgress },
        (end, shown) => {
          stop = end;
          resolve(shown);
        },
      );
    });
    const page = await browser.newPage();
    const said = listened(page);
    for (const file of ['', 'hostile/buyer/index.html', 'hostile/agent/index.html', 'nowhere.html']) {
      said.length = 0;
      await page.goto(`${address}${file}`);
      expect(
        said.filter((one) => !one.startsWith(`asked for ${address}`) && !one.includes('404')),
        file,
      ).toEqual([]);
      const { ran, loaded, stopped } = await page.evaluate(intrude, remote);
      expect({ ran, loaded }, file).toEqual({ ran: false, loaded: false });
      expect(stopped, file).toEqual(['frame-src', 'img-src', 'script-src-attr', 'script-src-elem']);
    }
    expect(asked).toEqual([]);
    // A page of another site asks for what there is to be found, as a script.
    await page.goto(remote);
    const got = await page.evaluate(async (from) => {
      const script = document.createElementNS('http://www.w3.org/1999/xhtml', 'script') as HTMLScriptElement;
      script.src = `${from}hostile/buyer/search-data.js`;
      return await new Promise<boolean>((resolve) => {
        script.onload = () => resolve(true);
        script.onerror = () => resolve(false);
        document.documentElement.append(script);
      });
    }, address);
    expect(got).toBe(false);
    await page.close();
    await stop();
    expect(await ended).toBe(0);
  });
});
