/** A house as a draft of listing remarks is held against it, or written from it. */
import type { Located } from './diagnostics/report.js';
import type { House } from './facts/house.js';
import type { HouseFolder } from './find-houses.js';
import type { ReadHouse } from './intake/read-house.js';
import { contextOf } from './packet/compose.js';
import type { Context } from './packet/context.js';
import type { EditionName } from './packet/packet.js';
import { readWithoutErrors } from './read-without-errors.js';
import type { Tally } from './tally/tally.js';

export interface RemarksHouse {
  /** Name of the folder. */
  readonly name: string;
  /** The folder as its writer would type it. */
  readonly shown: string;
  readonly folder: string;
  readonly house: House;
  readonly tally: Tally;
  readonly read: ReadHouse;
  /** What an edition may know: the house file for how a fact is known, the agent's sheet for a draft. */
  readonly contextFor: (edition: EditionName) => Context;
}

/** Nothing is held against facts with errors: the error might be what the draft contradicts. */
export async function remarksHouse(
  home: HouseFolder,
  asOf: string,
): Promise<RemarksHouse | { readonly errors: readonly Located[] }> {
  const known = await readWithoutErrors(home, asOf);
  if ('errors' in known) return known;
  const { order, read } = known;
  return {
    name: order.folder,
    shown: home.shown,
    folder: home.folder,
    house: order.house,
    tally: order.tally,
    read,
    contextFor: (edition) => contextOf({ ...order, edition }),
  };
}
