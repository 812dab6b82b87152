import { contourBox, poseContour } from "../geometry/contourArcs.ts";
import { type Pose, posePolygon } from "../geometry/pose.ts";
import type { CutPiece } from "./cutPiece.ts";

/** Id of the mirror images of a piece, where they are laid and drawn as pieces of their own. */
export function mirrorImageId(pieceId: string): string {
  return `${pieceId}~mirrored`;
}

/**
 * The mirror images a piece asks for as a piece of its own: the outline and every line mirrored across the grain
 * arrow, lower-left corner of the box at the origin again. Null when none are asked for.
 *
 * The arrow itself keeps its way, as it does when a second layer lies face to face with the first: a left and a right
 * side of velvet have their pile the same way up. Source: geometry of a reflection in the line of the arrow.
 */
export function mirrorImage(piece: CutPiece): CutPiece | null {
  if (piece.mirroredCount === 0) return null;
  const box = contourBox(piece.contour);
  const pose: Pose = { mirrored: true, turnDeg: 180, x: 0, y: box.minY + box.maxY };
  return {
    ...piece,
    id: mirrorImageId(piece.id),
    contour: poseContour(piece.contour, pose),
    outline: posePolygon(piece.outline, pose),
    lines: piece.lines.map((line) => ({ ...line, contour: poseContour(line.contour, pose) })),
    count: piece.mirroredCount,
    mirroredCount: 0,
  };
}
