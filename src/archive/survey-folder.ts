/**
 * What of a folder goes into a bag: every file as it lies, and what can't go in, named.
 *
 * A link to a file of the same folder becomes that file; one that leads out, or to a folder, is refused, and so
 * are pipes, sockets and devices. What no person put there as a record (`bag-left-out.ts`) is passed over.
 */
import { realpath, stat } from 'node:fs/promises';
import path from 'node:path';
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import { alikeNames } from './alike-names.js';
import { isLeftOut } from './bag-left-out.js';
import { inByteOrder, pathFault } from './bag-manifest.js';
import type { FileSeen } from './file-digest.js';
import { type Walked, walkFolder } from './walk-folder.js';

interface SurveyedFile {
  /** From the folder, with forward slashes. */
  readonly path: string;
  /** Where its bytes lie. */
  readonly file: string;
  readonly seen: FileSeen;
}

export interface Survey {
  /** In the order of their paths' bytes. */
  readonly files: readonly SurveyedFile[];
  /** Paths of files and folders that were passed over, in the same order. */
  readonly leftOut: readonly string[];
  readonly diagnostics: readonly Diagnostic[];
}

/** `shown` is the folder as the writer types it. Throws the system's error for a folder that can't be read. */
export async function surveyFolder(folder: string, shown: string): Promise<Survey> {
  const files: SurveyedFile[] = [];
  const diagnostics: Diagnostic[] = [];
  const leftOut: string[] = [];
  const home = await realpath(folder);
  const passes = (inner: string): boolean => {
    if (!isLeftOut(inner)) return true;
    leftOut.push(inner);
    return false;
  };
  for await (const one of walkFolder(home, passes)) {
    const found = await look(one, home, shown);
    if (found === undefined) continue;
    if ('code' in found) diagnostics.push(found);
    else files.push(found);
  }
  files.sort((a, b) => inByteOrder(a.path, b.path));
  for (const [one, other] of alikeNames(files.map((file) => file.path)))
    diagnostics.push({
      code: 'archive.bag',
      severity: 'warning',
      file: `${shown}/${other}`,
      message: `${other} and ${one} have one name on some systems, where only one of them could be unpacked`,
      hints: ['rename one of them, and the facts that name it'],
    });
  return { files, leftOut: leftOut.sort(inByteOrder), diagnostics };
}

async function look(
  one: Walked,
  home: string,
  shown: string,
): Promise<SurveyedFile | Diagnostic | undefined> {
  const file = `${shown}/${one.path}`;
  const refuse = (message: string, hint: string, code: Diagnostic['code'] = 'archive.bag'): Diagnostic => ({
    code,
    severity: 'error',
    file,
    message: `${file} ${message}`,
    hints: [hint],
  });
  if (one.unnamed)
    return refuse('has a name that is not UTF-8 text, which other systems can’t read', 'rename it');
  if (one.kind === 'folder')
    return one.empty
      ? {
          code: 'archive.bag',
          severity: 'note',
          file,
          message: `${file} is an empty folder, and a bag holds files only`,
          hints: ['put a file into it if it should be kept'],
        }
      : undefined;
  const wrong = pathFault(`data/${one.path}`);
  if (wrong !== undefined) return refuse(`can’t go into a bag: its path ${wrong}`, 'rename it');
  if (one.kind === 'other')
    return refuse('is a pipe, a socket or a device, not a file', 'move it out of the house folder');
  if (one.kind === 'file') return { path: one.path, file: one.file, seen: await seenOf(one.file) };
  const real = await realpath(one.file).catch(() => undefined);
  if (real === undefined)
    return refuse('is a link that leads nowhere', 'delete it, or put the file in its place');
  if (!real.startsWith(home + path.sep))
    return refuse(
      'is a link that leads out of the house folder',
      'put the file itself into the folder',
      'intake.outside',
    );
  const target = await stat(real);
  if (!target.isFile()) return refuse('is a link to a folder', 'put the files themselves into the folder');
  return { path: one.path, file: real, seen: pick(target) };
}

export const seenOf = async (file: string): Promise<FileSeen> => pick(await stat(file));

const pick = ({ size, mtimeMs, ino }: FileSeen): FileSeen => ({ size, mtimeMs, ino });
