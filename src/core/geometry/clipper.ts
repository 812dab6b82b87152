import clipperLib, { type Path, type Paths } from "clipper-lib";
import { boxOfAll, ringBox } from "./box.ts";
import { isInsideRing } from "./inside.ts";
import { type Polygon, type Ring, signedArea } from "./ring.ts";

/**
 * Polygon booleans and offsets. The only file that knows the clipper library (A. Johnson, after
 * Vatti 1992, Comm. ACM 35(7); offsets after Chen & McMains 2005). The library counts in whole numbers;
 * coordinates up to this size stay in its fast, exact range.
 */
export const CLIPPER_RANGE = 47_453_132;

const { ClipType, PolyType, PolyFillType, JoinType, EndType } = clipperLib;

function toPath(ring: Ring, scale: number, cx: number, cy: number): Path {
  const path: Path = [];
  for (let i = 0; i < ring.length; i += 2)
    path.push({ X: Math.round((ring[i]! - cx) * scale), Y: Math.round((ring[i + 1]! - cy) * scale) });
  return path;
}

function toRing(path: Path, scale: number, cx: number, cy: number): Ring {
  const ring = new Float64Array(path.length * 2);
  for (let i = 0; i < path.length; i++) {
    ring[2 * i] = path[i]!.X / scale + cx;
    ring[2 * i + 1] = path[i]!.Y / scale + cy;
  }
  return ring;
}

function combine(subject: Paths, clip: Paths, operation: number): Paths {
  const clipper = new clipperLib.Clipper();
  clipper.AddPaths(subject, PolyType.ptSubject, true);
  clipper.AddPaths(clip, PolyType.ptClip, true);
  const solution: Paths = [];
  clipper.Execute(operation, solution, PolyFillType.pftNonZero, PolyFillType.pftNonZero);
  return solution;
}

/** A frame that maps the rings into the library's exact range: centre, and units per mm. */
function frameOf(rings: readonly Ring[], spare: number): { scale: number; cx: number; cy: number } {
  const { minX, minY, maxX, maxY } = boxOfAll(rings.map(ringBox));
  const reach = Math.max(maxX - minX, maxY - minY) / 2 + spare;
  return { scale: CLIPPER_RANGE / (reach * 1.01 + 1e-12), cx: (minX + maxX) / 2, cy: (minY + maxY) / 2 };
}

/** Rings of a polygon, outside first. */
export function ringsOf(polygon: Polygon): Ring[] {
  return [polygon.outer, ...polygon.holes];
}

/** Outsides with the holes that lie in each, from clean rings (outsides counter-clockwise, holes clockwise). */
function groupRings(rings: readonly Ring[]): Polygon[] {
  const outers = rings.filter((ring) => signedArea(ring) > 0);
  const holes: Ring[][] = outers.map(() => []);
  const byArea = outers.map((_, i) => i).sort((a, b) => signedArea(outers[a]!) - signedArea(outers[b]!));
  for (const hole of rings) {
    if (signedArea(hole) >= 0) continue;
    const home = byArea.find((i) => ringHolds(outers[i]!, hole));
    if (home !== undefined) holes[home]!.push(hole);
  }
  return outers.map((outer, i) => ({ outer, holes: holes[i]! }));
}

/** Whether most vertices of `inner` lie in `outer` (they touch at single points at most). */
function ringHolds(outer: Ring, inner: Ring): boolean {
  let votes = 0;
  for (let k = 0; k < inner.length; k += 2) {
    votes += isInsideRing(outer, inner[k]!, inner[k + 1]!) ? 1 : -1;
  }
  return votes > 0;
}

function booleanOf(subject: readonly Ring[], clip: readonly Ring[], operation: number): Polygon[] {
  if (subject.length === 0) return [];
  const { scale, cx, cy } = frameOf([...subject, ...clip], 0);
  const paths = combine(
    subject.map((ring) => toPath(ring, scale, cx, cy)),
    clip.map((ring) => toPath(ring, scale, cx, cy)),
    operation,
  );
  return groupRings(paths.map((path) => toRing(path, scale, cx, cy)));
}

/**
 * Union of rings under the non-zero rule; wanted regions counter-clockwise.
 * Units: mm, rounded to 2e-8 of the drawing's size. Cost: O((n + k) log n), k crossings.
 */
export function unionOf(rings: readonly Ring[]): Polygon[] {
  return booleanOf(rings, [], ClipType.ctUnion);
}

/** `subject` less `clip`, both under the non-zero rule. Accuracy and cost as `unionOf`. */
export function differenceOf(subject: readonly Ring[], clip: readonly Ring[]): Polygon[] {
  return booleanOf(subject, clip, ClipType.ctDifference);
}

/** What `subject` and `clip` share, both under the non-zero rule. Accuracy and cost as `unionOf`. */
export function intersectionOf(subject: readonly Ring[], clip: readonly Ring[]): Polygon[] {
  return booleanOf(subject, clip, ClipType.ctIntersection);
}

/** Area two polygons share, mm², to about 1e-8 of their size squared. */
export function sharedArea(a: Polygon, b: Polygon): number {
  let area = 0;
  for (const part of intersectionOf(ringsOf(a), ringsOf(b)))
    for (const ring of ringsOf(part)) area += signedArea(ring);
  return area;
}

/** How an offset turns an outside corner. */
export type OffsetJoin =
  | { readonly kind: "round" /** Largest chord error, mm. */; readonly tolerance: number }
  | { readonly kind: "miter" /** Longest spike as a multiple of the distance, ≥ 2. */; readonly limit: number };

/**
 * Polygons moved outward by `distance` (inward when negative); they may merge, split or vanish.
 *
 * Shapes: outsides counter-clockwise, holes clockwise; the same comes back.
 * Units:  mm, rounded to 2e-8 of the drawing's size; a round join's chords lie inside the true arc by at most
 *         its tolerance, so add that to `distance` where the distance must be kept in full.
 * Errors: RangeError if `distance` is not finite.
 */
export function offsetOf(rings: readonly Ring[], distance: number, join: OffsetJoin): Polygon[] {
  if (!Number.isFinite(distance)) throw new RangeError(`offsetOf: distance must be finite, got ${distance}`);
  if (rings.length === 0) return [];
  const spare = Math.abs(distance) * (join.kind === "miter" ? join.limit : 1);
  const { scale, cx, cy } = frameOf(rings, spare);
  const miterLimit = join.kind === "miter" ? join.limit : 2;
  const arcTolerance = join.kind === "round" ? Math.max(join.tolerance * scale, 0.25) : 0.25;
  const offset = new clipperLib.ClipperOffset(miterLimit, arcTolerance);
  offset.AddPaths(
    rings.map((ring) => toPath(ring, scale, cx, cy)),
    join.kind === "miter" ? JoinType.jtMiter : JoinType.jtRound,
    EndType.etClosedPolygon,
  );
  const paths: Paths = [];
  offset.Execute(paths, distance * scale);
  return groupRings(paths.map((path) => toRing(path, scale, cx, cy)));
}

/**
 * Union of closed paths under the non-zero rule, on whole numbers: the engine's own grid. Outsides come back
 * counter-clockwise, holes clockwise. Coordinates must not pass `CLIPPER_RANGE`.
 */
export function unionOnGrid(paths: readonly Ring[]): Ring[] {
  const solution = combine(
    paths.map((ring) => toPath(ring, 1, 0, 0)),
    [],
    ClipType.ctUnion,
  );
  return solution.map((path) => toRing(path, 1, 0, 0));
}
