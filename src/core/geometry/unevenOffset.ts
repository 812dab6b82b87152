import { differenceOf, unionOf } from "./clipper.ts";
import type { Contour } from "./contour.ts";
import { contourEdges, flattenContour } from "./contourArcs.ts";
import { type CornerEnd, cornerEnds, type Vector } from "./cornerEnds.ts";
import { type Polygon, type Ring, signedArea } from "./ring.ts";

const MITRED: CornerEnd = { kind: "mitred" };

interface FlatEdge {
  readonly from: Vector;
  readonly to: Vector;
  readonly direction: Vector;
  readonly width: number;
}

/**
 * A contour grown by a band beside each edge as wide as that edge says, or less such bands inside it where widths are
 * negative; corners mitred. Arcs become chords within 0.01 mm.
 *
 * Shapes: contour closed, counter-clockwise, simple; polygons come back, none when nothing is left.
 * Cost:   O(n log n) and as many bands as flattened edges.
 */
export function unevenOffset(contour: Contour, widths: readonly number[]): Polygon[] {
  const edges = flatEdges(contour, widths);
  const ring = Float64Array.from(edges.flatMap(({ from }) => from));
  const bands = edges.flatMap((edge, i) => [band(edge), wedge(edges.at(i - 1)!, edge)]).filter(isSome);
  return widths.some((width) => width < 0) ? differenceOf([ring], bands) : unionOf([ring, ...bands]);
}

function flatEdges(contour: Contour, widths: readonly number[]): FlatEdge[] {
  return contourEdges(contour).flatMap((edge, i) => {
    const one = { vertices: Float64Array.of(edge.x0, edge.y0, edge.bulge, edge.x1, edge.y1, 0), closed: false };
    const points = flattenContour(one);
    return Array.from({ length: points.length / 2 - 1 }, (_, k): FlatEdge => {
      const from: Vector = [points[2 * k]!, points[2 * k + 1]!];
      const to: Vector = [points[2 * k + 2]!, points[2 * k + 3]!];
      const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
      return { from, to, direction: [(to[0] - from[0]) / length, (to[1] - from[1]) / length], width: widths[i]! };
    });
  });
}

/** The strip beside an edge, counter-clockwise. */
function band({ from, to, direction: [x, y], width }: FlatEdge): Ring | null {
  if (width === 0) return null;
  const [dx, dy] = [y * width, -x * width];
  return turned(Float64Array.of(...from, from[0] + dx, from[1] + dy, to[0] + dx, to[1] + dy, ...to));
}

/** What lies between two strips at a corner that opens towards them. */
function wedge(before: FlatEdge, after: FlatEdge): Ring | null {
  const points = cornerEnds(
    {
      at: after.from,
      from: before.direction,
      to: after.direction,
      before: before.width,
      after: after.width,
      bentBefore: true,
      bentAfter: true,
    },
    MITRED,
  );
  return points === null || points.length < 2 ? null : turned(Float64Array.from([...after.from, ...points.flat()]));
}

function turned(ring: Ring): Ring | null {
  const area = signedArea(ring);
  if (Math.abs(area) < 1e-9) return null;
  if (area > 0) return ring;
  const out: number[] = [];
  for (let i = ring.length - 2; i >= 0; i -= 2) out.push(ring[i]!, ring[i + 1]!);
  return Float64Array.from(out);
}

const isSome = <T>(value: T | null): value is T => value !== null;
