/**
 * What was built of the demo houses and the golden ones: ids once a page, every way leads somewhere, and no page
 * asks another host. The links of the PDF are read by PDF.js.
 */
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { describe, expect, it } from 'vitest';
import { attributes } from '../rooms/rendered-sample.js';
import { builtHouses, editionsOf, filesBelow, pagesIn } from '../tools/built-houses.js';

/** Attributes by which a page loads something by itself. */
const LOADING = ['src', 'srcset', 'poster', 'data', 'action', 'formaction', 'background', 'manifest', 'ping'];

/** Elements that load what their `href` names; a plain link doesn't until somebody follows it. */
const loadedByHref = (html: string): string[] =>
  [...html.matchAll(/<(?:link|use|image|base)\b[^>]*>/gu)].flatMap(([tag]) => attributes(tag, 'href'));

const inStyle = (css: string): string[] =>
  [...css.matchAll(/url\(\s*["']?([^"')]+)["']?\s*\)|@import\s+["']([^"']+)/gu)].map(
    (match) => match[1] ?? match[2] ?? '',
  );

/** Held in the page itself: an empty icon, so that no browser asks for one. */
const isHere = (target: string): boolean => target.startsWith('data:');

/** A few pixels that stand in for a photo, held in the style sheet itself. */
const isPicture = (target: string): boolean => /^data:image\/png;base64,[A-Za-z0-9+/]+=*$/u.test(target);

const OWN_SCRIPT = '<script src="assets/pair.js" defer>';
const SEARCH_SCRIPT = '<script src="assets/search.js" defer>';

/** Everything a page asks for when it is opened. */
function askedFor(html: string): string[] {
  const loading = LOADING.flatMap((name) => attributes(html, name));
  const each = loading.flatMap((value) => value.split(',').map((part) => part.trim().split(/\s+/u)[0] ?? ''));
  const styles = [...html.matchAll(/<style[^>]*>([\s\S]*?)<\/style>/gu)].flatMap((match) =>
    inStyle(match[1] ?? ''),
  );
  const all = [...each, ...loadedByHref(html), ...styles, ...attributes(html, 'style').flatMap(inStyle)];
  return all.filter((target) => !isHere(target));
}

const leavesTheFolder = (target: string): boolean =>
  /^(?:[a-z][a-z0-9+.-]*:|\/|\\)/iu.test(target) || target.split('/').includes('..');

describe.each(builtHouses())('%s', (house) => {
  it('gives no id twice on a page', async () => {
    for (const { folder } of await editionsOf(house))
      for (const [file, html] of pagesIn(folder)) {
        const ids = attributes(html, 'id');
        expect(ids.length, file).toBeGreaterThan(0);
        expect(
          ids.filter((id, i) => ids.indexOf(id) !== i),
          `${folder}/${file}`,
        ).toEqual([]);
      }
  });

  it('asks for nothing but its own files', async () => {
    for (const { folder } of await editionsOf(house)) {
      const pages = pagesIn(folder);
      expect(pages.size).toBeGreaterThan(0);
      for (const [file, html] of pages) {
        const asked = askedFor(html);
        expect(asked.length, file).toBeGreaterThan(0);
        const wrong = asked.filter((one) => leavesTheFolder(one) || !existsSync(path.join(folder, one)));
        expect(wrong, file).toEqual([]);
        // Its own scripts, for a pair of photos and for the search box, and no other; none is written into the page.
        const scripts = [...html.matchAll(/<script\b[^>]*>[^<]*/giu)].map(([tag]) => tag);
        expect(
          scripts.filter((tag) => tag !== OWN_SCRIPT && tag !== SEARCH_SCRIPT),
          file,
        ).toEqual([]);
        expect(scripts.includes(OWN_SCRIPT), file).toBe(html.includes('class="pair'));
        expect(scripts.includes(SEARCH_SCRIPT), file).toBe(existsSync(path.join(folder, 'search-data.js')));
        expect(/<iframe|<object|<embed|http-equiv="refresh"/iu.exec(html)?.[0], file).toBeUndefined();
      }
      for (const name of filesBelow(folder).filter((one) => /\.(css|svg)$/u.test(one))) {
        const css = readFileSync(path.join(folder, name), 'utf8');
        const from = path.posix.dirname(name);
        const wrong = inStyle(css).filter(
          (one) =>
            !isPicture(one) &&
            (/^(?:[a-z][a-z0-9+.-]*:|\/)/iu.test(one) || !existsSync(path.join(folder, from, one))),
        );
        expect(wrong, name).toEqual([]);
      }
    }
  });

  it('has no link that leads nowhere in its pages', async () => {
    for (const { folder } of await editionsOf(house)) {
      const pages = pagesIn(folder);
      const ids = new Map([...pages].map(([file, html]) => [file, new Set(attributes(html, 'id'))]));
      const dead: string[] = [];
      let links = 0;
      for (const [file, html] of pages)
        for (const href of attributes(html, 'href').filter((one) => !isHere(one))) {
          links += 1;
          const [target = '', anchor] = href.split('#');
          const page = target === '' ? file : decodeURIComponent(target);
          if (leavesTheFolder(href) || !existsSync(path.join(folder, page))) dead.push(`${file}: ${href}`);
          else if (anchor !== undefined && ids.get(page)?.has(decodeURIComponent(anchor)) !== true)
            dead.push(`${file}: ${href}`);
        }
      expect(dead).toEqual([]);
      expect(links).toBeGreaterThan(5);
    }
  });

  it('has no link that leads nowhere, or out, in its sheets', async () => {
    for (const { pdf, packet } of await editionsOf(house)) {
      const document = await getDocument({ data: new Uint8Array(readFileSync(pdf)), verbosity: 0 }).promise;
      const dead: string[] = [];
      let links = 0;
      for (let number = 1; number <= document.numPages; number++) {
        for (const note of await (await document.getPage(number)).getAnnotations()) {
          if (note.subtype !== 'Link') continue;
          links += 1;
          const place = typeof note.dest === 'string' ? await document.getDestination(note.dest) : note.dest;
          if (!Array.isArray(place)) dead.push(`page ${number}: ${note.dest ?? note.url ?? 'no target'}`);
        }
      }
      expect(dead, packet.edition.name).toEqual([]);
      if (packet.arrangement === 'page-per-section')
        expect(links).toBeGreaterThan(packet.sections.length - 1);
      const outline = (await document.getOutline()) ?? [];
      expect(outline.map((entry) => entry.title)).toEqual(packet.sections.map((section) => section.title));
      await document.destroy();
    }
  });
});

describe('the search', () => {
  it('sees every way in which a page can ask another host', () => {
    const page = `<link rel="icon" href="https://a.invalid/1"><img src="//a.invalid/2" srcset="p.jpg 1x, https://a.invalid/3 2x">
      <style>@import "https://a.invalid/4"; a { background: url('https://a.invalid/5') }</style>
      <p style="background: url(https://a.invalid/6)"><a href="https://a.invalid/link">read</a>`;
    expect(askedFor(page).filter(leavesTheFolder)).toHaveLength(6);
  });
});
