/** What can be typed, what comes back, and with which exit status. */
import { rmSync } from 'node:fs';
import path from 'node:path';
import { afterAll, afterEach, describe, expect, it, vi } from 'vitest';
import { realTerminal } from '../../src/terminal.js';
import { typed } from '../tools/gallery.js';
import { runProgram, SMALL_HOUSE, scratchFolder, start, writeHouse } from './cli-program.js';

const scratch = scratchFolder();
afterAll(() => rmSync(scratch, { recursive: true, force: true }));
const AS_OF = ['--as-of', '2026-11-20', '--out', path.join(scratch, 'out')];

const fine = writeHouse(scratch, 'fine');
const broken = writeHouse(scratch, 'broken', SMALL_HOUSE.replace('kind: detached', 'kind: detatched'));
// Text that would act on a terminal, end an annotation or begin another one.
const sly = writeHouse(
  scratch,
  'sly',
  SMALL_HOUSE.replace('kind: detached', 'kind: "x%0A::error::one\\n::error file=a,line=1::two\\r\\e[31m"'),
);
const manySly = writeHouse(
  scratch,
  'many-sly',
  `${SMALL_HOUSE}work:\n${Array.from({ length: 4 }, (_, n) => `  - { id: w${n}, what: thing, did: new, evidence: [box-7] }\n`).join('')}`,
);

describe('exit status', () => {
  it.each([
    ['a house without errors', ['check', fine, ...AS_OF], 0],
    [
      'a file of such a house, which a shell completes to',
      ['check', path.join(fine, 'house.yaml'), ...AS_OF],
      0,
    ],
    ['a house with an error', ['check', broken, ...AS_OF], 1],
    ['a build with an error', ['build', broken, ...AS_OF], 1],
    ['no such house', ['check', path.join(scratch, 'nowhere'), ...AS_OF], 1],
    ['an unknown option', ['check', '--fast'], 2],
    ['an unknown command', ['publish'], 2],
    ['a day that does not exist', ['check', '--as-of', '2026-02-30'], 2],
    ['a month for a day', ['check', '--as-of', '2026-02'], 2],
    ['an unknown form', ['check', '--format', 'xml'], 2],
    ['no command', [], 2],
    ['help', ['--help'], 0],
    ['the version', ['--version'], 0],
  ] as const)('%s', async (_name, words, status) => {
    expect((await typed([...words])).status).toBe(status);
  });
});

describe('help', () => {
  it.each([[[]], [['new']], [['check']], [['build']], [['serve']]])(
    '%j has examples that can be typed',
    async (command) => {
      const { said, status } = await typed([...command, '--help']);
      expect(status).toBe(0);
      const examples = said.slice(said.indexOf('\nExamples:\n')).match(/^ {2}sillplate .*$/gm) ?? [];
      expect(examples.length).toBeGreaterThan(1);
      for (const example of examples) {
        const words = example.trim().split(/ {2,}/)[0]?.split(' ').slice(1) ?? [];
        // With --help behind it nothing runs, but an option that is not there would still be refused.
        expect((await typed([...words.slice(0, 1), '--help', ...words.slice(1)])).status, example).toBe(0);
      }
    },
  );

  it('asks back with the nearest word', async () => {
    expect((await typed(['biuld'])).said).toContain('do: perhaps  build\n');
    expect((await typed(['build', '--editions', 'agent'])).said).toContain('do: perhaps  --edition\n');
    expect((await typed(['serve', '--prot', '1'])).said).toContain('do: perhaps  --port\n');
  });
});

describe('--format', () => {
  it('json holds the same records as the text', async () => {
    const records = JSON.parse((await typed(['check', broken, '--format', 'json', ...AS_OF])).said);
    expect(records).toEqual([
      {
        code: 'facts.choice',
        severity: 'error',
        file: `${broken}/house.yaml`,
        line: 4,
        column: 9,
        near: false,
        fact: 'house.kind',
        message: '“kind” can’t be “detatched”',
        do: ['perhaps  kind: detached', 'write one of: detached, attached, apartment-style, manufactured'],
        also: [],
      },
    ]);
  });

  it('json of a house without findings is an empty list, and says nothing else', async () => {
    const { out, error, status } = await runProgram(['check', fine, '--format', 'json', ...AS_OF]);
    expect(Array.isArray(JSON.parse(out))).toBe(true);
    expect([error, status]).toEqual(['', 0]);
  });

  it('github is one command a record, whatever a value holds', async () => {
    const { said } = await typed(['check', sly, '--format', 'github', ...AS_OF]);
    const records = JSON.parse((await typed(['check', sly, '--format', 'json', ...AS_OF])).said);
    const lines = said.trimEnd().split('\n');
    expect(lines).toHaveLength(records.length);
    for (const line of lines)
      expect(line).toMatch(/^::(error|warning|notice) file=[^,:]*,line=\d+,col=\d+,title=[^,:]*::[^\r]*$/);
    expect(lines.join('\n').match(/^::error/gm)).toHaveLength(1);
    // The runner's own unescaping must give back the percent sign, not a new line.
    expect(said).toContain('x%250A::error::one');
    // biome-ignore lint/suspicious/noControlCharactersInRegex: that is what it looks for
    expect(said).not.toMatch(/[\u0000-\u0009\u000b-\u001f]/);
  });

  it('github tells the other places of one cause', async () => {
    expect((await typed(['check', manySly, '--format', 'github', ...AS_OF])).said).toContain(
      '%0Aalso on lines 8, 9, 10%0Ado: ',
    );
  });

  it('text lets no value act on the terminal', async () => {
    const { said } = await typed(['check', sly, ...AS_OF]);
    // biome-ignore lint/suspicious/noControlCharactersInRegex: that is what it looks for
    expect(said).not.toMatch(/[\u0000-\u0009\u000b-\u001f]/);
    expect(said).toContain('“x%0A::error::one·::error file=a,line=1::two··[31m”');
  });
});

describe('colour', () => {
  afterEach(() => vi.unstubAllEnvs());
  const colourOf = (isTTY: boolean, env: Readonly<Record<string, string>>): boolean => {
    for (const [name, value] of Object.entries({ NO_COLOR: '', TERM: 'xterm', ...env }))
      vi.stubEnv(name, value);
    const before = Object.getOwnPropertyDescriptor(process.stdout, 'isTTY');
    Object.defineProperty(process.stdout, 'isTTY', { value: isTTY, configurable: true });
    try {
      return realTerminal().colour;
    } finally {
      if (before === undefined) Reflect.deleteProperty(process.stdout, 'isTTY');
      else Object.defineProperty(process.stdout, 'isTTY', before);
    }
  };

  // https://no-color.org (version of 2022): any NO_COLOR that is not empty turns colour off.
  it.each([
    ['on a terminal', true, {}, true],
    ['with an empty NO_COLOR', true, { NO_COLOR: '' }, true],
    ['with NO_COLOR', true, { NO_COLOR: '0' }, false],
    ['on a dumb terminal', true, { TERM: 'dumb' }, false],
    ['in a pipe', false, {}, false],
  ] as const)('%s', (_name, isTTY, env, colour) => expect(colourOf(isTTY, env)).toBe(colour));

  it('is not in what goes into a pipe', async () => {
    const { out, error, status } = await runProgram(['check', broken, ...AS_OF]);
    expect(out).toContain('facts.choice');
    expect(`${out}${error}`).not.toContain('\u001b');
    expect(status).toBe(1);
  });
});

it('does not complain when its reader goes away', async () => {
  const child = start(['check', broken, '--format', 'json', ...AS_OF]);
  let error = '';
  child.stderr.setEncoding('utf8').on('data', (text: string) => (error += text));
  child.stdout.destroy();
  const status = await new Promise((resolve) => child.on('close', resolve));
  expect(error).toBe('');
  expect(status).toBe(1);
});

it('names the house that is meant by a dot', async () => {
  const { out, status } = await runProgram(
    ['check', '.', '--as-of', '2026-11-20', '--out', path.join(scratch, 'out')],
    { cwd: fine },
  );
  expect(out).toMatch(/^fine: /);
  expect(status).toBe(0);
});
