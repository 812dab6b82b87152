import { type Pose, turnCosSin } from "../../../core/geometry/pose.ts";
import type { PieceKind } from "./pieceKind.ts";

/** How far a stock lies along and up from its own frame, mm. */
export interface Offset {
  readonly offsetX: number;
  readonly offsetY: number;
}

export const HERE: Offset = { offsetX: 0, offsetY: 0 };

/** SVG matrix of a pose on the table: mirrored in its own y axis, turned, moved. */
export function poseMatrix(pose: Pose, { offsetX, offsetY }: Offset = HERE): string {
  const [c, s] = turnCosSin(pose.turnDeg);
  const flip = pose.mirrored ? -1 : 1;
  return `matrix(${flip * c} ${flip * s} ${-s} ${c} ${pose.x + offsetX} ${pose.y + offsetY})`;
}

/** Matrix of a label inside its piece, so that it reads from the left or from below whatever way the piece lies. */
export function labelMatrix(pose: Pose, kind: PieceKind, upright: boolean): string {
  const flip = pose.mirrored ? -1 : 1;
  // Angle of the piece's longer side as it is seen on the screen.
  const lies = pose.turnDeg + (kind.across > kind.along ? 90 : 0) - (upright ? 90 : 0);
  const own = readable(lies) - (pose.turnDeg - (upright ? 90 : 0));
  const [c, s] = turnCosSin(own);
  return `matrix(${flip * c} ${s} ${flip * s} ${-c} ${kind.middleX} ${kind.middleY})`;
}

/** The same direction, turned by half a turn where it would stand on its head. */
function readable(degrees: number): number {
  const turn = ((degrees % 360) + 360) % 360;
  return turn > 90 && turn <= 270 ? turn - 180 : turn > 270 ? turn - 360 : turn;
}

/** Arrow along the piece's own x axis, clear of its label: below it on a long piece, at the foot of an upright one. */
export function grainArrow(kind: PieceKind, size: number, grain: "both" | "one-way"): string {
  const isLong = kind.along >= kind.across;
  const half = Math.min(kind.along * 0.3, isLong ? Math.max(40, size * 3) : Infinity);
  const y = kind.middleY - (isLong ? Math.min(size * 1.25, kind.across * 0.4) : kind.across * 0.4);
  const head = Math.min(half * 0.3, size * 0.35, kind.across * 0.12);
  const [left, right] = [kind.middleX - half, kind.middleX + half];
  const tip = `M${right - head} ${y + head / 2}L${right} ${y}L${right - head} ${y - head / 2}`;
  const tail =
    grain === "both" ? `M${left + head} ${y + head / 2}L${left} ${y}L${left + head} ${y - head / 2}` : "";
  return `M${left} ${y}H${right}${tip}${tail}`;
}

/** The end of an open roll, torn as it comes from the shelf. */
export function tornEdge(x: number, width: number): string {
  const steps = 24;
  let path = `M${x} 0`;
  for (let i = 1; i <= steps; i++) path += `L${x + (i % 2 === 0 ? 0 : width * 0.012)} ${(i * width) / steps}`;
  return path;
}
