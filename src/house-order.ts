import type { EditionName } from './packet/packet.js';

/** What is to be made of a house. */
export interface HouseOrder {
  /** The house folder. */
  readonly folder: string;
  /** The same as the writer would type it, with forward slashes; used in messages. */
  readonly shown: string;
  /** YYYY-MM-DD that ages are counted to. */
  readonly asOf: string;
  /** YYYY-MM-DD of the calendar, if the front door knows it; for a warning, never for what is made. */
  readonly today?: string;
  readonly editions: readonly EditionName[];
  /** The name that the packets bear, where the folder was renamed since. */
  readonly named?: string;
  /** Output goes to `out/<house>/<edition>/`. */
  readonly out: string;
  readonly outShown: string;
  readonly paper: 'letter' | 'a4';
  /** Read the sheets of costs, miles and hours, whatever is made; the house file always does. */
  readonly ledger?: boolean;
  /** Look at all photos that the facts name, not only at those that a packet shows. */
  readonly everyPhoto?: boolean;
  /** Called as work goes on; for a progress line. */
  readonly onStep?: (step: string) => void;
  /** Called before the first and after every photo, with its name, how many are done and how many there are. */
  readonly onPhoto?: (name: string, done: number, all: number) => void;
}
