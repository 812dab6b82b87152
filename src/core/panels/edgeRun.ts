import type { Contour } from "../geometry/contour.ts";
import { type ContourEdge, contourEdges } from "../geometry/contourArcs.ts";
import { edgeLength } from "../geometry/contourEdgeLengths.ts";
import type { EdgeRef } from "./panel.ts";
import type { NamedEdge } from "./shapes/shapeRecord.ts";

/** Neighbouring edges of a contour: the first one's number, and how many there are. */
export interface EdgeRun {
  readonly first: number;
  readonly count: number;
}

interface Outline {
  readonly contour: Contour;
  readonly edges: readonly NamedEdge[];
}

/** The contour edges that a number or a name stands for; null when there is no such edge. */
export function edgeRun({ contour, edges }: Outline, ref: EdgeRef): EdgeRun | null {
  const total = contour.vertices.length / 3;
  if (typeof ref === "number") return ref >= 0 && ref < total ? { first: ref, count: 1 } : null;
  const i = edges.findIndex(({ name }) => name === ref);
  if (i < 0) return null;
  const first = edges[i]!.start;
  const next = edges[(i + 1) % edges.length]!.start;
  return { first, count: ((next - first + total - 1) % total) + 1 };
}

/** The edges of a run, in order. */
function edgesOfRun(contour: Contour, { first, count }: EdgeRun): ContourEdge[] {
  const all = contourEdges(contour);
  return Array.from({ length: count }, (_, i) => all[(first + i) % all.length]!);
}

/** Length along a run, mm. */
export function runLength(contour: Contour, run: EdgeRun): number {
  return edgesOfRun(contour, run).reduce((sum, edge) => sum + edgeLength(edge), 0);
}

/** The contour edge that lies `at` mm along a run, and how far along that edge; the last one's end when beyond. */
export function placeOnRun(
  contour: Contour,
  run: EdgeRun,
  at: number,
): { readonly edge: number; readonly at: number } {
  const edges = edgesOfRun(contour, run);
  const total = contour.vertices.length / 3;
  let rest = at;
  for (const [i, edge] of edges.entries()) {
    const length = edgeLength(edge);
    if (rest <= length || i === edges.length - 1)
      return { edge: (run.first + i) % total, at: Math.max(0, Math.min(rest, length)) };
    rest -= length;
  }
  throw new RangeError("placeOnRun: a run of at least one edge was expected");
}
