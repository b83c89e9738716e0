/** Alarms on the plans: every place is on the drawing or named below it, and none recorded can't be taken for one. */
import { describe, expect, it } from 'vitest';
import { FOOT } from '../../src/facts/length.js';
import { type AlarmLevel, alarmSheet } from '../../src/packet/draw-alarm-sheet.js';
import type { DrawingBlock } from '../../src/packet/packet.js';
import { labelSpot } from '../../src/tally/label-spot.js';
import { rectangle } from '../../src/tally/measuring.js';
import { deriveTally } from '../../src/tally/tally.js';
import { crossed, lettering, outside, overlaps } from './drawn-boxes.js';
import { houseFrom, type PartialSpec } from './house-from.js';
import { allWords, block, packetOf, plain } from './packet-of.js';

const bedroom = (id: string, east: number, more: object = {}) => ({
  id,
  level: 'main',
  use: 'bedroom',
  size: "11' x 12'",
  at: [`east ${east}'`, "north 1'"],
  ...more,
});

const HOUSE = {
  levels: [
    { id: 'cellar', name: 'Cellar', grade: 'below', size: "40' x 30'", ceiling: "8'" },
    { id: 'main', name: 'Main level', grade: 'above', size: "40' x 30'", ceiling: "8'" },
    { id: 'attic', name: 'Top floor', grade: 'above', ceiling: "8'" },
  ],
  stairs: [{ id: 'steps', name: 'Back steps', risers: 3, handrail: 'yes' }],
  rooms: [
    {
      id: 'boiler',
      name: 'Boiler room',
      level: 'cellar',
      use: 'mechanical',
      size: "12' x 12'",
      at: ["east 1'", "north 1'"],
    },
    {
      id: 'store',
      name: 'Store',
      level: 'cellar',
      use: 'storage',
      size: "20' x 12'",
      at: ["east 14'", "north 1'"],
    },
    bedroom('blue-room', 1),
    bedroom('red-room', 13),
    bedroom('green-room', 25),
    { id: 'hall', name: 'Hall', level: 'main', use: 'hall', size: "30' x 5'", at: ["east 1'", "north 14'"] },
    { ...bedroom('box-room', 1), at: undefined, size: "8' x 8'" },
    { id: 'garret', name: 'Garret', level: 'attic', use: 'bedroom', size: "10' x 10'" },
  ],
  systems: [{ id: 'boiler-1', is: 'boiler, gas', where: 'boiler' }],
  alarms: [
    { is: 'smoke', where: 'blue-room', made: '2024' },
    { is: 'smoke', where: 'red-room', made: '2010' },
    { is: 'both', where: 'hall', made: '2024' },
    { is: 'carbon-monoxide', where: 'steps' },
    { is: 'smoke', where: 'main', made: '2024' },
  ],
} as unknown as PartialSpec;

const plan = (spec: PartialSpec, edition: 'buyer' | 'care' = 'buyer'): DrawingBlock =>
  block(packetOf(spec, edition), 'drawn-alarms') as DrawingBlock;

describe('alarms on the plans', () => {
  const drawn = plan(HOUSE);
  const said = lettering(drawn.drawing);
  const caption = plain(drawn.caption);

  it('shows every place: in its room, below its level, or in the caption', () => {
    const { places } = deriveTally(houseFrom(HOUSE), '2026-06-30').tally.alarms;
    expect(places.map((place) => [place.where, place.warns, place.recorded.length])).toEqual([
      ['Blue room', 'smoke', 1],
      ['Red room', 'smoke', 1],
      ['Green room', 'smoke', 0],
      ['Box room', 'smoke', 0],
      ['Garret', 'smoke', 0],
      ['outside the bedrooms, Main level', 'smoke', 2],
      ['outside Garret, Top floor', 'smoke', 0],
      ['Cellar', 'smoke', 0],
      ['outside the bedrooms, Main level', 'carbon-monoxide', 1],
      ['outside Garret, Top floor', 'carbon-monoxide', 0],
    ]);
    for (const name of ['Blue room', 'Red room', 'Green room']) expect(said).toContain(name);
    // No place on the plan: below it, with the word.
    expect(said).toContain('Box room: none');
    expect(said).toContain('Cellar, in any room: none');
    expect(said).toContain('Main level, room not named');
    // No plan: in the caption.
    expect(caption).toContain(
      'On no plan: back steps (carbon monoxide recorded); garret (smoke, none recorded); outside Garret, Top floor (smoke, none recorded); outside Garret, Top floor (carbon monoxide, none recorded).',
    );
  });

  it('has one sign for each: whole with its letter, or broken with the word', () => {
    const signs = drawn.drawing.shapes.filter((shape) => shape.kind === 'circle');
    const broken = signs.filter((sign) => sign.kind === 'circle' && sign.pen === 'dashed');
    // Blue, red, hall and the level's; green, box room and cellar; and three kinds in the legend.
    expect(signs).toHaveLength(4 + 3 + 3);
    expect(broken).toHaveLength(3 + 1);
    expect(said.match(/\bnone\b/g)).toHaveLength(3 + 1);
    expect(said).toContain('Smoke alarm looked for, none recorded');
    expect(said).toContain('Smoke and carbon monoxide alarm, recorded');
    expect(said).not.toContain('Carbon monoxide alarm');
  });

  it('says at its sign that an alarm is past its date', () => {
    expect(said.match(/past date/g)).toHaveLength(1);
    expect(drawn.alt).toContain('Red room: smoke recorded, past its date');
  });

  it('tells places and gaps to those who can’t see it', () => {
    expect(drawn.alt).toContain('Green room: smoke, none recorded');
    expect(drawn.alt).toContain('Hall: smoke and carbon monoxide recorded');
  });

  it('has a scale and north; its words and signs lie apart and inside', () => {
    expect(caption).toMatch(/Printed on letter paper: \S+ inch to the foot/);
    expect(caption).toContain('local code and the fire service govern');
    for (const drawing of [drawn.drawing, drawn.narrow as typeof drawn.drawing]) {
      expect(lettering(drawing)).toMatch(/ft N\b/);
      expect([overlaps(drawing), outside(drawing), crossed(drawing)]).toEqual([[], [], []]);
    }
  });

  it('never calls a house safe or compliant, and stands in the care book too', () => {
    for (const edition of ['buyer', 'care'] as const)
      expect(JSON.stringify(plan(HOUSE, edition))).not.toMatch(/complian|\bsafe\b|up to code/i);
  });
});

describe('plans that can hold no sign', () => {
  it('a sliver of a bedroom stands below its level by name', () => {
    const drawn = plan({
      levels: [{ id: 'main', name: 'Main level', grade: 'above', size: "40' x 30'", ceiling: "8'" }],
      rooms: [bedroom('blue-room', 1), { ...bedroom('slot', 14), size: "1' x 12'" }],
    } as unknown as PartialSpec);
    expect(lettering(drawn.drawing)).toContain('Slot; outside the bedrooms: none');
    expect(crossed(drawn.drawing)).toEqual([]);
  });

  it('sixty bedrooms too small for a sign are named below, all with one sign', () => {
    const rooms = Array.from({ length: 60 }, (_, i) => ({
      ...bedroom(`room-${i}`, 0),
      name: `Berth ${i}`,
      size: '6" x 6"',
      at: [`east ${4 * (i % 10) + 1}'`, `north ${5 * Math.floor(i / 10) + 1}'`],
    }));
    const drawn = plan({
      levels: [{ id: 'main', name: 'Main level', grade: 'above', size: "42' x 32'", ceiling: "8'" }],
      rooms,
    } as unknown as PartialSpec);
    for (const drawing of [drawn.drawing, drawn.narrow as typeof drawn.drawing]) {
      expect([overlaps(drawing), outside(drawing), crossed(drawing)]).toEqual([[], [], []]);
      for (const i of rooms.keys()) expect(lettering(drawing)).toMatch(new RegExp(`erth ${i}\\b`));
    }
    expect(drawn.drawing.height).toBeLessThan(520);
  });

  it('of a level too large to be seen on any sheet is left out, like its other plans', () => {
    const packet = packetOf({
      levels: [{ id: 'main', name: 'Main level', grade: 'above', size: "90000' x 90000'", ceiling: "8'" }],
      rooms: [bedroom('blue-room', 1)],
      work: [{ id: 'floor', what: 'floor', did: 'new', where: ['blue-room'] }],
    } as unknown as PartialSpec);
    const drawn = packet.sections.flatMap(({ blocks }) => blocks).filter((one) => one.kind === 'drawing');
    expect(drawn.map(({ id }) => id).filter((id) => /^(plan|drawn)-/.test(id))).toEqual([]);
    expect(allWords(packet)).toContain('Where alarms are looked for');
  });

  it('a level without rooms on it is not drawn, and the table stands alone', () => {
    const spec = {
      levels: [{ id: 'main', name: 'Main level', grade: 'above', size: "40' x 30'", ceiling: "8'" }],
      rooms: [{ ...bedroom('blue-room', 1), at: undefined }],
    } as unknown as PartialSpec;
    expect(() => plan(spec)).toThrow('no block');
    expect(allWords(packetOf(spec))).toContain('Where alarms are looked for');
  });

  it('sixty bedrooms with long names still come out apart, on a sheet of its size', () => {
    const rooms = Array.from({ length: 60 }, (_, i) => ({
      ...bedroom(`room-${i}`, 0),
      name: `Chamber of the ${'very '.repeat(i % 9)}honourable guest ${i}`,
      size: '3\'6" x 4\'6"',
      at: [`east ${4 * (i % 10)}'2"`, `north ${5 * Math.floor(i / 10)}'2"`],
    }));
    const drawn = plan({
      levels: [{ id: 'main', name: 'Main level', grade: 'above', size: "40' x 30'", ceiling: "8'" }],
      rooms,
      alarms: [{ is: 'both', where: 'room-7' }],
    } as unknown as PartialSpec);
    for (const drawing of [drawn.drawing, drawn.narrow as typeof drawn.drawing])
      expect([overlaps(drawing), outside(drawing), crossed(drawing)]).toEqual([[], [], []]);
    // All but one, and the legend's.
    const broken = drawn.drawing.shapes.filter((shape) => shape.kind === 'circle' && shape.pen === 'dashed');
    expect(broken.length).toBeGreaterThanOrEqual(59 + 1);
    expect(drawn.drawing.width).toBeLessThanOrEqual(494.01);
  });
});

describe('a sheet of alarms, measured without being drawn', () => {
  /** Bedrooms in a row, each with a sign, which a smaller scale sends below the plan one by one. */
  const level = (name: string, rooms: number): AlarmLevel => ({
    name,
    outline: rectangle([0, 0], 40 * FOOT, 10 * FOOT),
    reading: 'inches',
    rooms: Array.from({ length: rooms }, (_, i) => {
      const corners = rectangle([i * 5 * FOOT, 0], (3 + (i % 3)) * FOOT, 5 * FOOT);
      return {
        name: `Chamber ${i} of the house`,
        corners,
        spot: labelSpot(corners),
        signs: [{ warns: i % 2 === 0 ? 'smoke' : 'both', recorded: i % 4 < 2, past: i % 8 < 2 }],
      };
    }),
    notes: [{ words: 'Outside the bedrooms', sign: { warns: 'smoke', recorded: false, past: false } }],
  });
  const sheet = alarmSheet([level('Main level', 8), level('Half storey', 5), level('Cellar', 0)], []);
  const scales = Array.from({ length: 90 }, (_, i) => 0.1 * (i + 1));

  it('comes out as it was measured, at every scale', () => {
    for (const widest of [250, 494])
      for (const perFoot of scales) {
        const { width, height } = sheet.draw(perFoot, widest);
        const unlimited = sheet.fits(perFoot, widest, Number.POSITIVE_INFINITY);
        expect(unlimited).toBe(width <= widest);
        expect(sheet.fits(perFoot, widest, height)).toBe(unlimited);
        expect(sheet.fits(perFoot, widest, height - 0.01)).toBe(false);
      }
  });

  it('may be higher at a smaller scale, where more goes below the plan', () => {
    const heights = scales.map((perFoot) => sheet.draw(perFoot, 494).height);
    const rises = heights.filter((height, i) => height > (heights[i + 1] ?? height));
    expect(rises.length).toBeGreaterThan(5);
  });
});
