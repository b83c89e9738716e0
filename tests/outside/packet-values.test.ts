/**
 * Pages and sheets can't disagree: every block and every value of a packet is found in both.
 *
 * The demo houses and the golden ones, all editions. Pages are read as HTML; the PDF is read by pdftotext
 * (poppler) and by PDF.js, two programs that share no code with the one that wrote it.
 */
import { execFileSync, spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { describe, expect, it } from 'vitest';
import type { Block, Packet } from '../../src/packet/packet.js';
import { anchorsOf, idsIn, wordsOf } from '../../src/packet/words-of.js';
import { attributes } from '../rooms/rendered-sample.js';
import { builtHouses, editionsOf, pagesIn } from '../tools/built-houses.js';
import { finderIn } from '../tools/find-words.js';
import { readablePage } from '../tools/readable-page.js';

const noPoppler = spawnSync('pdftotext', ['-v']).error !== undefined;
const withoutPoppler = noPoppler ? ' (skipped: pdftotext is not on this machine)' : '';

/** Blocks of one rendering, with everything they say. */
function saidIn(packet: Packet, elsewhere: 'web' | 'print'): { block: Block; text: string }[] {
  return packet.sections.flatMap((section) =>
    section.blocks
      .filter((block) => block.only !== elsewhere)
      .flatMap((block) => wordsOf(block).map((text) => ({ block, text }))),
  );
}

/** What the packet says outside its blocks. */
const aroundBlocks = (packet: Packet): string[] => [
  packet.house.name,
  packet.house.place,
  packet.edition.title,
  packet.digest,
  packet.standing,
  ...packet.sections.map((section) => section.title),
  ...packet.keyFacts.flatMap((fact) => [fact.label, fact.value]),
];

function lacking(packet: Packet, elsewhere: 'web' | 'print', pages: readonly string[]): string[] {
  const has = finderIn(pages);
  const said = saidIn(packet, elsewhere);
  expect(said.length).toBeGreaterThan(10);
  return [
    ...said.filter(({ text }) => !has(text)).map(({ block, text }) => `${block.id}: ${text}`),
    ...aroundBlocks(packet).filter((text) => !has(text)),
  ];
}

async function openPdf(file: string) {
  return await getDocument({ data: new Uint8Array(readFileSync(file)), verbosity: 0 }).promise;
}

async function textByPdfJs(file: string): Promise<string[]> {
  const document = await openPdf(file);
  const pages: string[] = [];
  for (let number = 1; number <= document.numPages; number++) {
    const content = await (await document.getPage(number)).getTextContent();
    pages.push(
      content.items.map((item) => ('str' in item ? `${item.str}${item.hasEOL ? '\n' : ''}` : '')).join(''),
    );
  }
  await document.destroy();
  return pages;
}

/** Ids that a rendering has to have, without those of the other one's own blocks. */
function idsFor(packet: Packet, elsewhere: 'web' | 'print'): string[] {
  const sections = packet.sections.map((section) => ({
    ...section,
    blocks: section.blocks.filter((block) => block.only !== elsewhere),
  }));
  return [...anchorsOf({ ...packet, sections })];
}

describe.each(builtHouses())('%s', (house) => {
  it('its packets give no id twice', async () => {
    for (const { packet } of await editionsOf(house)) {
      const ids = idsIn(packet);
      expect(ids.length).toBeGreaterThan(10);
      expect(ids.filter((id, i) => ids.indexOf(id) !== i)).toEqual([]);
    }
  });

  it('its pages have every id and every value', async () => {
    for (const { packet, folder } of await editionsOf(house)) {
      const pages = [...pagesIn(folder).values()];
      const ids = new Set(pages.flatMap((html) => attributes(html, 'id')));
      expect(idsFor(packet, 'print').filter((id) => !ids.has(id))).toEqual([]);
      expect(lacking(packet, 'print', pages.map(readablePage)), packet.edition.name).toEqual([]);
    }
  });

  it.skipIf(noPoppler)(`pdftotext finds every value in its sheets${withoutPoppler}`, async () => {
    for (const { packet, pdf } of await editionsOf(house)) {
      const text = execFileSync('pdftotext', ['-raw', '-enc', 'UTF-8', pdf, '-'], {
        encoding: 'utf8',
        maxBuffer: 2 ** 26,
      });
      expect(lacking(packet, 'web', text.split('\f')), packet.edition.name).toEqual([]);
    }
  });

  it('PDF.js finds every id and every value in its sheets', async () => {
    for (const { packet, pdf } of await editionsOf(house)) {
      expect(lacking(packet, 'web', await textByPdfJs(pdf)), packet.edition.name).toEqual([]);
      const document = await openPdf(pdf);
      const places = new Set(Object.keys(await document.getDestinations()));
      expect(idsFor(packet, 'web').filter((id) => !places.has(id))).toEqual([]);
      await document.destroy();
    }
  });
});

describe('the search', () => {
  it('misses what is not there, and what is only nearly there', () => {
    const has = finderIn(['One sheet says 480 square feet.\nA line ends\nhere.', 'and the text goes on.']);
    expect(has('480 square feet')).toBe(true);
    expect(has('line ends here. and the text')).toBe(true);
    expect(has('481 square feet')).toBe(false);
    expect(has('says 480 feet')).toBe(false);
  });

  it('follows a text over an interruption, and notices a word that was lost there', () => {
    const has = finderIn([
      'A stair of nine even risers with a Documented · receipt 12 rail on the wall side.',
    ]);
    expect(has('A stair of nine even risers with a rail on the wall side.')).toBe(true);
    expect(has('A stair of nine even risers with a good rail on the wall side.')).toBe(false);
    expect(has('A stair of ten even risers with a rail on the wall side.')).toBe(false);
  });
});
