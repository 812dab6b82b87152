/** What can be wrong with what is asked of a cupboard. `label` is the code on a piece's label. */
export type CupboardProblem =
  | {
      readonly code: "no-such-piece";
      readonly path: string;
      readonly label: string;
      readonly nearest: string | null;
    }
  | {
      readonly code: "piece-out-already";
      readonly path: string;
      readonly label: string;
      readonly project: string;
      readonly on: string;
    }
  /** Another project may have the same name: what is out for it is not this one's for sure. */
  | {
      readonly code: "project-has-pieces-out";
      readonly path: string;
      readonly project: string;
      readonly labels: readonly string[];
      readonly on: string;
    }
  | { readonly code: "photo-unreadable"; readonly path: string; readonly mostKb: number }
  | { readonly code: "piece-not-out"; readonly path: string; readonly label: string }
  | { readonly code: "piece-twice"; readonly path: string; readonly label: string; readonly firstPath: string }
  | { readonly code: "piece-open-ended"; readonly path: string; readonly label: string }
  /** A piece whose code is the id of something in the project. */
  | { readonly code: "piece-code-taken"; readonly path: string; readonly label: string }
  | {
      readonly code: "shades-mixed";
      readonly path: string;
      readonly cloth: string;
      readonly shades: readonly string[];
    }
  | { readonly code: "plan-kept-already"; readonly path: string; readonly on: string }
  | { readonly code: "plan-leaves-nothing"; readonly path: string }
  | { readonly code: "plan-takes-nothing"; readonly path: string }
  | { readonly code: "day-unreadable"; readonly path: string; readonly value: string }
  /** The browser has no room for it, or keeps nothing. */
  | { readonly code: "cupboard-not-stored"; readonly path: string }
  | { readonly code: "nothing-to-undo"; readonly path: string };
