/**
 * Paint, flooring and tile against sums that others published, and constructed ones where exactness decides.
 * The conventions are trade practice, not standards; where they are from memory the test says so.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { SQUARE_FOOT } from '../../src/facts/floor-area.js';
import { FOOT, INCH } from '../../src/facts/length.js';
import { deriveQuantities } from '../../src/tally/finish-quantities.js';
import { boxesFor, orderFor } from '../../src/tally/flooring-need.js';
import { gallonsFor, printGallons, wholeGallons } from '../../src/tally/paint-need.js';
import { houseFrom, type PartialSpec } from '../rooms/house-from.js';

type RoomSpec = NonNullable<PartialSpec['rooms']>[number];

/** Square feet, exact to a hundredth. */
const sqFt = (hundredths: number): bigint => (BigInt(hundredths) * SQUARE_FOOT) / 100n;

/** The one finish of a room with these walls and floor. */
function finishOf(
  finish: NonNullable<RoomSpec['finishes']>[number],
  measured: { perimeter?: number; height?: number; floor?: bigint },
  room: Partial<RoomSpec> = {},
) {
  const house = houseFrom({
    levels: [{ id: 'main', name: 'Main level', grade: 'above' }],
    rooms: [{ id: 'room', level: 'main', use: 'living', finishes: [finish], ...room }],
  });
  const { perimeter, height, floor } = measured;
  const [quantity] = deriveQuantities(house, {
    roomFloors: new Map(floor === undefined ? [] : [['room', floor]]),
    roomWalls: new Map(perimeter === undefined ? [] : [['room', { perimeter, height }]]),
  });
  if (quantity === undefined) throw new Error('the finish gives no quantity');
  return quantity;
}

describe('paint', () => {
  const TEN_BY_FIFTEEN = { perimeter: 50 * FOOT, height: 8 * FOOT };

  test('a room of 10 by 15 ft with 8 ft walls, at 400 sq ft: 1 gallon a coat, 2 for two', () => {
    // A how-to reference’s sum, published.
    const one = finishOf({ on: 'walls', what: 'paint', coats: 1, coverage: 400 }, TEN_BY_FIFTEEN);
    expect(one.area).toBe(sqFt(40_000));
    expect(one.paint).toMatchObject({ gallonsWords: '1.00', buy: 1, coverageBasis: 'label' });
    const two = finishOf({ on: 'walls', what: 'paint', coats: 2, coverage: 400 }, TEN_BY_FIFTEEN);
    expect(two.paint).toMatchObject({ gallonsWords: '2.00', buy: 2 });
  });

  test('the same room at the usual 350 sq ft takes 2.286 gallons for two coats, so 3', () => {
    // Rate: a paint stewardship programme’s guidance.
    const { paint } = finishOf({ on: 'walls', what: 'paint', coats: 2 }, TEN_BY_FIFTEEN);
    expect(paint).toMatchObject({ coverage: 350, coverageBasis: 'usual', gallonsWords: '2.29', buy: 3 });
  });

  test('a door and a window take 20 and 15 sq ft off: 384 becomes 349, and 1.994 gallons', () => {
    // Openings by a painter’s guide; the room is constructed.
    const { area, paint, basis } = finishOf(
      { on: 'walls', what: 'paint', coats: 2 },
      { perimeter: 48 * FOOT, height: 8 * FOOT },
      { doors: 1, windows: [{}] },
    );
    expect(basis).toBe('walls less openings');
    expect(area).toBe(sqFt(34_900));
    expect(paint).toMatchObject({ gallonsWords: '1.99', buy: 2 });
  });

  test('67 ft 9 in by 7 ft 2 in less 59.42 sq ft is 426.12 sq ft and 1.22 gallons', () => {
    // A how-to page’s sum; it rounds 7 ft 2 in to 7.17 ft and gets 426.35. Exact inches are used here.
    const { area } = finishOf(
      { on: 'walls', what: 'paint' },
      { perimeter: 813 * INCH, height: 86 * INCH },
      { doors: 0 },
    );
    const net = (area ?? 0n) - sqFt(5942);
    expect((net * 100n) / SQUARE_FOOT).toBe(42_612n);
    for (const exact of [net, sqFt(42_635)]) {
      const gallons = gallonsFor(exact, 1, 350);
      expect([printGallons(gallons), wholeGallons(gallons)]).toEqual(['1.22', 2]);
    }
  });
});

describe('flooring and tile', () => {
  test('a floor of 500 sq ft with the usual 10 % is 550', () => {
    // A flooring dealer’s page.
    const { flooring } = finishOf({ on: 'floor', what: 'vinyl plank' }, { floor: sqFt(50_000) });
    expect(flooring).toMatchObject({ wastePercent: 10, wasteBasis: 'usual', order: sqFt(55_000) });
  });

  test.each([
    // Constructed, from memory: an exact fit takes no further box.
    [420, 10, 2200, 21],
    [300, 7, 2000, 17],
    [660, 10, 1650, 44],
  ])('%i sq ft with %i %% in boxes of %i hundredths: %i boxes', (area, percent, box, boxes) => {
    expect(boxesFor(sqFt(area * 100), percent, sqFt(box))).toBe(boxes);
    const { flooring } = finishOf(
      { on: 'floor', what: 'vinyl plank', waste: percent, box: `${box / 100} sq ft` },
      { floor: sqFt(area * 100) },
    );
    expect(flooring).toMatchObject({ boxes, wasteBasis: 'stated' });
  });

  test('binary fractions would buy a box too many in the first and third', () => {
    expect(Math.ceil((420 * 1.1) / 22)).toBe(22);
    expect(Math.ceil((660 * 1.1) / 16.5)).toBe(45);
  });

  test('60 sq ft of tile laid diagonally with 15 %, in boxes of 10.76: 69 sq ft, 7 boxes', () => {
    // Percentage from memory of the tile trade; constructed.
    const { flooring, kind } = finishOf(
      { on: 'floor', what: 'porcelain tile', pattern: 'diagonal', box: '10.76 sq ft' },
      { floor: sqFt(6000) },
    );
    expect(kind).toBe('tile');
    expect(flooring).toMatchObject({ wastePercent: 15, order: sqFt(6900), boxes: 7 });
  });

  test('8 to 15 % and 5 % for defects: added or compounded, both are shown and neither assumed', () => {
    // A newspaper’s figures for wood; which way they go together is open.
    const { flooring } = finishOf(
      { on: 'floor', what: 'oak plank', pattern: 'diagonal', box: '20 sq ft' },
      { floor: sqFt(100_000) },
    );
    // 1,150 sq ft without defects; 1,200 added; 1,207.5 compounded: 58, 60 and 61 boxes.
    expect(flooring?.boxes).toBe(58);
    expect(flooring?.defects).toMatchObject({
      percent: 5,
      added: { order: sqFt(120_000), boxes: 60 },
      compounded: { order: sqFt(120_750), boxes: 61 },
    });
    expect(flooring?.defects?.words).toMatch(/not assumed/);
  });

  test('boxes hold the order, and one fewer would not, for any area', () => {
    fc.assert(
      fc.property(
        fc.bigInt({ min: 1n, max: 10n ** 17n }),
        fc.integer({ min: 0, max: 40 }),
        fc.bigInt({ min: 10n ** 11n, max: 10n ** 15n }),
        (area, percent, box) => {
          const boxes = BigInt(boxesFor(area, percent, box));
          const asked = area * BigInt(100 + percent);
          expect(boxes * box * 100n >= asked).toBe(true);
          expect((boxes - 1n) * box * 100n < asked).toBe(true);
          expect(orderFor(area, percent) * 100n - asked).toBeLessThan(100n);
        },
      ),
      { seed: 13 },
    );
  });
});
