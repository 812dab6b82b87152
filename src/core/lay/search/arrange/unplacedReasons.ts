import type { LayPiece, LayProblem, Stock, Unplaced, UnplacedReason } from "../../problem/layProblem.ts";
import { isWideEnough, widthOnPattern } from "../../problem/patternRoom.ts";
import { fitsBox, pieceExtents } from "../../problem/pieceExtent.ts";

/** Tells why copies of a piece were left out, by index of the piece. */
export type ReasonOf = (piece: number) => UnplacedReason;

/**
 * Why pieces of a problem can be left out. A piece that no roll is wide enough for in any turn its grain allows is
 * too long for the width; one that no stock takes at all is too large; one that is held to lines of the pattern none of
 * which leaves room for it between the edges has no room on the pattern; else the stock was used up.
 */
export function unplacedReasons(problem: LayProblem): ReasonOf {
  const known = new Map<number, UnplacedReason>();
  return (index) => {
    const reason = known.get(index) ?? reasonOf(problem, index);
    known.set(index, reason);
    return reason;
  };
}

function reasonOf(problem: LayProblem, index: number): UnplacedReason {
  const { pieces, stocks, margin } = problem;
  if (stocks.length === 0) return "no-stock";
  const extents = pieceExtents(pieces[index]!);
  const taking = stocks.filter((stock) => fitsBox(extents, stock, margin));
  if (taking.length > 0) return hasRoom(problem, pieces[index]!, taking) ? "stock-used-up" : "no-room-on-pattern";
  const rolls = stocks.filter((stock) => stock.kind === "roll");
  const tooNarrow = rolls.every((roll) => !fitsBox(extents, { ...roll, length: null }, margin));
  return rolls.length > 0 && tooNarrow ? "too-long-for-width" : "too-large-for-stock";
}

/** Whether a line of the pattern leaves room for a piece on one of the stocks that are large enough for it. */
function hasRoom(problem: LayProblem, piece: LayPiece, taking: readonly Stock[]): boolean {
  // Of leftovers with their lines the outline says where there is room; those without are not for what is matched.
  return taking.some(
    (stock) => stock.kind !== "roll" || isWideEnough(stock, widthOnPattern(piece, stock, problem)),
  );
}

/** Left-out copies by piece, with reasons, in the order of the pieces. */
export function unplacedOf(problem: LayProblem, left: readonly number[], reason: ReasonOf): Unplaced[] {
  return problem.pieces.flatMap(({ id }, i) =>
    left[i]! > 0 ? [{ pieceId: id, count: left[i]!, reason: reason(i) }] : [],
  );
}
