/** A writer's file is replaced in one step, and what it was stays beside it. */
import {
  chmodSync,
  chownSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { replaceFile } from '../../src/archive/replace-file.js';

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
const WORDS = { shown: 'content/h/house.yaml', reason: 'before-photos' } as const;

function house(text = 'old'): string {
  const folder = mkdtempSync(path.join(tmpdir(), 'replace-file-'));
  writeFileSync(path.join(folder, 'house.yaml'), text);
  return folder;
}
const read = (...parts: string[]): string => readFileSync(path.join(...parts), 'utf8');
const names = (folder: string): string[] => readdirSync(folder).sort();

describe('a file is replaced', () => {
  it('and a copy of what it was lies beside it; nothing else does', async () => {
    const folder = house();
    const done = await replaceFile(folder, 'house.yaml', bytes('old'), bytes('new'), WORDS);
    expect(done).toEqual({ ok: true, copy: 'house.yaml.before-photos' });
    expect([read(folder, 'house.yaml'), read(folder, 'house.yaml.before-photos')]).toEqual(['new', 'old']);
    expect(names(folder)).toEqual(['house.yaml', 'house.yaml.before-photos']);
  });

  it('a second time, with a copy of its own', async () => {
    const folder = house();
    await replaceFile(folder, 'house.yaml', bytes('old'), bytes('new'), WORDS);
    const done = await replaceFile(folder, 'house.yaml', bytes('new'), bytes('newer'), WORDS);
    expect(done).toEqual({ ok: true, copy: 'house.yaml.before-photos-2' });
    expect(read(folder, 'house.yaml.before-photos')).toBe('old');
    expect(read(folder, 'house.yaml.before-photos-2')).toBe('new');
  });

  it('and keeps who may read and write it', async () => {
    const folder = house();
    chmodSync(path.join(folder, 'house.yaml'), 0o664);
    await replaceFile(folder, 'house.yaml', bytes('old'), bytes('new'), WORDS);
    expect(statSync(path.join(folder, 'house.yaml')).mode & 0o777).toBe(0o664);
  });

  it('and stays whose it was: of somebody who is not root, the writer’s own', async () => {
    const folder = house();
    const owner = process.getuid?.() === 0 ? 65534 : process.getuid?.();
    if (owner === 65534) chownSync(path.join(folder, 'house.yaml'), 65534, 65534);
    await replaceFile(folder, 'house.yaml', bytes('old'), bytes('new'), WORDS);
    const [file, copy] = ['house.yaml', 'house.yaml.before-photos'].map((name) =>
      statSync(path.join(folder, name)),
    );
    expect([file?.uid, copy?.uid]).toEqual([owner ?? 0, owner ?? 0]);
  });

  it('behind a link that stays in the folder, and the link stays', async () => {
    const folder = house();
    mkdirSync(path.join(folder, 'facts'));
    writeFileSync(path.join(folder, 'facts', 'work.txt'), 'old');
    symlinkSync('facts/work.txt', path.join(folder, 'work.yaml'));
    expect(await replaceFile(folder, 'work.yaml', bytes('old'), bytes('new'), WORDS)).toMatchObject({
      ok: true,
    });
    expect([read(folder, 'work.yaml'), read(folder, 'facts', 'work.txt')]).toEqual(['new', 'new']);
  });
});

describe('a file stays as it is', () => {
  it('if it is no longer what was read', async () => {
    const folder = house('changed meanwhile');
    const done = await replaceFile(folder, 'house.yaml', bytes('old'), bytes('new'), WORDS);
    expect(done).toMatchObject({ ok: false, diagnostic: { code: 'archive.facts', file: WORDS.shown } });
    expect(done.ok ? [] : done.diagnostic.hints).toEqual(['type the same command again']);
    expect(names(folder)).toEqual(['house.yaml']);
    expect(read(folder, 'house.yaml')).toBe('changed meanwhile');
  });

  it('if it lies outside the folder', async () => {
    const folder = house();
    const other = house('elsewhere');
    symlinkSync(path.join(other, 'house.yaml'), path.join(folder, 'work.yaml'));
    const done = await replaceFile(folder, 'work.yaml', bytes('elsewhere'), bytes('new'), WORDS);
    expect(done.ok ? '' : done.diagnostic.message).toContain('leads out of the house folder');
    expect([read(other, 'house.yaml'), names(other)]).toEqual(['elsewhere', ['house.yaml']]);
  });

  it('if the new text can’t be written, and no copy is left lying about', async () => {
    const folder = house();
    const inTheWay = `.sillplate-writing-house.yaml-${process.pid}`;
    mkdirSync(path.join(folder, inTheWay));
    const done = await replaceFile(folder, 'house.yaml', bytes('old'), bytes('new'), WORDS);
    expect(done).toMatchObject({ ok: false, diagnostic: { code: 'archive.disk', file: WORDS.shown } });
    expect([names(folder), read(folder, 'house.yaml')]).toEqual([[inTheWay, 'house.yaml'], 'old']);
  });

  it('if it is not there', async () => {
    const done = await replaceFile(house(), 'work.yaml', bytes('old'), bytes('new'), WORDS);
    expect(done).toMatchObject({ ok: false, diagnostic: { code: 'archive.disk' } });
  });
});
