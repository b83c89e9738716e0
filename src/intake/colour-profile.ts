/** The colour profile of a picture whose pixels come without one: read from a HEIC file, written into a PNG. */
import { crc32, deflateSync } from 'node:zlib';

/** Signature and IHDR chunk of a PNG: its profile has to follow them. */
const PNG_HEAD = 8 + 4 + 4 + 13 + 4;

/** The same PNG with an `iCCP` chunk (PNG specification, third edition, 11.3.2.3). */
export function withProfile(png: Buffer, profile: Buffer): Buffer {
  // Name, its end, compression method 0, the profile compressed.
  const body = Buffer.concat([Buffer.from('iCCPprofile\0\0', 'latin1'), deflateSync(profile)]);
  const chunk = Buffer.alloc(body.length + 8);
  chunk.writeUInt32BE(body.length - 4, 0);
  body.copy(chunk, 4);
  chunk.writeUInt32BE(crc32(body), body.length + 4);
  return Buffer.concat([png.subarray(0, PNG_HEAD), chunk, png.subarray(PNG_HEAD)]);
}

/** Code points of ITU-T H.273: primaries of Display P3 (SMPTE EG 432-1). */
const P3_PRIMARIES = 12;

/**
 * Whether a HEIC or AVIF file says in a `colr` box (ISO/IEC 14496-12, 12.1.5) that its colours are Display P3's; such a
 * file may hold no profile. The first such box is asked, which is the main picture's in what phones write.
 */
export function saysDisplayP3(bytes: Buffer): boolean {
  if (bytes.toString('latin1', 4, 8) !== 'ftyp') return false;
  const at = bytes.subarray(0, 65_536).indexOf('colrnclx', 0, 'latin1');
  return at >= 0 && at + 10 <= bytes.length && bytes.readUInt16BE(at + 8) === P3_PRIMARIES;
}
