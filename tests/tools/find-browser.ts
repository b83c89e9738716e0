/** Finds a Chromium for the checks that need a real one; the program itself needs none. */
import { existsSync, readFileSync } from 'node:fs';

/** In a file of its own, since scripts that Node runs as they are read it, too. */
const usual = JSON.parse(readFileSync(new URL('browser.json', import.meta.url), 'utf8')) as {
  readonly places: readonly string[];
  readonly args: readonly string[];
};

/** Path of a Chromium, that of `CHROMIUM_PATH` first, or undefined where there is none. */
export function findBrowser(): string | undefined {
  const wished = process.env.CHROMIUM_PATH;
  return [...(wished ? [wished] : []), ...usual.places].find((path) => existsSync(path));
}

/** Why a check was left out, for the name of the skipped test. */
export const NO_BROWSER = 'no Chromium found: set CHROMIUM_PATH';

/** No sandbox (checks run as root in containers), and nothing that talks to the outside. */
export const BROWSER_ARGS = [...usual.args];
