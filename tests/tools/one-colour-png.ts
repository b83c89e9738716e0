/** A PNG of one colour and any size, made without unfolding it: a few kilobytes that become gigabytes when read. */
import { crc32, deflateSync } from 'node:zlib';

const SIGNATURE = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);

/** White, a bit a pixel (PNG specification, third edition, 11.2.1: colour type 0, bit depth 1). */
export function oneColourPng(width: number, height: number): Buffer {
  const head = Buffer.alloc(13);
  head.writeUInt32BE(width, 0);
  head.writeUInt32BE(height, 4);
  head[8] = 1;
  const row = Buffer.alloc(1 + Math.ceil(width / 8), 0xff);
  row[0] = 0;
  const rows = Buffer.alloc(row.length * height, row);
  return Buffer.concat([
    SIGNATURE,
    chunk('IHDR', head),
    chunk('IDAT', deflateSync(rows, { level: 9 })),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

/** The head of a PNG of four channels of 16 bits, whose lines come in seven passes; it holds no lines. */
export function interlacedHead(width: number, height: number): Buffer {
  const head = Buffer.alloc(13);
  head.writeUInt32BE(width, 0);
  head.writeUInt32BE(height, 4);
  head[8] = 16;
  head[9] = 6;
  head[12] = 1;
  return Buffer.concat([SIGNATURE, chunk('IHDR', head), chunk('IDAT', deflateSync(Buffer.alloc(9)))]);
}

/** Length, type, body and checksum (PNG specification, third edition, 5.3). */
export function chunk(type: string, body: Buffer): Buffer {
  const named = Buffer.concat([Buffer.from(type, 'latin1'), body]);
  const bytes = Buffer.alloc(named.length + 8);
  bytes.writeUInt32BE(body.length, 0);
  named.copy(bytes, 4);
  bytes.writeUInt32BE(crc32(named), named.length + 4);
  return bytes;
}
