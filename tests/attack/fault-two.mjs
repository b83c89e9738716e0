/**
 * Two runs on one house at once, again and again, the second a random moment after the first.
 *
 * Both end, each with status 0 or with a message in plain words; what lies there afterwards is whole, and what the two
 * leave if one follows the other, in one order or the other.
 */
import path from 'node:path';
import { commandNamed, differing, leftovers, wholeOf } from './fault-commands.mjs';
import { copyHome, foldersIn, HOUSE, writeFaultHouse } from './fault-house.mjs';
import { refused } from './fault-told.mjs';
import { verifyAll } from './fault-whole.mjs';
import { program, Runner, within } from './program.mjs';

/**
 * @typedef {object} Pair
 * @property {string} name
 * @property {(home: string) => [string[], string[]]} words
 * @property {boolean} [adds] each adds something of its own, so that both may be there
 */

const day = (/** @type {number} */ n) => `2026-06-0${n}`;
const words = (/** @type {string} */ name, /** @type {string} */ home, /** @type {number} */ n) =>
  commandNamed(name).words(home, day(n));
const build = (/** @type {string} */ home, /** @type {number} */ n, /** @type {string} */ edition) => [
  'build',
  HOUSE,
  '--content',
  path.join(home, 'content'),
  '--out',
  path.join(home, 'out'),
  '--edition',
  edition,
  '--as-of',
  day(n),
];

/** @type {readonly Pair[]} */
const PAIRS = [
  { name: 'build + build', words: (home) => [build(home, 2, 'agent,visit'), build(home, 3, 'agent,visit')] },
  // Each keeps what the other makes.
  {
    name: 'build of one edition + build of another',
    words: (home) => [build(home, 2, 'agent'), build(home, 3, 'visit')],
  },
  {
    name: 'build + archive',
    words: (home) => [build(home, 2, 'agent'), words('archive --form folder', home, 3)],
    adds: true,
  },
  {
    name: 'deliver + deliver',
    words: (home) => [words('deliver', home, 2), words('deliver', home, 3)],
    adds: true,
  },
  {
    name: 'archive + archive',
    words: (home) => [words('archive --form zip', home, 2), words('archive --form zip', home, 3)],
    adds: true,
  },
  {
    name: 'costs import + costs import',
    words: (home) => [words('costs import', home, 2), words('costs import', home, 2)],
  },
  {
    name: 'build + photos --accept',
    words: (home) => [build(home, 2, 'agent,file'), words('photos --accept', home, 2)],
  },
  {
    name: 'photos --accept + photos --accept',
    words: (home) => [words('photos --accept', home, 2), words('photos --accept', home, 2)],
  },
  { name: 'new + new', words: (home) => [words('new', home, 2), words('new', home, 2)] },
];

/**
 * @param {string} scratch
 * @param {number} times of each pair
 * @param {() => number} random
 * @param {(line: string) => void} say
 * @param {readonly string[]} [only] names of pairs; left out: all
 */
export async function runTwo(scratch, times, random, say, only = PAIRS.map(({ name }) => name)) {
  const runners = [new Runner(), new Runner()];
  try {
    const rows = [];
    for (const pair of PAIRS.filter(({ name }) => only.includes(name)))
      rows.push(await runPair(pair, { scratch, times, random, say, runners }));
    return rows;
  } finally {
    for (const one of runners) await one.end();
  }
}

/**
 * @param {Pair} pair
 * @param {{ scratch: string, times: number, random: () => number, say: (line: string) => void, runners: Runner[] }} how
 */
async function runPair(pair, { scratch, times, random, say, runners }) {
  const { origin, home, one, other } = foldersIn(scratch, 'origin', 'home', 'one', 'other');
  const ends = [one, other];
  await writeFaultHouse(origin);
  if (!/accept|import|new/.test(pair.name)) {
    const first = await program(build(origin, 1, 'agent,visit,buyer'));
    if (first.status !== 0) throw new Error(`${pair.name}: ${first.out}${first.error}`);
  }
  // What is left if the two follow each other.
  let took = 0;
  for (const [n, end] of ends.entries()) {
    copyHome(origin, end);
    const [a, b] = pair.words(end);
    for (const one of n === 0 ? [a, b] : [b, a]) took = Math.max(took, (await program(one)).took);
  }
  const broken = /** @type {string[]} */ ([]);
  let refusals = 0;
  for (let n = 0; n < times; n++) {
    copyHome(origin, home);
    const [first, second] = pair.words(home);
    const offset = random() * took * 1.2;
    const runs = [runners[0]?.run(first), wait(offset).then(() => runners[1]?.run(second))];
    const both = await within(Promise.all(runs), pair.name);
    const tell = (/** @type {string | undefined} */ wrong) => {
      if (wrong !== undefined) broken.push(`run ${n}, ${offset.toFixed(0)} ms apart: ${wrong}`);
    };
    let done = 0;
    for (const ended of both) {
      if (ended?.status === 0) done++;
      else {
        refusals++;
        if (pair.name === 'new + new' && ended?.status === 2 && /is there already/.test(ended.error))
          continue;
        tell(ended && refused(ended, /same command again|does not end|is there already/));
      }
    }
    if (done === 0) tell('neither was done');
    const left = leftovers(home);
    if (left.length > 0) tell(`left over: ${left.join(', ')}`);
    tell(await verifyAll(home));
    // One that was refused, typed again, makes it whole.
    if (done < 2) for (const one of [first, second]) await program(one);
    if (pair.adds !== true && !ends.some((end) => isSame(home, end)))
      tell(`it is as neither order leaves it: ${differing(home, ends[0] ?? '')}`);
  }
  say(`${pair.name}: ${times} times, ${refusals} runs refused, ${broken.length} broken`);
  return { command: pair.name, times, refusals, broken };
}

const wait = (/** @type {number} */ ms) => new Promise((resolve) => setTimeout(resolve, ms));

/** @param {string} a @param {string} b */
const isSame = (a, b) => wholeOf(a) === wholeOf(b);
