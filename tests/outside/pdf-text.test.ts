/**
 * Two independent readers find every word of the packet in the PDF, and a rasteriser finds ink for every character.
 *
 * Text that can be copied proves nothing about ink (a font can lose its outlines and keep its character table), and
 * ink proves nothing about text; so both are asked.
 */
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Block, Packet, Pictures } from '../../src/packet/packet.js';
import { wordsOf } from '../../src/packet/words-of.js';
import type { TextBox } from '../../src/print/box.js';
import { loadFaces } from '../../src/print/faces.js';
import { normaliseText, sharedLetters } from '../../src/print/letters.js';
import { planPages } from '../../src/print/plan.js';
import { renderPrint } from '../../src/print/render-print.js';
import { samplePacket, samplePictures, sampleSheet } from '../rooms/sample-packet.js';

const folder = mkdtempSync(join(tmpdir(), 'print-text-'));
let pictures: Pictures;

beforeAll(async () => {
  pictures = await samplePictures();
});

const without = (tool: string): boolean => spawnSync(tool, ['-v']).error !== undefined;

function escaped(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&');
}

/**
 * A pattern for a string as a reader gives it back: any white space for a blank, and a line end where a line may
 * end inside a word (after a hyphen, dash or slash, anywhere in a word too long for a line).
 */
function patternOf(text: string): RegExp {
  const words = normaliseText(text)
    .replace(/\u2011/gu, '-')
    .split(/[\s\u00A0]+/u)
    .filter((word) => word !== '')
    .map((word) => {
      if ([...word].length > 24) return [...word].map(escaped).join('\\s*');
      return word
        .split(/(?<=[-–—/])/u)
        .map(escaped)
        .join('\\s*');
    });
  return new RegExp(words.join('\\s+'), 'u');
}

/** The strings of the packet's blocks that are not found; pages are joined where text runs on over them. */
function lacking(packet: Packet, pages: readonly string[]): string[] {
  // Without its first and last lines (head and foot) a page's text runs on into the next one's.
  const all = pages.join('\n');
  return packet.sections.flatMap((section) =>
    section.blocks
      .filter((block) => block.only !== 'web')
      .flatMap((block) => wordsOf(block).map((text) => ({ block, text })))
      .filter(({ text }) => text.trim() !== '' && !patternOf(text).test(all) && !acrossPages(text, pages))
      .map(({ block, text }) => `${block.id}: ${text}`),
  );
}

/** True where a text ends one page and goes on the next: some first words there, all others here. */
function acrossPages(text: string, pages: readonly string[]): boolean {
  const words = text.split(/\s+/u);
  return pages.slice(0, -1).some((page, i) =>
    words.some((_, cut) => {
      if (cut === 0) return false;
      const head = words.slice(0, cut).join(' ');
      const tail = words.slice(cut).join(' ');
      return patternOf(head).test(page) && patternOf(tail).test(pages[i + 1] ?? '');
    }),
  );
}

const CASES: readonly [string, Packet][] = [
  ['buyer packet', samplePacket],
  ['agent sheet', sampleSheet],
];

const noPoppler = without('pdftotext') || without('pdftoppm');
const poppler = noPoppler ? 'poppler (skipped: pdftotext or pdftoppm is not on this machine)' : 'poppler';

describe.skipIf(noPoppler)(poppler, () => {
  it.each(CASES)('pdftotext finds every word of the %s', async (label, packet) => {
    const file = join(folder, `${label.replace(' ', '-')}.pdf`);
    writeFileSync(file, (await renderPrint(packet, pictures, 'letter')).bytes);
    const text = execFileSync('pdftotext', ['-raw', '-enc', 'UTF-8', file, '-'], { encoding: 'utf8' });
    expect(lacking(packet, text.split('\f'))).toEqual([]);
  });

  it('pdftoppm draws ink for every character in use, in serif and in sans', async () => {
    const range = (from: number, to: number): string[] =>
      Array.from({ length: to - from + 1 }, (_, i) => String.fromCodePoint(from + i));
    const characters = [
      ...range(0x21, 0x7e),
      ...range(0xa1, 0xac),
      ...range(0xae, 0x148),
      ...range(0x14a, 0x17e),
      ...'ȘșȚțẞẀẂẄỲ½⅓⅔¼¾′″×–—≥≤✓“”‘’…²³·→€',
      // No face has these: the stand-in must show.
      '⚠',
      '漢',
    ];
    const blocks: Block[] = [
      {
        kind: 'table',
        id: 'sans',
        caption: 'Sans',
        columns: [{ title: 'Character', align: 'left', weight: 1 }],
        rows: characters.map((text, i) => ({ id: `sans-${i}`, cells: [[{ text }]] })),
      },
      {
        kind: 'list',
        id: 'serif',
        items: characters.map((text, i) => ({ id: `serif-${i}`, text: [{ text }] })),
      },
    ];
    const packet: Packet = { ...samplePacket, sections: [{ id: 'ink', title: 'Ink', blocks }], photos: [] };
    const plan = planPages(packet, pictures, 'letter', sharedLetters(loadFaces));
    const file = join(folder, 'ink.pdf');
    writeFileSync(file, (await renderPrint(packet, pictures, 'letter')).bytes);
    // 216 dots an inch: three to a point.
    execFileSync('pdftoppm', ['-r', '216', '-gray', '-png', file, join(folder, 'ink')]);
    const images = readdirSync(folder)
      .filter((entry) => /^ink-\d+\.png$/.test(entry))
      .sort();
    expect(images).toHaveLength(plan.pages.length);
    const bare: string[] = [];
    let looked = 0;
    for (const [i, page] of plan.pages.entries()) {
      const { data, info } = await sharp(join(folder, images[i] ?? ''))
        .greyscale()
        .raw()
        .toBuffer({ resolveWithObject: true });
      const boxes = page.boxes.filter(
        (box): box is TextBox => box.kind === 'text' && (box.block === 'sans' || box.block === 'serif'),
      );
      for (const box of boxes) {
        looked++;
        if (darkest(data, info.width, box) > 140) bare.push(`${box.block} ${box.text}`);
      }
    }
    expect(looked).toBeGreaterThanOrEqual(characters.length * 2);
    expect(bare).toEqual([]);
  }, 60_000);
});

/** The darkest dot inside a box, 0 black to 255 white. Hairlines lie outside text boxes. */
function darkest(data: Buffer, width: number, box: TextBox): number {
  let least = 255;
  for (let y = Math.floor(box.y * 3) + 1; y < (box.y + box.height) * 3 - 1; y++) {
    for (let x = Math.floor(box.x * 3); x < (box.x + box.width) * 3 + 1; x++) {
      least = Math.min(least, data[y * width + x] ?? 255);
    }
  }
  return least;
}

describe('pdfjs', () => {
  it.each(CASES)('finds every word of the %s', async (_, packet) => {
    const { getDocument } = await import('pdfjs-dist/legacy/build/pdf.mjs');
    const { bytes } = await renderPrint(packet, pictures, 'letter');
    const doc = await getDocument({ data: new Uint8Array(bytes), verbosity: 0 }).promise;
    const pages: string[] = [];
    for (let i = 1; i <= doc.numPages; i++) {
      const { items } = await (await doc.getPage(i)).getTextContent();
      pages.push(items.map((item) => ('str' in item ? item.str + (item.hasEOL ? '\n' : '') : '')).join(''));
    }
    await doc.destroy();
    expect(lacking(packet, pages)).toEqual([]);
  });
});
