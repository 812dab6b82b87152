/** Which straight-grain directions a strap may take. */
export const STRAP_DIRECTIONS = ["both", "lengthwise", "crosswise"] as const;

export type StrapDirections = (typeof STRAP_DIRECTIONS)[number];

/** One strap and the cloth it is cut from, all in mm. */
export interface StrapOnCloth {
  /** The strap's cut width. */
  readonly strapWidth: number;
  /** The strap's cut length. */
  readonly strapLength: number;
  /** Usable width of the cloth, across the roll. */
  readonly clothWidth: number;
  /** Least distance between two straps; none is kept to the cloth's edges. */
  readonly gap: number;
  readonly directions: StrapDirections;
}

/** A strap laid down: lower-left corner of its box in mm, 0 = strap's length along the roll, 90 = across. */
export interface StrapPlacement {
  readonly x: number;
  readonly y: number;
  readonly rotation: 0 | 90;
}

/**
 * The same question in whole nanometres, where every inch fraction down to 1/64 and every tenth of a millimetre
 * is exact, with the gap added to strap and cloth alike so that it can be forgotten.
 */
export interface YieldQuestion {
  /** Extent along the roll of a strap laid lengthwise. */
  readonly a: number;
  /** Extent across the roll of a strap laid lengthwise. */
  readonly b: number;
  /** Extent of the cloth along the roll. */
  readonly length: number;
  /** Extent of the cloth across the roll. */
  readonly width: number;
}

/** Units of a `YieldQuestion` per millimetre. */
export const UNITS_PER_MM = 1e6;

/** The yield question for `cloth` cut at `clothLength` mm. */
export function questionOf(cloth: StrapOnCloth, clothLength: number): YieldQuestion {
  const units = (mm: number): number => Math.round(mm * UNITS_PER_MM);
  const gap = units(cloth.gap);
  return {
    a: units(cloth.strapLength) + gap,
    b: units(cloth.strapWidth) + gap,
    length: units(clothLength) + gap,
    width: units(cloth.clothWidth) + gap,
  };
}
