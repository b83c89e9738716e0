/**
 * Writes a turning into a HEIC file, the way a phone held sideways does: an `irot` property (ISO/IEC 23008-12,
 * 6.5.10) of the main picture. Debian's heif-enc leaves the turning of a JPEG in its EXIF tag alone, which readers of
 * HEIC are to pass over.
 *
 *   node tests/tools/turn-heic.mjs IN.heic OUT.heic QUARTERS     quarter turns anticlockwise, 1 to 3
 *
 * Reads what heif-enc writes: one `meta` box before `mdat`, `ipma` and `iloc` of version 0 or 1.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/**
 * @param {Buffer} file
 * @param {number} quarters
 * @returns {Buffer}
 */
export function turnedHeic(file, quarters) {
  const meta = find(boxes(file, 0, file.length), 'meta');
  const inMeta = boxes(file, meta.body + 4, meta.end);
  const iprp = find(inMeta, 'iprp');
  const inIprp = boxes(file, iprp.body, iprp.end);
  const ipco = find(inIprp, 'ipco');
  const ipma = find(inIprp, 'ipma');
  const iloc = find(inMeta, 'iloc');
  const primary = file.readUInt16BE(find(inMeta, 'pitm').body + 4);
  const index = boxes(file, ipco.body, ipco.end).length + 1;
  const association = associationOf(file, ipma, primary);

  const irot = Buffer.from([0, 0, 0, 9, ...Buffer.from('irot', 'latin1'), quarters & 3]);
  const grown = irot.length + 1;
  const changed = Buffer.from(file);
  for (const [box, by] of [
    [meta, grown],
    [iprp, grown],
    [ipco, irot.length],
    [ipma, 1],
  ])
    changed.writeUInt32BE(changed.readUInt32BE(box.start) + by, box.start);
  changed.writeUInt8(changed.readUInt8(association.count) + 1, association.count);
  for (const at of offsetsIn(file, iloc)) changed.writeUInt32BE(changed.readUInt32BE(at) + grown, at);
  // Later in the file first, so that the earlier place still holds.
  const parts = [
    { at: ipco.end, bytes: irot },
    { at: association.end, bytes: Buffer.from([0x80 | index]) },
  ].sort((a, b) => b.at - a.at);
  let result = changed;
  for (const { at, bytes } of parts)
    result = Buffer.concat([result.subarray(0, at), bytes, result.subarray(at)]);
  return result;
}

function boxes(file, from, to) {
  const list = [];
  for (let at = from; at + 8 <= to; ) {
    const size = file.readUInt32BE(at);
    const end = size === 0 ? to : at + size;
    list.push({ type: file.toString('latin1', at + 4, at + 8), start: at, body: at + 8, end });
    at = end;
  }
  return list;
}

function find(list, type) {
  const box = list.find((one) => one.type === type);
  if (box === undefined) throw new Error(`no ${type} box`);
  return box;
}

/** Where the number of an item's properties stands, and where its list ends. */
function associationOf(file, ipma, item) {
  const version = file.readUInt8(ipma.body);
  if (version > 0 || (file.readUInt32BE(ipma.body) & 1) !== 0) throw new Error('an ipma box of another kind');
  let at = ipma.body + 8;
  for (let left = file.readUInt32BE(ipma.body + 4); left > 0; left--) {
    const count = at + 2;
    const end = count + 1 + file.readUInt8(count);
    if (file.readUInt16BE(at) === item) return { count, end };
    at = end;
  }
  throw new Error('the main picture has no properties');
}

/** Places of the four-byte numbers that count from the beginning of the file. */
function offsetsIn(file, iloc) {
  const version = file.readUInt8(iloc.body);
  const sizes = file.readUInt16BE(iloc.body + 4);
  const [offsetSize, lengthSize, baseSize] = [sizes >> 12, (sizes >> 8) & 15, (sizes >> 4) & 15];
  if (version > 1 || offsetSize !== 4) throw new Error('an iloc box of another kind');
  const found = [];
  let at = iloc.body + 8;
  for (let items = file.readUInt16BE(iloc.body + 6); items > 0; items--) {
    const method = version === 1 ? file.readUInt16BE(at + 2) & 15 : 0;
    at += version === 1 ? 6 : 4;
    // Extents count from their item's base; where there is one, it alone moves.
    const based = baseSize === 4 && method === 0 && file.readUInt32BE(at) > 0;
    if (based) found.push(at);
    at += baseSize;
    const extents = file.readUInt16BE(at);
    at += 2;
    for (let extent = 0; extent < extents; extent++) {
      if (method === 0 && !based) found.push(at);
      at += offsetSize + lengthSize;
    }
  }
  return found;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const [, , from, to, quarters] = process.argv;
  writeFileSync(to, turnedHeic(readFileSync(from), Number(quarters)));
}
