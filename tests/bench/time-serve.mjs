/**
 * One changed line until the new page is there: `serve`, from the write to the fetched page, beside Eleventy's
 * own watching of as many trivial pages.
 */
import { spawn } from 'node:child_process';
import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { get } from 'node:http';
import { createRequire } from 'node:module';
import path from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { AS_OF, PROGRAM } from './demo-houses.mjs';
import { inMs, spread } from './measure.mjs';
import { writeTrivialSite } from './trivial-site.mjs';

/** Longer than any page takes on a busy machine; then the timing fails. */
const PATIENCE_MS = 60_000;

/**
 * @param {string} base holds content/ with the demo houses
 * @param {string} name
 * @param {number} pages how many pages the edition has that is looked at
 * @param {number} runs
 * @returns {Promise<import('./table.mjs').Row[]>}
 */
export async function timeServe(base, name, pages, runs) {
  const { whole, making } = await ours(base, name, runs);
  const watching = await eleventyWatch(path.join(base, 'watched'), pages, runs);
  return [
    {
      what: `${name}, one changed line of house.yaml until its new page has been fetched from serve (four editions composed, the ${pages} pages of one rendered)`,
      ours: `${inMs(whole)}, of it reading and composing ${inMs(making)}`,
      runs,
      beside: `Eleventy --watch, ${pages} trivial pages, until the changed one is on disk: ${inMs(watching)}`,
      aim: 'under 300 ms',
    },
  ];
}

/**
 * @param {string} base
 * @param {string} name
 * @param {number} runs
 */
async function ours(base, name, runs) {
  const server = start([
    PROGRAM,
    ...['serve', name, '--content', path.join(base, 'content'), '--out', path.join(base, 'out')],
    ...['--as-of', AS_OF, '--port', '0'],
  ]);
  try {
    const address = (await server.said(/http:\/\/127\.0\.0\.1:\d+\//))[0];
    const page = `${address}${name}/buyer/index.html`;
    const shows = async (/** @type {string} */ title) => (await (await fetch(page)).text()).includes(title);
    const changes = listen(`${address}-/changes`);
    const file = path.join(base, 'content', name, 'house.yaml');
    const written = await readFile(file, 'utf8');
    const edit = (/** @type {string} */ title) =>
      writeFile(file, written.replace(/^( {2}name: ).*$/m, `$1${title}`));
    // The first edits find everything cold and are not counted; they end once a message has come. An edit made
    // before the watching has begun is not seen, so it is made again.
    for (let run = 0; run < 2 || !changes.isOpen(); run += 1) {
      if (run > 20) throw new Error('serve never sent a message');
      await edit(`Cold House ${run}`);
      const limit = performance.now() + 3000;
      while (performance.now() < limit && !(await shows(`Cold House ${run}`))) await pause(20);
    }
    const whole = [];
    for (let run = 0; run < runs; run += 1) {
      await pause(200);
      const started = performance.now();
      await edit(`Bench House ${run}`);
      await until(() => changes.next().then(() => shows(`Bench House ${run}`)));
      whole.push(performance.now() - started);
    }
    await writeFile(file, written);
    changes.close();
    const making = [...server.text().matchAll(/: shown, (\d+) ms/g)].map((match) => Number(match[1]));
    return { whole: spread(whole), making: spread(making.slice(-runs)) };
  } finally {
    await server.stop();
  }
}

/**
 * @param {string} folder
 * @param {number} pages
 * @param {number} runs
 */
async function eleventyWatch(folder, pages, runs) {
  await mkdir(folder, { recursive: true });
  const site = await writeTrivialSite(folder, pages);
  // Eleventy exports no path to its command; it lies above its main file.
  const main = createRequire(import.meta.url).resolve('@11ty/eleventy');
  const cmd = path.join(path.dirname(main), '../cmd.cjs');
  const watcher = start([cmd, '--watch'], folder);
  try {
    await watcher.said(/Watching/);
    const times = [];
    // One run more, since the first finds everything cold and is not counted.
    for (let run = 0; run <= runs; run += 1) {
      await pause(200);
      const title = `Bench Page ${run}`;
      const started = performance.now();
      await writeFile(site.data, site.dataText(title));
      await until(async () => {
        await pause(2);
        return (await readFile(path.join(folder, '_site/0/index.html'), 'utf8')).includes(title);
      });
      if (run > 0) times.push(performance.now() - started);
    }
    return spread(times);
  } finally {
    await watcher.stop();
  }
}

/** @param {() => Promise<boolean>} isSo */
async function until(isSo) {
  const limit = performance.now() + PATIENCE_MS;
  const late = () => new Error('the changed page did not come');
  // A message that is lost never answers.
  const lost = pause(PATIENCE_MS, undefined, { ref: false }).then(() => Promise.reject(late()));
  lost.catch(() => undefined);
  while (!(await Promise.race([isSo(), lost]))) if (performance.now() > limit) throw late();
}

/**
 * Starts a Node program that runs until it is told to stop.
 * @param {readonly string[]} words
 * @param {string} [folder] where it runs
 */
function start(words, folder) {
  const child = spawn(process.execPath, words, { cwd: folder, stdio: ['ignore', 'pipe', 'pipe'] });
  let text = '';
  for (const stream of [child.stdout, child.stderr])
    stream.on('data', (chunk) => {
      text += chunk;
    });
  const ended = new Promise((resolve) => child.once('close', resolve));
  return {
    text: () => text,
    /** @param {RegExp} wanted */
    said: async (wanted) => {
      const limit = performance.now() + PATIENCE_MS;
      for (;;) {
        const match = wanted.exec(text);
        if (match !== null) return match;
        if (child.exitCode !== null || performance.now() > limit)
          throw new Error(`${words[0]} never said ${wanted}: ${text.slice(-2000)}`);
        await pause(10);
      }
    },
    stop: async () => {
      child.kill('SIGINT');
      await Promise.race([ended, pause(5000).then(() => child.kill('SIGKILL'))]);
    },
  };
}

/**
 * The server's messages, one by one. The line counts as open once its first bytes have come, which may be no
 * earlier than the first message.
 * @param {string} address
 */
function listen(address) {
  let open = false;
  const waiting = /** @type {(() => void)[]} */ ([]);
  let unread = 0;
  const asked = get(address, (response) => {
    open = true;
    response.setEncoding('utf8').on('data', (/** @type {string} */ text) => {
      for (const _ of text.matchAll(/^data:/gm)) {
        const next = waiting.shift();
        if (next === undefined) unread += 1;
        else next();
      }
    });
  });
  asked.on('error', () => undefined);
  return {
    isOpen: () => open,
    next: () =>
      new Promise((/** @type {(value?: undefined) => void} */ resolve) => {
        if (unread === 0) return void waiting.push(() => resolve());
        unread -= 1;
        resolve();
      }),
    close: () => void asked.destroy(),
  };
}
