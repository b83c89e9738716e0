/** What a disk refused while a bag was written to it, in plain words and with what to type. */
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import { diskTrouble } from '../diagnostics/disk-trouble.js';

const ELSEWHERE = 'choose another folder:  --to my-archive';

const REASONS: Readonly<Record<string, readonly [string, ...string[]]>> = {
  ENOSPC: ['the disk is full', 'free some space, and type the same command again'],
  EDQUOT: ['your share of the disk is full', 'free some space, and type the same command again'],
  EACCES: ['you may not write there', ELSEWHERE],
  EPERM: ['you may not write there', ELSEWHERE],
  EROFS: ['that disk can only be read', ELSEWHERE],
  ENOTDIR: ['a file stands where a folder is needed', 'move the file away', ELSEWHERE],
  EEXIST: ['a file stands where a folder is needed', 'move the file away', ELSEWHERE],
  ELOOP: ['its links lead round in a ring', ELSEWHERE],
  ENAMETOOLONG: ['a name would be longer than that disk allows', ELSEWHERE],
  EFBIG: [
    'a file would be larger than that disk can hold',
    'write it as a folder:  --form folder',
    ELSEWHERE,
  ],
  ...Object.fromEntries(
    ['ENOENT', 'ENODEV', 'ENXIO', 'ENOTCONN', 'ESTALE', 'EHOSTDOWN'].map((code) => [
      code,
      ['that place is not there', 'plug its disk in, and type the same command again', ELSEWHERE],
    ]),
  ),
  EIO: ['that disk does not answer as it should', 'see whether it is plugged in well', ELSEWHERE],
};

/** `shown`: the folder of the bags. Anything that is not a refusal of the system is thrown on. */
export function bagDiskTrouble(thrown: unknown, shown: string): Diagnostic {
  const plain = diskTrouble(thrown, shown);
  const { code = '' } = thrown as NodeJS.ErrnoException;
  const [what, ...hints] = REASONS[code] ?? [`the system says ${code}`, ELSEWHERE];
  return {
    ...plain,
    message: `no bag could be written to ${shown}: ${what}. Earlier bags are as they were`,
    hints,
  };
}
