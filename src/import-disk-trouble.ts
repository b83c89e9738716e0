/** What a disk refuses an import, with what to do about it: an import writes into the house folder and nowhere else. */
import type { Diagnostic } from './diagnostics/diagnostic.js';
import { type Reasons, refusalTrouble } from './refusal-trouble.js';

const RIGHTS =
  'check who may write there, or copy the house folder to a place of your own and import into that';

const REASONS: Reasons = {
  EACCES: ['you may not write there', RIGHTS],
  EPERM: ['you may not write there', RIGHTS],
  EROFS: [
    'that disk can only be read',
    'copy the house folder to a disk that can be written to, and import into that',
  ],
  ENOSPC: ['the disk is full', 'free some space, and type the same command again'],
  EDQUOT: ['your share of the disk is full', 'free some space, and type the same command again'],
  ETIMEDOUT: [
    'another import into this house is at work and does not end',
    'wait for it to end; if none runs, delete the file  imports/.sillplate-lock-import  of the house',
  ],
  ENOTDIR: ['a file stands where the folder imports is needed', 'move that file away'],
  ELOOP: [
    'the folder imports, or a file of it, is a link that leads elsewhere',
    'put the folder itself there',
  ],
  EEXIST: ['a file stands where the folder imports is needed', 'move that file away'],
};

/**
 * What a disk refused, as a diagnostic about the house folder `shown`. Anything that is not a refusal of the system is
 * thrown on.
 */
export function importDiskTrouble(thrown: unknown, shown: string): Diagnostic {
  return refusalTrouble(
    thrown,
    shown,
    REASONS,
    (what) => `the house folder ${shown} can’t be written to: ${what}. What was there before is as it was`,
  );
}
