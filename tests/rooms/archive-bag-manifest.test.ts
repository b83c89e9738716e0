/** Manifests, declarations and labels of a bag as text. */
import { describe, expect, it } from 'vitest';
import {
  BAGIT_TXT,
  printBagInfo,
  readBagInfo,
  readDeclaration,
  textsOf,
} from '../../src/archive/bag-info.js';
import {
  decodePath,
  encodePath,
  parseManifest,
  pathFault,
  printManifest,
} from '../../src/archive/bag-manifest.js';
import { digestBytes } from '../../src/archive/file-digest.js';
import { howToRead } from '../../src/archive/how-to-read.js';

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
const SHA = 'a'.repeat(64);

describe('a manifest', () => {
  it('is sorted by bytes, not by letters, with line ends and percent signs escaped', () => {
    const text = printManifest(
      new Map([
        ['data/é', SHA],
        ['data/a\nb', SHA],
        ['data/Z', SHA],
        ['data/100%\r', SHA],
        ['data/\u{1F3E0}', SHA],
        ['data/\uFF5E', SHA],
      ]),
    );
    // U+FF5E comes before U+1F3E0 in UTF-8, and after it in UTF-16.
    expect(text.split('\n').map((line) => line.slice(66))).toEqual([
      'data/100%25%0D',
      'data/Z',
      'data/a%0Ab',
      'data/é',
      'data/\uFF5E',
      'data/\u{1F3E0}',
      '',
    ]);
  });

  it('says a path that comes back as it was, before 1.0 without the percent sign', () => {
    for (const path of ['data/50% off', 'data/%0A', 'data/a\r\n%25b', 'data/plain'])
      expect(decodePath(encodePath(path), true)).toBe(path);
    expect(decodePath('data/%0a%25', true)).toBe('data/\n%');
    expect(decodePath('data/%0a%25', false)).toBe('data/\n%25');
  });

  it('is read with any line end, one or more blanks, an asterisk or a dot before the path', () => {
    const text = `${SHA} data/a\r\n${SHA.toUpperCase()}\t  data/b c\r${SHA} *data/d\n\n${SHA}  ./data/e`;
    const { entries, faults } = parseManifest(text, 'sha256', true);
    expect(faults).toEqual([]);
    expect(entries.map(({ path, line, dotted }) => [path, line, dotted])).toEqual([
      ['data/a', 1, false],
      ['data/b c', 2, false],
      ['data/d', 3, false],
      ['data/e', 5, true],
    ]);
    expect(entries[1]?.digest).toBe(SHA);
  });

  it.each([
    ['../x', 'climbs out'],
    ['data/../../x', 'climbs out'],
    ['/etc/passwd', 'root of the disk'],
    ['~/x', 'home folder'],
    ['~user/x', 'home folder'],
    ['C:/x', 'drive letter'],
    ['c:x', 'drive letter'],
    ['data\\..\\x', 'backslash'],
    ['data//x', 'empty part'],
    ['data/./x', 'empty part'],
    ['data/', 'empty part'],
    ['data/\0', 'no file name'],
    [`data/${'x'.repeat(5000)}`, 'longer'],
  ])('may not name %j', (path, words) => {
    expect(pathFault(path)).toContain(words);
    const { entries, faults } = parseManifest(`${SHA}  ${path}\n`, 'sha256', true);
    expect(entries).toEqual([]);
    expect(faults[0]?.what).toContain(words);
  });

  it('may name what only looks like that', () => {
    for (const path of ['data/..x', 'data/x..', 'data/~', 'data/C:', 'data/a b', 'bagit.txt'])
      expect(pathFault(path)).toBeUndefined();
  });

  it('needs a digest of the right length', () => {
    for (const digest of ['a'.repeat(63), 'a'.repeat(65), 'g'.repeat(64)])
      expect(parseManifest(`${digest}  data/x\n`, 'sha256', true).faults[0]?.what).toContain(
        'no sha256 digest',
      );
    expect(parseManifest('lonely\n', 'sha256', true).faults).toEqual([
      { line: 1, what: 'is no digest and path' },
    ]);
  });
});

describe('bagit.txt', () => {
  it('is the two lines of the standard, ended in any way', () => {
    expect(readDeclaration(bytes(BAGIT_TXT))).toEqual({ version: '1.0', encoding: 'UTF-8', isOne: true });
    expect(readDeclaration(bytes(BAGIT_TXT.replaceAll('\n', '\r\n').trimEnd()))).toMatchObject({
      isOne: true,
    });
  });

  // RFC 8493, 2.1.1, and the bags v0.97/invalid/bom-in-bagit.txt and v1.0/invalid/bagit-with-invalid-whitespace
  // of the Library of Congress's conformance suite (public domain).
  it.each([
    ['\uFEFFBagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n', 'byte-order mark'],
    ['BagIt-Version : 1.0\nTag-File-Character-Encoding : UTF-8\n', 'does not begin'],
    ['BagIt-Version: 1.0\n', 'two lines'],
    ['BagIt-Version: 9.0\nTag-File-Character-Encoding: UTF-8\n', 'version 9.0'],
    ['BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-99\n', 'encoding UTF-99'],
    ['BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\nMore: yes\n', 'two lines'],
    ['', 'two lines'],
  ])('is not %j', (text, words) => {
    expect(readDeclaration(bytes(text))).toContain(words);
  });
});

describe('bag-info.txt', () => {
  it('keeps labels in order, lets them come again, and puts folded texts together', () => {
    // v0.97/valid/duplicate-metadata-entries of the same suite, shortened.
    const { lines, faults } = readBagInfo(
      'Bagging-Date: 2016-02-26\nBagging-Date: 2016-03-10\nNote: one\n  two\n\tthree\nnonsense\n',
    );
    expect(textsOf(lines, 'bagging-date')).toEqual(['2016-02-26', '2016-03-10']);
    expect(textsOf(lines, 'Note')).toEqual(['one two three']);
    expect(faults).toEqual([6]);
  });

  it('lets no text begin another label', () => {
    expect(printBagInfo([['Note', 'one\nPayload-Oxum: 0.0']])).toBe('Note: one Payload-Oxum: 0.0\n');
  });
});

describe('digests', () => {
  // FIPS 180-4's example messages; RFC 1321, A.5 for MD5. Digests of SHA-1, 224 and 384 from memory of the same examples.
  it.each([
    ['md5', '900150983cd24fb0d6963f7d28e17f72'],
    ['sha1', 'a9993e364706816aba3e25717850c26c9cd0d89d'],
    ['sha224', '23097d223405d8228642a477bda255b32aadbce4bda0b3f7e36c9da7'],
    ['sha256', 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
    [
      'sha384',
      'cb00753f45a35e8bb5a03d699ac65007272c32ab0eded1631a8b605a43ff5bed8086072ba1e7cc2358baeca134c825a7',
    ],
    [
      'sha512',
      'ddaf35a193617abacc417349ae20413112e6fa4e89a97ea20a9eeee64b55d39a2192992a274fc1a836ba3c23a3feebbd454d4423643ce80e2a9ac94fa54ca49f',
    ],
  ] as const)('of "abc" by %s', (algorithm, digest) => {
    expect(digestBytes(bytes('abc'), [algorithm]).get(algorithm)).toBe(digest);
  });
});

describe('the guide in a bag', () => {
  const guide = howToRead({
    house: 'Quarry Road',
    asOf: '2026-11-20',
    editions: [
      {
        name: 'buyer',
        is: 'for the buyer and the inspector',
        asOf: '2026-10-02',
        digest: '0123 4567 89ab',
      },
      { name: 'file', is: 'for the owner and the tax preparer: everything, with costs' },
    ],
    exports: [
      { file: 'costs.journal', is: 'the costs as double-entry bookkeeping' },
      { file: 'a-file-with-a-long-name.schema.json', is: 'what each word of it means' },
    ],
    program: 'sillplate 0.0.0',
  });

  it('is one page of plain text', () => {
    const lines = guide.split('\n');
    expect(lines.length).toBeLessThanOrEqual(61);
    expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(78);
    expect(lines.at(-1)).toBe('');
    expect(guide).not.toMatch(/[\t\r]| \n/u);
  });

  it('says what is where, how to check it, what opens it, and that it is private', () => {
    for (const words of [
      'Quarry Road, as of 2026-11-20',
      'data/',
      'originals/',
      'buyer/ for the buyer and the inspector; as of 2026-10-02; digest 0123 4567 89ab',
      'each packet of its own day',
      'costs.journal',
      'a-file-with-a-long-name.schema.json',
      'sha256sum -c --quiet manifest-sha256.txt tagmanifest-sha256.txt',
      'hledger and ledger',
      'THIS IS PRIVATE',
      'any spreadsheet',
      'any PDF viewer',
      'any web browser',
      'nothing needs a network',
    ])
      expect(guide.replace(/\s+/gu, ' ')).toContain(words);
  });
});
