/** Whether the house was renovated to be sold: by its own word, else by work between purchase and listing. */
import { printDate } from '../../facts/date.js';
import type { House } from '../../facts/house.js';
import { isSince } from './contractor-work.js';
import type { DutyFact } from './duty-fact.js';

export function renovatedForResale(house: House): DutyFact {
  const written = house.duties?.['for-resale'];
  const about = {
    path: ['duties', 'for-resale'],
    asks: 'whether it was renovated to be sold',
    hint: house.duties === undefined ? 'duties: { for-resale: no }' : 'for-resale: no',
  };
  if (written === 'yes') return { ...about, is: 'yes', words: 'renovated to be sold, as written' };
  if (written === 'no') return { ...about, is: 'no', words: 'not renovated to be sold, as written' };
  const { listed } = house.house;
  const index = house.work.findIndex(({ done }) => isSince(house, done) === 'yes');
  // A main home may be mended and sold without having been bought for that.
  if (written === undefined && listed !== undefined && index >= 0 && house.money?.role !== 'main-home')
    return {
      ...about,
      is: 'yes',
      path: ['work', index],
      words: `renovated to be sold, as work was done after the purchase and it was listed ${printDate(listed)}`,
    };
  return { ...about, is: undefined, words: 'whether it was renovated to be sold is not known' };
}
