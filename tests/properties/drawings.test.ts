/** What holds for the plans of any house: their words lie apart, inside, and across no wall, and every alarm's place is told. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { HouseSpec } from '../../src/facts/house.js';
import { composePacket } from '../../src/packet/compose.js';
import type { DrawingBlock } from '../../src/packet/packet.js';
import { deriveTally, type Tally } from '../../src/tally/tally.js';
import { crossed, outside, overlaps, textBoxes } from '../rooms/drawn-boxes.js';
import { plain } from '../rooms/packet-of.js';
import { houseOf, MADE_AS_OF, madeSpec } from './made-house.js';

const SEED = 20260630;

/** The made house with its rooms laid out, two of them kept off the plans, and some alarms. */
function laidOut(spec: HouseSpec): HouseSpec {
  const levels = (spec.levels ?? []).map((level) => ({ ...level, size: "62' x 40'" }));
  const rooms = (spec.rooms ?? []).map((room, i) =>
    i % 5 === 4 ? room : { ...room, at: [`east ${15 * (i % 4) + 1}'`, "north 1'"] },
  );
  const alarms = rooms
    .filter((_, i) => i % 2 === 0)
    .map((room, i) => ({
      is: i % 2 === 0 ? 'smoke' : 'both',
      where: room.id,
      made: i === 0 ? '2011' : '2024',
    }));
  const work = (spec.work ?? []).map((one, i) => ({
    ...one,
    where: rooms.slice(i, i + 2).map((room) => room.id),
  }));
  return { ...spec, levels, rooms, alarms, work } as HouseSpec;
}

const HOUSES = fc.sample(madeSpec, { seed: SEED, numRuns: 40 }).map(laidOut);

function plansOf(spec: HouseSpec): { plans: DrawingBlock[]; tally: Tally } {
  const house = houseOf(spec);
  const { tally, diagnostics } = deriveTally(house, MADE_AS_OF);
  expect(diagnostics.filter((one) => one.severity === 'error')).toEqual([]);
  const packet = composePacket({ folder: 'made-house', house, tally, edition: 'buyer', photos: new Map() });
  const blocks = packet.sections.flatMap((section) => section.blocks);
  const plans = blocks.flatMap((block) =>
    block.kind === 'drawing' && /^(plan|drawn)-/.test(block.id) ? [block] : [],
  );
  return { plans, tally };
}

describe('the plans of forty made houses', () => {
  const all = HOUSES.map(plansOf);

  it('have words that lie apart, inside the drawing, and across no wall', () => {
    for (const { plans } of all)
      for (const plan of plans)
        for (const drawing of [plan.drawing, plan.narrow])
          if (drawing !== undefined)
            expect([plan.id, overlaps(drawing), outside(drawing), crossed(drawing)]).toEqual([
              plan.id,
              [],
              [],
              [],
            ]);
    const kinds = all.flatMap(({ plans }) => plans.map(({ id }) => id.replace(/-level-\d+$/, '')));
    for (const kind of ['plan', 'drawn-done', 'drawn-alarms'])
      expect(kinds.filter((one) => one === kind).length).toBeGreaterThan(10);
  });

  it('tell every place of an alarm to the reader of the text in the picture’s stead, or in the caption', () => {
    let missing = 0;
    for (const { plans, tally } of all) {
      const plan = plans.find(({ id }) => id === 'drawn-alarms');
      if (plan === undefined) continue;
      const said = `${plan.alt} ${plain(plan.caption)}`.toLowerCase();
      const none = tally.alarms.places.filter((place) => place.recorded.length === 0);
      missing += none.length;
      expect(said.match(/none recorded/g)?.length ?? 0).toBe(none.length);
      expect(said.match(/(smoke|monoxide) recorded/g)?.length ?? 0).toBe(
        new Set([...tally.alarms.places.flatMap((place) => place.recorded), ...tally.alarms.others]).size,
      );
    }
    expect(missing).toBeGreaterThan(20);
  });

  it('bear in both forms the numbers that the caption tells', () => {
    let numbers = 0;
    for (const { plans } of all)
      for (const plan of plans.filter(({ id }) => id.startsWith('drawn-done')))
        for (const run of plan.caption) {
          const number = /^(\d+) /.exec(run.to === undefined ? '' : run.text)?.[1];
          if (number === undefined) continue;
          numbers++;
          for (const drawing of [plan.drawing, plan.narrow ?? plan.drawing])
            expect(textBoxes(drawing).map(({ text }) => text.split(' ')[0])).toContain(number);
        }
    expect(numbers).toBeGreaterThan(5);
  });
});
