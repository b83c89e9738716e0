import { groupThousands } from '../../facts/written-number.js';

/** Hundredths of an hour as hours: 125 → "1.25", 80000 → "800". */
export function printHours(hundredths: number): string {
  const places = String(hundredths % 100)
    .padStart(2, '0')
    .replace(/0+$/, '');
  return `${groupThousands(Math.floor(hundredths / 100))}${places === '' ? '' : `.${places}`}`;
}
