import { readdir } from 'node:fs/promises';
import path from 'node:path';
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import type { FactPath } from '../diagnostics/fact-path.js';
import type { House } from '../facts/house.js';
import { nearestWord } from '../facts/nearest-word.js';
import { safePath } from './safe-path.js';

/** Every document that names a file has it, inside `documents/`. */
export async function checkDocuments(folder: string, house: House): Promise<Diagnostic[]> {
  const lying = await listing(path.join(folder, 'documents'));
  const found = await Promise.all(
    house.documents.map(async ({ file }, index): Promise<Diagnostic[]> => {
      if (file === undefined) return [];
      const safe = await safePath(path.join(folder, 'documents'), file);
      return safe.ok ? [] : [absentFile(['documents', index, 'file'], 'documents', file, safe.why, lying)];
    }),
  );
  return found.flat();
}

/** File names of a folder, sorted; none if it is not there. */
export async function listing(folder: string): Promise<string[]> {
  try {
    return (await readdir(folder)).filter((name) => !name.startsWith('.')).sort();
  } catch {
    // No such folder yet: whatever the facts name is reported one by one.
    return [];
  }
}

/** One wording for every file that is named and not there. `lying` is what its folder does hold. */
export function absentFile(
  factPath: FactPath,
  folder: 'documents' | 'photos',
  name: string,
  why: 'outside' | 'absent' | 'no-file' | 'closed',
  lying: readonly string[],
): Diagnostic {
  if (why === 'outside') {
    const last = name.split(/[\\/]/u).at(-1) ?? name;
    return {
      code: 'intake.outside',
      severity: 'error',
      path: factPath,
      message: /^(?:[\\/]|[A-Za-z]:)/u.test(name)
        ? `“${name}” is a whole path, and here stands only the name of a file in ${folder}/`
        : `“${name}” leads out of the house folder`,
      hints: [
        last !== name && lying.includes(last)
          ? `write only  ${last}`
          : `put the file itself into ${folder}/ and write only its name`,
      ],
    };
  }
  if (why === 'closed')
    return {
      code: 'intake.no-file',
      severity: 'error',
      path: factPath,
      message: `${folder}/${name} can’t be read: you may not`,
      hints: [`check who may read  ${folder}/  and what lies in it`],
    };
  // A link that leads nowhere lies there, and is no file all the same.
  const isDeadLink = why === 'absent' && lying.includes(name);
  const inside = name.startsWith(`${folder}/`) ? name.slice(folder.length + 1) : undefined;
  if (inside !== undefined && lying.includes(inside))
    return {
      code: 'intake.no-file',
      severity: 'error',
      path: factPath,
      message: `“${name}” is looked for in ${folder}/, where no folder of that name lies`,
      hints: [`write only  ${inside}`],
    };
  const near = why === 'absent' && !isDeadLink ? nearestWord(name, lying) : undefined;
  return {
    code: 'intake.no-file',
    severity: 'error',
    path: factPath,
    message: isDeadLink
      ? `${folder}/${name} is a link that leads nowhere`
      : why === 'absent'
        ? `there is no file “${name}” in ${folder}/`
        : `${folder}/${name} is no plain file`,
    hints: [
      ...(near === undefined ? [] : [`perhaps  ${near}`]),
      why === 'absent' && !isDeadLink
        ? `put it into ${folder}/, or check the spelling (capital and small letters count)`
        : isDeadLink
          ? 'put the file itself there'
          : 'name one file, not a folder',
    ],
  };
}
