/** What lies in out/ is whole, whatever happens to a build. */
import { cpSync, existsSync, mkdirSync, readdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { typed } from '../tools/gallery.js';
import { fingerprint, runProgram, SMALL_HOUSE, scratchFolder, start, writeHouse } from './cli-program.js';

const scratch = scratchFolder();
afterAll(() => rmSync(scratch, { recursive: true, force: true }));
const out = path.join(scratch, 'out');
const made = path.join(out, 'test-lane');
const home = writeHouse(scratch, 'test-lane');
const words = (asOf: string): string[] => [
  'build',
  home,
  '--edition',
  'agent',
  '--as-of',
  asOf,
  '--out',
  out,
];

describe('a build that fails', () => {
  it('leaves the earlier output as it was', async () => {
    const kept = path.join(scratch, 'kept');
    const house = writeHouse(scratch, 'failing');
    const order = ['build', house, '--edition', 'agent', '--as-of', '2026-11-20', '--out', kept];
    expect((await typed(order)).status).toBe(0);
    const before = fingerprint(kept);
    expect(before).toContain('failing/agent/index.html');
    writeFileSync(path.join(house, 'house.yaml'), SMALL_HOUSE.replace('2001', '2001-13'));
    const { said, status } = await typed(order);
    expect(status).toBe(1);
    expect(said).toContain('Nothing was written; what was there before is as it was.');
    expect(fingerprint(kept)).toBe(before);
  });
});

describe('a build that is killed', () => {
  const whole = new Map<string, string | undefined>();

  beforeAll(async () => {
    for (const asOf of ['2026-11-21', '2026-11-20']) {
      expect((await runProgram(words(asOf))).status).toBe(0);
      whole.set(asOf, fingerprint(made));
      cpSync(made, path.join(scratch, asOf), { recursive: true });
    }
    expect(new Set(whole.values()).size, 'the two days can be told apart').toBe(2);
  });

  /** Kills a build of 21 November over that of the 20th when `moment` has come. */
  async function killed(moment: () => Promise<unknown>): Promise<void> {
    rmSync(made, { recursive: true, force: true });
    cpSync(path.join(scratch, '2026-11-20'), made, { recursive: true });
    const child = start(words('2026-11-21'));
    const ended = new Promise<void>((resolve) => child.on('close', () => resolve()));
    await Promise.race([moment(), ended]);
    child.kill('SIGKILL');
    await ended;
    const left = fingerprint(made);
    // Between the two renames the folder bears its other name; it is never there in part.
    if (left === undefined)
      expect(fingerprint(path.join(out, '.sillplate-old-test-lane'))).toBe(whole.get('2026-11-20'));
    else expect([...whole.values()]).toContain(left);
    // The next run puts things right and clears what was being made.
    expect((await runProgram(words('2026-11-21'))).status).toBe(0);
    expect(fingerprint(made)).toBe(whole.get('2026-11-21'));
    expect(readdirSync(out).filter((name) => /^\.sillplate-/.test(name))).toEqual([]);
  }

  const afterMs = (ms: number) => () => new Promise((resolve) => setTimeout(resolve, ms));
  const seen = (begin: string) => async (): Promise<void> => {
    while (!existsSync(out) || !readdirSync(out).some((name) => name.startsWith(begin)))
      await new Promise((resolve) => setTimeout(resolve, 1));
  };

  it.each([
    ['while it starts', afterMs(150)],
    ['while it works', afterMs(1200)],
    ['as soon as it writes', seen('.sillplate-making-')],
    ['as soon as the earlier output is set aside', seen('.sillplate-old-')],
  ] as const)('%s', (_name, moment) => killed(moment));

  it('between the two renames, is left alone by a build of another house, and put back even by a build that fails', async () => {
    const old = path.join(out, '.sillplate-old-test-lane');
    renameSync(made, old);
    const other = writeHouse(scratch, 'other');
    expect(
      (await typed(['build', other, '--edition', 'agent', '--as-of', '2026-11-20', '--out', out])).status,
    ).toBe(0);
    expect(fingerprint(old)).toBe(whole.get('2026-11-21'));
    const broken = path.join(scratch, 'broken', 'test-lane');
    mkdirSync(broken, { recursive: true });
    writeFileSync(path.join(broken, 'house.yaml'), 'house: [');
    expect((await typed(['build', broken, '--as-of', '2026-11-20', '--out', out])).status).toBe(1);
    expect(fingerprint(made)).toBe(whole.get('2026-11-21'));
    expect(existsSync(old)).toBe(false);
  });
});
