/** What killed programs, other programs and odd clocks leave does not keep the next one from its work, nor from being right. */
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, describe, expect, it, vi } from 'vitest';
import { beginFolder } from '../../src/archive/begin-folder.js';
import { bytesOf } from '../../src/archive/file-digest.js';
import { alone, dropLeft } from '../../src/archive/folder-lock.js';
import { replaceFolder } from '../../src/archive/replace-folder.js';
import { keepCopy } from '../../src/archive/write-whole.js';
import { workbookBytes } from '../../src/archive/write-workbook.js';
import { lookAtFacts, mustBeAsRead } from '../../src/as-it-was-read.js';

const scratch = mkdtempSync(path.join(tmpdir(), 'writing-faults-'));
afterAll(() => rmSync(scratch, { recursive: true, force: true }));
const fresh = (): string => mkdtempSync(path.join(scratch, 'one-'));
const dead = spawnSync(process.execPath, ['-e', '']).pid;

describe('a lock', () => {
  it('of a program that was killed is taken over, and nothing of it is left', async () => {
    const parent = fresh();
    for (const name of ['.sillplate-lock-a', `.sillplate-lock-a.${dead}`, '.sillplate-lock-a.clearing'])
      writeFileSync(path.join(parent, name), String(dead));
    expect(await alone(parent, 'a', async () => 'done')).toBe('done');
    expect(readdirSync(parent)).toEqual([]);
  });

  it.skipIf(process.platform !== 'linux')(
    'of another program that had our number before is taken over',
    async () => {
      const parent = fresh();
      // And one that says no more than a number, as may come with a folder from elsewhere: something always has that number.
      for (const held of [`${process.pid} 1`, String(process.pid), '1']) {
        writeFileSync(path.join(parent, '.sillplate-lock-a'), held);
        expect(await alone(parent, 'a', async () => 'done')).toBe('done');
      }
    },
  );

  it('of a killed run is taken away by a run that needs none; one that is held stays', async () => {
    const parent = fresh();
    const lock = path.join(parent, '.sillplate-lock-a');
    for (const name of [lock, `${lock}.${dead}`, `${lock}.clearing`]) writeFileSync(name, String(dead));
    await dropLeft(parent, 'a');
    expect(readdirSync(parent)).toEqual([]);
    await alone(parent, 'a', async () => {
      await dropLeft(parent, 'a');
      expect(readdirSync(parent)).toEqual(['.sillplate-lock-a']);
    });
    await dropLeft(path.join(parent, 'not-there'), 'a');
  });

  it('lets one work at a time, also when all find the same dead lock', async () => {
    const parent = fresh();
    writeFileSync(path.join(parent, '.sillplate-lock-a'), String(dead));
    let inside = 0;
    let most = 0;
    await Promise.all(
      Array.from({ length: 20 }, () =>
        alone(parent, 'a', async () => {
          most = Math.max(most, ++inside);
          await new Promise((resolve) => setTimeout(resolve, 2));
          inside--;
        }),
      ),
    );
    expect(most).toBe(1);
  });
});

describe('a folder that is replaced', () => {
  it('is asked for what it keeps when nobody else replaces it, and stays if the new one may not be put there', async () => {
    const parent = fresh();
    const put = (text: string) => replaceFolder(parent, 'house', [{ path: 'a', text }], 'out/house');
    await put('old');
    const refused = replaceFolder(
      parent,
      'house',
      async () => [{ path: 'a', text: readFileSync(path.join(parent, 'house', 'a'), 'utf8') }],
      'out/house',
      async () => {
        throw new RangeError('another state');
      },
    );
    await expect(refused).rejects.toThrow('another state');
    expect(readFileSync(path.join(parent, 'house', 'a'), 'utf8')).toBe('old');
    expect(readdirSync(parent)).toEqual(['house']);
  });
});

describe('a house that is read', () => {
  it('is told to have changed by the file that did; what no packet is made of may change', async () => {
    const folder = fresh();
    mkdirSync(path.join(folder, 'photos'));
    writeFileSync(path.join(folder, 'house.yaml'), 'house:\n');
    const before = await lookAtFacts(folder);
    writeFileSync(path.join(folder, 'photos', 'film.mov'), 'x');
    await mustBeAsRead(folder, before);
    writeFileSync(path.join(folder, 'house.yaml'), 'house: {}\n');
    await expect(mustBeAsRead(folder, before)).rejects.toThrow('house.yaml was changed');
  });

  it.skipIf(process.platform === 'win32')(
    'is not waited for where a pipe lies in a file’s place',
    async () => {
      const pipe = path.join(fresh(), 'house.yaml');
      execFileSync('mkfifo', [pipe]);
      await expect(bytesOf(pipe)).rejects.toThrow('was changed while it was being read');
    },
  );
});

describe('a copy of what was there', () => {
  it('gets a name of its own, but for one that holds the same since a killed run', async () => {
    const folder = fresh();
    const copy = path.join(folder, 'costs.csv.before-import');
    const like = { mode: 0o640, uid: process.getuid?.() ?? 0, gid: process.getgid?.() ?? 0 };
    const names = [];
    for (const text of ['one', 'one', 'two', 'two'])
      names.push(path.basename((await keepCopy(copy, Buffer.from(text), like)).copy));
    const [first, second] = ['costs.csv.before-import', 'costs.csv.before-import-2'];
    expect(names).toEqual([first, first, second, second]);
    expect(readdirSync(folder).sort()).toEqual([first, second]);
    expect(readFileSync(copy, 'utf8')).toBe('one');
  });
});

describe('a house that is begun', () => {
  it('goes on where a killed run left empty folders, and never into one that holds something', async () => {
    const folder = path.join(fresh(), 'my-house');
    mkdirSync(path.join(folder, 'photos'), { recursive: true });
    writeFileSync(path.join(folder, `.sillplate-writing-house.yaml-${dead}`), 'hou');
    expect(await beginFolder(folder, 'house:\n')).toBe(true);
    expect(readdirSync(folder).sort()).toEqual(['documents', 'house.yaml', 'photos']);
    expect(await beginFolder(folder, 'other')).toBe(false);
    expect(readFileSync(path.join(folder, 'house.yaml'), 'utf8')).toBe('house:\n');
  });
});

describe('a clock that is far off', () => {
  it.each(['1970-01-02', '2199-01-01'])('(%s) does not keep a workbook from being packed', async (day) => {
    const sheets = [
      { name: 'a', columns: [{ title: 't', width: 5, holds: 'text' as const }], rows: [['x']] },
    ];
    const right = await workbookBytes({ sheets });
    vi.useFakeTimers({ toFake: ['Date'], now: new Date(day) });
    try {
      expect(await workbookBytes({ sheets })).toEqual(right);
    } finally {
      vi.useRealTimers();
    }
  });
});
