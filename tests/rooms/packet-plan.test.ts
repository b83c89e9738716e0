/** Plans to one scale, dimensioned by the tape that measured the house, with words that fit where they stand. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FOOT, METRE } from '../../src/facts/length.js';
import { dimensionsOf } from '../../src/packet/draw-dimensions.js';
import { drawPlan, frameOf, type PlanLevel, type PlanRoom } from '../../src/packet/draw-plan.js';
import { words as lettered } from '../../src/packet/draw-stack.js';
import { drawLevels } from '../../src/packet/level-plans.js';
import type { DrawingBlock } from '../../src/packet/packet.js';
import type { Point } from '../../src/tally/corners.js';
import { labelSpot } from '../../src/tally/label-spot.js';
import { rectangle } from '../../src/tally/measuring.js';
import { crossed, lettering, outside, overlaps, textBoxes } from './drawn-boxes.js';
import { block, packetOf, plain } from './packet-of.js';

const box = (feetWide: number, feetDeep: number) => rectangle([0, 0], feetWide * FOOT, feetDeep * FOOT);

const levelOf = (outline: readonly Point[], more: Partial<PlanLevel> = {}): PlanLevel => ({
  outline,
  reading: 'inches',
  rooms: [],
  ground: { fill: 'paper' },
  legend: [],
  dimensions: true,
  ...more,
});

const wordsOf = (level: PlanLevel): string[] =>
  textBoxes(drawPlan(level, 9, new Map())).map(({ text }) => text);

describe('plans of one house', () => {
  it('are to one scale, whatever the sizes of two levels', () => {
    const feet = fc.integer({ min: 6, max: 150 });
    fc.assert(
      fc.property(feet, feet, feet, feet, (a, b, c, d) => {
        const levels = [levelOf(box(a, b)), levelOf(box(c, d))];
        const plans = drawLevels(levels, { highest: 500 });
        expect(new Set(plans.map((plan) => plan.scale)).size).toBe(1);
        const perFoot = plans.map(({ drawing, narrow }) => {
          expect(drawing.width).toBeLessThanOrEqual(452.01);
          expect(drawing.height).toBeLessThanOrEqual(500.01);
          expect(narrow.width).toBeLessThanOrEqual(250.01);
          expect(narrow.height).toBeLessThanOrEqual(340.01);
          const walls = drawing.shapes.find((shape) => shape.kind === 'path' && shape.pen === 'wall');
          const xs = walls?.kind === 'path' ? walls.points.map(([x]) => x) : [];
          return Math.max(...xs) - Math.min(...xs);
        });
        expect((perFoot[0] as number) / a).toBeCloseTo((perFoot[1] as number) / c, 1);
      }),
      { numRuns: 40 },
    );
  });
});

describe('dimensions', () => {
  it.each([
    ['metric', 12.2 * METRE, '12.20 m', '2 m'],
    ['tenths', 40.5 * FOOT, '40.5 ft', '10 ft'],
    ['inches', 40.5 * FOOT, '40′ 6″', '10 ft'],
  ] as const)('and scale bar are by the tape that was used: %s', (reading, wide, dimension, bar) => {
    const shown = wordsOf(levelOf(rectangle([0, 0], Math.round(wide), 8 * METRE), { reading }));
    expect(shown).toContain(dimension);
    expect(shown).toContain(bar);
    expect(shown).toContain('N');
  });

  const SLANTED: Point[] = [
    [0, 0],
    [5 * METRE, 0],
    [6 * METRE, 5 * METRE],
    [0, 5 * METRE],
  ];

  it('of a slanted metric wall stop at the centimetre, outside the wall', () => {
    for (const outline of [SLANTED, [...SLANTED].reverse()]) {
      const level = levelOf(outline, { reading: 'metric' });
      // √26 = 5.0990…
      expect(wordsOf(level)).toContain('5.10 m');
      const drawing = drawPlan(level, 9, new Map());
      expect(crossed(drawing)).toEqual([]);
      expect(outside(drawing)).toEqual([]);
    }
  });

  it('of short walls side by side stand in rows, and never over each other', () => {
    // A comb of 3 ft teeth: 20 walls to the north.
    const teeth = Array.from({ length: 10 }, (_, i): Point[] => [
      [(6 * i + 3) * FOOT, 20 * FOOT],
      [(6 * i + 3) * FOOT, 23 * FOOT],
      [6 * i * FOOT, 23 * FOOT],
      [6 * i * FOOT, 20 * FOOT],
    ]).reverse();
    const outline: Point[] = [[0, 0], [57 * FOOT, 0], ...teeth.flat()];
    for (const perFoot of [9, 4.5, 2]) {
      const drawing = drawPlan(levelOf(outline), perFoot, new Map());
      expect(overlaps(drawing)).toEqual([]);
      expect(outside(drawing)).toEqual([]);
    }
    expect(dimensionsOf(outline, 9, 'inches').length).toBeGreaterThan(20);
    expect(frameOf(levelOf(outline), 0.1).width).toBeLessThan(250);
  });
});

describe('words in a room', () => {
  const feet = fc.integer({ min: 1, max: 14 });
  const name = fc.array(fc.constantFrom('bed', 'room', 'of', 'the', 'north', 'Wohnzimmer', 'attic'), {
    minLength: 1,
    maxLength: 4,
  });

  /** An L: a box with its north-east corner cut out; `cut` 0 leaves the box. */
  const bent = (at: Point, wide: number, deep: number, cut: number): Point[] =>
    cut === 0 || cut >= wide || cut >= deep
      ? rectangle(at, wide * FOOT, deep * FOOT)
      : [
          at,
          [at[0] + wide * FOOT, at[1]],
          [at[0] + wide * FOOT, at[1] + (deep - cut) * FOOT],
          [at[0] + (wide - cut) * FOOT, at[1] + (deep - cut) * FOOT],
          [at[0] + (wide - cut) * FOOT, at[1] + deep * FOOT],
          [at[0], at[1] + deep * FOOT],
        ];

  it('lie inside it, upright or turned, whatever its shape, or the room is numbered in both forms', () => {
    const made = fc.array(fc.tuple(feet, feet, fc.integer({ min: 0, max: 6 }), name), {
      minLength: 1,
      maxLength: 12,
    });
    let [numbered, named, turned] = [0, 0, 0];
    fc.assert(
      fc.property(made, (rooms) => {
        const drawn = rooms.map(([wide, deep, cut, parts], index): PlanRoom => {
          const at: Point = [((index % 4) * 15 + 1) * FOOT, (Math.floor(index / 4) * 15 + 1) * FOOT];
          const corners = bent(at, wide, deep, cut);
          const text = parts.join(' ');
          return {
            corners,
            spot: labelSpot(corners),
            ground: { fill: 'paper', hatch: 'crossed' },
            says: (number) => [
              {
                pieces: [lettered(number === undefined ? text : `${number} ${text}`, 'small', 'ink')],
                turns: true,
              },
            ],
          };
        });
        const [plan] = drawLevels([levelOf(box(61, 46), { rooms: drawn })], { highest: 500 });
        if (plan === undefined) throw new Error('no plan');
        for (const drawing of [plan.drawing, plan.narrow]) {
          expect(overlaps(drawing)).toEqual([]);
          expect(crossed(drawing)).toEqual([]);
          expect(outside(drawing)).toEqual([]);
          for (const [position, [, , , parts]] of rooms.entries()) {
            if (plan.numbered.includes(position)) numbered++;
            else {
              named++;
              for (const part of parts) expect(lettering(drawing)).toContain(part);
            }
          }
          turned += drawing.shapes.filter((shape) => shape.kind === 'text' && shape.turn === -90).length;
        }
      }),
      { numRuns: 60 },
    );
    expect(numbered).toBeGreaterThan(50);
    expect(named).toBeGreaterThan(50);
    expect(turned).toBeGreaterThan(50);
  });
});

describe('the plan of sizes', () => {
  const spec = (rooms: readonly object[], level: object = {}) =>
    ({
      levels: [
        { id: 'main', name: 'Main level', grade: 'above', size: "40' x 30'", ceiling: "8'", ...level },
      ],
      rooms: rooms.map((room, i) => ({
        id: `room-${i + 1}`,
        level: 'main',
        use: 'living',
        heated: true,
        ...room,
      })),
    }) as never;
  const plan = (rooms: readonly object[], level: object = {}): DrawingBlock =>
    block(packetOf(spec(rooms, level)), 'plan-main') as DrawingBlock;

  it('says the class of each room that occurs, in words beside its ground, and no other', () => {
    const drawn = plan([
      { size: "12' x 12'", at: ["east 1'", "north 1'"] },
      { size: "12' x 12'", at: ["east 14'", "north 1'"], finish: 'unfinished' },
      { size: "12' x 12'", at: ["east 27'", "north 1'"], use: 'garage' },
      { size: "12' x 12'", at: ["east 1'", "north 15'"], ceiling: '6\'6"' },
      { size: "12' x 12'", at: ["east 14'", "north 15'"], use: 'sunroom', heated: false },
    ]);
    for (const drawing of [drawn.drawing, drawn.narrow ?? drawn.drawing]) {
      const said = lettering(drawing);
      for (const name of [
        'Finished, above grade',
        'Unfinished',
        'Garage',
        'Finished, but with a ceiling too low to count',
        'Enclosed, not for all-year use',
      ])
        expect(said).toContain(name);
      expect(said).not.toContain('below grade');
      expect(overlaps(drawing)).toEqual([]);
      expect(outside(drawing)).toEqual([]);
      expect(crossed(drawing)).toEqual([]);
    }
    expect(drawn.alt).toContain('Room 2 12′ 0″ × 12′ 0″, unfinished');
    // Hatching: no two of these grounds are told apart by their colour alone.
    expect(
      drawn.drawing.shapes.filter((shape) => shape.kind === 'line' && shape.ink === 'line').length,
    ).toBeGreaterThan(20);
  });

  it('without rooms shows the level’s own class', () => {
    const drawn = plan([], { grade: 'below' });
    expect(lettering(drawn.drawing)).toContain('Finished, below grade');
    expect(drawn.alt).toContain('finished, below grade');
  });

  it('of sixty rooms numbers what does not fit, the same in both forms, and the caption names each number', () => {
    const rooms = Array.from({ length: 60 }, (_, i) => ({
      size: '3\'6" x 4\'6"',
      at: [`east ${4 * (i % 10)}'2"`, `north ${5 * Math.floor(i / 10)}'2"`],
      name: i % 2 === 0 ? `Room R${i}` : `Withdrawing room R${i}`,
    }));
    const drawn = plan(rooms);
    const caption = plain(drawn.caption);
    for (const drawing of [drawn.drawing, drawn.narrow as typeof drawn.drawing]) {
      expect(overlaps(drawing)).toEqual([]);
      expect(outside(drawing)).toEqual([]);
      expect(crossed(drawing)).toEqual([]);
      const numbers = textBoxes(drawing).flatMap(({ text }) => (/^[1-9]\d*$/.test(text) ? [text] : []));
      expect(new Set(numbers).size).toBe(numbers.length);
      for (const number of numbers) expect(caption).toMatch(new RegExp(`[ ,]${number} (Withdrawing r|R)oom`));
    }
    for (const room of rooms)
      expect(`${caption} ${lettering(drawn.drawing)}`).toContain(room.name.split(' ').at(-1));
  });

  it('draws a sliver of a room without words across its walls', () => {
    const drawn = plan([
      { size: '1" x 30\'', at: [], name: 'Chase' },
      { size: "30' x 29'", at: ["east 6'"], name: 'Hall' },
    ]);
    expect(crossed(drawn.drawing)).toEqual([]);
    expect(plain(drawn.caption)).toContain('1 Chase');
  });

  it('leaves floor that no room was written for white: it is no wall', () => {
    const drawn = plan([{ size: "12' x 12'", at: [] }]);
    const walls = drawn.drawing.shapes.find((shape) => shape.kind === 'path' && shape.pen === 'wall');
    expect(walls).toMatchObject({ fill: 'none' });
  });
});
