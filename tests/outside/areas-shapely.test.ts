/**
 * Our areas, crossings and overlaps against Shapely 1.8 (GEOS), run by the system's Python: another language and
 * another algorithm. Without that package the comparison is skipped under a name that says so.
 */
import { spawnSync } from 'node:child_process';
import { describe, expect, test } from 'vitest';
import { overlapOf, partOutside, type Region } from '../../src/tally/clipping.js';
import type { Point } from '../../src/tally/corners.js';
import { firstCrossing } from '../../src/tally/crossing.js';
import { areaOf, twiceArea } from '../../src/tally/measuring.js';
import { seeded, squareOutline, starOutline, tangledOutline } from './seeded-outlines.js';

const python = '/usr/bin/python3';
const probe = spawnSync(python, ['-c', 'import shapely.geometry']);
const has = probe.status === 0;

/** Reads outlines and pairs, writes areas, validity and the areas of what pairs share, without small pieces. */
const script = `
import json, sys
from shapely.geometry import Polygon
given = json.load(sys.stdin)
shapes = [Polygon(o) for o in given['outlines']]
def big(shape):
    pieces = getattr(shape, 'geoms', [shape])
    return sum(p.area for p in pieces if p.area >= given['smallest'])
json.dump({
  'areas': [s.area for s in shapes],
  'valid': [s.is_valid for s in shapes],
  'pairs': [[big(shapes[a].intersection(shapes[b])), big(shapes[a].difference(shapes[b])), shapes[a].union(shapes[b]).area]
            for a, b in given['pairs']],
}, sys.stdout)
`;

interface Answer {
  areas: number[];
  valid: boolean[];
  pairs: [number, number, number][];
}

const next = seeded(1_948);
const house = 100_000_000; // 10 m
const sound: Point[][] = Array.from({ length: 200 }, (_, i) => {
  const corners = (i % 2 === 0 ? starOutline : squareOutline)(next, house);
  const [east, north] = [Math.round((next() - 0.5) * house), Math.round((next() - 0.5) * house)];
  return corners.map(([x, y]): Point => [x + east, y + north]);
});
const tangled: Point[][] = Array.from({ length: 100 }, () => tangledOutline(next, 3_048_000));
const outlines = [...sound, ...tangled];
const pairs = sound.map((_, i): [number, number] => [i, (i * 7 + 1) % sound.length]);

function ask(): Answer {
  const input = JSON.stringify({ outlines, pairs, smallest: 254_000 ** 2 });
  const run = spawnSync(python, ['-c', script], { input, encoding: 'utf8', maxBuffer: 2 ** 26 });
  if (run.status !== 0) throw new Error(run.stderr);
  return JSON.parse(run.stdout) as Answer;
}

describe.skipIf(!has)(
  has
    ? '300 outlines against Shapely'
    : `skipped: ${python} has no shapely package (Debian: python3-shapely)`,
  () => {
    const answer = has ? ask() : { areas: [], valid: [], pairs: [] };

    test('areas of sound outlines agree', () => {
      for (const [i, corners] of sound.entries()) {
        const theirs = answer.areas[i] as number;
        expect(Math.abs(Number(areaOf(corners)) - theirs), JSON.stringify(corners)).toBeLessThan(
          theirs * 1e-12 + 1,
        );
      }
    });

    test('an outline crosses itself exactly where Shapely calls it invalid', () => {
      expect(answer.valid).toHaveLength(300);
      for (const [i, corners] of outlines.entries())
        expect(firstCrossing(corners) === undefined, JSON.stringify(corners)).toBe(answer.valid[i]);
      // Both answers were put to the test among the tangled ones.
      const tangledValid = answer.valid.slice(sound.length).filter((valid) => valid).length;
      expect(tangledValid).toBeGreaterThan(5);
      expect(tangledValid).toBeLessThan(95);
    });

    test('overlaps, parts outside and unions agree, and add up', () => {
      for (const [k, [a, b]] of pairs.entries()) {
        const [first, second] = [sound[a] as Point[], sound[b] as Point[]];
        const [common, outside, together] = answer.pairs[k] as [number, number, number];
        // Corners made by slanted edges are set to the nearest 0.1 µm: half a unit along 100 m at the most.
        const slack = 1e9 + together * 1e-12;
        const near = (region: Region, theirs: number) =>
          expect(Math.abs(Number(region.area) - theirs), JSON.stringify({ first, second })).toBeLessThan(
            slack,
          );
        near(overlapOf(first, second), common);
        near(partOutside(first, second), outside);
      }
      expect(answer.pairs.filter(([common]) => common > 0).length).toBeGreaterThan(100);
      expect(answer.pairs.filter(([, outside]) => outside > 0).length).toBeGreaterThan(100);
    });

    test('a region’s pieces have whole corners, turn anticlockwise and make up its area', () => {
      for (const [a, b] of pairs) {
        const region = partOutside(sound[a] as Point[], sound[b] as Point[]);
        let doubled = 0n;
        for (const { outer, holes } of region.polygons) {
          expect(twiceArea(outer)).toBeGreaterThan(0n);
          doubled += twiceArea(outer);
          for (const hole of holes) {
            expect(twiceArea(hole)).toBeLessThan(0n);
            doubled += twiceArea(hole);
          }
          for (const [x, y] of outer) expect(Number.isSafeInteger(x) && Number.isSafeInteger(y)).toBe(true);
        }
        expect(region.area).toBe(doubled / 2n);
      }
    });
  },
);
