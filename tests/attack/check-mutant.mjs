/** One changed house folder, read and worked out as the program does it, and what of the answer must not be. */
import { checkHouseFolder } from '../../dist/build.js';
import { CODES } from '../../dist/diagnostics/codes.js';
import { locate, printReport } from '../../dist/diagnostics/report.js';
import { readHouse } from '../../dist/intake/read-house.js';
import { deriveTally } from '../../dist/tally/tally.js';
import { HOLE, OBEYED } from './holes.mjs';

const AS_OF = '2026-11-20';

/**
 * @param {string} folder
 * @param {string} name
 * @param {{ readonly whole: boolean, readonly out: string }} how whole: as `check` does it, with every photo, all packets
 * and the listing text; otherwise up to what is worked out
 * @returns {Promise<{ readonly wrong?: string, readonly hasErrors: boolean }>}
 */
export async function checkMutant(folder, name, { whole, out }) {
  try {
    const located = whole ? await checked(folder, name, out) : await readAndDerive(folder, name);
    const wrong = wrongWith(located);
    return {
      hasErrors: located.some(({ diagnostic }) => diagnostic.severity === 'error'),
      ...(wrong === undefined ? {} : { wrong }),
    };
  } catch (thrown) {
    return {
      hasErrors: true,
      wrong: `an exception: ${/** @type {Error} */ (thrown).stack ?? thrown}`,
    };
  }
}

/** @param {string} folder @param {string} name @param {string} out */
async function checked(folder, name, out) {
  const { located } = await checkHouseFolder({
    folder,
    shown: `content/${name}`,
    asOf: AS_OF,
    editions: ['buyer'],
    out,
    outShown: 'out',
    paper: 'letter',
  });
  return located;
}

/** @param {string} folder @param {string} name */
async function readAndDerive(folder, name) {
  const read = await readHouse(folder, `content/${name}`, { ledger: true });
  const derived =
    read.found === undefined
      ? []
      : deriveTally(read.found.house, AS_OF, new Map(), read.found.ledger).diagnostics;
  return locate([...read.diagnostics, ...derived], read.places);
}

/** @param {readonly import('../../dist/diagnostics/report.js').Located[]} located */
function wrongWith(located) {
  if (located.some(({ diagnostic }) => !(diagnostic.code in CODES))) return 'a code that no table has';
  if (located.some(({ diagnostic, place }) => place === undefined && diagnostic.file === undefined))
    return 'a message without a place';
  const text = printReport(located, 'text', false);
  if (HOLE.test(text)) return `a stack trace or a hole in a message: ${text}`;
  if (OBEYED.test(text)) return 'a control character on the terminal';
  return undefined;
}
