/** Thousands of equal rows of a bank take time in proportion to their number, whatever stands in the house already. */
import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { costsImportCommand } from '../../src/command-costs.js';
import { OpenCosts, SeenTwins } from '../../src/import-matching.js';
import { Queues } from '../../src/import-queues.js';
import type { KnownCost } from '../../src/intake/bank-costs.js';
import type { BankRow } from '../../src/intake/bank-rows.js';
import type { SeenRow } from '../../src/intake/seen-rows.js';
import { quietProgress } from '../tools/quiet-progress.js';
import { SMALL_HOUSE, scratchFolder } from './cli-program.js';

const scratch = scratchFolder();
afterAll(() => rmSync(scratch, { recursive: true, force: true }));

const HEAD = 'Date,Description,Amount\n';
const COSTS = 'date,payee,what,amount,bucket\n';

interface Taken {
  readonly ms: number;
  readonly said: string;
}

/** Imports some files one after the other into one house, and answers with the processor time of the last. */
async function imported(name: string, files: readonly string[], costs?: string): Promise<Taken> {
  const folder = path.join(scratch, name, 'mill-lane');
  mkdirSync(folder, { recursive: true });
  writeFileSync(path.join(folder, 'house.yaml'), SMALL_HOUSE);
  if (costs !== undefined) writeFileSync(path.join(folder, 'costs.csv'), costs);
  let taken: Taken = { ms: 0, said: '' };
  for (const [index, text] of files.entries()) {
    const file = path.join(scratch, name, `bank-${index}.csv`);
    writeFileSync(file, text);
    let said = '';
    const write = (more: string): void => {
      said += more;
    };
    const before = process.cpuUsage();
    const status = await costsImportCommand(
      file,
      folder,
      { content: path.dirname(folder), yes: true },
      { out: write, error: write, colour: false, progress: quietProgress },
      undefined,
    );
    const { user, system } = process.cpuUsage(before);
    expect(status, said).toBe(0);
    taken = { ms: (user + system) / 1000, said };
  }
  return taken;
}

const FEW = 3_000;
const rows = (text: string, n: number): string => HEAD + `2026-03-09,${text},-10.50\n`.repeat(n);

const CASES: readonly [
  what: string,
  of: (n: number) => [files: readonly string[], costs?: string],
  said: string,
][] = [
  ['for the first time', (n) => [[rows('STORE', n)]], 'added to'],
  ['a second time', (n) => [[rows('STORE', n), rows('STORE', n)]], 'imported before'],
  [
    'beside as many that were imported with another text',
    (n) => [[rows('STORE', n), rows('DEPOT 14', n)]],
    'more that may stand there already',
  ],
  [
    'that stand in the costs already, typed by hand',
    (n) => [[rows('STORE', n)], COSTS + '2026-03-08,Store,paint,10.50,repair\n'.repeat(n)],
    'in the costs already',
  ],
  [
    'beside as many of one payee with several buckets',
    (n) => [
      [rows('STORE', n)],
      COSTS + '2026-01-08,Store,x,10.50,repair\n2026-01-08,Store,x,10.50,improvement\n'.repeat(n / 2),
    ],
    'paid for several things before',
  ],
];

describe('equal rows', () => {
  it.each(CASES)('%s: four times as many take less than eight times as long', async (what, of, said) => {
    const name = what.replace(/[^a-z]+/gu, '-');
    // What is loaded and compiled with the first import is no part of it.
    await imported(`${name}-0`, ...of(20));
    const few = await imported(`${name}-1`, ...of(FEW));
    const many = await imported(`${name}-4`, ...of(4 * FEW));
    expect(many.said).toContain(said);
    expect(many.ms).toBeLessThan(8 * few.ms);
  });
});

describe('thousands of names', () => {
  it('of one day and amount are not all held against one another', () => {
    const name = (n: number): string => [...String(n)].map((digit) => 'abcdefghij'[Number(digit)]).join('');
    const seen = Array.from(
      { length: 5_000 },
      (_, n): SeenRow => ({
        date: '2026-03-09',
        cents: 1050,
        text: `Depot ${name(n)}`,
        reference: '',
        nth: 1,
        became: 'left-out',
        payee: '',
      }),
    );
    const twins = new SeenTwins(seen, new Map(), () => false);
    const before = process.cpuUsage();
    for (let n = 0; n < 1_000; n++) twins.find(bankRow(`Lumber ${name(n)}`));
    const { user, system } = process.cpuUsage(before);
    // All five thousand for each would take over ten seconds.
    expect((user + system) / 1000).toBeLessThan(5_000);
  });
});

const bankRow = (text: string, more: Partial<BankRow> = {}): BankRow => ({
  row: 1,
  date: '2026-03-09',
  cents: 1050,
  text,
  memo: '',
  reference: '',
  paid: undefined,
  ...more,
});

describe('of several rows of the costs', () => {
  const cost = (row: number, date: string, payee: string): KnownCost => ({
    row,
    date,
    payee,
    what: '',
    cents: 1050,
    bucket: 'repair',
    place: undefined,
  });

  it('the sure one comes before one that may be it, then the nearest, then the uppermost', () => {
    const open = new OpenCosts([
      cost(2, '2026-03-06', 'Store'),
      cost(3, '2026-03-10', 'Store'),
      cost(4, '2026-03-08', 'STORE'),
      cost(5, '2026-03-10', 'Store'),
      cost(6, '2026-03-20', 'Store'),
    ]);
    const found: number[] = [];
    for (;;) {
      const one = open.find(bankRow('Store', { paid: 'check' }), 'Store');
      if (one === undefined) break;
      found.push(one.cost.row);
      expect(one.how).toBe(one.cost.row === 6 ? 'maybe' : 'sure');
      open.take(one.cost);
    }
    expect(found).toEqual([3, 4, 5, 2, 6]);
  });

  it('one that a check may have paid has another payee, and is 14 days off at most', () => {
    const open = new OpenCosts([cost(2, '2026-03-23', 'Store'), cost(3, '2026-03-24', 'Store')]);
    const check = bankRow('CHECK 104', { paid: 'check' });
    const found = open.find(check, 'CHECK 104');
    expect([found?.cost.row, found?.how]).toEqual([2, 'maybe']);
    if (found !== undefined) open.take(found.cost);
    expect(open.find(check, 'CHECK 104')).toBeUndefined();
  });
});

describe('a queue', () => {
  it('gives the first that fits, by the order in which all were added, and each once', () => {
    const queues = new Queues<string>();
    for (const one of ['b1', 'a1', 'b2', 'a2']) queues.add(one.slice(0, 1), one);
    const found: (string | undefined)[] = [];
    for (let n = 0; n < 5; n++) {
      const one = queues.find(() => true);
      found.push(one);
      if (one !== undefined) queues.take(one.slice(0, 1), one);
    }
    expect(found).toEqual(['b1', 'a1', 'b2', 'a2', undefined]);
  });
});
