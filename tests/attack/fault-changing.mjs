/**
 * Files of the house that are changed, cut short, taken away, or replaced by a folder, a link or a pipe while a build, a
 * bag or a delivery is made of them.
 *
 * What is made is of one of the two states, or the program says that the file changed; bags and deliveries agree with
 * their own digests; and when nothing changes any more, the next run makes what a first one would.
 */
import { execFileSync } from 'node:child_process';
import {
  existsSync,
  mkdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import path from 'node:path';
import { commandNamed, differing, leftovers, makeReady, wholeOf } from './fault-commands.mjs';
import { copyHome, foldersIn, HOUSE, houseIn, writeFaultHouse } from './fault-house.mjs';
import { verifyAll } from './fault-whole.mjs';
import { program, within } from './program.mjs';

const FILES = ['house.yaml', 'costs.csv', 'photos/IMG_0001.jpg', 'documents/bill.pdf'];

/** What may happen to a file. @type {Readonly<Record<string, (file: string, random: () => number) => void>>} */
const HAPPENS = {
  'is changed': (file) => {
    const text = readFileSync(file, 'latin1');
    const next = text.includes('kitchen floor')
      ? text.replaceAll('kitchen floor', 'kitchen tiles')
      : text.replace('120.50', '999.50');
    writeFileSync(file, Buffer.from(next === text ? `${text}\n` : next, 'latin1'));
  },
  'is cut short': (file, random) => truncateSync(file, Math.floor(readFileSync(file).length * random())),
  'is taken away': (file) => rmSync(file),
  'becomes a folder': (file) => {
    rmSync(file);
    mkdirSync(file);
  },
  'becomes a link that leads out': (file) => {
    rmSync(file);
    symlinkSync('/etc/hostname', file);
  },
  'becomes a pipe': (file) => {
    rmSync(file);
    execFileSync('mkfifo', [file]);
  },
};

/**
 * @param {string} scratch
 * @param {number} times of each command
 * @param {() => number} random
 * @param {(line: string) => void} say
 * @param {readonly string[]} [only] names of commands
 */
export async function changeAll(
  scratch,
  times,
  random,
  say,
  only = ['build', 'archive --form folder', 'archive --form zip', 'deliver'],
) {
  const rows = [];
  for (const name of only) rows.push(await changeOne(commandNamed(name), { scratch, times, random, say }));
  return rows;
}

/**
 * @param {import('./fault-commands.mjs').Command} command
 * @param {{ scratch: string, times: number, random: () => number, say: (line: string) => void }} how
 */
async function changeOne(command, { scratch, times, random, say }) {
  const { origin, after, home, fresh } = foldersIn(scratch, 'origin', 'after', 'home', 'fresh');
  await writeFaultHouse(origin);
  const whole = await makeReady(command, { origin, after }, copyHome);
  const broken = /** @type {string[]} */ ([]);
  const ends = { before: 0, later: 0, told: 0 };
  const kinds = Object.keys(HAPPENS);
  for (let n = 0; n < times; n++) {
    copyHome(origin, home);
    const file = FILES[n % FILES.length] ?? '';
    const what = kinds[Math.floor(n / FILES.length) % kinds.length] ?? '';
    const at = path.join(houseIn(home), file);
    const timer = setTimeout(() => HAPPENS[what]?.(at, random), random() * whole.took);
    const ended = await within(
      program(command.words(home, '2026-06-02')),
      `${command.name}: ${file} ${what}`,
    );
    clearTimeout(timer);
    const tell = (/** @type {string | undefined} */ wrong) => {
      if (wrong !== undefined) broken.push(`${file} ${what}: ${wrong}`);
    };
    const left = leftovers(home);
    if (left.length > 0) tell(`left over: ${left.join(', ')}`);
    tell(await verifyAll(home));
    const { status, out, error } = ended;
    if (status !== 0) {
      ends.told++;
      if (status !== 1 || /bug\.internal/.test(error)) tell(`status ${status}: ${out}${error}`);
      if (command.name === 'build' && made(home) !== made(origin))
        tell('it failed, and the packets are others');
      continue;
    }
    // What the same command makes of what lies there now, from the beginning.
    copyHome(origin, fresh);
    copyHouse(home, origin, fresh);
    const again = await program(command.words(fresh, '2026-06-02'));
    const isBefore = made(home) === made(after);
    const isLater = again.status === 0 && made(home) === made(fresh);
    if (isBefore) ends.before++;
    else if (isLater) ends.later++;
    else
      tell(
        `it is neither of the state before nor of the one after: ${differing(home, after, isMade)}; ${differing(home, fresh, isMade)}`,
      );
  }
  say(
    `${command.name}: ${times} changes, ${ends.before} made of the state before, ${ends.later} of the one after, ${ends.told} refused, ${broken.length} broken`,
  );
  return { command: command.name, times, ...ends, broken };
}

const MADE = [`out/${HOUSE}/`, `archive/${HOUSE}/`, `content/${HOUSE}/deliveries/`];

/** Packets, bags and deliveries, but for the record of what packets were made from. @param {string} file */
const isMade = (file) =>
  MADE.some((folder) => file.startsWith(folder)) && !/\.sillplate-made\.json$/.test(file);

/** @param {string} home */
const made = (home) => wholeOf(home, isMade);

/** The house as it lies in `from`, with the deliveries of `origin`. @param {string} from @param {string} origin @param {string} to */
function copyHouse(from, origin, to) {
  rmSync(houseIn(to), { recursive: true, force: true });
  execFileSync('cp', ['-a', houseIn(from), houseIn(to)]);
  const deliveries = (/** @type {string} */ home) => path.join(houseIn(home), 'deliveries');
  rmSync(deliveries(to), { recursive: true, force: true });
  if (existsSync(deliveries(origin))) execFileSync('cp', ['-a', deliveries(origin), deliveries(to)]);
}
