/** What can be wrong with a lay problem or with a plan, as the checker finds it. */
export type LayProblemFinding = LayFinding | LeftOut;

/** One copy of a piece, as plans name it. */
export interface CopyName {
  readonly pieceId: string;
  readonly copy: number;
  /** What the maker calls the piece; its id is told where no host has given the name. */
  readonly name?: string;
}

/** A stock, as plans name it. */
interface StockName {
  readonly stockId: string;
  /** What the maker calls it; its id is told where no host has given the name. */
  readonly stockName?: string;
}

/**
 * A fault in a lay plan. `path` points into the plan (`placements[3]`, `unplaced[0]`, `uses[1]`) or, for a count,
 * into the problem (`pieces[2]`). Lengths in mm, areas in mm².
 */
export type LayFinding =
  | { readonly code: "plan-unknown-piece"; readonly path: string; readonly pieceId: string }
  | { readonly code: "plan-unknown-stock"; readonly path: string; readonly stockId: string }
  | ({ readonly code: "plan-pose-unreadable"; readonly path: string } & CopyName)
  | ({ readonly code: "plan-copy-unknown"; readonly path: string; readonly count: number } & CopyName)
  | ({ readonly code: "plan-copy-twice"; readonly path: string } & CopyName)
  | ({
      readonly code: "plan-turn-not-allowed";
      readonly path: string;
      readonly turnDeg: number;
      readonly mirrored: boolean;
    } & CopyName)
  | ({
      readonly code: "plan-overlap";
      readonly path: string;
      readonly other: CopyName;
      readonly areaMm2: number;
    } & CopyName)
  | ({
      readonly code: "plan-too-close";
      readonly path: string;
      readonly other: CopyName;
      readonly distanceMm: number;
      readonly leastMm: number;
    } & CopyName)
  | ({
      readonly code: "plan-outside-stock";
      readonly path: string;
      readonly areaMm2: number;
    } & CopyName &
      StockName)
  | ({
      readonly code: "plan-too-near-edge";
      readonly path: string;
      readonly distanceMm: number;
      readonly leastMm: number;
    } & CopyName &
      StockName)
  | ({
      readonly code: "plan-on-flaw";
      readonly path: string;
      readonly flaw: number;
      readonly areaMm2: number;
    } & CopyName &
      StockName)
  | ({
      readonly code: "plan-too-near-flaw";
      readonly path: string;
      readonly flaw: number;
      readonly distanceMm: number;
      readonly leastMm: number;
    } & CopyName &
      StockName)
  | {
      readonly code: "plan-miscounted";
      readonly path: string;
      readonly pieceId: string;
      readonly wanted: number;
      readonly placed: number;
      readonly unplaced: number;
    }
  | ({ readonly code: "plan-pin-moved"; readonly path: string } & CopyName)
  | ({
      /** A matched place lies beside where the pattern, or what it is to meet, has it. */
      readonly code: "plan-off-pattern";
      readonly path: string;
      readonly axis: "along" | "across";
      readonly offMm: number;
      readonly mostMm: number;
      /** What it does not meet; nothing where the place itself was fixed. */
      readonly other?: CopyName;
    } & CopyName)
  | ({
      /** Turned so that the pattern runs the other way than on what it is to meet. */
      readonly code: "plan-against-pattern";
      readonly path: string;
      readonly other: CopyName;
    } & CopyName)
  | ({ readonly code: "plan-pattern-unknown"; readonly path: string } & CopyName & StockName)
  | ({
      /** Lies the other way along the cloth than the rest. */
      readonly code: "plan-two-ways";
      readonly path: string;
      readonly other: CopyName;
    } & CopyName)
  | ({
      /** Parts of one bag, which have to be of one shade, on two pieces of cloth. */
      readonly code: "plan-bag-apart";
      readonly path: string;
      readonly bag: number;
      readonly other: CopyName;
    } & CopyName)
  | ({
      /** The parts of a bag take more of the cloth's length than the band they are to lie in. */
      readonly code: "plan-bag-scattered";
      readonly path: string;
      readonly bag: number;
      readonly other: CopyName;
      readonly lengthMm: number;
      readonly mostMm: number;
    } & CopyName)
  | {
      /** What comes of all layers is not what is asked for: too few of one hand, or a copy more than is needed. */
      readonly code: "plan-layers-miscounted";
      readonly path: string;
      readonly pieceId: string;
      readonly hand: "as-drawn" | "mirrored";
      readonly wanted: number;
      readonly given: number;
    }
  | {
      /** A piece is said to give what that many layers, laid so, cannot give. */
      readonly code: "plan-hands-untrue";
      readonly path: string;
      readonly pieceId: string;
    }
  | ({
      /** Half a piece whose fold edge is not on the fold of the cloth. */
      readonly code: "plan-off-fold";
      readonly path: string;
      readonly distanceMm: number;
    } & CopyName)
  | {
      readonly code: "plan-length-untrue";
      readonly path: string;
      readonly stockId: string;
      readonly toldMm: number;
      readonly measuredMm: number;
    }
  | {
      readonly code: "plan-bound-untrue";
      readonly path: string;
      readonly stockId: string;
      readonly boundMm: number;
      readonly measuredMm: number;
    };

/** Pieces that could not be laid, why, and the facts that say what would help. Lengths in mm. */
export type LeftOut = {
  /** The piece in the cut list. */
  readonly path: string;
  readonly pieceId: string;
  readonly count: number;
} & (
  | {
      readonly code: "piece-too-long-for-width";
      /** Least usable width that takes it in a turn its grain allows, margins included. */
      readonly neededWidthMm: number;
      readonly widestMm: number;
      /** Whether it would fit if it might also lie the other straight way. */
      readonly fitsTurned: boolean;
    }
  | { readonly code: "piece-too-large-for-stock"; readonly alongMm: number; readonly acrossMm: number }
  | {
      readonly code: "piece-stock-used-up";
      /** How much more roll of the same width takes everything left out; null without a roll. */
      readonly moreLengthMm: number | null;
    }
  | {
      /** It is held to lines of the pattern, and none leaves room for it between the edges of a roll. */
      readonly code: "piece-no-room-on-pattern";
      /** Least usable width at which a line leaves room for it, margins included. */
      readonly neededWidthMm: number;
      readonly widestMm: number;
    }
  /** Not even one bag's parts fit into its band; what they take as they were tried, null when that is not known. */
  | { readonly code: "piece-band-too-short"; readonly bandMm: number; readonly neededMm: number | null }
  | { readonly code: "piece-no-stock" }
);
