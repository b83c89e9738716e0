/**
 * Pipes that nobody writes into, devices without an end, folders, links in a circle and out of the folder, in the place of
 * files that are named on the command line or lie in a house folder: a message at once, and no waiting.
 */
import { execFileSync, spawnSync } from 'node:child_process';
import {
  closeSync,
  constants,
  existsSync,
  mkdirSync,
  openSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { run } from '../../src/cli.js';
import { quietProgress } from '../tools/quiet-progress.js';
import { SMALL_HOUSE, scratchFolder } from './cli-program.js';

const HOUSE = `${SMALL_HOUSE}levels:
  - { id: main, name: Main level, grade: above }
rooms:
  - { id: kitchen, level: main, use: kitchen, size: 10' x 10' }
photos:
  kitchen: { shows: kitchen, alt: The kitchen }
documents:
  - { id: bill, kind: receipt, what: paint, file: bill.pdf, date: 2026-01-02 }
`;

let root: string;
let house: string;
const pipes: string[] = [];
beforeAll(() => {
  root = scratchFolder();
});
afterAll(() => {
  // Whoever waits for a pipe all the same is let go, or the tests would never end.
  for (const pipe of pipes.filter((one) => existsSync(one)))
    closeSync(openSync(pipe, constants.O_RDWR | constants.O_NONBLOCK));
  rmSync(root, { recursive: true, force: true });
});
let count = 0;
beforeEach(() => {
  count += 1;
  house = path.join(root, `c${count}`, 'lane');
  for (const part of ['photos', 'documents', 'imports'])
    mkdirSync(path.join(house, part), { recursive: true });
  writeFileSync(path.join(house, 'house.yaml'), HOUSE);
  writeFileSync(path.join(house, 'documents/bill.pdf'), 'paper');
  writeFileSync(
    path.join(house, 'costs.csv'),
    'date,payee,what,amount,bucket\n2026-01-02,Mill,x,9.50,repair\n',
  );
  writeFileSync(
    path.join(root, `c${count}`, 'bank.csv'),
    'Date,Description,Amount\n2026-03-09,Store,-10.50\n',
  );
});

const beside = (name: string): string => path.join(house, '..', name);

function pipe(file: string): string {
  rmSync(file, { recursive: true, force: true });
  execFileSync('mkfifo', [file]);
  pipes.push(file);
  return file;
}

async function said(...words: string[]): Promise<{ text: string; status: number }> {
  let text = '';
  const write = (more: string): void => {
    text += more;
  };
  const status = await run(words, { out: write, error: write, colour: false, progress: quietProgress });
  expect(text).not.toMatch(/bug\.internal|\n\s+at /u);
  return { text, status };
}

const QUICK = 15_000;

describe('a file that is named', () => {
  const ODD: readonly [what: string, make: (file: string) => void][] = [
    ['a pipe', (file) => pipe(file)],
    ['a link to a pipe', (file) => symlinkSync(pipe(`${file}.pipe`), file)],
    ['a device', (file) => symlinkSync('/dev/zero', file)],
    ['a folder', (file) => mkdirSync(file)],
    ['a link to itself', (file) => symlinkSync(path.basename(file), file)],
  ];
  const COMMANDS: readonly [command: string, name: string, words: (file: string) => string[]][] = [
    ['remarks', 'draft.txt', (file) => ['remarks', file, house]],
    ['costs import', 'list.csv', (file) => ['costs', 'import', file, house, '--yes']],
    ['verify', 'packet.pdf', (file) => ['verify', file]],
    ['verify', 'bag.zip', (file) => ['verify', file]],
    ['verify', 'bag.tar', (file) => ['verify', file]],
    ['verify', 'bag.tar.age', (file) => ['verify', file]],
    ['check', 'house', (file) => ['check', file]],
    ['photos', 'house', (file) => ['photos', file]],
    ['build', 'house', (file) => ['build', file, '--out', beside('out')]],
    ['archive', 'house', (file) => ['archive', file, '--to', beside('bags'), '--out', beside('out')]],
  ];
  it.each(COMMANDS.flatMap((command) => ODD.map((odd) => [...command, ...odd] as const)))(
    '%s %s',
    async (_command, name, words, _what, make) => {
      const file = beside(name);
      make(file);
      const { text, status } = await said(...words(file));
      expect([1, 2]).toContain(status);
      expect(text).toContain(name);
      expect(text).toContain('  do: ');
    },
    QUICK,
  );

  it(
    'with the keys of a sealed bag may be no pipe, and no device',
    async () => {
      const bag = beside('bag.tar.age');
      writeFileSync(bag, 'age-encryption.org/v1\n-> X25519 abc\nabc\n--- abc\n');
      for (const keys of [pipe(beside('keys')), '/dev/zero']) {
        const { text, status } = await said('verify', bag, '--identity', keys);
        expect(status).toBe(2);
        expect(text).toContain(`the identity file ${keys} is no plain file`);
      }
    },
    QUICK,
  );

  it('may be what the shell hands over, for a draft', () => {
    const program = path.resolve('dist/cli.js');
    const { stdout, status } = spawnSync(
      'bash',
      [
        '-c',
        `"$0" "$1" remarks <(sleep 0.3; echo "A detached house.") "$2"`,
        process.execPath,
        program,
        house,
      ],
      { encoding: 'utf8', cwd: path.dirname(house) },
    );
    expect([status, stdout.split('\n')[1]]).toEqual([0, expect.stringContaining('claim')]);
  });
});

describe('in a house folder', () => {
  const PLACES = [
    'house.yaml',
    'more.yaml',
    'costs.csv',
    'costs.xlsx',
    'miles.csv',
    'remarks.txt',
    'photos/kitchen.jpg',
    'photos/other.jpg',
    'photos',
    'documents/bill.pdf',
    'documents',
    'imports/seen.csv',
    'imports/columns.yaml',
    'imports/.unfinished.json',
    'imports/.sillplate-lock-import',
    'deliveries',
    'deliveries/2026-01-02-agent-12345678',
  ];
  const OPTIONS = (): string[] => ['--content', path.dirname(house)];

  it.each(PLACES)(
    'a pipe in the place of %s keeps no command waiting',
    async (place) => {
      for (const words of [
        ['check', 'lane'],
        ['photos', 'lane'],
        ['ask', 'how old is the roof', 'lane'],
        ['remarks', 'lane'],
        ['compare', 'lane', '--out', beside('out')],
        ['deliveries', 'lane'],
        ['costs', 'import', beside('bank.csv'), 'lane', '--yes'],
      ]) {
        const file = path.join(house, place);
        mkdirSync(path.dirname(file), { recursive: true });
        pipe(file);
        await said(...words, ...OPTIONS());
      }
    },
    60_000,
  );

  it.each(['house.yaml', 'more.yaml', 'costs.csv', 'documents/bill.pdf'])(
    'a link out of it in the place of %s is told, and what it leads to is not',
    async (place) => {
      writeFileSync(beside('secret'), 'canary-4711: 1\n');
      rmSync(path.join(house, place), { force: true });
      symlinkSync(`${'../'.repeat(place.split('/').length)}secret`, path.join(house, place));
      const { text, status } = await said('check', 'lane', ...OPTIONS());
      expect(status).toBe(1);
      expect(text).toContain('intake.outside');
      expect(text).not.toContain('canary');
    },
  );

  it(
    'a lock that is a pipe is told like one that never ends, and what to delete',
    async () => {
      pipe(path.join(house, 'imports/.sillplate-lock-import'));
      const { text, status } = await said(
        'costs',
        'import',
        beside('bank.csv'),
        'lane',
        '--yes',
        ...OPTIONS(),
      );
      expect(status).toBe(1);
      expect(text).toContain('delete the file  imports/.sillplate-lock-import');
    },
    QUICK,
  );
});
