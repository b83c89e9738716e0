/**
 * A disk that fills up at one point after another of every command that writes.
 *
 * The house lies on a small disk in memory, which is filled so that so many bytes are free and no more. What was there
 * is whole, the message says what to do, and with room again everything is made as if nothing had happened.
 */
import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, rmSync, statfsSync, statSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { brokenAfterFault, brokenAtTheEnd, COMMANDS, leftovers, makeReady } from './fault-commands.mjs';
import { copyHome, foldersIn, writeFaultHouse } from './fault-house.mjs';
import { refused } from './fault-told.mjs';
import { program } from './program.mjs';

const PAGE = 4096;
const DISK_MB = 24;

/** A small disk; undefined where none may be mounted. @param {string} folder */
export function mountSmall(folder) {
  mkdirSync(folder, { recursive: true });
  try {
    execFileSync('mount', ['-t', 'tmpfs', '-o', `size=${DISK_MB}m`, 'tmpfs', folder], { stdio: 'ignore' });
    return { folder, unmount: () => execFileSync('umount', ['-l', folder], { stdio: 'ignore' }) };
  } catch {
    return undefined;
  }
}

/** Leaves `pages` free on the disk. @param {string} disk @param {number} pages */
function fill(disk, pages) {
  const ballast = path.join(disk, 'ballast');
  const free = statfsSync(disk).bavail;
  writeFileSync(ballast, Buffer.alloc(Math.max(0, free - pages) * PAGE, 1));
}

/** Pages that are taken. @param {string} disk */
const takenOf = (disk) => {
  const { blocks, bavail } = statfsSync(disk);
  return blocks - bavail;
};

/** @param {readonly string[]} things */
function pagesOf(things) {
  let pages = 0;
  for (const thing of things.filter((one) => existsSync(one))) {
    const files = statSync(thing).isDirectory()
      ? readdirSync(thing, { recursive: true, encoding: 'utf8' }).map((file) => path.join(thing, file))
      : [thing];
    for (const file of files) pages += Math.ceil(statSync(file).size / PAGE);
  }
  return pages;
}

/**
 * @param {string} scratch
 * @param {number} times sizes of each command, spread from none to all that it needs
 * @param {() => number} random
 * @param {(line: string) => void} say
 * @param {readonly string[]} [only] names of commands; left out: all
 * @returns {Promise<{ command: string, times: number, refusals: number, broken: string[] }[] | undefined>} undefined: no
 *   disk can be mounted
 */
export async function fillAll(scratch, times, random, say, only = COMMANDS.map(({ name }) => name)) {
  const disk = mountSmall(path.join(scratch, 'disk'));
  if (disk === undefined) return undefined;
  try {
    const rows = [];
    for (const command of COMMANDS.filter(({ name }) => only.includes(name)))
      rows.push(await fillOne(command, { scratch, disk: disk.folder, times, random, say }));
    return rows;
  } finally {
    disk.unmount();
  }
}

/**
 * @param {import('./fault-commands.mjs').Command} command
 * @param {{ scratch: string, disk: string, times: number, random: () => number, say: (line: string) => void }} how
 */
async function fillOne(command, { scratch, disk, times, random, say }) {
  // As deep as the disk: a new house names the schema by its way there.
  const { origin, after } = foldersIn(path.join(scratch, 'whole'), 'origin', 'after');
  const home = path.join(disk, 'home');
  await writeFaultHouse(origin);
  await makeReady(command, { origin, after }, copyHome);
  // Every other time there is no cache, so that the disk fills while pictures are kept.
  const place = (/** @type {boolean} */ cold) => {
    copyHome(origin, home);
    if (cold)
      for (const name of ['.photo-cache', '.paper-cache'])
        rmSync(path.join(home, 'out', name), { recursive: true, force: true });
  };
  place(true);
  const before = takenOf(disk);
  const room = await program(command.words(home, '2026-06-02'));
  if (room.status !== 0) throw new Error(`${command.name}: ${room.out}${room.error}`);
  // The old and the new lie there side by side for a while.
  const more = Math.max(0, takenOf(disk) - before);
  const needed = more + pagesOf(command.writes(after).map((thing) => path.join(after, thing))) + 24;
  const broken = /** @type {string[]} */ ([]);
  let refusals = 0;
  for (let n = 0; n < times; n++) {
    place(n % 2 === 0);
    // Small sizes more often: there the first files are written.
    const pages = Math.floor(needed * (n / Math.max(1, times - 1)) ** 2 + random() * 3);
    fill(disk, pages);
    const ended = await program(command.words(home, '2026-06-02'));
    const told = ended.status === 0 ? undefined : refused(ended, /disk is full/);
    if (ended.status !== 0) refusals++;
    const left = leftovers(home).filter((name) => !/-old-/.test(name));
    const wrong = [
      told,
      brokenAfterFault(command, { origin, after, home }),
      left.length === 0 ? undefined : `left over: ${left.join(', ')}`,
    ];
    rmSync(path.join(disk, 'ballast'), { force: true });
    const next = await program(command.words(home, '2026-06-02'));
    wrong.push(brokenAtTheEnd(command, { after, home }, next));
    for (const one of wrong) if (one !== undefined) broken.push(`${pages} pages free: ${one}`);
  }
  rmSync(home, { recursive: true, force: true });
  say(`${command.name}: ${times} sizes up to ${needed * 4} kB, ${refusals} refused, ${broken.length} broken`);
  return { command: command.name, times, refusals, broken };
}
