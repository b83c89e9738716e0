import type { System } from '../facts/house.js';

/** What a system is called: by its own name, else by what it is. */
export const systemName = ({ name, is }: System): string => name ?? is;
