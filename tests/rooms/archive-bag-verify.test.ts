/** What `verify` finds in a bag: each change, by name, in each form; and what is no bag at all. */
import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { once } from 'node:events';
import { createWriteStream, readFileSync, renameSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { packTar, type TarEntry } from 'modern-tar';
import { afterAll, describe, expect, it } from 'vitest';
import yazl from 'yazl';
import type { Algorithm } from '../../src/archive/bag-manifest.js';
import { namesIn, sizesIn } from '../../src/archive/bag-zip-header.js';
import {
  type Files,
  freshFolder,
  layOut,
  messages,
  removeFolders,
  verify,
  written,
} from '../tools/made-bags.js';

afterAll(removeFolders);

const digest = (algorithm: string, content: string | Uint8Array): string =>
  createHash(algorithm).update(content).digest('hex');

const DECLARED = 'BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n';

/** A manifest of these files, and of what else is said. */
const manifest = (files: Files, algorithm: Algorithm = 'sha256', more = ''): string =>
  Object.entries(files)
    .map(([name, content]) => `${digest(algorithm, content)}  ${name}\n`)
    .join('') + more;

const FILES: Files = { 'data/a.txt': 'a', 'data/b/c.txt': 'c' };

/** A bag by hand that is whole, with files changed, added (a text) or left out (undefined). */
function byHand(changes: Readonly<Record<string, string | undefined>> = {}): string {
  const files: Record<string, string | Uint8Array> = {
    'bagit.txt': DECLARED,
    ...FILES,
    'manifest-sha256.txt': manifest(FILES),
  };
  for (const [name, content] of Object.entries(changes)) {
    if (content === undefined) delete files[name];
    else files[name] = content;
  }
  return layOut(path.join(freshFolder(), 'bag'), files);
}

const errorsOf = async (changes: Readonly<Record<string, string | undefined>>): Promise<string[]> => {
  const report = await verify(byHand(changes));
  expect(report.verdict).toBe('differs');
  for (const one of report.diagnostics) {
    expect(one.code).toBe('archive.bag');
    expect(one.hints.length).toBeGreaterThan(0);
  }
  return messages(report, 'error');
};

const unreadableBy = async (
  changes: Readonly<Record<string, string | undefined>>,
  words: string,
): Promise<void> => {
  const report = await verify(byHand(changes));
  expect(report.verdict).toBe('no-bag');
  expect(messages(report).join()).toContain(words);
};

describe('a bag of somebody else', () => {
  it('is whole', async () => {
    expect(await verify(byHand())).toMatchObject({ verdict: 'whole', diagnostics: [], files: 2, bytes: 2 });
  });

  it('that holds nothing is said to', async () => {
    const report = await verify(
      byHand({ 'data/a.txt': undefined, 'data/b/c.txt': undefined, 'manifest-sha256.txt': '' }),
    );
    expect(report).toMatchObject({ verdict: 'whole', files: 0 });
    expect(messages(report, 'warning')).toEqual([
      'it holds nothing: no file lies below data/, and its manifest lists none',
    ]);
  });

  it('names what is changed, missing and added', async () => {
    expect(await errorsOf({ 'data/a.txt': 'x', 'data/b/c.txt': undefined, 'data/d.txt': 'd' })).toEqual([
      'data/d.txt was added: no manifest lists it',
      'data/b/c.txt is missing',
      'data/a.txt was changed: it is not what manifest-sha256.txt says',
    ]);
  });

  it('names changed and missing tag files', async () => {
    const tags = {
      'bagit.txt': DECLARED,
      'notes.txt': 'n',
      'more/deep.bin': 'b',
      'manifest-sha256.txt': manifest(FILES),
    };
    const lists = { 'tagmanifest-sha256.txt': manifest(tags) };
    expect(await verify(byHand({ ...lists, ...tags }))).toMatchObject({ verdict: 'whole', diagnostics: [] });
    expect(await errorsOf({ ...lists, ...tags, 'notes.txt': 'x', 'more/deep.bin': undefined })).toEqual([
      'more/deep.bin is missing',
      'notes.txt was changed: it is not what tagmanifest-sha256.txt says',
    ]);
    const more = await verify(byHand({ ...lists, ...tags, 'added.txt': 'x' }));
    expect(more.verdict).toBe('whole');
    expect(messages(more, 'warning')).toEqual(['added.txt is in no tag manifest, which the standard allows']);
  });

  it('has the bytes and files that Payload-Oxum says', async () => {
    const info = (oxum: string) => ({ 'bag-info.txt': `Payload-Oxum: ${oxum}\n` });
    expect((await verify(byHand(info('2.2')))).verdict).toBe('whole');
    expect(await errorsOf(info('3.2'))).toEqual([
      expect.stringContaining('says 3 bytes in 2 files, and data/ holds 2'),
    ]);
    expect(await errorsOf(info('2.3'))).toHaveLength(1);
    expect(await errorsOf(info('two.2'))).toEqual([expect.stringContaining('can’t be read')]);
    expect(await errorsOf(info('2.2\nPayload-Oxum: 2.2'))).toEqual([
      expect.stringContaining('more than once'),
    ]);
  });

  it('lists each file once, in every manifest', async () => {
    const twice = manifest(FILES, 'sha256', `${digest('sha256', 'a')}  data/a.txt\n`);
    expect(await errorsOf({ 'manifest-sha256.txt': twice })).toEqual([
      'manifest-sha256.txt lists data/a.txt twice',
    ]);
    const differing = manifest(FILES, 'sha256', `${digest('sha256', 'x')}  data/a.txt\n`);
    expect(await errorsOf({ 'manifest-sha256.txt': differing })).toEqual([
      'manifest-sha256.txt lists data/a.txt twice, with different digests',
    ]);
    const part = { 'manifest-sha512.txt': manifest({ 'data/a.txt': 'a' }, 'sha512') };
    expect(await errorsOf(part)).toEqual([
      'data/b/c.txt is listed in manifest-sha256.txt, but not in manifest-sha512.txt',
    ]);
    const old = { ...part, 'bagit.txt': DECLARED.replace('1.0', '0.97') };
    expect((await verify(byHand(old))).verdict).toBe('whole');
  });

  it('has manifests that agree', async () => {
    const other = { 'manifest-sha512.txt': manifest({ ...FILES, 'data/a.txt': 'x' }, 'sha512') };
    expect(await errorsOf(other)).toEqual([
      'data/a.txt is what manifest-sha256.txt says, and not what manifest-sha512.txt says: one of them was changed',
    ]);
  });

  it.each(['md5', 'sha1', 'sha224', 'sha384', 'sha512'] as const)('is checked by %s', async (algorithm) => {
    const only = {
      'manifest-sha256.txt': undefined,
      [`manifest-${algorithm}.txt`]: manifest(FILES, algorithm),
    };
    const report = await verify(byHand(only));
    expect(report).toMatchObject({ verdict: 'whole', algorithms: [algorithm] });
    const weak = ['md5', 'sha1'].includes(algorithm);
    expect(messages(report, 'warning')).toHaveLength(weak ? 1 : 0);
    expect(await errorsOf({ ...only, 'data/a.txt': 'x' })).toHaveLength(1);
  });

  it('may have a manifest by an algorithm that is not known, which is said', async () => {
    const report = await verify(byHand({ 'manifest-blake9.txt': 'ab  data/a.txt\n' }));
    expect(report.verdict).toBe('whole');
    expect(messages(report)).toEqual([expect.stringContaining('blake9, which this program does not know')]);
    await unreadableBy(
      { 'manifest-sha256.txt': undefined, 'manifest-blake9.txt': 'ab  data/a.txt\n' },
      'can check',
    );
  });

  it.each(['../../outside.txt', '/etc/hosts', '~/x', 'C:/x', 'data/..\\x', 'data/../../x'])(
    'is told for the path %s, and nothing outside is read',
    async (path) => {
      expect(
        await errorsOf({
          'manifest-sha256.txt': manifest(FILES, 'sha256', `${digest('sha256', '')}  ${path}\n`),
        }),
      ).toEqual([expect.stringMatching(/^line 3 of manifest-sha256.txt names a path that /u)]);
    },
  );

  it('lists no file outside of data/ in a manifest, and none inside in a tag manifest', async () => {
    const own = { 'bagit.txt': DECLARED };
    expect(await errorsOf({ 'manifest-sha256.txt': manifest({ ...FILES, ...own }) })).toEqual([
      'manifest-sha256.txt lists bagit.txt, which lies outside of data/',
    ]);
    const tag = manifest({ ...FILES, 'manifest-sha256.txt': manifest(FILES), ...own });
    expect(await errorsOf({ 'tagmanifest-sha256.txt': tag })).toEqual([
      'tagmanifest-sha256.txt lists data/a.txt, which no tag manifest may list',
      'tagmanifest-sha256.txt lists data/b/c.txt, which no tag manifest may list',
    ]);
  });

  it('may be written by tools that differ in small things, which is said', async () => {
    const dotted = manifest(FILES).replaceAll('  data/', '  ./data/');
    expect(messages(await verify(byHand({ 'manifest-sha256.txt': dotted })))).toHaveLength(2);
    const percent = { 'data/50%25.txt': 'p', ...FILES };
    const raw = await verify(
      byHand({ ...percent, 'manifest-sha256.txt': manifest(percent) } as Record<string, string>),
    );
    expect(raw.verdict).toBe('whole');
    expect(messages(raw)).toEqual([expect.stringContaining('without the escapes')]);
    const apart = { 'data/e\u0301.txt': 'e' };
    const accents = await verify(
      byHand({ ...apart, 'manifest-sha256.txt': manifest({ ...FILES, 'data/é.txt': 'e' }) }),
    );
    expect(accents.verdict).toBe('whole');
    expect(messages(accents)).toEqual([expect.stringContaining('accents written another way')]);
  });

  it('with names that are one on some systems is whole, with a warning', async () => {
    const files = { 'data/A.txt': 'A', ...FILES } as Record<string, string>;
    const report = await verify(byHand({ ...files, 'manifest-sha256.txt': manifest(files) }));
    expect(report.verdict).toBe('whole');
    expect(messages(report, 'warning')).toHaveLength(1);
  });

  it('fetches nothing: what is not there is told', async () => {
    const listed = manifest({ ...FILES, 'data/far.txt': 'f' });
    const fetch = (line: string) => ({ 'manifest-sha256.txt': listed, 'fetch.txt': `${line}\n` });
    expect(await errorsOf(fetch('https://example.org/far.txt 1 data/far.txt'))).toEqual([
      expect.stringContaining('data/far.txt is to be fetched from elsewhere'),
    ]);
    expect(
      (await verify(byHand({ ...fetch('https://example.org/far.txt - data/far.txt'), 'data/far.txt': 'f' })))
        .verdict,
    ).toBe('whole');
    expect((await errorsOf(fetch('https://example.org/x 1 ../x'))).join()).toContain('climbs out');
    // v0.97/valid/local-fetch of the conformance suite has such a path, outside of data/.
    expect((await errorsOf(fetch('file:///source/s.png 42000 s.png'))).join()).toContain('outside of data/');
    expect((await errorsOf(fetch('nonsense'))).join()).toContain('no address, size and path');
  });

  it('holds no links, pipes or devices', async () => {
    const folder = byHand();
    const target = layOut(freshFolder(), { 'a.txt': 'a' });
    rmSync(path.join(folder, 'data', 'a.txt'));
    symlinkSync(path.join(target, 'a.txt'), path.join(folder, 'data', 'a.txt'));
    execFileSync('mkfifo', [path.join(folder, 'data', 'pipe')]);
    const report = await verify(folder);
    expect(messages(report, 'error')).toEqual([
      'data/a.txt is a link, and a bag holds files',
      'data/pipe is a pipe, a socket or a device',
    ]);
  });

  it('with tag files in UTF-16 is read', async () => {
    const utf16 = (text: string) => Buffer.concat([Buffer.from([0xff, 0xfe]), Buffer.from(text, 'utf16le')]);
    const bag = byHand({ 'bagit.txt': DECLARED.replace('1.0', '0.97').replace('UTF-8', 'UTF-16') });
    writeFileSync(path.join(bag, 'manifest-sha256.txt'), utf16(manifest(FILES)));
    expect((await verify(bag)).verdict).toBe('whole');
    writeFileSync(path.join(bag, 'manifest-sha256.txt'), utf16(manifest(FILES)).swap16());
    expect((await verify(bag)).verdict).toBe('whole');
  });
});

describe('what is no bag', () => {
  it('is refused with why', async () => {
    await unreadableBy({ 'bagit.txt': undefined }, 'has no bagit.txt');
    await unreadableBy(
      { 'bagit.txt': 'BagIt-Version: 2.0\nTag-File-Character-Encoding: UTF-8\n' },
      'version 2.0',
    );
    await unreadableBy({ 'manifest-sha256.txt': undefined }, 'has no manifest');
    expect(messages(await verify(path.join(freshFolder(), 'nothing')))).toEqual(['bag is not there']);
    expect(messages(await verify(path.join(freshFolder(), 'nothing.zip')))).toEqual(['bag is not there']);
    expect(messages(await verify(freshFolder()))).toEqual(['bag has no bagit.txt, so it is no bag']);
    const files = layOut(freshFolder(), {
      'a.zip': 'PK no zip',
      'a.tar': 'no tar',
      'b.tar': '',
      'a.tar.age': 'no age',
      'a.bin': '',
    });
    for (const name of ['a.zip', 'a.tar', 'b.tar', 'a.tar.age', 'a.bin'])
      expect((await verify(path.join(files, name))).verdict, name).toBe('no-bag');
  });
});

describe('a bag of this program', () => {
  it('lists every tag file, so that one too many is told', async () => {
    const folder = await written(freshFolder());
    writeFileSync(path.join(folder, 'letter.txt'), 'x');
    expect(messages(await verify(folder), 'error')).toEqual([
      'letter.txt was added: no tag manifest lists it',
    ]);
    rmSync(path.join(folder, 'letter.txt'));
    rmSync(path.join(folder, 'tagmanifest-sha256.txt'));
    expect(messages(await verify(folder), 'error')).toEqual(['tagmanifest-sha256.txt is missing']);
  });

  it('is told if its list was changed with the file', async () => {
    const folder = await written(freshFolder());
    const list = path.join(folder, 'manifest-sha256.txt');
    const file = path.join(folder, 'data', 'how-to-read.txt');
    const was = digest('sha256', readFileSync(file));
    writeFileSync(file, 'forged\n');
    writeFileSync(list, readFileSync(list, 'utf8').replace(was, digest('sha256', 'forged\n')));
    const found = messages(await verify(folder), 'error').join('\n');
    expect(found).toContain('manifest-sha256.txt was changed');
    expect(found).toContain('Payload-Oxum');
  });

  it('is told if a file was renamed', async () => {
    const folder = await written(freshFolder());
    const data = path.join(folder, 'data');
    renameSync(path.join(data, 'how-to-read.txt'), path.join(data, 'HOW-TO-READ.txt'));
    expect(messages(await verify(folder), 'error')).toEqual([
      'data/HOW-TO-READ.txt was added: no manifest lists it',
      'data/how-to-read.txt is missing',
    ]);
  });
});

type ZipEntry = readonly [name: string, content: string, options?: Partial<yazl.Options>];

/** A ZIP whose names the library would not write: each `*` in a name is changed for a byte afterwards. */
async function zip(
  entries: readonly ZipEntry[],
  change: (bytes: Buffer) => void = () => undefined,
): Promise<string> {
  const packed = new yazl.ZipFile();
  for (const [name, content, options] of entries)
    packed.addBuffer(Buffer.from(content), name, { ...options });
  const pieces: Buffer[] = [];
  packed.end();
  for await (const piece of packed.outputStream) pieces.push(piece as Buffer);
  const bytes = Buffer.concat(pieces);
  change(bytes);
  const file = path.join(freshFolder(), 'bag.zip');
  writeFileSync(file, bytes);
  return file;
}

const whole = (top = 'bag'): ZipEntry[] => [
  [`${top}/bagit.txt`, DECLARED],
  [`${top}/manifest-sha256.txt`, manifest(FILES)],
  ...Object.entries(FILES).map(([name, content]): ZipEntry => [`${top}/${name}`, String(content)]),
];

/** Every place of a name, in both of ZIP's lists. */
const rename = (from: string, to: string) => (bytes: Buffer) => {
  expect(Buffer.byteLength(from)).toBe(Buffer.byteLength(to));
  for (let at = bytes.indexOf(from); at >= 0; at = bytes.indexOf(from, at + 1)) bytes.write(to, at);
};

describe('a bag in a ZIP', () => {
  it('is whole, whoever packed it', async () => {
    expect(await verify(await zip(whole()))).toMatchObject({ verdict: 'whole', diagnostics: [], files: 2 });
  });

  it.each([
    ['bag/data/xx/up.txt', 'bag/data/../up.txt', 'climbs out'],
    ['xx/escape.txt', '../escape.txt', 'climbs out'],
    ['xroot.txt', '/root.txt', 'root of the disk'],
    ['bag/back/slash.txt', 'bag/back\\slash.txt', 'backslash'],
    ['xx/drive.txt', 'C:/drive.txt', 'drive letter'],
    ['x/home.txt', '~/home.txt', 'home folder'],
  ])('is refused for an entry that was %s and is %s', async (from, to, words) => {
    const report = await verify(
      await zip(
        [...whole(), [from.padStart(to.length, 'x'), 'x']],
        rename(from.padStart(to.length, 'x'), to),
      ),
    );
    expect(report.verdict).toBe('no-bag');
    expect(messages(report).join()).toContain(words);
  });

  it('is refused with several folders or files at its top', async () => {
    const two = await verify(await zip([...whole(), ...whole('other')]));
    expect(messages(two).join()).toContain('more than one folder at its top');
    const loose = await verify(await zip([...whole(), ['letter.txt', 'x']]));
    expect(loose.verdict).toBe('no-bag');
    const bare = await verify(await zip([['bagit.txt', DECLARED]]));
    expect(messages(bare).join()).toContain('outside of any folder');
  });

  it('is told for a file that is called otherwise where its bytes lie', async () => {
    const named = await zip(whole(), (bytes) => bytes.write('q', bytes.indexOf('bag/data/a.txt') + 9));
    const report = await verify(named);
    expect(report.verdict).toBe('differs');
    expect(messages(report, 'error')).toEqual([
      'data/a.txt is called bag/data/q.txt where its bytes lie in the ZIP, so programs differ in what they unpack',
    ]);
    // A folder in the list that is a file to whoever reads on from the start.
    const folder = await zip([...whole(), ['bag/data/dirx', '']], (bytes) =>
      bytes.write('/', bytes.lastIndexOf('bag/data/dirx') + 12),
    );
    expect(messages(await verify(folder), 'error').join()).toContain('is called bag/data/dirx');
  });

  it.each([
    [18, 'packed'],
    [22, 'unpacked'],
  ])('is told for a size that is another where its bytes lie (at %d, %s)', async (at) => {
    const report = await verify(
      await zip(
        whole().map(([name, content]): ZipEntry => [name, content, { compress: false }]),
        (bytes) => {
          const header = bytes.indexOf('bag/data/a.txt') - 30;
          // No sizes behind the file, and what stands here counts (APPNOTE 4.3.7 and 4.4.4).
          bytes.writeUInt16LE(bytes.readUInt16LE(header + 6) & ~8, header + 6);
          for (const place of [18, 22]) bytes.writeUInt32LE(place === at ? 7 : 1, header + place);
        },
      ),
    );
    expect(messages(report, 'error')).toEqual([
      expect.stringContaining(
        'data/a.txt has 7 bytes by the header where its bytes lie in the ZIP, and 1 by',
      ),
    ]);
  });

  it('is whole with sizes in the field of large files, or behind the file', () => {
    const extra = Buffer.alloc(4 + 16);
    extra.writeUInt16LE(1, 0);
    extra.writeUInt16LE(16, 2);
    extra.writeBigUInt64LE(6_000_000_000n, 4);
    extra.writeBigUInt64LE(5_000_000_000n, 12);
    const header = { generalPurposeBitFlag: 0, fileName: Buffer.from('a'), extraField: extra };
    const full = { compressedSize: 0xffffffff, uncompressedSize: 0xffffffff };
    expect(sizesIn({ ...header, ...full })).toEqual({ size: 6_000_000_000, packed: 5_000_000_000 });
    expect(sizesIn({ ...header, ...full, extraField: extra.subarray(0, 7) })).toEqual({});
    const behind = { ...header, generalPurposeBitFlag: 8, compressedSize: 0, uncompressedSize: 0 };
    expect(sizesIn(behind)).toEqual({});
    expect(sizesIn({ ...behind, generalPurposeBitFlag: 0 })).toEqual({ size: 0, packed: 0 });
    const name = Buffer.from([0x75, 0x70, 7, 0, 1, 0, 0, 0, 0, 0xc3, 0xa9]);
    expect(namesIn({ ...header, ...full, extraField: name })).toEqual(['é']);
  });

  it('is told for links, for entries packed twice, and for locked ones', async () => {
    const link = await verify(await zip([...whole(), ['bag/data/link', '/etc/passwd', { mode: 0o120777 }]]));
    expect(messages(link, 'error')).toEqual(['data/link is a link, and a bag holds files']);
    const twice = await verify(await zip([...whole(), ['bag/data/a.txt', 'x']]));
    expect(messages(twice, 'error')).toEqual([expect.stringContaining('data/a.txt is packed twice')]);
    const locked = await verify(
      await zip(whole(), (bytes) => {
        // The bit of "encrypted" in the list at the end (APPNOTE 4.4.4), of the entry for a.txt.
        const at = bytes.lastIndexOf('bag/data/a.txt') - 46;
        bytes.writeUInt16LE(bytes.readUInt16LE(at + 8) | 1, at + 8);
      }),
    );
    expect(messages(locked, 'error')).toEqual(['data/a.txt is locked with a password']);
  });

  it('that swells without end is refused before it is unpacked', async () => {
    const bomb = await zip(whole(), (bytes) => {
      const at = bytes.lastIndexOf('bag/data/a.txt') - 46;
      bytes.writeUInt32LE(0xfffffff0, at + 24);
    });
    const begun = performance.now();
    const report = await verify(bomb);
    expect(report.verdict).toBe('no-bag');
    expect(messages(report).join()).toContain('more than 200 times');
    expect(performance.now() - begun).toBeLessThan(5000);
  });

  it('that unpacks to other than it says is told, and takes no memory', async () => {
    const file = path.join(freshFolder(), 'bag.zip');
    const packed = new yazl.ZipFile();
    for (const [name, content] of whole().slice(0, 2)) packed.addBuffer(Buffer.from(content), name);
    packed.addBuffer(Buffer.alloc(300 * 2 ** 20), 'bag/data/a.txt');
    packed.end();
    const out = packed.outputStream.pipe(createWriteStream(file));
    await once(out, 'close');
    const bytes = readFileSync(file);
    bytes.writeUInt32LE(1000, bytes.lastIndexOf('bag/data/a.txt') - 46 + 24);
    writeFileSync(file, bytes);
    const before = process.memoryUsage().rss;
    const found = messages(await verify(file), 'error').join('\n');
    expect(found).toContain('data/a.txt can’t be unpacked');
    expect(process.memoryUsage().rss - before).toBeLessThan(150 * 2 ** 20);
  });
});

async function tar(entries: readonly TarEntry[]): Promise<string> {
  const file = path.join(freshFolder(), 'bag.tar');
  writeFileSync(file, await packTar(entries));
  return file;
}

const asTar = (name: string, body: string): TarEntry => ({
  header: { name, size: Buffer.byteLength(body) },
  body,
});
const wholeTar = (): TarEntry[] => whole().map(([name, content]) => asTar(name, content));

describe('a bag in a tar', () => {
  it('is whole, in any order and with ./ before the names', async () => {
    expect(await verify(await tar(wholeTar()))).toMatchObject({
      verdict: 'whole',
      diagnostics: [],
      files: 2,
    });
    expect(await verify(await tar(wholeTar().reverse()))).toMatchObject({
      verdict: 'whole',
      diagnostics: [],
    });
    const dotted = wholeTar().map(({ header, body }) => ({
      header: { ...header, name: `./${header.name}` },
      body,
    }));
    expect(
      (await verify(await tar([{ header: { name: './', size: 0, type: 'directory' } }, ...dotted]))).verdict,
    ).toBe('whole');
  });

  it('is refused for entries that climb out, for several folders, and when it is cut short', async () => {
    for (const name of ['../x', '/etc/x', 'bag/../../x', 'bag\\x', 'C:/x', '~/x']) {
      const report = await verify(await tar([...wholeTar(), asTar(name, 'x')]));
      expect(report.verdict, name).toBe('no-bag');
      expect(messages(report).join(), name).toContain('holds an entry whose path');
    }
    expect(messages(await verify(await tar([...wholeTar(), asTar('other/x', 'x')]))).join()).toContain(
      'more than one folder',
    );
    const file = await tar(wholeTar());
    writeFileSync(file, readFileSync(file).subarray(0, 2000));
    expect(messages(await verify(file)).join()).toContain('can’t be read as a tar file');
  });

  it('is told for links and for entries packed twice', async () => {
    const report = await verify(
      await tar([
        ...wholeTar(),
        { header: { name: 'bag/data/soft', size: 0, type: 'symlink', linkname: '/etc/passwd' } },
        { header: { name: 'bag/data/hard', size: 0, type: 'link', linkname: 'bag/data/a.txt' } },
        { header: { name: 'bag/data/pipe', size: 0, type: 'fifo' } },
        asTar('bag/data/a.txt', 'x'),
      ]),
    );
    expect(report.verdict).toBe('differs');
    expect(messages(report, 'error').map((one) => one.split(' ')[0])).toEqual([
      'data/soft',
      'data/hard',
      'data/pipe',
      'data/a.txt',
    ]);
  });

  it('whose second copy of a file is forged is told, though the first is right', async () => {
    const forged = [asTar('bag/data/a.txt', 'x'), ...wholeTar()];
    const report = await verify(await tar(forged));
    expect(messages(report, 'error').join('\n')).toContain('packed twice');
  });
});
