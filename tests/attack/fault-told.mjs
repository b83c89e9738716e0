/** What the program says when a fault stops it: plain words, a file, what to do, and status 1. */
import { HOLE } from './holes.mjs';

/**
 * What is wrong with how it ended, in words; undefined if it is as it should be.
 *
 * @param {{ status: number | null, out: string, error: string }} ended
 * @param {RegExp} words that must be among what it says
 */
export function refused({ status, out, error }, words) {
  const said = `${out}${error}`;
  if (status !== 1) return `status ${status}: ${said}`;
  if (HOLE.test(said) || said.includes('bug.internal')) return `a stack trace or a hole: ${said}`;
  // `photos` leaves mistakes of the facts to another command.
  if (/to see (it|them): {2}sillplate check/.test(said)) return undefined;
  if (!/^error [a-z]+\.[a-z-]+ {2}\S/m.test(said)) return `no error that names a place: ${said}`;
  if (!/^ {2}do: /m.test(said)) return `it does not say what to do: ${said}`;
  return words.test(said) ? undefined : `it does not say why: ${said}`;
}
