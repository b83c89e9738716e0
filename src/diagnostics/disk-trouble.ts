/** What a disk refuses, said with what to do about it. */
import type { Diagnostic } from './diagnostic.js';

const REASONS: Record<string, readonly [string, string]> = {
  ENOSPC: ['the disk is full', 'free some space, then build again'],
  EDQUOT: ['your share of the disk is full', 'free some space, then build again'],
  EACCES: ['you may not write there', 'choose another folder:  --out my-packets'],
  EPERM: ['you may not write there', 'choose another folder:  --out my-packets'],
  EROFS: ['that disk can only be read', 'choose another folder:  --out my-packets'],
  ETIMEDOUT: [
    'another build of this house is at work and does not end',
    'wait for it to end; if none runs, delete the file .sillplate-lock-… beside the output',
  ],
  ENOTDIR: [
    'a file stands where a folder is needed',
    'move the file away, or choose another folder:  --out my-packets',
  ],
  EEXIST: [
    'a file stands where a folder is needed',
    'move the file away, or choose another folder:  --out my-packets',
  ],
};

/** What a disk refused, as a diagnostic about `shown`. Anything that is not a refusal of the system is thrown on. */
export function diskTrouble(thrown: unknown, shown: string): Diagnostic {
  const { code, syscall } = thrown as { readonly code?: string; readonly syscall?: string };
  if (code === undefined || syscall === undefined) throw thrown;
  const [what, hint] = REASONS[code] ?? [`the system says ${code}`, 'check the folder, then build again'];
  return {
    code: 'archive.disk',
    severity: 'error',
    file: shown,
    message: `${shown} could not be written: ${what}. What was there before is as it was`,
    hints: [hint],
  };
}
