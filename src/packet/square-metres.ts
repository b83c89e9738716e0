import type { ClassArea } from '../tally/area.js';

/** " (96.6 m²)", to go behind square feet; empty where not every length was read in metric units. */
export const squareMetres = ({ squareMetres: metres }: Pick<ClassArea, 'squareMetres'>): string =>
  metres === undefined ? '' : ` (${metres.toFixed(1)} m²)`;
