/** Several houses made in several processes: one that goes wrong takes no other with it. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, expect, it } from 'vitest';
import type { HouseOrder } from '../../src/house-order.js';
import { writeHouse } from './cli-program.js';

// The compiled one: its processes run compiled files.
const { buildBeside } = (await import(
  new URL('../../dist/build-beside.js', import.meta.url).href
)) as typeof import('../../src/build-beside.js');

const scratch = mkdtempSync(path.join(tmpdir(), 'beside-'));
afterAll(() => rmSync(scratch, { recursive: true, force: true }));

it('a process that meets a mistake is told with its house, and the others are made', async () => {
  const orders = ['alder-lane', 'birch-lane', 'cedar-lane'].map(
    (name): HouseOrder => ({
      folder: writeHouse(scratch, name),
      shown: name,
      asOf: '2026-11-20',
      editions: ['agent'],
      out: path.join(scratch, 'out'),
      outShown: 'out',
      paper: 'letter',
    }),
  );
  // No folder at all is no house of anybody's: a mistake of the program that asked.
  const [first, , third] = orders;
  const wrong = { ...orders[1], folder: undefined } as unknown as HouseOrder;
  const made = [];
  let ended = 0;
  for await (const one of buildBeside([first, wrong, third] as HouseOrder[], 2, () => ended++))
    made.push(one);
  expect(ended).toBe(3);
  expect(made.map((one) => one.made.length)).toEqual([1, 0, 1]);
  expect(made[1]?.located.map(({ diagnostic }) => [diagnostic.code, diagnostic.file])).toEqual([
    ['bug.internal', 'birch-lane'],
  ]);
  expect(made[1]?.located[0]?.diagnostic.hints.join()).toContain('sillplate build ./birch-lane');
});
