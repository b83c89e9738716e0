/** Alarms on the plans: every place is on the drawing or named below it, and none recorded can't be taken for one. */
import { describe, expect, it } from 'vitest';
import type { DrawingBlock } from '../../src/packet/packet.js';
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
