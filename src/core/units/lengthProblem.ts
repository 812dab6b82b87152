import type { LengthUnit } from "./lengthWords.ts";

/** What can be wrong with a length, count, amount or share as typed. `path` names the field, e.g. `straps[1].width`. */
export type LengthProblem =
  | { readonly code: "length-unreadable"; readonly path: string; readonly text: string }
  | {
      /** "1,250 m": is the comma a decimal sign or does it part thousands? */
      readonly code: "length-ambiguous";
      readonly path: string;
      readonly text: string;
      readonly asDecimal: string;
      readonly asThousands: string;
    }
  | { readonly code: "length-not-finite"; readonly path: string; readonly text: string }
  | {
      readonly code: "length-out-of-range";
      readonly path: string;
      readonly mm: number;
      readonly minMm: number;
      readonly maxMm: number;
    }
  | { readonly code: "length-unit-unknown"; readonly path: string; readonly text: string; readonly unit: string }
  | {
      /** "1 m 2 in", "4 in 1 ft": the second unit is not a smaller one of the same kind. */
      readonly code: "length-units-mixed";
      readonly path: string;
      readonly text: string;
      readonly first: LengthUnit;
      readonly second: LengthUnit;
    }
  | { readonly code: "length-fraction-by-zero"; readonly path: string; readonly text: string }
  | {
      /** "3 7/8" where bare numbers are metric: nobody writes those as fractions, so the unit is asked for. */
      readonly code: "length-fraction-bare";
      readonly path: string;
      readonly text: string;
      readonly unit: LengthUnit;
    }
  | { readonly code: "share-unreadable"; readonly path: string; readonly text: string }
  | {
      readonly code: "share-out-of-range";
      readonly path: string;
      readonly share: number;
      readonly min: number;
      readonly max: number;
      /** The number itself was given, 0.03 for 3 %; else it was written, and a bare number is a percentage. */
      readonly isNumber: boolean;
    }
  | {
      readonly code: "count-out-of-range";
      readonly path: string;
      readonly count: number;
      readonly min: number;
      readonly max: number;
    }
  | { readonly code: "count-unreadable"; readonly path: string; readonly text: string }
  | { readonly code: "money-unreadable"; readonly path: string; readonly text: string }
  | {
      readonly code: "thickness-range";
      readonly path: string;
      readonly text: string;
      readonly lowMm: number;
      readonly highMm: number;
    }
  | { readonly code: "thickness-in-cloth-ounces"; readonly path: string; readonly text: string };

/** A number read from text, or why there is none. Fits the house's `Result<number>`. */
export type ReadNumber =
  | { readonly ok: true; readonly value: number }
  | { readonly ok: false; readonly problems: readonly LengthProblem[] };
