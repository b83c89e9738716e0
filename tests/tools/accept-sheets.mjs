/**
 * Paints the pictures of tests/sheets anew: `node tests/tools/accept-sheets.mjs`. For a person who has looked at what a
 * failed run of tests/outside/page-pictures.test.ts left; never for CI. The program must be compiled.
 */
import { spawnSync } from 'node:child_process';
import { createRequire } from 'node:module';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

if (process.env.CI !== undefined && process.env.CI !== '' && process.env.CI !== 'false') {
  process.stdout.write('CI accepts nothing: look at the difference on your own machine\n');
  process.exit(1);
}
const root = fileURLToPath(new URL('../../', import.meta.url));
const vitest = path.join(
  path.dirname(createRequire(import.meta.url).resolve('vitest/package.json')),
  'vitest.mjs',
);
const { status } = spawnSync(process.execPath, [vitest, 'run', 'tests/outside/page-pictures.test.ts'], {
  cwd: root,
  env: { ...process.env, SILLPLATE_ACCEPT_SHEETS: '1' },
  stdio: 'inherit',
});
process.exit(status ?? 1);
