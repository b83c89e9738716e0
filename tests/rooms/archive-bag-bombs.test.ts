/** Lists of a bag that have more lines than any bag: told in a moment, and no memory goes into them. */
import { createHash } from 'node:crypto';
import path from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { freshFolder, layOut, messages, removeFolders, verify } from '../tools/made-bags.js';

afterAll(removeFolders);

const digest = createHash('sha256').update('a').digest('hex');

const bagWith = (changes: Readonly<Record<string, string>>): string =>
  layOut(path.join(freshFolder(), 'bag'), {
    'bagit.txt': 'BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n',
    'data/a.txt': 'a',
    'manifest-sha256.txt': `${digest}  data/a.txt\n`,
    ...changes,
  });

describe('a bag', () => {
  it.each(['manifest-sha256.txt', 'fetch.txt', 'bag-info.txt'])(
    'with twenty million lines in %s is refused',
    async (name) => {
      const bag = bagWith({ [name]: 'x\n'.repeat(20_000_000) });
      const [cpu, memory] = [process.cpuUsage(), process.memoryUsage().rss];
      const report = await verify(bag);
      const { user, system } = process.cpuUsage(cpu);
      expect(report.verdict).toBe('no-bag');
      expect(messages(report).join()).toContain(`has a ${name} of more than 100,000 lines`);
      expect((user + system) / 1000).toBeLessThan(5_000);
      expect(process.memoryUsage().rss - memory).toBeLessThan(500 * 2 ** 20);
    },
  );

  it('in which 20,000 files are missing has 10,000 of them listed, and differs', async () => {
    const lines = Array.from({ length: 20_000 }, (_, n) => `${digest}  data/${n}.txt\n`);
    const report = await verify(
      bagWith({ 'manifest-sha256.txt': `${digest}  data/a.txt\n${lines.join('')}` }),
    );
    expect(report.verdict).toBe('differs');
    const told = messages(report, 'error');
    expect(told).toHaveLength(10_001);
    expect(told.at(-1)).toContain('more things differ, and are not listed');
  });

  it('with one line of 20 million signs in its manifest is told', async () => {
    const report = await verify(bagWith({ 'manifest-sha256.txt': 'a'.repeat(20_000_000) }));
    expect(report.verdict).toBe('differs');
    expect(messages(report, 'error').join()).toContain('line 1 of manifest-sha256.txt is no digest and path');
  });
});
