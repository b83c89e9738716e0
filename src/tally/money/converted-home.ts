/** A home that became a rental: from what it is depreciated, and from what a gain or a loss is measured. */

export interface Conversion {
  /** Adjusted basis of the building on the day of the change, cents. */
  readonly building: number;
  readonly land: number;
  /** What building and land were worth on that day, cents. */
  readonly buildingValue: number;
  readonly landValue: number;
  /** What raised and lowered the basis afterwards, signed. */
  readonly later: number;
}

export interface ConversionBasis {
  readonly depreciation: number;
  readonly forGain: number;
  readonly forLoss: number;
}

/** Source: `home-turned-rental` in tables/basis.yaml. */
export function conversionBasis({
  building,
  land,
  buildingValue,
  landValue,
  later,
}: Conversion): ConversionBasis {
  return {
    depreciation: Math.min(building, buildingValue),
    forGain: building + land + later,
    forLoss: Math.min(building + land, buildingValue + landValue) + later,
  };
}

/** Neither gain nor loss where the one basis gives no gain and the other no loss. */
export function convertedGain(realised: number, { forGain, forLoss }: ConversionBasis): number {
  if (realised > forGain) return realised - forGain;
  return realised < forLoss ? realised - forLoss : 0;
}
