/** `sillplate new`: a folder that checks clean, and nothing written over. */
import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { firstHouse } from '../../src/first-house.js';
import { readYaml } from '../../src/intake/yaml.js';
import { typed } from '../tools/gallery.js';
import { fingerprint, runProgram, scratchFolder } from './cli-program.js';

const scratch = scratchFolder();
afterAll(() => rmSync(scratch, { recursive: true, force: true }));
const at = (name: string): string => path.join(scratch, name);

interface Said {
  readonly severity: string;
  readonly code: string;
}

async function checked(folder: string): Promise<Said[]> {
  const day = ['--as-of', '2026-11-20'];
  const { said } = await typed(['check', folder, '--format', 'json', ...day, '--out', at('out')]);
  return JSON.parse(said) as Said[];
}

const severities = async (folder: string): Promise<string[]> =>
  (await checked(folder)).map(({ severity }) => severity);

describe('sillplate new --yes', () => {
  it('writes a folder that checks with no error and no warning', async () => {
    const { said, status } = await typed(['new', at('my-house'), '--yes']);
    expect(status).toBe(0);
    expect(said).toContain(`sillplate check ${at('my-house')}`);
    expect(existsSync(at('my-house/photos')) && existsSync(at('my-house/documents'))).toBe(true);
    const found = await severities(at('my-house'));
    expect(found.length).toBeGreaterThan(0);
    expect(new Set(found)).toEqual(new Set(['note']));
  });

  it('writes comments that check clean once they are taken in', async () => {
    await typed(['new', at('taken-in'), '--yes']);
    const file = at('taken-in/house.yaml');
    const text = readFileSync(file, 'utf8')
      // Every commented fact, at its own indentation; the prose above the house stays a comment.
      .replace(
        /^( *)# (street:|zip:|bought:|lot:|web:|outline:|ceiling:|size:|finishes:|- \{ (?:id|what|ask|on):|measured:|record:)/gm,
        '$1$2',
      )
      // A word with nothing behind it, and what stands below it.
      .replace(/^# (\w+:$|(?: {2})+(?=\S))/gm, '$1');
    expect(text.match(/^ *# *(- \{|\w+:( |$))/gm), 'every example is taken in').toBeNull();
    const words = ['people', 'systems', 'work', 'conditions', 'documents', 'photos', 'answers'];
    for (const word of words)
      expect(Object.keys(readYaml(text, '').data[word] as object), word).toHaveLength(1);
    writeFileSync(file, text);
    const wrong = (await checked(at('taken-in'))).filter(({ severity }) => severity === 'error');
    // What the examples name is not in the folder; all else of them must read.
    expect(wrong.filter(({ code }) => !['intake.no-file', 'facts.id-unknown'].includes(code))).toEqual([]);
  });

  it('writes no word that holds nothing: what is put below such a word would be a mistake', () => {
    const text = firstHouse(
      { name: 'H', city: 'C', state: 'OH', built: '1948', bought: undefined },
      'schema.json',
    );
    const { data } = readYaml(text, '');
    expect(Object.keys(data)).toEqual(['house', 'levels', 'rooms']);
    for (const value of Object.values(data)) expect(Object.keys(value as object)).not.toEqual([]);
  });

  it.each([
    ['my-house', './my-house'],
    ['content/my-house', 'my-house'],
  ])('names %s in what to type next so that the next command finds it', async (folder, named) => {
    const cwd = at(`next-${named.length}`);
    mkdirSync(cwd);
    const { out } = await runProgram(['new', folder, '--yes'], { cwd });
    expect(out).toContain(`sillplate check ${named}\n  sillplate build ${named}\n`);
    expect((await runProgram(['check', named, '--as-of', '2026-11-20'], { cwd })).status).toBe(0);
  });

  it('leaves a folder that is there as it is', async () => {
    mkdirSync(at('kept'));
    writeFileSync(at('kept/notes.txt'), 'mine');
    const before = fingerprint(at('kept'));
    const { said, status } = await typed(['new', at('kept'), '--yes']);
    expect(status).toBe(2);
    expect(said).toContain('is there already, and nothing in it is written over');
    expect(fingerprint(at('kept'))).toBe(before);
  });

  it('says why where no folder can be made, which is no fault of what was typed', async () => {
    writeFileSync(at('no-folder'), 'mine');
    const { said, status } = await typed(['new', at('no-folder/house'), '--yes']);
    expect(status).toBe(1);
    expect(said).toContain('a file stands where a folder is needed');
    expect(said).not.toContain('there already');
  });

  it.each([
    ['Quarry Road', 'quarry-road'],
    ['quarry_road', 'quarry-road'],
    ['Café No. 7', 'cafe-no-7'],
    ['-x-', 'x'],
    ['家', 'my-house'],
  ])('refuses the name %j and says %s', async (name, better) => {
    // Behind --, a name that begins with a hyphen is no option.
    const { said, status } = await typed(['new', '--yes', '--', at(name)]);
    expect(status).toBe(2);
    expect(said).toContain(`sillplate new ${at(better)}\n`);
    expect(existsSync(at(name))).toBe(false);
  });
});

describe('sillplate new with questions', () => {
  it('takes the answers, asks again where one can’t be used, and writes what was said', async () => {
    const answers = ['O’Brien: House #2', '', 'Dry Wells', 'Arizona', 'az', '4/11/1960', '1960~', '', ''];
    const { out, status } = await runProgram(['new', at('asked')], { typed: `${answers.join('\n')}\n` });
    expect(status).toBe(0);
    expect(out).toContain('An answer is needed here');
    expect(out).toContain('Two letters, for example OH');
    expect(out).toContain('“4/11/1960” is not how a date is written here');
    const text = readFileSync(at('asked/house.yaml'), 'utf8');
    expect(text).toContain('name: "O’Brien: House #2"');
    expect(text).toContain('state: AZ');
    expect(text).toContain('built: 1960~');
    expect(new Set(await severities(at('asked')))).toEqual(new Set(['note']));
  });

  it.each(['true', '12', 'null', '- x', '{ a }', '&b', '"quoted"', 'a: b', 'ends with:', 'a # b', "it's"])(
    'writes the name %s so that it is read back as it was typed',
    (name) => {
      const text = firstHouse(
        { name, city: name, state: 'OH', built: '1948', bought: undefined },
        'schema.json',
      );
      const read = readYaml(text, 'house.yaml');
      expect(read.diagnostics).toEqual([]);
      expect(read.data.house).toMatchObject({ name, address: { city: name } });
    },
  );

  it('writes nothing if the answers end too early', async () => {
    const { error, status } = await runProgram(['new', at('cut-off')], { typed: 'Name only\n' });
    expect(status).toBe(2);
    expect(error).toContain(`sillplate new ${at('cut-off')} --yes`);
    expect(existsSync(at('cut-off'))).toBe(false);
  });
});
