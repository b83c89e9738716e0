/** What must hold for the area of any level. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { checkHouse } from '../../src/facts/check-house.js';
import { AREA_CLASSES, deriveAreas, type LevelArea } from '../../src/tally/area.js';

type Step = { readonly way: 'east' | 'north' | 'west' | 'south'; readonly inches: number };

const typed = ({ way, inches }: Step): string =>
  inches % 12 === 0 ? `${way} ${inches / 12}'` : `${way} ${Math.floor(inches / 12)}'${inches % 12}"`;

/** A staircase outline: along the south, then back in steps of any width and height. */
const outlines = fc
  .array(fc.tuple(fc.integer({ min: 12, max: 300 }), fc.integer({ min: 12, max: 300 })), {
    minLength: 1,
    maxLength: 5,
  })
  .map((treads): Step[] => {
    const width = treads.reduce((sum, [run]) => sum + run, 0);
    const height = treads.reduce((sum, [, rise]) => sum + rise, 0);
    const back = treads.flatMap(([run, rise]): Step[] => [
      { way: 'north', inches: rise },
      { way: 'west', inches: run },
    ]);
    return [{ way: 'east', inches: width }, ...back, { way: 'south', inches: height }];
  });

function levelOf(
  outline: readonly Step[],
  more: Record<string, unknown> = {},
  rooms: unknown[] = [],
): LevelArea {
  const { house } = checkHouse({
    house: { name: 'Any', address: { city: 'Fallow Mills', state: 'OH' }, kind: 'detached', built: 1948 },
    levels: [{ id: 'main', name: 'Main level', grade: 'above', outline: outline.map(typed), ...more }],
    rooms,
  });
  if (house === undefined) throw new Error('no house');
  const [level] = deriveAreas(house).areas.levels;
  if (level === undefined) throw new Error('no level');
  return level;
}

const inside = { measured: 'inside', walls: { all: '6"' } };
const bases = fc.constantFrom({}, inside);

test('where the outline starts changes nothing', () => {
  fc.assert(
    fc.property(outlines, bases, fc.nat(20), (outline, basis, turn) => {
      const at = turn % outline.length;
      const turned = [...outline.slice(at), ...outline.slice(0, at)];
      const [before, after] = [levelOf(outline, basis), levelOf(turned, basis)];
      expect(before.gross).toBeTypeOf('bigint');
      expect(after.gross).toBe(before.gross);
      expect(after.byClass).toEqual(before.byClass);
      expect(after.lines).toEqual(before.lines);
    }),
    { numRuns: 60, seed: 1 },
  );
});

test('mirroring and walking the other way round change no area', () => {
  const mirror = { east: 'west', west: 'east', north: 'north', south: 'south' } as const;
  const opposite = { east: 'west', west: 'east', north: 'south', south: 'north' } as const;
  fc.assert(
    fc.property(outlines, bases, (outline, basis) => {
      const { gross } = levelOf(outline, basis);
      const mirrored = outline.map((step) => ({ ...step, way: mirror[step.way] }));
      const backwards = outline.map((step) => ({ ...step, way: opposite[step.way] })).reverse();
      expect(levelOf(mirrored, basis).gross).toBe(gross);
      expect(levelOf(backwards, basis).gross).toBe(gross);
    }),
    { numRuns: 60, seed: 2 },
  );
});

test('writing one wall as two steps changes nothing', () => {
  fc.assert(
    fc.property(
      outlines,
      bases,
      fc.nat(20),
      fc.integer({ min: 1, max: 11 }),
      (outline, basis, which, inches) => {
        const at = which % outline.length;
        const split = outline.flatMap((step, index) =>
          index === at
            ? [
                { ...step, inches },
                { ...step, inches: step.inches - inches },
              ]
            : [step],
        );
        const [before, after] = [levelOf(outline, basis), levelOf(split, basis)];
        expect(after.gross).toBe(before.gross);
        expect(after.lines).toEqual(before.lines);
      },
    ),
    { numRuns: 60, seed: 3 },
  );
});

const size = (width: number, depth: number): string => `${width}" x ${depth}"`;
const side = fc.integer({ min: 6, max: 120 });
const rooms = fc.array(
  fc.record({
    size: fc.tuple(side, side),
    finish: fc.constantFrom('finished', 'unfinished'),
    use: fc.constantFrom('other', 'garage', 'sunroom'),
    ceiling: fc.constantFrom('sloped', `6'8"`, '8 ft'),
    low: fc.boolean(),
  }),
  { maxLength: 5 },
);

test('classes and what belongs to none add up to the gross area, whatever is on the level', () => {
  const openings = fc.array(fc.tuple(side, side, side), { maxLength: 2 });
  const parts = fc.array(fc.record({ size: fc.tuple(side, side), low: fc.boolean(), floor: fc.boolean() }), {
    maxLength: 2,
  });
  const finish = fc.constantFrom('finished', 'unfinished');
  const ceiling = fc.constantFrom(`6'9"`, "8'");
  fc.assert(
    fc.property(
      outlines,
      rooms,
      openings,
      parts,
      finish,
      ceiling,
      (outline, listed, holes, bays, done, high) => {
        const level = levelOf(
          outline,
          {
            finish: done,
            ceiling: high,
            openings: holes.map(([w, d, t]) => ({ what: 'hole', size: size(w, d), treads: size(w, t) })),
            parts: bays.map((bay) => ({
              what: 'bay',
              size: size(...bay.size),
              ceiling: bay.low ? `6'6"` : "7'",
              floor: bay.floor,
            })),
          },
          listed.map((room, index) => {
            const [w, d] = room.size;
            return {
              id: `room-${index}`,
              level: 'main',
              use: room.use,
              finish: room.finish,
              size: size(w, d),
              ceiling:
                room.ceiling === 'sloped'
                  ? { 'at-7-ft': size(Math.ceil(w / 2), d), 'at-5-ft': size(Math.ceil((w * 3) / 4), d) }
                  : room.ceiling,
              low: room.low ? [{ what: 'duct', size: size(5, d), clear: "6'" }] : [],
            };
          }),
        );
        if (level.gross === undefined) return;
        const classes = AREA_CLASSES.reduce((sum, name) => sum + level.byClass[name], 0n);
        const nowhere = level.lines
          .filter((line) => line.area < 0n && line.into === undefined)
          .reduce((sum, line) => sum - line.area, 0n);
        expect(classes + nowhere).toBe(level.gross);
        const added = level.lines.filter((line) => line.area > 0n).reduce((sum, line) => sum + line.area, 0n);
        expect(added).toBe(level.gross);
        expect(level.lines.reduce((sum, line) => sum + line.area, 0n)).toBeLessThanOrEqual(
          level.byClass[level.ownClass],
        );
        for (const name of AREA_CLASSES) expect(level.byClass[name]).toBeGreaterThanOrEqual(0n);
      },
    ),
    { numRuns: 150, seed: 4 },
  );
});
