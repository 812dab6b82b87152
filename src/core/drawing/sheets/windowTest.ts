import { type Box, boxesMeet, ringBox } from "../../geometry/box.ts";
import type { Polygon, Ring } from "../../geometry/ring.ts";
import { segmentMeetsBox } from "../list/labelSpot.ts";

/** Edges of a run: a window is compared with their box first, so that it meets few edges it is far from. */
const RUN = 16;

/** Neighbouring edges of an outline: their points in order, one more than there are edges. */
interface Run {
  readonly points: Ring;
  readonly box: Box;
}

/**
 * Tells of windows whether the outline or its inside has a point in them (even-odd, holes with it). A window inside
 * a large piece counts: its sheet holds the piece together. Cost: O(points) to make, about points / 16 a window.
 */
export function windowTest(outline: Polygon): (window: Box) => boolean {
  const box = ringBox(outline.outer);
  const runs = [outline.outer, ...outline.holes].flatMap(runsOf);
  return (window) => boxesMeet(box, window) && meetsWindow(runs, window);
}

function runsOf(ring: Ring): Run[] {
  const runs: Run[] = [];
  // The edge that closes the ring comes first.
  const points = new Float64Array(ring.length + 2);
  points.set(ring.slice(-2));
  points.set(ring, 2);
  for (let at = 0; at + 2 < points.length; at += 2 * RUN) {
    const part = points.slice(at, at + 2 * RUN + 2);
    runs.push({ points: part, box: ringBox(part) });
  }
  return runs;
}

function meetsWindow(runs: readonly Run[], window: Box): boolean {
  const px = (window.minX + window.maxX) / 2;
  const py = (window.minY + window.maxY) / 2;
  // The side is found along with the edges met, whole runs at once.
  let inside = false;
  for (const { points, box } of runs) {
    if (!boxesMeet(box, window)) {
      // Off to the right the ends alone say how often a level line from the middle crosses; elsewhere it does not.
      if (box.minX > window.maxX && points[1]! > py !== points.at(-1)! > py) inside = !inside;
      continue;
    }
    for (let i = 2; i < points.length; i += 2) {
      const x0 = points[i - 2]!;
      const y0 = points[i - 1]!;
      const x1 = points[i]!;
      const y1 = points[i + 1]!;
      if (segmentMeetsBox(x0, y0, x1, y1, window)) return true;
      if (y0 > py !== y1 > py && px < x0 + ((x1 - x0) * (py - y0)) / (y1 - y0)) inside = !inside;
    }
  }
  return inside;
}
