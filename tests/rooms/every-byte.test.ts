/** The search for what is withheld finds a text in each way that a file can hold it: one is planted for each, and found. */
import { deflateRawSync, deflateSync, gzipSync } from 'node:zlib';
import { strToU8, zipSync } from 'fflate';
import { PDFDocument, PDFName } from 'pdf-lib';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { SPELLINGS, textsIn } from '../tools/every-byte.js';

const TEXT = 'qzcanarytestxj';
const OTHER = 'qzcanaryothersxj';
const bytes = Buffer.from(TEXT);
const utf16be = Buffer.from(TEXT, 'utf16le').swap16();
const each = (spell: (sign: string, code: number) => string): Buffer =>
  Buffer.from([...TEXT].map((sign) => spell(sign, sign.charCodeAt(0))).join(''));
const hex = (code: number): string => code.toString(16).padStart(2, '0');
/** One chunk of a PNG; its sum is not looked at. */
const chunk = (name: string, data: Buffer): Buffer => {
  const length = Buffer.alloc(4);
  length.writeUInt32BE(data.length);
  return Buffer.concat([length, Buffer.from(name), data, Buffer.alloc(4)]);
};

const SPELT: readonly (readonly [string, Buffer])[] = [
  ['as it is', bytes],
  ['in capitals', Buffer.from(TEXT.toUpperCase())],
  ['in UTF-16, small end first', Buffer.from(TEXT, 'utf16le')],
  ['in UTF-16, big end first, capitals', Buffer.from(TEXT.toUpperCase(), 'utf16le').swap16()],
  ['in hexadecimal', Buffer.from(bytes.toString('hex'))],
  ['in hexadecimal of UTF-16, capitals', Buffer.from(`<FEFF${utf16be.toString('hex').toUpperCase()}>`)],
  [
    'in hexadecimal with line breaks',
    Buffer.from(`<${bytes.toString('hex').replace(/(.{7})/gu, '$1\r\n')}>`),
  ],
  ...[0, 1, 2].map((offset): readonly [string, Buffer] => [
    `in base64 at offset ${offset}`,
    Buffer.from(Buffer.from(`${'-'.repeat(offset + 3)}${TEXT} and more`).toString('base64')),
  ]),
  [
    'in base64 of UTF-16',
    Buffer.from(Buffer.concat([Buffer.alloc(1), utf16be, Buffer.alloc(2)]).toString('base64')),
  ],
  [
    'in base64 with line breaks',
    Buffer.from(
      Buffer.from(`so ${TEXT} so`)
        .toString('base64')
        .replace(/(.{5})/gu, '$1\r\n '),
    ),
  ],
  ['in percent signs', each((_sign, code) => `%${hex(code).toUpperCase()}`)],
  ['in entities, hexadecimal', each((_sign, code) => `&#x${hex(code)};`)],
  ['in entities, decimal', each((_sign, code) => `&#0${code};`)],
  ['in escapes of JSON', each((_sign, code) => `\\u00${hex(code)}`)],
  ['in escapes of a script', each((_sign, code) => `\\x${hex(code)}`)],
  ['in octal codes of PDF', each((_sign, code) => `\\${code.toString(8)}`)],
  ['in a PDF text that goes on in the next line', each((sign) => `${sign}\\\r\n`)],
  ['in a PDF name', each((_sign, code) => `#${hex(code)}`)],
  ['in quoted-printable', each((_sign, code) => `=${hex(code).toUpperCase()}`)],
  ['in quoted-printable with soft breaks', each((sign) => `${sign}=\r\n`)],
  ['folded as in a calendar', each((sign) => `${sign}\r\n `)],
  ['parted by markup', each((sign) => `<b>${sign}</b>`)],
  ['parted by blanks', each((sign) => `${sign} `)],
  ['parted by soft hyphens', each((sign) => `${sign}\u00ad`)],
  ['with kerns between', each((sign) => `${sign}) -12.5 (`)],
];

const PACKED: readonly (readonly [string, Buffer])[] = [
  [
    'a packed stream',
    Buffer.concat([Buffer.from('1 0 obj stream\n'), deflateSync(bytes), Buffer.from('\nendstream')]),
  ],
  [
    'a packed stream without its end',
    deflateSync(Buffer.concat([bytes, Buffer.alloc(9000, 'ab')])).subarray(0, -6),
  ],
  ['a stream packed twice', deflateSync(deflateSync(bytes))],
  ['gzip', gzipSync(bytes)],
  ['an entry of a ZIP', Buffer.from(zipSync({ 'a/b.xml': strToU8(`<c>${TEXT}</c>`) }))],
  ['a ZIP within a packed stream', deflateSync(Buffer.from(zipSync({ x: strToU8(TEXT) })))],
  ['the name of an entry', Buffer.from(zipSync({ [TEXT]: strToU8('x') }))],
  ['zTXt of a PNG', chunk('zTXt', Buffer.concat([Buffer.from('Comment\0\0'), deflateSync(bytes)]))],
  [
    'iTXt of a PNG',
    chunk('iTXt', Buffer.concat([Buffer.from('XML:com.adobe.xmp\0\x01\0\0\0'), deflateSync(bytes)])),
  ],
  [
    'iCCP of a PNG',
    chunk(
      'iCCP',
      Buffer.concat([Buffer.from('p\0\0'), deflateSync(Buffer.concat([Buffer.alloc(90), utf16be]))]),
    ),
  ],
  [
    'a ZIP entry whose sizes are not told',
    Buffer.concat([
      Buffer.from('PK\x03\x04\x14\0\x08\0\x08\0', 'latin1'),
      Buffer.alloc(16),
      Buffer.from([1, 0, 0, 0]),
      Buffer.from('x'),
      deflateRawSync(bytes),
    ]),
  ],
];

describe('the search', () => {
  it.each([...SPELT, ...PACKED])('finds a text: %s', (_how, planted) => {
    const around = Buffer.concat([Buffer.from('before '), planted, Buffer.from(' behind')]);
    expect(textsIn(around, [OTHER, TEXT])).toEqual([TEXT]);
  });

  it.each(SPELT)('finds it packed as well: %s', (_how, planted) => {
    expect(textsIn(deflateSync(planted), [OTHER, TEXT])).toEqual([TEXT]);
  });

  it('finds nothing where nothing is, and no text for another', () => {
    expect(textsIn(Buffer.from('qzcanary'), [TEXT, OTHER])).toEqual([]);
    expect(textsIn(Buffer.alloc(0), [TEXT])).toEqual([]);
  });

  it('has a planted text for each of its spellings: without any of them, one is not found', () => {
    for (const [name, spelling] of Object.entries(SPELLINGS))
      expect(
        SPELT.some(([, planted]) => spelling(planted.toString('latin1')) !== planted.toString('latin1')),
        name,
      ).toBe(true);
  });

  it('finds a text in a real PDF: its notes, an attachment, an object stream, and in pictures of each kind', async () => {
    const pdf = await PDFDocument.create();
    pdf.addPage().node.set(PDFName.of('Hidden'), pdf.context.obj(TEXT));
    await pdf.attach(Buffer.from(`{"a":"${TEXT.replace('xj', 'attachedxj')}"}`), 'a.json');
    const made = Buffer.from(await pdf.save({ useObjectStreams: true }));
    expect(made.includes('attachedxj')).toBe(false);
    expect(textsIn(made, [TEXT, TEXT.replace('xj', 'attachedxj'), OTHER])).toHaveLength(2);
    for (const form of ['jpeg', 'png', 'webp', 'avif'] as const) {
      const picture = await sharp({ create: { width: 8, height: 8, channels: 3, background: '#345' } })
        .withExif({ IFD0: { ImageDescription: TEXT } })
        .toFormat(form)
        .toBuffer();
      expect(textsIn(picture, [TEXT, OTHER]), form).toEqual([TEXT]);
    }
  });
});
