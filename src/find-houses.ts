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
  const names = wanted.length > 0 ? wanted.map((name) => asPath(content, name)) : await allIn(content);
  if (names === undefined) {
    return { houses: [], diagnostics: [noFolder(content)] };
  }
  const diagnostics: Diagnostic[] = [];
  if (names.length === 0)
    diagnostics.push({
      code: 'intake.empty',
      severity: 'error',
      file: shownPath(content),
      message: `there is no house in ${shownPath(content)}`,
      hints: [`type  sillplate new ${path.posix.join(shownPath(content), 'my-house')}  to begin one`],
    });
  const houses = names.flatMap((folder): HouseFolder[] => {
    const shown = shownPath(folder);
    const name = path.basename(path.resolve(folder));
    if (FOLDER_NAME.test(name)) return [{ folder, shown }];
    diagnostics.push({
      code: 'facts.id',
      severity: 'error',
      file: shown,
      message: `the folder name “${name}” can’t be used in file names and links`,
      hints: [
        `rename it with small letters, digits and hyphens, for example  ${
          name
            .normalize('NFKD')
            .toLowerCase()
            .replace(/[^a-z0-9]+/g, '-')
            .replace(/^-+|-+$/g, '') || 'my-house'
        }`,
      ],
    });
    return [];
  });
  return { houses, diagnostics };
}

/** What a name becomes as a folder: "Quarry Road" is quarry-road. */
export function folderNameFrom(name: string): string {
  const slug = name
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '');
  return slug === '' ? 'my-house' : slug;
}

/** A bare name is a house of the content folder; anything with a slash is a path. */
function asPath(content: string, name: string): string {
  return name.includes('/') || name.includes(path.sep) || name === '.' ? name : path.join(content, name);
}

async function allIn(content: string): Promise<string[] | undefined> {
  try {
    const entries = await readdir(content, { withFileTypes: true });
    const folders = [];
    for (const entry of entries) {
      if (entry.name.startsWith('.')) continue;
      const folder = path.join(content, entry.name);
      if ((await stat(folder)).isDirectory()) folders.push(folder);
    }
    return folders.sort();
  } catch {
    return undefined;
  }
}

const noFolder = (content: string): Diagnostic => ({
  code: 'intake.no-folder',
  severity: 'error',
  file: shownPath(content),
  message: `there is no folder ${shownPath(content)} to find houses in`,
  hints: [
    'name another with  --content DIR',
    `or type  sillplate new ${path.posix.join(shownPath(content), 'my-house')}  to begin a house`,
  ],
});

export const shownPath = (file: string): string => file.split(path.sep).join('/').replace(/\/+$/, '') || '.';
