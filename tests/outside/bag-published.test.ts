/**
 * Bags that the standard's keepers published, with the answer they gave for each.
 *
 * Texts and digests are those of the BagIt conformance suite of the Library of Congress
 * (https://github.com/LibraryOfCongress/bagit-conformance-suite, a work of the U.S. Government in the public domain),
 * by the paths named beside them. Where a payload of the suite could not be read, only its lists are used.
 */
import { createHash } from 'node:crypto';
import { writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { type Files, freshFolder, layOut, messages, removeFolders, verify } from '../tools/made-bags.js';

afterAll(removeFolders);

const ONE = 'BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n';
const OLD = 'BagIt-Version: 0.97\nTag-File-Character-Encoding: UTF-8\n';
const EMPTY_SHA512 =
  'cf83e1357eefb8bdf1542850d66d8007d620e4050b5715dc83f4a921d36ce9ce47d0d13c5d85f2b0ff8318d2877eec2f63b931bd47417a81a538327af927da3e';

const bag = (files: Files): string => layOut(path.join(freshFolder(), 'bag'), files);

/** v1.0/valid/basicBag. */
const BASIC: Files = {
  'bagit.txt': ONE,
  'data/hello.txt': 'hello\n',
  'manifest-sha512.txt':
    'e7c22b994c59d9cf2b48e549b1e24666636045930d3da7c1acb299d1c3b7f931f94aae41edda2c2b207a36e10f8bcb8d45223e54878f5b316e7ce3b6bc019629  data/hello.txt\n',
  'tagmanifest-sha512.txt': [
    '1d73ae108d4109b61f56698a5e19ee1f8947bdf8940bbce6adbe5e0940c2363caace6a547b4f1b3ec6a4fd2b7fa845e9cb9d28823bc72c59971718bb26f2fbd8 bagit.txt',
    '00c69a00e6af794264d4503c2bd71d31b7bc5c4aa341a11e5ee87a2440f30079db9e5ac26103dd7e0b000eec446980bee85cfe37f64c4fdd736e468aa2040244 manifest-sha512.txt',
    '',
  ].join('\n'),
};

describe('published as valid', () => {
  it('v1.0/valid/basicBag', async () => {
    expect(await verify(bag(BASIC))).toMatchObject({
      verdict: 'whole',
      diagnostics: [],
      algorithms: ['sha512'],
    });
  });

  // v0.97/valid/basic-bag-<algorithm>: payload and manifest.
  it.each([
    ['sha1', 'test-file.txt', '9:44:41', 'cbf04e6fb6ccca3287639848a8c3ff45d81c13de'],
    ['sha224', 'text-file.txt', '9:45:11', 'c82e175eddc4943cca747ba00509b02f56c10922134ab131cfe04fb7'],
    [
      'sha256',
      'text-file.txt',
      '9:45:38',
      '1dd056f18456057df5e333e0dc894ff8e9d600817ae26ec89c49e37ad2d555d4',
    ],
    [
      'sha512',
      'text-file.txt',
      '9:46:02',
      '1d1a9083e03045a84404ffc8b7b4dc921adf0019a39aabcfb49111886cd1168f8e3c62261f2cfdef9e042a8cfa159e0567b394ca41e7bf8f490b0a9730de378c',
    ],
  ])('v0.97/valid/basic-bag-%s', async (algorithm, name, time, digest) => {
    const files = {
      'bagit.txt': OLD,
      [`data/${name}`]: `Tue, Jul 24, 2018  ${time} AM\n`,
      [`manifest-${algorithm}.txt`]: `${digest}  data/${name}\n`,
    };
    const report = await verify(bag(files));
    expect([report.verdict, messages(report, 'error')]).toEqual(['whole', []]);
    const changed = await verify(bag({ ...files, [`data/${name}`]: 'changed' }));
    expect(changed.verdict).toBe('differs');
  });

  it('v0.97/valid/basic-bag-sha256: the digest of its bagit.txt', () => {
    expect(createHash('sha256').update(OLD).digest('hex')).toBe(
      'e91f941be5973ff71f1dccbdd1a32d598881893a7f21be516aca743da38b1689',
    );
  });

  it('v0.97/valid/duplicate-metadata-entries: its labels come twice', async () => {
    const info = [
      'Bagging-Date: 2016-02-26',
      'Bagging-Date: 2016-03-10',
      'Contact-Email: one@example.org',
      'Contact-Email: other@example.org',
      '',
    ].join('\n');
    // Without its tag manifest, since the people's names and addresses of the published file are left out here.
    const { 'tagmanifest-sha512.txt': _, ...rest } = BASIC;
    expect(await verify(bag({ ...rest, 'bag-info.txt': info }))).toMatchObject({
      verdict: 'whole',
      diagnostics: [],
    });
  });
});

describe('published with a warning', () => {
  it('v0.97/warning/filename-normalization: listed in one form, lying there in the other', async () => {
    for (const [listed, there] of [
      ['data/Nu\u0301n\u0303ez', 'data/Núñez'],
      ['data/Núñez', 'data/Nu\u0301n\u0303ez'],
    ] as const) {
      const report = await verify(
        bag({ 'bagit.txt': OLD, [there]: '', 'manifest-sha512.txt': `${EMPTY_SHA512} ${listed}\n` }),
      );
      expect(report.verdict).toBe('whole');
      expect(messages(report, 'warning')).toHaveLength(1);
    }
  });

  it('v0.97/warning/same-filename-listed-twice-with-different-normalization', async () => {
    const list = `${EMPTY_SHA512}  data/Nu\u0301n\u0303ez\n${EMPTY_SHA512}  data/Núñez\n`;
    const one = await verify(bag({ 'bagit.txt': OLD, 'data/Núñez': '', 'manifest-sha512.txt': list }));
    expect(one.verdict).toBe('whole');
    expect(messages(one, 'warning').length).toBeGreaterThan(0);
    const both = await verify(
      bag({ 'bagit.txt': OLD, 'data/Núñez': '', 'data/Nu\u0301n\u0303ez': '', 'manifest-sha512.txt': list }),
    );
    expect(both.verdict).toBe('whole');
    expect(messages(both, 'warning')).toHaveLength(1);
  });
});

describe('published as invalid', () => {
  const invalid = async (files: Files, words: string): Promise<void> => {
    const report = await verify(bag(files));
    expect(report.verdict).not.toBe('whole');
    expect(messages(report, 'error').join('\n')).toContain(words);
  };

  it('v1.0/invalid/bagit-with-invalid-whitespace', async () => {
    await invalid(
      { ...BASIC, 'bagit.txt': 'BagIt-Version : 1.0\nTag-File-Character-Encoding : UTF-8\n' },
      'bagit.txt that does not begin',
    );
  });

  it('v0.97/invalid/bom-in-bagit.txt', async () => {
    await invalid({ ...BASIC, 'bagit.txt': `\uFEFF${OLD}` }, 'byte-order mark');
  });

  it('v0.97/invalid/out-of-scope-file-paths-using-dot-notation: its manifest', async () => {
    const manifest = [
      '751e32179ec8acd71081654527f2e771  data/bare-filename',
      '86e8261ae9e8397a3f57046923943a44  data/text-file.txt',
      '3e6ffc4a8a1f38a7094e15d2356d7252  ../../../README.md',
      '',
    ].join('\n');
    const folder = bag({ 'bagit.txt': OLD, 'data/bare-filename': '', 'manifest-md5.txt': manifest });
    writeFileSync(path.join(folder, '..', 'README.md'), '');
    const found = messages(await verify(folder), 'error');
    expect(found).toContain('line 3 of manifest-md5.txt names a path that climbs out of the bag');
    expect(found).toContain('data/text-file.txt is missing');
    expect(found.join('\n')).not.toContain('README.md');
  });

  // The names of these bags say what is wrong with them; their texts could not be read, so this is what they describe.
  it('v0.97/invalid/out-of-scope-file-paths-using-tilde and -using-absolute-path', async () => {
    const line = (name: string) => `${EMPTY_SHA512}  ${name}\n`;
    for (const name of ['~/x', '~root/.profile', '/etc/hosts'])
      await invalid(
        { ...BASIC, 'manifest-sha512.txt': `${BASIC['manifest-sha512.txt']}${line(name)}` },
        'names a path',
      );
  });

  it('v1.0/invalid/notAllManifestsListAllFiles', async () => {
    const { 'tagmanifest-sha512.txt': _, ...rest } = BASIC;
    await invalid({ ...rest, 'manifest-sha256.txt': '' }, 'but not in manifest-sha256.txt');
  });

  it('v1.0/invalid/same-filename-listed-twice-with-different-hashes', async () => {
    const { 'tagmanifest-sha512.txt': _, ...rest } = BASIC;
    await invalid(
      { ...rest, 'manifest-sha512.txt': `${BASIC['manifest-sha512.txt']}${EMPTY_SHA512}  data/hello.txt\n` },
      'twice, with different digests',
    );
  });
});
