import { arcDistance, bulgeThrough } from "./fitPolyline.ts";

type Point = readonly [number, number];

/** One edge for a run of points: up to which point it goes, and its bulge; 0 for a straight one. */
export interface RunEdge {
  readonly to: number;
  readonly bulge: number;
}

/** A bow has at least so many chords; fewer are corners that were meant. */
const LEAST_CHORDS = 4;
/** Chords of a bow turn by less than this from one to the next, radians: a drawn polygon turns by more. */
const MOST_TURN = (20 * Math.PI) / 180;

/**
 * The edges of a line drawn with straight strokes, bows that a program cut into chords put together again: a run of
 * chords that turn the same way by little, all of whose ends and middles lie within `tolerance` mm of one arc of at most
 * half a circle. Everything else stays as it is drawn.
 * Cost: O(n log n): runs are grown by doubling and halving.
 */
export function chordRuns(points: readonly Point[], tolerance: number): RunEdge[] {
  const edges: RunEdge[] = [];
  for (let from = 0; from < points.length - 1; ) {
    const bow = longestBow(points, from, lastAlike(points, from), tolerance);
    edges.push(bow ?? { to: from + 1, bulge: 0 });
    from = edges.at(-1)!.to;
  }
  return edges;
}

/** The last point up to which the strokes from `from` on turn the same way by little. */
function lastAlike(points: readonly Point[], from: number): number {
  let to = from + 1;
  let sense = 0;
  for (; to < points.length - 1; to++) {
    const turn = turnAt(points, to);
    if (Math.abs(turn) > MOST_TURN || Math.abs(turn) < 1e-9) break;
    if (sense !== 0 && Math.sign(turn) !== sense) break;
    sense = Math.sign(turn);
  }
  return to;
}

function turnAt(points: readonly Point[], i: number): number {
  const [[ax, ay], [bx, by], [cx, cy]] = [points[i - 1]!, points[i]!, points[i + 1]!];
  const [ux, uy, vx, vy] = [bx - ax, by - ay, cx - bx, cy - by];
  return Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy);
}

function longestBow(points: readonly Point[], from: number, last: number, tolerance: number): RunEdge | null {
  let good = from + LEAST_CHORDS;
  if (good > last) return null;
  let bulge = bowThrough(points, from, good, tolerance);
  if (bulge === null) return null;
  let bad = last + 1;
  let step = LEAST_CHORDS;
  while (bad - good > 1) {
    const to = bad > last ? Math.min(last, good + step) : (good + bad) >> 1;
    const found = bowThrough(points, from, to, tolerance);
    if (found === null) bad = to;
    else {
      [good, bulge] = [to, found];
      step *= 2;
    }
    if (good === last) break;
  }
  return { to: good, bulge };
}

/** Bulge of the arc from one point to another that all ends and middles of the chords between keep to. */
function bowThrough(points: readonly Point[], from: number, to: number, tolerance: number): number | null {
  const [start, end] = [points[from]!, points[to]!];
  const bulge = bulgeThrough(start, points[(from + to) >> 1]!, end);
  if (bulge === null || Math.abs(bulge) > 1) return null;
  for (let i = from; i < to; i++) {
    const [[ax, ay], [bx, by]] = [points[i]!, points[i + 1]!];
    if (arcDistance([ax, ay], start, end, bulge) > tolerance) return null;
    if (arcDistance([(ax + bx) / 2, (ay + by) / 2], start, end, bulge) > tolerance) return null;
  }
  return bulge;
}
