/**
 * Takes over what a run of tests/houses.test.ts left in `expected-changed/`, for all houses or those named:
 * `node tests/tools/accept-houses.mjs [house…]`. For a person who has looked at the difference; never for CI.
 */
import { existsSync, readdirSync, renameSync, rmSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const houses = fileURLToPath(new URL('../houses/', import.meta.url));
const say = (line) => process.stdout.write(`${line}\n`);

if (process.env.CI !== undefined && process.env.CI !== '' && process.env.CI !== 'false') {
  say('CI accepts nothing: look at the difference on your own machine');
  process.exit(1);
}
const wanted = process.argv.slice(2);
const names = wanted.length > 0 ? wanted : readdirSync(houses);
const changed = names.filter((name) => existsSync(path.join(houses, name, 'expected-changed')));
for (const name of changed) {
  rmSync(path.join(houses, name, 'expected'), { recursive: true, force: true });
  renameSync(path.join(houses, name, 'expected-changed'), path.join(houses, name, 'expected'));
  say(`accepted ${name}`);
}
if (changed.length === 0) say('nothing has changed: run  npx vitest run tests/houses.test.ts  first');
