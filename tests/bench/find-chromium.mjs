/** Where Chromium is, and how it is started; the same as for the tests. */
import { existsSync, readFileSync } from 'node:fs';

const usual = JSON.parse(readFileSync(new URL('../tools/browser.json', import.meta.url), 'utf8'));

/** @type {string | undefined} */
export const BROWSER = [process.env.CHROMIUM_PATH ?? '', ...usual.places].find((file) => existsSync(file));

/** @type {readonly string[]} */
export const BROWSER_FLAGS = usual.args;
