/** Many houses: which of them need making, several at once, and the same bytes however they are made. */
import {
  cpSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { runProgram, SMALL_HOUSE } from './cli-program.js';

let home: string;
const NAMES = ['alder-lane', 'birch-lane', 'cedar-lane'];
const facts = (name: string): string => path.join(home, 'content', name, 'house.yaml');

beforeAll(() => {
  home = mkdtempSync(path.join(tmpdir(), 'many-'));
  for (const name of NAMES) {
    mkdirSync(path.join(home, 'content', name), { recursive: true });
    writeFileSync(facts(name), SMALL_HOUSE.replace('Test Lane', name));
  }
});
afterAll(() => rmSync(home, { recursive: true, force: true }));

const build = (...words: string[]) =>
  runProgram(['build', '--edition', 'agent', '--as-of', '2026-11-20', ...words], { cwd: home });
const listed = async (...words: string[]): Promise<{ house: string; why: string | null }[]> =>
  JSON.parse((await build('--list', '--format', 'json', ...words)).out);

/** Every file below a folder with its bytes. */
function tree(folder: string): Map<string, string> {
  return new Map(
    readdirSync(path.join(home, folder), { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => {
        const file = path.join(entry.parentPath, entry.name);
        return [path.relative(path.join(home, folder), file), readFileSync(file).toString('base64')] as const;
      })
      .sort(([a], [b]) => (a < b ? -1 : 1)),
  );
}

describe('build of many houses', () => {
  it('lists, makes what is stale, and leaves the rest', async () => {
    expect((await listed('--stale')).map(({ house, why }) => [house, why])).toEqual(
      NAMES.map((name) => [name, 'never made']),
    );
    expect((await build()).status).toBe(0);
    expect(await listed('--stale')).toEqual([]);
    expect((await listed()).map(({ why }) => why)).toEqual([null, null, null]);
    const nothing = await build('--stale');
    expect([nothing.status, nothing.out]).toEqual([0, '3 houses are up to date.\n']);

    // What a run left that was killed after the new packet was in place: the house is ready, and nobody makes it again.
    mkdirSync(path.join(home, 'out', '.sillplate-old-alder-lane', 'agent'), { recursive: true });
    writeFileSync(path.join(home, 'out', '.sillplate-lock-birch-lane'), '999999999 1');
    expect(await listed('--stale')).toEqual([]);
    expect(readdirSync(path.join(home, 'out')).filter((name) => name.startsWith('.sill'))).toHaveLength(2);
    expect((await build('--stale')).out).toBe('3 houses are up to date.\n');
    expect(readdirSync(path.join(home, 'out')).filter((name) => name.startsWith('.sill'))).toEqual([]);

    // An edition that somebody threw away is made again.
    rmSync(path.join(home, 'out', 'birch-lane', 'agent'), { recursive: true });
    expect(await listed('--stale')).toMatchObject([{ house: 'birch-lane', why: 'never made' }]);
    expect((await build('--stale')).status).toBe(0);

    // A newer time alone changes nothing, nor does a film; another letter does.
    mkdirSync(path.join(home, 'content', 'alder-lane', 'photos'));
    writeFileSync(path.join(home, 'content', 'alder-lane', 'photos', 'walk.MOV'), 'a film');
    utimesSync(facts('alder-lane'), new Date(), new Date());
    writeFileSync(facts('birch-lane'), `${readFileSync(facts('birch-lane'), 'utf8')}# a word\n`);
    expect(await listed('--stale')).toMatchObject([{ house: 'birch-lane', why: 'facts changed' }]);
    const one = await build('--stale');
    expect(one.out).toContain('birch-lane: ');
    expect(one.out).not.toContain('alder-lane: ');
    expect(one.out).toContain('2 houses are up to date.');
    expect(await listed('--stale')).toEqual([]);

    // The last `--as-of` counts.
    expect((await listed('--stale', '--as-of', '2026-11-21')).map(({ why }) => why)).toEqual(
      NAMES.map(() => 'another day'),
    );
    expect((await listed('--stale', '--paper', 'a4')).map(({ why }) => why)).toEqual(
      NAMES.map(() => 'another paper'),
    );
    expect((await listed('--stale', '--edition', 'agent,buyer')).map(({ why }) => why)).toEqual(
      NAMES.map(() => 'never made'),
    );
    rmSync(path.join(home, 'out', 'cedar-lane'), { recursive: true });
    expect(await listed('--stale')).toMatchObject([{ house: 'cedar-lane', why: 'never made' }]);
    cpSync(path.join(home, 'out', 'alder-lane'), path.join(home, 'out', 'cedar-lane'), { recursive: true });
    // Another house's packets in its place are not its own.
    expect(await listed('--stale')).toMatchObject([{ house: 'cedar-lane', why: 'facts changed' }]);
  });

  it('makes the same bytes one after another and several at once, and tells them in one order', async () => {
    const [alone, beside] = [await build('--out', 'alone'), await build('--out', 'beside', '--jobs', '3')];
    expect([alone.status, beside.status, beside.error]).toEqual([0, 0, '']);
    expect(beside.out).toBe(alone.out.replaceAll('alone/', 'beside/'));
    expect(tree('beside')).toEqual(tree('alone'));
    expect(tree('alone').size).toBeGreaterThan(20);
  });

  it('tells a house with an error by its line, and makes the others', async () => {
    writeFileSync(facts('alder-lane'), SMALL_HOUSE.replace('2001', 'long ago'));
    const { status, out, error } = await build('--out', 'broken', '--jobs', '2');
    expect([status, error]).toEqual([1, '']);
    expect(out).toMatch(/error [\w.-]+ {2}content\/alder-lane\/house\.yaml:5:\d+/);
    expect(out).toContain('alder-lane: no packet made, 1 error');
    expect(out).toContain('cedar-lane/agent/index.html');
  });

  it('names a house that is not there, and refuses numbers that make no sense', async () => {
    const lost = await build('--list', 'dogwood-lane');
    expect([lost.status, lost.out]).toEqual([1, '']);
    expect(lost.error).toContain('there is no folder content/dogwood-lane');
    for (const jobs of ['0', '65', '1.5'])
      expect((await build('--jobs', jobs)).error).toContain('write a number from 1 to 64');
  });
});
