import type { Contour } from "./contour.ts";
import { flattenContour } from "./contourArcs.ts";
import { firstCrossing } from "./crossing.ts";
import type { Ring } from "./ring.ts";

/** Two edges of an outline that meet where they should not, by number, and about where, mm. */
export interface ContourCrossing {
  readonly edges: readonly [number, number];
  readonly x: number;
  readonly y: number;
}

/** The first place where an outline crosses or touches itself, arcs to within 0.01 mm; null when it is simple. O(n²). */
export function contourCrossing(contour: Contour): ContourCrossing | null {
  const ring = flattenContour(contour);
  const crossing = firstCrossing(ring);
  if (crossing === null) return null;
  const edges = [edgeOf(contour, ring, crossing.first), edgeOf(contour, ring, crossing.second)] as const;
  return { edges, x: crossing.x, y: crossing.y };
}

/** Index of the contour edge that a flattened edge came from. */
function edgeOf(contour: Contour, ring: Ring, flat: number): number {
  let edge = -1;
  for (let i = 0; i <= flat; i++) {
    const next = 3 * (edge + 1);
    if (ring[2 * i] === contour.vertices[next] && ring[2 * i + 1] === contour.vertices[next + 1]) edge++;
  }
  return edge;
}

/** The same outline walked the other way; arcs stay where they are. */
export function turnedRound({ vertices, closed }: Contour): Contour {
  const n = vertices.length / 3;
  const out = new Float64Array(vertices.length);
  for (let i = 0; i < n; i++) {
    const from = (n - i) % n;
    out[3 * i] = vertices[3 * from]!;
    out[3 * i + 1] = vertices[3 * from + 1]!;
    out[3 * i + 2] = -vertices[3 * ((from + n - 1) % n) + 2]! || 0;
  }
  return { vertices: out, closed };
}
