import type { Contour } from "../../geometry/contour.ts";
import { straightContour } from "../../geometry/contourShapes.ts";
import type { PieceLine } from "../../materials/cutPiece.ts";
import type { DimensionId, EdgeName } from "./shapeNames.ts";

/** A length that a shape takes. mm. */
export interface Dimension {
  readonly id: DimensionId;
  readonly least: number;
  readonly most: number;
  /** What a new panel of this shape starts with. */
  readonly usual: number;
  /** A number of things rather than a length. */
  readonly isCount?: true;
  /** Where it may be left out: the dimension it is then as long as, or a length. */
  readonly otherwise?: DimensionId | number;
}

/** An edge by name: it starts at a corner of the outline and runs to where the next one starts. */
export interface NamedEdge {
  readonly name: string;
  /** Index of the corner in the outline. */
  readonly start: number;
}

/** An outline made from sizes: counter-clockwise, mm, its edges named, with what else is drawn on it. */
export interface ShapeOutline {
  readonly contour: Contour;
  /** In the order of their corners; none where edges have numbers only. */
  readonly edges: readonly NamedEdge[];
  readonly lines: readonly PieceLine[];
  /** Direction of the grain arrow, degrees counter-clockwise from x; the piece is laid with it along the grain. */
  readonly arrowDeg: number;
  /** How many such pieces the shape is made of; one where nothing is said. */
  readonly copies?: number;
}

/** A size that does not go with the others. */
export interface SizeFault {
  readonly dimension: DimensionId;
  readonly mm: number;
  readonly leastMm: number | null;
  readonly mostMm: number | null;
}

/** Where a dimension is shown in the shape's picture: between two points, mm; beside them by `off`. */
export interface DimensionPlace {
  readonly dimension: DimensionId;
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
  /** Which side the figure stands on, mm to the left of the way from `from` to `to`; 0 on the line. */
  readonly off: number;
  /** The way shown is half of the dimension. */
  readonly half?: true;
  /** The way shown is the dimension's circle laid flat. */
  readonly round?: true;
}

export type Sizes<D extends DimensionId = DimensionId> = Readonly<Record<D, number>>;

/** Everything there is to know about one shape. */
export interface ShapeRecord {
  readonly dimensions: readonly Dimension[];
  /** The outline, or the first size that does not go with the others. Sizes are within their limits. */
  outline(sizes: Sizes): ShapeOutline | SizeFault;
  places(sizes: Sizes): readonly DimensionPlace[];
}

/** A record whose makers take exactly its own dimensions. */
export function shapeRecord<const D extends readonly Dimension[]>(record: {
  readonly dimensions: D;
  readonly outline: (sizes: Sizes<D[number]["id"]>) => ShapeOutline | SizeFault;
  readonly places: (sizes: Sizes<D[number]["id"]>) => readonly DimensionPlace[];
}): ShapeRecord {
  return record;
}

/** One corner of an outline: where, the bulge of the edge that leaves it, and the name of the edge that starts there. */
export type Corner = readonly [x: number, y: number, bulge?: number | undefined, name?: EdgeName | undefined];

/** The outline of corners in order, counter-clockwise. An edge of no length leaves its name to what follows it. */
export function outlineOf(
  corners: readonly Corner[],
  more: { readonly lines?: readonly PieceLine[]; readonly arrowDeg?: number; readonly copies?: number } = {},
): ShapeOutline {
  const kept: Corner[] = [];
  let waiting: EdgeName | undefined;
  for (const [i, [x, y, bulge, name]] of corners.entries()) {
    const [nextX, nextY] = corners[(i + 1) % corners.length]!;
    const own = name ?? waiting;
    waiting = undefined;
    if (Math.hypot(nextX - x, nextY - y) > SAME_POINT) kept.push([x, y, bulge ?? 0, own]);
    else waiting = own;
  }
  const [first] = kept;
  if (waiting !== undefined && first !== undefined && first[3] === undefined)
    kept[0] = [first[0], first[1], first[2], waiting];
  return {
    contour: { vertices: Float64Array.from(kept.flatMap(([x, y, bulge]) => [x, y, bulge ?? 0])), closed: true },
    edges: kept.flatMap(([, , , name], start) => (name === undefined ? [] : [{ name, start }])),
    lines: more.lines ?? [],
    arrowDeg: more.arrowDeg ?? 0,
    ...(more.copies === undefined ? {} : { copies: more.copies }),
  };
}

/** The outline with one edge all the way round. */
export function rimmed(outline: ShapeOutline): ShapeOutline {
  return { ...outline, edges: [{ name: "rim" satisfies EdgeName, start: 0 }] };
}

/** The grain arrow of a shape that is drawn upright: along its height. */
export const UPRIGHT: { readonly arrowDeg: number } = { arrowDeg: 90 };

/** A straight line drawn on a shape. */
export function drawn(role: PieceLine["role"], ...points: readonly (readonly [number, number])[]): PieceLine {
  const line: PieceLine = { role, contour: straightContour(points.flat()) };
  return role === "fold" ? { ...line, note: "fold" } : line;
}

/** Least and greatest size of what a bag has, mm. */
export const SIZE: { readonly least: number; readonly most: number } = { least: 1, most: 10_000 };

/** Corners nearer to each other than this are one, mm. */
const SAME_POINT = 1e-6;

/** Bulge of a quarter circle, counter-clockwise: tan(90° / 4). */
export const QUARTER: number = Math.SQRT2 - 1;
