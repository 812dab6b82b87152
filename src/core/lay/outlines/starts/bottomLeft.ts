import { ringBox } from "../../../geometry/box.ts";
import { BREATH, type Pause } from "../../search/breath.ts";
import { rungAbove, rungsInRow } from "../compile/gridLattice.ts";
import { Neighbours } from "../layout/neighbours.ts";
import type { WorkLayout } from "../layout/workLayout.ts";
import { ROW } from "../noFit/depth.kernel.ts";
import { HEAD } from "../noFit/gridArena.ts";
import { EDGE } from "../noFit/gridEdges.kernel.ts";

/** Corners of no-fit polygons asked at most for one copy. */
const MOST_CORNERS = 20_000;
/** … and so many between two breaths. */
const CORNERS_PER_BREATH = 2_000;

/** A spot for one copy. */
interface Spot {
  variant: number;
  x: number;
  y: number;
}

/** Corners of the no-fit polygons round what is laid, and the ends of the window, as x, y pairs. */
function cornersOf(state: WorkLayout, near: Neighbours, variant: number, fromX: number, toX: number): Float64Array {
  const lowX = state.lowX(variant);
  const lowY = state.lowY(variant);
  const highY = state.highY(variant);
  const points: number[] = [];
  const add = (x: number, y: number): void => {
    if (x >= lowX && x <= toX && x >= fromX && y >= lowY && y <= highY) points.push(x, y);
  };
  add(lowX, lowY);
  add(lowX, highY);
  for (let k = 0; k < near.count && points.length < 2 * MOST_CORNERS; k++) {
    const o = k * ROW;
    const { rows } = near;
    if (rows[o + 1]! < fromX || rows[o]! > toX) continue;
    add(rows[o + 1]!, lowY);
    add(rows[o + 1]!, highY);
    const { heads, edges } = state.store.arena;
    const head = near.grid[k]! * HEAD;
    const first = heads[head + 6]! * EDGE;
    const end = first + heads[head + 7]! * EDGE;
    for (let e = first; e < end; e += EDGE) {
      const lx = edges[e]!;
      const ly = edges[e + 1]!;
      const x = rows[o + 4]! + rows[o + 6]! * lx + rows[o + 8]! * ly;
      const y = rows[o + 5]! + rows[o + 7]! * lx + rows[o + 9]! * ly;
      add(x, y);
      const mx = lx + edges[e + 2]! * edges[e + 4]!;
      const my = ly + edges[e + 3]! * edges[e + 4]!;
      const x2 = rows[o + 4]! + rows[o + 6]! * mx + rows[o + 8]! * my;
      const y2 = rows[o + 5]! + rows[o + 7]! * mx + rows[o + 9]! * my;
      for (const level of [lowY, highY])
        if (y > level !== y2 > level) add(x + ((level - y) / (y2 - y)) * (x2 - x), level);
      if (x > lowX !== x2 > lowX) add(lowX, y + ((lowX - x) / (x2 - x)) * (y2 - y));
    }
  }
  return Float64Array.from(points);
}

/**
 * Places on the pattern for a matched variant, where the no-fit polygons round what is laid begin or end: on each rung
 * along between `fromX` and `toX` (and those heights brought up to a rung across), or on each rung across.
 */
function patternSpots(
  state: WorkLayout,
  near: Neighbours,
  variant: number,
  fromX: number,
  toX: number,
): Float64Array {
  const { lattice } = state.job.variants[variant]!;
  const { x: along, y: across } = lattice!;
  const [lowX, lowY, highY] = [state.lowX(variant), state.lowY(variant), state.highY(variant)];
  const points: number[] = [];
  const add = (x: number, y: number): void => {
    if (
      points.length < 2 * MOST_CORNERS &&
      x >= lowX - 1 &&
      x >= fromX &&
      x <= toX + 1 &&
      y >= lowY - 1 &&
      y <= highY + 1
    )
      points.push(x, y);
  };
  if (across !== null) {
    for (let y = lowY; y <= highY + 1; y += across.period) {
      const row = rungsInRow(lattice!, y);
      if (row === null) for (const x of [lowX, ...crossingsOf(state, near, "y", y, fromX, toX)]) add(x, y);
      else for (let x = rungAbove(row, Math.max(lowX, fromX)); x <= toX + 1; x += row.period) add(x, y);
    }
    return Float64Array.from(points);
  }
  for (let x = rungAbove(along!, Math.max(lowX, fromX)); x <= toX + 1; x += along!.period)
    for (const y of [lowY, highY, ...crossingsOf(state, near, "x", x, x, x)]) add(x, y);
  return Float64Array.from(points);
}

/** Boxes of rows are smaller than what is in them by less than this share. */
const BESIDE = 1e-3;

/** Where outlines of the no-fit polygons that reach between `fromX` and `toX` cross an upright (`x`) or a level (`y`) line. */
function crossingsOf(
  state: WorkLayout,
  near: Neighbours,
  axis: "x" | "y",
  at: number,
  fromX: number,
  toX: number,
): number[] {
  const out: number[] = [];
  for (let k = 0; k < near.count; k++) {
    const o = k * ROW;
    const { rows } = near;
    const [minX, maxX, minY, maxY] = [rows[o]!, rows[o + 1]!, rows[o + 2]!, rows[o + 3]!];
    const [besideX, besideY] = [BESIDE * (maxX - minX), BESIDE * (maxY - minY)];
    if (maxX + besideX < fromX || minX - besideX > toX) continue;
    if (axis === "y" && (maxY + besideY < at || minY - besideY > at)) continue;
    const { heads, edges } = state.store.arena;
    const head = near.grid[k]! * HEAD;
    const first = heads[head + 6]! * EDGE;
    const end = first + heads[head + 7]! * EDGE;
    for (let e = first; e < end; e += EDGE) {
      const lx = edges[e]!;
      const ly = edges[e + 1]!;
      const mx = lx + edges[e + 2]! * edges[e + 4]!;
      const my = ly + edges[e + 3]! * edges[e + 4]!;
      const x = rows[o + 4]! + rows[o + 6]! * lx + rows[o + 8]! * ly;
      const y = rows[o + 5]! + rows[o + 7]! * lx + rows[o + 9]! * ly;
      const x2 = rows[o + 4]! + rows[o + 6]! * mx + rows[o + 8]! * my;
      const y2 = rows[o + 5]! + rows[o + 7]! * mx + rows[o + 9]! * my;
      const [a, b, c, d] = axis === "x" ? [x, x2, y, y2] : [y, y2, x, x2];
      if (a === b) {
        if (a === at) out.push(c, d);
      } else if (a >= at !== b >= at || a === at || b === at) out.push(c + ((at - a) / (b - a)) * (d - c));
    }
  }
  return out;
}

/** Builds the no-fit polygons of `item` about all that is laid, one at a time. */
function* prepare(state: WorkLayout, item: number): Generator<Pause, void> {
  const { job, store, spots, count } = state;
  const laid = new Set<number>();
  for (let j = 0; j < count; j++) if (spots.variant[j]! >= 0) laid.add(spots.variant[j]!);
  for (const variant of job.variantsOf[job.items[item]!.shape]!) {
    for (const at of laid) {
      const before = store.built;
      yield* store.prepare(job.variants[at]!, job.variants[variant]!);
      if (store.built > before) yield;
    }
    for (let k = 0; k < job.obstacles.length; k++) {
      const before = store.built;
      store.obstacleGrid(k, variant);
      if (store.built > before) yield;
    }
  }
}

/** The leftmost, then lowest of the corners between `fromX` and `toX` that is free, or null. Yields after some. */
function* freeCorner(
  state: WorkLayout,
  near: Neighbours,
  variant: number,
  fromX: number,
  toX: number,
): Generator<Pause, [number, number] | null> {
  const isMatched = state.job.variants[variant]!.lattice !== null;
  const points = (isMatched ? patternSpots : cornersOf)(state, near, variant, fromX, toX);
  near.bin(fromX, Math.max(toX, fromX + 1));
  const order = Array.from({ length: points.length / 2 }, (_, i) => i);
  order.sort((a, b) => points[2 * a]! - points[2 * b]! || points[2 * a + 1]! - points[2 * b + 1]!);
  for (const [asked, i] of order.entries()) {
    const x = points[2 * i]!;
    const y = points[2 * i + 1]!;
    if (near.depthAt(state, x, y, 1e-300) === 0) return [x, y];
    if (asked % CORNERS_PER_BREATH === CORNERS_PER_BREATH - 1) yield BREATH;
  }
  return null;
}

/**
 * The leftmost, then lowest free corner for copy `item`, or null; looked for from left to right, a piece's length at a
 * time. `lastX` holds how far left each variant got before; right of `used` nothing lies. Yields after each step.
 */
function* leftmostSpot(
  state: WorkLayout,
  near: Neighbours,
  item: number,
  lastX: Float64Array,
  used: number,
): Generator<Pause, Spot | null> {
  const shape = state.job.items[item]!.shape;
  let best: Spot | null = null;
  let bestX = Infinity;
  for (const variant of state.job.variantsOf[shape]!) {
    if (state.highY(variant) < state.lowY(variant)) continue;
    near.fill(state, item, variant);
    const { minX, maxX } = state.job.variants[variant]!;
    const lowX = state.lowX(variant);
    const clearX = state.patternFrom(variant, Math.max(lowX, used - minX), state.lowY(variant));
    const toX = Math.min(state.highX(variant), bestX - maxX, clearX);
    let fromX = Math.max(lowX, lastX[variant]!);
    while (fromX <= toX) {
      const stepX = Math.min(toX, fromX + maxX - minX);
      let spot = yield* freeCorner(state, near, variant, fromX, stepX);
      const y = state.lowY(variant);
      if (spot === null && stepX === clearX && near.depthAt(state, clearX, y, 1e-300) === 0) spot = [clearX, y];
      if (spot !== null) {
        lastX[variant] = spot[0];
        if (spot[0] + maxX < bestX) {
          bestX = spot[0] + maxX;
          best = { variant, x: spot[0], y: spot[1] };
        }
        break;
      }
      yield;
      if (stepX === toX) break;
      fromX = stepX;
    }
    yield;
  }
  return best;
}

/**
 * Lays copies one by one, each at the leftmost free corner of the no-fit polygons over its orientations; copies
 * that find none stay unlaid. Yields after each copy. `order` says which copy comes when.
 * Source: bottom-left on no-fit polygons, common in the field (e.g. Dowsland, Vaid & Dowsland 2002, EJOR 141, from memory).
 * Cost: O(copies · corners), less for repeats, which never look left of the copy before.
 */
export function* bottomLeft(state: WorkLayout, order: readonly number[]): Generator<Pause, void> {
  const near = new Neighbours(state.columns);
  const lastX = new Float64Array(state.job.variants.length).fill(-Infinity);
  let used = state.end();
  // A flaw may lie right of all pieces.
  const fixed = Math.max(...state.job.obstacles.map(({ grid, x }) => x + ringBox(grid.outer).maxX));
  for (const item of order) {
    state.store.trim();
    yield* prepare(state, item);
    const spot = yield* leftmostSpot(state, near, item, lastX, Math.max(used, fixed));
    if (spot !== null) {
      state.spots.variant[item] = spot.variant;
      state.spots.x[item] = spot.x;
      state.spots.y[item] = spot.y;
      used = Math.max(used, spot.x + state.job.variants[spot.variant]!.maxX);
    }
    yield;
  }
  state.spots.maxX = used;
}

/** Copies by falling area: the usual order for a first layout. */
export function byFallingArea(state: WorkLayout): number[] {
  const area = (i: number): number => state.job.shapes[state.job.items[i]!.shape]!.area;
  return Array.from({ length: state.count }, (_, i) => i).sort((a, b) => area(b) - area(a) || a - b);
}
