/** `sillplate new`: begins a house folder that checks clean. */
import { existsSync } from 'node:fs';
import path from 'node:path';
import { createInterface } from 'node:readline/promises';
import { fileURLToPath } from 'node:url';
import { beginFolder, mayBeginIn } from './archive/begin-folder.js';
import type { Diagnostic } from './diagnostics/diagnostic.js';
import { NOWHERE } from './diagnostics/place.js';
import { locate, printReport } from './diagnostics/report.js';
import { readDate } from './facts/date.js';
import { FOLDER_NAME, folderNameFrom, shownPath, typedHouse } from './find-houses.js';
import { type FirstAnswers, firstHouse } from './first-house.js';
import { type Reasons, refusalTrouble } from './refusal-trouble.js';
import type { Terminal } from './terminal.js';

const EXAMPLES: FirstAnswers = {
  name: 'My house',
  city: 'Your Town',
  state: 'OH',
  built: 'not known',
  bought: undefined,
};

export async function newCommand(folder: string, yes: boolean, terminal: Terminal): Promise<number> {
  if (folder.trim() === '') return refuse(NO_NAME, terminal);
  const shown = shownPath(folder);
  const name = path.basename(path.resolve(folder));
  if (!FOLDER_NAME.test(name)) return refuse(badName(name, shown), terminal);
  const trouble = await notEmpty(folder, shown);
  if (trouble !== undefined) return refuse(trouble.diagnostic, terminal, trouble.status);
  const answers = yes ? { ...EXAMPLES, name: titleOf(name) } : await ask(titleOf(name), terminal);
  if (answers === undefined) return refuse(noAnswers(shown), terminal);
  const schema = path
    .relative(path.resolve(folder), fileURLToPath(new URL('../dist/house.schema.json', import.meta.url)))
    .split(path.sep)
    .join('/');
  try {
    if (!(await beginFolder(folder, firstHouse(answers, schema)))) return refuse(isThere(shown), terminal);
  } catch (thrown) {
    return refuse(newTrouble(thrown, shown), terminal, 1);
  }
  const house = typedHouse(shown);
  terminal.out(
    `${shown}/house.yaml is written.\n\nNext:\n  open it in an editor, and change what is there\n  sillplate check ${house}\n  sillplate build ${house}\n`,
  );
  return 0;
}

/** Left out: what was typed can't be followed, so the status is that of a command line. */
function refuse(diagnostic: Diagnostic, terminal: Terminal, status = 2): number {
  terminal.error(printReport(locate([diagnostic], NOWHERE), 'text', terminal.colour));
  return status;
}

const noAnswers = (shown: string): Diagnostic => ({
  code: 'cli.usage',
  severity: 'error',
  message: 'the questions were not answered to the end, so nothing is written',
  hints: [`to be asked nothing, type  sillplate new ${shown} --yes`],
});

const NO_NAME: Diagnostic = {
  code: 'cli.usage',
  severity: 'error',
  message: 'the folder to make has no name',
  hints: ['type one, for example  sillplate new content/my-house'],
};

const badName = (name: string, shown: string): Diagnostic => ({
  code: 'facts.id',
  severity: 'error',
  file: shown,
  message: `the folder name “${name}” can’t be used in file names and links`,
  hints: [
    `use small letters, digits and hyphens:  sillplate new ${path.posix.join(path.posix.dirname(shown), folderNameFrom(name))}`,
  ],
});

async function notEmpty(
  folder: string,
  shown: string,
): Promise<{ readonly diagnostic: Diagnostic; readonly status: number } | undefined> {
  try {
    if (await mayBeginIn(folder)) return undefined;
  } catch (thrown) {
    // A file in the way of the folder itself is something that is there; one above it is another matter.
    const { code } = thrown as NodeJS.ErrnoException;
    if (code !== 'ENOTDIR' || !existsSync(folder))
      return { diagnostic: newTrouble(thrown, shown), status: 1 };
  }
  return { diagnostic: isThere(shown), status: 2 };
}

const isThere = (shown: string): Diagnostic => ({
  code: 'archive.disk',
  severity: 'error',
  file: shown,
  message: `${shown} is there already, and nothing in it is written over`,
  hints: [`choose another name, or look at what it holds:  sillplate check ${typedHouse(shown)}`],
});

const ELSEWHERE = 'check who may write there, or begin the house in another folder';

const REASONS: Reasons = {
  ENOSPC: ['the disk is full', 'free some space, and type the same command again'],
  EDQUOT: ['your share of the disk is full', 'free some space, and type the same command again'],
  EACCES: ['you may not write there', ELSEWHERE],
  EPERM: ['you may not write there', ELSEWHERE],
  EROFS: ['that disk can only be read', 'begin the house on a disk that can be written to'],
  ENOTDIR: ['a file stands where a folder is needed', 'move the file away, or choose another folder'],
  EEXIST: ['a file stands where a folder is needed', 'move the file away, or choose another folder'],
};

/** Anything that is not a refusal of the system is thrown on. */
const newTrouble = (thrown: unknown, shown: string): Diagnostic =>
  refusalTrouble(
    thrown,
    shown,
    REASONS,
    (what) => `${shown} could not be begun: ${what}. Nothing was written`,
  );

const titleOf = (name: string): string =>
  name
    .split('-')
    .map((word) => word.charAt(0).toUpperCase() + word.slice(1))
    .join(' ');

type Check = (answer: string) => string | undefined;

/** Undefined if the input ends before the last answer. */
async function ask(name: string, terminal: Terminal): Promise<FirstAnswers | undefined> {
  const lines = createInterface({ input: process.stdin, output: process.stdout });
  // One stream of lines: answers that arrive together must not be lost between two questions.
  const typed = lines[Symbol.asyncIterator]();
  const question = async (words: string, usual: string, check: Check = () => undefined) => {
    for (;;) {
      lines.setPrompt(usual === '' ? `${words}: ` : `${words} [${usual}]: `);
      lines.prompt();
      const next = await typed.next();
      if (next.done === true) return undefined;
      const answer = next.value.trim() || usual;
      const problem = answer === '' ? 'An answer is needed here' : check(answer);
      if (problem === undefined) return answer;
      terminal.out(`  ${problem}\n`);
    }
  };
  try {
    terminal.out('Five questions; Enter takes what stands in brackets. Everything can be changed later.\n');
    const house = await question('What do you call the house', name);
    const city = house && (await question('Town', ''));
    const state = city && (await question('State, as two letters', '', twoLetters));
    const built = state && (await question('Year built', 'not known', dateOrNotKnown));
    const bought = built && (await question('Day you bought it', 'not known', dateOrNotKnown));
    if (!house || !city || !state || !built || !bought) return undefined;
    return {
      name: house,
      city,
      state: state.toUpperCase(),
      built,
      bought: bought === 'not known' ? undefined : bought,
    };
  } finally {
    lines.close();
  }
}

const twoLetters: Check = (answer) =>
  /^[A-Za-z]{2}$/.test(answer) ? undefined : 'Two letters, for example OH';

const dateOrNotKnown: Check = (answer) => {
  if (answer === 'not known') return undefined;
  const read = readDate(answer);
  return read.ok ? undefined : `${read.problem}: ${read.hint}, or: not known`;
};
