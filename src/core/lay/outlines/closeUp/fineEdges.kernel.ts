import type { SumRing } from "../compile/sumRings.ts";
import { EDGE } from "../noFit/gridEdges.kernel.ts";

/** Loose edges of a no-fit polygon near one shift; `edges` grows when it must. */
export interface FineEdges {
  edges: Float64Array;
  count: number;
}

export function fineEdges(): FineEdges {
  return { edges: new Float64Array(64 * EDGE), count: 0 };
}

function add(out: FineEdges, x: number, y: number, dx: number, dy: number): void {
  const length = Math.sqrt(dx * dx + dy * dy);
  if (length === 0) return;
  if (out.count * EDGE === out.edges.length) {
    const bigger = new Float64Array(2 * out.edges.length);
    bigger.set(out.edges);
    out.edges = bigger;
  }
  const o = EDGE * out.count++;
  out.edges[o] = x;
  out.edges[o + 1] = y;
  out.edges[o + 2] = dx / length;
  out.edges[o + 3] = dy / length;
  out.edges[o + 4] = length;
  out.edges[o + 5] = 0;
}

/** Edges of `edged`, taken `sign` times, on left-turning corners of `cornered`, taken −`sign` times, near (x, y). */
function addNear(
  out: FineEdges,
  cornered: SumRing,
  edged: SumRing,
  sign: 1 | -1,
  x: number,
  y: number,
  within: number,
): void {
  for (let i = 0; i < cornered.count; i++) {
    if (cornered.isConvex[i] === 0) continue;
    const before = i === 0 ? cornered.count - 1 : i - 1;
    const after = i === cornered.count - 1 ? 0 : i + 1;
    const cx = cornered.x[i]!;
    const cy = cornered.y[i]!;
    const ux = -sign * (cx - cornered.x[before]!);
    const uy = -sign * (cy - cornered.y[before]!);
    const vx = -sign * (cornered.x[after]! - cx);
    const vy = -sign * (cornered.y[after]! - cy);
    const lowX = sign * (x - within) + cx;
    const highX = sign * (x + within) + cx;
    const lowY = sign * (y - within) + cy;
    const highY = sign * (y + within) + cy;
    const minX = Math.min(lowX, highX);
    const maxX = Math.max(lowX, highX);
    const minY = Math.min(lowY, highY);
    const maxY = Math.max(lowY, highY);
    for (let j = 0; j < edged.count; j++) {
      const k = j === edged.count - 1 ? 0 : j + 1;
      const ax = edged.x[j]!;
      const ay = edged.y[j]!;
      const bx = edged.x[k]!;
      const by = edged.y[k]!;
      if ((ax < minX && bx < minX) || (ax > maxX && bx > maxX)) continue;
      if ((ay < minY && by < minY) || (ay > maxY && by > maxY)) continue;
      const dx = sign * (bx - ax);
      const dy = sign * (by - ay);
      // Edges that lie flush with the corner's own count as well: they bound the room all the same.
      if (ux * dy - uy * dx < 0 || dx * vy - dy * vx < 0) continue;
      add(out, sign * (ax - cx), sign * (ay - cy), dx, dy);
    }
  }
}

/**
 * What can bound the no-fit polygon of `moving` about `resting` near the shift (x, y): every edge of the one on a
 * left-turning corner of the other that comes within the square of half side `within`. The polygon's outline there is
 * part of them; the others lie inside it, behind the outline as seen from a free shift.
 * Cost: O(n·m), a few ns each.
 */
export function edgesNear(
  out: FineEdges,
  resting: SumRing,
  moving: SumRing,
  x: number,
  y: number,
  within: number,
): void {
  out.count = 0;
  addNear(out, moving, resting, 1, x, y, within);
  addNear(out, resting, moving, -1, x, y, within);
}
