/** How the price is asked: so much for a length of roll, an area of skin, or one piece of stock. */
export type PriceBasis =
  | { readonly kind: "length"; readonly mm: number }
  | { readonly kind: "area"; readonly mm2: number }
  | { readonly kind: "each" };

/** From so much on (mm or mm²) all of it costs this. */
export interface PriceStep {
  readonly from: number;
  readonly amount: number;
}

/** What a material costs in the project's currency, and the steps it is sold in. */
export interface Price {
  readonly amount: number;
  readonly basis: PriceBasis;
  /** Length (mm) or area (mm²) it is sold in whole multiples of; 0 when any amount is cut. */
  readonly step: number;
  /** Least that is sold, mm or mm²; none when absent. */
  readonly least?: number | undefined;
  /** Where the price changes with the quantity. */
  readonly steps?: readonly PriceStep[] | undefined;
}
