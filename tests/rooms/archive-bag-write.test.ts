/** A bag is written once, whole, the same bytes each time, and never over another. */
import { execFileSync, spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import {
  appendFileSync,
  chmodSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  truncateSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import path from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { bagDiskTrouble } from '../../src/archive/bag-disk-trouble.js';
import { tellLeftOut } from '../../src/archive/bag-left-out.js';
import { surveyFolder } from '../../src/archive/survey-folder.js';
import {
  bag,
  freshFolder,
  layOut,
  messages,
  PAYLOAD,
  removeFolders,
  verify,
  written,
} from '../tools/made-bags.js';

afterAll(removeFolders);

const names = (folder: string): string[] => readdirSync(folder).sort();
const read = (...parts: string[]): string => readFileSync(path.join(...parts), 'utf8');
const sha256 = (bytes: Uint8Array | string): string => createHash('sha256').update(bytes).digest('hex');

/** Every file and folder with its bytes, mode and time. */
const everything = (folder: string): string[] =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .map((name) => {
      const file = path.join(folder, name);
      const found = statSync(file);
      const digest = found.isFile() ? sha256(readFileSync(file)) : 'folder';
      return `${name} ${(found.mode & 0o777).toString(8)} ${found.mtime.toISOString()} ${digest}`;
    })
    .sort();

describe('a bag', () => {
  it('has the files of RFC 8493, with digests that hold', async () => {
    const to = freshFolder();
    const folder = await written(to);
    expect(path.basename(folder)).toBe('test-lane-2026-04-11');
    expect(names(to)).toEqual(['test-lane-2026-04-11']);
    expect(names(folder)).toEqual([
      'bag-info.txt',
      'bagit.txt',
      'data',
      'manifest-sha256.txt',
      'tagmanifest-sha256.txt',
    ]);
    expect(read(folder, 'bagit.txt')).toBe('BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n');
    const size = Object.values(PAYLOAD).reduce((sum, one) => sum + Buffer.from(one).length, 0);
    expect(read(folder, 'bag-info.txt')).toBe(
      [
        'Bagging-Date: 2026-04-11',
        'External-Identifier: test-lane-2026-04-11',
        'External-Description: The record of Test Lane',
        'Bag-Group-Identifier: test-lane',
        `Payload-Oxum: ${size}.6`,
        'Bag-Software-Agent: sillplate 0.0.0',
        '',
      ].join('\n'),
    );
    const manifest = read(folder, 'manifest-sha256.txt').trimEnd().split('\n');
    expect(manifest.map((line) => line.slice(66))).toEqual(
      Object.keys(PAYLOAD)
        .map((name) => `data/${name}`)
        .sort((a, b) => Buffer.compare(Buffer.from(a), Buffer.from(b))),
    );
    for (const line of manifest)
      expect(line.slice(0, 64)).toBe(sha256(readFileSync(path.join(folder, line.slice(66)))));
    expect(read(folder, 'tagmanifest-sha256.txt')).toBe(
      ['bag-info.txt', 'bagit.txt', 'manifest-sha256.txt']
        .map((name) => `${sha256(read(folder, name))}  ${name}\n`)
        .join(''),
    );
    expect(await verify(folder)).toMatchObject({ verdict: 'whole', diagnostics: [], files: 6, bytes: size });
  });

  it.each(['zip', 'tar'] as const)('as a %s is one folder in one file, and whole', async (form) => {
    const to = freshFolder();
    const file = await written(to, { form });
    expect(names(to)).toEqual([`test-lane-2026-04-11.${form}`]);
    expect(await verify(file)).toMatchObject({ verdict: 'whole', diagnostics: [], files: 6 });
  });

  it.each(['folder', 'zip', 'tar'] as const)(
    'as a %s has the same bytes each time, everywhere',
    async (form) => {
      const [one, other] = [freshFolder(), freshFolder()];
      const zone = process.env.TZ;
      const mask = process.umask(0o077);
      try {
        process.env.TZ = 'Pacific/Kiritimati';
        await written(one, { form });
        process.umask(0o002);
        process.env.TZ = 'America/Los_Angeles';
        const backwards = Object.fromEntries(Object.entries(PAYLOAD).reverse());
        await written(other, { form, files: backwards });
      } finally {
        process.umask(mask);
        if (zone === undefined) delete process.env.TZ;
        else process.env.TZ = zone;
      }
      expect(everything(one)).toEqual(everything(other));
      const inside = everything(form === 'folder' ? path.join(one, 'test-lane-2026-04-11') : one);
      for (const line of inside) expect(line).toMatch(/ (?:644|755) /u);
      if (form === 'folder') for (const line of inside) expect(line).toContain('2026-04-11T12:00:00.000Z');
    },
  );

  it('holds what lies in files, and copies what it hashes', async () => {
    const source = layOut(freshFolder(), {
      'big.bin': new Uint8Array(5 * 2 ** 20 + 17).fill(7),
      'none.bin': '',
    });
    for (const form of ['folder', 'zip', 'tar'] as const) {
      const file = await written(freshFolder(), {
        form,
        payload: ['big.bin', 'none.bin'].map((name) => ({
          path: `originals/${name}`,
          source: { file: path.join(source, name) },
        })),
      });
      expect(await verify(file)).toMatchObject({ verdict: 'whole', bytes: 5 * 2 ** 20 + 17, files: 2 });
    }
  });

  it('takes long names and names beyond ASCII, in every form', async () => {
    const files = {
      [`originals/${'a'.repeat(120)}/${'b'.repeat(120)}/${'c'.repeat(150)}.txt`]: '1',
      'originals/ключ \u{1F3E0}.txt': '2',
      [`originals/${'é'.repeat(60)}.txt`]: '3',
      'originals/50% off\nnow.txt': '4',
    };
    for (const form of ['folder', 'zip', 'tar'] as const)
      expect(await verify(await written(freshFolder(), { form, files }))).toMatchObject({
        verdict: 'whole',
        diagnostics: [],
        files: 4,
      });
  });
});

describe('an earlier bag', () => {
  it('stays as it is; a later state gets the next name and names it', async () => {
    const to = freshFolder();
    await written(to);
    const before = everything(to);
    const second = await written(to, { files: { ...PAYLOAD, 'how-to-read.txt': 'anew\n' } });
    expect(path.basename(second)).toBe('test-lane-2026-04-11-2');
    expect(read(second, 'bag-info.txt')).toContain(
      'Internal-Sender-Description: The bag of this house before this one: test-lane-2026-04-11\n',
    );
    expect(everything(to).filter((line) => /^test-lane-2026-04-11(?:\/| )/u.test(line))).toEqual(before);
    const later = await written(to, { asOf: '2026-05-01', files: { 'a.txt': 'a' } });
    expect(path.basename(later)).toBe('test-lane-2026-05-01');
    expect(read(later, 'bag-info.txt')).toContain('test-lane-2026-04-11-2\n');
  });

  it.each(['folder', 'zip', 'tar'] as const)(
    'that holds the same makes a second %s needless',
    async (form) => {
      const to = freshFolder();
      await written(to, { form });
      const before = everything(to);
      expect(await bag(to, { form, asOf: '2026-12-31' })).toMatchObject({
        kind: 'same',
        name: 'test-lane-2026-04-11',
      });
      expect(everything(to)).toEqual(before);
    },
  );

  it('that holds the same in another form does not', async () => {
    const to = freshFolder();
    await written(to);
    expect(path.basename(await written(to, { form: 'zip' }))).toBe('test-lane-2026-04-11-2.zip');
    // The newest holds the same, and so does the folder before it.
    expect(await bag(to)).toMatchObject({ kind: 'same', name: 'test-lane-2026-04-11' });
  });

  it('that held the same before another state does not either', async () => {
    const to = freshFolder();
    await written(to);
    await written(to, { files: { 'a.txt': 'a' } });
    expect(path.basename(await written(to))).toBe('test-lane-2026-04-11-3');
  });

  it('of as many files and bytes, but other ones, is no reason to write nothing', async () => {
    const to = freshFolder();
    await written(to, { files: { 'a.txt': 'one' } });
    expect(path.basename(await written(to, { files: { 'a.txt': 'two' } }))).toBe('test-lane-2026-04-11-2');
  });

  it('is anything of such a name, and is passed over', async () => {
    const to = freshFolder();
    writeFileSync(path.join(to, 'test-lane-2026-04-11'), 'a file');
    mkdirSync(path.join(to, 'test-lane-2026-04-11-7'));
    writeFileSync(path.join(to, 'test-lane-2026-04-11-9.zip'), 'no zip');
    writeFileSync(path.join(to, 'test-lane-garage-2026-04-11-20'), 'another house');
    expect(path.basename(await written(to))).toBe('test-lane-2026-04-11-10');
    expect(read(to, 'test-lane-2026-04-11')).toBe('a file');
  });
});

describe('an earlier bag that is no longer whole', () => {
  it.each<[string, number, (folder: string) => void]>([
    ['with a file emptied', 2, (folder) => truncateSync(path.join(folder, 'data/how-to-read.txt'), 0)],
    [
      'with a byte changed',
      1,
      (folder) => writeFileSync(path.join(folder, 'data/how-to-read.txt'), 'read it?'),
    ],
    [
      'with nothing left in data/',
      7,
      (folder) => {
        rmSync(path.join(folder, 'data'), { recursive: true });
        mkdirSync(path.join(folder, 'data'));
      },
    ],
    ['without its bag-info.txt', 1, (folder) => rmSync(path.join(folder, 'bag-info.txt'))],
  ])('is no reason to write nothing: %s', async (_what, things, damage) => {
    const to = freshFolder();
    damage(await written(to));
    const before = everything(to);
    const again = await bag(to);
    expect(again).toMatchObject({
      kind: 'written',
      name: 'test-lane-2026-04-11-2',
      diagnostics: [
        {
          code: 'archive.bag',
          severity: 'warning',
          hints: [expect.stringContaining('sillplate verify archive/test-lane/test-lane-2026-04-11')],
        },
      ],
    });
    const report = await verify(path.join(to, 'test-lane-2026-04-11'));
    expect(messages(report, 'error')).toHaveLength(things);
    expect(JSON.stringify(again)).toContain(
      things === 1 ? '(one thing in it differs)' : `(${things} things in it differ)`,
    );
    // Nothing of it was touched, and the new one is the one that is asked next.
    expect(everything(to).filter((line) => /^test-lane-2026-04-11(?:\/| )/u.test(line))).toEqual(before);
    expect((await verify(path.join(to, 'test-lane-2026-04-11-2'))).verdict).toBe('whole');
    expect(await bag(to)).toMatchObject({ kind: 'same', name: 'test-lane-2026-04-11-2' });
  });

  it.each(['zip', 'tar'] as const)('as a %s is none either', async (form) => {
    const to = freshFolder();
    const file = await written(to, { form });
    const bytes = readFileSync(file);
    bytes.write('READ IT\n', bytes.indexOf('read it\n'));
    writeFileSync(file, bytes);
    const again = await bag(to, { form });
    expect(again).toMatchObject({ kind: 'written', name: 'test-lane-2026-04-11-2' });
    expect(JSON.stringify(again)).toContain('is no longer whole (one thing in it differs)');
    expect(await bag(to, { form })).toMatchObject({ kind: 'same', name: 'test-lane-2026-04-11-2' });
  });

  it('and can’t be read as a bag at all is told', async () => {
    const to = freshFolder();
    const folder = await written(to);
    for (const name of names(folder)) rmSync(path.join(folder, name), { recursive: true });
    const again = await bag(to);
    expect(again).toMatchObject({ kind: 'written', diagnostics: [{ severity: 'warning' }] });
    expect(JSON.stringify(again)).toContain('test-lane-2026-04-11 can’t be read as a bag');
  });

  it('is not asked about where it was of another state', async () => {
    const to = freshFolder();
    const folder = await written(to);
    truncateSync(path.join(folder, 'data/how-to-read.txt'), 0);
    expect(await bag(to, { files: { 'a.txt': 'a' } })).toMatchObject({ kind: 'written', diagnostics: [] });
  });
});

describe('a disk that refuses', () => {
  it.each([
    ['ENOENT', 'that place is not there'],
    ['EROFS', 'that disk can only be read'],
    ['EACCES', 'you may not write there'],
    ['ENOSPC', 'the disk is full'],
    ['EFBIG', 'larger than that disk can hold'],
    ['EIO', 'does not answer'],
    ['EWHATEVER', 'the system says EWHATEVER'],
  ])('with %s is told in plain words, with --to', (code, words) => {
    const thrown = Object.assign(new Error('no'), { code, syscall: 'mkdir' });
    const told = bagDiskTrouble(thrown, 'stick/houses');
    expect(told.message).toContain(`no bag could be written to stick/houses: `);
    expect(told.message).toContain(words);
    expect(told.hints.join()).not.toMatch(/--out|build/u);
    expect(told.hints.join()).toContain(code === 'ENOSPC' ? 'free some space' : '--to my-archive');
  });

  it('for want of the place is told so', async () => {
    const home = freshFolder();
    symlinkSync(path.join(home, 'no-disk', 'here'), path.join(home, 'stick'));
    const places = [path.join(home, 'stick', 'houses')];
    // Nobody can make a folder there, root neither.
    if (existsSync('/proc/self')) places.push('/proc/no-disk/houses');
    for (const place of places) {
      const told = JSON.stringify(await bag(place));
      expect(told).toContain('that place is not there');
      expect(told).not.toContain('the system says');
      expect(told).toContain('--to my-archive');
    }
  });

  it('has no words for a mistake of ours', () => {
    expect(() => bagDiskTrouble(new TypeError('ours'), 'x')).toThrow('ours');
  });
});

describe('nothing half-made', () => {
  it('is left by a run that was killed, and the next one clears it', async () => {
    const to = freshFolder();
    layOut(path.join(to, '.sillplate-making-test-lane-999999999'), { 'test-lane-2026-04-11/data/a': 'half' });
    writeFileSync(path.join(to, '.sillplate-lock-test-lane'), '999999999');
    await written(to);
    expect(names(to)).toEqual(['test-lane-2026-04-11']);
  });

  it('bears a bag’s name, when the run is killed in the middle', async () => {
    const to = freshFolder();
    const source = path.join(freshFolder(), 'big.bin');
    writeFileSync(source, '');
    truncateSync(source, 3 * 2 ** 30);
    const at = new URL('../../dist/archive/write-bag.js', import.meta.url).href;
    const order = JSON.stringify({
      house: 'test-lane',
      asOf: '2026-04-11',
      to,
      shown: 'archive',
      form: 'folder',
      description: 'x',
      program: 'x',
      payload: [{ path: 'originals/big.bin', source: { file: source } }],
    });
    const script = `const { bagHouse } = await import(${JSON.stringify(at)}); setTimeout(() => process.kill(process.pid, 'SIGKILL'), 400); await bagHouse(${order});`;
    const run = spawnSync(process.execPath, ['--input-type=module', '-e', script], { encoding: 'utf8' });
    expect(run.signal, run.stderr).toBe('SIGKILL');
    expect(names(to).filter((name) => !name.startsWith('.'))).toEqual([]);
    expect(names(to).some((name) => name.startsWith('.sillplate-making-test-lane-'))).toBe(true);
    await written(to);
    expect(names(to)).toEqual(['test-lane-2026-04-11']);
  });

  it('is left when a file can’t be read, or was changed since it was looked at', async () => {
    const source = layOut(freshFolder(), { 'a.txt': 'a', 'b.txt': 'b' });
    const { files } = await surveyFolder(source, 'content/h');
    const payload = files.map((one) => ({ path: `originals/${one.path}`, source: one }));
    for (const form of ['folder', 'zip', 'tar'] as const) {
      appendFileSync(path.join(source, 'b.txt'), 'more');
      const to = freshFolder();
      const result = await bag(to, { form, payload });
      expect(result).toMatchObject({ kind: 'failed', diagnostics: [{ code: 'archive.bag' }] });
      expect(JSON.stringify(result)).toContain('b.txt was changed while it was being read');
      expect(names(to)).toEqual([]);
    }
    // As large as before and other bytes: its time tells.
    const again = (await surveyFolder(source, 'content/h')).files;
    const { mtime } = statSync(path.join(source, 'a.txt'));
    writeFileSync(path.join(source, 'a.txt'), 'x');
    utimesSync(path.join(source, 'a.txt'), mtime, new Date(mtime.getTime() + 1000));
    const to = freshFolder();
    const result = await bag(to, { payload: again.map((one) => ({ path: one.path, source: one })) });
    expect(JSON.stringify(result)).toContain('a.txt was changed');
    expect(names(to)).toEqual([]);
  });

  it('is left when there is no such file, or a file stands in the way', async () => {
    const to = freshFolder();
    const gone = await bag(to, { payload: [{ path: 'a', source: { file: path.join(to, 'no-such') } }] });
    expect(JSON.stringify(gone)).toContain('a is not there, so no bag was made');
    expect(names(to)).toEqual([]);
    const file = path.join(to, 'file');
    writeFileSync(file, 'x');
    const blocked = await bag(path.join(file, 'archive'));
    expect(blocked).toMatchObject({
      kind: 'failed',
      diagnostics: [
        {
          code: 'archive.disk',
          message: expect.stringContaining('a file stands where a folder is needed. Earlier'),
          hints: ['move the file away', 'choose another folder:  --to my-archive'],
        },
      ],
    });
    expect(read(to, 'file')).toBe('x');
  });

  it('comes of two that run at once: both bags are whole, under two names', async () => {
    const to = freshFolder();
    const both = await Promise.all([written(to, { files: { a: '1' } }), written(to, { files: { a: '2' } })]);
    expect(new Set(both).size).toBe(2);
    for (const one of both) expect((await verify(one)).verdict).toBe('whole');
    expect(names(to)).toHaveLength(2);
  });

  it('comes of a payload with one path twice: that is our mistake, and throws', async () => {
    const twice = { path: 'a', source: { bytes: new Uint8Array() } };
    await expect(bag(freshFolder(), { payload: [twice, twice] })).rejects.toThrow('one path');
  });
});

describe('a house folder that is looked through', () => {
  it('gives every file, hidden ones too, and links that stay inside', async () => {
    const folder = layOut(freshFolder(), { 'b/.hidden': '1', 'a.txt': '2', 'b/c/d.txt': '3' });
    symlinkSync('a.txt', path.join(folder, 'link.txt'));
    mkdirSync(path.join(folder, 'hollow'));
    const { files, diagnostics } = await surveyFolder(folder, 'content/h');
    expect(files.map((one) => one.path)).toEqual(['a.txt', 'b/.hidden', 'b/c/d.txt', 'link.txt']);
    expect(diagnostics).toMatchObject([{ severity: 'note', file: 'content/h/hollow' }]);
  });

  it('passes over what no person put there as a record, and nothing else', async () => {
    const kept = [
      '.gitignore',
      '.hidden/note.txt',
      '.unfinished.json',
      'a.swp',
      'costs.csv',
      'house.yaml~',
      'notes#1.txt',
      'photos/git/.sillplate.txt',
    ];
    const leftOut = [
      '#notes.txt#',
      '.#house.yaml',
      '.git',
      '.house.yaml.swp',
      '.sillplate-writing-costs.csv-4711',
      '.~lock.costs.csv#',
      'documents/~$hours.xlsx',
      'imports/.sillplate-lock-import',
      'imports/.unfinished.json',
      'photos/.DS_Store',
      'photos/Thumbs.db',
    ];
    const inner = [...kept, ...leftOut].filter((name) => name !== '.git' && name !== '.#house.yaml');
    const folder = layOut(freshFolder(), {
      ...Object.fromEntries(inner.map((name) => [name, name])),
      '.git/objects/aa/bb': 'blob',
    });
    // Emacs locks with a link that leads nowhere.
    symlinkSync('somebody@somewhere.1', path.join(folder, '.#house.yaml'));
    const survey = await surveyFolder(folder, 'content/h');
    expect(survey.files.map((one) => one.path)).toEqual(kept);
    expect(survey.leftOut).toEqual(leftOut);
    expect(survey.diagnostics).toEqual([]);
  });

  it('tells what was passed over in one line', () => {
    expect(tellLeftOut(['.git', 'a/.DS_Store', 'b/.DS_Store', 'imports/.unfinished.json'])).toBe(
      '.git, .DS_Store (2 times), imports/.unfinished.json',
    );
    const many = Array.from({ length: 20 }, (_, n) => `.sillplate-writing-${n}`);
    expect(tellLeftOut(many)).toMatch(/^(?:\S+, ){11}\S+ and 8 more$/u);
  });

  it('is refused, by name, for what can’t go into a bag', async () => {
    const folder = layOut(freshFolder(), { 'inner/a.txt': '1', 'back\\slash.txt': '2' });
    const outside = layOut(freshFolder(), { 'secret.txt': 's' });
    symlinkSync(path.join(outside, 'secret.txt'), path.join(folder, 'out.txt'));
    symlinkSync('inner', path.join(folder, 'folder-link'));
    symlinkSync('nowhere', path.join(folder, 'broken'));
    execFileSync('mkfifo', [path.join(folder, 'pipe')]);
    writeFileSync(Buffer.concat([Buffer.from(`${folder}/bad-`), Buffer.from([0xff])]), 'x');
    const { files, diagnostics } = await surveyFolder(folder, 'content/h');
    expect(files.map((one) => one.path)).toEqual(['inner/a.txt']);
    const told = diagnostics.map((one) => `${one.code} ${one.message}`).join('\n');
    expect(told).toContain('intake.outside content/h/out.txt is a link that leads out of the house folder');
    expect(told).toContain('content/h/folder-link is a link to a folder');
    expect(told).toContain('content/h/broken is a link that leads nowhere');
    expect(told).toContain('content/h/pipe is a pipe');
    expect(told).toContain('not UTF-8');
    expect(told).toContain('backslash');
    expect(diagnostics.every((one) => one.severity === 'error' && one.hints.length > 0)).toBe(true);
  });

  it('is warned of names that are one on other systems', async () => {
    const folder = layOut(freshFolder(), { 'A.txt': '1', 'a.txt': '2', 'e\u0301.txt': '3', 'é.txt': '4' });
    const { diagnostics } = await surveyFolder(folder, 'content/h');
    expect(diagnostics.map((one) => one.severity)).toEqual(['warning', 'warning']);
  });
});

describe('a written bag', () => {
  it('that is touched afterwards is told', async () => {
    const folder = await written(freshFolder());
    const file = path.join(folder, 'data', 'how-to-read.txt');
    chmodSync(file, 0o644);
    writeFileSync(file, 'read me\n');
    const report = await verify(folder);
    expect(report.verdict).toBe('differs');
    expect(messages(report)).toEqual([
      'data/how-to-read.txt was changed: it is not what manifest-sha256.txt says',
    ]);
    expect(existsSync(file)).toBe(true);
  });
});
