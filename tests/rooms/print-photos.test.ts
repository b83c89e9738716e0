/** Photos on paper: pairs cut to one shape, panoramas and tall ones whole, contact sheets broken between rows. */
import { beforeAll, describe, expect, it } from 'vitest';
import type { Block, Packet, PhotosBlock, Pictures } from '../../src/packet/packet.js';
import type { Box, PictureBox, Plan, TextBox } from '../../src/print/box.js';
import { loadFaces } from '../../src/print/faces.js';
import { sharedLetters } from '../../src/print/letters.js';
import { planPages } from '../../src/print/plan.js';
import { photoSheet, samplePictures } from './sample-packet.js';

const letters = sharedLetters(loadFaces);
let pictures: Pictures;
let plan: Plan;

beforeAll(async () => {
  pictures = await samplePictures();
  plan = planPages(photoSheet, pictures, 'letter', letters);
});

const isPicture = (box: Box): box is PictureBox => box.kind === 'picture';
const isText = (box: Box): box is TextBox => box.kind === 'text';

function planOf(blocks: readonly Block[], changes: Partial<Packet> = {}): Plan {
  const packet = { ...photoSheet, sections: [{ id: 'only', title: 'Only', blocks }], ...changes };
  return planPages(packet, pictures, 'letter', letters);
}

function boxesOf(of: Plan, block: string): Box[] {
  return of.pages.flatMap((page) => page.boxes.filter((box) => box.block === block));
}

const picturesOf = (of: Plan, block: string): PictureBox[] => boxesOf(of, block).filter(isPicture);

describe('a pair', () => {
  const pair = (aspect: number): Block => ({
    kind: 'pair',
    id: 'pair',
    before: 'IMG_0412',
    after: 'IMG_0988',
    aspect,
    caption: [{ text: 'Stair.' }],
  });

  it.each([0.769, 0.96, 1.333, 1.6])('is cut to exactly its own shape, both alike: %f', (aspect) => {
    for (const arrangement of ['page-per-section', 'one-page'] as const) {
      const [before, after] = picturesOf(planOf([pair(aspect)], { arrangement }), 'pair');
      expect([before?.photo, after?.photo]).toEqual(['IMG_0412', 'IMG_0988']);
      expect((before?.width ?? 0) / (before?.height ?? 1)).toBeCloseTo(aspect, 9);
      expect([after?.y, after?.width, after?.height]).toEqual([before?.y, before?.width, before?.height]);
      expect(after?.x).toBeGreaterThan((before?.x ?? 0) + (before?.width ?? 0));
    }
  });

  it('says before and after in words above its photos, each as wide as its photo at most', () => {
    const paired = planOf([pair(1.333)]);
    const photos = picturesOf(paired, 'pair');
    for (const [index, word] of ['Before', 'After'].entries()) {
      const label = boxesOf(paired, 'pair')
        .filter(isText)
        .find((box) => box.text === word);
      expect(label?.x).toBeCloseTo(photos[index]?.x ?? 0, 6);
      expect((label?.y ?? 0) + (label?.height ?? 0)).toBeLessThanOrEqual((photos[index]?.y ?? 0) + 0.01);
      expect(label?.spans[0]?.face).toBe('sans-semibold');
      // Another label of the same words must not become the same element for a reader by ear.
      expect(label?.tags.at(-1)?.key).toBe(`pair/${word}/caption`);
    }
  });
});

describe('shapes', () => {
  it('no single photo and none of a row is cut, however wide or tall', () => {
    const single = [
      ...picturesOf(plan, 'pano'),
      ...picturesOf(plan, 'tall'),
      ...picturesOf(plan, 'mixed-row'),
      ...picturesOf(plan, 'alone-row'),
    ];
    expect(single).toHaveLength(7);
    for (const box of single) {
      const { width = 0, height = 1 } = pictures.get(box.photo) ?? {};
      expect(box.width / box.height, box.photo).toBeCloseTo(width / height, 6);
    }
  });

  it('a panorama goes over the full measure, alone in its row', () => {
    const [pano] = picturesOf(plan, 'pano');
    expect(pano?.width).toBeCloseTo(plan.paper.fullPt, 6);
    const street = picturesOf(plan, 'mixed-row').find((box) => box.photo === 'PANO_8');
    expect(street?.width).toBeCloseTo(plan.paper.fullPt, 6);
    const order = picturesOf(plan, 'mixed-row').map((box) => box.photo);
    expect(order).toEqual(['IMG_0412', 'TALL_1', 'PANO_8', 'IMG_0988']);
  });

  it('a very tall photo leaves its caption room for words', () => {
    const tall = picturesOf(plan, 'mixed-row').find((box) => box.photo === 'TALL_1');
    const lines = boxesOf(plan, 'mixed-row')
      .filter(isText)
      .filter((box) => box.tags.some((tag) => tag.key === 'mixed-2/caption'));
    expect(lines.map((line) => line.text).join('')).toBe('The chimney once more, with words below it.');
    expect(lines.length).toBeLessThanOrEqual(3);
    expect(Math.max(...lines.map((line) => line.width))).toBeGreaterThan(tall?.width ?? 0);
  });
});

describe('a contact sheet of sixty photos', () => {
  const sheet = photoSheet.sections[1]?.blocks[0] as PhotosBlock;
  const linesOf = (id: string): TextBox[] =>
    boxesOf(plan, 'contact')
      .filter(isText)
      .filter((box) => box.tags.some((tag) => tag.key.startsWith(`${id}/`)));
  const pageOf = (id: string): number[] => [
    ...new Set(
      plan.pages.flatMap((page) =>
        page.boxes.some((box) => box.tags.some((tag) => tag.key.startsWith(`${id}/`))) ? [page.number] : [],
      ),
    ),
  ];

  it('has five columns over the full measure, and every photo once', () => {
    const shown = picturesOf(plan, 'contact');
    expect(shown).toHaveLength(60);
    const lefts = new Set(shown.map((box) => Math.round(box.x)));
    expect(lefts.size).toBe(5);
    expect(Math.min(...lefts)).toBe(Math.round(plan.paper.leftPt));
    const widest = shown.filter((box) => Math.round(box.x) === Math.max(...lefts));
    const edge = Math.max(...lefts) + Math.max(...shown.map((box) => box.width));
    expect(widest).toHaveLength(12);
    expect(edge).toBeCloseTo(plan.paper.leftPt + plan.paper.fullPt, 0);
  });

  it('breaks between rows and never inside one', () => {
    const pages = new Set<number>();
    for (let row = 0; row < 60; row += 5) {
      const on = new Set([0, 1, 2, 3, 4].flatMap((column) => pageOf(`contact-${row + column}`)));
      expect([...on], `row ${row / 5}`).toHaveLength(1);
      for (const page of on) pages.add(page);
    }
    expect(pages.size).toBeGreaterThan(1);
  });

  it('prints every caption and every name whole, inside its own field and the page', () => {
    const widest = Math.max(...picturesOf(plan, 'contact').map((box) => box.width));
    for (const { id, caption, original } of sheet.photos) {
      const lines = linesOf(id);
      const said = lines.map((line) => line.text).join('');
      // Paper drops the sign that asks for a coloured emoji.
      const plain = (text: string): string => text.replaceAll('\uFE0F', '').replaceAll(' ', '');
      expect(plain(said)).toBe(plain(`${caption.map((run) => run.text).join('')}${original?.name}`));
      for (const line of lines) {
        expect(line.width, line.text).toBeLessThanOrEqual(widest + 0.01);
        expect(line.y + line.height).toBeLessThanOrEqual(plan.paper.bottomPt + 0.01);
      }
    }
  });

  it('lets no caption run into the row below', () => {
    for (const page of plan.pages) {
      const boxes = page.boxes.filter((box) => box.block === 'contact');
      const tops = boxes.filter(isPicture);
      for (const line of boxes.filter(isText)) {
        const under = tops.filter(
          (box) =>
            box.x < line.x + line.width &&
            line.x < box.x + box.width &&
            box.y < line.y + line.height &&
            line.y < box.y + box.height,
        );
        expect(under, line.text).toEqual([]);
      }
    }
  });

  it('keeps its pictures whole, on one line in each row', () => {
    const shown = picturesOf(plan, 'contact');
    for (const box of shown) {
      const { width = 0, height = 1 } = pictures.get(box.photo) ?? {};
      expect(box.width / box.height).toBeCloseTo(width / height, 6);
    }
    for (let row = 0; row < 60; row += 5) {
      const feet = shown.slice(row, row + 5).map((box) => Math.round((box.y + box.height) * 100));
      expect(new Set(feet).size, `row ${row / 5}`).toBe(1);
    }
  });
});
