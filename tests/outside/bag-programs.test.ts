/** Bags beside other programs: they take ours for valid, and we take theirs. */
import { execFileSync, spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { cpSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { bagByBagit, lackingBagit, validByBagit } from '../tools/bagit-python.js';
import {
  freshFolder,
  layOut,
  messages,
  PAYLOAD,
  removeFolders,
  verify,
  written,
} from '../tools/made-bags.js';
import { lacking, run } from '../tools/outside-programs.js';

afterAll(removeFolders);

/** Names that trouble programs, without those that plain `sha256sum` can't read in a bag's list. */
const NAMES = {
  ...PAYLOAD,
  'originals/two  blanks.txt': 'b',
  'originals/ begins with a blank.txt': 'b',
  'originals/ключ \u{1F3E0}.txt': 'k',
  'originals/-dash.txt': 'd',
  'originals/.hidden': 'h',
  [`originals/${'long '.repeat(40)}/${'name '.repeat(40)}.txt`]: 'l',
};

/** Path → digest of every file below a folder. */
const digests = (folder: string): string[] =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => statSync(path.join(folder, name)).isFile())
    .map(
      (name) =>
        `${name} ${createHash('sha256')
          .update(readFileSync(path.join(folder, name)))
          .digest('hex')}`,
    )
    .sort();

const noSha256sum = lacking('sha256sum');
describe.skipIf(noSha256sum.some)(`sha256sum${noSha256sum.words}`, () => {
  const check = (folder: string) =>
    spawnSync('sha256sum', ['-c', '--quiet', '--strict', 'manifest-sha256.txt', 'tagmanifest-sha256.txt'], {
      cwd: folder,
      encoding: 'utf8',
    });

  it('finds our bag whole, and says which file is not', async () => {
    const folder = await written(freshFolder(), { files: NAMES });
    expect(check(folder)).toMatchObject({ status: 0, stdout: '' });
    writeFileSync(path.join(folder, 'data', 'originals', '.hidden'), 'x');
    const found = check(folder);
    expect(found.status).toBe(1);
    expect(found.stdout).toContain('data/originals/.hidden: FAILED');
    expect(messages(await verify(folder), 'error').join()).toContain('data/originals/.hidden was changed');
  });
});

const noBagit = lackingBagit();
describe.skipIf(noBagit.some)(`the Library of Congress’s validator${noBagit.words}`, () => {
  it('finds our bag valid, and one that was changed not', async () => {
    const folder = await written(freshFolder(), { files: { ...NAMES, 'originals/line\nend.txt': 'l' } });
    expect(validByBagit(folder)).toBe(true);
    writeFileSync(path.join(folder, 'data', 'how-to-read.txt'), 'other\n');
    expect(validByBagit(folder)).not.toBe(true);
  });

  it('does not know the escape of a percent sign, which RFC 8493, 2.1.3 asks for', async () => {
    const folder = await written(freshFolder(), { files: { 'originals/50%.txt': 'p' } });
    expect(readFileSync(path.join(folder, 'manifest-sha256.txt'), 'utf8')).toContain(
      'data/originals/50%25.txt',
    );
    // If this fails, it has learnt it; then the name belongs among those above.
    expect(validByBagit(folder)).not.toBe(true);
    expect((await verify(folder)).verdict).toBe('whole');
  });

  it('and we agree on bags of its own making, and on what is wrong with them', async () => {
    for (const algorithms of [['md5'], ['sha1', 'sha256'], ['sha512'], ['sha224', 'sha384']]) {
      const folder = layOut(path.join(freshFolder(), 'bag'), { ...NAMES, 'originals/50%.txt': 'p' });
      bagByBagit(folder, ...algorithms);
      const report = await verify(folder);
      expect([report.verdict, messages(report, 'error')]).toEqual(['whole', []]);
      expect([...report.algorithms].sort()).toEqual([...algorithms].sort());
      for (const harm of [
        (at: string) => rmSync(path.join(at, 'data', 'how-to-read.txt')),
        (at: string) => writeFileSync(path.join(at, 'data', 'added.txt'), 'a'),
        (at: string) => writeFileSync(path.join(at, 'data', 'how-to-read.txt'), 'read me\n'),
        (at: string) => writeFileSync(path.join(at, 'bag-info.txt'), 'Payload-Oxum: 1.1\n'),
        (at: string) => rmSync(path.join(at, 'bagit.txt')),
      ]) {
        const copy = path.join(freshFolder(), 'bag');
        cpSync(folder, copy, { recursive: true });
        harm(copy);
        expect((await verify(copy)).verdict).not.toBe('whole');
        expect(validByBagit(copy)).not.toBe(true);
      }
    }
  }, 240_000);
});

const noZip = lacking('zip', 'unzip');
describe.skipIf(noZip.some)(`zip and unzip${noZip.words}`, () => {
  it('unpack our bag to the same files, and find nothing wrong', async () => {
    const files = NAMES;
    const folder = await written(freshFolder(), { files });
    const file = await written(freshFolder(), { files, form: 'zip' });
    run('unzip', '-tqq', file);
    const to = freshFolder();
    run('unzip', '-q', file, '-d', to);
    expect(readdirSync(to)).toEqual([path.basename(folder)]);
    expect(digests(path.join(to, path.basename(folder)))).toEqual(digests(folder));
  });

  it('pack a bag that we find whole', async () => {
    const folder = await written(freshFolder(), { files: NAMES });
    const file = path.join(freshFolder(), 'theirs.zip');
    execFileSync('zip', ['-q', '-r', '-9', file, path.basename(folder)], { cwd: path.dirname(folder) });
    expect(await verify(file)).toMatchObject({ verdict: 'whole', diagnostics: [] });
  });
});

const noTar = lacking('tar');
describe.skipIf(noTar.some)(`tar${noTar.words}`, () => {
  const files = { ...NAMES, 'originals/50% off\nnow.txt': 'p' };

  it('unpacks our bag to the same files', async () => {
    const folder = await written(freshFolder(), { files });
    const file = await written(freshFolder(), { files, form: 'tar' });
    const to = freshFolder();
    const said = spawnSync('tar', ['-xf', file, '-C', to], { encoding: 'utf8' });
    expect([said.status, said.stderr]).toEqual([0, '']);
    expect(readdirSync(to)).toEqual([path.basename(folder)]);
    expect(digests(path.join(to, path.basename(folder)))).toEqual(digests(folder));
  });

  it.each(['gnu', 'pax', 'ustar'])('packs a bag in the form %s that we find whole', async (form) => {
    // ustar has no room for the long name.
    const some = form === 'ustar' ? PAYLOAD : files;
    const folder = await written(freshFolder(), { files: some });
    const file = path.join(freshFolder(), 'theirs.tar');
    const words = ['-cf', file, `--format=${form}`, '-C', path.dirname(folder), path.basename(folder)];
    run('tar', ...words);
    expect(await verify(file)).toMatchObject({ verdict: 'whole', diagnostics: [] });
  });
});

const noAge = lacking('age', 'age-keygen');
describe.skipIf(noAge.some)(`age${noAge.words}`, () => {
  function key(): { readonly file: string; readonly recipient: string } {
    const file = path.join(freshFolder(), 'key.txt');
    run('age-keygen', '-o', file);
    return { file, recipient: run('age-keygen', '-y', file).toString().trim() };
  }
  const identities = (file: string) => ({
    identities: readFileSync(file, 'utf8')
      .split('\n')
      .filter((line) => line.startsWith('AGE-')),
  });

  it('opens what we sealed, to the very tar that we write unsealed', async () => {
    const { file, recipient } = key();
    const plain = await written(freshFolder(), { files: NAMES, form: 'tar' });
    const sealed = await written(freshFolder(), { files: NAMES, seal: { recipients: [recipient] } });
    expect(run('age', '-d', '-i', file, sealed).equals(readFileSync(plain))).toBe(true);
  });

  it('seals what we open', async () => {
    const { file, recipient } = key();
    for (const form of ['tar', 'zip'] as const) {
      const plain = await written(freshFolder(), { files: NAMES, form });
      const sealed = path.join(freshFolder(), `theirs.${form}.age`);
      run('age', '-r', recipient, '-o', sealed, plain);
      expect((await verify(sealed, identities(file))).verdict).toBe('whole');
      expect((await verify(sealed, identities(key().file))).verdict).toBe('no-bag');
    }
  });

  const noPython = lacking('python3');
  it.skipIf(noPython.some)(`opens what we sealed with a passphrase${noPython.words}`, async () => {
    const plain = await written(freshFolder(), { form: 'tar' });
    const sealed = await written(freshFolder(), { seal: { passphrase: 'four plain words here' } });
    const to = path.join(freshFolder(), 'opened.tar');
    // It reads a passphrase from a terminal only.
    const typed = `
import os, pty, sys
pid, fd = pty.fork()
if pid == 0:
    os.execvp('age', ['age', '-d', '-o', sys.argv[2], sys.argv[1]])
seen = b''
while b'passphrase' not in seen.lower():
    seen += os.read(fd, 1000)
os.write(fd, b'four plain words here\\n')
try:
    while os.read(fd, 1000): pass
except OSError:
    pass
sys.exit(os.waitstatus_to_exitcode(os.waitpid(pid, 0)[1]))
`;
    const ended = spawnSync('python3', ['-c', typed, sealed, to], { encoding: 'utf8', timeout: 60_000 });
    expect(ended.status, ended.stderr).toBe(0);
    expect(readFileSync(to).equals(readFileSync(plain))).toBe(true);
  });

  it('leaves nothing of a bag readable', async () => {
    const { recipient } = key();
    const secret = 'the key is under the mat';
    mkdirSync(path.join(freshFolder(), 'x'));
    const sealed = await written(freshFolder(), {
      files: { 'originals/notes.txt': secret.repeat(1000) },
      seal: { recipients: [recipient] },
    });
    const bytes = readFileSync(sealed);
    for (const words of [secret, 'bagit.txt', 'originals', 'test-lane'])
      expect(bytes.includes(words)).toBe(false);
  });
});
