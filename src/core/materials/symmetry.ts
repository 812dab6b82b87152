import { ringBox } from "../geometry/box.ts";
import { sharedArea } from "../geometry/clipper.ts";
import { flattenContour } from "../geometry/contourArcs.ts";
import { type Pose, posePolygon, poseRing } from "../geometry/pose.ts";
import { polygonArea, type Ring } from "../geometry/ring.ts";
import type { CutPiece } from "./cutPiece.ts";
import type { AllowedTurns } from "./orientations.ts";

/** Share of its area by which a piece may differ from its mirror image: less than a notch of a millimetre takes. */
const SAME_SHARE = 1e-5;
/** How far notches and marks may be from each other's mirror image, mm. */
const SAME_PLACE = 0.1;

/**
 * Whether a piece is its own mirror image across a line with its grain arrow (`along`) or across it, notches and marks
 * included. Lines that only say how a strip is folded or sewn may differ: they are marked piece by piece.
 */
export function isMirrored(piece: Pick<CutPiece, "outline" | "lines">, way: "along" | "across"): boolean {
  const box = ringBox(piece.outline.outer);
  const pose: Pose =
    way === "along"
      ? { mirrored: true, turnDeg: 180, x: 0, y: box.minY + box.maxY }
      : { mirrored: true, turnDeg: 0, x: box.minX + box.maxX, y: 0 };
  const area = polygonArea(piece.outline);
  if (sharedArea(piece.outline, posePolygon(piece.outline, pose)) < (1 - SAME_SHARE) * area) return false;
  const marks = piece.lines.filter(({ role, note, text }) => (role === "mark" || note === "notch") && !text);
  const places = marks.map(({ contour }) => middleOf(flattenContour(contour)));
  return marks.every(({ contour }) => {
    const [x, y] = middleOf(poseRing(flattenContour(contour), pose));
    return places.some(([px, py]) => Math.hypot(px - x, py - y) <= SAME_PLACE);
  });
}

/** Whether a piece that comes out mirrored is as good as one that does not, turned as its cloth allows. */
export function isEitherHand(piece: CutPiece, turns: AllowedTurns): boolean {
  if (isMirrored(piece, "along")) return true;
  const halfTurn = turns.orientations.some(({ turnDeg: a }) =>
    turns.orientations.some(({ turnDeg: b }) => Math.abs(a - b) === 180),
  );
  return (turns.freeTurn || halfTurn) && isMirrored(piece, "across");
}

function middleOf(ring: Ring): readonly [number, number] {
  const box = ringBox(ring);
  return [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2];
}
