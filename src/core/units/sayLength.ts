import { formatLength, type LengthStyle, showLength } from "./formatLength.ts";
import { MM_PER_UNIT } from "./lengthWords.ts";
import { withDecimalSign } from "./numberWords.ts";

/**
 * Writes a length into a sentence about a problem. `fine`: two lengths that differ by little are set against each other,
 * so four figures are given.
 */
export type SayLength = (mm: number, fine?: "fine") => string;

/** Shorter lengths are small against the divisions of an inch ruler, mm. */
const RULED = MM_PER_UNIT.in;

/**
 * Lengths of problems as a project shows lengths. In inches, what is not on the ruler is said in decimals where it is
 * below an inch, so that a gap of half a millimetre is not "≈0 in".
 */
export function sayLengths(style: LengthStyle, language: string): SayLength {
  const isInches = style === "in/16" || style === "in/32" || style === "yd/8";
  const decimals = (mm: number, figures: number): string => {
    const [value, unit] = isInches ? [mm / MM_PER_UNIT.in, "in"] : [mm, "mm"];
    return withDecimalSign(`${Number(value.toPrecision(figures))} ${unit}`, language);
  };
  if (!isInches)
    return (mm, fine) => {
      if (fine) return decimals(mm, 4);
      return Math.abs(mm) < 0.1 ? decimals(mm, 2) : formatLength(mm, style === "cm" ? "cm" : "mm", language);
    };
  const ruled = style === "in/32" ? "in/32" : "in/16";
  return (mm, fine) => {
    const isRuled = Math.abs(showLength(mm, ruled).offByMm) <= 1e-6;
    if (!isRuled && (fine || Math.abs(mm) < RULED)) return decimals(mm, fine ? 4 : 3);
    return formatLength(mm, ruled, language);
  };
}
