/**
 * The web pages, one by one, beside plain Eleventy making as many pages of a few lines in the same process, and beside Hugo
 * making them as a process of its own.
 */
import { spawnSync } from 'node:child_process';
import { mkdir, readdir } from 'node:fs/promises';
import path from 'node:path';
// @ts-expect-error Eleventy ships no types.
import { Eleventy } from '@11ty/eleventy';
import { PUBLISHED, renderPages } from '../../dist/build.js';
import { composed, orderFor } from './demo-houses.mjs';
import { inMs, perPart, runProgram, timeChildren, timeInside } from './measure.mjs';
import { trivialTexts, writeTrivialHugo, writeTrivialSite } from './trivial-site.mjs';

/**
 * @param {string} base holds content/ with the demo houses
 * @param {string} name
 * @param {number} runs
 * @returns {Promise<{ rows: import('./table.mjs').Row[], pages: Map<string, number> }>} pages: by edition
 */
export async function timePages(base, name, runs) {
  const { packets, picturesOf } = await composed(orderFor(base, name, PUBLISHED));
  const rows = [];
  const count = new Map();
  for (const packet of packets) {
    const make = async () =>
      (await renderPages(packet, picturesOf(packet), undefined)).filter((file) => file.path.endsWith('.html'))
        .length;
    const pages = await make();
    count.set(packet.edition.name, pages);
    const folder = path.join(base, 'plain', packet.edition.name);
    await mkdir(folder, { recursive: true });
    const { template } = await writeTrivialSite(folder, pages);
    const plain = () => plainEleventy(template, pages);
    await plain();
    const ours = perPart(await timeInside(runs, make), pages);
    const theirs = perPart(await timeInside(runs, plain), pages);
    rows.push({
      what: `${name}, ${packet.edition.name} edition as web pages, warm: one page (of ${pages})`,
      ours: inMs(ours.clock),
      cpu: ours.cpu === undefined ? '' : inMs(ours.cpu),
      runs,
      beside: `plain Eleventy, ${pages} trivial pages: ${inMs(theirs.clock)}${theirs.cpu === undefined ? '' : `, processor ${inMs(theirs.cpu)}`}; ours is ${(ours.clock.median / theirs.clock.median).toFixed(2)} of it; ${await besideHugo(path.join(base, 'hugo', packet.edition.name), pages, runs)}`,
      aim: 'at most 1.3 of plain Eleventy',
    });
  }
  return { rows, pages: count };
}

/**
 * Hugo is a program and no library, so what stands here is its whole process, a page.
 * @param {string} folder
 * @param {number} pages
 * @param {number} runs
 */
async function besideHugo(folder, pages, runs) {
  const said = spawnSync('hugo', ['version'], { encoding: 'utf8' });
  if (said.error !== undefined) return 'Hugo is not here (Debian: hugo)';
  const version = /v([\d.]+)/.exec(said.stdout)?.[1] ?? '';
  await writeTrivialHugo(folder, pages);
  const run = () => runProgram('hugo', ['--quiet', '--source', folder]);
  const whole = await timeChildren(runs, run);
  const made = (await readdir(path.join(folder, 'public'), { recursive: true })).filter((file) =>
    file.endsWith('index.html'),
  );
  if (made.length !== pages) throw new Error(`Hugo made ${made.length} of ${pages} pages`);
  const { clock, cpu } = perPart(whole, pages);
  return `Hugo ${version}, as many, whole process: ${inMs(clock)}${cpu === undefined ? '' : `, processor ${inMs(cpu)}`}`;
}

/**
 * @param {string} template
 * @param {number} pages
 */
async function plainEleventy(template, pages) {
  const eleventy = new Eleventy(template, 'out', {
    quietMode: true,
    configPath: false,
    source: 'script',
    runMode: 'build',
    config: (/** @type {{ addGlobalData(name: string, data: unknown): void }} */ config) => {
      config.addGlobalData('texts', trivialTexts(pages, 'first'));
    },
  });
  eleventy.disableLogger();
  const made = await eleventy.toJSON();
  if (made.length !== pages) throw new Error(`plain Eleventy made ${made.length} of ${pages} pages`);
}
