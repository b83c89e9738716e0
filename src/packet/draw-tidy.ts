/** Two decimals, in points: a drawing's numbers stay short, and no reader sees less than a hundredth. */
export const tidy = (points: number): number => Math.round(points * 100) / 100;

/** The same, never below what it was. */
export const tidyUp = (points: number): number => Math.ceil(points * 100) / 100;
