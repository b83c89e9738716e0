/**
 * Runs scripts of package.json beside one another; fails if one of them does, after all have ended.
 *
 *   node tests/tools/beside.mjs compile check:sources
 *
 * What each prints is shown in one piece when it ends.
 */
import { spawn } from 'node:child_process';

const ended = process.argv.slice(2).map(
  (script) =>
    new Promise((resolve, reject) => {
      // A shell finds npm on every system.
      const child = spawn(`npm run --silent ${script}`, { shell: true, stdio: ['ignore', 'pipe', 'pipe'] });
      const said = [];
      child.stdout.on('data', (bytes) => said.push(bytes));
      child.stderr.on('data', (bytes) => said.push(bytes));
      child.on('error', reject);
      child.on('close', (status) => {
        process.stdout.write(Buffer.concat(said));
        if (status !== 0) process.stderr.write(`npm run ${script} failed\n`);
        resolve(status === 0);
      });
    }),
);
if (ended.length === 0) throw new Error('name the scripts to run');
if ((await Promise.all(ended)).includes(false)) process.exitCode = 1;
