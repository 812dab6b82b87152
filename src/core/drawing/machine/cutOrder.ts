import { type Box, boxHolds } from "../../geometry/box.ts";
import type { Contour } from "../../geometry/contour.ts";
import { contourBox, flattenContour } from "../../geometry/contourArcs.ts";
import { isInsideRing } from "../../geometry/inside.ts";

/** A path to cut and whatever goes with it. */
export interface CutPath {
  readonly contour: Contour;
  readonly owner: string | undefined;
}

/**
 * Paths in the order a machine should cut them: what lies inside a closed path before that path, so that nothing is
 * cut in a part that has come loose; among those that may be next, the nearest to where the last one ended. With
 * `piece`, all paths of one owner are cut before the next owner's, so that a sheet that creeps spoils no holes. Closed
 * paths are turned to start at their nearest vertex, open ones may be walked backward. Cost O(n²) boxes.
 */
export function cutOrder(paths: readonly CutPath[], by: "nearest" | "piece" = "nearest"): CutPath[] {
  const waiting = new Map(paths.map((path, i) => [i, path]));
  const inside = insides(paths);
  let x = 0;
  let y = 0;
  let owner: string | undefined;
  const left = new Map<string, number>();
  for (const path of paths) if (path.owner !== undefined) left.set(path.owner, (left.get(path.owner) ?? 0) + 1);
  const order: CutPath[] = [];
  while (waiting.size > 0) {
    const stay = by === "piece" && owner !== undefined && left.get(owner)! > 0;
    // A piece may wait for another that lies in its hole; then that one is cut in between.
    const next = (stay ? nearestFree(waiting, inside, x, y, owner) : null) ?? nearestFree(waiting, inside, x, y);
    // Closed paths cannot lie inside each other both ways, so there is always one that may be next.
    const { index, start } = next!;
    const path = waiting.get(index)!;
    waiting.delete(index);
    owner = path.owner;
    if (owner !== undefined) left.set(owner, left.get(owner)! - 1);
    const contour = startedAt(path.contour, start);
    order.push({ ...path, contour });
    [x, y] = endOf(contour);
  }
  return order;
}

/** The nearest path that encloses nothing uncut, of one owner if told. */
function nearestFree(
  waiting: ReadonlyMap<number, CutPath>,
  inside: readonly (readonly number[])[],
  x: number,
  y: number,
  owner?: string,
): { readonly index: number; readonly start: Start } | null {
  let best: { index: number; start: Start } | null = null;
  for (const [index, path] of waiting) {
    if (owner !== undefined && path.owner !== owner) continue;
    if (inside[index]!.some((inner) => waiting.has(inner))) continue;
    const start = nearestStart(path.contour, x, y);
    if (!best || start.away < best.start.away - 1e-9) best = { index, start };
  }
  return best;
}

interface Start {
  /** Vertex to start at; for an open path its first or last. */
  readonly vertex: number;
  readonly away: number;
}

function nearestStart({ vertices, closed }: Contour, x: number, y: number): Start {
  const count = vertices.length / 3;
  let best: Start = { vertex: 0, away: Infinity };
  for (let i = 0; i < count; i += closed ? 1 : Math.max(1, count - 1)) {
    const away = Math.hypot(vertices[3 * i]! - x, vertices[3 * i + 1]! - y);
    if (away < best.away - 1e-9) best = { vertex: i, away };
  }
  return best;
}

function startedAt(contour: Contour, { vertex }: Start): Contour {
  const { vertices, closed } = contour;
  if (vertex === 0) return contour;
  if (!closed) return reversedOpen(contour);
  const turned = new Float64Array(vertices.length);
  turned.set(vertices.subarray(3 * vertex));
  turned.set(vertices.subarray(0, 3 * vertex), vertices.length - 3 * vertex);
  return { vertices: turned, closed };
}

function reversedOpen({ vertices }: Contour): Contour {
  const count = vertices.length / 3;
  const out = new Float64Array(vertices.length);
  for (let i = 0; i < count; i++) {
    const from = 3 * (count - 1 - i);
    out[3 * i] = vertices[from]!;
    out[3 * i + 1] = vertices[from + 1]!;
    out[3 * i + 2] = i + 1 < count ? -vertices[from - 1]! : 0;
  }
  return { vertices: out, closed: false };
}

function endOf({ vertices, closed }: Contour): readonly [number, number] {
  const at = closed ? 0 : vertices.length - 3;
  return [vertices[at]!, vertices[at + 1]!];
}

/** For each path the indices of those that lie inside it. */
function insides(paths: readonly CutPath[]): number[][] {
  const boxes = paths.map((path) => contourBox(path.contour));
  const rings = paths.map((path) => (path.contour.closed ? flattenContour(path.contour, 0.05) : null));
  return paths.map((_, i) => {
    const ring = rings[i];
    if (!ring) return [];
    return paths.flatMap((other, j) => {
      if (i === j || !within(boxes[j]!, boxes[i]!)) return [];
      return isInsideRing(ring, other.contour.vertices[0]!, other.contour.vertices[1]!) ? [j] : [];
    });
  });
}

function within(inner: Box, outer: Box): boolean {
  const smaller =
    inner.maxX - inner.minX < outer.maxX - outer.minX || inner.maxY - inner.minY < outer.maxY - outer.minY;
  return smaller && boxHolds(outer, inner, 1e-9);
}
