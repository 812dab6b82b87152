import { ringBox } from "../../geometry/box.ts";
import { poseRing } from "../../geometry/pose.ts";
import type { LayPiece, Stock } from "./layProblem.ts";
import { stockRegion } from "./stockRegion.ts";

/** Turns tried for a piece that may lie any way round. */
const FREE_TURNS = 180;

/** Room a piece takes along and across the cloth in one of its turns, mm. */
export interface Extent {
  readonly along: number;
  readonly across: number;
}

/** Shares of a piece's tilt at which it is measured. */
const TILTS = [0, 0.25, 0.5, 0.75, 1];

function tiltsOf({ tilt = 0 }: LayPiece): readonly number[] {
  return tilt === 0 ? [0] : TILTS.flatMap((share) => [share * tilt, -share * tilt]);
}

/**
 * Room of a piece in each turn it may take; one free to turn is measured by whole degrees, one that may lie a little
 * off by quarters of that.
 */
export function pieceExtents(piece: LayPiece): readonly Extent[] {
  const turns = piece.freeTurn
    ? Array.from({ length: FREE_TURNS }, (_, turnDeg) => ({ turnDeg, mirrored: false }))
    : piece.orientations.flatMap(({ turnDeg, mirrored }) =>
        tiltsOf(piece).map((off) => ({ turnDeg: turnDeg + off, mirrored })),
      );
  return turns.map((orientation) => {
    const box = ringBox(poseRing(piece.outline.outer, { ...orientation, x: 0, y: 0 }));
    return { along: box.maxX - box.minX, across: box.maxY - box.minY };
  });
}

/** Whether the box of a piece in one of its turns fits the box of a stock inside the margin. */
export function fitsBox(extents: readonly Extent[], stock: Stock, margin: number): boolean {
  const { width, length } = stockRegion(stock).region;
  // Cut sizes that come from inches or fold sums may end a rounding above a roll of the very same width.
  const slack = 1e-9 * width;
  return extents.some(
    ({ along, across }) =>
      across <= width - 2 * margin + slack && along <= (length ?? Infinity) - 2 * margin + slack,
  );
}
