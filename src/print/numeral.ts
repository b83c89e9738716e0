/** A number as PDF writes it: at most three decimals, no exponent, no "-0". Three decimals of a point are 0.35 µm. */
export function numeral(value: number): string {
  const rounded = thousandths(value);
  return rounded === 0 ? '0' : String(rounded);
}

/** The same as a number. */
export const thousandths = (value: number): number => Math.round(value * 1000) / 1000;
