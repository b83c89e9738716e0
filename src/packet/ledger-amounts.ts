/** Whole numbers as plain decimals for files that programs read: a hyphen for a minus, a point, nothing between thousands. */

/** Cents as dollars with both decimals: -5902 → `-59.02`. */
export const plainDollars = (cents: number): string => fixed(cents, 2);

/** Hundredths of an hour without needless zeros: 950 → `9.5`. */
export const plainHours = (hundredths: number): string => fixed(hundredths, 2).replace(/\.?0+$/, '');

/** Thousandths of a mile without needless zeros: 18400 → `18.4`. */
export const plainMiles = (thousandths: number): string => fixed(thousandths, 3).replace(/\.?0+$/, '');

function fixed(whole: number, places: 2 | 3): string {
  const all = Math.abs(whole);
  const unit = places === 2 ? 100 : 1000;
  const rest = all % unit;
  // Written once or twice for each of many thousands of rows: no padding by the text's own means, which is slow.
  const zeros = rest >= unit / 10 ? '' : places === 3 && rest < 10 ? '00' : '0';
  return `${whole < 0 ? '-' : ''}${(all - rest) / unit}.${zeros}${rest}`;
}
