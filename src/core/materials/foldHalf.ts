import { ringBox } from "../geometry/box.ts";
import type { Contour } from "../geometry/contour.ts";
import { contourBox, flattenContour, poseContour } from "../geometry/contourArcs.ts";
import { segmentContour, straightContour } from "../geometry/contourShapes.ts";
import { halfContour } from "../geometry/halfContour.ts";
import type { Pose } from "../geometry/pose.ts";
import { type Ring, solid } from "../geometry/ring.ts";
import type { CutPiece } from "./cutPiece.ts";
import { isMirrored } from "./symmetry.ts";

/** Which way the line runs along which a piece is its own mirror image: with its grain arrow or across it. */
export type FoldWay = "along" | "across";

/** Id of the half of a piece that is laid on the fold of the cloth. */
function foldHalfId(pieceId: string, way: FoldWay): string {
  return way === "along" ? `${pieceId}~fold` : `${pieceId}~fold-across`;
}

/**
 * Half a piece as it lies on the fold of a cloth folded lengthwise: the fold edge at y = 0 along x, the half above it.
 * Its contour's closing edge is the fold; it is not cut. `across` turns the piece a quarter, so that it lies with its
 * arrow across the cloth.
 *
 * Null where the halves differ, or the line meets the outline more than twice.
 * Units: mm. Cost: O(points), after the test whether the halves are alike.
 */
export function foldHalf(piece: CutPiece, way: FoldWay): CutPiece | null {
  if (piece.outline.holes.length > 0 || !isMirrored(piece, way)) return null;
  const turned = way === "along" ? AS_IT_LIES : QUARTER;
  const contour = poseContour(piece.contour, turned);
  const box = contourBox(contour);
  const middle = (box.minY + box.maxY) / 2;
  const half = halfContour(contour, middle);
  if (half === null) return null;
  const halfBox = contourBox(half);
  const down: Pose = { x: -halfBox.minX, y: -middle, turnDeg: 0, mirrored: false };
  const placed = poseContour(half, down);
  const { vertices } = placed;
  const fold = segmentContour(vertices.at(-3)!, 0, vertices[0]!, 0);
  return {
    ...piece,
    id: foldHalfId(piece.id, way),
    contour: placed,
    outline: solid(flattenContour(placed)),
    foldEdge: true,
    lines: [
      { role: "fold", contour: fold, note: "fold" },
      ...piece.lines.flatMap((line) =>
        upperParts(poseContour(poseContour(line.contour, turned), down)).map((part) => ({
          ...line,
          contour: part,
        })),
      ),
    ],
    count: piece.count + piece.mirroredCount,
    mirroredCount: 0,
  };
}

const AS_IT_LIES: Pose = { x: 0, y: 0, turnDeg: 0, mirrored: false };
const QUARTER: Pose = { x: 0, y: 0, turnDeg: 90, mirrored: false };
/** Nearer to the fold than this, a line runs along it, mm. */
const ON_FOLD = 1e-3;

/** What of a line lies above the fold, arcs as chords; a line along the fold is the fold itself. */
function upperParts(contour: Contour): Contour[] {
  const ring = flattenContour(contour);
  const box = ringBox(ring);
  if (box.maxY <= ON_FOLD) return [];
  if (box.minY >= -ON_FOLD) return [contour];
  const points = contour.closed ? Float64Array.of(...ring, ring[0]!, ring[1]!) : ring;
  return runsAbove(points).map((run) => straightContour(run));
}

function runsAbove(points: Ring): number[][] {
  const runs: number[][] = [];
  let run: number[] = [];
  const close = (): void => {
    if (run.length >= 4) runs.push(run);
    run = [];
  };
  for (let i = 0; i + 1 < points.length; i += 2) {
    const [x, y] = [points[i]!, points[i + 1]!];
    if (i > 0 && points[i - 1]! > 0 !== y > 0) {
      const at = points[i - 1]! / (points[i - 1]! - y);
      run.push(points[i - 2]! + at * (x - points[i - 2]!), 0);
      if (y <= 0) close();
    }
    if (y > 0) run.push(x, y);
  }
  close();
  return runs;
}
