import { type Box, boxOfAll, EMPTY_BOX, grownBox, ringBox } from "../../../geometry/box.ts";
import { type GridShape, gridShape } from "../../../geometry/noFit.ts";
import { type Orientation, turnCosSin } from "../../../geometry/pose.ts";
import { type Polygon, rectangleRing, reversedRing, solid } from "../../../geometry/ring.ts";
import { isLoose } from "../../problem/layProblem.ts";
import type { RegionJob } from "../../problem/region.ts";
import { inOneGo } from "../../search/breath.ts";
import { coarsened } from "./coarsen.ts";
import { liesOnGrid } from "./contactTolerance.ts";
import { type GridLattice, gridLattice, rungAbove, rungBelow } from "./gridLattice.ts";
import {
  boxCentre,
  boxDiagonal,
  boxExtent,
  gridScale,
  polygonToGrid,
  shapeKey,
  toGrid,
  turnedOnGrid,
} from "./gridTools.ts";
import { fixedOutlines, grownOutline, isBareAtEdge, usableOutlines } from "./growOutlines.ts";
import { distinctShapes, PIECES_PER_TURN, type Shape, triedOrientations } from "./jobShapes.ts";

/** A piece may be larger than its room by the grid's rounding. */
const FIT_UNITS = 1;
/** A shape in one allowed orientation. Numbers index `CompiledJob.variants`. */
export interface Variant extends Orientation, Box {
  readonly shape: number;
  /** Which of the job's distinct orientations. */
  readonly orientation: number;
  readonly cos: number;
  readonly sin: number;
  readonly flip: 1 | -1;
  /** Where it may lie, when it is matched to the cloth's pattern. */
  readonly lattice: GridLattice | null;
}

/** One copy to lay. */
interface Item {
  readonly piece: number;
  readonly copy: number;
  readonly shape: number;
}

/** Something that stays where it is. */
interface Obstacle {
  readonly grid: GridShape;
  /** The one polygon all pieces must stay in; only its inner outline counts. */
  readonly isFrame: boolean;
  /** Part of the region's edge, which meets a shape's `atEdge`. */
  readonly isEdge: boolean;
  readonly x: number;
  readonly y: number;
}

/** A region job on the whole-number grid. */
export interface CompiledJob {
  readonly job: RegionJob;
  readonly unitsPerMm: number;
  readonly shapes: readonly Shape[];
  readonly variants: readonly Variant[];
  /** Variant numbers of each shape that fit the window, doubles by symmetry left out. */
  readonly variantsOf: readonly (readonly number[])[];
  readonly orientations: readonly Orientation[];
  /** Variant of a shape for an orientation (`orientationKey`), also for those left out as doubles. */
  readonly variantFor: ReadonlyMap<string, number>;
  readonly items: readonly Item[];
  readonly obstacles: readonly Obstacle[];
  /** Centre of each piece's box in its own frame, mm. */
  readonly centres: readonly (readonly [number, number])[];
  /** Whether the search works on coarser outlines that hold the pieces (`Shape.detail`). */
  readonly isDetailed: boolean;
  /** Window the grown pieces stay in, grid units; `maxX` is Infinity on an open region. */
  readonly window: Box;
}

/** Names a shape in an orientation. */
export function orientationKey(shape: number, { turnDeg, mirrored }: Orientation): string {
  return `${shape} ${Math.round(normalTurn(turnDeg) * 1e6)} ${mirrored}`;
}

function normalTurn(turnDeg: number): number {
  return ((turnDeg % 360) + 360) % 360;
}

/** Copies still to lay of each piece: the pinned ones are down already. */
function openCopies(job: RegionJob): { piece: number; copy: number }[] {
  const pinned = new Set(job.pinned.map((pin) => `${pin.copy} ${pin.pieceId}`));
  return job.pieces.flatMap((piece, index) =>
    Array.from({ length: piece.count }, (_, copy) => ({ piece: index, copy })).filter(
      ({ copy }) => !pinned.has(`${copy} ${piece.id}`),
    ),
  );
}

/** The frame round a shaped region: the box round it with the usable outlines cut out. */
function frameShape(outlines: readonly Polygon[], scale: number): { grid: GridShape; x: number; y: number } {
  const box = boxOfAll(outlines.map(({ outer }) => ringBox(outer)));
  const rim = 0.02 * Math.max(box.maxX - box.minX, box.maxY - box.minY);
  const cx = (box.minX + box.maxX) / 2;
  const cy = (box.minY + box.maxY) / 2;
  const outer = rectangleRing(
    box.minX - rim,
    box.minY - rim,
    box.maxX - box.minX + 2 * rim,
    box.maxY - box.minY + 2 * rim,
  );
  const holes = outlines.map((outline) => reversedRing(toGrid(outline.outer, scale, cx, cy)));
  return { grid: gridShape(toGrid(outer, scale, cx, cy), holes), x: cx * scale, y: cy * scale };
}

/** Where grown pieces may lie, as a box in grid units. */
function windowOf(job: RegionJob, outlines: readonly Polygon[], scale: number): CompiledJob["window"] {
  const inset = job.margin - job.gap / 2;
  const { length, width } = job.region;
  const end = length === null ? Infinity : (length - inset) * scale;
  const strip = { minX: inset * scale, minY: inset * scale, maxX: end, maxY: (width - inset) * scale };
  if (job.region.outline === null) return strip;
  if (outlines.length === 0) return EMPTY_BOX;
  // What is held to the edge as it is reaches out when grown: sharp corners by up to the gap.
  const beyond = isBareAtEdge(job) ? job.gap : 0;
  const { minX, minY, maxX, maxY } = grownBox(boxOfAll(outlines.map(({ outer }) => ringBox(outer))), beyond);
  return { minX: minX * scale, minY: minY * scale, maxX: maxX * scale, maxY: maxY * scale };
}

/** The allowed orientations of a shape, each outline once, and which of them every orientation stands for. */
function variantsOfShape(
  shape: Shape,
  number: number,
  allowed: readonly Orientation[],
  indexOf: (o: Orientation) => number,
  latticeAt: (o: Orientation) => GridLattice | null,
): { variants: Variant[]; names: Map<string, number> } {
  const seen = new Map<string, number>();
  const names = new Map<string, number>();
  const out: Variant[] = [];
  for (const { turnDeg, mirrored } of allowed) {
    const [cos, sin] = turnCosSin(turnDeg);
    const flip = mirrored ? -1 : 1;
    const lattice = latticeAt({ turnDeg, mirrored });
    // What looks alike may still lie differently on the cloth's pattern.
    const key = shapeKey(shape.grid, cos, sin, flip) + (lattice === null ? "" : JSON.stringify(lattice));
    const known = seen.get(key);
    names.set(orientationKey(number, { turnDeg, mirrored }), known ?? out.length);
    if (known !== undefined) continue;
    seen.set(key, out.length);
    const box = ringBox(turnedOnGrid(shape.grid.outer, cos, sin, flip));
    const orientation = indexOf({ turnDeg: normalTurn(turnDeg), mirrored });
    out.push({ turnDeg, mirrored, shape: number, orientation, cos, sin, flip, ...box, lattice });
  }
  return { variants: out, names };
}

function fitsWindow(variant: Variant, grow: number, window: CompiledJob["window"]): boolean {
  const slack = FIT_UNITS + 2 * grow;
  const width = variant.maxX - variant.minX;
  const height = variant.maxY - variant.minY;
  if (variant.lattice !== null && !fitsLattice(variant, variant.lattice, window)) return false;
  return width <= window.maxX - window.minX + slack && height <= window.maxY - window.minY + slack;
}

/** Whether a place on the pattern lies in the window. */
function fitsLattice(variant: Variant, { x, y, half }: GridLattice, window: CompiledJob["window"]): boolean {
  const [lowX, highX] = [window.minX - variant.minX, window.maxX - variant.maxX];
  const [lowY, highY] = [window.minY - variant.minY, window.maxY - variant.maxY];
  if (y !== null && rungAbove(y, lowY) > rungBelow(y, highY)) return false;
  if (x === null || highX === Infinity) return true;
  const rungs = half ? { ...x, period: x.period / 2 } : x;
  return rungAbove(rungs, lowX) <= rungBelow(rungs, highX);
}

/** The job's own numbers for orientations, in order of first use. */
function orientationBook(): { list: Orientation[]; indexOf: (o: Orientation) => number } {
  const list: Orientation[] = [];
  const indexOf = (o: Orientation): number => {
    const at = list.findIndex((other) => other.turnDeg === o.turnDeg && other.mirrored === o.mirrored);
    return at >= 0 ? at : list.push(o) - 1;
  };
  return { list, indexOf };
}

/**
 * A region job on a whole-number grid, on which no-fit polygons are exact: outlines grown by half the gap,
 * equal shapes and orientations that look alike counted once, everything fixed gathered as obstacles. Yields after a
 * few pieces. `byCoarser`: the search works on coarser outlines, however few corners there are.
 * Cost: O(vertices), and offsets where the gap or the margin asks for them.
 */
export function* compileSteps(job: RegionJob, byCoarser = false): Generator<void, CompiledJob> {
  const outlines: Polygon[] = [];
  for (const { outline } of job.pieces) {
    outlines.push(grownOutline(outline, job.gap / 2));
    if (outlines.length % PIECES_PER_TURN === 0) yield;
  }
  const isDetailed = byCoarser || isDetailedJob(job, outlines);
  const fine = isDetailed ? outlines.map(({ outer }) => coarsened(outer, FINE_SHARE)) : null;
  const centres = outlines.map((outline) => boxCentre(outline.outer));
  if (isDetailed)
    for (const [i, { outer }] of outlines.entries()) outlines[i] = solid(coarsened(outer, coarseShare(job)));
  const usable = usableOutlines(job);
  const fixed = yield* fixedOutlines(job);
  const squareTurns = job.pieces.every((p) => !isLoose(p) && p.orientations.every((o) => o.turnDeg % 90 === 0));
  const reach = squareTurns ? boxExtent : boxDiagonal;
  const all = [...outlines, ...fixed.map(({ outline }) => outline)];
  const parts = all.map((polygon) => reach(polygon.outer));
  const scale = gridScale(Math.max(...parts, ...usable.map((polygon) => 1.1 * boxExtent(polygon.outer))));
  const isWhole =
    !isDetailed &&
    squareTurns &&
    usable.length === 0 &&
    all.every((polygon) => liesOnGrid(polygon, scale, ...boxCentre(polygon.outer)));
  const { shapes, shapeOf } = yield* distinctShapes(job, outlines, centres, scale, isWhole, fine);
  const { list: orientations, indexOf } = orientationBook();
  const variants: Variant[] = [];
  const variantFor = new Map<string, number>();
  const window = windowOf(job, usable, scale);
  const variantsOf: number[][] = [];
  for (const [number, shape] of shapes.entries()) {
    if (number % PIECES_PER_TURN === PIECES_PER_TURN - 1) yield;
    const piece = job.pieces[shapeOf.indexOf(number)]!;
    const centre = centres[shapeOf.indexOf(number)]!;
    const own = variantsOfShape(shape, number, triedOrientations(piece), indexOf, (orientation) =>
      gridLattice(job, piece, orientation, centre, scale),
    );
    const numbers = own.variants.map((variant) => variants.push(variant) - 1);
    for (const [name, index] of own.names) variantFor.set(name, numbers[index]!);
    variantsOf.push(numbers.filter((index) => fitsWindow(variants[index]!, shape.grow, window)));
  }
  const obstacles: Obstacle[] = [];
  for (const { outline, isEdge } of fixed) {
    const [cx, cy] = boxCentre(outline.outer);
    const grid = polygonToGrid(outline, scale, cx, cy);
    const number = obstacles.push({ grid, isFrame: false, isEdge, x: cx * scale, y: cy * scale });
    if (number % PIECES_PER_TURN === 0) yield;
  }
  if (usable.length > 0) obstacles.push({ ...frameShape(usable, scale), isFrame: true, isEdge: true });
  const items = openCopies(job).map(({ piece, copy }) => ({ piece, copy, shape: shapeOf[piece]! }));
  return {
    job,
    unitsPerMm: scale,
    shapes,
    variants,
    variantsOf,
    orientations,
    variantFor,
    items,
    obstacles,
    centres,
    window,
    isDetailed,
  };
}

/** A job is laid by coarser outlines when one has more corners than this … */
const MANY_CORNERS = 48;
/** … or when corners times pairs of kinds and turns are more than this. */
const MUCH_WORK = 60_000;
/** How much larger in area the outlines may be that the search works on, and those that plans are closed up with. */
const MOST_SHARE = 0.004;
const LEAST_SHARE = 0.0005;
const PAIRS_FOR_MOST = 25_000;
const FINE_SHARE = 0.0003;

/** … the fewer pairs of kinds and turns there are, the nearer to the outlines. */
function coarseShare(job: RegionJob): number {
  const turns = Math.max(...job.pieces.map((piece) => triedOrientations(piece).length));
  const pairs = (job.pieces.length ** 2 * turns) / 2;
  return Math.max(LEAST_SHARE, MOST_SHARE * Math.min(1, Math.sqrt(pairs / PAIRS_FOR_MOST)));
}

/** Whether no-fit polygons of the outlines as they are would take the better part of a search. */
function isDetailedJob(job: RegionJob, outlines: readonly Polygon[]): boolean {
  if (job.region.outline !== null || job.region.length !== null) return false;
  if (job.pieces.some(({ outline }) => outline.holes.length > 0)) return false;
  const corners = outlines.reduce((sum, { outer }) => sum + outer.length / 2, 0);
  const turns = Math.max(...job.pieces.map((piece) => triedOrientations(piece).length));
  const most = Math.max(...outlines.map(({ outer }) => outer.length / 2));
  return most > MANY_CORNERS || (corners * outlines.length * turns) / 2 > MUCH_WORK;
}

/** The same in one go. */
export function compileJob(job: RegionJob): CompiledJob {
  return inOneGo(compileSteps(job));
}
