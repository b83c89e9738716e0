/** What a disk refuses a delivery, with what to do about it: it is written into the house folder and nowhere else. */
import type { Diagnostic } from './diagnostics/diagnostic.js';
import { type Reasons, refusalTrouble } from './refusal-trouble.js';

const RIGHTS =
  'check who may write there, or copy the house folder to a place of your own and deliver from that';
const AGAIN = 'free some space, and type the same command again';

const REASONS: Reasons = {
  ENOSPC: ['the disk is full', AGAIN],
  EDQUOT: ['your share of the disk is full', AGAIN],
  EACCES: ['you may not write there', RIGHTS],
  EPERM: ['you may not write there', RIGHTS],
  EROFS: ['that disk can only be read', RIGHTS],
  ENOTDIR: ['a file stands where the folder is needed', 'move that file away'],
  EEXIST: ['a file stands where the folder is needed', 'move that file away'],
  ETIMEDOUT: [
    'another delivery of this house is at work and does not end',
    'wait for it to end; if none runs, delete the file  deliveries/.sillplate-lock-delivery  of the house',
  ],
};

/** `shown` is the house's `deliveries`. Anything that is not a refusal of the system is thrown on. */
export function deliveryTrouble(thrown: unknown, shown: string): Diagnostic {
  return {
    ...refusalTrouble(
      thrown,
      shown,
      REASONS,
      (what) =>
        `nothing was delivered: ${shown} can’t be written to, since ${what}. Earlier deliveries are as they were`,
    ),
    code: 'archive.delivery',
  };
}
