/** A home that became a rental: the figures, what is missing for them, and the gain or loss when it is sold. */
import { describe, expect, test } from 'vitest';
import type { PartialSpec } from './house-from.js';
import { centsOf, costRows, lineOf, sheetOf, workOut } from './tally-money-case.js';

type Money = NonNullable<PartialSpec['money']>;
type Rental = NonNullable<Money['rental']>;

const VALUED: Rental = {
  'in-service': '2021-07-01',
  'from-home': 'yes',
  'market-value-building': '165,000.00',
  'market-value-land': '15,000.00',
};

/** Bought for 185,000.00, land 25,000.00 of it; 20,000.00 of improvements before it was let. */
const let_ = (money: Money = {}, rental: Rental = VALUED) =>
  workOut(
    { house: { bought: '2010-03-01' }, money: { land: { price: '25,000.00' }, rental, ...money } },
    {
      costs: costRows([
        { date: '2010-03-01', bucket: 'purchase', cents: 18_500_000 },
        { date: '2015-05-01', bucket: 'improvement', cents: 2_000_000 },
      ]),
    },
  ).money;

const BASES = ['depreciation-basis', 'basis-for-gain', 'basis-for-loss'] as const;
const bases = (money: Money, rental?: Rental) =>
  BASES.map((id) => (centsOf(let_(money, rental), 'rental', id) ?? Number.NaN) / 100);

describe('what is measured from', () => {
  test('the lower of basis and market value for depreciation and loss, the basis for gain', () => {
    expect(bases({})).toEqual([165_000, 205_000, 180_000]);
    const dear = { ...VALUED, 'market-value-building': '400,000', 'market-value-land': '100,000' };
    expect(bases({}, dear)).toEqual([180_000, 205_000, 205_000]);
  });

  /** 2,000.00 that came before the change lower the basis of that day; what came later lowers both of a sale. */
  test.each<[string, NonNullable<Money['reductions']>[number], number[]]>([
    [
      'of a year before',
      { what: 'casualty-loss', amount: '20,000', year: 2016 },
      [160_000, 185_000, 180_000],
    ],
    [
      'of the year itself',
      { what: 'casualty-loss', amount: '20,000', year: 2021 },
      [160_000, 185_000, 180_000],
    ],
    ['of no year', { what: 'easement', amount: '20,000' }, [160_000, 185_000, 180_000]],
    ['of a year after', { what: 'casualty-loss', amount: '20,000', year: 2022 }, [165_000, 185_000, 160_000]],
    ['depreciation, always after', { what: 'depreciation', amount: '20,000' }, [165_000, 185_000, 160_000]],
    [
      'section 179, always after',
      { what: 'section-179', amount: '20,000', year: 2021 },
      [165_000, 185_000, 160_000],
    ],
  ])('a reduction %s', (_when, reduction, expected) => {
    expect(bases({ reductions: [reduction] })).toEqual(expected);
  });

  test('the line says how it is measured, and which facts it rests on', () => {
    const line = lineOf(let_(), 'rental', 'depreciation-basis');
    expect(line.note).toMatch(/^the lower of adjusted basis and market value on the day of the change/);
    expect(line.facts.map(({ says }) => says)).toEqual([
      'ready to be let 1 July 2021',
      'building worth $165,000.00 on the day of the change',
      'land worth $15,000.00 on the day of the change',
      'price of the land by the contract $25,000.00',
    ]);
  });
});

describe('what is missing', () => {
  const { 'market-value-land': _land, ...noLand } = VALUED;
  const { 'market-value-building': _building, ...noBuilding } = VALUED;
  const { 'in-service': _day, ...noDay } = VALUED;

  test.each<[string, Rental, Money, RegExp]>([
    ['the land', VALUED, { land: { 'assessed-land': '0', 'assessed-building': '0' } }, /money: land:$/],
    ['what the land was worth', noLand, {}, /building and land were worth .* money: rental:$/],
    ['what the building was worth', noBuilding, {}, /building and land were worth .* money: rental:$/],
    ['the day', noDay, {}, /the day it was ready to be let, under money: rental: in-service:$/],
    ['the day, open', { ...VALUED, 'in-service': '../2021' }, {}, /the day it was ready .* in-service:$/],
  ])('%s is asked for by all three lines, and none has a figure', (_what, rental, money, asked) => {
    for (const id of BASES) {
      const { cents, note } = lineOf(let_(money, rental), 'rental', id);
      expect([cents, note]).toEqual([undefined, expect.stringMatching(asked)]);
      expect(note).toMatch(/^not worked out: it takes /);
    }
  });
});

describe('the sale', () => {
  const sold = (price: string) => let_({ sale: { closed: '2026-05-01', price } });

  test.each([
    ['above the basis for a gain, a gain from that one', '210,000', 5_000, 'Gain'],
    ['at the basis for a gain, nothing', '205,000', 0, 'Gain'],
    ['between the two, nothing', '190,000', 0, 'Gain'],
    ['at the basis for a loss, nothing', '180,000', 0, 'Gain'],
    ['below the basis for a loss, a loss from that one', '170,000', -10_000, 'Loss'],
  ])('%s', (_what, price, dollars, label) => {
    const money = sold(price);
    const line = lineOf(money, 'rental', 'gain');
    expect([line.label, line.cents]).toEqual([label, dollars * 100]);
    expect(line.note).toContain('between them there is neither');
    const less = lineOf(money, 'rental', 'less-basis');
    expect([less.label, less.rules]).toEqual(['Basis for gain or loss', ['home-turned-rental']]);
    // The lines add up.
    expect((centsOf(money, 'rental', 'realised') ?? Number.NaN) + (less.cents ?? Number.NaN)).toBe(
      line.cents,
    );
  });

  test('without the figures of the change it is measured from the adjusted basis', () => {
    const { 'market-value-land': _land, ...rental } = VALUED;
    const money = let_({ sale: { closed: '2026-05-01', price: '210,000' } }, rental);
    const less = lineOf(money, 'rental', 'less-basis');
    expect([less.label, less.cents, less.rules]).toEqual(['Adjusted basis', -20_500_000, ['adjusted-basis']]);
    expect(lineOf(money, 'rental', 'gain').note).toBeUndefined();
  });

  test('the other roles know nothing of a change', () => {
    const ids = sheetOf(let_(), 'investor').parts.map(({ id }) => id);
    expect(ids).not.toContain('home-turned-rental');
    expect(sheetOf(let_(), 'rental').parts.map(({ id }) => id)).toContain('home-turned-rental');
  });
});
