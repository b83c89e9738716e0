/** Whether a dwelling has a bedroom, which the federal lead rules hang on. */
import type { House } from '../facts/house.js';

/** Position of the first room used as a bedroom; -1 where there is none. */
export const bedroomAt = ({ rooms }: House): number => rooms.findIndex(({ use }) => use === 'bedroom');

/** Said to have no bedroom, and none is recorded: one among the rooms wins over the word. */
export const isStudio = (house: House): boolean => house.duties?.studio === 'yes' && bedroomAt(house) < 0;
