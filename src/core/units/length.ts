/** Units a maker may write a length in. Exact: 1 in = 25.4 mm (1959 yard and pound agreement). */
export type LengthUnit = "mm" | "cm" | "m" | "in" | "ft" | "yd";

/** Millimetres in one unit. */
export const MM_PER_UNIT: Readonly<Record<LengthUnit, number>> = {
  mm: 1,
  cm: 10,
  m: 1000,
  in: 25.4,
  ft: 304.8,
  yd: 914.4,
};
