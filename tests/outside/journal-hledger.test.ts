/**
 * Independent check: hledger (GPL-3.0) and ledger (BSD) read the journal, find that it balances, and come to our totals
 * by bucket, to the cent: for 1,000 random ledgers whose texts are meant to be misread, in one file of which each ledger
 * has accounts of its own, and for the demo houses with their sale.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { CostRow } from '../../src/facts/ledger.js';
import { readHouse } from '../../src/intake/read-house.js';
import { journalText } from '../../src/packet/ledger-journal.js';
import { houseFrom } from '../rooms/house-from.js';
import { costRow, costRows, moneyOf, nastyRows, saleOf } from '../rooms/made-ledger.js';
import { lacking } from '../tools/outside-programs.js';

const AS_OF = '2026-11-20';
const LEDGERS = 1_000;
const DEMO_HOUSES = ['quarry-road', 'larkspur-court'];
const content = fileURLToPath(new URL('../../content/', import.meta.url));
const house = houseFrom({ house: { name: 'Test; House | Lane' } });

type Balances = ReadonlyMap<string, bigint>;

/** How each is asked for the balance of every account, one a line. */
const BALANCES = {
  hledger: ['balance', '-N', '--flat', '--empty', '-O', 'csv'],
  ledger: ['balance', '--no-total', '--flat', '--empty', '--format', '"%(account)","%(scrub(amount))"\n'],
} as const;
type Program = keyof typeof BALANCES;

const here = lacking('hledger', 'ledger');

describe.skipIf(here.some)(`the journal${here.words}`, () => {
  let folder = '';
  beforeAll(() => {
    folder = mkdtempSync(path.join(tmpdir(), 'journal-'));
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  /** What a program prints for a journal. Throws, with its words, if it refuses it. */
  function ask(program: Program, journal: string, words: readonly string[]): string {
    const file = path.join(folder, `${program}.journal`);
    writeFileSync(file, journal);
    const { status, stdout, stderr } = spawnSync(program, ['-f', file, ...words], {
      encoding: 'utf8',
      maxBuffer: 2 ** 28,
      env: { ...process.env, LC_ALL: 'C.UTF-8', HOME: folder },
    });
    if (status !== 0 || stderr !== '') throw new Error(`${program} says:\n${stderr.slice(0, 2_000)}`);
    return stdout;
  }

  function balances(program: Program, journal: string): Balances {
    const found = new Map<string, bigint>();
    for (const line of ask(program, journal, BALANCES[program]).split('\n')) {
      const [account = '', amount = ''] = line.split('","').map((cell) => cell.replaceAll('"', '').trim());
      if (amount === '' || account === 'account') continue;
      found.set(account, centsOf(amount));
    }
    return found;
  }

  const programs = Object.keys(BALANCES) as Program[];

  it.each(programs)('of 1,000 random ledgers totals by bucket in %s as here, and balances', (program) => {
    const ledgers = fc.sample(costRows(24), { numRuns: LEDGERS, seed: 2_604 });
    const journal = ledgers
      .map((rows, at) => {
        const own = `apply account ${prefixOf(at)}\n\n`;
        return `${own}${journalText('test-house', house, rows, undefined)}\nend apply account\n\n`;
      })
      .join('');
    const found = balances(program, journal);
    expect([...found.values()].reduce((sum, one) => sum + one, 0n)).toBe(0n);
    const theirs = new Map(
      [...found].filter(([account, cents]) => account.includes(':house:') && cents !== 0n),
    );
    const ours = new Map(
      ledgers.flatMap((rows, at) =>
        moneyOf(house, { costs: rows })
          .totals.filter(({ cents }) => cents !== 0)
          .map(({ bucket, cents }) => [`${prefixOf(at)}:house:${bucket}`, BigInt(cents)] as const),
      ),
    );
    expect(ours.size).toBeGreaterThan(5_000);
    expect(sorted(theirs)).toEqual(sorted(ours));
    // By way of payment, too: nothing went to an account that no row names.
    const ways = new Map<string, bigint>();
    ledgers.forEach((rows, at) => {
      for (const row of rows) {
        const account = `${prefixOf(at)}:paid:${row.paid ?? 'not-told'}`;
        ways.set(account, (ways.get(account) ?? 0n) - BigInt(row.cents));
      }
    });
    const paid = [...found].filter(([account]) => !account.includes(':house:'));
    expect(sorted(new Map(paid.filter(([, cents]) => cents !== 0n)))).toEqual(
      sorted(new Map([...ways].filter(([, cents]) => cents !== 0n))),
    );
  });

  it.each(programs.flatMap((program) => DEMO_HOUSES.map((name) => [name, program] as const)))(
    'of %s totals by bucket in %s as here, and balances',
    async (name, program) => {
      const { found } = await readHouse(path.join(content, name), `content/${name}`, { ledger: true });
      if (found?.ledger === undefined) throw new Error(`${name} has no ledger`);
      const { costs } = found.ledger;
      const balance = balances(program, journalText(name, found.house, costs, saleOf(found.house, AS_OF)));
      expect([...balance.values()].reduce((sum, one) => sum + one, 0n)).toBe(0n);
      const totals = moneyOf(found.house, { costs }).totals.filter(({ cents }) => cents !== 0);
      expect(totals.length).toBeGreaterThan(8);
      const houseOnly = [...balance].filter(
        ([account, cents]) => account.startsWith('house:') && cents !== 0n,
      );
      expect(sorted(new Map(houseOnly))).toEqual(
        sorted(new Map(totals.map(({ bucket, cents }) => [`house:${bucket}`, BigInt(cents)]))),
      );
      const price = found.house.money?.sale?.price;
      expect(balance.get('sale:price')).toBe(price === undefined ? undefined : BigInt(-price));
    },
  );

  it.each(programs)('has one transaction a row in %s, whatever the texts say', (program) => {
    const rows = nastyRows();
    const journal = journalText('test-house', house, rows, undefined);
    const words =
      program === 'hledger'
        ? ['register', 'house', '-O', 'csv']
        : ['register', 'house', '--format', '%(code)\n'];
    const lines = ask(program, journal, words).trim().split('\n');
    const codes = program === 'hledger' ? lines.slice(1).map((line) => line.split('","')[2]) : lines;
    expect(codes).toEqual(rows.map(({ row }) => `row-${row}`));
  });

  it.each(programs)('carries receipt, place, sales tax and tax year as tags for %s', (program) => {
    const rows: CostRow[] = [
      costRow(),
      costRow({
        row: 3,
        bucket: 'repair',
        cents: 1_250,
        receipt: 'p-0001',
        place: 'kitchen',
        salesTax: 75,
        taxYear: 2027,
      }),
    ];
    const journal = journalText('test-house', house, rows, undefined);
    const found = (tag: string, value: string): string =>
      program === 'hledger'
        ? ask(program, journal, ['balance', '-N', '--flat', 'house', `tag:^${tag}$=^${value}$`])
        : ask(program, journal, [
            'balance',
            '--no-total',
            '--flat',
            'house',
            '--limit',
            `tag('${tag}') =~ /^${value}$/`,
          ]);
    for (const [tag, value] of [
      ['receipt', 'p-0001'],
      ['for', 'kitchen'],
      ['sales-tax', '0.75 USD'],
      ['tax-year', '2027'],
    ] as const)
      expect(
        found(tag, value)
          .trim()
          .split(/\s{2,}/),
        tag,
      ).toEqual(['12.50 USD', 'house:repair']);
  });

  it.each(programs)('has the sale as a transaction of its own in %s, once it is closed', (program) => {
    const sold = houseFrom({ money: { sale: { closed: '2026-08-14', price: '289,900.00' } } });
    const found = balances(program, journalText('test-house', sold, [costRow()], saleOf(sold, AS_OF)));
    expect(Object.fromEntries(found)).toEqual({
      'house:purchase': 14_800_000n,
      'paid:transfer': -14_800_000n,
      received: 28_990_000n,
      'sale:price': -28_990_000n,
    });
    const before = balances(
      program,
      journalText('test-house', sold, [costRow()], saleOf(sold, '2026-08-13')),
    );
    expect([...before.keys()]).not.toContain('sale:price');
  });

  it.each(programs)('is refused by %s if a posting is off by a cent: the check can fail', (program) => {
    const journal = journalText('test-house', house, [costRow()], undefined).replace(
      '-148000.00',
      '-148000.01',
    );
    expect(() => balances(program, journal)).toThrow(/balance/i);
  });
});

const prefixOf = (at: number): string => `l${String(at).padStart(4, '0')}`;

const sorted = (map: Balances): string[] => [...map].map(([account, cents]) => `${account} ${cents}`).sort();

/** `-148000.00 USD` as cents; a plain 0 is nothing. */
function centsOf(amount: string): bigint {
  if (amount === '0') return 0n;
  const [, sign = '', dollars, cents] = /^(-?)(\d+)\.(\d\d) USD$/.exec(amount) ?? [];
  if (dollars === undefined || cents === undefined) throw new Error(`no amount: ${amount}`);
  return BigInt(`${sign}${dollars}${cents}`);
}
