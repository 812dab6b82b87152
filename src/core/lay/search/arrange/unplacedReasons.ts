import type { LayProblem, Unplaced, UnplacedReason } from "../../problem/layProblem.ts";
import { fitsBox, pieceExtents } from "../../problem/pieceExtent.ts";

/** Tells why copies of a piece were left out, by index of the piece. */
export type ReasonOf = (piece: number) => UnplacedReason;

/**
 * Why pieces of a problem can be left out. A piece that no roll is wide enough for in any turn its grain allows is
 * too long for the width; one that no stock takes at all is too large; else the stock was used up.
 */
export function unplacedReasons(problem: LayProblem): ReasonOf {
  const known = new Map<number, UnplacedReason>();
  return (index) => {
    const reason = known.get(index) ?? reasonOf(problem, index);
    known.set(index, reason);
    return reason;
  };
}

function reasonOf({ pieces, stocks, margin }: LayProblem, index: number): UnplacedReason {
  if (stocks.length === 0) return "no-stock";
  const extents = pieceExtents(pieces[index]!);
  if (stocks.some((stock) => fitsBox(extents, stock, margin))) return "stock-used-up";
  const rolls = stocks.filter((stock) => stock.kind === "roll");
  const tooNarrow = rolls.every((roll) => !fitsBox(extents, { ...roll, length: null }, margin));
  return rolls.length > 0 && tooNarrow ? "too-long-for-width" : "too-large-for-stock";
}

/** Left-out copies by piece, with reasons, in the order of the pieces. */
export function unplacedOf(problem: LayProblem, left: readonly number[], reason: ReasonOf): Unplaced[] {
  return problem.pieces.flatMap(({ id }, i) =>
    left[i]! > 0 ? [{ pieceId: id, count: left[i]!, reason: reason(i) }] : [],
  );
}
