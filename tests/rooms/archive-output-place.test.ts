import { mkdirSync, mkdtempSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { placeTrouble } from '../../src/archive/output-place.js';

const EDITIONS = ['agent', 'visit', 'buyer', 'care', 'file'];

function folders(): { root: string; house: string } {
  const root = mkdtempSync(path.join(tmpdir(), 'sillplate-place-'));
  const house = path.join(root, 'content', 'quarry-road');
  mkdirSync(house, { recursive: true });
  writeFileSync(path.join(house, 'house.yaml'), 'house: {}');
  return { root, house };
}

const codeOf = async (target: string, house: string): Promise<string | undefined> =>
  (await placeTrouble(target, house, EDITIONS, 'shown'))?.code;

describe('where packets may go', () => {
  it('is a folder of its own, there or not there yet', async () => {
    const { root, house } = folders();
    expect(await codeOf(path.join(root, 'out', 'quarry-road'), house)).toBeUndefined();
    mkdirSync(path.join(root, 'out', 'quarry-road', 'buyer'), { recursive: true });
    expect(await codeOf(path.join(root, 'out', 'quarry-road'), house)).toBeUndefined();
  });

  it('is never the house folder, above it or below it, nor a link to it', async () => {
    const { root, house } = folders();
    expect(await codeOf(house, house)).toBe('archive.place');
    expect(await codeOf(path.join(root, 'content'), house)).toBe('archive.place');
    expect(await codeOf(path.join(house, 'photos', 'quarry-road'), house)).toBe('archive.place');
    symlinkSync(path.join(root, 'content'), path.join(root, 'link'));
    expect(await codeOf(path.join(root, 'link', 'quarry-road'), house)).toBe('archive.place');
  });

  it('holds nothing that this program did not make', async () => {
    const { root, house } = folders();
    const target = path.join(root, 'out', 'quarry-road');
    mkdirSync(path.join(target, 'buyer'), { recursive: true });
    writeFileSync(path.join(target, 'notes.txt'), 'mine');
    const trouble = await placeTrouble(target, house, EDITIONS, 'out/quarry-road');
    expect(trouble?.code).toBe('archive.place');
    expect(trouble?.message).toContain('notes.txt');
  });
});
