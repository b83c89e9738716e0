/** Whether a photo may be shown: the writer marks it private, or gives the day before which it is not. */
import type { HouseDate } from '../facts/date.js';
import type { Photo } from '../facts/house.js';

export type HeldBack =
  | { readonly why: 'private' }
  | { readonly why: 'not-before'; readonly until: HouseDate };

/** Why a photo is kept in the house file on the day `asOf` (YYYY-MM-DD); undefined where nothing holds it back. */
export function heldBack(photo: Pick<Photo, 'private' | 'not-before'>, asOf: string): HeldBack | undefined {
  if (photo.private) return { why: 'private' };
  const until = photo['not-before'];
  // Of an uncertain day the last one counts, and one without an end never comes: consent is not guessed.
  if (until === undefined || (until.latest !== undefined && until.latest <= asOf)) return undefined;
  return { why: 'not-before', until };
}
