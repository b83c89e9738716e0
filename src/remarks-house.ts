/** A house as a draft of listing remarks is held against it, or written from it. */
import { asWritten } from './as-written.js';
import { type Located, locate } from './diagnostics/report.js';
import type { House } from './facts/house.js';
import type { HouseFolder } from './find-houses.js';
import { camerasOf, onDisk } from './house-photos.js';
import { type ReadHouse, readHouse } from './intake/read-house.js';
import { contextOf } from './packet/compose.js';
import type { Context } from './packet/context.js';
import type { EditionName } from './packet/packet.js';
import { deriveTally, type Tally } from './tally/tally.js';

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
  { folder, shown }: HouseFolder,
  asOf: string,
): Promise<RemarksHouse | { readonly errors: readonly Located[] }> {
  const read = await readHouse(folder, shown, { everyPhoto: false });
  const diagnostics = [...read.diagnostics];
  const { found } = read;
  const derived =
    found === undefined ? undefined : deriveTally(found.house, asOf, camerasOf(found), found.ledger);
  if (derived !== undefined) diagnostics.push(...asWritten(read, derived.diagnostics));
  const errors = diagnostics.filter(({ severity }) => severity === 'error');
  if (found === undefined || derived === undefined || errors.length > 0)
    return { errors: locate(errors, read.places) };
  const { house } = found;
  const { tally } = derived;
  const photos = new Map([...found.photos].map(([id, file]) => [id, onDisk(file)]));
  return {
    name: found.folder,
    shown,
    folder,
    house,
    tally,
    read,
    contextFor: (edition) => contextOf({ folder: found.folder, house, tally, edition, photos }),
  };
}
