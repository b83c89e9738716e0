/** Timings of repeated work: on the clock, and in processor time, which a busy machine disturbs less. */
import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { cpus, loadavg } from 'node:os';

/**
 * Median, least and most of several runs.
 * @typedef {{ readonly median: number, readonly least: number, readonly most: number, readonly runs: number }} Spread
 */

/**
 * Milliseconds on the clock and in processor time, the latter undefined where it can't be read.
 * @typedef {{ readonly clock: Spread, readonly cpu: Spread | undefined }} Timing
 */

/**
 * @param {readonly number[]} values at least one
 * @returns {Spread}
 */
export function spread(values) {
  const sorted = [...values].sort((a, b) => a - b);
  const at = (/** @type {number} */ index) => sorted[index] ?? Number.NaN;
  const middle = (sorted.length - 1) / 2;
  return {
    median: (at(Math.floor(middle)) + at(Math.ceil(middle))) / 2,
    least: at(0),
    most: at(sorted.length - 1),
    runs: sorted.length,
  };
}

/**
 * Runs a task several times within this process.
 * @param {number} runs
 * @param {() => Promise<unknown>} task what is timed
 * @param {() => Promise<unknown>} [before] done ahead of every run, not timed
 * @returns {Promise<Timing>}
 */
export function timeInside(runs, task, before) {
  return repeat(runs, task, before, () => {
    const { user, system } = process.cpuUsage();
    return (user + system) / 1000;
  });
}

/**
 * The same for a task that starts other processes and waits for them.
 * @param {number} runs
 * @param {() => Promise<unknown>} task
 * @param {() => Promise<unknown>} [before]
 * @returns {Promise<Timing>}
 */
export function timeChildren(runs, task, before) {
  return repeat(runs, task, before, childrenCpuMs);
}

/**
 * @param {number} runs
 * @param {() => Promise<unknown>} task
 * @param {(() => Promise<unknown>) | undefined} before
 * @param {() => number | undefined} cpuMs
 * @returns {Promise<Timing>}
 */
async function repeat(runs, task, before, cpuMs) {
  const clock = [];
  const cpu = [];
  for (let run = 0; run < runs; run += 1) {
    await before?.();
    const cpuBefore = cpuMs();
    const started = performance.now();
    await task();
    clock.push(performance.now() - started);
    const cpuAfter = cpuMs();
    if (cpuBefore !== undefined && cpuAfter !== undefined) cpu.push(cpuAfter - cpuBefore);
  }
  return { clock: spread(clock), cpu: cpu.length === 0 ? undefined : spread(cpu) };
}

/**
 * Processor time of all processes waited for so far, from Linux's own count (man 5 proc, cutime and cstime,
 * in ticks of 10 ms); undefined elsewhere.
 */
function childrenCpuMs() {
  try {
    const fields = readFileSync('/proc/self/stat', 'utf8').split(') ')[1]?.split(' ') ?? [];
    // Fields 16 and 17; the name in brackets is field 2, so field 3 is the first here.
    return (Number(fields[13]) + Number(fields[14])) * 10;
  } catch {
    return undefined;
  }
}

/**
 * Divides every figure, for times a page or a photo.
 * @param {Timing} timing
 * @param {number} parts
 * @returns {Timing}
 */
export function perPart({ clock, cpu }, parts) {
  const divide = (/** @type {Spread} */ { median, least, most, runs }) => ({
    median: median / parts,
    least: least / parts,
    most: most / parts,
    runs,
  });
  return { clock: divide(clock), cpu: cpu === undefined ? undefined : divide(cpu) };
}

/**
 * Starts a program and waits for its end. Rejects with what it said if it fails.
 * @param {string} program
 * @param {readonly string[]} words
 * @param {number} [limitMs]
 * @returns {Promise<void>}
 */
export function runProgram(program, words, limitMs = 300_000) {
  return new Promise((resolve, reject) => {
    const child = spawn(program, words, { stdio: ['ignore', 'pipe', 'pipe'], timeout: limitMs });
    let said = '';
    for (const stream of [child.stdout, child.stderr])
      stream.on('data', (chunk) => {
        said = (said + chunk).slice(-2000);
      });
    child.on('error', reject);
    child.on('close', (status) => {
      if (status === 0) resolve();
      else reject(new Error(`${program} ended with ${status ?? 'a signal'}: ${said.trim()}`));
    });
  });
}

/** What the figures were taken on, for the head of the table. */
export function machine() {
  const all = cpus();
  const load = loadavg()
    .map((one) => one.toFixed(1))
    .join(', ');
  return `${all[0]?.model.trim() ?? 'processor not known'}, ${all.length} cores, Node ${process.version}, load ${load}`;
}

/**
 * `120 ms (110–140)`, with as many digits as the figure bears.
 * @param {Spread} spread in milliseconds
 */
export function inMs({ median, least, most }) {
  return `${digits(median)} ms (${digits(least)}–${digits(most)})`;
}

/** @param {number} value */
function digits(value) {
  if (value < 9.95) return value.toFixed(1);
  return String(Math.round(value));
}
