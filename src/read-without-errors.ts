/** A house with what follows from it, for a command that says nothing of a record with errors. */
import { asWritten } from './as-written.js';
import { type Located, locate } from './diagnostics/report.js';
import type { HouseFolder } from './find-houses.js';
import { camerasOf, onDisk } from './house-photos.js';
import { type ReadHouse, readHouse } from './intake/read-house.js';
import type { ComposeOrder } from './packet/compose.js';
import { deriveTally } from './tally/tally.js';

export interface HouseToTell {
  /** All that a packet is composed from but for the edition. */
  readonly order: Omit<ComposeOrder, 'edition'>;
  readonly read: ReadHouse;
}

/** Nothing is told of facts with errors: what is told might be the error. `asOf`: YYYY-MM-DD. */
export async function readWithoutErrors(
  { folder, shown }: HouseFolder,
  asOf: string,
  options: { readonly ledger?: boolean } = {},
): Promise<HouseToTell | { readonly errors: readonly Located[] }> {
  const read = await readHouse(folder, shown, { everyPhoto: false, ...options });
  const { found } = read;
  const derived =
    found === undefined ? undefined : deriveTally(found.house, asOf, camerasOf(found), found.ledger);
  const told = [...read.diagnostics, ...(derived === undefined ? [] : asWritten(read, derived.diagnostics))];
  const errors = told.filter(({ severity }) => severity === 'error');
  if (found === undefined || derived === undefined || errors.length > 0)
    return { errors: locate(errors, read.places) };
  const photos = new Map([...found.photos].map(([id, file]) => [id, onDisk(file)]));
  return {
    order: { folder: found.folder, house: found.house, tally: derived.tally, photos },
    read,
  };
}
