/** `sillplate new`: begins a house folder that checks clean. */
import { mkdir, readdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { createInterface } from 'node:readline/promises';
import { fileURLToPath } from 'node:url';
import { diskTrouble } from './archive/replace-folder.js';
import type { Diagnostic } from './diagnostics/diagnostic.js';
import { printReport } from './diagnostics/report.js';
import { readDate } from './facts/date.js';
import { FOLDER_NAME, folderNameFrom, shownPath } from './find-houses.js';
import { type FirstAnswers, firstHouse } from './first-house.js';
import type { Terminal } from './terminal.js';

const EXAMPLES: FirstAnswers = {
  name: 'My house',
  city: 'Fallow Mills',
  state: 'OH',
  built: 'not known',
  bought: undefined,
};

export async function newCommand(folder: string, yes: boolean, terminal: Terminal): Promise<number> {
  const shown = shownPath(folder);
  const name = path.basename(path.resolve(folder));
  const trouble =
    (FOLDER_NAME.test(name) ? undefined : badName(name, shown)) ?? (await notEmpty(folder, shown));
  if (trouble !== undefined) return refuse(trouble, terminal);
  const answers = yes ? { ...EXAMPLES, name: titleOf(name) } : await ask(titleOf(name), terminal);
  const schema = path
    .relative(path.resolve(folder), fileURLToPath(new URL('../dist/house.schema.json', import.meta.url)))
    .split(path.sep)
    .join('/');
  try {
    for (const inner of ['photos', 'documents']) await mkdir(path.join(folder, inner), { recursive: true });
    await writeFile(path.join(folder, 'house.yaml'), firstHouse(answers, schema), { flag: 'wx' });
  } catch (thrown) {
    return refuse(diskTrouble(thrown, shown), terminal);
  }
  terminal.out(
    `${shown}/house.yaml is written.\n\nNext:\n  open it in an editor, and change what is there\n  sillplate check ${shown}\n  sillplate build ${shown}\n`,
  );
  return 0;
}

function refuse(diagnostic: Diagnostic, terminal: Terminal): number {
  terminal.out(
    printReport([{ diagnostic, place: undefined, near: false, also: [] }], 'text', terminal.colour),
  );
  return 1;
}

const badName = (name: string, shown: string): Diagnostic => ({
  code: 'facts.id',
  severity: 'error',
  file: shown,
  message: `the folder name “${name}” can’t be used in file names and links`,
  hints: [
    `use small letters, digits and hyphens:  sillplate new ${path.posix.join(path.posix.dirname(shown), folderNameFrom(name))}`,
  ],
});

async function notEmpty(folder: string, shown: string): Promise<Diagnostic | undefined> {
  try {
    const entries = await readdir(folder);
    if (entries.length === 0) return undefined;
  } catch (thrown) {
    if ((thrown as NodeJS.ErrnoException).code === 'ENOENT') return undefined;
  }
  return {
    code: 'archive.disk',
    severity: 'error',
    file: shown,
    message: `${shown} is there already, and nothing in it is written over`,
    hints: [`choose another name, or look at what it holds:  sillplate check ${shown}`],
  };
}

const titleOf = (name: string): string =>
  name
    .split('-')
    .map((word) => word.charAt(0).toUpperCase() + word.slice(1))
    .join(' ');

async function ask(name: string, terminal: Terminal): Promise<FirstAnswers> {
  const lines = createInterface({ input: process.stdin, output: process.stdout });
  const answers = { ...EXAMPLES, name };
  try {
    terminal.out('Five questions; Enter takes what stands in brackets. Everything can be changed later.\n');
    const question = async (
      words: string,
      usual: string,
      ok: (answer: string) => string | undefined,
    ): Promise<string> => {
      for (;;) {
        const typed = (await lines.question(`${words} [${usual}]: `)).trim();
        const answer = typed === '' ? usual : typed;
        const problem = ok(answer);
        if (problem === undefined) return answer;
        terminal.out(`  ${problem}\n`);
      }
    };
    const date = (answer: string): string | undefined => {
      if (answer === 'not known') return undefined;
      const read = readDate(answer);
      return read.ok ? undefined : `${read.problem}: ${read.hint}, or: not known`;
    };
    answers.name = await question('What do you call the house', name, () => undefined);
    answers.city = await question('Town', EXAMPLES.city, () => undefined);
    answers.state = await question('State', EXAMPLES.state, (answer) =>
      /^[A-Z]{2}$/.test(answer) ? undefined : 'Two capital letters, for example OH',
    );
    answers.built = await question('Year built', 'not known', date);
    const bought = await question('Day you bought it', 'not known', date);
    answers.bought = bought === 'not known' ? undefined : bought;
    return answers;
  } finally {
    lines.close();
  }
}
