/** A bag with any byte changed is answered, never with a crash; and no changed payload passes for whole. */
import { cpSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { freshFolder, messages, PAYLOAD, removeFolders, verify, written } from '../tools/made-bags.js';

afterAll(removeFolders);

const RUNS = 150;

interface Change {
  /** Where, in millionths of the bytes. */
  readonly at: number;
  readonly what: 'flip' | 'insert' | 'remove' | 'cut' | 'zeros';
  readonly byte: number;
}

const change = fc.record<Change>({
  at: fc.nat({ max: 999_999 }),
  what: fc.constantFrom('flip', 'insert', 'remove', 'cut', 'zeros'),
  byte: fc.integer({ min: 1, max: 255 }),
});

function mutate(bytes: Buffer, { at, what, byte }: Change): Buffer {
  const index = Math.floor((at * bytes.length) / 1e6);
  const [before, after] = [bytes.subarray(0, index), bytes.subarray(index)];
  switch (what) {
    case 'flip':
      return Buffer.concat([before, Buffer.from([(after[0] ?? 0) ^ byte]), after.subarray(1)]);
    case 'insert':
      return Buffer.concat([before, Buffer.from([byte]), after]);
    case 'remove':
      return Buffer.concat([before, after.subarray(1)]);
    case 'cut':
      return before;
    case 'zeros':
      return Buffer.concat([before, Buffer.alloc(Math.min(after.length, byte)), after.subarray(byte)]);
  }
}

let folder: string;
const packed: Record<'zip' | 'tar', Buffer> = { zip: Buffer.alloc(0), tar: Buffer.alloc(0) };

beforeAll(async () => {
  folder = await written(freshFolder());
  // Large enough that a change at random falls into a file about every second time.
  const files = { ...PAYLOAD, 'originals/notes.txt': 'notes '.repeat(1000) };
  for (const form of ['zip', 'tar'] as const)
    packed[form] = readFileSync(await written(freshFolder(), { form, files }));
});

describe('a bag that was changed', () => {
  it('in a file of it is never whole, and the file is named', async () => {
    const files = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) => {
      const found = statSync(path.join(folder, name));
      return found.isFile() && found.size > 0;
    });
    expect(files).toHaveLength(9);
    await fc.assert(
      fc.asyncProperty(fc.constantFrom(...files), change, async (name, how) => {
        const copy = path.join(freshFolder(), 'bag');
        cpSync(folder, copy, { recursive: true });
        const was = readFileSync(path.join(folder, name));
        const is = mutate(was, how);
        fc.pre(!is.equals(was));
        writeFileSync(path.join(copy, name), is);
        const report = await verify(copy);
        // Its digests may be written in capitals, its line ends in three ways.
        if (name === 'tagmanifest-sha256.txt') return;
        expect(report.verdict).not.toBe('whole');
        expect(messages(report, 'error').join('\n')).toContain(name);
      }),
      { numRuns: RUNS },
    );
  });

  it('in its last list is answered', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(change, { minLength: 1, maxLength: 5 }), async (changes) => {
        const copy = path.join(freshFolder(), 'bag');
        cpSync(folder, copy, { recursive: true });
        const list = path.join(copy, 'tagmanifest-sha256.txt');
        writeFileSync(list, changes.reduce(mutate, readFileSync(list)));
        const report = await verify(copy);
        expect(['whole', 'differs', 'no-bag']).toContain(report.verdict);
        if (report.verdict !== 'whole') expect(report.diagnostics.length).toBeGreaterThan(0);
      }),
      { numRuns: RUNS },
    );
  });

  it.each(['zip', 'tar'] as const)(
    'as a %s is answered, and whole only if all its files are',
    async (form) => {
      const file = path.join(freshFolder(), `bag.${form}`);
      const verdicts = new Set<string>();
      writeFileSync(file, packed[form]);
      const sound = await verify(file);
      await fc.assert(
        fc.asyncProperty(fc.array(change, { minLength: 1, maxLength: 2 }), async (changes) => {
          writeFileSync(file, changes.reduce(mutate, packed[form]));
          const report = await verify(file);
          verdicts.add(report.verdict);
          if (report.verdict === 'whole')
            expect([report.files, report.bytes]).toEqual([sound.files, sound.bytes]);
          else expect(messages(report, 'error').length).toBeGreaterThan(0);
        }),
        { numRuns: RUNS * 2 },
      );
      // It reached more than the first check.
      expect(verdicts).toContain('differs');
      expect(verdicts).toContain('no-bag');
    },
  );

  it('into any heap of bytes is answered', async () => {
    const folder = freshFolder();
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom('bag.zip', 'bag.tar', 'bag.tar.age', 'bag.zip.age'),
        fc.uint8Array({ maxLength: 3000 }),
        async (name, bytes) => {
          const file = path.join(folder, name);
          writeFileSync(file, bytes);
          expect((await verify(file, { passphrase: 'x' })).verdict).toBe('no-bag');
        },
      ),
      { numRuns: RUNS },
    );
  });

  it('into tag files of any text is answered', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom(
          'manifest-sha256.txt',
          'manifest-md5.txt',
          'bag-info.txt',
          'fetch.txt',
          'tagmanifest-sha512.txt',
        ),
        fc.string({ unit: 'binary', maxLength: 400 }),
        async (name, text) => {
          const copy = path.join(freshFolder(), 'bag');
          cpSync(folder, copy, { recursive: true });
          writeFileSync(path.join(copy, name), text);
          const report = await verify(copy);
          expect(report.verdict).not.toBe('no-bag');
        },
      ),
      { numRuns: RUNS },
    );
  });
});
