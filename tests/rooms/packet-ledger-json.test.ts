/** `ledger.json` against its own schema, by Ajv 8 (MIT), an independent reader of JSON Schema 2020-12. */
import { Ajv2020 } from 'ajv/dist/2020.js';
import formats from 'ajv-formats';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ledgerJson, ledgerSchemaJson } from '../../src/packet/ledger-json.js';
import { houseFrom } from './house-from.js';
import { costRow, costRows, hoursRows, moneyOf, nastyRows, trips } from './made-ledger.js';

const house = houseFrom({ money: { sale: { closed: '2026-08-14', price: '289,900.00' } } });
const schema = JSON.parse(ledgerSchemaJson()) as Node;

interface Node {
  readonly $schema?: string;
  readonly $id?: string;
  readonly description?: string;
  readonly type?: string;
  readonly properties?: Readonly<Record<string, Node>>;
  readonly additionalProperties?: unknown;
  readonly items?: Node;
}

const ajv = new Ajv2020({ strict: true, allErrors: true });
formats.default(ajv);
const fits = ajv.compile(schema);

const jsonOf = (rows: Parameters<typeof moneyOf>[1]): string =>
  ledgerJson({ folder: 'test-house', house, money: moneyOf(house, rows), asOf: '2026-11-20' });

/** Every node below, with its path. */
const nodes = (node: Node, at = ''): [string, Node][] => [
  [at, node],
  ...Object.entries(node.properties ?? {}).flatMap(([word, below]) => nodes(below, `${at}/${word}`)),
  ...(node.items === undefined ? [] : nodes(node.items, `${at}[]`)),
];

describe('the schema of the ledger', () => {
  it('is JSON Schema 2020-12 under a name of its own', () => {
    expect(schema.$schema).toBe('https://json-schema.org/draft/2020-12/schema');
    expect(schema.$id).toBe('urn:sillplate:ledger:1');
  });

  it('says of every word what it means, and takes no other', () => {
    const all = nodes(schema);
    expect(all.length).toBeGreaterThan(120);
    const mute = all.filter(([at, node]) => !at.endsWith('[]') && (node.description ?? '').length < 8);
    expect(mute.map(([at]) => at)).toEqual([]);
    const open = all.filter(
      ([, { type, additionalProperties }]) => type === 'object' && additionalProperties !== false,
    );
    expect(open.map(([at]) => at)).toEqual([]);
  });

  it('says “cents” and nothing but whole numbers where there is money', () => {
    const money = nodes(schema).filter(([at]) => /cents$/i.test(at));
    expect(money.length).toBeGreaterThan(15);
    for (const [at, node] of money) {
      expect(node.type, at).toBe('integer');
      expect(node.description, at).toContain('Whole cents, United States dollars.');
    }
  });
});

describe('the ledger as JSON', () => {
  it('fits its schema, whatever the rows', () => {
    fc.assert(
      fc.property(costRows(20), trips(8), hoursRows(8), (costs, driven, hours) => {
        fits(JSON.parse(jsonOf({ costs, trips: driven, hours })));
        expect(fits.errors ?? []).toEqual([]);
      }),
      { numRuns: 100, seed: 2_604 },
    );
  });

  it('has the rows as they are, and the totals of the tally', () => {
    const costs = nastyRows();
    const file = JSON.parse(jsonOf({ costs }));
    expect(file.costs).toEqual(
      costs.map(({ row, date, payee, what, cents, bucket, paid, receipt, note }) => ({
        row,
        date,
        payee,
        what,
        cents,
        bucket,
        paid,
        receipt,
        note,
      })),
    );
    const sum = costs.reduce((all, { cents }) => all + cents, 0);
    expect(file.buckets).toHaveLength(1);
    expect(file.buckets[0]).toMatchObject({ bucket: 'repair', cents: sum });
    expect(file.allPaidCents).toBe(sum);
    expect(file.sale).toEqual({ closed: '2026-08-14', cents: 28_990_000 });
    expect(file.papers).toEqual([{ id: 'p-0001', file: 'p-0001.pdf', bytes: 12, sha256: 'ab'.repeat(32) }]);
  });

  it('tells facts by path and in words, the days of a sheet, and how long papers are kept', () => {
    const file = JSON.parse(jsonOf({ costs: [] }));
    expect(file.worksheets[0].dates).toEqual([
      { id: 'acquired', label: 'Acquired', says: '17 February 2026' },
    ]);
    expect(file.worksheets[0].parts[0].lines[0].facts).toEqual([
      { path: 'money.sale.price', says: 'sale price $2,460.00' },
    ]);
    expect(file.retention.map(({ kept }: { kept: string }) => kept)).toEqual(['through', 'for good']);
    expect(file.lessons).toMatchObject({ holdingEnd: 'as-of day', holdingWithinCents: 0 });
  });

  it('tells no place on this machine', () => {
    expect(jsonOf({ costs: [costRow()] })).not.toContain('/elsewhere/');
  });

  it.each([
    ['an amount with a part of a cent', (file: Made) => Object.assign(file.costs[0], { cents: 1.5 })],
    ['an amount as a text', (file: Made) => Object.assign(file.costs[0], { cents: '1.50' })],
    ['a bucket that is none', (file: Made) => Object.assign(file.costs[0], { bucket: 'castle' })],
    ['a day that is none', (file: Made) => Object.assign(file.costs[0], { date: '2026-02-30' })],
    ['a word that is not known', (file: Made) => Object.assign(file.costs[0], { colour: 'red' })],
    ['a file of another form', (file: Made) => Object.assign(file, { form: 'sillplate-ledger-2' })],
    ['a row without its amount', (file: Made) => Reflect.deleteProperty(file.costs[0], 'cents')],
  ])('does not fit with %s', (_what, change) => {
    const file = JSON.parse(jsonOf({ costs: [costRow()] })) as Made;
    expect(fits(file)).toBe(true);
    change(file);
    expect(fits(file)).toBe(false);
  });
});

interface Made {
  readonly costs: [Record<string, unknown>];
}
