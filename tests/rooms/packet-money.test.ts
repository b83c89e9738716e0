/** The house file's money pages: what they say, that every anchor is one of a kind, and that no other edition has them. */
import { describe, expect, it } from 'vitest';
import { EDITION_NAMES } from '../../src/build.js';
import { type CostRow, EMPTY_LEDGER, type Ledger } from '../../src/facts/ledger.js';
import { composePacket } from '../../src/packet/compose.js';
import { COMPARISON, composeComparison } from '../../src/packet/compose-comparison.js';
import type { PlatesOnDisk } from '../../src/packet/context.js';
import type { EditionName, Packet } from '../../src/packet/packet.js';
import { idsIn } from '../../src/packet/words-of.js';
import { payeesOverHouses } from '../../src/tally/money/payees-over-houses.js';
import { deriveTally } from '../../src/tally/tally.js';
import { houseFrom, type PartialSpec } from './house-from.js';
import { allWords, block, rowsOf, text } from './packet-of.js';
import { costRows } from './tally-money-case.js';

const AS_OF = '2026-06-30';

const SPEC: PartialSpec = {
  house: { bought: '2026-01-05' },
  documents: [
    { id: 'a', what: 'receipt one', kind: 'receipt', file: 'a.pdf', total: '12.00' },
    { id: 'a-rows', what: 'receipt two', kind: 'receipt', file: 'b.pdf' },
    { id: 'a-sum', what: 'receipt three', kind: 'receipt' },
    { id: 'a-file', what: 'receipt four', kind: 'receipt', file: 'c.txt' },
  ],
  money: { role: 'dealer', 'in-business': 'yes' },
};

const ledgerOf = (costs: readonly CostRow[]): Ledger => ({
  ...EMPTY_LEDGER,
  costs,
  sheets: { costs: 'costs.csv', miles: undefined, hours: undefined },
  papers: new Map(
    ['a.pdf', 'b.pdf', 'c.txt'].map((file, at) => [
      ['a', 'a-rows', 'a-file'][at] ?? '',
      { file, path: `/nowhere/${file}`, bytes: 100 + at, sha256: String(at).repeat(64) },
    ]),
  ),
});

const page = (id: string): PlatesOnDisk['pages'][number] => ({
  id,
  name: 'a.pdf',
  width: 600,
  height: 800,
  takenAt: undefined,
  content: id,
});

function packetWith(costs: readonly CostRow[], edition: EditionName = 'file', spec = SPEC): Packet {
  const house = houseFrom(spec);
  const { tally } = deriveTally(house, AS_OF, new Map(), ledgerOf(costs));
  const plates = new Map<string, PlatesOnDisk>([
    ['a', { file: 'a.pdf', pages: [page('paper:a:1'), page('paper:a:2')], of: 7 }],
    ['a-rows', { file: 'b.pdf', pages: [page('paper:a-rows:1')], of: 1 }],
    ['a-file', { file: 'c.txt', pages: [], of: 0 }],
  ]);
  return composePacket({ folder: 'test-house', house, tally, edition, photos: new Map(), plates });
}

const UNRULY = ['Smith & Co', 'Smith Co', 'smith, co', '水道', 'Привет', '***', '__proto__', 'constructor'];

const unruly = costRows(
  UNRULY.flatMap((payee) => [
    { payee, cents: 250_000, bucket: 'improvement' as const, receipt: 'a' },
    { payee, cents: -100, bucket: 'repair' as const, receipt: 'a-rows' },
  ]),
);

const twice = (ids: readonly string[]): string[] => ids.filter((id, at) => ids.indexOf(id) !== at);

describe('the house file', () => {
  it('has each anchor once, whatever payees and papers are called', () => {
    const packet = packetWith(unruly);
    expect(twice(idsIn(packet))).toEqual([]);
    expect(idsIn(packet)).toContain('plate-2-rows');
  });

  it('leads a row to its paper and the paper to its rows', () => {
    const packet = packetWith(unruly);
    const [row] = rowsOf(packet, 'costs-improvement');
    expect(row?.cells.flat().map(({ to }) => to)).toContain('plate-1');
    expect(rowsOf(packet, 'plate-1-rows')[0]?.cells[0]?.[0]?.to).toBe('cost-2');
  });

  it('shows each page of a paper once, the first beside its rows', () => {
    const packet = packetWith(unruly);
    const rows = block(packet, 'plate-1-rows');
    expect(rows.kind === 'table' && rows.plate?.photo).toBe('paper:a:1');
    const further = block(packet, 'plate-1-pages');
    expect(further.kind === 'photos' && further.photos.map(({ photo }) => photo)).toEqual(['paper:a:2']);
    expect(packet.photos.map(({ id }) => id)).toEqual(['paper:a:1', 'paper:a:2', 'paper:a-rows:1']);
  });

  it('says where the copy of a paper lies that can’t be shown, and takes every paper along', () => {
    const packet = packetWith(unruly);
    expect(text(packet, 'plate-4-file')).toContain('a copy of the file lies in papers/c.txt');
    expect(packet.papers?.map(({ path }) => path)).toEqual(['papers/a.pdf', 'papers/b.pdf', 'papers/c.txt']);
  });

  it('tells sums and papers of a sheet that is too long to print', () => {
    const many = costRows(
      Array.from({ length: 1501 }, () => ({ cents: 100, bucket: 'repair' as const, receipt: 'a' })),
    );
    const packet = packetWith(many);
    expect(text(packet, 'costs-repair')).toContain('1501 rows');
    expect(text(packet, 'plate-1-rows')).toBe(
      '1501 rows of ledger.csv, $1,501.00 in all; the paper says $12.00.',
    );
    expect(text(packet, 'plate-1-file')).toContain(Array(4).fill('0'.repeat(16)).join(' '));
    expect(text(packet, 'plate-1-file')).toContain('Shown are 2 of its 7 pages');
    const shown = block(packet, 'plate-1-pages');
    expect(shown.kind === 'photos' && shown.photos).toHaveLength(2);
    expect(twice(idsIn(packet))).toEqual([]);
  });
});

describe('every other edition', () => {
  it.each(EDITION_NAMES.filter((edition) => edition !== 'file'))(
    '%s says nothing of money, and takes no paper along',
    (edition) => {
      const packet = packetWith(unruly, edition);
      expect(packet.papers).toBeUndefined();
      expect(
        packet.exports.map(({ file }) => file).filter((file) => /ledger|journal|miles|hours/u.test(file)),
      ).toEqual([]);
      const words = allWords(packet);
      for (const payee of UNRULY) expect(words).not.toContain(payee);
      expect(words).not.toContain('$');
      expect(packet.sections.map(({ id }) => id)).not.toContain('costs');
      // The same house, so that the words could have been found.
      expect(allWords(packetWith(unruly))).toContain('Smith & Co');
    },
  );
});

describe('the comparison', () => {
  it('has each anchor once, whatever houses and payees are called', () => {
    const houses = ['table', 'bars-holding', COMPARISON].map((folder, at) => {
      const house = houseFrom(SPEC);
      const ledger = ledgerOf(
        costRows(UNRULY.map((payee) => ({ payee, cents: 300_000 + at, bucket: 'repair' as const }))),
      );
      const { tally } = deriveTally(house, AS_OF, new Map(), ledger);
      if (tally.money === undefined) throw new Error('no money was tallied');
      return { folder, name: folder, lessons: tally.money.lessons, sold: false, house, ledger };
    });
    const packet = composeComparison({
      houses,
      payees: payeesOverHouses(houses, AS_OF),
      asOf: AS_OF,
      program: 'sillplate 0.0.0',
    });
    expect(twice(idsIn(packet))).toEqual([]);
    expect(rowsOf(packet, 'figures-table')).toHaveLength(3);
    expect(rowsOf(packet, 'payees-table').length).toBeGreaterThan(0);
  });
});
