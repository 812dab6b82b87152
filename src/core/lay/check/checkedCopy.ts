import type { Stock, StockPlacement } from "../problem/layProblem.ts";
import type { LaidOutline } from "./laidOutline.ts";

/** One placement of a plan with its outline where it lies. */
export interface CheckedCopy {
  /** Place in the plan, e.g. `placements[3]`. */
  readonly path: string;
  readonly placement: StockPlacement;
  readonly stock: Stock;
  readonly outline: LaidOutline;
}

/** Names the copy in a finding. */
export function copyName({ placement }: CheckedCopy): { pieceId: string; copy: number } {
  return { pieceId: placement.pieceId, copy: placement.copy };
}
