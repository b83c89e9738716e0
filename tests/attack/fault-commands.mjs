/**
 * The commands that write, each as words to type in a folder of `fault-house.mjs`, and what lies there as one thing:
 * after a fault, every such thing is as before or as after, and never in between.
 */
import { existsSync, readdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { HOUSE, houseIn, OTHER } from './fault-house.mjs';
import { fingerprint, program } from './program.mjs';

/**
 * @typedef {object} Command
 * @property {string} name
 * @property {(home: string, day: string) => string[]} words
 * @property {(home: string) => string[]} writes the things it may change, as paths from `home`
 * @property {boolean} [adds] it adds things beside those that are there, in the folders that `writes` names
 * @property {(home: string) => void} [prepare] after the first run, before the second
 * @property {boolean} [begun] what it makes is not there at first
 */

const places = (/** @type {string} */ home) => ({
  content: ['--content', path.join(home, 'content')],
  out: ['--out', path.join(home, 'out')],
});

const packets = () => [`out/${HOUSE}`, `out/${OTHER}`];
const own = (/** @type {string[]} */ ...names) => names.map((name) => `content/${HOUSE}/${name}`);

/** @param {'folder' | 'zip' | 'tar'} form @returns {Command} */
const archive = (form) => ({
  name: `archive --form ${form}`,
  words: (home, day) => {
    const { content, out } = places(home);
    const to = ['--to', path.join(home, 'archive')];
    return ['archive', HOUSE, ...content, ...out, ...to, '--form', form, '--as-of', day];
  },
  writes: () => [`archive/${HOUSE}`, `out/${HOUSE}`],
  adds: true,
  prepare: (home) => writeFileSync(path.join(houseIn(home), 'note.txt'), 'a new paper\n'),
});

const COLUMNS = 'date=Posting Date,payee=Description,amount=Amount';

/** @type {readonly Command[]} */
export const COMMANDS = [
  {
    name: 'build',
    words: (home, day) => {
      const { content, out } = places(home);
      return ['build', HOUSE, ...content, ...out, '--edition', 'agent,file', '--as-of', day];
    },
    writes: packets,
  },
  {
    name: 'build --jobs 2',
    words: (home, day) => {
      const { content, out } = places(home);
      return ['build', ...content, ...out, '--edition', 'agent', '--jobs', '2', '--as-of', day];
    },
    writes: packets,
  },
  {
    name: 'build --stale',
    words: (home, day) => {
      const { content, out } = places(home);
      return ['build', '--stale', ...content, ...out, '--edition', 'agent', '--as-of', day];
    },
    writes: packets,
  },
  archive('folder'),
  archive('zip'),
  archive('tar'),
  {
    name: 'deliver',
    words: (home, day) => {
      const { content, out } = places(home);
      const to = ['--edition', 'agent', '--to', day, '--as-of', day, '--on', day];
      return ['deliver', HOUSE, ...content, ...out, ...to];
    },
    writes: () => own('deliveries'),
    adds: true,
  },
  {
    name: 'costs import',
    words: (home) => {
      const { content } = places(home);
      const columns = ['--columns', COLUMNS, '--paid-is', 'negative'];
      return ['costs', 'import', path.join(home, 'bank.csv'), HOUSE, ...content, '--yes', ...columns];
    },
    writes: () => own('costs.csv', 'imports/seen.csv', 'imports/columns.yaml'),
    begun: true,
  },
  {
    name: 'photos --accept',
    words: (home, day) => ['photos', HOUSE, ...places(home).content, '--accept', 'floor', '--as-of', day],
    writes: () => own('house.yaml'),
    begun: true,
  },
  {
    name: 'new',
    words: (home) => ['new', path.join(home, 'content', 'new-lane'), '--yes'],
    writes: () => ['content/new-lane'],
    begun: true,
  },
];

/** @param {string} name */
export function commandNamed(name) {
  const found = COMMANDS.find((one) => one.name === name);
  if (found === undefined) throw new Error(`there is no command ${name}`);
  return found;
}

/** Leftovers of our own: half-made things, locks, what was set aside. */
const LEFT = /(^|\/)\.sillplate-(old|making|writing|lock)|(^|\/)\.making-|\/\.unfinished\.json$/;
/** Copies of what was there, of which a second try may make a second. */
const COPY = /\.before-(photos|import)(-\d+)?$/;
const CACHE = /(^|\/)\.(photo|paper)-cache\//;

/** What is left over in a folder. @param {string} home */
export const leftovers = (home) =>
  existsSync(home)
    ? readdirSync(home, { recursive: true, encoding: 'utf8' }).filter(
        (file) => LEFT.test(file) && !/\.sillplate-made\.json$/.test(file),
      )
    : [];

/** All that is no leftover, cache or copy. @param {string} home @param {(file: string) => boolean} [passes] */
export const wholeOf = (home, passes = () => true) =>
  fingerprint(home, (file) => !LEFT.test(file) && !COPY.test(file) && !CACHE.test(file) && passes(file));

/** @param {string} home @param {string} thing */
const at = (home, thing) => fingerprint(path.join(home, ...thing.split('/')), (file) => !LEFT.test(file));

/**
 * What is broken after a fault, in words; undefined if all is well. `origin`: before; `after`: what a run leaves that
 * meets no fault.
 *
 * @param {Command} command
 * @param {{ origin: string, after: string, home: string }} places
 * @param {(thing: string) => boolean} [counts] whether a thing is held against the two states
 * @returns {string | undefined}
 */
export function brokenAfterFault(command, { origin, after, home }, counts = () => true) {
  const things = command.writes(home);
  const isOther = (/** @type {string} */ file) =>
    !things.some((thing) => file === thing || file.startsWith(`${thing}/`));
  if (wholeOf(home, isOther) !== wholeOf(origin, isOther)) return 'something else was changed';
  for (const thing of things.filter(counts)) {
    const made = command.adds === true && !thing.startsWith('out/');
    if (made) {
      const wrong = brokenAmong({ origin, after, home }, thing);
      if (wrong !== undefined) return wrong;
      continue;
    }
    const left = at(home, thing);
    const may = [at(origin, thing), at(after, thing)];
    if (left === undefined && may[0] !== undefined) {
      // Between the two renames it bears its other name.
      const aside = path.join(home, path.dirname(thing), `.sillplate-old-${path.basename(thing)}`);
      if (!may.includes(fingerprint(aside))) return `${thing} is gone`;
    } else if (!may.includes(left)) return `${thing} is neither as before nor as after`;
  }
  const copies = brokenCopies({ origin, home });
  return copies;
}

/** @param {{ origin: string, after: string, home: string }} homes @param {string} thing */
function brokenAmong({ origin, after, home }, thing) {
  const names = (/** @type {string} */ place) =>
    existsSync(path.join(place, thing))
      ? readdirSync(path.join(place, thing)).filter((name) => !name.startsWith('.'))
      : [];
  const old = names(origin);
  for (const name of old)
    if (at(home, `${thing}/${name}`) !== at(origin, `${thing}/${name}`))
      return `${thing}/${name} was changed`;
  for (const name of names(home))
    if (!old.includes(name) && at(home, `${thing}/${name}`) !== at(after, `${thing}/${name}`))
      return `${thing}/${name} is half made`;
  return undefined;
}

/** A copy of what was there is that, whole. @param {{ origin: string, home: string }} homes */
function brokenCopies({ origin, home }) {
  const known = new Set(
    (fingerprint(origin) ?? '').split('\n').map((line) => line.slice(line.lastIndexOf(' ') + 1)),
  );
  for (const line of (fingerprint(home, (file) => COPY.test(file)) ?? '').split('\n')) {
    const digest = line.slice(line.lastIndexOf(' ') + 1);
    if (line !== '' && !known.has(digest)) return `${line.split(' ')[0]} is no copy of what was there`;
  }
  return undefined;
}

/**
 * What is wrong once the same command was typed again without a fault.
 *
 * @param {Command} command
 * @param {{ after: string, home: string }} homes
 * @param {{ status: number | null, out: string, error: string }} ended
 */
export function brokenAtTheEnd(command, { after, home }, ended) {
  // A house that was begun whole before the fault is there already.
  const isThere = command.name === 'new' && ended.status === 2 && /is there already/.test(ended.error);
  if (ended.status !== 0 && !isThere) return `the next run: ${ended.status} ${ended.out}${ended.error}`;
  const isCounted = (/** @type {string} */ file) =>
    // A delivery, or a bag, that was whole before the fault is followed by the one that was asked for again.
    !(command.adds === true && /^(archive\/[^/]+|content\/[^/]+\/deliveries)\//.test(file));
  if (wholeOf(home, isCounted) !== wholeOf(after, isCounted))
    return `after the next run something is otherwise: ${differing(home, after, isCounted)}`;
  const left = leftovers(home);
  return left.length === 0 ? undefined : `after the next run there is ${left.join(', ')}`;
}

/** The first files that one folder has and the other has not so. @param {string} a @param {string} b @param {(file: string) => boolean} [passes] */
export function differing(a, b, passes) {
  const [one, other] = [a, b].map((home) => new Set((wholeOf(home, passes) ?? '').split('\n')));
  const lines = [...(one ?? [])].filter((line) => !other?.has(line));
  const more = [...(other ?? [])].filter((line) => !one?.has(line));
  return [...lines, ...more.map((line) => `without ${line}`)]
    .slice(0, 4)
    .map((line) => line.replace(/ [0-9a-f]{64}$/, ''))
    .join('; ');
}

/**
 * Runs a command for the first time (where it makes something to be replaced), and once more in a copy, which shows what
 * a run without a fault leaves.
 *
 * @param {Command} command
 * @param {{ origin: string, after: string }} homes `origin` holds the houses
 * @param {(from: string, to: string) => void} copy
 */
export async function makeReady(command, { origin, after }, copy) {
  if (command.begun !== true) {
    const first = await program(command.words(origin, '2026-06-01'));
    if (first.status !== 0) throw new Error(`${command.name}: ${first.out}${first.error}`);
  }
  command.prepare?.(origin);
  copy(origin, after);
  const whole = await program(command.words(after, '2026-06-02'));
  if (whole.status !== 0) throw new Error(`${command.name}: ${whole.out}${whole.error}`);
  return whole;
}
