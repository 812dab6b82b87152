import type { Contour } from "../geometry/contour.ts";
import { contourEdges } from "../geometry/contourArcs.ts";
import { contourLength, pointAlong } from "../geometry/contourEdgeLengths.ts";
import { cornersOf, edgePoint } from "../geometry/contourEdits.ts";
import { pointOnContour } from "../geometry/pointOnContour.ts";
import { edgeRun, placeOnRun, runLength } from "./edgeRun.ts";
import type { EdgeRef, Notch, Panel } from "./panel.ts";
import type { NamedEdge } from "./shapes/shapeRecord.ts";

/** How an outline with other corners hangs together with the one before. */
export interface OutlineChange {
  readonly before: { readonly contour: Contour; readonly edges: readonly NamedEdge[] };
  readonly after: Contour;
  /** The edge of the new outline that was none of the old one's: the fold of a half. */
  readonly fold?: number;
  /** Where a point of the new outline was. */
  toBefore(x: number, y: number): Point;
  /** Where a point is now: one place, or two where a half was opened out. */
  toAfter(x: number, y: number): readonly Point[];
}

type Point = readonly [number, number];

/** Two places nearer than this are one, mm. */
const SAME = 0.01;
/** A notch further off the new outline than this has lost its edge and lies at the nearest place, mm. */
const ROUNDING = 1e-6;

/**
 * The edges of the new outline that an edge of the old one has become, in order; by number. One that is gone has become
 * the nearest.
 */
export function edgesNow({
  before,
  after,
  fold,
  toBefore,
  toAfter,
}: OutlineChange): (edge: number) => readonly number[] {
  const origins = contourEdges(after).map((edge, i) => {
    if (i === fold) return -1;
    const [x, y] = toBefore(...edgePoint(edge, 0.5));
    return pointOnContour(before.contour, x, y).edge;
  });
  return (edge) => {
    const found = origins.flatMap((origin, i) => (origin === edge ? [i] : []));
    const old = contourEdges(before.contour)[edge];
    if (found.length > 0 || old === undefined) return found;
    const [at] = toAfter(...edgePoint(old, 0.5));
    return [pointOnContour(after, ...at!).edge];
  };
}

/**
 * The panel with another outline: names of edges, allowances, corners, notches, holes and words stay where they were on
 * the cloth. Which edge lies on the fold is the caller's to say. Cost O(edges × marks).
 */
export function carriedOver(panel: Panel, change: OutlineChange): Panel {
  const { before, after, toAfter } = change;
  const now = edgesNow(change);
  const names = namesNow(change, now);
  const named = new Set(names.map(({ name }) => name));
  const refs = (ref: EdgeRef): readonly EdgeRef[] =>
    typeof ref === "number" ? now(ref) : [...named].filter((name) => name === ref || isTwin(name, ref));
  const cornersNow = (ref: EdgeRef): readonly EdgeRef[] => {
    if (typeof ref === "string") return refs(ref);
    const corner = cornersOf(before.contour)[ref];
    if (corner === undefined) return [];
    const places = toAfter(corner.x, corner.y);
    return cornersOf(after).flatMap(({ x, y }, i) => (places.some((place) => isNear(place, [x, y])) ? [i] : []));
  };
  const place = <T extends { readonly x: unknown; readonly y: unknown }>(one: T): T[] =>
    typeof one.x === "number" && typeof one.y === "number"
      ? toAfter(one.x, one.y).map(([x, y]) => ({ ...one, x, y }))
      : [one];
  const drills = panel.drills?.flatMap(place).filter(isFirst(({ x, y }) => [x, y]));
  return {
    ...panel,
    shape: { kind: "outline", contour: after, ...(names.length > 0 ? { edges: names } : {}) },
    ...(panel.edges && {
      edges: panel.edges
        .flatMap((wish) => refs(wish.edge).map((edge) => ({ ...wish, edge })))
        .filter(isFirst(({ edge }) => [edge, 0])),
    }),
    ...(panel.corners && {
      corners: panel.corners.flatMap((wish) => cornersNow(wish.corner).map((corner) => ({ ...wish, corner }))),
    }),
    notches: panel.notches
      .flatMap((notch) => notchesNow(notch, change, now, named))
      .filter(isFirst(({ edge, at }) => [edge, at])),
    ...(drills && { drills }),
    // Words are read once, whichever half they stand on.
    ...(panel.texts && { texts: panel.texts.flatMap((text) => place(text).slice(0, 1)) }),
  };
}

/** A name that stands on both halves has a number on the second. */
const isTwin = (name: string, of: string): boolean => name === `${of} 2`;

/** Names of the new edges: each run of edges that came of one name, a second run of it numbered. */
function namesNow(
  { before, after, fold }: OutlineChange,
  now: (edge: number) => readonly number[],
): readonly NamedEdge[] {
  if (before.edges.length === 0) return [];
  const total = after.vertices.length / 3;
  const nameOf: string[] = Array.from({ length: total }, (_, i) => (i === fold ? "fold" : ""));
  for (const { name } of before.edges) {
    const run = edgeRun(before, name)!;
    const count = before.contour.vertices.length / 3;
    for (let k = 0; k < run.count; k++) for (const edge of now((run.first + k) % count)) nameOf[edge] ||= name;
  }
  const names: NamedEdge[] = [];
  for (let i = 0; i < total; i++) {
    const name = nameOf[i]!;
    if (name === nameOf.at(i - 1)) continue;
    const isTaken = names.some((other) => other.name === name);
    names.push({ name: isTaken ? `${name} 2` : name, start: i });
  }
  // One name all the way round starts where it did.
  return names.length > 0 ? names : [{ name: before.edges[0]!.name, start: 0 }];
}

function notchesNow(
  notch: Notch,
  { before, after, toAfter }: OutlineChange,
  now: (edge: number) => readonly number[],
  named: ReadonlySet<string>,
): readonly Notch[] {
  const run = edgeRun(before, notch.edge);
  if (run === null) return [notch];
  const { at } = notch;
  const mm = typeof at === "number" ? at : "share" in at ? at.share * runLength(before.contour, run) : null;
  if (mm === null) {
    // A place that follows another panel stays with its edge.
    if (typeof notch.edge === "string" && named.has(notch.edge)) return [notch];
    return now(run.first)
      .slice(0, 1)
      .map((edge) => ({ ...notch, edge }));
  }
  const place = placeOnRun(before.contour, run, mm);
  const [x, y] = pointAlong(contourEdges(before.contour)[place.edge]!, place.at);
  const isWhole = typeof notch.edge === "number" && now(notch.edge).length === 1;
  return toAfter(x, y).map((point) => {
    const found = pointOnContour(after, ...point);
    const same = isWhole && found.distance < ROUNDING && now(notch.edge as number)[0] === found.edge;
    // A share stays one on an edge that is as it was.
    const isAsLong =
      same && Math.abs(contourLength(edgeAlone(after, found.edge)) - runLength(before.contour, run)) < SAME;
    return { ...notch, edge: found.edge, at: isAsLong ? at : found.at };
  });
}

/** One edge as a line of its own. */
function edgeAlone(contour: Contour, edge: number): Contour {
  const { x0, y0, x1, y1, bulge } = contourEdges(contour)[edge]!;
  return { vertices: Float64Array.of(x0, y0, bulge, x1, y1, 0), closed: false };
}

const isNear = (a: Point, b: Point): boolean => Math.hypot(a[0] - b[0], a[1] - b[1]) < SAME;

/** Keeps the first of those that stand on one place. */
function isFirst<T>(
  placeOf: (one: T) => readonly [unknown, unknown],
): (one: T, i: number, all: readonly T[]) => boolean {
  const near = (a: unknown, b: unknown): boolean =>
    typeof a === "number" && typeof b === "number" ? Math.abs(a - b) < SAME : a === b;
  return (one, i, all) =>
    all.findIndex((other) => {
      const [a, b] = [placeOf(one), placeOf(other)];
      return near(a[0], b[0]) && near(a[1], b[1]);
    }) === i;
}
