/** What holds for the packets of any house: nothing withheld, ids once, links that lead somewhere, the same every time. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { EDITION_NAMES } from '../../src/build.js';
import type { HouseSpec } from '../../src/facts/house.js';
import { composePacket } from '../../src/packet/compose.js';
import type { PhotoOnDisk } from '../../src/packet/context.js';
import type { Packet } from '../../src/packet/packet.js';
import { anchorsOf } from '../../src/packet/words-of.js';
import { deriveTally } from '../../src/tally/tally.js';
import { plantCanaries } from './canaries.js';
import { houseOf, MADE_AS_OF, madeSpec } from './made-house.js';

const SEED = 20260630;
const HOUSES = fc.sample(madeSpec, { seed: SEED, numRuns: 60 });

function packetsOf(spec: HouseSpec): Packet[] {
  const house = houseOf(spec);
  const { tally, diagnostics } = deriveTally(house, MADE_AS_OF);
  expect(diagnostics.filter((one) => one.severity === 'error')).toEqual([]);
  const photos = new Map(
    Object.keys(house.photos).map((id): [string, PhotoOnDisk] => [
      id,
      {
        id,
        name: `${id}.jpg`,
        width: 320,
        height: 240,
        takenAt: '2026-02-21T09:14:02',
        content: 'f00d',
      },
    ]),
  );
  return EDITION_NAMES.map((edition) =>
    composePacket({ folder: 'made-house', house, tally, edition, photos }),
  );
}

/** Every value under a key, however deep. */
function valuesOf(value: unknown, key: string): unknown[] {
  if (Array.isArray(value)) return value.flatMap((one) => valuesOf(one, key));
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([name, inner]) => [
    ...(name === key ? [inner] : []),
    ...valuesOf(inner, key),
  ]);
}

describe('of sixty made houses', () => {
  // Counted branches and a busy machine take three times as long.
  it('no edition holds what is withheld from it', { timeout: 60_000 }, () => {
    for (const spec of HOUSES) {
      const planted = plantCanaries(spec);
      for (const packet of packetsOf(planted.spec)) {
        const said = JSON.stringify(packet);
        const found = planted.canaries
          .filter((canary) => canary.mayBeCarried !== true && canary.keptFrom.includes(packet.edition.name))
          .filter((canary) => said.includes(canary.text))
          .map((canary) => `${packet.edition.name}: ${canary.where}`);
        expect(found).toEqual([]);
        expect(said).toContain(planted.sung);
      }
    }
  });

  it('no packet gives an id twice, and every link leads to one of its ids', () => {
    for (const spec of HOUSES)
      for (const packet of packetsOf(spec)) {
        const anchors = anchorsOf(packet);
        const ids = packet.sections.flatMap((section) => [
          section.id,
          ...section.blocks.flatMap((block) => valuesOf({ ...block, drawing: 0, narrow: 0 }, 'id')),
        ]);
        expect(ids.filter((id, i) => ids.indexOf(id) !== i)).toEqual([]);
        // A line of a drawing has a `to` as well: a point.
        const links = valuesOf(packet.sections, 'to').filter((to) => typeof to === 'string');
        expect(links.filter((to) => !anchors.has(to))).toEqual([]);
        expect(ids.length).toBeGreaterThan(packet.sections.length);
      }
  });

  it('the same facts give the same packet, and another day another digest', () => {
    for (const spec of HOUSES.slice(0, 20)) {
      const once = packetsOf(spec);
      expect(JSON.stringify(packetsOf(structuredClone(spec)))).toBe(JSON.stringify(once));
      const { tally } = deriveTally(houseOf(spec), '2026-07-01');
      const later = composePacket({
        folder: 'made-house',
        house: houseOf(spec),
        tally,
        edition: 'buyer',
        photos: new Map(),
      });
      expect(once.map((packet) => packet.digest)).not.toContain(later.digest);
    }
  });

  it('no made string is empty, and no text has a hole in it', () => {
    for (const spec of HOUSES)
      for (const packet of packetsOf(spec)) {
        const said = JSON.stringify(packet);
        expect(/undefined|\[object Object\]|NaN|Infinity/u.exec(said)?.[0]).toBeUndefined();
        expect(packet.photos.every((photo) => photo.alt !== '')).toBe(true);
      }
  });
});
