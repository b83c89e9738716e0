/** How long something takes where other programs are busy too: the shortest of several tries counts, since any one may be held up. */

/** Milliseconds of the clock. Ends with the first try that takes less than `enough`. */
export const leastMs = (work: () => unknown, enough: number, tries = 6): Promise<number> =>
  least(work, enough, tries, () => performance.now());

/** Milliseconds of the processor, for tests with a process of their own: those of other threads in it would be counted too. */
export const leastThoughtMs = (work: () => unknown, enough: number, tries = 6): Promise<number> =>
  least(work, enough, tries, () => {
    const { user, system } = process.cpuUsage();
    return (user + system) / 1000;
  });

async function least(work: () => unknown, enough: number, tries: number, now: () => number): Promise<number> {
  let shortest = Number.POSITIVE_INFINITY;
  for (let n = 0; n < tries && shortest >= enough; n++) {
    const start = now();
    await work();
    shortest = Math.min(shortest, now() - start);
  }
  return shortest;
}
