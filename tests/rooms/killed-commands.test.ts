/** Commands that write into the owner's own files, killed at random moments: two each of what `npm run attack -- kill` does often. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, expect, it } from 'vitest';

/** As far as it is used here. */
interface Attack {
  readonly killAll: (
    scratch: string,
    kills: number,
    random: () => number,
    say: (line: string) => void,
    only: readonly string[],
  ) => Promise<readonly { readonly command: string; readonly kills: number; readonly broken: string[] }[]>;
  readonly seeded: (seed: number) => () => number;
}

const beside = async (file: string): Promise<Attack> =>
  import(new URL(`../${file}.mjs`, import.meta.url).href);

const scratch = mkdtempSync(path.join(tmpdir(), 'killed-commands-'));
afterAll(() => rmSync(scratch, { recursive: true, force: true }));

it('an import, accepted pairs and a new house leave all as before or as after, and the next run is clean', {
  timeout: 240_000,
}, async () => {
  const [{ killAll }, { seeded }] = await Promise.all([beside('attack/kill'), beside('tools/seeded')]);
  const commands = ['costs import', 'photos --accept', 'new'];
  const rows = await killAll(scratch, 2, seeded(20261126), () => undefined, commands);
  expect(rows.map(({ command, kills, broken }) => [command, kills, broken])).toEqual(
    commands.map((command) => [command, 2, []]),
  );
});
