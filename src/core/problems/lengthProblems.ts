/** What can be wrong with a length, count or share as typed. `path` names the field, e.g. `straps[1].width`. */
export type LengthProblem =
  | { readonly code: "length-unreadable"; readonly path: string; readonly text: string }
  | { readonly code: "length-not-finite"; readonly path: string; readonly text: string }
  | {
      readonly code: "length-out-of-range";
      readonly path: string;
      readonly mm: number;
      readonly minMm: number;
      readonly maxMm: number;
    };
