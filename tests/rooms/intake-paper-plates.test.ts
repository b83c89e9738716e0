/** Papers become pictures: which can be drawn, in which colours, how large, and by several builds at once. */
import { createHash } from 'node:crypto';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { PDFDocument, rgb } from 'pdf-lib';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { PaperFile } from '../../src/facts/ledger.js';
import { paperPlates } from '../../src/intake/paper-plates.js';

let root: string;
beforeAll(() => {
  root = mkdtempSync(path.join(tmpdir(), 'sillplate-plates-'));
});
afterAll(() => rmSync(root, { recursive: true, force: true }));

function paper(file: string, bytes: Uint8Array): PaperFile {
  const at = path.join(root, file);
  writeFileSync(at, bytes);
  return { file, path: at, bytes: bytes.length, sha256: createHash('sha256').update(bytes).digest('hex') };
}

/** A red square of 100 points on each of some pages. */
async function squares(pages: number, side = 612): Promise<Uint8Array> {
  const pdf = await PDFDocument.create();
  for (let page = 0; page < pages; page++)
    pdf.addPage([side, side]).drawRectangle({ x: 100, y: 100, width: 100, height: 100, color: rgb(1, 0, 0) });
  return pdf.save();
}

const drawn = async (papers: Readonly<Record<string, PaperFile>>, cache = path.join(root, 'cache')) =>
  paperPlates({ papers: new Map(Object.entries(papers)), cache });

describe('a paper', () => {
  it('is drawn in its own colours at 150 dots an inch, without the white around it', async () => {
    const plates = await drawn({ one: paper('one.pdf', await squares(1)) });
    const [page] = plates.get('one')?.pages ?? [];
    // 100 points are 208 dots, and a rim of 24 stands around them.
    expect([page?.width, page?.height].every((side) => Math.abs((side ?? 0) - 256) <= 2)).toBe(true);
    const { data } = await sharp(readFileSync(page?.original ?? ''))
      .extract({ left: 120, top: 120, width: 1, height: 1 })
      .raw()
      .toBuffer({ resolveWithObject: true });
    expect([...data.subarray(0, 3)]).toEqual([255, 0, 0]);
  });

  it('is drawn up to its fourth page', async () => {
    const plates = await drawn({ long: paper('long.pdf', await squares(6)) });
    expect(plates.get('long')?.of).toBe(6);
    expect(plates.get('long')?.pages.map(({ id }) => id)).toEqual(
      [1, 2, 3, 4].map((page) => `paper:long:${page}`),
    );
  });

  it.each([
    ['cut short', 'cut.pdf', async () => (await squares(1)).subarray(0, 200)],
    ['no PDF but called one', 'page.pdf', async () => Buffer.from('<p>thank you</p>')],
    ['text', 'slip.txt', async () => Buffer.from('thank you')],
    ['empty', 'empty.pdf', async () => Buffer.alloc(0)],
    ['a picture that is none', 'none.jpg', async () => Buffer.from('thank you')],
  ])('has no pages where it is %s', async (_what, file, bytes) => {
    const plates = await drawn({ odd: paper(file, await bytes()) });
    expect(plates.get('odd')?.pages).toEqual([]);
  });

  it('as large as a wall is drawn smaller', async () => {
    const plates = await drawn({ wall: paper('wall.pdf', await squares(1, 5000)) });
    const [page] = plates.get('wall')?.pages ?? [];
    // 100 of 5,000 points, of 2,510 dots.
    expect(Math.abs((page?.width ?? 0) - 98)).toBeLessThanOrEqual(4);
  });

  it('may be drawn by several builds at once, and comes from the cache afterwards', async () => {
    const cache = path.join(root, 'shared');
    const one = { one: paper('shared.pdf', await squares(2)) };
    const all = await Promise.all(Array.from({ length: 6 }, () => drawn(one, cache)));
    const contents = new Set(
      all.map((plates) => JSON.stringify(plates.get('one')?.pages.map(({ content }) => content))),
    );
    expect(contents.size).toBe(1);
    expect(readdirSync(cache)).toHaveLength(1);
    const [kept = ''] = readdirSync(cache);
    rmSync(path.join(cache, kept, '1.png'));
    expect((await drawn(one, cache)).get('one')?.pages).toHaveLength(2);
  });
});
