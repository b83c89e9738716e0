import { readdir, stat } from 'node:fs/promises';
import path from 'node:path';
import type { Diagnostic } from './diagnostics/diagnostic.js';

export interface HouseFolder {
  readonly folder: string;
  /** As the writer would type it. */
  readonly shown: string;
}

/** House names become folder and file names of the output, and parts of links. */
export const FOLDER_NAME = /^[a-z0-9]+(-[a-z0-9]+)*$/;

/** The wanted houses of a content folder, or all of it. A house may also be given as a path. */
export async function findHouses(
  content: string,
  wanted: readonly string[],
): Promise<{ houses: HouseFolder[]; diagnostics: Diagnostic[] }> {
  const folders =
    wanted.length > 0
      ? await Promise.all(wanted.map((name) => houseOf(housePath(content, name))))
      : await allIn(content);
  if (folders === undefined) return { houses: [], diagnostics: [await noFolder(content)] };
  if (folders.length === 0) return { houses: [], diagnostics: [noHouse(content)] };
  const diagnostics: Diagnostic[] = [];
  const houses = new Map<string, HouseFolder>();
  for (const folder of folders) {
    const shown = shownPath(folder);
    const name = path.basename(path.resolve(folder));
    const earlier = houses.get(name);
    if (!FOLDER_NAME.test(name)) diagnostics.push(badName(name, shown, await exists(folder)));
    else if (earlier === undefined) houses.set(name, { folder, shown });
    // One house named twice is made once; two that share a name would write over each other.
    else if (path.resolve(earlier.folder) !== path.resolve(folder))
      diagnostics.push(sameName(name, shown, earlier.shown));
  }
  return { houses: [...houses.values()], diagnostics };
}

const noHouse = (content: string): Diagnostic => ({
  code: 'intake.empty',
  severity: 'error',
  file: shownPath(content),
  message: `there is no house in ${shownPath(content)}`,
  hints: [`type  sillplate new ${typedWord(path.posix.join(shownPath(content), 'my-house'))}  to begin one`],
});

function badName(name: string, shown: string, isThere: boolean): Diagnostic {
  const better = path.posix.join(path.posix.dirname(shown), folderNameFrom(name));
  if (!isThere)
    return {
      code: 'intake.no-folder',
      severity: 'error',
      file: shown,
      message: `there is no folder ${shown}`,
      hints: [`perhaps  ${better}`, 'house folders have small letters, digits and hyphens'],
    };
  return {
    code: 'facts.id',
    severity: 'error',
    file: shown,
    message: `the folder name “${name}” can’t be used in file names and links`,
    hints: [`rename it with small letters, digits and hyphens, for example  ${folderNameFrom(name)}`],
  };
}

const sameName = (name: string, shown: string, earlier: string): Diagnostic => ({
  code: 'facts.id-twice',
  severity: 'error',
  file: shown,
  message: `two houses are named ${name}, and their packets would lie in one folder; the other is ${earlier}`,
  hints: ['rename one of the two folders, or make them one after the other with different  --out'],
});

/** What a name becomes as a folder: "Quarry Road" is quarry-road. */
export function folderNameFrom(name: string): string {
  const slug = name
    .normalize('NFKD')
    .replace(/\p{M}+/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '');
  return slug === '' ? 'my-house' : slug;
}

/** A bare name is a house of the content folder; anything with a slash is a path. */
export function housePath(content: string, name: string): string {
  return name.includes('/') || name.includes(path.sep) || name === '.' ? name : path.join(content, name);
}

/** A file of the house, which a shell completes to, means the house. */
async function houseOf(named: string): Promise<string> {
  const isFile = /\.ya?ml$/i.test(named) && (await exists(named)) && !(await isFolder(named));
  return isFile ? path.dirname(named) : named;
}

async function allIn(content: string): Promise<string[] | undefined> {
  try {
    const entries = await readdir(content, { withFileTypes: true });
    const folders = [];
    for (const entry of entries) {
      const folder = path.join(content, entry.name);
      if (!entry.name.startsWith('.') && (await isFolder(folder))) folders.push(folder);
    }
    return folders.sort();
  } catch {
    return undefined;
  }
}

const exists = (file: string): Promise<boolean> =>
  stat(file).then(
    () => true,
    () => false,
  );

/** A link that leads nowhere is no folder. */
export const isFolder = (file: string): Promise<boolean> =>
  stat(file).then(
    (found) => found.isDirectory(),
    () => false,
  );

async function noFolder(content: string): Promise<Diagnostic> {
  const inAHouse = await exists('house.yaml');
  return {
    code: 'intake.no-folder',
    severity: 'error',
    file: shownPath(content),
    message: `there is no folder ${shownPath(content)} to find houses in`,
    hints: [
      ...(inAHouse
        ? ['to take the house you are in, type a dot behind the command, for example  sillplate check .']
        : []),
      'name another with  --content DIR',
      `type  sillplate new ${typedWord(path.posix.join(shownPath(content), 'my-house'))}  to begin a house`,
    ],
  };
}

/** A house as its owner types it behind a command: a name of the content folder that is looked in unasked, else a path. */
export function typedHouse(shown: string): string {
  const name = /^content\/([^/]+)$/u.exec(shown)?.[1];
  const plain = name ?? (shown.includes('/') || shown === '.' ? shown : `./${shown}`);
  return typedWord(plain.startsWith('-') ? `./${plain}` : plain);
}

/** One word as a shell takes it: in quotes where it has signs that mean something to it. */
export const typedWord = (word: string): string =>
  /^[\p{L}\p{N}_./@%+=:,-]+$/u.test(word) ? word : quoted(word);

/** As a shell takes it. */
export const quoted = (text: string): string => `"${text.replace(/["\\$`]/gu, '\\$&')}"`;

export const shownPath = (file: string): string => file.split(path.sep).join('/').replace(/\/+$/, '') || '.';
