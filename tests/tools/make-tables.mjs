/**
 * Lays the program's tables down as JSON: the same contents, already checked, which a start reads in no time. The lexicon
 * of listing text is laid down cut and sorted. What ships are these; the YAML stays with the source.
 */
import { mkdirSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { isDeepStrictEqual } from 'node:util';

/**
 * @param {string} dist the compiled program, with the YAML in `tally/tables`
 */
export async function makeTables(dist) {
  const folder = path.join(dist, 'tally/tables');
  const load = (/** @type {string} */ file) => import(pathToFileURL(path.join(dist, file)).href);
  const names = readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.yaml'))
    .map((file) => file.slice(0, -'.yaml'.length).split(path.sep).join('/'));
  await readAll(load, names);
  const { tablesRead } = await load('tally/read-table.js');
  const { packLexicon } = await load('tally/remarks/words/pack-lexicon.js');
  const read = tablesRead();
  const unread = names.filter((name) => !read.has(name));
  if (unread.length > 0)
    throw new Error(`no code read the tables ${unread.join(', ')}: name their readers here`);
  for (const [name, value] of [...read, ['remarks-lexicon', packLexicon()]]) {
    const text = JSON.stringify(value);
    if (!isDeepStrictEqual(JSON.parse(text), value)) throw new Error(`${name} does not come back from JSON`);
    const file = path.join(folder, 'made', `${name}.json`);
    mkdirSync(path.dirname(file), { recursive: true });
    writeFileSync(file, text);
  }
  for (const name of names) rmSync(path.join(folder, `${name}.yaml`));
}

/**
 * Every table by the code that knows its shape.
 *
 * @param {(file: string) => Promise<any>} load
 * @param {readonly string[]} names
 */
async function readAll(load, names) {
  const read = async (/** @type {string} */ file, /** @type {string[]} */ ...readers) => {
    const module = await load(file);
    for (const reader of readers) module[reader]();
  };
  const { federalDuties, stateDuties } = await load('tally/tables/duties.js');
  federalDuties();
  for (const name of names)
    if (name.startsWith('duties/us-')) stateDuties(name.slice('duties/us-'.length).toUpperCase());
  await read('tally/published-lives.js', 'componentNames');
  await read('tally/tables/advertising.js', 'advertisingTable');
  await read('tally/tables/basis.js', 'basisRules');
  await read('tally/tables/habitable.js', 'habitableRules');
  await read('tally/tables/lead-asbestos.js', 'leadAsbestosRules');
  await read('tally/tables/mileage.js', 'mileageRules');
  await read('tally/tables/payees.js', 'payeeRules');
  await read('tally/tables/quantities.js', 'tradeQuantities');
  await read('tally/tables/questions.js', 'askedQuestions');
  await read('tally/tables/remarks.js', 'remarkThings', 'remarkClasses', 'remarkWords');
  await read('tally/tables/reso.js', 'resoTable');
  await read('tally/tables/retention.js', 'retentionRules');
  await read('tally/tables/safety.js', 'safetyRules');
  await read('tally/tables/search-words.js', 'searchWords');
  await read('tally/tables/updates.js', 'updateWords');
}
