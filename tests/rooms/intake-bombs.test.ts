/** Small files that unfold into more than a house can need, or ask for more than a machine has: a message, and no waiting. */
import { mkdirSync, mkdtempSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { crc32, deflateSync } from 'node:zlib';
import { strToU8, zipSync } from 'fflate';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { readCsv } from '../../src/intake/csv-cells.js';
import { lookAtPhoto } from '../../src/intake/look-at-photo.js';
import { unfoldsTooFar } from '../../src/intake/pdf-unfolds.js';
import { lookIntoWorkbook } from '../../src/intake/workbook-parts.js';
import { readYaml } from '../../src/intake/yaml.js';
import { leastMs } from '../tools/least-ms.js';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'bombs-'));
  mkdirSync(path.join(folder, 'photos'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

describe('YAML', () => {
  it.each([
    ['words', `k: 1\n${Array.from({ length: 60_000 }, (_, n) => `k${n}: 1\n`).join('')}`],
    ['values', `private-notes:\n${'  - a\n'.repeat(110_000)}`],
  ])('of too many %s is refused with the place where it is too much', (_what, text) => {
    const { diagnostics, broken, data } = readYaml(text, 'house.yaml');
    expect(diagnostics.map(({ code }) => code)).toEqual(['intake.too-big']);
    expect(diagnostics[0]?.place?.line).toBeGreaterThan(40_000);
    expect(broken).toEqual(['*']);
    expect(data).toEqual({});
  });

  it('of a thousand rooms is read', () => {
    const room = (n: number): string =>
      `  - { id: r${n}, level: main, use: kitchen, size: 10' x 10', note: x, from: y, doors: 1, heated: yes }\n`;
    const { diagnostics, data } = readYaml(
      `rooms:\n${Array.from({ length: 1_000 }, (_, n) => room(n)).join('')}`,
      'house.yaml',
    );
    expect(diagnostics).toEqual([]);
    expect(data.rooms).toHaveLength(1_000);
  });
});

/** A PNG of so many black pixels. */
function png(width: number, height: number): Buffer {
  const chunk = (name: string, data: Buffer): Buffer => {
    const body = Buffer.concat([Buffer.from(name), data]);
    const [length, sum] = [Buffer.alloc(4), Buffer.alloc(4)];
    length.writeUInt32BE(data.length);
    sum.writeUInt32BE(crc32(body));
    return Buffer.concat([length, body, sum]);
  };
  const head = Buffer.alloc(13);
  head.writeUInt32BE(width, 0);
  head.writeUInt32BE(height, 4);
  head.set([8, 0], 8);
  return Buffer.concat([
    Buffer.from('89504e470d0a1a0a', 'hex'),
    chunk('IHDR', head),
    chunk('IDAT', deflateSync(Buffer.alloc((width + 1) * height))),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

describe('photos', () => {
  const look = (name: string) =>
    lookAtPhoto({ id: 'p', name, original: path.join(folder, 'photos', name), huge: true });

  it('of one row of ninety million pixels are refused by their side: shrinking it took 2.4 GB', async () => {
    writeFileSync(path.join(folder, 'photos', 'p.png'), png(9_000_000, 1));
    expect(await look('p.png')).toMatchObject({
      trouble: { message: expect.stringContaining('no side may have more than 65,500') },
    });
  });

  it('with a side as long as a JPEG can have are taken', async () => {
    writeFileSync(path.join(folder, 'photos', 'p.png'), png(65_500, 2));
    expect(await look('p.png')).toMatchObject({ file: { width: 65_500 } });
  });

  it('of more bytes than a photo has are not read', async () => {
    const file = path.join(folder, 'photos', 'p.jpg');
    writeFileSync(file, Buffer.from('ffd8ff', 'hex'));
    truncateSync(file, 1_000_000_001);
    expect(await look('p.jpg')).toMatchObject({
      trouble: { message: expect.stringContaining('more than 1000 million bytes') },
    });
  });
});

describe('sheets', () => {
  it('of more lines than a list of a house can have are not read', () => {
    const { sheet, diagnostics } = readCsv(Buffer.alloc(400_010, '\n'), 'costs.csv', 'costs.csv', 'costs');
    expect(sheet).toBeUndefined();
    expect(diagnostics.map(({ code }) => code)).toEqual(['intake.too-big']);
    expect(readCsv(Buffer.from('date,payee\r\n'), 'costs.csv', 'costs.csv', 'costs').diagnostics).toEqual([]);
  });

  it('in a workbook of thousands of parts are not read', async () => {
    const parts = Object.fromEntries(Array.from({ length: 2_001 }, (_, n) => [`f${n}`, strToU8('')]));
    expect(await lookIntoWorkbook(Buffer.from(zipSync(parts)))).toEqual({ why: 'too big' });
  });
});

describe('papers', () => {
  const pdf = (packed: Buffer, about = ''): Buffer =>
    Buffer.concat([
      Buffer.from(`%PDF-1.4\n4 0 obj<<${about}/Filter/FlateDecode>>stream\n`),
      packed,
      Buffer.from('\nendstream endobj'),
    ]);
  const strokes = (bytes: number): Buffer => deflateSync(Buffer.alloc(bytes, '0 0 m 600 700 l S '));

  it.each([
    ['strokes without end', pdf(strokes(17_000_000)), true],
    ['strokes packed twice', pdf(deflateSync(strokes(17_000_000))), true],
    ['strokes that are not packed', pdf(Buffer.alloc(16_000_001, 'q ')), true],
    ['what a page can need', pdf(strokes(1_000_000)), false],
    ['a scanned page', pdf(strokes(40_000_000), '/Subtype/Image'), false],
    ['a damaged stream', pdf(Buffer.from('x\x9cno')), false],
  ])('%s', (_what, bytes, tooFar) => expect(unfoldsTooFar(bytes)).toBe(tooFar));

  it('and a file that begins a million streams and ends none is looked through once', async () => {
    const bytes = Buffer.from('%PDF-1.7\n1 0 obj\n<<>>\n'.padEnd(7_000_000, 'stream '));
    expect(unfoldsTooFar(bytes)).toBe(false);
    expect(await leastMs(() => unfoldsTooFar(bytes), 500)).toBeLessThan(500);
  });
});
