/**
 * What the header in front of a packed file says of it: names and sizes (PKWARE APPNOTE 4.3.7, 4.5.3 and 4.6.9).
 *
 * Takes the header's fields as they were read; unpacks nothing.
 */

export interface PackedHeader {
  readonly generalPurposeBitFlag: number;
  /** In bytes; 0xffffffff: the field of large files says it. */
  readonly compressedSize: number;
  readonly uncompressedSize: number;
  readonly fileName: Uint8Array;
  readonly extraField: Uint8Array;
}

const LARGE = 0x0001;
const UTF8_NAME = 0x7075;
const ELSEWHERE = 0xffffffff;

/** The names it has in UTF-8 beside its plain one: none or one, as programs write it. */
export const namesIn = ({ extraField }: PackedHeader): string[] =>
  // A version and a checksum of the plain name stand before it.
  fieldsIn(extraField).flatMap(({ id, data }) =>
    id === UTF8_NAME && data.length > 5 ? [data.subarray(5).toString('utf8')] : [],
  );

/** In bytes; undefined where it says none: its writer did not know them yet and wrote them behind the file. */
export function sizesIn(header: PackedHeader): {
  readonly size: number | undefined;
  readonly packed: number | undefined;
} {
  const { compressedSize, uncompressedSize, generalPurposeBitFlag } = header;
  const large = fieldsIn(header.extraField).find(({ id }) => id === LARGE)?.data ?? Buffer.alloc(0);
  let at = 0;
  // Only those stand in the field whose plain place is full, this one first.
  const said = (plain: number): number | undefined => {
    if (plain !== ELSEWHERE) return plain;
    if (large.length < at + 8) return undefined;
    at += 8;
    return Number(large.readBigUInt64LE(at - 8));
  };
  const [size, packed] = [said(uncompressedSize), said(compressedSize)];
  const isBehind = (generalPurposeBitFlag & 0x8) !== 0;
  const known = (one: number | undefined): number | undefined => (isBehind && one === 0 ? undefined : one);
  return { size: known(size), packed: known(packed) };
}

function fieldsIn(extra: Uint8Array): { readonly id: number; readonly data: Buffer }[] {
  const bytes = Buffer.from(extra.buffer, extra.byteOffset, extra.byteLength);
  const fields: { readonly id: number; readonly data: Buffer }[] = [];
  for (let at = 0; at + 4 <= bytes.length; ) {
    const end = at + 4 + bytes.readUInt16LE(at + 2);
    if (end > bytes.length) break;
    fields.push({ id: bytes.readUInt16LE(at), data: bytes.subarray(at + 4, end) });
    at = end;
  }
  return fields;
}
