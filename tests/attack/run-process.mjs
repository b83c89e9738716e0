/**
 * The program in a process that has read all of it before it is told what to do: one run after another costs no start,
 * and a kill hits the work and not the loading.
 */
import { readdirSync } from 'node:fs';
import { run } from '../../dist/cli.js';
import { quietly } from './quiet-terminal.mjs';

// What a command would load on its way.
const parts = new URL('../../dist/parts/', import.meta.url);
for (const file of readdirSync(parts).filter((name) => name.endsWith('.js')))
  await import(new URL(file, parts).href);
await Promise.all(['yazl', 'modern-tar'].map((name) => import(name)));

process.on('message', async (/** @type {readonly string[]} */ words) => {
  const { terminal, said } = quietly();
  const status = await run(words, terminal);
  process.send?.({ status, ...said });
});
// Its own workers end by themselves; this one ends with who started it.
process.on('disconnect', () => process.exit());
process.send?.('ready');
