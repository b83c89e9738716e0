import type { System } from '../facts/house.js';

/** Whether a system is still part of the house. One that was taken out is told as work, and nowhere else. */
export const isThere = (system: System): boolean => system.did !== 'removed';
