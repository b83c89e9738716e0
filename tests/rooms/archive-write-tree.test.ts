/** A tree of files is written whole: also a text of many megabytes, and none of its characters cut in two. */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { writeTree } from '../../src/archive/write-tree.js';

let root: string;
beforeAll(() => {
  root = mkdtempSync(path.join(tmpdir(), 'sillplate-tree-'));
});
afterAll(() => rmSync(root, { recursive: true, force: true }));

describe('a text', () => {
  it.each([
    ['empty', ''],
    ['short', 'a wrench 🔧\n'],
    ['of exactly one piece', 'x'.repeat(500_000)],
    ['with a pair where a piece ends', `${'x'.repeat(499_999)}🔧${'y'.repeat(1_500_000)}`],
    ['of pairs alone', '🔧'.repeat(1_200_000)],
  ])('%s is written letter for letter', async (name, text) => {
    await writeTree(path.join(root, name), [{ path: 'deep/file.txt', text }]);
    expect(readFileSync(path.join(root, name, 'deep/file.txt'), 'utf8') === text).toBe(true);
  });
});
