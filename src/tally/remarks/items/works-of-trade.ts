/** The work of a trade: that of a plumber, whoever did it. */
import type { ClaimCase } from '../claims/claim-case.js';
import type { Item } from './items.js';

/** Trades of the folder's work, by the thing whose work is spoken of. */
const TRADE_OF: Readonly<Record<string, RegExp>> = {
  electrical: /electri/i,
  wiring: /electri/i,
  plumbing: /plumb/i,
  paint: /paint/i,
  roof: /roof/i,
  hvac: /heat|cool/i,
  tile: /til(e|ing)/i,
  floor: /floor/i,
};

/** "All plumbing by a licensed plumber": the toilet that the owner set is plumbing too. */
export function worksOfTrade({ known, phrase, places }: ClaimCase): readonly Item[] {
  const trade = TRADE_OF[phrase.thing];
  if (trade === undefined || places.length > 0) return [];
  return known.items.filter(
    ({ kind, path, who }) =>
      kind === 'work' &&
      who.kind !== 'not-known' &&
      trade.test(known.house.work[Number(path[1])]?.trade ?? ''),
  );
}
