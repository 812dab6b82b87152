/** What can be wrong with what is to meet on a cloth's pattern. Lengths in mm. */
export type MatchProblem =
  | {
      /** The two panels are not cut from one cloth, so no pattern runs from one to the other. */
      readonly code: "match-no-common-cloth";
      readonly path: string;
      readonly first: string;
      readonly second: string;
    }
  | {
      /** The edges meet at a slant: a line of the pattern that meets there leaves at another angle. */
      readonly code: "match-aslant";
      readonly path: string;
      readonly first: string;
      readonly second: string;
      readonly byDeg: number;
    }
  | {
      /** Over other seams the same places lie apart on the pattern already. */
      readonly code: "match-contradicts";
      readonly path: string;
      readonly part: string;
      readonly offMm: number;
      readonly mostMm: number;
    }
  | {
      /** Grain, nap or a pattern with a top forbid every turn in which the part would match. */
      readonly code: "match-turn-conflict";
      readonly path: string;
      readonly part: string;
      readonly isMirrored: boolean;
    }
  | {
      readonly code: "unknown-part";
      readonly path: string;
      readonly id: string;
      readonly nearest: string | null;
      readonly known: readonly string[];
    }
  | {
      /** Layers of the cloth lie turned over: what repeats across the roll runs the other way there. */
      readonly code: "match-on-layers";
      readonly path: string;
      readonly materialId: string;
    };
