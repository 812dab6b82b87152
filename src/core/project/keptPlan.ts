import type { Pose } from "../geometry/pose.ts";

/** A copy of a piece where it lies. */
interface KeptPlacement extends Pose {
  readonly stockId: string;
  readonly pieceId: string;
  readonly copy: number;
}

/**
 * A plan that the maker kept by name, printed or saved from, as it stands in the project file: so that pages printed
 * tomorrow, here or elsewhere, are those of today. mm.
 */
export interface KeptPlan {
  readonly name: string;
  readonly materialId: string;
  /** ISO 8601 date and time. */
  readonly savedAt: string;
  /** Something was printed or saved from it, so it is what is laid until she lets it go. */
  readonly held: boolean;
  /** Cloth taken, as it was told. */
  readonly length: number;
  readonly placements: readonly KeptPlacement[];
  readonly uses: readonly {
    readonly stockId: string;
    readonly usedLength: number;
    readonly bound: number | null;
  }[];
  readonly unplaced: readonly { readonly pieceId: string; readonly count: number; readonly reason: string }[];
  /** The project as it was then, as file text; absent where it is the one the plan stands in. */
  readonly project?: string | undefined;
}
