/** Finds a Chromium for the checks that need a real one; the program itself needs none. */
import { existsSync } from 'node:fs';

const USUAL_PLACES = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/usr/bin/google-chrome-stable',
  '/snap/bin/chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
];

/** Path of a Chromium, that of `CHROMIUM_PATH` first, or undefined where there is none. */
export function findBrowser(): string | undefined {
  const wished = process.env.CHROMIUM_PATH;
  return [...(wished ? [wished] : []), ...USUAL_PLACES].find((path) => existsSync(path));
}

/** Why a check was left out, for the name of the skipped test. */
export const NO_BROWSER = 'no Chromium found: set CHROMIUM_PATH';

/** No sandbox (checks run as root in containers), and nothing that talks to the outside. */
export const BROWSER_ARGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];
