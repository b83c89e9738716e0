import { access } from 'node:fs/promises';
import { beforeAll, describe, expect, test } from 'vitest';
import type { Block, OutputFile, Packet, Pictures } from '../../src/packet/packet.js';
import { anchorsOf, wordsOf } from '../../src/packet/words-of.js';
import { renderWeb } from '../../src/web/render-web.js';
import { attributes, htmlOf, spaced, textOf } from './rendered-sample.js';
import { samplePacket, samplePictures, sampleSheet, wideSheet } from './sample-packet.js';

let pictures: Pictures;
let files: OutputFile[];
let pages: Map<string, string>;

beforeAll(async () => {
  pictures = await samplePictures();
  files = await renderWeb(samplePacket, pictures, { file: 'quarry-road-buyer.pdf', pages: 23 });
  pages = htmlOf(files);
});

const page = (name: string): string => pages.get(name) ?? `no page ${name}`;

/** A packet whose only section holds these blocks. */
function packetOf(...blocks: Block[]): Packet {
  return { ...samplePacket, sections: [{ id: 'only', title: 'Only', blocks }] };
}

async function frontOf(packet: Packet): Promise<string> {
  return htmlOf(await renderWeb(packet, pictures, undefined)).get('index.html') ?? '';
}

describe('the cut into pages', () => {
  test('a packet has one flat page a section, the first of them at the front', () => {
    const later = samplePacket.sections.slice(1).map((section) => `${section.id}.html`);
    expect([...pages.keys()]).toEqual(['index.html', ...later]);
  });

  test('a sheet is one page', async () => {
    const sheet = htmlOf(await renderWeb(sampleSheet, pictures, { file: 'sheet.pdf', pages: 1 }));
    expect([...sheet.keys()]).toEqual(['index.html']);
    expect(textOf(sheet.get('index.html') ?? '')).toContain('PDF, 1 page Digest');
    expect(sheet.get('index.html')).not.toContain('aria-current');
  });

  test('a section whose id could leave the folder is refused', async () => {
    for (const id of ['../evil', 'a/b', 'index', 'A', '']) {
      const packet = { ...samplePacket, sections: [...packetOf().sections, { id, title: 'x', blocks: [] }] };
      await expect(renderWeb(packet, pictures, undefined), id).rejects.toThrow("can't name a page");
    }
  });

  test('a packet without sections still has its front page', async () => {
    const bare = { ...samplePacket, sections: [] };
    const html = await frontOf(bare);
    expect(textOf(html)).toContain('Fallow Mills, Ohio');
    expect(html).not.toContain('<nav');
  });
});

describe('nothing is lost and nothing is added', () => {
  test('every word of every block meant for pages is on the page of its section', () => {
    for (const [index, section] of samplePacket.sections.entries()) {
      const html = page(index === 0 ? 'index.html' : `${section.id}.html`);
      const text = textOf(html);
      for (const block of section.blocks) {
        if (block.only === 'print') continue;
        for (const words of wordsOf(block)) expect(text, block.id).toContain(spaced(words));
        if (block.kind === 'drawing') expect(attributes(html, 'aria-label')).toContain(block.alt);
      }
    }
  });

  test('a block meant for paper is not in the pages', () => {
    expect([...pages.values()].join()).not.toContain('The pages on screen say the same.');
    expect(page('notices.html')).toContain('The paper edition of these pages says the same.');
  });

  test('every id of a packet is an anchor exactly once', () => {
    const ids = [...pages.values()].flatMap((html) => attributes(html, 'id'));
    for (const id of anchorsOf(samplePacket)) {
      expect(
        ids.filter((one) => one === id),
        id,
      ).toHaveLength(id === 'only-print' ? 0 : 1);
    }
  });

  test('title block: house, place, edition, facts, date, digest, paper', () => {
    const text = textOf(page('index.html'));
    for (const words of [
      'Buyer packet For a buyer and a buyer’s inspector Quarry Road Fallow Mills, Ohio',
      'Built1948',
      'Facts as of20 November 2026',
      'Digest7f3a 91c2 0d4e',
      'On paperPDF, 23 pages',
      'Listing fields, by their data dictionary names',
    ]) {
      expect(text).toContain(words);
    }
    expect(attributes(page('index.html'), 'href')).toEqual(
      expect.arrayContaining(['quarry-road-buyer.pdf', 'listing-fields.json']),
    );
  });

  test('without a paper edition none is promised', async () => {
    const text = textOf(await frontOf(samplePacket));
    expect(text).not.toContain('On paper');
    expect(text).not.toContain('PDF');
  });

  test('an empty list, table and section say so, and do not say none', async () => {
    expect(textOf(page('left-as-found.html'))).toContain('Nothing recorded.');
    expect(textOf(page('papers.html'))).toContain('Until Nothing recorded.');
    expect(textOf(await frontOf(packetOf()))).toContain('Only Nothing recorded.');
  });

  test('an evidence mark without detail ends with its word', () => {
    expect(page('what-was-done.html')).toContain('known-owner"><b class="word">Owner’s statement</b></p>');
  });
});

describe('every page', () => {
  const each = (check: (html: string, name: string) => void): void => {
    expect(pages.size).toBe(11);
    for (const [name, html] of pages) check(html, name);
  };

  test('forbids foreign requests and anything written into the page, and asks not to be indexed', () => {
    each((html, name) => {
      expect(html).toContain('content="default-src &#39;none&#39;'.replaceAll('&#39;', "'"));
      expect(html).toContain('<meta name="robots" content="noindex, nofollow">');
      expect(html).toContain('<html lang="en">');
      expect(html).not.toMatch(/<style|\sstyle=|\son[a-z]+=|https?:|"\/\/|javascript:|unsafe-inline/i);
      // The one page with a pair asks for that script; every page makes its search box, and runs no other.
      const scripts = html.match(/<script.*/gi) ?? [];
      const pair = name === 'what-was-done.html' ? ['<script src="assets/pair.js" defer></script>'] : [];
      expect(scripts, name).toEqual([...pair, '<script src="assets/search.js" defer></script>']);
      expect(html, name).toContain("script-src 'self'");
    });
  });

  test('is told apart by its title and marked in the contents', () => {
    const titles = new Set<string>();
    each((html, name) => {
      titles.add(/<title>(.*)<\/title>/.exec(html)?.[1] ?? '');
      const current = [...html.matchAll(/href="([^"#]*)#[^"]*" aria-current="page"/g)].map(
        (match) => match[1],
      );
      expect(current).toEqual([name]);
    });
    expect(titles.size).toBe(pages.size);
    expect(titles).toContain('What was done · Quarry Road · Buyer packet');
  });

  test('has one h1 and skips no heading level', () => {
    each((html, name) => {
      const levels = [...html.matchAll(/<h([1-6])[ >]/g)].map((match) => Number(match[1]));
      expect(
        levels.filter((level) => level === 1),
        name,
      ).toHaveLength(1);
      expect(levels[0], name).toBe(1);
      levels.forEach((level, index) => {
        if (index > 0)
          expect(level - (levels[index - 1] ?? 0), `${name} heading ${index}`).toBeLessThanOrEqual(1);
      });
    });
  });

  test('leads to the pages before and after it', () => {
    expect(page('index.html')).not.toContain('rel="prev"');
    expect(page('what-was-done.html')).toMatch(/href="index\.html" rel="prev"/);
    expect(page('what-was-done.html')).toMatch(/href="ages\.html" rel="next"/);
    expect(page('notices.html')).not.toContain('rel="next"');
  });
});

test('key facts stand in even rows of four at most', async () => {
  const facts = (count: number): Packet => ({
    ...packetOf(),
    keyFacts: Array.from({ length: count }, (_, i) => ({
      id: `k${i}`,
      label: `L${i}`,
      value: 'v',
      known: true,
    })),
  });
  for (const [count, columns] of [
    [1, 1],
    [4, 4],
    [5, 3],
    [6, 3],
    [7, 4],
    [9, 3],
  ] as const) {
    expect(await frontOf(facts(count)), `${count} facts`).toContain(`<dl class="facts facts-${columns}">`);
  }
  expect(await frontOf(facts(0))).not.toContain('<dl class="facts');
});

test('a table keeps short words whole and lets only very long ones break', async () => {
  const html = await frontOf(wideSheet);
  expect(html).toContain('<td class="right" data-label="Sum"><span>$1,316.66</span></td>');
  expect(html).toContain('<th scope="row" class="left breaks" data-label="Payee">Donau');
  expect(html).toContain('class="table-full table-stack table-dense"');
});

test('a heading of rank 4 right under a section does not skip a level', async () => {
  const html = await frontOf(packetOf({ kind: 'heading', id: 'deep', level: 4, text: 'Deep' }));
  expect(html).toContain('<h3 class="heading-4" id="deep">Deep</h3>');
});

test('a row with a cell too few is refused, naming the row', async () => {
  const columns = [
    { title: 'a', align: 'left', weight: 1 },
    { title: 'b', align: 'left', weight: 1 },
  ] as const;
  const rows = [{ id: 'short-row', cells: [[{ text: 'x' }]] }];
  const packet = packetOf({ kind: 'table', id: 't', caption: 'T', columns, rows });
  await expect(renderWeb(packet, pictures, undefined)).rejects.toThrow(
    '"short-row" has 1 cells for 2 columns',
  );
});

describe('photos', () => {
  test('carry sizes, alternative text and file names, and load late below the first two', () => {
    const images = [...page('what-was-done.html').matchAll(/<img [^>]*>/g)].map((match) => match[0]);
    expect(images).toHaveLength(7);
    for (const image of images)
      expect(image).toMatch(/ width="\d+" height="\d+" loading="(eager|lazy)" decoding="async" alt="[^"]+"/);
    expect(images.filter((image) => image.includes('loading="eager"'))).toHaveLength(2);
  });

  test('a photo that was not made ready stops the build by name', async () => {
    const packet = packetOf({ kind: 'photo', id: 'p', photo: 'IMG_9999', caption: [] });
    await expect(renderWeb(packet, pictures, undefined)).rejects.toThrow(
      'photo "IMG_9999" is shown but was not made ready',
    );
  });

  test('only the photos that the packet names are handed on, in both formats', async () => {
    const fewer = { ...packetOf(), photos: samplePacket.photos.slice(0, 1) };
    const paths = (await renderWeb(fewer, pictures, undefined)).map((file) => file.path);
    const names = pictures.get('IMG_0412')?.sizes.flatMap((size) => [size.jpeg.name, size.avif.name]) ?? [];
    expect(names).toHaveLength(4);
    expect(paths.filter((path) => path.startsWith('assets/photos/'))).toEqual([
      'assets/photos/frames.css',
      ...names.map((name) => `assets/photos/${name}`),
    ]);
  });
});

/** The addresses of `srcset` attributes, without their widths. */
function addressesIn(sets: readonly string[]): string[] {
  return sets.flatMap((set) => set.split(', ').map((one) => one.split(' ')[0] ?? ''));
}

describe('files', () => {
  test('no path is given twice and what is copied exists', async () => {
    const paths = files.map((file) => file.path);
    expect(new Set(paths).size).toBe(paths.length);
    for (const file of files) if ('copyOf' in file) await access(file.copyOf);
    expect(paths).toContain('assets/fonts/SourceSerif4-Regular.woff2');
    expect(paths).toContain('assets/fonts/OFL-SourceSans3.txt');
  });

  test('every src, srcset and href is a file of the edition', () => {
    const known = new Set([
      ...files.map((file) => file.path),
      'quarry-road-buyer.pdf',
      'listing-fields.json',
      'data:,',
    ]);
    for (const [name, html] of pages) {
      const addresses = [
        ...attributes(html, 'src'),
        ...addressesIn(attributes(html, 'srcset')),
        ...attributes(html, 'href').map((href) => href.split('#')[0] ?? ''),
      ];
      expect(addresses.length).toBeGreaterThan(10);
      for (const address of addresses) expect(known, `${name}: ${address}`).toContain(address);
    }
  });

  test('twice the same packet gives the same pages', async () => {
    const again = await renderWeb(samplePacket, pictures, { file: 'quarry-road-buyer.pdf', pages: 23 });
    expect(again).toEqual(files);
  });

  test('two editions rendered at once keep to themselves', async () => {
    const marked = (name: string): Packet => ({ ...samplePacket, house: { ...samplePacket.house, name } });
    const names = ['Alder-only', 'Birch-only', 'Cedar-only'];
    const outputs = await Promise.all(names.map((name) => renderWeb(marked(name), pictures, undefined)));
    outputs.forEach((output, index) => {
      const html = [...htmlOf(output).values()].join();
      for (const name of names)
        expect(html.includes(name), `${name} in ${names[index]}`).toBe(name === names[index]);
    });
  });
});
