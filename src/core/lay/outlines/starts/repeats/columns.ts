import {
  type Cluster,
  clusterOf,
  forbiddenShifts,
  halfTurned,
  levelHeights,
  type Member,
  type NoFit,
  type RepeatVariant,
} from "./clusters.ts";
import { isForbidden, slice } from "./slices.ts";

/** Heights and rises tried between two pauses: a millisecond or two. */
const HEIGHTS_PER_TURN = 12;
const RISES_PER_TURN = 8;

/** A cluster stacked across the roll: `copies` of it, each (stepX, stepY) from the one below. */
export interface Column {
  readonly cluster: Cluster;
  readonly copies: number;
  readonly stepX: number;
  readonly stepY: number;
  /** What remains of the roll's width above the column. */
  readonly slack: number;
}

/**
 * Columns that follow each other along the roll for ever: the first, a second, and again. The second lies
 * `gapThere` to the right of the first and `rise` above it; the next first `gapBack` to the right of that.
 */
export interface Pattern {
  readonly first: Column;
  readonly second: Column;
  readonly rise: number;
  readonly gapThere: number;
  readonly gapBack: number;
  /** Area of pieces ÷ area of roll, ends included. */
  readonly density: number;
}

/** How many steps apart copies of a cluster can still meet. */
function stepsThatMeet(height: number, step: number, copies: number): number {
  return Math.min(copies - 1, Math.ceil(height / Math.max(step, 1)));
}

/** All pieces of a column whose lowest box corner is at (0, 0) of the roll, as members. */
export function columnMembers(column: Column): Member[] {
  const { cluster, copies, stepX, stepY } = column;
  const left = Math.min(cluster.minX, cluster.minX + (copies - 1) * stepX);
  const members: Member[] = [];
  for (let k = 0; k < copies; k++)
    for (const m of cluster.members)
      members.push({ variant: m.variant, x: m.x + k * stepX - left, y: m.y + k * stepY - cluster.minY });
  return members;
}

/**
 * Ways to stack a cluster across a roll of `width`: at each height where corners come level, or that fills the
 * width exactly, the nearest free shifts to either side.
 */
export function* columnsOf(cluster: Cluster, width: number, noFit: NoFit): Generator<void, Column[]> {
  const height = cluster.maxY - cluster.minY;
  if (height > width) return [];
  const heights = levelHeights(cluster, cluster, noFit).filter((y) => y > 0 && y <= height);
  const most = 2 + Math.floor((2 * width) / height);
  for (let m = 2; m <= most; m++) {
    const exact = Math.floor((width - height) / (m - 1));
    if (exact > 0 && exact < height) heights.push(exact);
  }
  const found = new Map<string, Column>();
  let tried = 0;
  for (const stepY of [...heights, height]) {
    const copies = 1 + Math.floor((width - height) / stepY);
    const slack = width - height - (copies - 1) * stepY;
    for (const stepX of freeSteps(cluster, stepY, copies, noFit)) {
      const column = { cluster, copies, stepX, stepY, slack };
      found.set(`${copies} ${stepX} ${copies > 1 ? stepY : 0}`, column);
    }
    if (++tried % HEIGHTS_PER_TURN === 0) yield;
  }
  return [...found.values()];
}

/** The free x shifts nearest to straight up, at which copies one, two, … steps apart stay clear of each other. */
function freeSteps(cluster: Cluster, stepY: number, copies: number, noFit: NoFit): number[] {
  if (copies === 1) return [0];
  const layers: number[][] = [];
  const meet = stepsThatMeet(cluster.maxY - cluster.minY, stepY, copies);
  for (let k = 1; k <= meet; k++) layers.push(forbiddenShifts(cluster, cluster, k * stepY, noFit));
  const nearest = layers[0] ?? [];
  const ends = nearest.map((x, i) => (i % 2 === 0 ? Math.floor(x) : Math.ceil(x)));
  const free = [0, ...ends].filter((x) => layers.every((layer, k) => !isForbidden(layer, x * (k + 1))));
  free.sort((a, b) => Math.abs(a) - Math.abs(b));
  return free.slice(0, 3);
}

/**
 * Least distance along the roll from column a to column b lifted by `rise`, so that b and everything to its
 * right stays clear of a. Both are measured from their clusters' own origins at the lowest copy.
 */
function columnGap(a: Column, b: Column, rise: number, noFit: NoFit): number {
  let gap = 0;
  const low = -(a.copies - 1);
  for (const p of a.cluster.members)
    for (const q of b.cluster.members) {
      const rings = noFit(p.variant, q.variant);
      for (let k = low; k < b.copies; k++) {
        // Copy i of a and copy j of b, j − i = k; each such pair needs the same shift.
        const dy = rise + k * a.stepY + q.y - p.y;
        const cut = slice(rings, Math.round(dy), p.x - q.x - k * a.stepX);
        if (cut.length > 0) gap = Math.max(gap, cut[cut.length - 1]!);
      }
    }
  return Math.ceil(gap);
}

/** Rises worth trying between two columns with this slack. */
function risesOf(a: Column, b: Column, noFit: NoFit): number[] {
  const slack = Math.min(a.slack, b.slack);
  // Cluster origins may sit at different heights above the roll's edge.
  const base = a.cluster.minY - b.cluster.minY;
  const rises = new Set<number>([base]);
  for (const part of [-1, -0.5, 0.5, 1]) rises.add(base + Math.round(part * slack));
  if (slack > 0) {
    const levels = levelHeights(a.cluster, b.cluster, noFit);
    for (const level of levels)
      for (let k = -a.copies; k <= b.copies; k++) {
        const rise = level - k * a.stepY;
        if (Math.abs(rise - base) <= slack) rises.add(rise);
      }
  }
  return [...rises].slice(0, 60);
}

/** Length of cloth a column covers from its leftmost to its rightmost point. */
function spanOf({ cluster, copies, stepX }: Column): number {
  return cluster.maxX - cluster.minX + (copies - 1) * Math.abs(stepX);
}

/**
 * The best way to follow `first` by `second` and come back, for `columns` columns: slanted columns waste more
 * at the ends, so the ends count.
 */
export function* bestCycle(
  first: Column,
  second: Column,
  width: number,
  columns: number,
  noFit: NoFit,
): Generator<void, Pattern> {
  let best: Pattern | null = null;
  let tried = 0;
  // Columns two apart must stay clear as well, should they reach past the one between.
  const apart = Math.max(columnGap(first, first, 0, noFit), columnGap(second, second, 0, noFit));
  const area = (columns / 2) * (first.copies * first.cluster.area + second.copies * second.cluster.area);
  const span = spanOf(first);
  for (const rise of risesOf(first, second, noFit)) {
    const gapThere = columnGap(first, second, rise, noFit);
    const gapBack = Math.max(columnGap(second, first, -rise, noFit), apart - gapThere);
    const density = area / (width * (((columns - 1) * (gapThere + gapBack)) / 2 + span));
    if (best === null || density > best.density) best = { first, second, rise, gapThere, gapBack, density };
    if (++tried % RISES_PER_TURN === 0) yield;
  }
  return best!;
}

/** The column turned by 180° as a whole, or null when that is not allowed. */
export function turnedColumn(column: Column, variants: readonly RepeatVariant[]): Column | null {
  const cluster = halfTurned(column.cluster, variants);
  return cluster === null ? null : { ...column, cluster };
}

/**
 * The densest patterns of `clusters` copies of a cluster on a roll of `width`, best first, at most `most`: each
 * column followed by itself, or by itself turned by 180°.
 *
 * Cost: O(columns · members² · copies) slices; columns grow with the corners of the cluster's no-fit polygons.
 */
export function* patternsOf(
  cluster: Cluster,
  width: number,
  variants: readonly RepeatVariant[],
  clusters: number,
  noFit: NoFit,
  most: number,
): Generator<void, Pattern[]> {
  const columnsFor = (column: Column): number => Math.max(1, clusters / column.copies);
  const found = yield* columnsOf(cluster, width, noFit);
  const quick = found
    .map((column) => ({ column, density: straightDensity(column, width, columnsFor(column), noFit) }))
    .sort((a, b) => b.density - a.density)
    .slice(0, 2 * most);
  yield;
  const patterns: Pattern[] = [];
  for (const { column } of quick) {
    const columns = columnsFor(column);
    patterns.push(yield* bestCycle(column, column, width, columns, noFit));
    const turned = turnedColumn(column, variants);
    if (turned !== null) patterns.push(yield* bestCycle(column, turned, width, columns, noFit));
  }
  return patterns.sort((a, b) => b.density - a.density).slice(0, most);
}

/** Density of a column followed by itself at the same height, ends included. */
function straightDensity(column: Column, width: number, columns: number, noFit: NoFit): number {
  const length = (columns - 1) * columnGap(column, column, 0, noFit) + spanOf(column);
  return (columns * column.copies * column.cluster.area) / (width * length);
}

/** A cluster of one. */
export function single(variant: number, variants: readonly RepeatVariant[]): Cluster {
  return clusterOf([{ variant, x: 0, y: 0 }], variants);
}

/**
 * Least x at which the members, moved right as one, stay clear of everything in `placed` and to its right.
 * Cost: one slice per pair.
 */
export function clearShift(placed: readonly Member[], members: readonly Member[], noFit: NoFit): number {
  let shift = -Infinity;
  for (const p of placed)
    for (const q of members) {
      const cut = slice(noFit(p.variant, q.variant), Math.round(q.y - p.y), p.x - q.x);
      if (cut.length > 0) shift = Math.max(shift, cut[cut.length - 1]!);
    }
  return shift === -Infinity ? 0 : Math.max(0, Math.ceil(shift));
}
