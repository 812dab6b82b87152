import type { Rng } from "../rng.ts";
import {
  ANY,
  type BeamChildren,
  type BeamGuide,
  type BeamStates,
  type BeamWorld,
  CLOTH,
  COLUMN,
  FREE_SIZE,
  KEYS_PER_SIZE,
  MOST_FREE,
  SEGMENT,
} from "./beamState.ts";

/** Blocks up to this many pieces wide are all tried, then only the widest; likewise tall. */
const TIMES_ACROSS = 4;
const TIMES_ALONG = 3;

/** One beam under way. */
export interface BeamRun {
  readonly world: BeamWorld;
  readonly guide: BeamGuide;
  readonly rng: Rng;
  /** Area that may be left unused, and the area in all. */
  readonly budget: number;
  readonly area: number;
  readonly reachAcross: Int32Array;
  readonly reachAlong: Int32Array;
  readonly children: BeamChildren;
  /** Children kept per level. */
  readonly most: number;
  /** [children in the heap, children scored]. */
  readonly tally: Float64Array;
}

/** Whether any piece left fits w × h, when `skip` (a size, or −1) is used up. */
export function fitsAny(
  world: BeamWorld,
  left: Int16Array,
  at: number,
  w: number,
  h: number,
  skip: number,
): boolean {
  const { wayAcross, wayAlong, waySize, ways } = world.tables;
  for (let way = 0; way < ways; way++) {
    if (wayAcross[way]! > w || wayAlong[way]! > h) continue;
    const size = waySize[way]!;
    if (size !== skip && left[at + size]! > 0) return true;
  }
  return false;
}

/** Largest usable extent within `extent`; an empty table holds every extent usable. */
export function reach(table: Int32Array, extent: number): number {
  return table.length === 0 ? extent : table[extent]!;
}

/** Area of a free w × h rectangle that no piece left can ever use. */
function wasteOf(run: BeamRun, left: Int16Array, at: number, w: number, h: number, skip: number): number {
  if (w <= 0 || h <= 0) return 0;
  const rw = reach(run.reachAcross, w);
  const rh = reach(run.reachAlong, h);
  if (rw === 0 || rh === 0 || !fitsAny(run.world, left, at, rw, rh, skip)) return w * h;
  return w * h - rw * rh;
}

/** Scores all children of state `i` and keeps the best in the heap. */
export function scoreChildren(run: BeamRun, states: BeamStates, i: number): void {
  const { tables, stages } = run.world;
  const { wayAcross, wayAlong, waySize, sizeArea, ways } = tables;
  const { left, free } = states;
  const at = i * tables.sizes;
  const top = (i * MOST_FREE + states.freeCount[i]! - 1) * FREE_SIZE;
  const w = free[top]!;
  const h = free[top + 1]!;
  const level = free[top + 4]!;
  const placedArea = states.placedArea[i]!;
  const waste = states.waste[i]!;
  const placed = states.placed[i]!;
  if (level !== CLOTH) offer(run, i, -1, 0, 0, 0, waste + w * h, placedArea, placed, run.guide.loose);
  for (let way = 0; way < ways; way++) {
    const size = waySize[way]!;
    const rest = left[at + size]!;
    const pw = wayAcross[way]!;
    const ph = wayAlong[way]!;
    if (rest === 0 || pw > w || ph > h) continue;
    const widest = level === COLUMN ? 1 : Math.min(rest, Math.floor(w / pw));
    for (let nx = 1; nx <= widest; nx = nx < TIMES_ACROSS || nx === widest ? nx + 1 : widest) {
      const tallest = Math.min(Math.floor(rest / nx), Math.floor(h / ph));
      for (let ny = 1; ny <= tallest; ny = ny < TIMES_ALONG || ny === tallest ? ny + 1 : tallest) {
        const count = nx * ny;
        const skip = count === rest ? size : -1;
        const bw = nx * pw;
        const bh = ny * ph;
        const dw = w - bw;
        const dh = h - bh;
        const area = placedArea + count * sizeArea[size]!;
        const fit = dw === 0 || dh === 0 ? 1 : run.guide.loose;
        if (level === CLOTH) {
          scoreSegments(run, left, at, i, way, nx, ny, w, h, waste, area, placed + count, skip);
          continue;
        }
        if (level !== SEGMENT) {
          // Across first: beside the block as high as it, beyond it the full width. A column's side is trimmed off.
          const beside = level === COLUMN ? dw * bh : wasteOf(run, left, at, dw, bh, skip);
          const lost = beside + wasteOf(run, left, at, w, dh, skip);
          offer(run, i, way, nx, ny, 0, waste + lost, area, placed + count, fit);
          if (level === COLUMN || dw === 0 || dh === 0) continue;
        }
        // Three stages: over several columns side by side there is no cut left to part them.
        if (stages === 3 && nx > 1 && dh > 0) continue;
        const lost = wasteOf(run, left, at, dw, h, skip) + wasteOf(run, left, at, bw, dh, skip);
        offer(run, i, way, nx, ny, 1, waste + lost, area, placed + count, fit);
      }
    }
  }
}

/**
 * A block on the cloth opens a segment cut across the whole width: as high as the block, higher by one or two
 * pieces that may go beyond it, or, when long rips are allowed, the whole rest.
 */
function scoreSegments(
  run: BeamRun,
  left: Int16Array,
  at: number,
  i: number,
  way: number,
  nx: number,
  ny: number,
  w: number,
  h: number,
  waste: number,
  area: number,
  placed: number,
  skip: number,
): void {
  const { tables, stages } = run.world;
  const { wayAcross, wayAlong, waySize, ways } = tables;
  const bw = nx * wayAcross[way]!;
  const bh = ny * wayAlong[way]!;
  const dw = w - bw;
  const lost = wasteOf(run, left, at, dw, bh, skip) + wasteOf(run, left, at, w, h - bh, skip);
  offer(run, i, way, nx, ny, bh, waste + lost, area, placed, 1);
  if (dw === 0 || (stages === 3 && nx > 1)) return;
  for (let next = 0; next < ways; next++) {
    const size = waySize[next]!;
    if (size === skip || left[at + size]! === 0) continue;
    const extra = wayAlong[next]!;
    if (bh + extra > h || (wayAcross[next]! > bw && wayAcross[next]! > dw)) continue;
    offerSegment(bh + extra);
  }
  if (run.guide.longRips && h > bh) offerSegment(h);

  function offerSegment(height: number): void {
    const lostHere =
      wasteOf(run, left, at, dw, height, skip) +
      wasteOf(run, left, at, bw, height - bh, skip) +
      wasteOf(run, left, at, w, h - height, skip);
    offer(run, i, way, nx, ny, height, waste + lostHere, area, placed, run.guide.loose);
  }
}

/** Puts a child in the heap when it is within budget and better than the worst kept. */
function offer(
  run: BeamRun,
  parent: number,
  way: number,
  nx: number,
  ny: number,
  split: number,
  waste: number,
  area: number,
  placed: number,
  fit: number,
): void {
  run.tally[1]!++;
  if (waste > run.budget) return;
  const { guide, children, most } = run;
  // Little waste, and large pieces first: small ones fill what is left.
  let score = area === 0 ? 1 : (waste / (area + waste) + guide.calm) * ((placed + 1) / area) * fit;
  if (guide.chance > 0) score *= 1 + guide.chance * run.rng.unit();
  const heap = children.score;
  const slots = children.slot;
  let count = run.tally[0]!;
  let slot = count;
  let p: number;
  if (count >= most) {
    if (score >= heap[0]!) return;
    slot = slots[0]!;
    p = 0;
    for (;;) {
      let c = 2 * p + 1;
      if (c >= count) break;
      if (c + 1 < count && heap[c + 1]! > heap[c]!) c++;
      if (heap[c]! <= score) break;
      heap[p] = heap[c]!;
      slots[p] = slots[c]!;
      p = c;
    }
  } else {
    p = count++;
    run.tally[0] = count;
    while (p > 0) {
      const q = (p - 1) >> 1;
      if (heap[q]! >= score) break;
      heap[p] = heap[q]!;
      slots[p] = slots[q]!;
      p = q;
    }
  }
  heap[p] = score;
  slots[p] = slot;
  children.parent[slot] = parent;
  children.way[slot] = way;
  children.timesAcross[slot] = nx;
  children.timesAlong[slot] = ny;
  children.split[slot] = split;
}

/**
 * Writes child `slot` of `from` as state `to` of `into`. Returns a hash of what is left and free, or −1 when the
 * child is dead: nothing free, too many rectangles or over budget. The caller sets `trail`.
 */
export function writeChild(run: BeamRun, from: BeamStates, slot: number, into: BeamStates, to: number): number {
  const { children, world } = run;
  const { tables, stages, keys } = world;
  const { free, left } = into;
  const sizes = tables.sizes;
  const i = children.parent[slot]!;
  const way = children.way[slot]!;
  const at = to * sizes;
  for (let size = 0; size < sizes; size++) left[at + size] = from.left[i * sizes + size]!;
  const base = to * MOST_FREE * FREE_SIZE;
  const fromBase = i * MOST_FREE * FREE_SIZE;
  let end = (from.freeCount[i]! - 1) * FREE_SIZE;
  for (let k = 0; k < end; k++) free[base + k] = from.free[fromBase + k]!;
  let area = from.placedArea[i]!;
  let placed = from.placed[i]!;
  if (way >= 0) {
    const w = from.free[fromBase + end]!;
    let h = from.free[fromBase + end + 1]!;
    const x = from.free[fromBase + end + 2]!;
    const y = from.free[fromBase + end + 3]!;
    const level = from.free[fromBase + end + 4]!;
    const nx = children.timesAcross[slot]!;
    const ny = children.timesAlong[slot]!;
    const bw = nx * tables.wayAcross[way]!;
    const bh = ny * tables.wayAlong[way]!;
    let along = children.split[slot]! === 1;
    if (level === CLOTH) {
      const height = children.split[slot]!;
      if (h > height) {
        put(w, h - height, x, y + height, CLOTH);
      }
      h = height;
      along = true;
    }
    const inner = stages === 3 ? (level === CLOTH ? SEGMENT : level) : ANY;
    const w2 = along ? bw : w;
    const h1 = along ? h : bh;
    const beyondLevel = stages === 3 ? COLUMN : ANY;
    const trimmed = level === COLUMN;
    const besideFirst = (w - bw) * h1 >= w2 * (h - bh);
    for (let turn = 0; turn < 2; turn++) {
      if ((turn === 0) === besideFirst) {
        if (!trimmed && w > bw && h1 > 0) put(w - bw, h1, x + bw, y, inner);
      } else if (h > bh) put(w2, h - bh, x, y + bh, beyondLevel);
    }
    const size = tables.waySize[way]!;
    left[at + size]! -= nx * ny;
    area += nx * ny * tables.sizeArea[size]!;
    placed += nx * ny;
  }
  into.placedArea[to] = area;
  into.placed[to] = placed;
  if (placed === run.world.tables.pieces) return 0;
  let kept = base;
  let live = 0;
  let hash = 0;
  for (let k = base; k < base + end; k += FREE_SIZE) {
    const w = reach(run.reachAcross, free[k]!);
    const h = reach(run.reachAlong, free[k + 1]!);
    if (w === 0 || h === 0 || !fitsAny(world, left, at, w, h, -1)) continue;
    free[kept] = w;
    free[kept + 1] = h;
    free[kept + 2] = free[k + 2]!;
    free[kept + 3] = free[k + 3]!;
    free[kept + 4] = free[k + 4]!;
    live += w * h;
    hash = (hash + mixed(Math.imul(w, 40503) + h * 4 + free[kept + 4]!)) | 0;
    kept += FREE_SIZE;
  }
  const count = (kept - base) / FREE_SIZE;
  const waste = run.area - area - live;
  if (count === 0 || count >= MOST_FREE - 3 || waste > run.budget) return -1;
  for (let size = 0; size < sizes; size++) {
    hash = (hash + keys[size * KEYS_PER_SIZE + (left[at + size]! & (KEYS_PER_SIZE - 1))]!) | 0;
  }
  into.freeCount[to] = count;
  into.waste[to] = waste;
  return hash & 0x7fffffff;

  function put(w: number, h: number, x: number, y: number, level: number): void {
    const k = base + end;
    free[k] = w;
    free[k + 1] = h;
    free[k + 2] = x;
    free[k + 3] = y;
    free[k + 4] = level;
    end += FREE_SIZE;
  }
}

function mixed(value: number): number {
  let m = Math.imul(value, 0x9e3779b1);
  m ^= m >>> 15;
  m = Math.imul(m, 0x85ebca6b);
  m ^= m >>> 13;
  return Math.imul(m, 0xc2b2ae35);
}
