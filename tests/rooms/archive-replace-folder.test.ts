/** New output takes the place of the old in one step, or the old stays. */
import { spawnSync } from 'node:child_process';
import {
  chmodSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { listTree } from '../../src/archive/list-tree.js';
import { recover, replaceFolder } from '../../src/archive/replace-folder.js';
import { writeTree } from '../../src/archive/write-tree.js';
import { diskTrouble } from '../../src/diagnostics/disk-trouble.js';

const isRoot = process.getuid?.() === 0;
const freshFolder = (): string => mkdtempSync(path.join(tmpdir(), 'archive-'));
const read = (...parts: string[]): string => readFileSync(path.join(...parts), 'utf8');
const replace = (parent: string, text: string) =>
  replaceFolder(parent, 'house', [{ path: 'buyer/index.html', text }], 'out/house');

/** Names in a folder, the hidden ones too: nothing may be left lying about. */
const names = (folder: string): string[] => readdirSync(folder).sort();

describe('a folder is replaced', () => {
  it('where there was none, in a parent that was not there either', async () => {
    const parent = path.join(freshFolder(), 'deep', 'out');
    expect(await replace(parent, 'new')).toBeUndefined();
    expect(read(parent, 'house', 'buyer', 'index.html')).toBe('new');
    expect(names(parent)).toEqual(['house']);
  });

  it('as a whole: files of the old one are gone, and nothing is left beside it', async () => {
    const parent = freshFolder();
    await replaceFolder(parent, 'house', [{ path: 'old/only.txt', text: 'x' }], 'out/house');
    expect(await replace(parent, 'new')).toBeUndefined();
    expect(names(path.join(parent, 'house'))).toEqual(['buyer']);
    expect(names(parent)).toEqual(['house']);
  });

  it('with texts, bytes and copies', async () => {
    const parent = freshFolder();
    writeFileSync(path.join(parent, 'photo.jpg'), 'a photo');
    const files = [
      { path: 'a.txt', text: 'ä' },
      { path: 'deep/b.bin', bytes: new Uint8Array([0, 255]) },
      { path: 'c.jpg', copyOf: path.join(parent, 'photo.jpg') },
    ];
    expect(await replaceFolder(parent, 'house', files, 'out/house')).toBeUndefined();
    expect(read(parent, 'house', 'a.txt')).toBe('ä');
    expect([...readFileSync(path.join(parent, 'house', 'deep', 'b.bin'))]).toEqual([0, 255]);
    expect(read(parent, 'house', 'c.jpg')).toBe('a photo');
    const listed = await listTree(parent, 'house');
    expect(listed.map((one) => one.path).sort()).toEqual(['house/a.txt', 'house/c.jpg', 'house/deep/b.bin']);
  });

  it('never with a file outside it: that is our mistake, and throws', async () => {
    const parent = freshFolder();
    await replace(parent, 'old');
    for (const wrong of ['../outside.txt', 'a/../../outside.txt', '../tree-beside/outside.txt'])
      await expect(writeTree(path.join(parent, 'tree'), [{ path: wrong, text: 'x' }])).rejects.toThrow(
        'leaves its folder',
      );
    expect(existsSync(path.join(parent, 'outside.txt'))).toBe(false);
    expect(read(parent, 'house', 'buyer', 'index.html')).toBe('old');
  });
});

describe('the old folder stays', () => {
  it('when a file to be copied is not there', async () => {
    const parent = freshFolder();
    await replace(parent, 'old');
    const files = [
      { path: 'buyer/index.html', text: 'new' },
      { path: 'photo.jpg', copyOf: path.join(parent, 'no-such.jpg') },
    ];
    // No fault of the place that is written to, so it is not told as one.
    await expect(replaceFolder(parent, 'house', files, 'out/house')).rejects.toMatchObject({
      code: 'ENOENT',
    });
    expect(read(parent, 'house', 'buyer', 'index.html')).toBe('old');
    expect(names(parent)).toEqual(['house']);
  });

  it('when a file stands where the output folder is wanted', async () => {
    const place = path.join(freshFolder(), 'out');
    writeFileSync(place, 'a file');
    const trouble = await replace(place, 'new');
    expect(trouble?.message).toContain('a file stands where a folder is needed');
    expect(readFileSync(place, 'utf8')).toBe('a file');
  });

  it.skipIf(isRoot && spawnSync('setpriv', ['--version']).error !== undefined)(
    `when the folder can’t be written${isRoot ? ', asked as another user' : ''}`,
    async () => {
      const parent = freshFolder();
      await replace(parent, 'old');
      chmodSync(parent, 0o555);
      if (isRoot) {
        chmodSync(path.dirname(parent), 0o1777);
        expectRefusedForNobody(parent);
      } else {
        expect((await replace(parent, 'new'))?.message).toContain('you may not write there');
      }
      chmodSync(parent, 0o755);
      expect(read(parent, 'house', 'buyer', 'index.html')).toBe('old');
      expect(names(parent)).toEqual(['house']);
    },
  );

  const small = isRoot ? mountSmall() : undefined;
  const noDisk =
    small === undefined
      ? ' (skipped: a small disk can only be mounted by root, where mounting is allowed)'
      : '';
  it.skipIf(small === undefined)(`when the disk is full${noDisk}`, async () => {
    const parent = small ?? '';
    try {
      expect(await replace(parent, 'old')).toBeUndefined();
      const trouble = await replaceFolder(
        parent,
        'house',
        [
          { path: 'buyer/index.html', text: 'new' },
          { path: 'big.bin', bytes: new Uint8Array(4_000_000) },
        ],
        'out/house',
      );
      expect(trouble?.message).toContain('the disk is full');
      expect(trouble?.hints[0]).toContain('free some space');
      expect(read(parent, 'house', 'buyer', 'index.html')).toBe('old');
      expect(names(parent)).toEqual(['house']);
      expect(await replace(parent, 'newer'), 'there is room again').toBeUndefined();
    } finally {
      spawnSync('umount', [parent]);
    }
  });

  it('and the reason is told in words; what is no disk’s trouble is thrown', () => {
    const told = (code: string) =>
      diskTrouble(Object.assign(new Error('x'), { code, syscall: 'open' }), 'out').message;
    expect(told('EACCES')).toContain('you may not write there');
    expect(told('EROFS')).toContain('that disk can only be read');
    expect(told('EIO')).toContain('the system says EIO');
    expect(() => diskTrouble(new Error('a mistake'), 'out')).toThrow('a mistake');
  });
});

it('a folder that may not be written to stays as it is, also where its place may', async () => {
  const parent = freshFolder();
  await replace(parent, 'old');
  if (isRoot) {
    // The owner is root, and whoever replaces it is nobody.
    for (const [folder, mode] of [
      [parent, 0o777],
      [path.dirname(parent), 0o1777],
    ] as const)
      chmodSync(folder, mode);
    expectRefusedForNobody(parent);
  } else {
    chmodSync(path.join(parent, 'house'), 0o555);
    expect((await replace(parent, 'new'))?.message).toContain('you may not write there');
    chmodSync(path.join(parent, 'house'), 0o755);
  }
  expect(read(parent, 'house', 'buyer', 'index.html')).toBe('old');
  expect(names(parent)).toEqual(['house']);
});

/** Root may write everywhere; the nobody of every system may not. */
function expectRefusedForNobody(parent: string): void {
  const script = `import('${new URL('../../dist/archive/replace-folder.js', import.meta.url).href}').then(async ({ replaceFolder }) => process.stdout.write(JSON.stringify(await replaceFolder(${JSON.stringify(parent)}, 'house', [{ path: 'a', text: 'new' }], 'out/house'))));`;
  const asNobody = ['--reuid=65534', '--regid=65534', '--clear-groups', process.execPath];
  const run = spawnSync('setpriv', [...asNobody, '--input-type=module', '-e', script], { encoding: 'utf8' });
  if (run.status === 0) expect(run.stdout).toContain('you may not write there');
  else
    expect(run.stderr, 'nobody may not even read the program here').toMatch(
      /EACCES|Permission|not found|No such/u,
    );
}

/** A disk of 2 MB in memory, or undefined where mounting is not allowed. */
function mountSmall(): string | undefined {
  const folder = freshFolder();
  const run = spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=2m', 'tmpfs', folder]);
  return run.status === 0 ? folder : undefined;
}

describe('after a run that was killed', () => {
  it('between the two renames, the old folder is put back', async () => {
    const parent = freshFolder();
    await replace(parent, 'old');
    mkdirSync(path.join(parent, '.sillplate-making-house-999999999'));
    spawnSync('mv', [path.join(parent, 'house'), path.join(parent, '.sillplate-old-house')]);
    await recover(parent, 'house');
    expect(names(parent)).toEqual(['house']);
    expect(read(parent, 'house', 'buyer', 'index.html')).toBe('old');
  });

  it('after the second, the old folder is cleared away', async () => {
    const parent = freshFolder();
    await replace(parent, 'new');
    mkdirSync(path.join(parent, '.sillplate-old-house'));
    await recover(parent, 'house');
    expect(names(parent)).toEqual(['house']);
    expect(read(parent, 'house', 'buyer', 'index.html')).toBe('new');
  });

  it('while it was writing, the half-made folder is cleared away, that of a running build is not', async () => {
    const parent = freshFolder();
    await replace(parent, 'old');
    const dead = spawnSync(process.execPath, ['-e', '']).pid;
    mkdirSync(path.join(parent, `.sillplate-making-house-${dead}`));
    mkdirSync(path.join(parent, `.sillplate-making-house-${process.ppid}`));
    await recover(parent, 'house');
    expect(names(parent)).toEqual([`.sillplate-making-house-${process.ppid}`, 'house']);
  });

  it('with its lock in the hand, the lock is cleared away', async () => {
    const parent = freshFolder();
    await replace(parent, 'new');
    const dead = spawnSync(process.execPath, ['-e', '']).pid;
    writeFileSync(path.join(parent, '.sillplate-lock-house'), `${dead} 1`);
    await recover(parent, 'house');
    expect(names(parent)).toEqual(['house']);
  });

  it('of this house alone: what belongs to others stays', async () => {
    const parent = freshFolder();
    await replace(parent, 'new');
    for (const other of ['.old-photos', '.sillplate-old-other', 'photos'])
      mkdirSync(path.join(parent, other));
    await recover(parent, 'house');
    expect(names(parent)).toEqual(['.old-photos', '.sillplate-old-other', 'house', 'photos']);
  });

  it('in a folder that is not there, nothing happens', async () => {
    const nowhere = path.join(freshFolder(), 'nowhere');
    await recover(nowhere, 'house');
    expect(existsSync(nowhere)).toBe(false);
  });
});

describe('two builds at once', () => {
  it('of two houses in one folder leave both whole', async () => {
    const parent = freshFolder();
    const files = (text: string) => Array.from({ length: 40 }, (_, i) => ({ path: `${i}.txt`, text }));
    const troubles = await Promise.all(
      ['a', 'b', 'c'].map((name) => replaceFolder(parent, name, files(name), `out/${name}`)),
    );
    expect(troubles).toEqual([undefined, undefined, undefined]);
    expect(names(parent)).toEqual(['a', 'b', 'c']);
    for (const name of ['a', 'b', 'c']) {
      const texts = readdirSync(path.join(parent, name)).map((file) => read(parent, name, file));
      expect(texts).toEqual(Array(40).fill(name));
    }
  });

  it('of one house, by two programs, leave one of the two, whole, and nothing beside it', async () => {
    const parent = freshFolder();
    await replace(parent, 'old');
    const module = new URL('../../dist/archive/replace-folder.js', import.meta.url).href;
    const script = (letter: string): string => `
      import { recover, replaceFolder } from ${JSON.stringify(module)};
      const files = Array.from({ length: 60 }, (_, i) => ({ path: i + '.txt', text: '${letter}'.repeat(2000) }));
      for (let n = 0; n < 15; n++) {
        await recover(${JSON.stringify(parent)});
        await replaceFolder(${JSON.stringify(parent)}, 'house', files, 'out/house');
      }`;
    const { spawn } = await import('node:child_process');
    const end = (letter: string): Promise<number | null> =>
      new Promise((resolve) => {
        spawn(process.execPath, ['--input-type=module', '-e', script(letter)], { stdio: 'ignore' }).on(
          'exit',
          resolve,
        );
      });
    const ends = await Promise.all([end('a'), end('b')]);
    expect(ends.every((status) => status === 0)).toBe(true);
    await recover(parent, 'house');
    expect(names(parent)).toEqual(['house']);
    const texts = new Set(readdirSync(path.join(parent, 'house')).map((file) => read(parent, 'house', file)));
    expect(readdirSync(path.join(parent, 'house'))).toHaveLength(60);
    expect(texts.size).toBe(1);
    rmSync(parent, { recursive: true });
  });
});
