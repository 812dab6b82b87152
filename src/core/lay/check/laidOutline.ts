import type { Pose } from "../../geometry/pose.ts";
import type { Polygon, Ring } from "../../geometry/ring.ts";
import type { Stock, StockPlacement } from "../problem/layProblem.ts";

/**
 * An outline where it lies, as the checker sees it: edges only, in no order. Inside and outside are told by
 * counting edges crossed (even-odd), so the winding of rings does not matter and holes need no care.
 */
export interface LaidOutline {
  /** Edges as `[x1, y1, x2, y2, …]` with x1 ≤ x2. */
  readonly edges: Float64Array;
  /** Area between the rings, holes taken off. */
  readonly area: number;
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/** Puts a polygon at a pose with the checker's own arithmetic: mirrored in y, turned, shifted. O(vertices). */
export function laidOutline(polygon: Polygon, pose: Pose): LaidOutline {
  const rings = [polygon.outer, ...polygon.holes].map((ring) => laidRing(ring, pose));
  const edges = new Float64Array(rings.reduce((sum, ring) => sum + ring.length * 2, 0));
  let minX = Infinity;
  let minY = Infinity;
  let maxX = -Infinity;
  let maxY = -Infinity;
  let at = 0;
  let area = 0;
  for (const [index, ring] of rings.entries()) {
    const n = ring.length;
    let twice = 0;
    for (let i = 0; i < n; i += 2) {
      const j = (i + 2) % n;
      const [x1, y1, x2, y2] = [ring[i]!, ring[i + 1]!, ring[j]!, ring[j + 1]!];
      edges.set(x1 <= x2 ? [x1, y1, x2, y2] : [x2, y2, x1, y1], at);
      at += 4;
      // Measured from the first vertex, so that a shift far from the origin costs no digits.
      twice += (x1 - ring[0]!) * (y2 - ring[1]!) - (x2 - ring[0]!) * (y1 - ring[1]!);
      minX = Math.min(minX, x1);
      maxX = Math.max(maxX, x1);
      minY = Math.min(minY, y1);
      maxY = Math.max(maxY, y1);
    }
    area += (index === 0 ? 0.5 : -0.5) * Math.abs(twice);
  }
  return { edges, area, minX, minY, maxX, maxY };
}

function laidRing(ring: Ring, pose: Pose): Float64Array {
  const quarter = (((pose.turnDeg / 90) % 4) + 4) % 4;
  const angle = (pose.turnDeg / 180) * Math.PI;
  const cos = Number.isInteger(quarter) ? [1, 0, -1, 0][quarter]! : Math.cos(angle);
  const sin = Number.isInteger(quarter) ? [0, 1, 0, -1][quarter]! : Math.sin(angle);
  const out = new Float64Array(ring.length);
  for (let i = 0; i < ring.length; i += 2) {
    const px = pose.mirrored ? -ring[i]! : ring[i]!;
    const py = ring[i + 1]!;
    out[i] = pose.x + (px * cos - py * sin);
    out[i + 1] = pose.y + (px * sin + py * cos);
  }
  return out;
}

/** One placement of a plan with its outline where it lies. */
export interface CheckedCopy {
  /** Place in the plan, e.g. `placements[3]`. */
  readonly path: string;
  readonly placement: StockPlacement;
  readonly stock: Stock;
  readonly outline: LaidOutline;
}

/** Names the copy in a finding. */
export function copyName({ placement }: CheckedCopy): { pieceId: string; copy: number } {
  return { pieceId: placement.pieceId, copy: placement.copy };
}
