/** Gain on a sale, in cents; below zero: a loss. Source: `gain-on-sale` in tables/basis.yaml. */
export const gainOf = (price: number, selling: number, adjustedBasis: number): number =>
  price - selling - adjustedBasis;
