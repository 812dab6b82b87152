import type { LaidOutline } from "./laidOutline.ts";

/**
 * Least distance between the edges of two outlines if it is below `reach`, else `reach`. Edges that cross or touch
 * are 0 apart; one outline wholly inside another counts by its edges. O(edges near the other outline, squared).
 */
export function outlineDistance(a: LaidOutline, b: LaidOutline, reach: number): number {
  const nearA = edgesNear(a, b, reach);
  const nearB = edgesNear(b, a, reach);
  let least = reach;
  for (let i = 0; i < nearA.length; i += 4) {
    const [ax1, ay1, ax2, ay2] = [nearA[i]!, nearA[i + 1]!, nearA[i + 2]!, nearA[i + 3]!];
    const low = Math.min(ay1, ay2);
    const high = Math.max(ay1, ay2);
    for (let j = 0; j < nearB.length; j += 4) {
      const bx1 = nearB[j]!;
      const by1 = nearB[j + 1]!;
      const bx2 = nearB[j + 2]!;
      const by2 = nearB[j + 3]!;
      if (bx1 - ax2 >= least || ax1 - bx2 >= least) continue;
      if (Math.min(by1, by2) - high >= least || low - Math.max(by1, by2) >= least) continue;
      if (crossing(ax1, ay1, ax2, ay2, bx1, by1, bx2, by2)) return 0;
      least = Math.min(
        least,
        pointToSegment(ax1, ay1, bx1, by1, bx2, by2),
        pointToSegment(ax2, ay2, bx1, by1, bx2, by2),
        pointToSegment(bx1, by1, ax1, ay1, ax2, ay2),
        pointToSegment(bx2, by2, ax1, ay1, ax2, ay2),
      );
    }
  }
  return least;
}

/** Edges of one outline whose box is within `reach` of the other's box. */
function edgesNear(outline: LaidOutline, other: LaidOutline, reach: number): number[] {
  const { edges } = outline;
  const out: number[] = [];
  for (let i = 0; i < edges.length; i += 4) {
    const [x1, y1, x2, y2] = [edges[i]!, edges[i + 1]!, edges[i + 2]!, edges[i + 3]!];
    if (x1 - other.maxX >= reach || other.minX - x2 >= reach) continue;
    if (Math.min(y1, y2) - other.maxY >= reach || other.minY - Math.max(y1, y2) >= reach) continue;
    out.push(x1, y1, x2, y2);
  }
  return out;
}

function pointToSegment(px: number, py: number, x1: number, y1: number, x2: number, y2: number): number {
  const dx = x2 - x1;
  const dy = y2 - y1;
  const squared = dx * dx + dy * dy;
  const along = squared === 0 ? 0 : Math.min(1, Math.max(0, ((px - x1) * dx + (py - y1) * dy) / squared));
  return Math.hypot(px - x1 - along * dx, py - y1 - along * dy);
}

/** True when two segments cross inside both; mere touching is found by the point distances. */
function crossing(
  ax1: number,
  ay1: number,
  ax2: number,
  ay2: number,
  bx1: number,
  by1: number,
  bx2: number,
  by2: number,
): boolean {
  const side = (px: number, py: number, x1: number, y1: number, x2: number, y2: number): number =>
    (x2 - x1) * (py - y1) - (y2 - y1) * (px - x1);
  return (
    side(ax1, ay1, bx1, by1, bx2, by2) * side(ax2, ay2, bx1, by1, bx2, by2) < 0 &&
    side(bx1, by1, ax1, ay1, ax2, ay2) * side(bx2, by2, ax1, ay1, ax2, ay2) < 0
  );
}
