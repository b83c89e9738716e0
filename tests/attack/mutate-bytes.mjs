import { PIECES } from './hostile-pieces.mjs';

/**
 * One to five places of a file with bytes taken out, put in, or copied there from elsewhere in it.
 *
 * @param {Buffer} bytes
 * @param {() => number} random
 */
export function mutateBytes(bytes, random) {
  let now = bytes;
  for (let times = 1 + Math.floor(random() * 5); times > 0; times--) {
    const from = Math.floor(random() * (now.length + 1));
    const take = random() < 0.5 ? 0 : Math.floor(random() * 60);
    now = Buffer.concat([
      now.subarray(0, from),
      putIn(now, random()).subarray(0, 4000),
      now.subarray(from + take),
    ]);
  }
  return now;

  /** @param {Buffer} all @param {number} kind */
  function putIn(all, kind) {
    if (kind < 0.6) return Buffer.from(PIECES[Math.floor(random() * PIECES.length)] ?? '');
    if (kind < 0.8)
      return Buffer.from(Array.from({ length: Math.floor(random() * 5) }, () => Math.floor(random() * 256)));
    if (kind < 0.9) {
      const start = Math.floor(random() * all.length);
      return all.subarray(start, start + Math.floor(random() * 4000));
    }
    return Buffer.alloc(0);
  }
}
