/** Two packets whose numbered statements all differ are paired in time: each word knows who has it. */
import { expect, it } from 'vitest';
import { pairFacts } from '../../src/packet/changes-pairs.js';
import { leastMs } from '../tools/least-ms.js';

const ENOUGH = 4000;

it('pairs thousands of numbered statements that all differ, and still finds the one that is alike', async () => {
  const said = (count: number, tag: string) =>
    Array.from({ length: count }, (_, n) => ({
      id: `condition-${n}`,
      section: 'Rooms',
      says: `${tag}${n}a ${tag}${n}b ${tag}${n}c ${tag}${n}d`,
    }));
  const like = (id: string, last: string) => ({ id, section: 'Rooms', says: `the oak floor is ${last}` });
  const was = [...said(10_000, 'w'), like('condition-10000', 'worn')];
  const is = [like('condition-20000', 'new'), ...said(1000, 'i')];
  expect(pairFacts(was, is).pairs).toEqual([{ was: was.at(-1), is: is[0] }]);
  expect(await leastMs(() => pairFacts(was, is), ENOUGH)).toBeLessThan(ENOUGH);
}, 60_000);
