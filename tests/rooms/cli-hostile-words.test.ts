/**
 * No command lets out a sign that steers a terminal or turns its lines about: not from texts, file names, sheets, bags, bank
 * files, deliveries or the command line itself; in no form of its answers. Our own colours are the only escapes.
 */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { run } from '../../src/cli.js';
import { inertTerminal } from '../../src/terminal.js';
import { everyWord } from '../tools/every-word.js';
import { HIDDEN } from '../tools/hostile-house.js';
import { photoWithSecrets } from '../tools/photo-with-secrets.js';
import { quietProgress } from '../tools/quiet-progress.js';

/** A link (OSC 8), a screen cleared (CSI, also as the one sign U+009B), bells, and signs of direction. */
const STEERS = `\u001b]8;;https://evil.invalid\u0007x\u001b[2J\u009b5m\u0090\u0085\u007f\r${HIDDEN}`;
/** As part of a file name. */
const NAME = STEERS.replaceAll('/', '');

const ESCAPE = '\u001b';
const OURS = new RegExp(`${ESCAPE}\\[(?:0|1|2|31;1|33;1|36)m`, 'gu');
const STEERING = /[^\P{Cc}\n\t]|[^\P{Cf}\u00ad\u200c\u200d]|[\p{Zl}\p{Zp}]/u;

async function said(words: readonly string[]): Promise<{ text: string; status: number }> {
  let text = '';
  const write = (more: string): void => {
    text += more;
  };
  const status = await run(words, { out: write, error: write, colour: true, progress: quietProgress });
  return { text, status };
}

let root: string;
let content: string;
let house: string;
let spec: ReturnType<typeof everyWord>;

beforeAll(async () => {
  root = mkdtempSync(path.join(tmpdir(), 'hostile-words-'));
  content = path.join(root, 'content');
  house = path.join(content, 'hostile');
  for (const part of ['photos', 'documents']) mkdirSync(path.join(house, part), { recursive: true });
  let n = 0;
  const kept = /label\.|remarks$|documents\[\]\.file|budget|measured\.by/u;
  spec = everyWord((field, kind) =>
    kind !== 'text' || kept.test(field)
      ? field === 'money.budget[].for'
        ? 'all'
        : undefined
      : `${HIDDEN}${++n}`,
  );
  spec = {
    ...spec,
    photos: { ...spec.photos, [`k${NAME}`]: { shows: HIDDEN, alt: HIDDEN } },
    documents: spec.documents?.map(({ file, ...one }) => one),
  };
  for (const [name, bytes] of [
    ['photo', await photoWithSecrets('photo')],
    [`p${NAME}`, await photoWithSecrets('p')],
    [`q${NAME}`, 'no picture'],
  ] as const)
    writeFileSync(path.join(house, 'photos', `${name}.jpg`), bytes);
  writeFileSync(path.join(house, 'documents', `x${NAME}.pdf`), 'no paper');
  write(spec);
  writeFileSync(path.join(house, 'remarks.txt'), `New roof ${HIDDEN} and granite counters. ${HIDDEN}\n`);
  writeFileSync(
    path.join(house, 'costs.csv'),
    `date,payee,what,amount,bucket\r\n2026-03-04,${HIDDEN},"x${HIDDEN}",9.50,improvement\r\n`,
  );
});
afterAll(() => rmSync(root, { recursive: true, force: true }));

const write = (what: unknown): void =>
  writeFileSync(path.join(house, 'house.yaml'), JSON.stringify(what, null, 1));

const day = (): string[] => ['--content', content, '--as-of', '2026-11-20'];
const out = (): string[] => [...day(), '--out', path.join(root, 'out')];

/** Runs in order: later ones rest on what earlier ones wrote. */
const COMMANDS: readonly (readonly [string, () => string[]])[] = [
  ...['text', 'json', 'github'].flatMap((form): [string, () => string[]][] => [
    [`check, ${form}`, () => ['check', ...out(), '--format', form]],
    [`remarks, ${form}`, () => ['remarks', 'hostile', '--all', ...day(), '--format', form]],
  ]),
  ['build', () => ['build', '--edition', 'buyer', ...out()]],
  [
    'build to a hostile folder',
    () => ['build', 'hostile', '--edition', 'agent', ...day(), '--out', path.join(root, `o${NAME}`)],
  ],
  [
    'deliver to a hostile name',
    () => ['deliver', 'hostile', '--edition', 'buyer', '--to', `J ${STEERS}`, ...out()],
  ],
  [
    'deliver',
    () => ['deliver', 'hostile', '--edition', 'buyer', '--to', `J ${HIDDEN}`, '--note', HIDDEN, ...out()],
  ],
  ...['text', 'json'].flatMap((form): [string, () => string[]][] => [
    [
      `ask, ${form}`,
      () => ['ask', 'kitchen floor', 'hostile', '--edition', 'file', ...day(), '--format', form],
    ],
    [`ask hostile words, ${form}`, () => ['ask', STEERS, 'hostile', ...day(), '--format', form]],
    [`ask --unanswered, ${form}`, () => ['ask', '--unanswered', 'hostile', ...day(), '--format', form]],
    [`photos, ${form}`, () => ['photos', 'hostile', ...day(), '--format', form]],
    [`deliveries, ${form}`, () => ['deliveries', 'hostile', ...out(), '--format', form]],
    [`build --list, ${form}`, () => ['build', '--list', ...out(), '--format', form]],
    [
      `archive, ${form}`,
      () => ['archive', 'hostile', '--to', path.join(root, `bags-${form}`), ...out(), '--format', form],
    ],
    [
      `verify a PDF, ${form}`,
      () => [
        'verify',
        path.join(root, 'out/hostile/buyer/hostile-buyer.pdf'),
        '--content',
        content,
        '--format',
        form,
      ],
    ],
    [`verify nothing, ${form}`, () => ['verify', `no${STEERS}`, '--format', form]],
    [
      `verify a bag, ${form}`,
      () => {
        const bag = path.join(root, `bags-${form}`, 'hostile', 'hostile-2026-11-20');
        writeFileSync(path.join(bag, `data/new${NAME}`), 'x');
        writeFileSync(path.join(bag, 'bag-info.txt'), `X${STEERS}: y${STEERS}\n`);
        return ['verify', bag, '--format', form];
      },
    ],
  ]),
  ['remarks --draft', () => ['remarks', '--draft', '--also-owner', 'hostile', ...day()]],
  ['compare', () => ['compare', ...out()]],
  [
    'costs import, headings',
    () => [
      'costs',
      'import',
      bank(`Date,Description${STEERS},Amount\n03/04/2026,"${HIDDEN}",-12.00\n`),
      'hostile',
      '--yes',
      '--content',
      content,
    ],
  ],
  [
    'costs import',
    () => [
      'costs',
      'import',
      bank(`Date,Description,Amount\n03/04/2026,"STORE ${HIDDEN}",-12.00\n03/05/2026,${HIDDEN},-4\n`),
      'hostile',
      '--dry-run',
      '--yes',
      '--columns',
      'date=Date,payee=Description,amount=Amount',
      '--paid-is',
      'negative',
      '--content',
      content,
    ],
  ],
  ['photos --accept', () => ['photos', 'hostile', '--accept', STEERS, ...day()]],
  ['an unknown command', () => [STEERS]],
  ['an unknown option', () => ['check', `--${STEERS}`]],
  ['a hostile content folder', () => ['check', '--content', STEERS]],
  ['a hostile day', () => ['check', '--as-of', STEERS]],
  ['new', () => ['new', `${root}/n${NAME}`, '--yes']],
  [
    'errors in a house of a hostile name',
    () => {
      const odd = path.join(content, `o${NAME}`);
      mkdirSync(odd);
      writeFileSync(path.join(odd, 'house.yaml'), '{}');
      return ['check', odd, ...out()];
    },
  ],
  ...['text', 'json', 'github'].map((form): [string, () => string[]] => [
    `errors everywhere, ${form}`,
    () => {
      const evil = {
        name: STEERS,
        [STEERS]: 3,
        kind: STEERS,
        built: { is: STEERS, was: STEERS },
        address: { city: STEERS, state: STEERS },
      };
      write({
        house: evil,
        rooms: [{ id: STEERS, level: STEERS, use: STEERS, size: STEERS }],
        photos: { [STEERS]: { file: STEERS } },
        documents: [{ id: STEERS, what: STEERS, kind: STEERS, file: STEERS }],
        [STEERS]: 3,
      });
      writeFileSync(path.join(house, 'costs.csv'), `date,payee,${STEERS}\r\n${STEERS},${STEERS},x\r\n`);
      return ['check', ...out(), '--format', form];
    },
  ]),
];

const bank = (text: string): string => {
  const file = path.join(root, `bank${NAME}.csv`);
  writeFileSync(file, text);
  return file;
};

describe('a house, a command line and files full of signs that steer a terminal', () => {
  it.each(COMMANDS)('%s', async (name, words) => {
    const { text, status } = await said(words());
    const bare = text.replace(OURS, '');
    const at = bare.search(STEERING);
    expect(at < 0 ? '' : JSON.stringify(bare.slice(Math.max(0, at - 50), at + 10))).toBe('');
    expect(text).not.toMatch(/bug\.internal|^\s+at /mu);
    expect(text.length).toBeGreaterThan(10);
    expect([0, 1, 2]).toContain(status);
    // Some say beside it, in words, what they wrote or could not read.
    if (/, json$/u.test(name) && status < 2)
      expect(() => JSON.parse(text.slice(Math.max(0, text.search(/^[[{]/mu))))).not.toThrow();
  });
});

describe('the last door', () => {
  it('writes such a sign as JSON does, so that data stays what it was', () => {
    let text = '';
    const door = inertTerminal({
      out: (more) => (text += more),
      error: () => undefined,
      colour: false,
      progress: quietProgress,
    });
    door.out(JSON.stringify({ a: `\u0085${HIDDEN}\u001b[2J\u{1F3E0}\u00ad` }));
    expect(text).not.toMatch(STEERING);
    expect(JSON.parse(text)).toEqual({ a: `\u0085${HIDDEN}\u001b[2J\u{1F3E0}\u00ad` });
  });

  it('lets our own colours through, and no other escape', () => {
    let text = '';
    const door = inertTerminal({
      out: () => undefined,
      error: (more) => (text += more),
      colour: true,
      progress: quietProgress,
    });
    door.error('\u001b[31;1merror\u001b[0m \u001b[8mhidden\n\ttab');
    expect(text).toBe('\u001b[31;1merror\u001b[0m \\u001b[8mhidden\n\ttab');
  });
});
