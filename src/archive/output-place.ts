/** Whether a folder may be replaced: it must hold nothing but what this program made, and no house may lie in it. */
import { readdir } from 'node:fs/promises';
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import { isInside } from './is-inside.js';

/**
 * `target` is what would be replaced, `source` the folder that is read, `own` the names that the program puts
 * into the target. Undefined: it may be replaced.
 */
export async function placeTrouble(
  target: string,
  source: string,
  own: readonly string[],
  shown: string,
): Promise<Diagnostic | undefined> {
  const trouble = (message: string, hint: string): Diagnostic => ({
    code: 'archive.place',
    severity: 'error',
    file: shown,
    message,
    hints: [hint],
  });
  if ((await isInside(target, source)) || (await isInside(source, target))) {
    return trouble(
      `the packets would be written to ${shown}, over the house folder itself`,
      'choose a folder that holds no house:  --out out',
    );
  }
  const foreign = (await readdir(target).catch((): string[] => [])).filter(
    (entry) => !own.includes(entry) && entry !== '.DS_Store',
  );
  if (foreign.length === 0) return undefined;
  const named = foreign.slice(0, 3).join(', ');
  return trouble(
    `${shown} holds what this program did not make (${named}${foreign.length > 3 ? ', …' : ''}), and a build replaces the folder`,
    'move that away, or choose another folder:  --out my-packets',
  );
}
