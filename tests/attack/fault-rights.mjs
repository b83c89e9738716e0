/**
 * Another user runs the program, who may not read or write one thing or another; and the disk can only be read.
 *
 * The message says that something is closed, nothing is half made, and with the rights given all is made as if nothing had
 * happened. Needs root: the process becomes `nobody` for the time of a run.
 */
import { execFileSync } from 'node:child_process';
import { chmodSync, chownSync, existsSync, lchownSync, readdirSync, statSync } from 'node:fs';
import path from 'node:path';
import { brokenAfterFault, brokenAtTheEnd, COMMANDS, leftovers, makeReady } from './fault-commands.mjs';
import { mountSmall } from './fault-disk.mjs';
import { copyHome, foldersIn, HOUSE, writeFaultHouse } from './fault-house.mjs';
import { refused } from './fault-told.mjs';
import { program } from './program.mjs';

const NOBODY = 65534;
const house = `content/${HOUSE}`;

/** What is closed, and how: nobody may read it, or may read and not write it. @type {readonly [string, 'read' | 'write'][]} */
const CLOSED = [
  ['content', 'read'],
  ['content', 'write'],
  [house, 'read'],
  [house, 'write'],
  [`${house}/house.yaml`, 'read'],
  [`${house}/house.yaml`, 'write'],
  [`${house}/costs.csv`, 'read'],
  [`${house}/costs.csv`, 'write'],
  [`${house}/photos`, 'read'],
  [`${house}/photos/IMG_0001.jpg`, 'read'],
  [`${house}/documents`, 'read'],
  [`${house}/documents/bill.pdf`, 'read'],
  [`${house}/imports`, 'read'],
  [`${house}/imports`, 'write'],
  [`${house}/imports/seen.csv`, 'read'],
  [`${house}/deliveries`, 'read'],
  [`${house}/deliveries`, 'write'],
  ['out', 'read'],
  ['out', 'write'],
  // Not `out/HOUSE`: whether it may be written to is asked of the system for the real user, who stays root here. The suite
  // asks with another one.
  ['out/.photo-cache', 'write'],
  [`out/.photo-cache/${HOUSE}`, 'read'],
  ['archive', 'write'],
  [`archive/${HOUSE}`, 'read'],
  [`archive/${HOUSE}`, 'write'],
  ['bank.csv', 'read'],
];

/**
 * @param {string} scratch
 * @param {number} times of each command: how many of the things are closed, one at a time; those at random if not all
 * @param {() => number} random
 * @param {(line: string) => void} say
 * @param {readonly string[]} [only] names of commands; left out: all
 */
export async function closeAll(scratch, times, random, say, only = COMMANDS.map(({ name }) => name)) {
  if (process.getuid?.() !== 0) return undefined;
  chmodSync(scratch, 0o755);
  const disk = mountSmall(path.join(scratch, 'disk'));
  try {
    const rows = [];
    for (const command of COMMANDS.filter(({ name }) => only.includes(name)))
      rows.push(await closeFor(command, { scratch, disk: disk?.folder, times, random, say }));
    return rows;
  } finally {
    disk?.unmount();
  }
}

/**
 * @param {import('./fault-commands.mjs').Command} command
 * @param {{ scratch: string, disk: string | undefined, times: number, random: () => number, say: (line: string) => void }} how
 */
async function closeFor(command, { scratch, disk, times, random, say }) {
  const { origin, after, home } = foldersIn(path.join(scratch, 'some'), 'origin', 'after', 'home');
  await writeFaultHouse(origin);
  await makeReady(command, { origin, after }, copyHome);
  const broken = /** @type {string[]} */ ([]);
  let refusals = 0;
  /** @param {string} what @param {import('./program.mjs').Ended} ended @param {RegExp} why @param {string} place */
  const look = (what, ended, why, place) => {
    // A photo that can't be read is left out with a warning, and of a folder that can't be looked into as a whole nobody
    // writes down what was made of it: what is made then is another thing than with all rights.
    const isOther = /may not read .*\/(photos|imports|costs\.csv|documents)/.test(what);
    if (ended.status !== 0) refusals++;
    // The command begins a folder of its own: one that is closed may be said to be there.
    const told = ended.status === 0 ? undefined : refused(ended, why);
    const left = leftovers(place).filter((name) => !/-old-/.test(name));
    for (const one of [
      told,
      brokenAfterFault(
        command,
        { origin, after, home: place },
        (thing) => !isOther || (ended.status !== 0 && !thing.startsWith('out/')),
      ),
      left.length === 0 ? undefined : `left over: ${left.join(', ')}`,
    ])
      if (one !== undefined) broken.push(`${what}: ${one}`);
  };
  const there = CLOSED.filter(([thing]) => existsSync(path.join(origin, thing)));
  const chosen = there.length <= times ? there : shuffled(there, random).slice(0, times);
  for (const [thing, right] of chosen) {
    copyHome(origin, home);
    giveAll(home, NOBODY);
    const file = path.join(home, thing);
    const { mode } = statSync(file);
    chownSync(file, 0, 0);
    chmodSync(file, right === 'read' ? 0o700 : mode & 0o555);
    const ended = await asNobody(() => program(command.words(home, '2026-06-02')));
    chmodSync(file, mode);
    giveAll(home, 0);
    look(`may not ${right} ${thing}`, ended, /may not|can’t be (read|opened|written)|could not be/, home);
    const next = await program(command.words(home, '2026-06-02'));
    const wrong = brokenAtTheEnd(command, { after, home }, next);
    if (wrong !== undefined) broken.push(`may not ${right} ${thing}: ${wrong}`);
  }
  if (disk !== undefined) {
    const place = path.join(disk, 'home');
    copyHome(origin, place);
    execFileSync('mount', ['-o', 'remount,ro', disk]);
    const ended = await program(command.words(place, '2026-06-02'));
    execFileSync('mount', ['-o', 'remount,rw', disk]);
    look('a disk that can only be read', ended, /can only be read/, place);
    if (ended.status === 0) broken.push('a disk that can only be read: it says that all went well');
    const next = await program(command.words(place, '2026-06-02'));
    const wrong = brokenAtTheEnd(command, { after, home: place }, next);
    if (wrong !== undefined) broken.push(`a disk that can only be read: ${wrong}`);
  }
  say(
    `${command.name}: ${chosen.length} things closed${disk === undefined ? '' : ', and the whole disk'}, ${refusals} refused, ${broken.length} broken`,
  );
  return { command: command.name, times: chosen.length, refusals, broken };
}

/** @template T @param {() => Promise<T>} work @returns {Promise<T>} */
async function asNobody(work) {
  const groups = process.getgroups?.() ?? [];
  process.setgroups?.([]);
  process.setegid?.(NOBODY);
  process.seteuid?.(NOBODY);
  try {
    return await work();
  } finally {
    process.seteuid?.(0);
    process.setegid?.(0);
    process.setgroups?.(groups);
  }
}

/** @param {string} folder @param {number} user */
function giveAll(folder, user) {
  lchownSync(folder, user, user);
  for (const one of readdirSync(folder, { recursive: true, encoding: 'utf8' }))
    lchownSync(path.join(folder, one), user, user);
}

/** @template T @param {readonly T[]} list @param {() => number} random */
const shuffled = (list, random) =>
  list
    .map((one) => /** @type {const} */ ([random(), one]))
    .sort((a, b) => a[0] - b[0])
    .map(([, one]) => one);
