import type { GridShape } from "../../../geometry/noFit.ts";
import type { Orientation } from "../../../geometry/pose.ts";
import { type Polygon, polygonArea } from "../../../geometry/ring.ts";
import type { LayPiece } from "../../problem/layProblem.ts";
import type { RegionJob } from "../../problem/region.ts";
import { contactOf } from "./contactTolerance.ts";
import { boxExtent, polygonToGrid, shapeKey } from "./gridTools.ts";
import { grownOutline, isBareAtEdge } from "./growOutlines.ts";

/** Pieces compiled between two pauses. */
export const PIECES_PER_TURN = 8;
/** Turns tried when any is allowed. */
const FREE_TURNS = 24;

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
}

/** Orientations to try; a piece that may lie at any turn gets evenly spaced ones. */
export function triedOrientations(piece: LayPiece): readonly Orientation[] {
  if (!piece.freeTurn) return piece.orientations;
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

/** Distinct shapes (equal outlines with equal freedom to turn), and which one each piece has. */
export function* distinctShapes(
  job: RegionJob,
  outlines: readonly Polygon[],
  centres: readonly (readonly [number, number])[],
  scale: number,
  isWhole: boolean,
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
    const key = [
      JSON.stringify(triedOrientations(job.pieces[piece]!)),
      shapeKey(grid),
      isBare ? shapeKey(bareGrid) : "",
    ].join(" ");
    let number = known.get(key);
    if (number === undefined) {
      const body = bodyOf(outline, grid, scale, centre, isWhole);
      const atEdge = isBare ? bodyOf(bare, bareGrid, scale, centre, isWhole) : body;
      const area = polygonArea(grid);
      number = shapes.push({ ...body, atEdge, area, extent: boxExtent(grid.outer) }) - 1;
      known.set(key, number);
    }
    shapeOf.push(number);
  }
  return { shapes, shapeOf };
}
