import { type Box, boxOfAll, ringBox } from "../../../geometry/box.ts";
import { frameNoFitRings, type GridShape, noFitRings } from "../../../geometry/noFit.ts";
import { turnCosSin } from "../../../geometry/pose.ts";
import type { Ring } from "../../../geometry/ring.ts";
import { BREATH, type Breath, inOneGo } from "../../search/breath.ts";
import type { CompiledJob, Variant } from "../compile/compileJob.ts";
import { turnedShape } from "../compile/gridTools.ts";
import { movingRing, type SumRing } from "../compile/sumRings.ts";
import { addFeatureGrid, ringEdges } from "./featureGrid.ts";
import { arenaBytes, emptyArena, type GridArena } from "./gridArena.ts";
import { EDGE } from "./gridEdges.kernel.ts";
import { isWholeSum, sumOutline, sumWork } from "./sumOutline.kernel.ts";

/** Cells a side of a pair's feature grid, and of the frame's. */
const PAIR_SIDE = 32;
const FRAME_SIDE = 64;
/** … and of a pair's where there are many of them. */
const MANY_PAIRS = 4_000;
const COARSE_SIDE = 16;
/** Outside cells closer than this share of the box keep their list, for exact contact. */
const NEAR = 0.04;
/** Grids of obstacles are coarse where so many may be asked for. */
const MANY_OBSTACLES = 800;
/** Room for lists of edges beside the edges. */
const LIST_SHARE = 4;
/** Grids are dropped and built anew past this many bytes. */
const MEMORY_LIMIT = 160e6;

/**
 * No-fit polygons and their feature grids, built when first asked for. Only one of each pair of shapes and
 * relative orientation is kept; the others are the same polygon seen through a turn or from the other side.
 */
export class NoFitStore {
  readonly job: CompiledJob;
  arena: GridArena;
  /** No-fit polygons built so far. */
  built = 0;
  /** One more than the grid's number, 0 until built: filling millions of entries would take a turn by itself. */
  private readonly grids: Int32Array;
  private obstacleGrids: Int32Array;
  private rings: (readonly Ring[])[] = [];
  private readonly relative: Int32Array;
  private readonly relativeList: { cos: number; sin: number; flip: 1 | -1 }[] = [];
  private readonly turned = new Map<number, GridShape>();
  private readonly moving = new Map<number, SumRing>();
  private readonly work = sumWork();
  private readonly pairSide: number;
  private readonly obstacleSide: number;

  constructor(job: CompiledJob) {
    this.job = job;
    const count = job.orientations.length;
    this.relative = new Int32Array(count * count);
    const known = new Map<string, number>();
    for (let u = 0; u < count; u++)
      for (let v = 0; v < count; v++) {
        const from = job.orientations[u]!;
        const to = job.orientations[v]!;
        const apart = from.mirrored ? from.turnDeg - to.turnDeg : to.turnDeg - from.turnDeg;
        const turn = Math.round((((apart % 360) + 360) % 360) * 1e9) / 1e9;
        const flip = from.mirrored === to.mirrored ? 1 : -1;
        const key = `${turn} ${flip}`;
        let index = known.get(key);
        if (index === undefined) {
          index = this.relativeList.push({ ...cosSin(turn), flip }) - 1;
          known.set(key, index);
        }
        this.relative[u * count + v] = index;
      }
    const shapes = job.shapes.length;
    this.grids = new Int32Array(shapes * shapes * this.relativeList.length);
    const pairs = (shapes * shapes * this.relativeList.length) / 2;
    this.pairSide = pairs > MANY_PAIRS ? COARSE_SIDE : PAIR_SIDE;
    this.obstacleGrids = new Int32Array(job.obstacles.length * job.variants.length).fill(-1);
    this.obstacleSide = this.obstacleGrids.length > MANY_OBSTACLES ? COARSE_SIDE : PAIR_SIDE;
    this.arena = emptyArena(this.obstacleBytes());
  }

  /** What grids of all obstacles will take, as far as they have a share of the memory: cells, edges and lists. */
  private obstacleBytes(): number {
    const { obstacles, shapes, variants } = this.job;
    let edges = 0;
    for (const { grid } of obstacles) edges += (grid.outer.length / 2) * variants.length;
    for (const { shape } of variants) edges += (shapes[shape]!.grid.outer.length / 2) * obstacles.length;
    const cells = this.obstacleGrids.length * this.obstacleSide ** 2;
    return Math.min(MEMORY_LIMIT / 2, 5 * cells + LIST_SHARE * EDGE * Float64Array.BYTES_PER_ELEMENT * edges);
  }

  /** Grid of `moving` about `fixed` (variants), in the frame of the one with the lower shape number. */
  pairGrid(fixed: Variant, moving: Variant): number {
    return fixed.shape > moving.shape ? this.orderedGrid(moving, fixed) : this.orderedGrid(fixed, moving);
  }

  private orderedGrid(low: Variant, high: Variant): number {
    const known = this.grids[this.keyOf(low, high)]!;
    return known > 0 ? known - 1 : inOneGo(this.builtGrid(low, high));
  }

  /** Whether the grid of a pair is there already. */
  knows(fixed: Variant, moving: Variant): boolean {
    const key = fixed.shape > moving.shape ? this.keyOf(moving, fixed) : this.keyOf(fixed, moving);
    return this.grids[key]! > 0;
  }

  /** Number of the turn of `high` as seen from `low`. */
  private relativeOf(low: Variant, high: Variant): number {
    return this.relative[low.orientation * this.job.orientations.length + high.orientation]!;
  }

  private keyOf(low: Variant, high: Variant): number {
    const pair = low.shape * this.job.shapes.length + high.shape;
    return pair * this.relativeList.length + this.relativeOf(low, high);
  }

  /** Builds the grid of a pair, if need be, with breaths: its polygon and its cells take some milliseconds each. */
  *prepare(fixed: Variant, moving: Variant): Generator<Breath, void, undefined> {
    const [low, high] = fixed.shape > moving.shape ? [moving, fixed] : [fixed, moving];
    if (this.grids[this.keyOf(low, high)] === 0) yield* this.builtGrid(low, high);
  }

  private *builtGrid(low: Variant, high: Variant): Generator<Breath, number, undefined> {
    const relative = this.relativeOf(low, high);
    const { cos, sin, flip } = this.relativeList[relative]!;
    const quick = this.sumGrid(low.shape, high.shape, relative);
    if (quick >= 0) {
      this.grids[this.keyOf(low, high)] = quick + 1;
      return quick;
    }
    const other = this.turnedShapeOf(high.shape, relative, cos, sin, flip);
    const rings = noFitRings(this.job.shapes[low.shape]!.grid, other);
    yield BREATH;
    const id = this.addGrid(rings, this.pairSide);
    this.grids[this.keyOf(low, high)] = id + 1;
    return id;
  }

  /** The grid of two shapes by the sum of their coarser outlines; −1 when they have none, or it does not come out whole. */
  private sumGrid(low: number, high: number, relative: number): number {
    const { shapes } = this.job;
    const rests = shapes[low]!.detail;
    const moves = shapes[high]!.detail;
    if (rests === null || moves === null) return -1;
    const key = high * this.relativeList.length + relative;
    let moving = this.moving.get(key);
    if (moving === undefined) {
      const { cos, sin, flip } = this.relativeList[relative]!;
      moving = movingRing(moves.sums.moving, cos, sin, flip);
      this.moving.set(key, moving);
    }
    const { work } = this;
    sumOutline(work, rests.sums.resting, moving);
    if (!isWholeSum(work)) return -1;
    let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
    for (let e = 0; e < work.edgeCount * EDGE; e += EDGE) {
      minX = Math.min(minX, work.edges[e]!);
      maxX = Math.max(maxX, work.edges[e]!);
      minY = Math.min(minY, work.edges[e + 1]!);
      maxY = Math.max(maxY, work.edges[e + 1]!);
    }
    this.built++;
    return this.addEdges(work.edges, work.edgeCount, { minX, minY, maxX, maxY }, this.pairSide);
  }

  private turnedShapeOf(shape: number, relative: number, cos: number, sin: number, flip: number): GridShape {
    const key = shape * this.relativeList.length + relative;
    let turned = this.turned.get(key);
    if (turned === undefined) {
      turned = turnedShape(this.job.shapes[shape]!.grid, cos, sin, flip);
      this.turned.set(key, turned);
    }
    return turned;
  }

  private addGrid(rings: readonly Ring[], side: number): number {
    const box = boxOfAll(rings.map(ringBox));
    const edges = ringEdges(rings);
    const id = this.addEdges(edges, edges.length / EDGE, box, side);
    this.rings[id] = rings;
    this.built++;
    return id;
  }

  private addEdges(edges: Float64Array, count: number, box: Box, side: number): number {
    const width = box.maxX - box.minX;
    const height = box.maxY - box.minY;
    const near = NEAR * Math.min(width, height);
    const spareX = near + 0.01 * width;
    const spareY = near + 0.01 * height;
    return addFeatureGrid(this.arena, edges, count, {
      minX: box.minX - spareX,
      minY: box.minY - spareY,
      maxX: box.maxX + spareX,
      maxY: box.maxY + spareY,
      side,
      near,
      insideOut: false,
    });
  }

  /** Grid of variant `index` about obstacle `number`, in the region's own directions; −2 when a frame leaves no room. */
  obstacleGrid(number: number, index: number): number {
    const key = number * this.job.variants.length + index;
    const known = this.obstacleGrids[key]!;
    if (known !== -1) return known;
    const obstacle = this.job.obstacles[number]!;
    const variant = this.job.variants[index]!;
    const { grid, atEdge } = this.job.shapes[variant.shape]!;
    const met = obstacle.isEdge ? atEdge.grid : grid;
    const shape = turnedShape(met, variant.cos, variant.sin, variant.flip);
    const corners = obstacle.grid.outer.length / 2;
    const id = obstacle.isFrame
      ? this.addFrameGrid(obstacle.grid, shape, obstacle.x, obstacle.y, variant)
      : this.addGrid(noFitRings(obstacle.grid, shape), corners > 20 ? FRAME_SIDE : this.obstacleSide);
    this.obstacleGrids[key] = id;
    return id;
  }

  private addFrameGrid(frame: GridShape, shape: GridShape, x: number, y: number, variant: Variant): number {
    const rings = frameNoFitRings(frame, shape);
    if (rings.length === 0) return -2;
    const { window } = this.job;
    const minX = window.minX - variant.minX - x;
    const minY = window.minY - variant.minY - y;
    const maxX = window.maxX - variant.maxX - x;
    const maxY = window.maxY - variant.maxY - y;
    const spare = 0.01 * Math.max(maxX - minX, maxY - minY, 1);
    const edges = ringEdges(rings);
    const id = addFeatureGrid(this.arena, edges, edges.length / EDGE, {
      minX: minX - spare,
      minY: minY - spare,
      maxX: maxX + spare,
      maxY: maxY + spare,
      side: FRAME_SIDE,
      near: NEAR * Math.min(maxX - minX, maxY - minY) + spare,
      insideOut: true,
    });
    this.rings[id] = rings;
    this.built++;
    return id;
  }

  /** Rings of a grid's no-fit polygon, in the grid's frame. */
  ringsOf(grid: number): readonly Ring[] {
    return this.rings[grid]!;
  }

  /**
   * Drops every grid when they take too much memory. Grid numbers from before are void then, so this is called
   * only where no neighbours are held.
   */
  trim(): void {
    if (arenaBytes(this.arena) < MEMORY_LIMIT) return;
    this.arena = emptyArena(this.obstacleBytes());
    this.rings = [];
    this.grids.fill(0);
    this.obstacleGrids.fill(-1);
  }
}

function cosSin(turnDeg: number): { cos: number; sin: number } {
  const [cos, sin] = turnCosSin(turnDeg);
  return { cos, sin };
}
