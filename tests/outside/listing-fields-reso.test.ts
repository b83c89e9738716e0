/**
 * The program's own table of listing fields, and every value that it writes, beside the standard's.
 *
 * Source: RESO Data Dictionary, reference sheet of version 2.1 with each row marked as of 2.0 or not, repository
 * RESOStandards/transport at commit 08b83f07fdeafa7a0786372f77d4a466e1206aa8 (2026-06-27). Names, types, suggested
 * lengths and values of the fields that are used were carried over into `reso-published.json`, without definitions.
 */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { composeHouse } from '../../src/build.js';
import { composePacket } from '../../src/packet/compose.js';
import { strayFields } from '../../src/packet/listing-check.js';
import { resoTable } from '../../src/tally/tables/reso.js';
import { deriveTally } from '../../src/tally/tally.js';
import { houseOf, MADE_AS_OF, madeSpec } from '../properties/made-house.js';

interface Published {
  readonly fields: Readonly<
    Record<
      string,
      {
        readonly type: string;
        readonly max_length?: number;
        readonly decimals?: number;
        readonly lookup?: string;
      }
    >
  >;
  readonly lookups: Readonly<Record<string, readonly string[]>>;
}

const published = JSON.parse(
  readFileSync(new URL('./reso-published.json', import.meta.url), 'utf8'),
) as Published;

const TYPES: Record<string, string> = {
  Number: 'number',
  Boolean: 'boolean',
  String: 'text',
  'String List, Single': 'one',
  'String List, Multi': 'several',
};

/** The standard's own reading of one value, from the fixture alone. */
function wrong(name: string, value: unknown): string[] {
  const field = published.fields[name];
  if (field === undefined) return [`${name} is not in the standard`];
  const values = [value].flat();
  const kind = {
    Number: values.every((one) => typeof one === 'number'),
    Boolean: values.every((one) => typeof one === 'boolean'),
    String: values.every((one) => typeof one === 'string'),
    'String List, Single': values.length === 1 && typeof value === 'string',
    'String List, Multi': Array.isArray(value) && value.length > 0,
  }[field.type];
  const lookup = field.lookup === undefined ? undefined : (published.lookups[field.lookup] ?? []);
  return [
    ...(kind === true ? [] : [`${name} is no ${field.type}`]),
    ...(lookup === undefined ? [] : values.filter((one) => !lookup.includes(String(one)))).map(
      (one) => `${name} has no value ${String(one)}`,
    ),
    ...(values.map(String).join(',').length > (field.max_length ?? 9999) ? [`${name} is too long`] : []),
  ];
}

const fieldsIn = (exports: readonly { readonly file: string }[]): Record<string, unknown> => {
  const file = exports.find((one) => one.file === 'listing-fields.json');
  if (file === undefined || !('text' in file)) throw new Error('there is no listing-fields.json');
  return JSON.parse(String(file.text)) as Record<string, unknown>;
};

describe('the table of listing fields', () => {
  const { fields, lookups } = resoTable();

  it('has the names, types, lengths and lookups of the standard', () => {
    expect(Object.keys(fields).sort()).toEqual(Object.keys(published.fields).sort());
    for (const [name, field] of Object.entries(fields)) {
      const theirs = published.fields[name];
      expect([name, field.type]).toEqual([name, TYPES[theirs?.type ?? '']]);
      if ('length' in field) expect([name, field.length]).toEqual([name, theirs?.max_length]);
      if ('lookup' in field) expect([name, field.lookup]).toEqual([name, theirs?.lookup]);
      if ('decimals' in field) expect([name, field.decimals]).toEqual([name, theirs?.decimals ?? 0]);
    }
  });

  it('has all values of each lookup, and no other', () => {
    expect(lookups).toEqual(published.lookups);
    expect(Object.values(lookups).flat().length).toBeGreaterThan(400);
  });

  it('turns words into nothing but values of their field', () => {
    const { words, fuels } = resoTable();
    for (const [name, rows] of Object.entries(words)) {
      const field = published.fields[name === 'Source' ? 'LivingAreaSource' : name];
      const allowed = published.lookups[field?.lookup ?? ''] ?? [];
      expect(rows.flatMap(({ values }) => values).filter((one) => !allowed.includes(one))).toEqual([]);
    }
    expect(Object.values(fuels).filter((one) => !published.lookups.Heating?.includes(one))).toEqual([]);
  });
});

describe('every value that is written', () => {
  it.each(['quarry-road', 'larkspur-court'])('of %s is one of the standard’s', async (name) => {
    const { packets } = await composeHouse({
      folder: `content/${name}`,
      shown: `content/${name}`,
      named: name,
      asOf: '2026-11-20',
      editions: ['agent', 'buyer'],
      out: 'out',
      outShown: 'out',
      paper: 'letter',
    });
    expect(packets).toHaveLength(2);
    for (const packet of packets) {
      const written = fieldsIn(packet.exports);
      expect(Object.entries(written).flatMap(([field, value]) => wrong(field, value))).toEqual([]);
      expect(Object.keys(written).length).toBeGreaterThan(30);
    }
  });

  it('of made houses is one of the standard’s', () => {
    fc.assert(
      fc.property(madeSpec, (spec) => {
        const house = houseOf(spec);
        const { tally } = deriveTally(house, MADE_AS_OF);
        const { exports } = composePacket({
          folder: 'made-house',
          house,
          tally,
          edition: 'agent',
          photos: new Map(),
        });
        const written = fieldsIn(exports);
        expect(Object.entries(written).flatMap(([field, value]) => wrong(field, value))).toEqual([]);
      }),
      { seed: 20260630, numRuns: 60 },
    );
  });

  it('is refused where it is none', () => {
    expect(strayFields({ YearBuilt: 1948, Roof: ['Shingle'] })).toEqual([]);
    expect(strayFields({ Roof: ['Thatch'] })).toEqual(['Roof: “Thatch” is no value of Roof']);
    expect(strayFields({ Rooof: ['Shingle'] })).toEqual(['Rooof is no field of the standard’s list']);
    expect(strayFields({ YearBuilt: '1948' })).toEqual(['YearBuilt: 1948 is no number']);
    expect(strayFields({ YearBuilt: 19480 })).toEqual(['YearBuilt: 19480 has too many digits']);
    expect(strayFields({ LotSizeSource: ['Owner'] })).toEqual(['LotSizeSource: Owner is no single value']);
    expect(strayFields({ GarageYN: 'yes' })).toEqual(['GarageYN: yes is neither true nor false']);
    expect(strayFields({ Inclusions: 'x'.repeat(1025) })).toEqual([
      'Inclusions: it has 1025 characters, and 1024 may stand there',
    ]);
  });
});
