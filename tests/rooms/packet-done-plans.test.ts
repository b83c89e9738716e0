/** What was done, on the plans: in the room where it fits, else by number; places without a plan by name. */
import { describe, expect, it } from 'vitest';
import type { DrawingBlock, EditionName, Packet } from '../../src/packet/packet.js';
import { crossed, lettering, outside, overlaps } from './drawn-boxes.js';
import { allWords, block, packetOf, plain } from './packet-of.js';

const HOUSE = {
  house: { bought: '2026-01-05' },
  people: [{ id: 'fern', name: 'Fern Hollow Plumbing', trade: 'plumber' }],
  levels: [
    { id: 'main', name: 'Main level', grade: 'above', size: "40' x 30'", ceiling: "8'" },
    { id: 'loft', name: 'Loft', grade: 'above', ceiling: "8'" },
  ],
  structures: [{ id: 'shed', name: 'Tool shed', is: 'shed', attached: false, size: "8' x 8'" }],
  stairs: [{ id: 'steps', name: 'Back steps', risers: 3, handrail: 'yes' }],
  rooms: [
    {
      id: 'kitchen',
      level: 'main',
      use: 'kitchen',
      size: "18' x 14'",
      at: ["east 1'", "north 1'"],
      heated: true,
      finishes: [
        { on: 'floor', what: 'plank', done: '2026-03', by: 'owner', work: 'floors' },
        { on: 'counter', what: 'slab', done: '2026-04', by: 'owner', work: 'counters' },
        { on: 'walls', what: 'paint', done: '2026-04', by: 'owner' },
        { on: 'trim', what: 'pine, paint', done: '2026-03', by: 'owner', work: 'paint' },
      ],
    },
    {
      id: 'closet',
      name: 'Closet',
      level: 'main',
      use: 'closet',
      size: "3' x 2'",
      at: ["east 22'", "north 1'"],
      finishes: [{ on: 'floor', what: 'plank', done: '2026-03', by: 'owner', work: 'floors' }],
    },
    { id: 'den', name: 'Den', level: 'main', use: 'family', size: "18' x 12'", at: ["east 1'", "north 16'"] },
    { id: 'study', name: 'Study', level: 'main', use: 'office', size: "9' x 9'" },
    { id: 'eyrie', name: 'Eyrie', level: 'loft', use: 'office', size: "9' x 9'" },
  ],
  work: [
    { id: 'paint', what: 'trim', did: 'painted', where: ['kitchen', 'study'], done: '2026-03' },
    {
      id: 'floors',
      what: 'floors of kitchen and closet',
      did: 'new',
      where: ['kitchen', 'closet'],
      done: '2026-03',
    },
    { id: 'counters', what: 'kitchen counters', did: 'replaced', where: ['kitchen'], done: '2026-04' },
    {
      id: 'lines',
      what: 'water lines, kitchen',
      did: 'moved',
      where: ['kitchen'],
      by: 'fern',
      done: '2026-04',
    },
    { id: 'wires', what: 'new wires', did: 'added', where: ['kitchen', 'study'], done: '2026-04' },
    { id: 'study-shelf', what: 'shelf', did: 'new', where: ['study'], done: '2026-04' },
    { id: 'eyrie-floor', what: 'boards', did: 'repaired', where: ['eyrie'], done: '2026-04' },
    { id: 'shed-door', what: 'door', did: 'new', where: ['shed'], done: '2026-04' },
    { id: 'steps-rail', what: 'rail', did: 'new', where: ['steps'], done: '2026-04' },
    { id: 'gutters', what: 'gutters', did: 'cleaned', where: ['main'], done: '2026-04' },
    { id: 'all', what: 'keys', did: 'new', done: '2026-04' },
  ],
} as never;

const plan = (packet: Packet): DrawingBlock => block(packet, 'drawn-done-main') as DrawingBlock;

describe('the plan of what was done', () => {
  const packet = packetOf(HOUSE);
  const drawn = plan(packet);
  const caption = plain(drawn.caption);

  it('says in a room what was done there, in the words of the records', () => {
    const said = lettering(drawn.drawing);
    // Its one-place work by its own name without the room, and its share of the floors by the finish.
    expect(said).toContain('Replaced: counters');
    expect(said).toContain('Moved: water lines');
    expect(said).toContain('New: floor');
    // The trim was painted, as its work says: that it was done makes it no new one.
    expect(said).toContain('Painted: walls, trim');
    expect(said).toContain('Added: new wires');
    expect(said).not.toContain('floors of kitchen');
    expect(said).not.toContain('slab');
  });

  it('numbers a room that is too small, with its words and the way to the text in the caption', () => {
    expect(caption).toContain('1 Closet: new floor.');
    expect(drawn.caption.find((run) => run.text === '1 Closet')?.to).toBe('done-several');
  });

  it('leaves a room without work plain, and a word says so', () => {
    const said = lettering(drawn.drawing);
    expect(said).toContain('Den');
    expect(said).toContain('No work recorded');
    expect(drawn.alt).toContain('No work is recorded in Den.');
    const washes = drawn.drawing.shapes.filter((shape) => shape.kind === 'path' && shape.fill === 'wash');
    // Kitchen, closet and the legend's sample.
    expect(washes).toHaveLength(3);
  });

  it('names what it can’t show: the whole level in words, other places with a way to the text', () => {
    expect(caption).toContain('Of the level as a whole: gutters, cleaned.');
    expect(caption).toContain(
      'On no plan, but in the text: the whole house, study, eyrie, back steps and tool shed.',
    );
    const ways = drawn.caption.flatMap((run) => run.to ?? []);
    expect(ways).toEqual(
      expect.arrayContaining(['done-house', 'done-study', 'done-eyrie', 'done-shed', 'done-steps']),
    );
    const headings = packet.sections.flatMap((section) => section.blocks.map((one) => one.id));
    for (const way of ways) expect(headings).toContain(way);
  });

  it('tells every room’s work to those who can’t see it', () => {
    expect(drawn.alt).toContain('Closet: new floor');
    expect(drawn.alt).toMatch(/Kitchen: .*replaced counters/);
  });

  it('has a scale and north, and its words lie apart and inside', () => {
    expect(caption).toMatch(/Printed on letter paper: \S+ inch to the foot/);
    for (const drawing of [drawn.drawing, drawn.narrow as typeof drawn.drawing]) {
      expect(lettering(drawing)).toMatch(/10 ft.* N\b/);
      expect([overlaps(drawing), outside(drawing), crossed(drawing)]).toEqual([[], [], []]);
    }
  });

  it('names nobody, in any edition that has it', () => {
    for (const edition of ['buyer', 'file'] as const)
      expect(JSON.stringify(plan(packetOf(HOUSE, edition)))).not.toContain('Fern Hollow');
    for (const edition of ['agent', 'care'] satisfies EditionName[])
      expect(allWords(packetOf(HOUSE, edition))).not.toContain('room by room');
  });

  it('stands before the first room of its level', () => {
    const ids = packet.sections.flatMap((section) => section.blocks.map((one) => one.id));
    expect(ids.indexOf('drawn-done-main')).toBeLessThan(ids.indexOf('done-kitchen'));
    expect(ids.indexOf('drawn-done-main')).toBeGreaterThan(ids.indexOf('done-several'));
  });
});

it('stands at the end where no group of the text is about its level', () => {
  const room = (id: string, level: string) => ({ id, level, use: 'hall', size: "9' x 9'", at: [] });
  const level = (id: string) => ({ id, name: id, grade: 'above', size: "20' x 20'", ceiling: "8'" });
  const packet = packetOf({
    levels: [level('main'), level('upper')],
    rooms: [room('hall', 'main'), room('landing', 'upper')],
    work: [
      { id: 'paint', what: 'walls', did: 'painted', where: ['hall', 'landing'], done: '2026-03' },
      { id: 'hook', what: 'hook', did: 'new', where: ['landing'], done: '2026-03' },
    ],
  } as never);
  const ids = packet.sections.flatMap((section) => section.blocks.map((one) => one.id));
  const order = ['done-several', 'drawn-done-upper', 'done-landing', 'drawn-done-main'];
  expect(ids.filter((id) => order.includes(id))).toEqual(order);
});

it('a very long name of a piece of work is cut on the drawing, not in the text', () => {
  const what = `${'lifting and turning of boards, '.repeat(3)}twice`;
  const packet = packetOf({
    levels: [{ id: 'main', name: 'Main level', grade: 'above', size: "40' x 30'", ceiling: "8'" }],
    rooms: [{ id: 'hall', level: 'main', use: 'hall', size: "4' x 12'", at: [] }],
    work: [{ id: 'boards', what, did: 'repaired', where: ['hall'] }],
  } as never);
  const drawn = plan(packet);
  expect(plain(drawn.caption)).not.toContain('twice');
  expect(plain(drawn.caption)).toContain('lifting and turning of boards, lifting');
  expect(allWords(packet)).toContain(what.replace(/^l/, 'L'));
});

it('no plan is drawn where nothing was done in a room whose place is known', () => {
  const packet = packetOf({
    levels: [{ id: 'main', name: 'Main level', grade: 'above', size: "40' x 30'", ceiling: "8'" }],
    rooms: [{ id: 'hall', level: 'main', use: 'hall', size: "4' x 12'", at: [] }],
    work: [{ id: 'boards', what: 'gutters', did: 'repaired', where: ['main'] }],
  } as never);
  expect(() => plan(packet)).toThrow('no block');
});
