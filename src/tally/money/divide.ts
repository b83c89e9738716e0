/** One division of whole numbers, rounded once to a whole number; the half goes away from zero. */

/** @throws RangeError if `by` is not above zero or the result can't be held exactly. */
export function divideRounded(number: bigint, by: bigint): number {
  if (by <= 0n) throw new RangeError(`can’t divide by ${by}`);
  const size = number < 0n ? -number : number;
  const rounded = (2n * size + by) / (2n * by);
  const result = Number(number < 0n ? -rounded : rounded);
  if (!Number.isSafeInteger(result)) throw new RangeError(`too large to be exact: ${rounded}`);
  return result;
}

/** `whole` × `part` ÷ `all`, rounded once. */
export const shareOf = (whole: number, part: number, all: number): number =>
  divideRounded(BigInt(whole) * BigInt(part), BigInt(all));
