import type { Contour } from "./contour.ts";
import type { Ring } from "./ring.ts";

/** Straight line through points `[x0, y0, x1, y1, …]`; `closed` joins the last to the first. */
export function straightContour(points: ArrayLike<number>, closed = false): Contour {
  const count = points.length / 2;
  const vertices = new Float64Array(count * 3);
  for (let i = 0; i < count; i++) {
    vertices[3 * i] = points[2 * i]!;
    vertices[3 * i + 1] = points[2 * i + 1]!;
  }
  return { vertices, closed };
}

/** Closed contour of a ring. */
export function ringContour(ring: Ring): Contour {
  return straightContour(ring, true);
}

/** One straight segment. */
export function segmentContour(x0: number, y0: number, x1: number, y1: number): Contour {
  return straightContour([x0, y0, x1, y1]);
}

/** Axis-parallel rectangle with its lower-left corner at (x, y), counter-clockwise. */
export function rectangleContour(x: number, y: number, width: number, height: number): Contour {
  return straightContour([x, y, x + width, y, x + width, y + height, x, y + height], true);
}

/** Full circle of two half-turn arcs, counter-clockwise. */
export function circleContour(x: number, y: number, radius: number): Contour {
  return { vertices: Float64Array.of(x - radius, y, 1, x + radius, y, 1), closed: true };
}
