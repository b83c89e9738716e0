/** The documents are tested: paths and links exist, commands parse, tables say what the program says. */

import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { run } from '../src/cli.js';
import { CODES } from '../src/diagnostics/codes.js';
import { fieldTable } from '../src/facts/field-table.js';
import { houseJsonSchema } from '../src/facts/json-schema.js';
import { quietProgress } from './tools/quiet-progress.js';

const root = fileURLToPath(new URL('..', import.meta.url));
const read = (file: string): string => readFileSync(path.join(root, file), 'utf8');
const DOCUMENTS = ['README.md', 'DEVELOPERS.md'];

const between = (text: string, name: string): string | undefined =>
  new RegExp(`<!-- ${name}:begin -->\n([\\s\\S]*?)<!-- ${name}:end -->`, 'u').exec(text)?.[1];

/** Heading → the anchor that Git hosts make of it. */
const anchorOf = (heading: string): string =>
  heading
    .toLowerCase()
    .replace(/[^\p{L}\p{N} _-]/gu, '')
    .replaceAll(' ', '-');

const fences = (text: string, language: string): string[] =>
  [...text.matchAll(/^( *)```(\w*)\n([\s\S]*?)^\1```/gmu)]
    .filter((match) => match[2] === language)
    .map((match) => match[3] ?? '');

const withoutFences = (text: string): string => text.replace(/^( *)```\w*\n[\s\S]*?^\1```/gmu, '');

/** What the working tree doesn't hold: made by the program, or by the reader in the examples. */
const MADE = /^(out|dist|_site|node_modules|deliveries|expected-changed)(\/|$)|my-house|<|\$|^content\/my-/u;

/** `2015/2019` and the like have a slash too. */
const DATES = /^[\d./~-]+$/u;

/** Paths named in code spans: with a folder, or with one of the endings the project uses. */
function pathsIn(text: string): string[] {
  const spans = [...withoutFences(text).matchAll(/`([^`\n]+)`/gu)].map((match) => match[1] ?? '');
  return spans.filter(
    (span) =>
      /^\.?[\w@.*-]+(\/[\w@.*-]*)+$/u.test(span) &&
      !MADE.test(span) &&
      !span.startsWith('@') &&
      !DATES.test(span),
  );
}

/** A path, or a pattern with `*` for a part of a name. A short one is looked for in the usual folders. */
function exists(named: string): boolean {
  const places = ['', 'src', 'content/quarry-road', 'tests'];
  const [fixed = ''] = named.split('*');
  const start = named.includes('*') ? fixed.slice(0, fixed.lastIndexOf('/') + 1) : named;
  return places.some((place) => existsSync(path.join(root, place, start)));
}

describe.each(DOCUMENTS)('%s', (file) => {
  const text = read(file);

  it('names only paths that are there', () => {
    const paths = pathsIn(text);
    expect(paths.length).toBeGreaterThan(2);
    expect(paths.filter((one) => !exists(one))).toEqual([]);
  });

  it('has only links that lead somewhere', () => {
    const links = [...withoutFences(text).matchAll(/\]\(([^)\s]+)\)/gu)].map((match) => match[1] ?? '');
    expect(links.length).toBeGreaterThan(0);
    const anchors = [...text.matchAll(/^#+ (.*)$/gmu)].map((match) => anchorOf(match[1] ?? ''));
    const dead = links.filter((link) => {
      if (/^https:\/\//u.test(link)) return false;
      if (link.startsWith('#')) return !anchors.includes(link.slice(1));
      return !existsSync(path.join(root, link.split('#')[0] ?? ''));
    });
    expect(dead).toEqual([]);
  });

  it('has only commands that the program, npm or the shell knows', async () => {
    const lines = fences(text, 'sh').flatMap((block) => block.split('\n').map((line) => line.trim()));
    const commands = lines
      .flatMap((line) => line.split('&&'))
      .map((one) => one.trim())
      .filter((one) => one !== '');
    const unknown: string[] = [];
    for (const command of commands) if (!(await isKnown(command))) unknown.push(command);
    expect(unknown).toEqual([]);
    if (file === 'README.md') expect(commands.length).toBeGreaterThan(5);
  });
});

const scripts = (): string[] =>
  Object.keys((JSON.parse(read('package.json')) as { scripts: Record<string, string> }).scripts);

/** Whether a line of a document would be understood; nothing is built by asking for help beside it. */
async function isKnown(command: string): Promise<boolean> {
  const words = command.replace(/\s+#.*$/u, '').match(/"[^"]*"|\S+/gu) ?? [];
  const [first = '', second = '', third = ''] = words;
  if (first === 'npm') {
    if (['ci', 'install', 'pack'].includes(second)) return true;
    return scripts().includes(second === 'run' ? third : second);
  }
  if (first === 'node') return existsSync(path.join(root, second));
  if (first !== 'npx' || second !== 'sillplate') return first === 'npx' && second === 'vitest';
  return (await statusOf(words.slice(2))) === 0;
}

/** Asks the command for its help instead of running it, then looks for the command and each option in what it says. */
async function statusOf(words: readonly string[]): Promise<number> {
  let said = '';
  const out = (text: string): void => {
    said += text;
  };
  const status = await run([...words, '--help'], { out, error: out, colour: false, progress: quietProgress });
  const [command = ''] = words;
  const known = command.startsWith('--') || said.includes(`Usage: sillplate ${command}`);
  const options = words.filter((word) => word.startsWith('--')).map((word) => word.split('=')[0] ?? word);
  return known && options.every((option) => said.includes(option)) ? status : 2;
}

describe('the commands', () => {
  it('are looked at: what nobody knows is refused', async () => {
    expect(await isKnown('npx sillplate build my-house --as-of 2026-06-30')).toBe(true);
    expect(await isKnown('npx sillplate bild my-house')).toBe(false);
    expect(await isKnown('npx sillplate build my-house --edtion agent')).toBe(false);
    expect(await isKnown('npm run everything')).toBe(false);
    expect(await isKnown('node tests/tools/no-such.mjs')).toBe(false);
    expect(await isKnown('npm ci')).toBe(true);
  });
});

describe('the tables', () => {
  it('of words in README.md is that of the schema', () => {
    expect(between(read('README.md'), 'fields'), 'run node tests/tools/write-docs.mjs').toBe(fieldTable());
  });

  it('of words tells every top-level word, every choice, and an example wherever the schema has one', () => {
    const table = fieldTable();
    for (const word of Object.keys(houseJsonSchema().properties ?? {}))
      expect(table).toContain(`\`${word}\``);
    expect(table).toContain('`detached`, `attached`, `apartment-style`, `manufactured`');
    expect(table).toContain('| **`address.city`** | City or town. | text | `Fallow Mills` |');
    expect(table).not.toMatch(/undefined|\[object/u);
  });

  it('of messages in DEVELOPERS.md is that of the program', () => {
    const rows = Object.entries(CODES).map(([code, meaning]) => `| \`${code}\` | ${meaning} |`);
    const expected = `${['| code | meaning |', '|---|---|', ...rows].join('\n')}\n`;
    expect(between(read('DEVELOPERS.md'), 'codes'), 'run node tests/tools/write-docs.mjs').toBe(expected);
  });
});
