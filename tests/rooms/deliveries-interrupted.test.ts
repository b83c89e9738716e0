/** Deliveries that are killed, raced or short of room: what was delivered before is untouched, and no half is taken for one. */
import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { lookAtDelivery } from '../../src/archive/verify-delivery.js';
import { readDeliveries } from '../../src/intake/read-deliveries.js';
import { typed } from '../tools/gallery.js';
import { fingerprint, runProgram, SMALL_HOUSE, scratchFolder, start, writeHouse } from './cli-program.js';

const scratch = scratchFolder();
afterAll(() => rmSync(scratch, { recursive: true, force: true }));

const wordsFor = (home: string, to: string, day: string): string[] => [
  'deliver',
  home,
  '--edition',
  'agent',
  '--to',
  to,
  '--as-of',
  day,
  '--on',
  day,
  '--out',
  path.join(scratch, 'out'),
];
const deliveriesOf = (home: string): string => path.join(home, 'deliveries');
const named = (home: string): string[] =>
  existsSync(deliveriesOf(home))
    ? readdirSync(deliveriesOf(home)).filter((name) => !name.startsWith('.'))
    : [];

/** The same sequence in every run (Numerical Recipes' quick generator, from memory). */
function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

describe('a delivery that is killed', () => {
  it('at sixteen moments leaves what was there and nothing that is half a delivery', {
    timeout: 240_000,
  }, async () => {
    const home = writeHouse(scratch, 'killed');
    expect((await runProgram(wordsFor(home, 'first', '2026-06-01'))).status).toBe(0);
    const [first = ''] = named(home);
    const before = fingerprint(path.join(deliveriesOf(home), first));
    const begun = performance.now();
    expect((await runProgram(wordsFor(home, 'timed', '2026-06-02'))).status).toBe(0);
    const whole = performance.now() - begun;
    const random = seeded(20261126);
    let killed = 0;
    for (let n = 0; n < 16; n++) {
      const had = named(home).length;
      const child = start(wordsFor(home, `person ${n}`, `2026-07-${String((n % 28) + 1).padStart(2, '0')}`));
      const ended = new Promise<void>((resolve) => child.on('close', () => resolve()));
      // Half of the moments anywhere, half as soon as something is being written and a little later.
      const moment =
        n % 2 === 0
          ? new Promise((resolve) => setTimeout(resolve, random() * whole))
          : (async () => {
              const wait = random() * 25;
              while (
                child.exitCode === null &&
                !readdirSync(deliveriesOf(home)).some((name) => name.startsWith('.sillplate-making-'))
              )
                await new Promise((resolve) => setTimeout(resolve, 1));
              await new Promise((resolve) => setTimeout(resolve, wait));
            })();
      await Promise.race([moment, ended]);
      child.kill('SIGKILL');
      await ended;
      if (child.signalCode === 'SIGKILL') killed += 1;
      expect(named(home).length - had).toBeLessThanOrEqual(1);
      const { deliveries, diagnostics } = await readDeliveries(home, 'killed');
      expect(diagnostics).toEqual([]);
      expect(deliveries).toHaveLength(named(home).length);
    }
    expect(killed, 'most were killed before they ended').toBeGreaterThan(8);
    for (const name of named(home)) {
      const folder = path.join(deliveriesOf(home), name);
      // Also those whose program was killed after the last step.
      expect((await lookAtDelivery(folder)).differs, name).toEqual([]);
    }
    expect(fingerprint(path.join(deliveriesOf(home), first))).toBe(before);
    // The next one clears what was left.
    expect((await runProgram(wordsFor(home, 'last', '2026-08-01'))).status).toBe(0);
    expect(readdirSync(deliveriesOf(home)).filter((name) => name.startsWith('.'))).toEqual([]);
  });
});

describe('two deliveries at once', () => {
  it('take turns, each with a number of its own, and the second knows the first', {
    timeout: 120_000,
  }, async () => {
    const home = writeHouse(scratch, 'raced');
    const ended = await Promise.all(
      ['a', 'b', 'c'].map((to, n) => runProgram(wordsFor(home, to, `2026-06-0${n + 1}`))),
    );
    for (const { status, error } of ended)
      if (status !== 0) expect(error).toMatch(/archive\.delivery[\s\S]*same command again/u);
    const done = ended.filter(({ status }) => status === 0).length;
    expect(done).toBeGreaterThan(0);
    const { deliveries, diagnostics } = await readDeliveries(home, 'raced');
    expect(diagnostics).toEqual([]);
    expect(deliveries.map(({ record }) => record.number)).toEqual(
      Array.from({ length: done }, (_, n) => n + 1),
    );
    for (const { folder } of deliveries) expect((await lookAtDelivery(folder)).differs).toEqual([]);
  });

  it('of one packet on one day get two names', { timeout: 120_000 }, async () => {
    const home = writeHouse(scratch, 'same-name');
    await Promise.all(['a', 'b'].map((to) => runProgram(wordsFor(home, to, '2026-06-01'))));
    expect(named(home).sort()).toEqual([
      expect.stringMatching(/-[0-9a-f]{8}$/u),
      expect.stringMatching(/-2$/u),
    ]);
  });
});

describe('a disk', () => {
  it('that is full keeps the delivery from being made, and nothing is left of it', async (ctx) => {
    const disk = path.join(scratch, 'disk');
    mkdirSync(disk);
    try {
      execFileSync('mount', ['-t', 'tmpfs', '-o', 'size=300k', 'tmpfs', disk], { stdio: 'ignore' });
    } catch {
      return ctx.skip('a small disk can only be mounted by root, where mounting is allowed');
    }
    try {
      const home = writeHouse(disk, 'full');
      const { said, status } = await typed(wordsFor(home, 'somebody', '2026-06-01'));
      expect(said).toContain('archive.delivery');
      expect(said).toContain('the disk is full');
      expect(status).toBe(1);
      expect(readdirSync(deliveriesOf(home))).toEqual([]);
      expect(readFileSync(path.join(home, 'house.yaml'), 'utf8')).toBe(SMALL_HOUSE);
    } finally {
      execFileSync('umount', [disk], { stdio: 'ignore' });
    }
  });

  it('is never asked to put anything over what is there', async () => {
    const home = writeHouse(scratch, 'taken');
    expect((await typed(wordsFor(home, 'a', '2026-06-01'))).status).toBe(0);
    const [first = ''] = named(home);
    // Somebody put a folder of their own where the next would lie.
    mkdirSync(path.join(deliveriesOf(home), `${first}-2`));
    writeFileSync(path.join(deliveriesOf(home), `${first}-2`, 'mine.txt'), 'mine');
    expect((await typed(wordsFor(home, 'b', '2026-06-01'))).status).toBe(0);
    expect(named(home).sort()).toEqual([first, `${first}-2`, `${first}-3`]);
    expect(readdirSync(path.join(deliveriesOf(home), `${first}-2`))).toEqual(['mine.txt']);
  });
});
