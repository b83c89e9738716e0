/** The characters from the beginning of a row of tokens or units to its end; an empty row has none. */
export const stretchOf = (
  row: readonly { readonly from: number; readonly to: number }[],
): { readonly from: number; readonly to: number } => ({
  from: row[0]?.from ?? 0,
  to: row.at(-1)?.to ?? 0,
});
