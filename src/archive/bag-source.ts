/** A bag as it is read, however it is packed: what lies in it, and the digests of what lies in it. */
import type { Algorithm } from './bag-manifest.js';
import { ChangedWhileRead, type Digests } from './file-digest.js';

export interface BagListing {
  /** Name of the bag's own folder. */
  readonly name: string;
  /** Path from the bag's folder → bytes. */
  readonly files: ReadonlyMap<string, number>;
  /** The tag files that are read as text, by name: those ending in `.txt` beside `data/`. */
  readonly tags: ReadonlyMap<string, Uint8Array>;
  /** What no bag may hold, to follow its path: "is a link". */
  readonly odd: readonly { readonly path: string; readonly what: string; readonly hint: string }[];
}

/** A file's digests, or why it could not be read. */
export type Digested = Digests | { readonly trouble: string };

export interface BagSource {
  /** Throws `BagUnreadable`. */
  readonly list: () => Promise<BagListing>;
  /** Digests of files that `list` named. Throws `BagUnreadable` if the whole can't be read on. */
  readonly digest: (
    wanted: ReadonlyMap<string, ReadonlySet<Algorithm>>,
    onBytes?: (n: number) => void,
  ) => Promise<ReadonlyMap<string, Digested>>;
}

/** It can't be read as a bag at all. */
export class BagUnreadable extends Error {
  /** What to do. */
  readonly hints: readonly string[];
  /** `message` follows the bag's name: "is no ZIP file". */
  constructor(message: string, ...hints: readonly string[]) {
    super(message);
    this.hints = hints;
  }
}

/** Whether a file of a bag is read as text: a manifest, or one of the files that say what the bag is. */
export const isTag = (path: string): boolean => /^[^/]+\.txt$/u.test(path);

export const isDigests = (one: Digested): one is Digests => one instanceof Map;

/** What the system refused, to follow a name; undefined if it was no refusal of the system. */
export function readTrouble(thrown: unknown): string | undefined {
  if (thrown instanceof ChangedWhileRead) return 'was changed while it was being read';
  const { code, syscall } = thrown as NodeJS.ErrnoException;
  if (code === undefined || syscall === undefined) return undefined;
  if (code === 'ENOENT') return 'is not there';
  return `can’t be read: ${code === 'EACCES' ? 'you may not' : `the system says ${code}`}`;
}

export const NO_BAGIT = 'has no bagit.txt, so it is no bag';
export const NAME_IT = 'name the bag’s own folder, in which bagit.txt lies';
