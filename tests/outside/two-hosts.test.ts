/**
 * The recipe of the README for many machines, typed as it stands there: GNU parallel takes the list of stale houses and
 * spreads them over two hosts by ssh. What comes back is what one machine makes, byte for byte.
 */
import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { SMALL_HOUSE } from '../rooms/cli-program.js';
import { lacking } from '../tools/outside-programs.js';
import { type Hosts, mayMakeHosts, openHosts } from '../tools/two-hosts.js';

const programs = lacking('parallel', 'rsync', 'jq', 'ip', 'ssh');
const lacks = programs.some
  ? programs.words
  : mayMakeHosts()
    ? ''
    : ' (skipped: this user may make no network on this machine)';
const HOUSES = ['alder-lane', 'birch-lane', 'cedar-lane', 'dogwood-lane'];

/** The commands of the README between the words that frame them. */
function recipe(): string {
  const readme = readFileSync('README.md', 'utf8');
  const found = /one house is one job[\s\S]*?```bash\n([\s\S]*?)```/.exec(readme)?.[1];
  if (found === undefined) throw new Error('the README has no recipe for several machines');
  return found;
}

/** Every file below a folder with its bytes; caches are no output. */
function tree(folder: string): Map<string, string> {
  return new Map(
    readdirSync(folder, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => path.join(entry.parentPath, entry.name))
      .filter((file) => !file.includes('-cache/'))
      .map((file) => [path.relative(folder, file), readFileSync(file).toString('base64')] as const)
      .sort(([a], [b]) => (a < b ? -1 : 1)),
  );
}

describe.skipIf(lacks !== '')(`two hosts${lacks}`, () => {
  let home: string;
  let hosts: Hosts;
  beforeAll(() => {
    home = mkdtempSync(path.join(tmpdir(), 'hosts-'));
    for (const name of HOUSES) {
      mkdirSync(path.join(home, 'content', name), { recursive: true });
      writeFileSync(path.join(home, 'content', name, 'house.yaml'), SMALL_HOUSE.replace('Test Lane', name));
    }
    // The program as it is installed: a command on the path of every host.
    mkdirSync(path.join(home, 'bin'));
    const program = path.resolve(process.env.SILLPLATE_CLI ?? 'dist/cli.js');
    writeFileSync(
      path.join(home, 'bin', 'sillplate'),
      `#!/bin/sh\nexec "${process.execPath}" "${program}" "$@"\n`,
      { mode: 0o755 },
    );
    hosts = openHosts(home);
  });
  afterAll(() => {
    hosts.close();
    rmSync(home, { recursive: true, force: true });
  });

  it('make together what one machine makes', () => {
    const bin = path.join(home, 'bin');
    const shell = (script: string) =>
      spawnSync('bash', ['-euo', 'pipefail', '-c', script], {
        cwd: home,
        encoding: 'utf8',
        env: {
          ...process.env,
          HOME: home,
          PATH: `${bin}:${process.env.PATH}`,
          PARALLEL_SSH: `ssh -F ${hosts.config}`,
          RSYNC_RSH: `ssh -F ${hosts.config}`,
        },
        timeout: 100_000,
      });
    const typed = recipe()
      // What the hosts have on their paths is their owner's matter; here the command lies in a folder of the test.
      .replace(/(?<=\s)sillplate build --as-of 2026-11-20/, `${bin}/sillplate build --as-of 2026-11-20`)
      .replace('parallel ', 'parallel --joblog jobs.tsv ');
    const first = shell(typed);
    expect([first.status, first.stderr]).toEqual([0, '']);
    const ran = readFileSync(path.join(home, 'jobs.tsv'), 'utf8').trim().split('\n').slice(1);
    expect(ran).toHaveLength(HOUSES.length);
    expect(new Set(ran.map((row) => row.split('\t')[1]))).toEqual(new Set(hosts.names));

    const alone = shell('sillplate build --as-of 2026-11-20 --out alone >told.txt');
    expect([alone.status, alone.stderr]).toEqual([0, '']);
    const [spread, single] = [tree(path.join(home, 'out')), tree(path.join(home, 'alone'))];
    expect([...spread.keys()]).toEqual([...single.keys()]);
    expect([...spread].filter(([file, bytes]) => single.get(file) !== bytes).map(([file]) => file)).toEqual(
      [],
    );
    expect(single.size).toBeGreaterThan(100);

    // What came back counts as made here, too; the next run has one house to make.
    cpSync(path.join(home, 'content', 'alder-lane'), path.join(home, 'content', 'elder-lane'), {
      recursive: true,
    });
    const again = shell(typed);
    expect([again.status, again.stderr]).toEqual([0, '']);
    const rows = readFileSync(path.join(home, 'jobs.tsv'), 'utf8').trim().split('\n').slice(1);
    expect(rows.map((row) => /content\/([a-z-]+)/.exec(row)?.[1])).toEqual(['elder-lane']);
  });
});
