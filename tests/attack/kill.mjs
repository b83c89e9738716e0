/**
 * Kills the program at random moments of a build, an archive, a delivery and an import, and looks at what is left.
 *
 * What was there before is whole, what is new is whole or is not there, the owner's own files are as before or as after,
 * and the next run makes everything as if nothing had happened.
 */
import { cpSync, existsSync, mkdirSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fingerprint, program } from './program.mjs';

const HOUSE = `house:
  name: Test Lane
  address: { city: Fallow Mills, state: OH }
  kind: detached
  built: 2001
levels: [{ id: main, name: Main level, grade: above }]
rooms:
  - { id: kitchen, level: main, use: kitchen, size: 10' x 12' }   # a comment that must stay
work:
  - { id: floor, what: kitchen floor, did: new, where: [kitchen], done: 2026-03 }
`;
const COSTS = 'date,what,payee,amount,bucket\n2026-01-05,boards,Lane Lumber,120.50,improvement\n';
const BANK = `Posting Date,Description,Amount\n${Array.from(
  { length: 40 },
  (_, n) => `2026-02-${String((n % 28) + 1).padStart(2, '0')},Shop ${n},-${10 + n}.25`,
).join('\n')}\n`;

/**
 * @typedef {object} Attack
 * @property {string} name
 * @property {(home: string) => string[]} words
 * @property {(home: string) => Promise<string | undefined>} broken what is wrong after a kill, in words
 */

/** @param {string} home */
const houseOf = (home) => path.join(home, 'content', 'test-lane');

/**
 * Whether a folder is as it was or as it will be.
 *
 * @param {string} what
 * @param {string | undefined} now
 * @param {readonly (string | undefined)[]} may
 */
const isOneOf = (what, now, may) =>
  may.includes(now) ? undefined : `${what} is neither as before nor as after`;

/** @param {string} file */
const isOwn = (file) => !/^(deliveries|imports)\/|^\.sillplate|\.before-/.test(file);

/**
 * @param {string} scratch
 * @param {number} kills of each command
 * @param {() => number} random
 * @param {(line: string) => void} say
 * @returns {Promise<{ command: string, kills: number, hit: number, broken: string[] }[]>}
 */
export async function killAll(scratch, kills, random, say) {
  const rows = [];
  for (const command of /** @type {const} */ (['build', 'archive', 'deliver', 'costs import'])) {
    const origin = path.join(scratch, 'origin');
    rmSync(origin, { recursive: true, force: true });
    mkdirSync(houseOf(origin), { recursive: true });
    writeFileSync(path.join(houseOf(origin), 'house.yaml'), HOUSE);
    writeFileSync(path.join(houseOf(origin), 'costs.csv'), COSTS);
    writeFileSync(path.join(origin, 'bank.csv'), BANK);
    const at = (/** @type {string} */ home) => ({
      content: ['--content', path.join(home, 'content')],
      out: ['--out', path.join(home, 'out')],
      to: ['--to', path.join(home, 'archive')],
    });
    /** @param {string} home @param {string} day */
    const words = (home, day) => {
      const { content, out, to } = at(home);
      if (command === 'build') return ['build', ...content, ...out, '--edition', 'agent', '--as-of', day];
      if (command === 'archive') return ['archive', ...content, ...out, ...to, '--as-of', day];
      if (command === 'deliver')
        return [
          'deliver',
          'test-lane',
          ...content,
          ...out,
          '--edition',
          'agent',
          '--to',
          day,
          '--as-of',
          day,
          '--on',
          day,
        ];
      const columns = 'date=Posting Date,payee=Description,amount=Amount';
      return [
        'costs',
        'import',
        path.join(home, 'bank.csv'),
        'test-lane',
        ...content,
        '--yes',
        '--columns',
        columns,
        '--paid-is',
        'negative',
      ];
    };
    const first = await program(words(origin, '2026-06-01'));
    if (command !== 'costs import' && first.status !== 0)
      throw new Error(`${command}: ${first.out}${first.error}`);
    if (command === 'costs import') {
      rmSync(houseOf(origin), { recursive: true });
      mkdirSync(houseOf(origin), { recursive: true });
      writeFileSync(path.join(houseOf(origin), 'house.yaml'), HOUSE);
      writeFileSync(path.join(houseOf(origin), 'costs.csv'), COSTS);
    }
    if (command === 'archive') writeFileSync(path.join(houseOf(origin), 'note.txt'), 'a new paper\n');
    // What a run that is not killed leaves.
    const after = path.join(scratch, 'after');
    rmSync(after, { recursive: true, force: true });
    cpSync(origin, after, { recursive: true });
    const whole = await program(words(after, '2026-06-02'));
    if (whole.status !== 0) throw new Error(`${command}: ${whole.out}${whole.error}`);
    const broken = /** @type {string[]} */ ([]);
    let hit = 0;
    for (let n = 0; n < kills; n++) {
      const home = path.join(scratch, 'home');
      rmSync(home, { recursive: true, force: true });
      cpSync(origin, home, { recursive: true });
      const ended = await program(words(home, '2026-06-02'), random() * whole.took * 1.05);
      if (ended.killed) hit++;
      const wrong = await lookAt(command, { origin, after, home });
      const next = await program(words(home, '2026-06-02'));
      const wrongNext =
        next.status === 0
          ? await lookAtEnd(command, { after, home })
          : `the next run: ${next.out}${next.error}`;
      for (const one of [wrong, wrongNext]) if (one !== undefined) broken.push(`kill ${n}: ${one}`);
    }
    say(`${command}: ${kills} kills, ${hit} before the end, ${broken.length} broken`);
    rows.push({ command, kills, hit, broken });
  }
  return rows;
}

/**
 * @param {string} command
 * @param {{ origin: string, after: string, home: string }} places
 */
async function lookAt(command, { origin, after, home }) {
  const own = [origin, after].map((place) => fingerprint(houseOf(place), isOwn));
  const wrongOwn = isOneOf('the house folder', fingerprint(houseOf(home), isOwn), own);
  if (wrongOwn !== undefined) return wrongOwn;
  if (command === 'build') {
    const made = path.join(home, 'out', 'test-lane');
    const may = [origin, after].map((place) => fingerprint(path.join(place, 'out', 'test-lane')));
    const left = fingerprint(made);
    if (left === undefined)
      return isOneOf(
        'what was set aside',
        fingerprint(path.join(home, 'out', '.sillplate-old-test-lane')),
        may,
      );
    return isOneOf('the packets', left, may);
  }
  if (command === 'archive' || command === 'deliver') {
    const folder = (/** @type {string} */ place) =>
      command === 'archive'
        ? path.join(place, 'archive', 'test-lane')
        : path.join(houseOf(place), 'deliveries');
    const named = readdirSync(folder(home)).filter((name) => !name.startsWith('.'));
    for (const name of readdirSync(folder(origin)).filter((one) => !one.startsWith('.')))
      if (fingerprint(path.join(folder(home), name)) !== fingerprint(path.join(folder(origin), name)))
        return `${name} was changed`;
    for (const name of named)
      if (!existsSync(path.join(folder(origin), name))) {
        const same = isOneOf(name, fingerprint(path.join(folder(home), name)), [
          fingerprint(path.join(folder(after), name)),
        ]);
        if (same !== undefined) return `${name} is half made`;
      }
  }
  return undefined;
}

/**
 * @param {string} command
 * @param {{ after: string, home: string }} places
 */
async function lookAtEnd(command, { after, home }) {
  if (fingerprint(houseOf(home), isOwn) !== fingerprint(houseOf(after), isOwn))
    return 'after the next run the house folder is another';
  const out = (/** @type {string} */ place) =>
    fingerprint(path.join(place, 'out'), (file) => !file.includes('-cache/'));
  if (command === 'build' && out(home) !== out(after)) return 'after the next run the packets are others';
  const left = [
    path.join(home, 'out'),
    path.join(home, 'archive', 'test-lane'),
    path.join(houseOf(home), 'deliveries'),
    houseOf(home),
  ]
    .filter((folder) => existsSync(folder))
    .flatMap((folder) => readdirSync(folder))
    .filter((name) => /^\.sillplate-(old|making|writing|lock)/.test(name));
  return left.length === 0 ? undefined : `after the next run there is ${left.join(', ')}`;
}
