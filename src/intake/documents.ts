import path from 'node:path';
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import type { House } from '../facts/house.js';
import { safePath } from './safe-path.js';

/** Every document that names a file has it, inside `documents/`. */
export async function checkDocuments(folder: string, house: House): Promise<Diagnostic[]> {
  const found = await Promise.all(
    house.documents.map(async (document, index): Promise<Diagnostic[]> => {
      if (document.file === undefined) return [];
      const safe = await safePath(path.join(folder, 'documents'), document.file);
      return safe.ok
        ? []
        : [absentFile(['documents', index, 'file'], `documents/${document.file}`, safe.why)];
    }),
  );
  return found.flat();
}

/** One wording for every file that is named and not there. */
export function absentFile(
  factPath: readonly (string | number)[],
  name: string,
  why: 'outside' | 'absent' | 'no-file',
): Diagnostic {
  const folder = name.split('/')[0] ?? '';
  if (why === 'outside') {
    return {
      code: 'intake.outside',
      severity: 'error',
      path: factPath,
      message: `“${name}” leads out of the house folder`,
      hints: [`put the file itself into ${folder}/ and write only its name`],
    };
  }
  return {
    code: 'intake.no-file',
    severity: 'error',
    path: factPath,
    message: why === 'absent' ? `there is no file ${name} in the house folder` : `${name} is no plain file`,
    hints: [`put it into ${folder}/, or check the spelling (capital and small letters count)`],
  };
}
