/** Things side by side, and the next row where no more have room: legends below a plan, plans on a sheet. */

/** In rows of a width at most, and so much between two neighbours; what is wider stands alone. */
export function inRows<T>(
  things: readonly T[],
  widest: number,
  between: number,
  widthOf: (thing: T) => number,
): T[][] {
  const rows: T[][] = [];
  let left = 0;
  for (const thing of things) {
    const width = widthOf(thing);
    const row = rows.at(-1);
    if (row !== undefined && left + between + width <= widest) {
      row.push(thing);
      left += between + width;
    } else {
      rows.push([thing]);
      left = width;
    }
  }
  return rows;
}
