/** Which mutants run: all of them, or one in so many, for a quick look. The rest of a sampled report says so. */

// The process that runs the tests is started by Stryker; it hears this way alone.
const NAME = 'MUTANTS_ONE_IN';

/** @param {string} oneIn */
export function setSample(oneIn) {
  if (!/^[1-9]\d*$/.test(oneIn)) throw new Error(`--one-in ${oneIn}: a whole number is needed`);
  process.env[NAME] = oneIn;
}

/** @param {string} id of a mutant */
export const isInSample = (id) => Number(id) % Number(process.env[NAME] ?? 1) === 0;
