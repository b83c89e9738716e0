/**
 * The program in a process that has read all of it before it is told what to do: one run after another costs no start,
 * and a kill hits the work and not the loading.
 */
import { run } from '../../dist/cli.js';
import { quietly } from './quiet-terminal.mjs';

// What a command would load on its way.
for (const file of [
  'command-archive',
  'command-costs',
  'command-deliver',
  'print/render-print',
  'remarks-own-words',
  'archive/write-workbook',
  'intake/workbook-cells',
])
  await import(`../../dist/${file}.js`);
await Promise.all(['yazl', 'modern-tar'].map((name) => import(name)));

process.on('message', async (/** @type {readonly string[]} */ words) => {
  const { terminal, said } = quietly();
  const status = await run(words, terminal);
  process.send?.({ status, ...said });
});
// Its own workers end by themselves; this one ends with who started it.
process.on('disconnect', () => process.exit());
process.send?.('ready');
