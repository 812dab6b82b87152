import type { GridShape } from "../../../geometry/noFit.ts";
import type { Orientation } from "../../../geometry/pose.ts";
import { type Polygon, polygonArea, type Ring } from "../../../geometry/ring.ts";
import type { LayPiece } from "../../problem/layProblem.ts";
import type { RegionJob } from "../../problem/region.ts";
import { contactOf } from "./contactTolerance.ts";
import { gridLattice } from "./gridLattice.ts";
import { boxExtent, polygonToGrid, shapeKey, toGrid } from "./gridTools.ts";
import { grownOutline, isBareAtEdge } from "./growOutlines.ts";
import { innerDiscs } from "./innerDiscs.ts";
import { restingRing, type SumShape, shakenRing } from "./sumRings.ts";

/** Pieces compiled between two pauses. */
export const PIECES_PER_TURN = 8;
/** Turns tried when any is allowed. */
const FREE_TURNS = 24;
/** Depth up to which outlines for sums only touch, grid units. */
const TOUCH = 2;

/** An outline that is kept from others. */
interface Body {
  /** On the grid, centred on the shape's box; grown by `grow` units where rounding would else be too much for it. */
  readonly grid: GridShape;
  readonly grow: number;
  /** Depth up to which it only touches others, grid units. */
  readonly touch: number;
}

/** A distinct shape: what is laid, however many pieces share it. */
export interface Shape extends Body {
  /** What is held to the edge of a shaped region: the same, or the outline as it is (`isBareAtEdge`). */
  readonly atEdge: Body;
  /** Square grid units. */
  readonly area: number;
  /** Longer side of the box, grid units. */
  readonly extent: number;
  /** In a job of many corners, where the search works on coarser outlines. */
  readonly detail: Detail | null;
}

/** What belongs to a shape whose `grid` is coarser than its outline. */
export interface Detail {
  /** The outline, nearly, on the grid; the coarser one holds it. */
  readonly fine: Ring;
  /** The coarser one, ready for sums. */
  readonly sums: SumShape;
  /** Large discs inside the coarser one: x, y, radius each. */
  readonly discs: Float64Array;
}

/** Each orientation as it is, then tilted as far as the piece may be, either way. */
function withTilts({ orientations, tilt = 0 }: LayPiece): readonly Orientation[] {
  if (tilt === 0) return orientations;
  return orientations.flatMap(({ turnDeg, mirrored }) =>
    [0, tilt, -tilt].map((off) => ({ turnDeg: turnDeg + off, mirrored })),
  );
}

/** Orientations to try; a piece that may lie at any turn gets evenly spaced ones. */
export function triedOrientations(piece: LayPiece): readonly Orientation[] {
  if (!piece.freeTurn) return withTilts(piece);
  const flags = [...new Set(piece.orientations.map((o) => o.mirrored))];
  return flags.flatMap((mirrored) =>
    Array.from({ length: FREE_TURNS }, (_, i) => ({ turnDeg: (360 / FREE_TURNS) * i, mirrored })),
  );
}

/** An outline whose shape on the grid is `grid`, about `centre`. */
function bodyOf(
  outline: Polygon,
  grid: GridShape,
  scale: number,
  centre: readonly [number, number],
  isWhole: boolean,
): Body {
  const { touch, grow } = contactOf([grid.outer, ...grid.holes], grid.parts.length === 1, isWhole);
  const grown = grow === 0 ? grid : polygonToGrid(grownOutline(outline, grow / scale), scale, ...centre);
  return { grid: grown, grow, touch };
}

/** The ring as it rests and as it moves: shaken differently, or a shape beside itself would have parallel edges. */
function sumShape(ring: Ring, number: number): SumShape {
  return { resting: restingRing(shakenRing(ring, 2 * number + 1)), moving: shakenRing(ring, 2 * number + 2) };
}

/** Tells shapes apart that have to lie differently on the cloth's pattern. */
function latticeKey(job: RegionJob, piece: LayPiece, centre: readonly [number, number], scale: number): string {
  if (piece.match === undefined) return "";
  return JSON.stringify(triedOrientations(piece).map((turn) => gridLattice(job, piece, turn, centre, scale)));
}

/** Distinct shapes (equal outlines with equal freedom to turn), and which one each piece has. */
export function* distinctShapes(
  job: RegionJob,
  outlines: readonly Polygon[],
  centres: readonly (readonly [number, number])[],
  scale: number,
  isWhole: boolean,
  fine: readonly Ring[] | null,
): Generator<void, { shapes: Shape[]; shapeOf: number[] }> {
  const shapes: Shape[] = [];
  const known = new Map<string, number>();
  const shapeOf: number[] = [];
  const isBare = isBareAtEdge(job);
  for (const [piece, outline] of outlines.entries()) {
    if (piece % PIECES_PER_TURN === PIECES_PER_TURN - 1) yield;
    const centre = centres[piece]!;
    const grid = polygonToGrid(outline, scale, ...centre);
    const bare = isBare ? grownOutline(job.pieces[piece]!.outline, 0) : outline;
    const bareGrid = isBare ? polygonToGrid(bare, scale, ...centre) : grid;
    const detailed = fine === null ? null : toGrid(fine[piece]!, scale, ...centre);
    const key = [
      JSON.stringify(triedOrientations(job.pieces[piece]!)),
      shapeKey(grid),
      isBare ? shapeKey(bareGrid) : "",
      detailed === null ? "" : detailed.join(),
      latticeKey(job, job.pieces[piece]!, centre, scale),
    ].join(" ");
    let number = known.get(key);
    if (number === undefined) {
      const detail =
        detailed === null
          ? null
          : { fine: detailed, sums: sumShape(grid.outer, shapes.length), discs: innerDiscs(grid.outer) };
      // Outlines for sums are grown by far more than rounding.
      const body =
        detail === null ? bodyOf(outline, grid, scale, centre, isWhole) : { grid, grow: 0, touch: TOUCH };
      const atEdge = isBare ? bodyOf(bare, bareGrid, scale, centre, isWhole) : body;
      const area = polygonArea(grid);
      number = shapes.push({ ...body, atEdge, area, extent: boxExtent(grid.outer), detail }) - 1;
      known.set(key, number);
    }
    shapeOf.push(number);
  }
  return { shapes, shapeOf };
}
