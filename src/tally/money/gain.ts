/** Gain or loss on a sale, in cents. Source: `gain-on-sale` in tables/basis.yaml. */

export interface Gain {
  /** Price less the costs of selling. */
  readonly realised: number;
  /** Below zero: a loss. */
  readonly gain: number;
}

export function gainOf(price: number, selling: number, adjustedBasis: number): Gain {
  const realised = price - selling;
  return { realised, gain: realised - adjustedBasis };
}
