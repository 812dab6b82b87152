import { RING, RING_CORNERS, RING_OTHERS } from "../../core/patterns/photoSheet.ts";
import { type Homography, homographyOf, mapByHomography, type PointPair } from "./homography.ts";

type Point = readonly [number, number];

/** How a picture lies on the table by the rings of our photo sheet. */
export interface MarkedLie {
  /** From pixels to mm from the middle of the sheet, y up. */
  readonly map: Homography;
  /** Furthest that a ring lies from where the map puts it, mm: what the lens and the printer do. */
  readonly offMm: number;
}

/** A ring's middle may lie so far from where four others put it, mm. */
const NEAR = 4;

/**
 * Finds the rings among the traced edges of a picture: a ring and a dot about one middle. The middle is where those of
 * its three circles tend to as they get smaller, since a circle seen aslant has its middle beside the true one by a
 * distance that grows with its area. Null when fewer than six of the seven are seen.
 *
 * Units: pixels in, mm out. Cost: O(edges²) of those as round as a ring.
 */
export function photoMarks(edges: readonly Float64Array[]): MarkedLie | null {
  const rings = ringsAmong(edges);
  if (rings.length < 6) return null;
  let best: { pairs: PointPair[] } | null = null;
  for (const corners of fours(rings)) {
    for (let turn = 0; turn < 4; turn++) {
      const four = corners.map((from, i): PointPair => ({ from, to: RING_CORNERS[(i + turn) % 4]! }));
      const map = homographyOf(four);
      if (map === null) continue;
      const others = RING_OTHERS.flatMap((to): PointPair[] => {
        const from = rings.find(
          (ring) => !corners.includes(ring) && apart(mapByHomography(map, ...ring), to) < NEAR,
        );
        return from === undefined ? [] : [{ from, to }];
      });
      if (others.length < 2 || others.length + 4 <= (best?.pairs.length ?? 0)) continue;
      best = { pairs: [...four, ...others] };
    }
  }
  const map = best && homographyOf(best.pairs);
  if (!best || !map) return null;
  return { map, offMm: Math.max(...best.pairs.map(({ from, to }) => apart(mapByHomography(map, ...from), to))) };
}

interface Loop {
  readonly area: number;
  readonly x: number;
  readonly y: number;
}

/** Middles of what looks like a ring with a dot, in pixels. */
function ringsAmong(edges: readonly Float64Array[]): Point[] {
  const loops = edges.filter(isRound).map(loopOf);
  return loops.flatMap((outer): Point[] => {
    const size = Math.sqrt(Math.abs(outer.area));
    const about = loops.filter(({ x, y }) => Math.hypot(x - outer.x, y - outer.y) < 0.12 * size);
    const inner = about.find((one) => isShare(-one.area / outer.area, RING.inner));
    const dot = about.find((one) => isShare(one.area / outer.area, RING.dot));
    return inner && dot ? [towardsNothing([outer, inner, dot])] : [];
  });
}

/** Whether the area of a circle of this radius is that share of the ring's, as far as a blurred edge lets it be. */
function isShare(share: number, radius: number): boolean {
  const wanted = (radius / RING.outer) ** 2;
  return share > 0.6 * wanted && share < 1.5 * wanted;
}

/** Whether a loop covers as much of its box as an ellipse does, aslant or not. */
function isRound(edge: Float64Array): boolean {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let i = 0; i < edge.length; i += 2) {
    minX = Math.min(minX, edge[i]!);
    maxX = Math.max(maxX, edge[i]!);
    minY = Math.min(minY, edge[i + 1]!);
    maxY = Math.max(maxY, edge[i + 1]!);
  }
  const fill = Math.abs(loopOf(edge).area) / ((maxX - minX) * (maxY - minY));
  return fill > 0.45 && fill < 0.82;
}

/** Area and its middle; the area is negative where the loop runs the other way round. */
function loopOf(edge: Float64Array): Loop {
  let [twice, x, y] = [0, 0, 0];
  const [x0, y0] = [edge[0]!, edge[1]!];
  for (let i = 0, j = edge.length - 2; i < edge.length; j = i, i += 2) {
    const [ax, ay, bx, by] = [edge[j]! - x0, edge[j + 1]! - y0, edge[i]! - x0, edge[i + 1]! - y0];
    const cross = ax * by - bx * ay;
    twice += cross;
    x += (ax + bx) * cross;
    y += (ay + by) * cross;
  }
  return { area: twice / 2, x: x0 + x / (3 * twice), y: y0 + y / (3 * twice) };
}

/** Where the middles of circles about one point tend to as their area goes to nothing: a straight line through them. */
function towardsNothing(loops: readonly Loop[]): Point {
  const areas = loops.map(({ area }) => Math.abs(area));
  const mean = areas.reduce((sum, area) => sum + area, 0) / loops.length;
  const spread = areas.reduce((sum, area) => sum + (area - mean) ** 2, 0);
  const at = (values: readonly number[]): number => {
    const middle = values.reduce((sum, value) => sum + value, 0) / values.length;
    const slope = values.reduce((sum, value, i) => sum + (value - middle) * (areas[i]! - mean), 0) / spread;
    return middle - slope * mean;
  };
  return [at(loops.map(({ x }) => x)), at(loops.map(({ y }) => y))];
}

/** Every four of the rings that stand as corners round others, clockwise as seen. */
function* fours(rings: readonly Point[]): Generator<Point[]> {
  const n = Math.min(rings.length, 12);
  for (let a = 0; a < n; a++)
    for (let b = a + 1; b < n; b++)
      for (let c = b + 1; c < n; c++)
        for (let d = c + 1; d < n; d++) {
          const four = [rings[a]!, rings[b]!, rings[c]!, rings[d]!];
          const x = four.reduce((sum, point) => sum + point[0], 0) / 4;
          const y = four.reduce((sum, point) => sum + point[1], 0) / 4;
          // Angles grow clockwise where y runs down.
          yield four.sort((p, q) => Math.atan2(p[1] - y, p[0] - x) - Math.atan2(q[1] - y, q[0] - x));
        }
}

function apart(a: Point, b: Point): number {
  return Math.hypot(a[0] - b[0], a[1] - b[1]);
}
