import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, symlinkSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openPlain, readGivenFile, readPlainFile } from '../../src/intake/read-plain-file.js';

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'plain-'));
  writeFileSync(path.join(folder, 'a.txt'), 'abcdef');
  symlinkSync('a.txt', path.join(folder, 'link.txt'));
  execFileSync('mkfifo', [path.join(folder, 'pipe')]);
});
afterAll(() => rmSync(folder, { recursive: true }));

const at = (name: string): string => path.join(folder, name);

describe('a plain file', () => {
  it('is read as a whole, or refused for its length', async () => {
    expect(String(await readPlainFile(at('a.txt'), 6))).toBe('abcdef');
    await expect(readPlainFile(at('a.txt'), 5)).rejects.toMatchObject({ code: 'EFBIG' });
  });

  it('that was named is read up to its limit and one byte more, however long it is', async () => {
    expect(String(await readGivenFile(at('a.txt'), 3))).toBe('abcd');
    expect(String(await readGivenFile(at('a.txt'), 100))).toBe('abcdef');
    writeFileSync(at('long'), '');
    // A file of 3 GB that takes no room; Node holds none larger than 2 GB at once.
    truncateSync(at('long'), 3e9);
    expect(await readGivenFile(at('long'), 1000)).toHaveLength(1001);
  });

  it('is not waited for where it is a pipe, and not followed where no link may be', async () => {
    await expect(openPlain(at('pipe'))).rejects.toMatchObject({ code: 'ENOTFILE' });
    await expect(readGivenFile(at('pipe'), 10)).rejects.toMatchObject({ code: 'ENOTFILE' });
    await expect(openPlain(folder)).rejects.toMatchObject({ code: 'ENOTFILE' });
    await expect(openPlain(at('link.txt'), { noLink: true })).rejects.toMatchObject({ code: 'ELOOP' });
    expect(String(await readPlainFile(at('link.txt')))).toBe('abcdef');
  });
});
