import type { Progress } from '../../src/terminal.js';

/** A progress line that nobody watches. */
export const quietProgress = (): Progress => ({
  step: () => undefined,
  photo: () => undefined,
  stop: () => undefined,
});
