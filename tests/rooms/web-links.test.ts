import { describe, expect, test } from 'vitest';
import type { Packet } from '../../src/packet/packet.js';
import { anchorsOf } from '../../src/packet/words-of.js';
import { linkBookOf } from '../../src/web/links.js';
import { renderWeb } from '../../src/web/render-web.js';
import { attributes, htmlOf } from './rendered-sample.js';
import { samplePacket, samplePictures, sampleSheet } from './sample-packet.js';

describe('link book', () => {
  test('names the page and the anchor of sections, blocks, rows, items and photos', () => {
    const links = linkBookOf(samplePacket);
    expect(links.hrefOf('in-short')).toBe('index.html#in-short');
    expect(links.hrefOf('kitchen-floor')).toBe('what-was-done.html#kitchen-floor');
    expect(links.hrefOf('paper-40')).toBe('papers.html#paper-40');
    expect(links.hrefOf('alarm-2')).toBe('safety.html#alarm-2');
    expect(links.hrefOf('finish-kitchen-walls-1')).toBe('rooms-and-finishes.html#finish-kitchen-walls-1');
    expect(links.hrefOf('bath-photo-4')).toBe('what-was-done.html#bath-photo-4');
  });

  test('knows every anchor of a packet', () => {
    const links = linkBookOf(samplePacket);
    const anchors = [...anchorsOf(samplePacket)];
    expect(anchors.length).toBeGreaterThan(100);
    for (const id of anchors) expect(links.hrefOf(id)).toMatch(/^[a-z-]+\.html#[a-z0-9-]+$/);
  });

  test('leads to the section where a block is on paper only', () => {
    expect(linkBookOf(samplePacket).hrefOf('only-print')).toBe('notices.html#notices');
  });

  test('keeps a sheet on its one page', () => {
    expect(linkBookOf(sampleSheet).hrefOf('paper-03')).toBe('index.html#paper-03');
  });

  test('throws on an id that the packet has not', () => {
    expect(() => linkBookOf(samplePacket).hrefOf('nowhere')).toThrow('a link leads to "nowhere"');
  });
});

test('a run that leads nowhere stops the rendering by name', async () => {
  const text = [{ text: 'see there', to: 'no-such-row' }];
  const blocks = [{ kind: 'paragraph', id: 'p', size: 'body', text }] as const;
  const packet: Packet = { ...samplePacket, sections: [{ id: 'only', title: 'Only', blocks }] };
  await expect(renderWeb(packet, new Map(), undefined)).rejects.toThrow('"no-such-row"');
});

test('every link with an anchor meets it on the page it names', async () => {
  const pages = htmlOf(await renderWeb(samplePacket, await samplePictures(), undefined));
  let followed = 0;
  for (const html of pages.values()) {
    for (const href of attributes(html, 'href')) {
      const [page, anchor] = href.split('#');
      if (anchor === undefined) continue;
      expect(attributes(pages.get(page ?? '') ?? '', 'id'), href).toContain(anchor);
      followed += 1;
    }
  }
  expect(followed).toBeGreaterThan(100);
});
