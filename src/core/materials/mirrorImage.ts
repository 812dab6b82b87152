import { contourBox, poseContour } from "../geometry/contourArcs.ts";
import { type Pose, posePolygon } from "../geometry/pose.ts";
import type { CutPiece } from "./cutPiece.ts";

/** Id of the mirror images of a piece, where they are laid and drawn as pieces of their own. */
export function mirrorImageId(pieceId: string): string {
  return `${pieceId}~mirrored`;
}

/**
 * The mirror images a piece asks for as a piece of its own: the outline and every line mirrored left to right in
 * the piece's frame, lower-left corner of the box at the origin again. Null when none are asked for.
 */
export function mirrorImage(piece: CutPiece): CutPiece | null {
  if (piece.mirroredCount === 0) return null;
  const box = contourBox(piece.contour);
  const pose: Pose = { mirrored: true, turnDeg: 0, x: box.minX + box.maxX, y: 0 };
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
