import type { Box } from "../geometry/box.ts";
import type { Ring } from "../geometry/ring.ts";
import { distanceToRing } from "./nesting.ts";

/** Lines nearer than this all along are one line drawn twice, mm: a blade would run the same way again. */
const SAME = 0.1;

/** A line as it is compared. */
interface ComparedLine {
  readonly points: Ring;
  readonly closed: boolean;
  readonly box: Box;
}

/**
 * For each line that lies on an earlier one all along, the index of that one. Both directions count, and a closed
 * line may start anywhere.
 * Cost: O(n) for boxes that differ, O(points²) for a pair that may be alike.
 */
export function doubledLines(lines: readonly ComparedLine[]): ReadonlyMap<number, number> {
  const doubled = new Map<number, number>();
  const byBox = new Map<string, number[]>();
  for (const [i, line] of lines.entries()) {
    const earlier = nearBoxes(line, byBox).find((j) => isSame(lines[j]!, line));
    if (earlier !== undefined) doubled.set(i, earlier);
    else {
      const cell = cellOf(line.box.minX, line.box.minY, line.closed);
      byBox.set(cell, [...(byBox.get(cell) ?? []), i]);
    }
  }
  return doubled;
}

const CELL = 1;

function cellOf(x: number, y: number, closed: boolean): string {
  return `${Math.floor(x / CELL)},${Math.floor(y / CELL)},${closed}`;
}

function nearBoxes({ box, closed }: ComparedLine, byBox: ReadonlyMap<string, readonly number[]>): number[] {
  const near: number[] = [];
  for (let i = -1; i <= 1; i++)
    for (let j = -1; j <= 1; j++)
      near.push(...(byBox.get(cellOf(box.minX + i * CELL, box.minY + j * CELL, closed)) ?? []));
  return near.sort((a, b) => a - b).slice(0, 64);
}

function isSame(a: ComparedLine, b: ComparedLine): boolean {
  const corners = ["minX", "minY", "maxX", "maxY"] as const;
  if (corners.some((corner) => Math.abs(a.box[corner] - b.box[corner]) > SAME)) return false;
  return liesOn(a, b) && liesOn(b, a);
}

/** Whether points spread along `b` lie on `a`. */
function liesOn(a: ComparedLine, b: ComparedLine): boolean {
  const n = b.points.length / 2;
  const step = Math.max(1, Math.floor(n / 32));
  // An open line walked back over itself encloses it as a ring does.
  const ring = a.closed ? a.points : thereAndBack(a.points);
  for (let i = 0; i < n; i += step) {
    const next = Math.min(2 * i + 2, b.points.length - 2);
    const x = (b.points[2 * i]! + b.points[next]!) / 2;
    const y = (b.points[2 * i + 1]! + b.points[next + 1]!) / 2;
    if (distanceToRing(ring, b.points[2 * i]!, b.points[2 * i + 1]!) > SAME) return false;
    if (distanceToRing(ring, x, y) > SAME) return false;
  }
  return true;
}

function thereAndBack(points: Ring): Ring {
  const out = [...points];
  for (let i = points.length - 4; i >= 2; i -= 2) out.push(points[i]!, points[i + 1]!);
  return Float64Array.from(out);
}
